// A manager's question on the running program at a desk, with keyboard and mouse and nothing else:
// half a plate, why was it late, what was passed over before the gun, is it proven.
#include <QDir>
#include <QProcess>
#include <QTemporaryDir>
#include <QtTest/qtestkeyboard.h>
#include <QtTest/qtestmouse.h>
#include <gtest/gtest.h>

#include "screens/bundle_view_model.h"
#include "screens/history_view_model.h"
#include "screens/record_view_model.h"
#include "tests/engine/every_command.h"
#include "tests/threads/screen_hand.h"

namespace jambline::walk {
namespace {

class ManagersHour : public testing::Test {
 protected:
  void SetUp() override {
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, -240};
    app::Options options;
    options.size = QSize(1440, 900);
    auto opened = app::Program::open(folder_.path().toStdString(), clock_, options);
    ASSERT_TRUE(opened);
    program_ = std::move(*opened);
    ASSERT_TRUE(program_->show());
    hand_ = std::make_unique<ScreenHand>(*program_);
    act(acts::AddPerson{"Rosa", job::Role::Manager}, {});
    rosa_ = shop().people.back().person;
    act(acts::AddPerson{"Ivo", job::Role::Painter}, rosa_);
    ivo_ = shop().people.back().person;
    act(acts::AddBooth{"Booth 1", job::BoothKind::Downdraft}, rosa_);
    act(acts::SetRespirator{{}, engine::hood_with_air()}, rosa_);
    open("S 88-014");
    const JobId late = open("K 41-207");
    act(acts::SayWait{late, job::WaitReason::Part}, ivo_);
    clock_.advance_ms(static_cast<std::int64_t>(26 * 60 * ms_per_min));
    act(acts::SayWait{late, job::WaitReason::Part, false}, ivo_);
    act(engine::spray_on(late, shop().booths.front().booth,
                         shop().air.respirators.front().respirator),
        ivo_);
    act(acts::GunDown{shop().booths.front().booth}, ivo_);
    program_->session().choosePerson(QString::fromStdString(rosa_.hex()));
  }
  void TearDown() override {
    hand_.reset();
    program_.reset();
  }

  const folds::ShopView& shop() { return *program_->engine().snapshot()->shop; }
  engine::Wrote act(acts::Command command, const PersonId& by) {
    auto wrote = engine::act(program_->engine(), std::move(command), by);
    EXPECT_TRUE(wrote) << wrote.error().operation << ", " << wrote.error().subject;
    clock_.advance_ms(static_cast<std::int64_t>(ms_per_min));
    QCoreApplication::processEvents();
    return wrote ? *wrote : engine::Wrote{};
  }
  JobId open(const char* plate) {
    acts::OpenCar car = engine::car_to_open();
    car.plate = plate;
    car.promised_ms = clock_.moment.wall_ms + static_cast<std::int64_t>(8 * ms_per_h);
    return act(car, rosa_).job;
  }
  void key(Qt::Key which, Qt::KeyboardModifiers with = Qt::NoModifier) {
    QTest::keyClick(&hand_->window(), which, with);
    hand_->wait_for_quiet(40, 600);
  }
  void type(const char* words) {
    for (const char* sign = words; *sign; ++sign) QTest::keyClick(&hand_->window(), *sign);
    hand_->wait_for_quiet(40, 600);
  }
  QQuickItem* here(const char* name) {
    QQuickItem* item = nullptr;
    hand_->wait_for([&] { return (item = hand_->find_named(name)) != nullptr; });
    return item;
  }
  void click(const char* name) {
    QQuickItem* item = here(name);
    ASSERT_NE(item, nullptr) << name;
    hand_->wait_for_quiet(60, 800);
    const QPointF middle = item->mapToScene(QPointF(item->width() / 2, item->height() / 2));
    ASSERT_TRUE(QRectF(QPointF(0, 0), QSizeF(hand_->window().size())).contains(middle))
        << name << " lies out of sight";
    QTest::mouseClick(&hand_->window(), Qt::LeftButton, Qt::NoModifier, middle.toPoint());
    hand_->wait_for_quiet(40, 600);
  }
  std::string words_of(const char* name) {
    QQuickItem* item = here(name);
    return item ? item->property("text").toString().toStdString() : "not there";
  }
  template <class Model>
  Model& model(const char* name) {
    auto* models = hand_->window().property("models").value<QObject*>();
    return *qobject_cast<Model*>(models->property(name).value<QObject*>());
  }
  struct Ended {
    int code;
    std::string said;
  };
  Ended ran(const QString& command) {
    QProcess shell;
    shell.setWorkingDirectory(out_.path());
    shell.setProcessChannelMode(QProcess::MergedChannels);
    shell.start(QStringLiteral("sh"), {QStringLiteral("-c"), command});
    if (!shell.waitForFinished(60'000)) return {-1, "did not end"};
    return {shell.exitCode(), shell.readAll().toStdString()};
  }
  void into_sight(const char* name) {
    QQuickItem* item = here(name);
    ASSERT_NE(item, nullptr) << name;
    item->forceActiveFocus();
    hand_->wait_for_quiet(60, 800);
  }
  bool has_focus(const char* name) {
    for (QQuickItem* at = hand_->window().activeFocusItem(); at; at = at->parentItem())
      if (at->objectName() == QLatin1String(name)) return true;
    return false;
  }

  QTemporaryDir folder_;
  QTemporaryDir out_;  // where a bundle goes
  FakeClock clock_;
  std::unique_ptr<app::Program> program_;
  std::unique_ptr<ScreenHand> hand_;
  PersonId rosa_;
  PersonId ivo_;
};

TEST_F(ManagersHour, HalfAPlateLeadsToWhatWasPassedOverAndItsProof) {
  key(Qt::Key_3);
  ASSERT_NE(here("recordTable"), nullptr);
  key(Qt::Key_Slash);
  ASSERT_TRUE(has_focus("recordSearch"));
  type("41-2");
  auto& record = model<screens::RecordViewModel>("record");
  ASSERT_TRUE(hand_->wait_for([&] { return !record.searching() && record.rowCount() == 1; }));
  key(Qt::Key_Down);
  ASSERT_TRUE(has_focus("recordTable"));
  key(Qt::Key_Down);
  ASSERT_TRUE(hand_->wait_for([&] { return record.car()->loaded(); }));
  EXPECT_EQ(words_of("paneTape"), "K 41-207");
  EXPECT_NE(words_of("paneDue").find("h late"), std::string::npos) << words_of("paneDue");
  ASSERT_EQ(record.car()->heldCount(), 1);
  ASSERT_EQ(record.car()->overrideCount(), 1);

  click("paneOverride");
  ASSERT_NE(here("historyEntry"), nullptr);
  EXPECT_NE(words_of("entryWords").find("Spraying started in Booth 1, without: "),
            std::string::npos)
      << words_of("entryWords");
  EXPECT_EQ(words_of("rawSignature").rfind("Verified: signed by ", 0), 0U)
      << words_of("rawSignature");
  key(Qt::Key_Escape);

  auto& history = model<screens::HistoryViewModel>("history");
  ASSERT_TRUE(hand_->wait_for([&] { return history.settled(); }));
  const int at = history.place();
  here("historyLanes")->forceActiveFocus();
  key(Qt::Key_Left);
  EXPECT_EQ(history.place(), at - 1);
  key(Qt::Key_Home);
  EXPECT_EQ(history.place(), 1);
  key(Qt::Key_End);
  EXPECT_EQ(history.place(), history.count());
  QQuickItem* lanes = here("historyLanes");
  const QPointF left = lanes->mapToScene(QPointF(lanes->width() * 0.5, 40));
  QTest::mousePress(&hand_->window(), Qt::LeftButton, Qt::NoModifier, left.toPoint());
  QTest::mouseMove(&hand_->window(), left.toPoint() - QPoint(120, 0));
  QTest::mouseRelease(&hand_->window(), Qt::LeftButton, Qt::NoModifier,
                      left.toPoint() - QPoint(120, 0));
  EXPECT_TRUE(hand_->wait_for([&] { return history.settled(); }));
  EXPECT_LT(history.place(), history.count()) << "the handle follows a drag";

  key(Qt::Key_Escape);
  ASSERT_NE(here("recordTable"), nullptr) << "back where it was asked for";
  EXPECT_TRUE(record.car()->loaded());
  EXPECT_EQ(record.search(), QStringLiteral("41-2"));

  click("paneOpen");
  click("carTimeLine");
  click("bundleAsked");
  click("paperPlace");
  key(Qt::Key_A, Qt::ControlModifier);
  type(out_.path().toUtf8().constData());
  auto& bundle = model<screens::BundleViewModel>("bundle");
  into_sight("bundleWrite");
  click("bundleWrite");
  ASSERT_TRUE(hand_->wait_for([&] { return !bundle.run()->busy() && !bundle.check().isEmpty(); }))
      << bundle.run()->what().toStdString();
  EXPECT_FALSE(bundle.run()->failed()) << bundle.run()->what().toStdString();
  const QStringList files = QDir(out_.path()).entryList({QStringLiteral("*.zip")}, QDir::Files);
  ASSERT_EQ(files.size(), 1);
  // What the screen says, word for word, with the program out of the bundle.
  const Ended unpacked = ran(QStringLiteral("python3 -m zipfile -e \"%1\" .").arg(files[0]));
  ASSERT_EQ(unpacked.code, 0) << unpacked.said;
  const Ended verified = ran(bundle.check());
  EXPECT_EQ(verified.code, 0) << verified.said;
  EXPECT_NE(verified.said.find("proven up to"), std::string::npos) << verified.said;
  key(Qt::Key_Escape);
  key(Qt::Key_3);
  ASSERT_NE(here("recordTable"), nullptr);
  here("recordTable")->forceActiveFocus();
  key(Qt::Key_Escape);
  EXPECT_EQ(record.search(), QString()) << "Esc empties the search";
  key(Qt::Key_Escape);
  EXPECT_EQ(record.car()->job(), QString()) << "then it lets the car go";
}

}  // namespace
}  // namespace jambline::walk
