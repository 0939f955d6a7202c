// Devices, a hub and real sockets, held against our own design (src/sync/PROTOCOL.md, FAULTS.md).
#include "tests/exchange/shop_world.h"

namespace jambline::exchange {
namespace {

class TwoDevices : public testing::Test {
 protected:
  // The first device's shop comes to the hub.
  void bring_shop() {
    if (car == JobId{}) furnish();
    ASSERT_TRUE(first.joined(log::must(hub::expect_shop(*served.hub, 600'000))));
    ASSERT_TRUE(comes_true([&] { return first.state().brings_shop; }));
    const auto waiting = log::must(hub::waiting_devices(*served.hub, {}));
    ASSERT_EQ(waiting.size(), 1U);
    EXPECT_EQ(waiting[0].digits, first.state().digits) << "what a person compares";
    const auto confirmed = first.asked<engine::Wrote>([&](auto done) {
      first.exchange->confirm_hub(ivo, [done](Status status) {
        done(status ? Result<engine::Wrote>(engine::Wrote{}) : fail(status.error()));
      });
    });
    ASSERT_TRUE(confirmed);
    ASSERT_TRUE(comes_true([&] { return first.state().all_sent_ms.has_value(); }))
        << to_words(first.state());
  }

  // The second one joins it: invited and admitted by the first.
  void second_joins() {
    const auto invitation = log::must(
        first.asked<sync::Invitation>([&](auto done) { first.exchange->invite(std::move(done)); }));
    const Status joined = second.joined(invitation);
    ASSERT_FALSE(joined);
    ASSERT_EQ(joined.error().subject, "restart");
    second.open_again();
    ASSERT_TRUE(comes_true([&] { return !second.state().digits.empty(); }));
    EXPECT_TRUE(second.engine->snapshot()->read_only);
    admit_whoever_shows(second.state().digits);
    ASSERT_TRUE(comes_true([&] { return same(); })) << to_words(second.state());
    EXPECT_FALSE(second.engine->snapshot()->read_only);
  }

  void admit_whoever_shows(const std::string& digits) {
    const auto waiting = log::must(first.asked<std::vector<sync::Pending>>(
        [&](auto done) { first.exchange->pending(std::move(done)); }));
    const auto found = std::find_if(waiting.begin(), waiting.end(), [&](const auto& one) {
      return first.exchange->digits_of(one) == digits;
    });
    ASSERT_NE(found, waiting.end());
    const auto admitted = first.asked<engine::Wrote>([&](auto done) {
      first.engine->admit_device({found->device_key, found->device_name, false}, ivo,
                                 std::move(done));
    });
    ASSERT_TRUE(admitted);
  }

  void furnish() {
    ASSERT_TRUE(first.act(acts::AddPerson{"Ivo", job::Role::Manager}, {}));
    ivo = first.engine->snapshot()->shop->people.front().person;
    ASSERT_TRUE(first.act(acts::AddPerson{"Kim", job::Role::Painter}, ivo));
    kim = first.engine->snapshot()->shop->people.back().person;
    const auto opened = first.act(engine::car_to_open(), ivo);
    ASSERT_TRUE(opened);
    car = opened->job;
    ASSERT_TRUE(first.act(nib(400), ivo));
    std::vector<std::uint8_t> bytes(300'000, 7);
    std::vector<std::uint8_t> small(9'000, 8);
    auto taken = engine::picture_of(car, bytes);
    picture = taken.facts.file;
    blobs::Hasher hasher;
    hasher.update(small);
    taken.facts.preview = *hasher.finish();
    preview = *taken.facts.preview;
    ASSERT_TRUE(engine::keep(*first.engine, bytes, taken, ivo, small));
  }

  acts::PlaceMark nib(double x_mm) const { return {car, job::Panel::Hood, x_mm, 300}; }
  bool same() { return second.shown(car) == first.shown(car) && first.entries(car) > 0; }
  static std::string to_words(const SyncState& state) {
    std::string out = "contact " + std::to_string(static_cast<int>(state.contact)) + " to send " +
                      std::to_string(state.entries_to_send) + " pictures " +
                      std::to_string(state.pictures_to_send);
    if (state.trouble) {
      out += " " + std::string(code_name(state.trouble->code)) + " " + state.trouble->subject;
      for (const auto& [name, value] : state.trouble->args) out += " " + name + "=" + value;
    }
    return out;
  }

  ServedHub served;
  Tablet first{"cart"};
  Tablet second{"desk"};
  PersonId ivo;
  PersonId kim;
  JobId car;
  Hash picture;
  Hash preview;
};

TEST_F(TwoDevices, AShopComesToTheHubAndASecondDeviceSeesItsMarksAndPictures) {
  bring_shop();
  second_joins();
  ASSERT_TRUE(comes_true([&] {
    const auto* files = second.engine->blobs();
    return files->check(picture) && files->check(preview);
  })) << to_words(second.state());
  ASSERT_TRUE(second.act(nib(500), kim));
  EXPECT_TRUE(comes_true([&] { return same() && first.entries(car) == second.entries(car); }));
  EXPECT_TRUE(comes_true([&] { return second.state().all_sent_ms.has_value(); }));
  EXPECT_EQ(second.exchange->place_of_entry(1), Place::OnHub);
}

// The hub is admitted by the last entry of a history that comes in many pages.
TEST_F(TwoDevices, ALongHistoryComesWithItsReceipts) {
  furnish();
  for (int visit = 0; visit < 7; ++visit) {
    const auto opened = first.act(engine::car_to_open(), ivo);
    ASSERT_TRUE(opened);
    for (int i = 0; i < 100; ++i)
      ASSERT_TRUE(first.act(acts::PlaceMark{opened->job, job::Panel::Hood, 100.0 + i, 300}, ivo));
  }
  bring_shop();
  second_joins();
  const auto receipts = [](Tablet& tablet) {
    auto log = log::must(log::EntryLog::open(tablet.path(), log::OpenMode::ReadOnly));
    return log::must(log->receipts()).size();
  };
  EXPECT_GT(receipts(first), 1U);
  EXPECT_TRUE(comes_true([&] { return receipts(second) >= receipts(first); }))
      << receipts(second) << " of " << receipts(first);
}

TEST_F(TwoDevices, WhatIsDoneWithoutAHubGoesOutWhenItIsBack) {
  bring_shop();
  second_joins();
  served.stop();
  for (int i = 0; i < 20; ++i) {
    ASSERT_TRUE(first.act(nib(200 + 10 * i), ivo));
    ASSERT_TRUE(second.act(nib(205 + 10 * i), kim));
  }
  ASSERT_TRUE(comes_true([&] { return first.state().contact == Contact::Trying; }));
  EXPECT_GE(first.state().entries_to_send, 20U);
  EXPECT_EQ(first.state().trouble->code, Code::NoContact);
  served.serve();
  first.exchange->send_now();
  second.exchange->send_now();
  EXPECT_TRUE(comes_true([&] { return same() && first.all_on_hub(); }))
      << to_words(first.state()) << " / " << to_words(second.state());
}

TEST_F(TwoDevices, WhilePausedNothingGoesAndNothingIsLost) {
  bring_shop();
  first.exchange->pause(true);
  ASSERT_TRUE(comes_true([&] { return first.state().paused; }));
  ASSERT_TRUE(first.act(nib(210), ivo));
  ASSERT_TRUE(comes_true([&] { return first.state().entries_to_send > 0; }));
  first.exchange->pause(false);
  EXPECT_TRUE(comes_true([&] { return first.all_on_hub(); }));
}

// A state that was put together before an act says nothing of what the act wrote.
TEST_F(TwoDevices, WhatWasJustWrittenIsHereAndNotOnTheHub) {
  bring_shop();
  ASSERT_TRUE(comes_true([&] { return first.all_on_hub(); }));
  first.exchange->pause(true);
  ASSERT_TRUE(comes_true([&] { return first.state().paused; }));
  first.hears(false);
  ASSERT_TRUE(first.act(nib(200), ivo));
  EXPECT_EQ(first.exchange->place_of_entry(first.engine->snapshot()->own_entries), Place::Here);
  first.hears(true);
  first.exchange->pause(false);
  EXPECT_TRUE(comes_true([&] { return first.all_on_hub(); })) << to_words(first.state());
}

// Fault 14, and 13 without a network in between.
TEST_F(TwoDevices, ACopiedFolderGoesOnUnderANewKeyAndNothingIsLost) {
  bring_shop();
  second_joins();
  second.close();
  Tablet copy("desk", second.path());
  second.open();
  served.stop();
  const auto before = first.entries(car);
  for (int i = 0; i < 5; ++i) ASSERT_TRUE(second.act(nib(220 + 10 * i), kim));
  served.serve();
  second.exchange->send_now();
  ASSERT_TRUE(comes_true([&] { return second.all_on_hub(); }));
  copy.exchange->pause(true);
  for (int i = 0; i < 3; ++i) ASSERT_TRUE(copy.act(nib(600 + 10 * i), kim));
  copy.exchange->pause(false);
  copy.exchange->send_now();
  ASSERT_TRUE(comes_true([&] { return copy.state().contact == Contact::Forked; }))
      << to_words(copy.state());
  EXPECT_GE(copy.state().fork->own_entries, 3U);
  ASSERT_TRUE(
      copy.answered([&](Exchange::Done done) { copy.exchange->ask_for_new_key(std::move(done)); }));
  ASSERT_TRUE(comes_true([&] { return !copy.state().digits.empty(); })) << to_words(copy.state());
  admit_whoever_shows(copy.state().digits);
  ASSERT_TRUE(comes_true([&] {
    const auto trouble = copy.state().trouble;
    return trouble && trouble->subject == "restart";
  })) << to_words(copy.state());
  copy.open_again();
  EXPECT_TRUE(comes_true([&] {
    return first.entries(car) == before + 8 && first.shown(car) == copy.shown(car) && same();
  })) << first.entries(car)
      << " of " << before + 8 << " " << to_words(copy.state());
  EXPECT_EQ(copy.state().contact, Contact::Good);
  const auto seen = log::must(
      first.asked<sync::SeenAnswer>([&](auto done) { first.exchange->seen(std::move(done)); }));
  EXPECT_TRUE(std::any_of(seen.seen.begin(), seen.seen.end(),
                          [](const auto& one) { return one.fork_seq.has_value(); }));
}

// Fault 15.
TEST_F(TwoDevices, WorkAfterARevocationIsKeptApartUntilAManagerTakesItOver) {
  bring_shop();
  second_joins();
  served.stop();
  const auto own = second.engine->snapshot()->own_entries;
  for (int i = 0; i < 4; ++i) ASSERT_TRUE(second.act(nib(230 + 10 * i), kim));
  served.serve();
  DeviceId lost;
  for (const auto& device : first.engine->snapshot()->devices)
    if (!device.own) lost = device.device;
  second.exchange->pause(true);
  const auto revoked = first.asked<engine::Wrote>(
      [&](auto done) { first.engine->revoke_device(lost, ivo, std::move(done)); });
  ASSERT_TRUE(revoked);
  first.exchange->send_now();
  ASSERT_TRUE(comes_true([&] { return first.all_on_hub(); }));
  second.exchange->pause(false);
  second.exchange->send_now();
  ASSERT_TRUE(comes_true([&] {
    return second.state().contact == Contact::Revoked && second.state().entries_refused == 4;
  })) << to_words(second.state());
  EXPECT_EQ(second.exchange->place_of_entry(own + 1), Place::Refused);
  const auto kept = log::must(first.asked<std::vector<sync::Quarantined>>(
      [&](auto done) { first.exchange->quarantine(std::move(done)); }));
  ASSERT_EQ(kept.size(), 1U);
  const auto before = first.entries(car);
  auto entries = log::must(first.asked<std::vector<seal::SealedEntry>>(
      [&](auto done) { first.exchange->quarantined_entries(lost, std::move(done)); }));
  ASSERT_EQ(entries.size(), 4U);
  ASSERT_TRUE(first.asked<engine::Wrote>([&](auto done) {
    first.engine->take_over(entries, entries::TakenOverWhy::AfterRevocation, ivo, std::move(done));
  }));
  EXPECT_EQ(first.entries(car), before + 4);
}

// Fault 13.
TEST_F(TwoDevices, AFolderThatWasPutBackWaitsForItsTail) {
  bring_shop();
  first.close();
  const log::TempFolder kept;
  std::filesystem::copy(first.path(), kept.path() / "then",
                        std::filesystem::copy_options::recursive);
  first.open();
  for (int i = 0; i < 10; ++i) ASSERT_TRUE(first.act(nib(240 + 10 * i), ivo));
  ASSERT_TRUE(comes_true([&] { return first.all_on_hub(); }));
  const auto after = first.entries(car);
  const auto own = first.engine->snapshot()->own_entries;
  first.close();
  Tablet put_back("cart", kept.path() / "then");
  ASSERT_TRUE(comes_true([&] { return put_back.engine->snapshot()->own_entries == own; }))
      << to_words(put_back.state());
  ASSERT_TRUE(comes_true([&] { return !put_back.engine->snapshot()->read_only; }));
  EXPECT_EQ(put_back.entries(car), after);
  ASSERT_TRUE(put_back.act(nib(700), ivo));
  EXPECT_TRUE(comes_true([&] { return put_back.all_on_hub(); }));
}

TEST_F(TwoDevices, ADeviceOfAShopWithWorkInItDoesNotJoinAnother) {
  bring_shop();
  ASSERT_TRUE(second.act(acts::AddPerson{"Lou", job::Role::Manager}, {}));
  const auto invitation = log::must(
      first.asked<sync::Invitation>([&](auto done) { first.exchange->invite(std::move(done)); }));
  const Status joined = second.joined(invitation);
  ASSERT_FALSE(joined);
  EXPECT_EQ(joined.error().code, Code::WrongShop);
  EXPECT_EQ(second.state().contact, Contact::NoHub);
}

}  // namespace
}  // namespace jambline::exchange
