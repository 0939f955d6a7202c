#include <QAbstractItemModelTester>
#include <gtest/gtest.h>

#include "entries/entry.h"
#include "screens/history_view_model.h"
#include "screens/record_car_view_model.h"
#include "tests/screens_record/shown.h"

namespace jambline::screens {
namespace {

class CarHistory : public testing::Test {
 protected:
  CarHistory() : time_line_(*shown_.session), history_(*shown_.session, time_line_) {
    shown_.open_green();
    time_line_.read_raw_by(
        [this](const Hash& entry) { return engine::raw_entry(shown_.shop.folder, entry); });
    history_.wake();
    settle();
  }
  void settle() {
    ASSERT_TRUE(until([this] { return history_.settled(); }));
  }
  void step(int by) {
    history_.step(by);
    settle();
  }
  QVariant mark(int row, int role) {
    return history_.carMarks()->data(history_.carMarks()->index(row, 0), Qt::UserRole + role);
  }
  std::string newest() { return text(history_, 0, TimeLineViewModel::WordsRole); }
  std::vector<std::string> lanes() {
    std::vector<std::string> out;
    for (const auto& lane : history_.lanes())
      out.push_back(lane.toMap().value(QStringLiteral("name")).toString().toStdString());
    return out;
  }

  Shown shown_;
  TimeLineViewModel time_line_;
  HistoryViewModel history_;
};

TEST_F(CarHistory, TheHandleStandsAtTheEndAndStepsEntryByEntry) {
  const QAbstractItemModelTester tester(&history_);
  const int all = time_line_.rowCount();
  EXPECT_EQ(history_.count(), all);
  EXPECT_EQ(history_.place(), all);
  EXPECT_EQ(history_.rowCount(), all);
  EXPECT_EQ(lanes(), (std::vector<std::string>{"Ivo", "Entries"}));
  step(-1);
  EXPECT_EQ(history_.rowCount(), all - 1);
  step(-1'000'000);
  EXPECT_EQ(history_.place(), 1);
  EXPECT_EQ(history_.rowCount(), 1);
  EXPECT_TRUE(history_.handleWords().endsWith(QStringLiteral("entry 1 of %1").arg(all)))
      << history_.handleWords().toStdString();
  step(1'000'000);
  EXPECT_EQ(history_.place(), all);
}

TEST_F(CarHistory, MarksAppearAndGoAsTheHandleGoesOn) {
  ASSERT_EQ(history_.carMarks()->rowCount(), 1);
  history_.moveTo(history_.startMs());
  settle();
  EXPECT_EQ(history_.carMarks()->rowCount(), 0);
  EXPECT_EQ(history_.markWords().toStdString(), "No mark on the car then");
  EXPECT_FALSE(history_.panels().value(QStringLiteral("left fender")).toBool());
  int most = 0;
  while (history_.place() < history_.count()) {
    step(1);
    most = std::max(most, history_.carMarks()->rowCount());
  }
  EXPECT_EQ(most, 2) << "the one that was taken back was there for a while";
  EXPECT_EQ(history_.carMarks()->rowCount(), 1);
  EXPECT_EQ(mark(0, 1).toInt(), 1);
  EXPECT_EQ(mark(0, 6).toString().toStdString(), "Nib 1, hood, open");
  EXPECT_TRUE(history_.panels().value(QStringLiteral("left fender")).toBool());
}

TEST_F(CarHistory, ADragIsAnsweredByTheNewestPlaceOnly) {
  for (int i = 0; i <= 100; ++i)
    history_.moveTo(history_.startMs() + (history_.endMs() - history_.startMs()) * i / 100);
  history_.moveTo(history_.startMs());
  settle();
  EXPECT_EQ(history_.carMarks()->rowCount(), 0);
}

TEST_F(CarHistory, WhatComesOnMovesAHandleThatStandsAtTheEnd) {
  const int all = history_.count();
  shown_.session->post(acts::WriteNote{shown_.shop.green, "one more"});
  ASSERT_TRUE(until([&] { return history_.count() == all + 1 && history_.settled(); }));
  EXPECT_EQ(history_.place(), all + 1);
  EXPECT_EQ(newest(), "Note: one more");
  step(-3);
  shown_.session->post(acts::WriteNote{shown_.shop.green, "and another"});
  ASSERT_TRUE(until([&] { return history_.count() == all + 2 && history_.settled(); }));
  EXPECT_EQ(history_.place(), all - 2);
}

TEST_F(CarHistory, AnEntryIsShownWithItsRawRecord) {
  const int row = row_of(history_, TimeLineViewModel::WordsRole, "Left fender: clean");
  ASSERT_GE(row, 0);
  const QString entry =
      history_.data(history_.index(row, 0), TimeLineViewModel::EntryIdRole).toString();
  history_.showEntry(entry);
  ASSERT_TRUE(until([this] { return time_line_.rawRead() && history_.settled(); }));
  EXPECT_EQ(newest(), "Left fender: clean");
  EXPECT_TRUE(time_line_.opened());
  EXPECT_TRUE(time_line_.rawGood());
  EXPECT_EQ(time_line_.rawSignature().toStdString(), "Verified: signed by cart 1.");
  EXPECT_EQ(time_line_.rawReceipts().join(QChar(' ')).toStdString(),
            "No receipt of a hub yet: this device's word alone.");
  for (const char* field : {"entry_hash: ", "prev_hash: ", "signature: ", "payload: {", "header: "})
    EXPECT_TRUE(time_line_.rawText().contains(QLatin1String(field))) << field;
  EXPECT_TRUE(time_line_.rawText().contains(entry));
}

TEST_F(CarHistory, AnEntryOfTheFutureIsTold) {
  entries::Entry future = shown_.session->snapshot().timeline->back();
  future.kind = 4711;
  future.order.seq += 1;
  future.order.hlc += 1;
  future.hash.bytes[0] ^= 1;
  future.payload = entries::UnknownEntry{"kind"};
  auto timeline =
      std::make_shared<std::vector<entries::Entry>>(*shown_.session->snapshot().timeline);
  timeline->push_back(future);
  auto snapshot = std::make_shared<engine::Snapshot>(shown_.session->snapshot());
  ++snapshot->number;
  snapshot->timeline = timeline;
  shown_.session->publish(snapshot);
  const auto all = static_cast<int>(timeline->size());
  ASSERT_TRUE(until([&] { return history_.count() == all && history_.settled(); }));
  EXPECT_EQ(newest(), "Entry of a newer version, kept as it is");
  EXPECT_EQ(history_.carMarks()->rowCount(), 1) << "the rest is told all the same";
}

class RecordCar : public testing::Test {
 protected:
  RecordCar() : car_(*shown_.session) {}
  void choose(const JobId& job) {
    car_.choose(QString::fromStdString(job.hex()));
    ASSERT_TRUE(until([this] { return car_.loaded(); }));
  }
  Shown shown_;
  RecordCarViewModel car_;
};

TEST_F(RecordCar, TheChosenCarIsToldAndKeysMayRunOverOthers) {
  EXPECT_FALSE(car_.loaded());
  car_.choose(QString::fromStdString(shown_.shop.other.hex()));
  choose(shown_.shop.green);
  EXPECT_EQ(car_.plate().toStdString(), "K 41-206");
  EXPECT_EQ(car_.look().toStdString(), "deep green · four-door sedan");
  EXPECT_EQ(car_.hoursWords().toStdString(), "0.1 h clocked, 2.5 h estimated");
  ASSERT_EQ(car_.stages()->rowCount(), 2);
  EXPECT_EQ(car_.overrideCount(), 0);
  EXPECT_FALSE(car_.open().isEmpty());
  EXPECT_EQ(car_.last()->rowCount(), 6);
  car_.choose({});
  EXPECT_EQ(car_.plate(), QString());
}

TEST_F(RecordCar, WhatWasPassedOverAndWhatHeldItAreThere) {
  shown_.session->post(acts::SetPromise{shown_.shop.green, morning_ms - 26 * 3'600'000});
  shown_.session->post(acts::SayWait{shown_.shop.green, job::WaitReason::Part, true});
  choose(shown_.shop.green);
  ASSERT_TRUE(until([this] { return car_.heldCount() == 1; }));
  EXPECT_TRUE(car_.late());
  EXPECT_TRUE(car_.dueWords().endsWith(QStringLiteral("h late"))) << car_.dueWords().toStdString();
}

}  // namespace
}  // namespace jambline::screens
