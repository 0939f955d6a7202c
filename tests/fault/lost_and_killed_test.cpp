// Answers lost, programs killed, power gone, disks full. Source: FAULTS.md 1 to 4.
#include <cstdlib>
#include <fstream>
#include <random>
#include <sstream>
#include <stdexcept>
#include <thread>

#include "tests/crash/kill_moment.h"
#include "tests/fault/fault_world.h"
#include "tests/fault/real_shop.h"

namespace jambline::simulator {
namespace {

using F01AnswerLost = SimFault;
TEST_F(F01AnswerLost, ThePushIsTakenOnceAndItsReceiptIsTheSame) {
  ASSERT_TRUE(note(1, "one") && note(1, "two"));
  const auto device = tablet(1).key.device();
  open_session(1);
  ASSERT_TRUE(world.request(1, push, Mishap::LostAfter));
  EXPECT_EQ(count_at_hub(device), 2U);
  EXPECT_EQ(tablet(1).end->state().receipted_seq, 0U) << "counted as sent without a receipt";
  const auto first = *need(world.hub.shop->storage().last_receipt(device), "receipt");
  const auto before = hub_entries();
  wait();
  world.sync(1);
  EXPECT_EQ(hub_entries(), before);
  EXPECT_EQ(tablet(1).end->state().receipted_seq, 2U);
  const auto kept = need(tablet(1).last_receipt(first.epoch), "receipt");
  ASSERT_TRUE(kept);
  EXPECT_EQ(seal::encode(*kept), seal::encode(first));
  settle();
}

TEST_F(F01AnswerLost, WhateverAnswerIsLostItEndsTheSame) {
  for (int lost = 0; lost < 8; ++lost) {
    ASSERT_TRUE(note(1, "before " + std::to_string(lost)));
    for (int i = 0; i < 8; ++i) {
      wait();
      (void)world.request(1, static_cast<std::size_t>(i % 2),
                          i == lost ? Mishap::LostAfter : Mishap::None);
    }
  }
  settle();
}

using F02Killed = fault::RealShop;
// Nothing is waited for between acts but the first answer of each: the kill meets whatever is going
// on, on a slow disk too.
TEST_F(F02Killed, DevicesAndTheHubAtAnyMomentWhileTheyWork) {
  std::uint16_t port = 0;
  {
    const fault::HubProcess hub(hub_folder);
    port = hub.port();
  }
  const std::vector<std::filesystem::path> devices{make_device(1, port), make_device(2, port)};
  std::mt19937 random{std::random_device{}()};
  const int rounds = test::crash_rounds(9);
  std::uint64_t said = 0;
  for (int round = 0; round < rounds; ++round) {
    fault::HubProcess hub(hub_folder, {}, port);
    fault::DeviceProcess one(devices[0]), two(devices[1]);
    for (int i = 0; i < 60; ++i)
      for (auto* device : {&one, &two}) {
        // The same picture of the same car twice would be refused.
        const std::string number = std::to_string(round * 200 + 2 * i + (device == &two));
        device->tell(i % 9 == 4   ? "picture " + number + " 20000"
                     : i % 5 == 2 ? "car K " + number
                                  : "note number " + number);
      }
    const auto hear = [&said](fault::DeviceProcess& device) {
      const auto answer = device.hear();
      if (!answer) return false;
      if (!answer->starts_with("done ")) throw std::runtime_error(*answer);
      said += std::stoull(answer->substr(5));
      return true;
    };
    ASSERT_TRUE(hear(one) && hear(two));
    std::vector<fault::Process*> order{&hub, &one, &two};
    std::rotate(order.begin(), order.begin() + round % 3, order.end());
    for (auto* process : order) {
      std::this_thread::sleep_for(std::chrono::microseconds(random() % 60'000));
      process->send_signal(SIGKILL);
    }
    for (auto* device : {&one, &two})
      while (hear(*device)) {
      }
    hub.end(SIGKILL);
    one.end(SIGKILL);
    two.end(SIGKILL);
    std::set<Hash> there;
    for (const auto& device : devices)
      for (const auto& entry : entries_of(device)) there.insert(entry.hash);
    ASSERT_GE(there.size(), first_day_entries() + said) << "lost in round " << round;
  }
  ASSERT_GT(said, static_cast<std::uint64_t>(rounds)) << "killed before anything was written";
  fault::HubProcess hub(hub_folder, {}, port);
  fault::DeviceProcess one(devices[0]), two(devices[1]);
  said += one.act("note after all") + two.act("note after all, too");
  sync_all({&one, &two});
  EXPECT_EQ(one.close() + two.close() + hub.end(SIGTERM), 0);
  // An act each may have been written and not been told of.
  const std::uint64_t unheard = 2 * static_cast<std::uint64_t>(rounds) * 10;
  expect_equal(devices, said, unheard);
}

using F03PowerLoss = fault::RealShop;
TEST_F(F03PowerLoss, WhateverADeviceSaidWasSavedIsThereAndItGoesOn) {
  fault::HubProcess hub(hub_folder);
  const auto lost = make_device(1, hub.port()), other = make_device(2, hub.port());
  fault::DeviceProcess two(other);
  std::uint64_t said = 0, of_lost = 0;
  {
    fault::DeviceProcess one(lost, {}, true);
    for (int i = 0; i < 25; ++i) {
      of_lost += one.act(i % 6 ? "note number " + std::to_string(i) : "car K " + std::to_string(i));
      said += two.act("note " + std::string(900, 'x'));
    }
    // The power goes at some moment while it sends and takes in, and now.
    ASSERT_EQ(one.act("images 60 " + (folder.path() / "images").string()), 60U);
    ASSERT_EQ(one.close(), 0);
  }
  said += of_lost;
  std::size_t whole = 0;
  for (int i = 0; i < 60; ++i) {
    const auto image = folder.path() / "images" / std::to_string(i);
    std::uint64_t promised = 0;
    std::ifstream(image / "said") >> promised;
    if (!std::filesystem::exists(image / "log.db")) {
      ASSERT_EQ(promised, 0U) << i;
      continue;
    }
    ++whole;
    std::uint64_t own = 0;
    for (const auto& entry : entries_of(image))
      own += entry.header.device == simulator::sim_key(1).device();
    EXPECT_GE(own, promised) << "image " << i;
    const auto audit = log::EntryLog::audit(image, {}, {});
    ASSERT_TRUE(audit) << i;
    EXPECT_FALSE(audit->first_bad) << i;
  }
  EXPECT_GT(whole, 50U);
  // Three times it is switched on again after that, with what each loss has left. What the one
  // before it wrote since, the hub brings back first.
  for (const int image : {59, 58, 57}) {
    for (const char* left : {"log.db", "log.db-wal", "log.db-shm"}) {
      std::filesystem::remove(lost / left);
      const auto from = folder.path() / "images" / std::to_string(image) / left;
      if (std::filesystem::exists(from)) std::filesystem::copy_file(from, lost / left);
    }
    fault::DeviceProcess one(lost);
    sync_all({&one, &two});
    said += one.act("note after image " + std::to_string(image));
    sync_all({&one, &two});
    ASSERT_EQ(one.close(), 0);
  }
  EXPECT_EQ(two.close() + hub.end(SIGTERM), 0);
  expect_equal({lost, other}, said);
}

using F03PictureAfterPowerLoss = SimFault;
TEST_F(F03PictureAfterPowerLoss, OneThatAnEntryNamesIsWhole) {
  for (int i = 0; i < 12; ++i) {
    const std::size_t who = 1 + static_cast<std::size_t>(i % 3);
    ASSERT_TRUE(world.take_picture(who));
    world.lose_power(who);
    const auto& named = tablet(who).named();
    ASSERT_GE(named.size(), 2U);
    for (const auto& file : {named[named.size() - 1].blob, named[named.size() - 2].blob})
      EXPECT_TRUE(tablet(who).blobs().check(file)) << "loss " << i;
  }
  settle();
}

using F04SmallDisk = fault::RealShop;
TEST_F(F04SmallDisk, OfADeviceKeepsRoomForEntriesThenSaysNotSavedAndGoesOn) {
  fault::HubProcess hub(hub_folder);
  const auto full = make_device(1, hub.port()), other = make_device(2, hub.port());
  fault::DeviceProcess one(full, {48}), two(other);
  std::uint64_t said = one.act("note there is room") + one.act("picture 1 30000");
  ASSERT_EQ(said, 2U);
  one.fill_disk();
  std::string refused;
  std::uint64_t of_ballast = 0;
  ASSERT_TRUE(fault::comes_true([&] {
    const std::string answer = one.ask("note " + std::string(3000, 'n'));
    if (answer.starts_with("done ")) {
      of_ballast += std::stoull(answer.substr(5));
      one.fill_disk();
      return false;
    }
    refused = answer;
    return true;
  }));
  EXPECT_TRUE(refused.starts_with(one.on_tmpfs() ? "no DiskFull" : "no ")) << refused;
  if (one.on_tmpfs()) {
    EXPECT_GT(of_ballast, 0U) << "entries had no room of their own";
  }
  said += of_ballast;
  EXPECT_TRUE(one.ask("picture 2 200000").starts_with("no "));
  said += two.act("note of another, meanwhile");
  one.empty_disk();
  ASSERT_TRUE(fault::comes_true([&] {
    const auto wrote = one.act("note there is room again");
    said += wrote;
    return wrote == 1;
  }));
  sync_all({&one, &two});
  const auto wrote = one.act("picture 3 200000");
  EXPECT_EQ(wrote, 1U);
  said += wrote;
  sync_all({&one, &two});
  const auto kept = folder.path() / "kept";
  one.copy_disk_to(kept);
  one.end(SIGTERM);
  EXPECT_EQ(two.close() + hub.end(SIGTERM), 0);
  expect_equal({kept, other}, said);
}

TEST_F(F04SmallDisk, OfTheHubTakesNothingByHalvesAndDevicesSendAgain) {
  fault::HubProcess hub(hub_folder, {24});
  const std::vector<std::filesystem::path> devices{make_device(1, hub.port()),
                                                   make_device(2, hub.port())};
  fault::DeviceProcess one(devices[0]), two(devices[1]);
  std::uint64_t said = one.act("note there is room") + two.act("picture 1 30000");
  sync_all({&one, &two});
  hub.fill_disk();
  for (int i = 0; i < 20; ++i) said += one.act("note " + std::string(3000, 'n'));
  said += two.act("picture 2 300000");
  EXPECT_TRUE(fault::comes_true([&] {
    hub.fill_disk();
    one.ask("go");
    const auto state = one.state();
    return state.find(hub.on_tmpfs() ? "trouble=DiskFull" : "trouble=") != std::string::npos;
  })) << one.state();
  EXPECT_EQ(one.state().find("send=0 "), std::string::npos) << one.state();
  hub.empty_disk();
  sync_all({&one, &two});
  EXPECT_EQ(one.close() + two.close(), 0);
  hub_folder = folder.path() / "kept hub";
  hub.copy_disk_to(hub_folder);
  hub.end(SIGTERM);
  expect_equal(devices, said);
}

using F04DiskFull = SimFault;
TEST_F(F04DiskFull, OfADeviceSaysNotSavedAndGoesOnWhenThereIsRoom) {
  ASSERT_TRUE(note(1, "before"));
  const auto shown = world.ledger().size();
  tablet(1).set_full(true);
  EXPECT_FALSE(note(1, "no room"));
  EXPECT_FALSE(world.take_picture(1));
  // What others wrote does not come either, and its cursor stays.
  ASSERT_TRUE(note(2, "of another"));
  world.sync(2);
  world.sync(1);
  EXPECT_EQ(world.ledger().size(), shown + 1);
  tablet(1).set_full(false);
  EXPECT_TRUE(note(1, "there is room"));
  EXPECT_TRUE(world.take_picture(1));
  settle();
}

TEST_F(F04DiskFull, OfTheHubIsAnsweredAndNothingIsHalfWritten) {
  ASSERT_TRUE(note(1, "one") && world.take_picture(1));
  open_session(1);
  const auto before = hub_entries();
  world.hub.set_full(true);
  ASSERT_TRUE(world.request(1, push));
  ASSERT_TRUE(tablet(1).end->state().trouble);
  EXPECT_EQ(tablet(1).end->state().trouble->code, Code::DiskFull);
  EXPECT_EQ(hub_entries(), before);
  EXPECT_EQ(tablet(1).end->state().receipted_seq, 0U);
  for (int i = 0; i < 6; ++i) (void)world.request(1, pictures);
  EXPECT_EQ(world.hub.blobs().size(), 0U);
  world.hub.set_full(false);
  wait();
  settle();
}

}  // namespace
}  // namespace jambline::simulator
