#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <gtest/gtest.h>
#include <thread>

#include "screens/record_view_model.h"
#include "tests/screens_record/shown.h"

namespace jambline::screens {
namespace {

using View = RecordViewModel;

class Record : public testing::Test {
 protected:
  Record() : view_(*shown_.session) {
    view_.wake();
    until([this] { return view_.loaded(); });
  }
  std::string plates() {
    std::string out;
    for (int row = 0; row < view_.rowCount(); ++row)
      out += (row ? ", " : "") + text(view_, row, View::PlateRole);
    return out;
  }
  std::string found(const char* search) {
    view_.set_search(QString::fromUtf8(search));
    until([this] { return !view_.searching(); });
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
  ASSERT_TRUE(until([this] { return !view_.searching(); }));
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
  ASSERT_TRUE(until([this] { return !view_.searching(); }));
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
  ASSERT_TRUE(until([this] { return view_.rowCount() == 3; }));
  EXPECT_EQ(text(view_, 0, View::PlateRole), "T 61-330");
}

TEST_F(Record, TheCheckOfAllEntriesSaysHowFarTheyAreProven) {
  IntegrityViewModel& check = *view_.integrity();
  check.check_by([this](const std::stop_token& stop, const std::function<void(double)>& progress) {
    return engine::check_integrity(shown_.shop.folder, stop, progress);
  });
  QSignalSpy progress(&check, &IntegrityViewModel::progressChanged);
  check.start();
  EXPECT_EQ(check.state(), IntegrityViewModel::Running);
  ASSERT_TRUE(until([&] { return check.state() != IntegrityViewModel::Running; }));
  EXPECT_EQ(check.state(), IntegrityViewModel::Sound) << check.what().toStdString();
  EXPECT_EQ(check.fingerprint().size(), 39);  // eight groups of four and seven hyphens
  ASSERT_EQ(check.proven()->rowCount(), 1);
  // One entry (ShopFounded) is the log's own, beside those that people made.
  const auto entries = shown_.session->snapshot().own_entries;
  EXPECT_EQ(
      text(*check.proven(), 0, DetailRows::ValueRole),
      "proven up to entry " + std::to_string(entries) + "; no hub: proven by this device only");
  EXPECT_GT(progress.count(), 0);
  EXPECT_EQ(check.findingCount(), 0);
}

TEST_F(Record, AFindingSaysWhatItMeansAndLeadsToItsEntry) {
  engine::Integrity found;
  engine::Finding jumped{engine::FindingKind::ClockJumped};
  jumped.device = shown_.session->snapshot().devices.front().device;
  jumped.seq_first = 12;
  jumped.seq_last = 14;
  jumped.entry.bytes[0] = 7;
  jumped.job = shown_.shop.green;
  jumped.wall_ms = morning_ms;
  engine::Finding forked{engine::FindingKind::Forked};
  forked.device = jumped.device;
  forked.seq_first = forked.seq_last = 20;
  forked.from = DeviceId{{9}};
  found.findings = {jumped, forked};
  found.counts[static_cast<std::size_t>(engine::FindingKind::ClockJumped)] = 3;
  found.counts[static_cast<std::size_t>(engine::FindingKind::Forked)] = 1;
  found.audit.first_bad = Error{Code::ChainBroken, "check", "entry", {}}
                              .with("device", jumped.device.hex())
                              .with("seq", "21");
  IntegrityViewModel& check = *view_.integrity();
  check.check_by([found](const std::stop_token&, const std::function<void(double)>&) {
    return Result<engine::Integrity>(found);
  });
  QSignalSpy entry(&check, &IntegrityViewModel::entryAsked);
  QSignalSpy devices(&check, &IntegrityViewModel::devicesAsked);
  check.start();
  ASSERT_TRUE(until([&] { return check.state() != IntegrityViewModel::Running; }));
  EXPECT_EQ(check.state(), IntegrityViewModel::Bad);
  EXPECT_EQ(check.what().toStdString(), "First bad entry: number 21 of cart 1.");
  EXPECT_EQ(check.means().toStdString(),
            "It does not follow from the entry before it: one is gone, or was put in.");
  EXPECT_FALSE(check.todo().isEmpty());
  ASSERT_EQ(check.findingCount(), 2);
  EXPECT_EQ(check.leftOut().toStdString(), "2 more of the same kinds are not listed.");
  const auto said = [&](int row, int role) {
    return check.findings()
        ->data(check.findings()->index(row, 0), Qt::UserRole + role)
        .toString()
        .toStdString();
  };
  EXPECT_EQ(said(0, 1), "The clock jumped: 3 times");
  EXPECT_EQ(said(0, 3), "Entries 12 to 14 of cart 1, made Wed Nov 25 09:30");
  EXPECT_EQ(said(1, 1), "A copied folder");
  check.open(QStringLiteral("0"));
  ASSERT_EQ(entry.count(), 1);
  EXPECT_EQ(entry.front().front().toString().toStdString(), shown_.shop.green.hex());
  check.open(QStringLiteral("1"));
  EXPECT_EQ(devices.count(), 1);
  check.open(QStringLiteral("9"));
  EXPECT_EQ(entry.count() + devices.count(), 2);
}

TEST_F(Record, ACheckThatIsStoppedSaysNothing) {
  IntegrityViewModel& check = *view_.integrity();
  check.check_by([](const std::stop_token& stop, const std::function<void(double)>&) {
    while (!stop.stop_requested()) std::this_thread::yield();
    return Result<engine::Integrity>(fail(Code::Stopped, "check", "log.db"));
  });
  check.start();
  check.stop();
  ASSERT_TRUE(until([&] { return check.state() != IntegrityViewModel::Running; }));
  EXPECT_EQ(check.state(), IntegrityViewModel::Stopped);
}

}  // namespace
}  // namespace jambline::screens
