// Dirt over time: the page's numbers are those of trade::dirt_chart for the cars and the changes;
// ratios, intervals and chances beside the words are from R 4.2's poisson.test, the dates from the
// calendar.
#include <gtest/gtest.h>

#include "screens/dirt_over_time_view_model.h"
#include "tests/screens_record/shown.h"

namespace jambline::screens {
namespace {

constexpr std::int64_t day_ms = 86'400'000;
constexpr std::uint64_t later_than_any = 1'000'000;

template <class Id>
Id id_of(std::uint8_t kind, int number) {
  Id out;
  out.bytes[0] = kind;
  out.bytes[1] = static_cast<std::uint8_t>(number);
  return out;
}

class DirtOverTime : public testing::Test {
 protected:
  // Booth 1: 31 cars of 8 nibs, new filters, 40 cars of 5 (one of 6), new suits, 6 cars of 9; 3 m2
  // each, one every second day. Booth 2: 20 cars of 4 on 2 m2, a new hose, 20 more like them.
  DirtOverTime() {
    folds::ShopView shop = shown_.session->shop();
    shop.people.push_back({rosa_, "Rosa", job::Role::Manager, false, {}, {}});
    shop.booths = {{booth_1_, "Booth 1", {}, {}}, {booth_2_, "Booth 2", {}, {}}};
    const auto log = [&](int number, const BoothId& booth, job::BoothEvent what, int days_ago) {
      shop.booth_events.push_back({id_of<BoothEventId>(9, number),
                                   booth,
                                   what,
                                   morning_ms - days_ago * day_ms,
                                   {},
                                   shown_.shop.ivo,
                                   {}});
    };
    log(1, booth_1_, job::BoothEvent::FiltersChanged, 93);
    log(2, booth_2_, job::BoothEvent::NewHose, 60);
    log(3, booth_1_, job::BoothEvent::NewSuits, 13);
    shop_ = std::make_shared<folds::ShopView>(shop);
    for (int i = 0; i < 77; ++i) {
      const int nibs = i < 31 ? 8 : i == 31 ? 6 : i < 71 ? 5 : 9;
      add(booth_1_, 154 - 2 * i, nibs, 3, i < 31 ? shown_.shop.ivo : shown_.shop.mara);
    }
    for (int i = 0; i < 40; ++i) add(booth_2_, i < 20 ? 100 - 2 * i : 99 - 2 * i, 4, 2, rosa_);
  }
  void add(const BoothId& booth, int days_ago, int nibs, double area_m2, const PersonId& painter) {
    folds::Lesson lesson;
    lesson.job = id_of<JobId>(7, static_cast<int>(lessons_.size()));
    lesson.counted = true;
    lesson.sprayed_ms = morning_ms - days_ago * day_ms;
    lesson.booth = booth;
    lesson.painters = {painter};
    lesson.nibs = nibs;
    lesson.sprayed_m2 = area_m2;
    lessons_.push_back(lesson);
  }
  void publish() {
    auto next = std::make_shared<engine::Snapshot>(*shown_.shop.engine->snapshot());
    next->number = later_than_any + ++published_;
    next->shop = shop_;
    next->lessons = std::make_shared<std::vector<folds::Lesson>>(lessons_);
    shown_.session->publish(next);
    settled();
  }
  // Until the answer to the last question has come.
  void settled() {
    until([this] { return shown_.session->snapshot().number > later_than_any; });
    bool passed = false;
    for (int i = 0; i < 2; ++i) {
      passed = false;
      shown_.session->calculate(shown_.session.get(), [&] { return [&] { passed = true; }; });
      ASSERT_TRUE(until([&] { return passed; }));
    }
  }
  void be(const PersonId& person) {
    shown_.session->choosePerson(QString::fromStdString(person.hex()));
    settled();
  }
  void ask(const char* key, const char* words) {
    view_.answerWith(key, static_cast<int>(view_.choices(key).indexOf(words)));
    settled();
  }
  std::string said() const {
    QStringList out;
    for (const auto& part : view_.question())
      out << part.toMap()[QStringLiteral("text")].toString();
    return out.join(QChar(' ')).toStdString();
  }
  std::string row(QAbstractItemModel* model, int at, const char* role) const {
    return text(*model, at, model->roleNames().key(role));
  }

  Shown shown_;
  const PersonId rosa_ = id_of<PersonId>(1, 1);
  const BoothId booth_1_ = id_of<BoothId>(8, 1);
  const BoothId booth_2_ = id_of<BoothId>(8, 2);
  std::shared_ptr<const folds::ShopView> shop_;
  std::vector<folds::Lesson> lessons_;
  std::uint64_t published_ = 0;
  DirtOverTimeViewModel view_{*shown_.session};
};

TEST_F(DirtOverTime, TheNumbersShownAreThoseOfTheCalculation) {
  publish();
  view_.wake();
  settled();
  ASSERT_EQ(view_.state(), DirtOverTimeViewModel::Shown);
  trade::DirtChart chart;
  auto cars = lessons_;
  std::stable_sort(cars.begin(), cars.end(),
                   [](const auto& a, const auto& b) { return a.sprayed_ms < b.sprayed_ms; });
  for (const auto& car : cars)
    chart.jobs.push_back({static_cast<double>(car.sprayed_ms) / day_ms, car.nibs, car.sprayed_m2});
  for (const auto& event : shop_->booth_events)
    chart.events.push_back({static_cast<double>(event.happened_ms) / day_ms, ""});
  const auto result = trade::dirt_chart(chart);
  ASSERT_TRUE(result);
  shown_.session->set_units(Units::Metric);
  ASSERT_EQ(view_.days().size(), 117);
  for (int i = 0; i < 117; ++i) {
    const auto& point = result->points[static_cast<std::size_t>(i)];
    EXPECT_DOUBLE_EQ(view_.rates()[i], point.rate_m2);
    EXPECT_DOUBLE_EQ(view_.lows()[i], point.limits.low);
    EXPECT_DOUBLE_EQ(view_.highs()[i], point.limits.high);
    EXPECT_DOUBLE_EQ(view_.centers()[i], point.limits.center);
    EXPECT_EQ(view_.looks()[i], static_cast<int>(point.signal));
  }
  ASSERT_EQ(view_.eventCount(), 3);
  for (int i = 0; i < 3; ++i) {
    const auto& effect = result->effects[static_cast<std::size_t>(i)];
    EXPECT_EQ(row(view_.events(), 2 - i, "ratio"), QVariant(effect.ratio).toString().toStdString());
    EXPECT_EQ(view_.flagStrong()[i] == 1, effect.enough_jobs && effect.holm_chance < 0.01);
  }
  // 0.3048 m is a foot, exactly: NIST Special Publication 811, appendix B.
  shown_.session->set_units(Units::Us);
  EXPECT_DOUBLE_EQ(view_.rates()[0], result->points[0].rate_m2 * 0.3048 * 0.3048);
  EXPECT_EQ(view_.unitWords().toStdString(), "nibs per ft² sprayed, one point a car");
}

TEST_F(DirtOverTime, AnEventThatChangedTheDirtIsSaidWithItsRangeAndItsCars) {
  publish();
  view_.wake();
  ask("booth", "Booth 1");
  EXPECT_EQ(said(), "Dirt of Booth 1 in the last 12 months");
  EXPECT_EQ(view_.answer().toStdString(),
            "Less dirt since Aug 24 (filters changed): 0.63 times as much.");
  ASSERT_EQ(view_.eventCount(), 2);
  EXPECT_EQ(row(view_.events(), 1, "title"), "Filters changed, Aug 24");
  EXPECT_EQ(row(view_.events(), 1, "stateWords"), "less dirt");
  EXPECT_EQ(row(view_.events(), 1, "said"),
            "0.63 times as much, 0.52 to 0.76; 31 cars before, 40 after");
  EXPECT_EQ(row(view_.events(), 1, "strong"), "true");
  EXPECT_EQ(row(view_.events(), 0, "title"), "New suits, Nov 12");
  EXPECT_EQ(row(view_.events(), 0, "stateWords"), "too early to say");
  EXPECT_EQ(row(view_.events(), 0, "said"), "6 of 10 cars after it");
  EXPECT_EQ(view_.flagWords().join(QChar('/')).toStdString(),
            "Filters changed, Aug 24/New suits, Nov 12");
  ask("booth", "Booth 2");
  EXPECT_EQ(row(view_.events(), 0, "said"),
            "as much as before, 0.72 to 1.4 times; 20 cars before, 20 after");
  EXPECT_EQ(row(view_.events(), 0, "stateWords"), "no clear change");
  EXPECT_EQ(view_.answer().toStdString(),
            "Nothing stands out: it goes up and down as chance does.");
}

TEST_F(DirtOverTime, ThePaintersAreForAManagerAndNotRankedUnderTwentyCars) {
  publish();
  view_.wake();
  be(shown_.shop.ivo);
  EXPECT_FALSE(view_.byPainter());
  EXPECT_EQ(view_.painters()->rowCount(), 0);
  EXPECT_TRUE(view_.choices(QStringLiteral("painter")).isEmpty());
  be(rosa_);
  ask("booth", "Booth 1");
  shown_.session->set_units(Units::Metric);
  ASSERT_EQ(view_.painters()->rowCount(), 2);
  EXPECT_EQ(row(view_.painters(), 0, "name"), "Mara");
  EXPECT_EQ(row(view_.painters(), 1, "name"), "Ivo");
  EXPECT_EQ(row(view_.painters(), 1, "said"), "2.7 per m², 2.3 to 3.0; 31 cars, 93.0 m²");
  ask("painter", "Ivo");
  EXPECT_EQ(view_.days().size(), 31);
  ask("since", "the last 3 months");
  EXPECT_EQ(view_.state(), DirtOverTimeViewModel::NothingFits);
  be(shown_.shop.mara);  // no manager: everybody's cars again
  EXPECT_EQ(view_.days().size(), 45);
  be(rosa_);
  lessons_.resize(19);
  publish();
  ask("since", "all time");
  EXPECT_EQ(view_.paintersNote().toStdString(), "Fewer than 20 cars each: not ranked.");
  EXPECT_EQ(row(view_.painters(), 0, "said"), "19 cars of 20: not ranked");
}

TEST_F(DirtOverTime, WhatPeopleSaidIsRankedWithWhatTheyLeftOpen) {
  for (std::size_t i = 0; i < 20; ++i) {
    lessons_[i].cause_said = true;
    if (i < 6) lessons_[i].cause = job::DirtCause::Hose;
    if (i >= 16) lessons_[i].cause = job::DirtCause::Suit;
  }
  publish();
  view_.wake();
  ask("booth", "Booth 1");
  std::string all;
  for (int i = 0; i < view_.causeCount(); ++i)
    all += row(view_.causes(), i, "words") + " " + row(view_.causes(), i, "countWords") + "; ";
  EXPECT_EQ(all,
            "Left open 10 cars; Hose 6 cars; Suit or sleeve 4 cars; Nothing said yet 57 cars; ");
  EXPECT_EQ(view_.mostCars(), 57);
}

TEST_F(DirtOverTime, AChosenPointSaysItsCarAndStaysChosenWhenAnotherComes) {
  lessons_[76].nibs = 40;  // the newest of booth 1, two days ago
  publish();
  view_.wake();
  ask("booth", "Booth 1");
  shown_.session->set_units(Units::Metric);
  view_.choose(76);
  EXPECT_EQ(view_.chosenJob().toStdString(), lessons_[76].job.hex());
  // R: ppois with the mean 85/6 passes 0.00135 at 4 nibs, and less lies above 27, over 3 m2.
  EXPECT_EQ(view_.chosenWords().toStdString(),
            "40 nibs on 3.0 m²: 13.3 per m², limits 1.3 to 9.0; above the limit");
  EXPECT_EQ(row(view_.points(), 0, "jobId"), lessons_[76].job.hex());
  EXPECT_EQ(row(view_.lookRows(), 0, "words"), "Above the limit: 1 car");
  add(booth_1_, 150, 3, 3, shown_.shop.ivo);
  publish();
  EXPECT_EQ(view_.chosen(), 77);
  view_.choose(1000);
  EXPECT_EQ(view_.chosen(), -1);
  EXPECT_EQ(view_.chosenWords(), QString());
}

TEST_F(DirtOverTime, WithoutCarsItSaysSoAndACarThatIsNotLookedOverIsLeftOut) {
  auto all = lessons_;
  lessons_.clear();
  publish();
  EXPECT_EQ(view_.state(), DirtOverTimeViewModel::Waiting);
  view_.wake();
  settled();
  EXPECT_EQ(view_.state(), DirtOverTimeViewModel::NoCars);
  EXPECT_EQ(view_.answer(), QString());
  lessons_ = {all[0], all[1]};
  lessons_[1].counted = false;
  publish();
  EXPECT_EQ(view_.state(), DirtOverTimeViewModel::Shown);
  shown_.session->set_units(Units::Metric);
  EXPECT_EQ(
      view_.restsOn().toStdString(),
      "1 car with 3.0 m² sprayed, 8 nibs: 2.7 per m² on average. 1 car not looked over to the "
      "end: left out.");
  ASSERT_EQ(view_.eventCount(), 1);  // with no car between them what was done is one change
  EXPECT_EQ(row(view_.events(), 0, "title"), "Filters changed, new hose and new suits, Aug 24");
  EXPECT_EQ(row(view_.events(), 0, "said"), "0 of 10 cars after it");
}

TEST_F(DirtOverTime, WhatCannotBeWorkedOutIsSaidInWords) {
  lessons_[3].sprayed_m2 = 5000;  // no car has so much
  publish();
  view_.wake();
  settled();
  EXPECT_EQ(view_.state(), DirtOverTimeViewModel::Failed);
  EXPECT_FALSE(view_.trouble().isEmpty());
  lessons_[3].sprayed_m2 = 3;
  publish();
  EXPECT_EQ(view_.state(), DirtOverTimeViewModel::Shown);
  EXPECT_EQ(view_.trouble(), QString());
}

TEST_F(DirtOverTime, NothingIsWorkedOutWhileThePageIsNotThere) {
  publish();
  view_.wake();
  settled();
  view_.rest();
  lessons_.pop_back();
  publish();
  EXPECT_EQ(view_.days().size(), 117);
  view_.wake();
  settled();
  EXPECT_EQ(view_.days().size(), 116);
}

}  // namespace
}  // namespace jambline::screens
