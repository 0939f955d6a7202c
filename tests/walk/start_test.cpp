// What is there at a start: the floor with the first frame, all the rest a moment later by itself,
// and at once whatever is asked for before that.
#include <QJSValue>
#include <QTemporaryDir>
#include <QtTest/qtestkeyboard.h>
#include <gtest/gtest.h>

#include "item.h"
#include "tests/threads/screen_hand.h"

namespace jambline::walk {
namespace {

class AtAStart : public testing::Test {
 protected:
  void SetUp() override {
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, -240};
    app::Options options;
    options.size = QSize(412, 892);
    auto opened = app::Program::open(folder_.path().toStdString(), clock_, options);
    ASSERT_TRUE(opened);
    program_ = std::move(*opened);
    ASSERT_TRUE(program_->show());
    hand_ = std::make_unique<ScreenHand>(*program_);
  }
  void TearDown() override {
    hand_.reset();
    program_.reset();
  }

  bool is_made(const char* type) { return made_below(hand_->window().contentItem(), type); }
  // Hidden or not.
  static bool made_below(const QQuickItem* item, const char* type) {
    if (is_kind(*item, type)) return true;
    const auto children = item->childItems();
    return std::any_of(children.begin(), children.end(),
                       [&](const QQuickItem* child) { return made_below(child, type); });
  }
  bool sees(const char* type) {
    return find(*hand_->window().contentItem(),
                [&](QQuickItem& item) { return is_kind(item, type); }) != nullptr;
  }

  QTemporaryDir folder_;
  FakeClock clock_;
  std::unique_ptr<app::Program> program_;
  std::unique_ptr<ScreenHand> hand_;
};

TEST_F(AtAStart, TheFirstFrameHasTheFloorAndTheRestComesByItself) {
  int frames = 0;
  bool floor = false, turns = true, sheets = true;
  QObject::connect(&hand_->window(), &QQuickWindow::frameSwapped, &hand_->window(), [&] {
    if (frames++ > 0) return;
    floor = sees("Floor");
    turns = is_made("Turns");
    sheets = is_made("Sheets");
  });
  ASSERT_TRUE(hand_->wait_for([&] { return frames > 0; }));
  EXPECT_TRUE(floor);
  EXPECT_FALSE(turns);
  EXPECT_FALSE(sheets);
  EXPECT_TRUE(hand_->wait_for([&] { return is_made("Turns") && is_made("Sheets"); }));
}

TEST_F(AtAStart, AScreenThatIsAskedForBeforeThatIsThereAtOnce) {
  auto* way = hand_->window().property("way").value<QObject*>();
  ASSERT_NE(way, nullptr);
  ASSERT_FALSE(is_made("OpenCar"));
  QMetaObject::invokeMethod(way, "toPlace", Q_ARG(int, 2));
  EXPECT_TRUE(is_made("Record"));
}

TEST_F(AtAStart, FirstAidIsOneKeyFromTheFirstFrame) {
  ASSERT_FALSE(is_made("FirstAid"));
  hand_->window().contentItem()->setFocus(true);
  QTest::sendKeyEvent(QTest::Click, &hand_->window(), Qt::Key_F1, QString(), Qt::NoModifier);
  EXPECT_TRUE(sees("FirstAid"));
}

TEST_F(AtAStart, WhatIsHalfMadeIsMadeWholeWhenItIsAskedFor) {
  QObject* over = nullptr;
  for (QQuickItem* child : hand_->window().contentItem()->childItems())
    if (child->property("file").toString() == QLatin1String("Sheets.qml")) over = child;
  ASSERT_NE(over, nullptr);
  const auto is_begun = [&] { return !over->property("growing").value<QJSValue>().isNull(); };
  ASSERT_TRUE(hand_->wait_for(is_begun));
  QVariant sheets;
  QMetaObject::invokeMethod(&hand_->window(), "sheets", Q_RETURN_ARG(QVariant, sheets));
  auto* made = sheets.value<QObject*>();
  ASSERT_NE(made, nullptr);
  EXPECT_EQ(over->property("item").value<QObject*>(), made);
  QMetaObject::invokeMethod(made->property("firstAid").value<QObject*>(), "open");
  EXPECT_TRUE(sees("FirstAid"));
}

// It is the same one when what was begun meanwhile would be ready.
TEST_F(AtAStart, WhatWasAskedForIsMadeOnce) {
  QVariant first, later;
  QMetaObject::invokeMethod(&hand_->window(), "sheets", Q_RETURN_ARG(QVariant, first));
  hand_->wait_for_quiet();
  QMetaObject::invokeMethod(&hand_->window(), "sheets", Q_RETURN_ARG(QVariant, later));
  ASSERT_NE(first.value<QObject*>(), nullptr);
  EXPECT_EQ(first.value<QObject*>(), later.value<QObject*>());
  int count = 0;
  std::function<void(const QQuickItem*)> look = [&](const QQuickItem* item) {
    count += is_kind(*item, "Sheets") ? 1 : 0;
    for (const QQuickItem* child : item->childItems()) look(child);
  };
  look(hand_->window().contentItem());
  EXPECT_EQ(count, 1);
}

}  // namespace
}  // namespace jambline::walk
