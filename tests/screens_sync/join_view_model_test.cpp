// Coming to a hub: nothing is asked before a person says so, digits are compared before anything is
// taken in, and only a manager takes a hub in. Held against our own design (exchange/exchange.h).
#include "screens/join_view_model.h"

#include <QTemporaryDir>
#include <QThread>

#include "picture/qr_code.h"
#include "sync_desk.h"
#include "tests/device/fake_camera.h"
#include "tests/screens/until.h"

namespace jambline::screens {
namespace {

using exchange::Contact;
using Step = JoinViewModel::Step;

class JoinScreen : public SyncDesk {
 protected:
  void SetUp() override {
    SyncDesk::SetUp();
    join_.emplace(*session_, *sync_, camera_);
    QObject::connect(&*join_, &JoinViewModel::restartWanted, &*join_, [this] { ++restarts_; });
  }
  void TearDown() override {
    join_.reset();
    SyncDesk::TearDown();
  }
  static sync::Invitation code() {
    return {seal::Key{{1, 2}}, ShopId{{3}}, sync::InviteCode{{4}}, {{"192.168.1.20", 8740}}};
  }
  static QString line() { return QString::fromStdString(sync::encode(code())); }

  device::FakeCamera camera_;
  std::optional<JoinViewModel> join_;
  int restarts_ = 0;
};

TEST_F(JoinScreen, ATypedLineIsReadAndNothingIsAskedBeforeThePress) {
  join_->open();
  EXPECT_EQ(join_->step(), Step::Read);
  join_->set_typed("jambline:1?hub=banana");
  join_->take();
  EXPECT_FALSE(join_->wrong().isEmpty());
  EXPECT_EQ(join_->typed(), "jambline:1?hub=banana") << "what was typed stays";
  EXPECT_EQ(join_->step(), Step::Read);
  join_->set_typed("  " + line() + "\n");
  EXPECT_TRUE(join_->wrong().isEmpty());
  join_->take();
  EXPECT_EQ(join_->step(), Step::Ask);
  EXPECT_TRUE(join_->hubWords().contains("192.168.1.20:8740"));
  EXPECT_FALSE(exchange_->joined);
  join_->ask();
  settle();
  EXPECT_EQ(exchange_->joined, code());
}

TEST_F(JoinScreen, DigitsThenIn) {
  join_->open();
  join_->set_typed(line());
  join_->take();
  join_->ask();
  EXPECT_EQ(join_->step(), Step::Asking);
  exchange::SyncState state;
  state.contact = Contact::Joining;
  say(state);
  EXPECT_EQ(join_->step(), Step::Asking);
  state.digits = "042 917";
  say(state);
  EXPECT_EQ(join_->step(), Step::Compare);
  EXPECT_EQ(join_->digits(), "042 917");
  join_->confirm();
  EXPECT_FALSE(exchange_->confirmed) << "this device comes to a shop: the manager's device says it";
  say(good());
  EXPECT_EQ(join_->step(), Step::In);
  join_->open();
  EXPECT_EQ(join_->step(), Step::Read) << "another time it does not boast";
}

TEST_F(JoinScreen, OnlyAManagerTakesAHubIn) {
  exchange::SyncState state;
  state.contact = Contact::Joining;
  state.digits = "042 917";
  state.brings_shop = true;
  say(state);
  join_->open();
  EXPECT_EQ(join_->step(), Step::Compare);
  be(ivo_);
  EXPECT_FALSE(join_->mayConfirm());
  join_->confirm();
  EXPECT_FALSE(exchange_->confirmed);
  be(mara_);
  EXPECT_TRUE(join_->mayConfirm());
  exchange_->answer = fail(Code::NotYet, "join", "restart");
  join_->confirm();
  settle();
  EXPECT_EQ(exchange_->confirmed, mara_);
  EXPECT_EQ(restarts_, 1);
}

TEST_F(JoinScreen, OtherDigitsStopIt) {
  exchange::SyncState state;
  state.contact = Contact::Joining;
  state.digits = "042 917";
  say(state);
  join_->open();
  join_->giveUp();
  EXPECT_EQ(exchange_->gave_up, 1);
  say({});
  EXPECT_EQ(join_->step(), Step::Read);
}

TEST_F(JoinScreen, TurnedAwayAndARefusalAreSaid) {
  exchange::SyncState state;
  state.contact = Contact::TurnedAway;
  say(state);
  join_->open();
  EXPECT_EQ(join_->step(), Step::TurnedAway);
  join_->another();
  EXPECT_EQ(join_->step(), Step::Read);
  join_->set_typed(line());
  join_->take();
  exchange_->answer = fail(Code::WrongShop, "join", "shop");
  join_->ask();
  settle();
  EXPECT_EQ(join_->step(), Step::Ask);
  EXPECT_FALSE(join_->troubleWhat().isEmpty());
  EXPECT_FALSE(join_->troubleKept().isEmpty());
  EXPECT_FALSE(join_->troubleTodo().isEmpty());
  EXPECT_EQ(restarts_, 0);
}

TEST_F(JoinScreen, TheSquareCodeIsReadByTheCameraAndSwitchesItOff) {
  join_->open();
  auto& scan = *join_->scan();
  scan.setFront(true);
  EXPECT_TRUE(scan.live());
  const auto other = picture::qr_code("a code of something else");
  ASSERT_TRUE(other);
  camera_.show(other->scaled(other->size() * 8));
  ASSERT_TRUE(until([&] { return !scan.notice().isEmpty(); }));
  EXPECT_EQ(join_->step(), Step::Read);
  QThread::msleep(JoinScanViewModel::apart_ms + 20);
  const auto drawn = picture::qr_code(line().toStdString());
  ASSERT_TRUE(drawn);
  camera_.show(drawn->scaled(drawn->size() * 8));
  ASSERT_TRUE(until([&] { return join_->step() == Step::Ask; }));
  EXPECT_FALSE(scan.live());
  EXPECT_EQ(camera_.now, device::Camera::State::Off);
  EXPECT_FALSE(exchange_->joined);
}

TEST_F(JoinScreen, TheSquareCodeIsReadFromAFile) {
  QTemporaryDir folder;
  const auto drawn = picture::qr_code(line().toStdString());
  ASSERT_TRUE(drawn);
  const QString file = folder.filePath("code.png");
  ASSERT_TRUE(drawn->scaled(drawn->size() * 6).save(file));
  join_->open();
  join_->scan()->readFiles({QUrl::fromLocalFile(folder.filePath("nothing.png"))});
  ASSERT_TRUE(until([&] { return !join_->scan()->reading(); }));
  EXPECT_FALSE(join_->scan()->notice().isEmpty());
  join_->scan()->readFiles({QUrl::fromLocalFile(file)});
  ASSERT_TRUE(until([&] { return join_->step() == Step::Ask; }));
}

}  // namespace
}  // namespace jambline::screens
