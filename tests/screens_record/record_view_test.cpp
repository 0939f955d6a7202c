#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <gtest/gtest.h>

#include "screens/record_view_model.h"
#include "tests/screens_record/shown.h"

namespace jambline::screens {
namespace {

using View = RecordViewModel;

class Record : public testing::Test {
 protected:
  Record() : view_(*shown_.session) {
    view_.wake();
    Shown::wait([this] { return view_.loaded(); });
  }
  std::string plates() {
    std::string out;
    for (int row = 0; row < view_.rowCount(); ++row)
      out += (row ? ", " : "") + text(view_, row, View::PlateRole);
    return out;
  }
  std::string found(const char* search) {
    view_.set_search(QString::fromUtf8(search));
    Shown::wait([this] { return !view_.searching(); });
    return plates();
  }

  Shown shown_;
  View view_;
};

TEST_F(Record, AllCarsStandNewestFirstWithTheirCount) {
  EXPECT_EQ(plates(), "K 41-206, S 88-014");
  EXPECT_EQ(view_.countWords().toStdString(), "2 cars");
  EXPECT_EQ(text(view_, 0, View::StateRole), "next: inspect");
  EXPECT_EQ(text(view_, 0, View::HoursRole), "0.1 h");
  EXPECT_EQ(text(view_, 0, View::MarksRole), "1");
  EXPECT_EQ(view_.jobIdAt(0).toStdString(), shown_.shop.green.hex());
  EXPECT_EQ(view_.jobIdAt(2), QString());
}

TEST_F(Record, HalfAPlateInAnyWritingAndWordsInAnyOrderFind) {
  for (const char* search :
       {"K 41-206", "k41206", "41-2", "206", "green deep", "g7", "  deep   k  ", "sedan green"})
    EXPECT_EQ(found(search), "K 41-206") << search;
  EXPECT_EQ(found("sedan"), "K 41-206, S 88-014");
  EXPECT_EQ(found("red green"), "");
  EXPECT_EQ(view_.countWords().toStdString(), "0 of 2 cars");
  view_.dropLastWord();
  ASSERT_TRUE(Shown::wait([this] { return !view_.searching(); }));
  EXPECT_EQ(view_.search(), QStringLiteral("red"));
  EXPECT_EQ(plates(), "S 88-014");
  EXPECT_EQ(found(" - "), "K 41-206, S 88-014");
}

TEST_F(Record, AHitThatIsNotInPlainSightSaysWhereItIs) {
  EXPECT_EQ(found("r3"), "S 88-014");
  EXPECT_EQ(text(view_, 0, View::HitRole), "color code R3");
  found("red");
  EXPECT_EQ(text(view_, 0, View::HitRole), "");
  EXPECT_EQ(found("nib ivo"), "K 41-206");
  EXPECT_EQ(text(view_, 0, View::HitRole), "mark: nib · person: Ivo");
}

TEST_F(Record, WhatIsTypedFastIsAnsweredOnceAndSignsMeanNothing) {
  for (const char* typed : {"k", "k4", "k41", "s88"}) view_.set_search(QString::fromUtf8(typed));
  ASSERT_TRUE(Shown::wait([this] { return !view_.searching(); }));
  EXPECT_EQ(plates(), "S 88-014");
  EXPECT_EQ(found("\"s 88* OR (NEAR"), "");
  EXPECT_EQ(found("\"88*"), "S 88-014");
  EXPECT_EQ(found(std::string(10'000, 'x').c_str()), "");
  EXPECT_EQ(found(""), "K 41-206, S 88-014");
  EXPECT_EQ(text(view_, 0, View::HitRole), "");
}

TEST_F(Record, AColumnSortsAndTheSameAgainTurnsIt) {
  view_.sortBy(View::Car);
  EXPECT_EQ(plates(), "K 41-206, S 88-014");
  EXPECT_FALSE(view_.sortDown());
  view_.sortBy(View::Car);
  EXPECT_EQ(plates(), "S 88-014, K 41-206");
  view_.sortBy(View::Marks);
  EXPECT_TRUE(view_.sortDown());
  EXPECT_EQ(plates(), "K 41-206, S 88-014");
}

TEST_F(Record, ANewCarComesByItself) {
  const QAbstractItemModelTester tester(&view_);
  shown_.session->post(acts::OpenCar{.plate = "T 61-330",
                                     .body = job::BodyShape::CargoVan,
                                     .panels = {{job::Panel::Hood}},
                                     .operations = {{job::Stage::Inspect}}});
  ASSERT_TRUE(Shown::wait([this] { return view_.rowCount() == 3; }));
  EXPECT_EQ(text(view_, 0, View::PlateRole), "T 61-330");
}

TEST_F(Record, TheCheckOfAllEntriesSaysHowFarTheyAreProven) {
  IntegrityViewModel& check = *view_.integrity();
  QSignalSpy progress(&check, &IntegrityViewModel::progressChanged);
  check.start();
  EXPECT_EQ(check.state(), IntegrityViewModel::Running);
  ASSERT_TRUE(Shown::wait([&] { return check.state() != IntegrityViewModel::Running; }));
  EXPECT_EQ(check.state(), IntegrityViewModel::Sound) << check.what().toStdString();
  EXPECT_EQ(check.fingerprint().size(), 39);  // eight groups of four and seven hyphens
  ASSERT_EQ(check.proven()->rowCount(), 1);
  // One entry (ShopFounded) is the log's own, beside those that people made.
  const auto entries = shown_.session->snapshot().own_entries;
  EXPECT_EQ(text(*check.proven(), 0, DetailRows::ValueRole),
            "proven up to entry " + std::to_string(entries));
  EXPECT_GT(progress.count(), 0);
}

}  // namespace
}  // namespace jambline::screens
