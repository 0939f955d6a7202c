// Hubs and devices put back, copied and revoked. Source: FAULTS.md 12 to 15.
#include <thread>

#include "sync/limits.h"
#include "tests/fault/fault_world.h"
#include "tests/fault/real_shop.h"

namespace jambline::simulator {
namespace {

class F12HubPutBack : public SimFault {
 protected:
  void live() {
    ASSERT_TRUE(note(1, "before the backup") && world.take_picture(2));
    world.calm();
    world.backup_hub();
    ASSERT_TRUE(note(1, "after it") && note(2, "after it, too") && world.take_picture(3));
    world.calm();
  }
  bool somebody_is_told() {
    for (std::size_t i = 0; i < late_device; ++i)
      if (tablet(i).end->state().hub_was_restored) return true;
    return false;
  }
};
TEST_F(F12HubPutBack, DevicesSendAgainWhatItLost) {
  live();
  const auto all = hub_entries();
  ASSERT_TRUE(world.put_hub_back(false));
  EXPECT_LT(hub_entries(), all);
  settle();
  EXPECT_GE(hub_entries(), all);
  EXPECT_TRUE(somebody_is_told());
}
TEST_F(F12HubPutBack, DevicesSendAgainWhatItLostWhenTheRestoreWasDeclared) {
  live();
  const auto all = hub_entries();
  ASSERT_TRUE(world.put_hub_back(true));
  EXPECT_LT(hub_entries(), all);
  settle();
  EXPECT_GE(hub_entries(), all);
  EXPECT_TRUE(somebody_is_told());
}
TEST_F(F12HubPutBack, NothingCountsAsSentThatIsNotThereAnyMore) {
  live();
  ASSERT_TRUE(world.put_hub_back(false));
  wait();
  world.pass_ms(sync::token_lives_ms);
  open_session(1);
  EXPECT_LE(tablet(1).end->state().receipted_seq, count_at_hub(tablet(1).key.device()));
  settle();
}
// Others have moved on before this one looks again: its cursor is within the new count.
TEST_F(F12HubPutBack, WhoComesLateMissesNothing) {
  live();
  ASSERT_TRUE(world.put_hub_back(false));
  for (int i = 0; i < 12; ++i) ASSERT_TRUE(note(2, "new " + std::to_string(i)));
  world.pass_ms(sync::token_lives_ms);
  world.sync(2);
  settle();
  EXPECT_TRUE(somebody_is_told());
}

class F12RealHubPutBack : public fault::RealShop {
 protected:
  // Devices 1 and 2 at a hub; then it is saved, they go on, and the saved one is put back.
  void go_on_after_a_restore(const std::function<void()>& save,
                             const std::function<std::filesystem::path()>& put_back) {
    auto hub = std::make_unique<fault::HubProcess>(hub_folder);
    const std::uint16_t port = hub->port();
    const std::vector<std::filesystem::path> devices{make_device(1, port), make_device(2, port)};
    fault::DeviceProcess one(devices[0]), two(devices[1]);
    std::uint64_t said = one.act("note before") + two.act("picture 1 90000");
    sync_all({&one, &two});
    // Devices send while it is saved.
    std::thread saving(save);
    for (int i = 0; i < 20; ++i) said += one.act("note meanwhile " + std::to_string(i));
    saving.join();
    said += one.act("note after") + two.act("picture 2 90000");
    sync_all({&one, &two});
    EXPECT_EQ(hub->end(SIGTERM), 0);
    const auto all = entries_of_hub(hub_folder).size();
    hub_folder = put_back();
    EXPECT_LT(entries_of_hub(hub_folder).size(), all);
    said += one.act("note while there is no hub");
    hub = std::make_unique<fault::HubProcess>(hub_folder, fault::SmallDisk{}, port);
    said += two.act("note when it is back");
    sync_all({&one, &two});
    EXPECT_NE(one.state().find("restored=1"), std::string::npos) << "nobody is told";
    EXPECT_EQ(one.close() + two.close() + hub->end(SIGTERM), 0);
    expect_equal(devices, said);
  }
  std::string quoted(const char* name) const { return "'" + (folder.path() / name).string() + "'"; }
};

TEST_F(F12RealHubPutBack, ByTheToolsThatSavedItUnderLoad) {
  go_on_after_a_restore(
      [&] {
        const auto ran =
            fault::run_hub("backup --folder '" + hub_folder.string() + "' " + quoted("backup"));
        EXPECT_EQ(ran.code, 0) << ran.said;
      },
      [&] {
        const auto ran = fault::run_hub("restore " + quoted("backup") + " --to " + quoted("again"));
        EXPECT_EQ(ran.code, 0) << ran.said;
        return folder.path() / "again";
      });
}

// Somebody copies the folder of a hub that stands still, and says nothing of it.
TEST_F(F12RealHubPutBack, ByACopyOfItsFolderThatNobodyDeclared) {
  const std::string copy = "cp -a '" + hub_folder.string() + "' " + quoted("copy");
  ASSERT_EQ(std::system(copy.c_str()), 0);
  go_on_after_a_restore([] {}, [&] { return folder.path() / "copy"; });
}

TEST_F(F12RealHubPutBack, ACopyMadeWhileItServesIsRefusedByTheTool) {
  fault::HubProcess hub(hub_folder);
  const std::string copy = "cp -a '" + hub_folder.string() + "' " + quoted("copy") + " && find " +
                           quoted("copy") + " -name '*-wal' -delete";
  ASSERT_EQ(std::system(copy.c_str()), 0);
  const auto ran = fault::run_hub("restore " + quoted("copy") + " --to " + quoted("again"));
  EXPECT_EQ(ran.code, 2);
  EXPECT_NE(ran.said.find("a copied hub folder"), std::string::npos) << ran.said;
  EXPECT_FALSE(std::filesystem::exists(folder.path() / "again" / "shops"));
}

using F13DevicePutBack = SimFault;
TEST_F(F13DevicePutBack, WritesNothingBeforeItsTailIsHereAndGoesOnAfterIt) {
  ASSERT_TRUE(note(1, "one"));
  world.calm();
  world.back_up(1);
  ASSERT_TRUE(note(1, "two") && note(1, "three"));
  world.calm();
  const auto seq = tablet(1).own_seq();
  ASSERT_TRUE(world.put_back(1));
  ASSERT_LT(tablet(1).own_seq(), seq);
  open_session(1);
  EXPECT_TRUE(tablet(1).end->state().tail_missing);
  EXPECT_FALSE(note(1, "too early"));
  world.sync(1);
  EXPECT_FALSE(tablet(1).end->state().tail_missing);
  EXPECT_EQ(tablet(1).own_seq(), seq);
  ASSERT_TRUE(note(1, "four"));
  EXPECT_EQ(tablet(1).own_seq(), seq + 1);
  settle();
  EXPECT_FALSE(tablet(1).forked);
}

TEST_F(F13DevicePutBack, WhatItWroteOfflineBeforeThatIsAForkAndNotLost) {
  ASSERT_TRUE(note(1, "one"));
  world.calm();
  world.back_up(1);
  ASSERT_TRUE(note(1, "two") && note(1, "three"));
  world.calm();
  const auto held = world.hub.entries().size();
  ASSERT_TRUE(world.put_back(1));
  ASSERT_TRUE(note(1, "offline"));  // fewer than what it has lost
  world.sync(1);
  world.look();
  EXPECT_TRUE(tablet(1).forked);
  EXPECT_EQ(world.hub.entries().size(), held);
  settle();
}

class F14Cloned : public SimFault {
 protected:
  void both_write(bool copy_first, int of_first, int of_copy) {
    ASSERT_TRUE(note(1, "before"));
    world.calm();
    const std::size_t copy = world.clone(1);
    for (int i = 0; i < of_first; ++i) ASSERT_TRUE(note(1, "first " + std::to_string(i)));
    for (int i = 0; i < of_copy; ++i) ASSERT_TRUE(note(copy, "copy " + std::to_string(i)));
    const std::size_t winner = copy_first ? copy : 1, loser = copy_first ? 1 : copy;
    world.sync(winner);
    const auto head = count_at_hub(tablet(1).key.device());
    world.sync(loser);
    world.look();
    EXPECT_TRUE(tablet(loser).forked);
    EXPECT_FALSE(tablet(winner).forked);
    EXPECT_EQ(count_at_hub(tablet(1).key.device()), head);
    EXPECT_EQ(tablet(loser).end->state().fork_common_seq, 1U);
    EXPECT_FALSE(note(loser, "read only"));
    // Both machines are known of.
    bool noted = false;
    for (const auto& one : need(world.hub.shop->storage().seen(), "seen"))
      noted = noted || (one.device == tablet(1).key.device() && one.fork_seq);
    EXPECT_TRUE(noted);
    settle();
  }
};
TEST_F(F14Cloned, TheSecondToSyncIsForkedAndItsWorkIsStillThere) {
  both_write(false, 1, 1);
}
TEST_F(F14Cloned, TheFirstMayComeSecond) {
  both_write(true, 1, 1);
}
TEST_F(F14Cloned, TheSecondMayHaveWrittenMore) {
  both_write(false, 1, 3);
}
TEST_F(F14Cloned, TheSecondMayHaveWrittenLess) {
  both_write(true, 1, 3);
}

using F15Revoked = SimFault;
TEST_F(F15Revoked, WithUnsyncedWorkItIsKeptApartAndMayBeTakenOver) {
  ASSERT_TRUE(note(2, "sent"));
  world.calm();
  for (int i = 0; i < 20; ++i) ASSERT_TRUE(note(2, "not sent " + std::to_string(i)));
  ASSERT_TRUE(world.revoke(0, 2));
  world.sync(0);
  const auto before = tablet(2).entries().size();
  wait();
  world.pass_ms(sync::token_lives_ms);  // its token is over, and drops nothing
  world.sync(2);
  EXPECT_TRUE(tablet(2).end->state().revoked);
  EXPECT_EQ(tablet(2).entries().size(), before) << "something was pulled or is gone";
  EXPECT_EQ(world.hub.apart(tablet(2).key.device()).size(), 20U);
  EXPECT_EQ(tablet(2).end->state().receipted_seq, 1U) << "kept apart is not received";
  settle();
  EXPECT_TRUE(world.take_over(0, 2));
  settle();
  std::size_t said_again = 0;
  for (const auto& entry : world.hub.entries())
    said_again += entry.payload.find("not sent ") != std::string::npos;
  EXPECT_EQ(said_again, 20U);
}

// The hub took entries after the cut before it knew of the cut: whoever comes later takes them too.
TEST_F(F15Revoked, EntriesThatTheHubHadBeforeItKnewStopNobody) {
  ASSERT_TRUE(note(2, "sent"));
  world.calm();
  ASSERT_TRUE(note(2, "on the hub, and not known to the manager"));
  world.sync(2);
  ASSERT_TRUE(world.revoke(0, 2));
  settle();
  ASSERT_TRUE(note(0, "goes on"));
  settle();
}

TEST_F(F15Revoked, WhatWasKeptApartIsSentAgainToAHubThatWasPutBack) {
  ASSERT_TRUE(note(2, "sent"));
  world.calm();
  ASSERT_TRUE(note(2, "not sent"));
  ASSERT_TRUE(world.revoke(0, 2));
  world.sync(0);
  world.backup_hub();
  for (int i = 0; i < 2; ++i) {  // the hub has started anew and knows no session
    wait();
    world.sync(2);
  }
  ASSERT_EQ(world.hub.apart(tablet(2).key.device()).size(), 1U);
  ASSERT_TRUE(world.put_hub_back(true));
  settle();
  EXPECT_EQ(world.hub.apart(tablet(2).key.device()).size(), 1U);
}

}  // namespace
}  // namespace jambline::simulator
