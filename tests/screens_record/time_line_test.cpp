#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <gtest/gtest.h>

#include "screens/time_line_view_model.h"
#include "tests/screens_record/shown.h"

namespace jambline::screens {
namespace {

using View = TimeLineViewModel;

class TimeLine : public testing::Test {
 protected:
  TimeLine() : view_(*shown_.session) { shown_.open_green(); }
  int row(const std::string& words) { return row_of(view_, View::WordsRole, words); }

  Shown shown_;
  View view_;
};

TEST_F(TimeLine, EntriesStandNewestFirstWithPersonAndTime) {
  ASSERT_GT(view_.rowCount(), 10);
  EXPECT_EQ(text(view_, 0, View::WordsRole), "Note: door open, wet");
  EXPECT_EQ(text(view_, 0, View::PersonRole), "Ivo");
  const int last = view_.rowCount() - 1;
  // 14:35 UTC is 9:35 in New York.
  EXPECT_EQ(text(view_, last, View::TimeRole), "09:35");
  EXPECT_EQ(text(view_, last, View::DayRole), "Wed Nov 25");
  EXPECT_EQ(text(view_, last, View::DoubtRole), "");
  EXPECT_EQ(view_.countWords().toStdString(),
            std::to_string(view_.rowCount()) + " entries, newest first");
}

TEST_F(TimeLine, WhatWasTakenBackIsStruckAndSaysByWhom) {
  const int crater = row("Crater 2 placed on the hood");
  ASSERT_GE(crater, 0);
  EXPECT_TRUE(view_.data(view_.index(crater), View::TakenBackRole).toBool());
  EXPECT_EQ(text(view_, crater, View::TakenBackWordsRole), "taken back by Mara, 09:39");
  const int nib = row("Nib 1 placed on the hood");
  ASSERT_GE(nib, 0);
  EXPECT_FALSE(view_.data(view_.index(nib), View::TakenBackRole).toBool());
}

TEST_F(TimeLine, AGroupShowsOnlyItsKindsAndTheCountOfAll) {
  const int all = view_.rowCount();
  view_.set_group(View::Looks);
  EXPECT_EQ(row("Note: door open, wet"), -1);
  EXPECT_EQ(row("Inspect started"), -1);
  EXPECT_GE(row("Left fender: clean"), 0);
  EXPECT_EQ(view_.countWords().toStdString(), std::to_string(view_.rowCount()) + " of " +
                                                  std::to_string(all) + " entries, newest first");
  view_.set_group(View::Hours);
  EXPECT_GE(row("Inspect started"), 0);
  EXPECT_EQ(row("Left fender: clean"), -1);
  view_.set_group(View::HandOff);
  EXPECT_EQ(view_.rowCount(), 1);
  view_.set_group(View::Notes);
  EXPECT_EQ(view_.rowCount(), 1);
  view_.set_group(View::All);
  EXPECT_EQ(view_.rowCount(), all);
}

TEST_F(TimeLine, ARowOpensToItsRawRecord) {
  const QString id = view_.data(view_.index(0), View::EntryIdRole).toString();
  view_.open(id);
  EXPECT_TRUE(view_.opened());
  EXPECT_EQ(view_.openWords().toStdString(), "Note: door open, wet");
  const auto& details = *view_.details();
  EXPECT_EQ(row_of(details, DetailRows::ValueRole, id.toStdString()),
            row_of(details, DetailRows::LabelRole, "Hash"));
  EXPECT_EQ(row_of(details, DetailRows::ValueRole, "NoteWritten, number 170, schema 1"),
            row_of(details, DetailRows::LabelRole, "Kind"));
  view_.close();
  EXPECT_FALSE(view_.opened());
  EXPECT_EQ(details.rowCount(), 0);
}

TEST_F(TimeLine, TakeBackWritesAWithdrawalWithItsReasonAndOnlyAddsARow) {
  QAbstractItemModelTester tester(&view_);
  QSignalSpy resets(&view_, &QAbstractItemModel::modelReset);
  const int before = view_.rowCount();
  const int fender = row("Left fender: clean");
  ASSERT_GE(fender, 0);
  view_.open(view_.data(view_.index(fender), View::EntryIdRole).toString());
  ASSERT_TRUE(view_.openMayBeTakenBack());
  QSignalSpy taken(&view_, &View::takenBack);
  view_.takeBack(1);
  ASSERT_TRUE(Shown::wait([&] { return view_.rowCount() == before + 1 && !taken.isEmpty(); }));
  EXPECT_EQ(text(view_, 0, View::WordsRole),
            "Taken back: Left fender: clean, because: wrong panel");
  EXPECT_TRUE(view_.data(view_.index(fender + 1), View::TakenBackRole).toBool());
  EXPECT_FALSE(view_.openMayBeTakenBack());
  EXPECT_EQ(resets.count(), 0);
}

TEST_F(TimeLine, WithdrawalsAndTheOpeningHaveNoTakeBack) {
  view_.open(
      view_.data(view_.index(row("Taken back: Crater 2 placed on the hood")), View::EntryIdRole)
          .toString());
  EXPECT_TRUE(view_.opened());
  EXPECT_FALSE(view_.openMayBeTakenBack());
  view_.open(
      view_.data(view_.index(row("Car opened: four-door sedan, combustion")), View::EntryIdRole)
          .toString());
  EXPECT_TRUE(view_.opened());
  EXPECT_FALSE(view_.openMayBeTakenBack());
}

TEST_F(TimeLine, WithoutACarThereIsNothing) {
  shown_.session->leaveCar();
  EXPECT_EQ(view_.rowCount(), 0);
  EXPECT_TRUE(view_.empty());
}

}  // namespace
}  // namespace jambline::screens
