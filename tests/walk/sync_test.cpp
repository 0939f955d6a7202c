// Sync with a finger on the running program: the margin line leads to Sending from every place, a
// new device comes to a shop from the first start, and a lost device is ended by two acts and no
// less.
#include <QTemporaryDir>
#include <gtest/gtest.h>

#include "screens/devices_view_model.h"
#include "screens/join_view_model.h"
#include "screens/sync_view_model.h"
#include "seal/sign.h"
#include "tests/screens_sync/fake_exchange.h"
#include "tests/threads/screen_hand.h"

namespace jambline::walk {
namespace {

using exchange::Contact;
using exchange::SyncState;

class SyncByHand : public testing::Test {
 protected:
  void SetUp() override {
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, -240};
    app::Options options;
    options.size = QSize(412, 892);
    auto opened = app::Program::open(folder_.path().toStdString(), clock_, options);
    ASSERT_TRUE(opened);
    program_ = std::move(*opened);
    exchange_.emplace([this](SyncState state) { program_->sync().publish(std::move(state)); });
    program_->sync().use(&*exchange_);
    ASSERT_TRUE(program_->show());
    hand_ = std::make_unique<ScreenHand>(*program_);
    settle();
  }
  void TearDown() override {
    hand_.reset();
    program_.reset();
  }
  void settle() {
    for (int i = 0; i < 2; ++i) {
      program_->engine().drain();
      hand_->wait_for_quiet(30, 400);
    }
  }
  void say(SyncState state) {
    exchange_->say(std::move(state));
    settle();
  }
  QQuickItem* here(const char* name) {
    QQuickItem* item = nullptr;
    hand_->wait_for([&] { return (item = hand_->find_named(name)) != nullptr; });
    return item;
  }
  // What lies beyond the edge of what scrolls comes into sight with the focus.
  void tap(const char* name) {
    QQuickItem* item = here(name);
    ASSERT_NE(item, nullptr) << name;
    item->forceActiveFocus();
    settle();
    ASSERT_TRUE(hand_->touch(item)) << name;
    settle();
    hand_->wait_for([] { return false; }, 260);
  }
  void manager_with_second_device() {
    auto& engine = program_->engine();
    engine.post(acts::AddPerson{"Mara", job::Role::Manager}, {}, {});
    engine.drain();
    settle();
    mara_ = engine.snapshot()->shop->people.front().person;
    program_->session().choosePerson(QString::fromStdString(mara_.hex()));
    second_ = seal::SigningKey::from_seed({2});
    engine.admit_device({second_->key(), "tablet 2", false}, mara_, {});
    engine.drain();
    SyncState state;
    state.contact = Contact::Good;
    state.hub_name = "hub in the office";
    say(state);
    ASSERT_EQ(engine.snapshot()->devices.size(), 2U);
  }
  bool second_is_ended() {
    program_->engine().drain();
    for (const auto& one : program_->engine().snapshot()->devices)
      if (one.device == second_->device()) return one.cut_seq.has_value();
    return false;
  }

  QTemporaryDir folder_;
  FakeClock clock_;
  std::optional<exchange::FakeExchange> exchange_;
  std::unique_ptr<app::Program> program_;
  std::unique_ptr<ScreenHand> hand_;
  PersonId mara_;
  std::optional<seal::SigningKey> second_;
};

TEST_F(SyncByHand, TheMarginLeadsToSendingFromEveryPlace) {
  for (const char* place : {"Floor", "Booth", "Record"}) {
    ASSERT_TRUE(hand_->go(place, "None"));
    settle();
    EXPECT_EQ(hand_->find_named("sendingScreen"), nullptr);
    hand_->touch(QPointF(60, 14));
    settle();
    EXPECT_NE(here("sendingScreen"), nullptr) << place;
  }
}

TEST_F(SyncByHand, ANewDeviceComesToAShopFromTheFirstStart) {
  tap("joinShop");
  ASSERT_NE(here("joinLine"), nullptr);
  const sync::Invitation code{
      seal::Key{{0x3f}}, ShopId{{3}}, sync::InviteCode{{4}}, {{"192.168.1.20", 8740}}};
  program_->join().set_typed(QString::fromStdString(sync::encode(code)));
  settle();
  tap("joinTake");
  EXPECT_FALSE(exchange_->joined);
  tap("joinAsk");
  EXPECT_EQ(exchange_->joined, code);
  SyncState state;
  state.contact = Contact::Joining;
  state.digits = "042 917";
  say(state);
  QQuickItem* digits = here("joinDigits");
  ASSERT_NE(digits, nullptr);
  EXPECT_EQ(digits->property("text").toString(), "042 917");
  EXPECT_GE(digits->property("size").toInt(), 72) << "to be read from the other screen";
  // Behind the sheet the floor shows them too, and leads back instead of opening a car.
  QQuickItem* on_floor = hand_->find_named("floorDigits");
  ASSERT_NE(on_floor, nullptr);
  EXPECT_EQ(on_floor->property("text").toString(), "042 917");
  state.contact = Contact::Good;
  state.digits.clear();
  say(state);
  tap("joinDone");
  EXPECT_EQ(hand_->find_named("joinDone"), nullptr);
}

TEST_F(SyncByHand, ALostDeviceIsEndedByTwoActs) {
  ASSERT_NO_FATAL_FAILURE(manager_with_second_device());
  ASSERT_TRUE(hand_->go("Record", "Devices"));
  settle();
  tap("device1");
  tap("deviceLost");
  EXPECT_FALSE(second_is_ended());
  tap("deviceEndNot");
  EXPECT_FALSE(second_is_ended());
  tap("deviceLost");
  tap("deviceEndSure");
  EXPECT_TRUE(second_is_ended());
}

TEST_F(SyncByHand, AManagerIsLedFromTheFloorToWhoWaits) {
  ASSERT_NO_FATAL_FAILURE(manager_with_second_device());
  EXPECT_EQ(hand_->find_named("devicesRow"), nullptr);
  const auto asks = seal::SigningKey::from_seed({5});
  exchange_->waiting = {{asks.key(), "tablet 3", sync::Nonce{{5}}, clock_.moment.wall_ms, false}};
  program_->devices().look();
  settle();
  tap("devicesRow");
  ASSERT_NE(here("devicesScreen"), nullptr);
  tap("admit");
  exchange_->waiting.clear();  // it is let in
  program_->engine().drain();
  EXPECT_EQ(program_->engine().snapshot()->devices.size(), 3U);
}

}  // namespace
}  // namespace jambline::walk
