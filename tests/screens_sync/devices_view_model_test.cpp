// The devices of the shop: only a manager on a manager's device lets in, ends and takes over; what
// was kept apart is settled at the hub only after this device has said it again. Held against our
// own design (exchange/exchange.h, engine/shop_devices.h).
#include "screens/devices_view_model.h"

#include <QSignalSpy>

#include "sync/limits.h"
#include "sync_desk.h"

namespace jambline::screens {
namespace {

static_assert(DevicesViewModel::invitation_lives_ms == sync::code_lives_ms);

class DevicesScreen : public SyncDesk {
 protected:
  void SetUp() override {
    SyncDesk::SetUp();
    screen_.emplace(*session_, *sync_);
    say(good());
  }
  void TearDown() override {
    screen_.reset();
    SyncDesk::TearDown();
  }
  static QString at(QAbstractItemModel* model, int row, const char* role) {
    return model->index(row, 0).data(model->roleNames().key(role)).toString();
  }
  sync::Pending asks(std::uint8_t seed, const char* name) {
    sync::Pending out;
    out.device_key = seal::SigningKey::from_seed({seed}).key();
    out.device_name = name;
    out.nonce = sync::Nonce{{seed}};
    out.asked_ms = clock_.moment.wall_ms;
    return out;
  }
  void look() {
    screen_->look();
    settle();
  }

  std::optional<DevicesViewModel> screen_;
};

TEST_F(DevicesScreen, WhoAsksIsLetInByItsDigits) {
  auto brings = asks(9, "other shop");
  brings.brings_shop = true;
  exchange_->waiting = {asks(5, "tablet 2"), brings};
  QSignalSpy somebody(&*screen_, &DevicesViewModel::someoneAsked);
  look();
  EXPECT_EQ(somebody.count(), 1) << "the invitation makes room for who asks";
  ASSERT_EQ(screen_->waitingCount(), 1) << "a shop that comes is compared at the hub";
  EXPECT_EQ(at(screen_->waiting(), 0, "digits").toStdString(),
            exchange_->digits_of(exchange_->waiting[0]));
  EXPECT_TRUE(screen_->floorWords().contains("asks to be let in"));
  const QString key = at(screen_->waiting(), 0, "key");
  exchange_->waiting.clear();
  screen_->admit(key, false);
  settle();
  EXPECT_EQ(screen_->waitingCount(), 0);
  ASSERT_EQ(session_->snapshot().devices.size(), 2U);
  EXPECT_EQ(session_->snapshot().devices[1].name, "tablet 2");
  EXPECT_FALSE(session_->snapshot().devices[1].manager);
  EXPECT_EQ(screen_->countWords(), "2 devices");
  EXPECT_TRUE(screen_->floorWords().isEmpty());
}

TEST_F(DevicesScreen, OneMayBecomeAManagersAndOneIsTurnedAway) {
  exchange_->waiting = {asks(5, "tablet 2"), asks(6, "nobody's")};
  look();
  ASSERT_EQ(screen_->waitingCount(), 2);
  screen_->admit(at(screen_->waiting(), 0, "key"), true);
  settle();
  EXPECT_TRUE(session_->snapshot().devices[1].manager);
  screen_->turnAway(QString::fromStdString(seal::device_of(asks(6, "").device_key).hex()));
  EXPECT_EQ(exchange_->refused, seal::device_of(asks(6, "").device_key));
}

TEST_F(DevicesScreen, OthersReadAndNobodyAsksForThem) {
  exchange_->waiting = {asks(5, "tablet 2")};
  be(ivo_);
  const int before = exchange_->questions;
  look();
  EXPECT_EQ(exchange_->questions, before);
  EXPECT_FALSE(screen_->mayManage());
  EXPECT_FALSE(screen_->whyNot().isEmpty());
  EXPECT_EQ(screen_->devices()->rowCount(), 1);
  EXPECT_TRUE(screen_->floorWords().isEmpty());
  screen_->admit(QString::fromStdString(seal::device_of(asks(5, "").device_key).hex()), true);
  settle();
  EXPECT_EQ(session_->snapshot().devices.size(), 1U);
}

TEST_F(DevicesScreen, ALostDeviceIsEndedForGood) {
  let_second_in();
  settle();
  const QString second = QString::fromStdString(second_->device().hex());
  screen_->open(second);
  EXPECT_EQ(screen_->deviceName(), "tablet 2");
  screen_->rename("bench tablet");
  settle();
  EXPECT_EQ(screen_->deviceName(), "bench tablet");
  screen_->endMembership();
  settle();
  EXPECT_TRUE(screen_->deviceEnded());
  EXPECT_FALSE(failed_);
  EXPECT_EQ(screen_->countWords(), "1 device, 1 ended");
  screen_->open(QString::fromStdString(session_->snapshot().devices[0].device.hex()));
  screen_->endMembership();
  settle();
  EXPECT_FALSE(screen_->deviceEnded()) << "nobody ends the device in his hand";
}

TEST_F(DevicesScreen, KeptWorkIsLookedThroughAndTakenOver) {
  let_second_in();
  settle();
  screen_->open(QString::fromStdString(second_->device().hex()));
  screen_->endMembership();
  settle();
  second_->act(acts::WriteNote{car().job, "written after the end"}, ivo_);
  exchange_->kept_entries = second_->own_entries();
  ASSERT_EQ(exchange_->kept_entries.size(), 1U);
  const auto seq = exchange_->kept_entries.front().header.seq;
  exchange_->kept = {{second_->device(), seq, seq, 0, clock_.moment.wall_ms}};
  look();
  ASSERT_EQ(screen_->keptCount(), 1);
  EXPECT_TRUE(screen_->floorWords().contains("ended device"));
  screen_->lookThrough(at(screen_->kept(), 0, "key"));
  settle();
  ASSERT_TRUE(screen_->lookedHere());
  ASSERT_EQ(screen_->lookedEntries()->rowCount(), 1);
  EXPECT_TRUE(at(screen_->lookedEntries(), 0, "words").contains("written after the end"));
  EXPECT_TRUE(at(screen_->lookedEntries(), 0, "line").startsWith("Ivo"));

  bool settled = false;
  QObject::connect(&*screen_, &DevicesViewModel::settled, &*screen_, [&] { settled = true; });
  screen_->takeOver();
  settle();
  settle();
  EXPECT_FALSE(failed_) << failed_->operation << ": " << failed_->subject;
  EXPECT_TRUE(settled);
  EXPECT_EQ(exchange_->settled, std::make_pair(second_->device(), seq));
  EXPECT_EQ(screen_->keptCount(), 0);
  bool there = false;
  for (const auto& entry : *session_->snapshot().timeline)
    if (const auto* note = entry.payload.get_if<entries::NoteWritten>())
      there = there || note->text == "written after the end";
  EXPECT_TRUE(there);
}

TEST_F(DevicesScreen, KeptWorkMayBeLeftAndIsNotInTheRecord) {
  let_second_in();
  settle();
  screen_->open(QString::fromStdString(second_->device().hex()));
  screen_->endMembership();
  settle();
  second_->act(acts::WriteNote{car().job, "written after the end"}, ivo_);
  exchange_->kept_entries = second_->own_entries();
  exchange_->kept = {{second_->device(), 1, 1, 0, clock_.moment.wall_ms}};
  look();
  screen_->lookThrough(at(screen_->kept(), 0, "key"));
  settle();
  const auto before = session_->snapshot().own_entries;
  screen_->leaveKept();
  settle();
  EXPECT_TRUE(exchange_->settled);
  EXPECT_EQ(session_->snapshot().own_entries, before);
  EXPECT_EQ(screen_->looked(), "");
}

TEST_F(DevicesScreen, WhereSayingAgainFailsTheHubKeepsIt) {
  let_second_in();
  settle();
  screen_->open(QString::fromStdString(second_->device().hex()));
  screen_->endMembership();
  settle();
  second_->act(acts::WriteNote{car().job, "written after the end"}, ivo_);
  exchange_->kept_entries = second_->own_entries();
  exchange_->kept_entries.front().payload[0] = 'x';  // other bytes than those that were signed
  exchange_->kept = {{second_->device(), 1, 1, 0, clock_.moment.wall_ms}};
  look();
  screen_->lookThrough(at(screen_->kept(), 0, "key"));
  settle();
  screen_->takeOver();
  settle();
  EXPECT_TRUE(failed_);
  EXPECT_FALSE(exchange_->settled);
  EXPECT_EQ(screen_->keptCount(), 1);
}

TEST_F(DevicesScreen, AnInvitationRunsOut) {
  exchange_->invitation = {seal::Key{{1}}, ShopId{{2}}, sync::InviteCode{{3}}, {{"hub", 8740}}};
  screen_->invite();
  settle();
  EXPECT_EQ(screen_->invitation().toStdString(), sync::encode(exchange_->invitation));
  EXPECT_TRUE(screen_->inviteWords().contains("10 minutes"));
  later(8.5);
  EXPECT_TRUE(screen_->inviteWords().contains("2 minutes"));
  EXPECT_FALSE(screen_->inviteOver());
  later(1.6);
  EXPECT_TRUE(screen_->inviteOver());
  screen_->dropInvitation();
  EXPECT_EQ(screen_->invitation(), "");
  exchange_->refuses = Error{Code::NoContact, "invite", "hub", {}};
  screen_->invite();
  settle();
  EXPECT_FALSE(screen_->inviteTrouble().isEmpty());
}

TEST_F(DevicesScreen, WhenItWasSeenIsToldByThisDevicesClock) {
  let_second_in();
  settle();
  // The hub's clock is an hour ahead.
  const auto hub_ms = clock_.moment.wall_ms + 3'600'000;
  exchange_->last_seen = {hub_ms, {{second_->device(), hub_ms - 5 * 60'000, 44, hub_ms - 60'000}}};
  look();
  screen_->open(QString::fromStdString(second_->device().hex()));
  EXPECT_EQ(screen_->deviceSeen(), "Last seen 14:08");
  EXPECT_TRUE(screen_->deviceFork().contains("44"));
  EXPECT_TRUE(screen_->floorWords().contains("copied"));
  exchange_->last_seen.hub_ms += DevicesViewModel::fork_is_news_ms;
  look();
  EXPECT_FALSE(screen_->floorWords().contains("copied")) << "after a week it is no news";
  EXPECT_TRUE(screen_->deviceFork().contains("44"));
}

TEST_F(DevicesScreen, WhyNothingNewIsHeardIsSaid) {
  exchange_->refuses = Error{Code::NoContact, "ask", "hub", {}};
  look();
  EXPECT_FALSE(screen_->troubleWords().isEmpty());
  exchange_->refuses.reset();
  look();
  EXPECT_TRUE(screen_->troubleWords().isEmpty());
}

}  // namespace
}  // namespace jambline::screens
