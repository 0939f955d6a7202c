#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <gtest/gtest.h>

#include "screens/time_line_view_model.h"
#include "tests/screens_record/shown.h"

namespace jambline::screens {
namespace {

using TimeLineModel = TimeLineViewModel;

class TimeLine : public testing::Test {
 protected:
  TimeLine() : view_(*shown_.session) { shown_.open_green(); }
  int row(const std::string& words) { return row_of(view_, TimeLineModel::WordsRole, words); }

  Shown shown_;
  TimeLineModel view_;
};

TEST_F(TimeLine, EntriesStandNewestFirstWithPersonAndTime) {
  ASSERT_GT(view_.rowCount(), 10);
  EXPECT_EQ(text(view_, 0, TimeLineModel::WordsRole), "Note: door open, wet");
  EXPECT_EQ(text(view_, 0, TimeLineModel::PersonRole), "Ivo");
  const int last = view_.rowCount() - 1;
  // 14:35 UTC is 9:35 in New York.
  EXPECT_EQ(text(view_, last, TimeLineModel::TimeRole), "09:35");
  EXPECT_EQ(text(view_, last, TimeLineModel::DayRole), "Wed Nov 25");
  EXPECT_EQ(text(view_, last, TimeLineModel::DoubtRole), "");
  EXPECT_EQ(view_.countWords().toStdString(),
            std::to_string(view_.rowCount()) + " entries, newest first");
}

TEST_F(TimeLine, WhatWasTakenBackIsStruckAndSaysByWhom) {
  const int crater = row("Crater 2 placed on the hood");
  ASSERT_GE(crater, 0);
  EXPECT_TRUE(view_.data(view_.index(crater), TimeLineModel::TakenBackRole).toBool());
  EXPECT_EQ(text(view_, crater, TimeLineModel::TakenBackWordsRole), "taken back by Mara, 09:39");
  const int nib = row("Nib 1 placed on the hood");
  ASSERT_GE(nib, 0);
  EXPECT_FALSE(view_.data(view_.index(nib), TimeLineModel::TakenBackRole).toBool());
}

TEST_F(TimeLine, AGroupShowsOnlyItsKindsAndTheCountOfAll) {
  const int all = view_.rowCount();
  view_.set_group(TimeLineModel::Looks);
  EXPECT_EQ(row("Note: door open, wet"), -1);
  EXPECT_EQ(row("Inspect started"), -1);
  EXPECT_GE(row("Left fender: clean"), 0);
  EXPECT_EQ(view_.countWords().toStdString(), std::to_string(view_.rowCount()) + " of " +
                                                  std::to_string(all) + " entries, newest first");
  view_.set_group(TimeLineModel::Hours);
  EXPECT_GE(row("Inspect started"), 0);
  EXPECT_EQ(row("Left fender: clean"), -1);
  view_.set_group(TimeLineModel::HandOff);
  EXPECT_EQ(view_.rowCount(), 1);
  view_.set_group(TimeLineModel::Notes);
  EXPECT_EQ(view_.rowCount(), 1);
  view_.set_group(TimeLineModel::All);
  EXPECT_EQ(view_.rowCount(), all);
}

TEST_F(TimeLine, ARowOpensToItsRawRecord) {
  const QString id = view_.data(view_.index(0), TimeLineModel::EntryIdRole).toString();
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
  view_.open(view_.data(view_.index(fender), TimeLineModel::EntryIdRole).toString());
  ASSERT_TRUE(view_.openMayBeTakenBack());
  QSignalSpy taken(&view_, &TimeLineModel::takenBack);
  view_.takeBack(1);
  ASSERT_TRUE(until([&] { return view_.rowCount() == before + 1 && !taken.isEmpty(); }));
  EXPECT_EQ(text(view_, 0, TimeLineModel::WordsRole),
            "Taken back: Left fender: clean, because: wrong panel");
  EXPECT_TRUE(view_.data(view_.index(fender + 1), TimeLineModel::TakenBackRole).toBool());
  EXPECT_FALSE(view_.openMayBeTakenBack());
  EXPECT_EQ(resets.count(), 0);
}

TEST_F(TimeLine, WithdrawalsAndTheOpeningHaveNoTakeBack) {
  view_.open(view_
                 .data(view_.index(row("Taken back: Crater 2 placed on the hood")),
                       TimeLineModel::EntryIdRole)
                 .toString());
  EXPECT_TRUE(view_.opened());
  EXPECT_FALSE(view_.openMayBeTakenBack());
  view_.open(view_
                 .data(view_.index(row("Car opened: four-door sedan, combustion")),
                       TimeLineModel::EntryIdRole)
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
