// What the screens of the correction show is what the program jambline-calc gives for the same
// input: each test writes the input of the screen as JSON, runs the program on it, reads its answer
// and looks for the numbers on the screen.
#include "folds/dirt_of_car.h"
#include "folds/dirt_over_time.h"
#include "screens/dirt_over_time_view_model.h"
#include "screens/evidence_view_model.h"
#include "screens/film_view_model.h"
#include "tests/screens/calculator_desk.h"

namespace jambline::screens {
namespace {

class SameAsTheCalculator : public CalculatorDesk {};

TEST_F(SameAsTheCalculator, TheFilmOfAPanel) {
  begin_shop();
  act(acts::ReadFilm{.job = car().job,
                     .panel = job::Panel::Hood,
                     .spot = 1,
                     .when = job::FilmWhen::BeforeBase,
                     .gauge = job::FilmGauge::Total,
                     .unit = job::FilmUnit::Micron,
                     .typed = {62, 64, 63}});
  act(acts::ReadFilm{.job = car().job,
                     .panel = job::Panel::Hood,
                     .spot = 1,
                     .when = job::FilmWhen::BeforeCutting,
                     .gauge = job::FilmGauge::Total,
                     .unit = job::FilmUnit::Micron,
                     .typed = {131, 129, 133}});
  ASSERT_FALSE(failed_);
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  worked_out();
  ASSERT_TRUE(screen.known());
  const auto given = calculated<trade::FilmBudgetResult>("film-budget", screen.film().budget);
  EXPECT_EQ(given.source, trade::FilmSource::TotalLessBase);
  EXPECT_EQ(screen.clearUm(), given.clear.mean_um);
  EXPECT_EQ(screen.afterUm(), given.after.back().left.mean_um);
  const FilmSaid said = say_film(screen.film(), given, Units::Metric);
  EXPECT_EQ(screen.wordText(), said.word);
  EXPECT_EQ(screen.rangeWords(), said.range);
  EXPECT_EQ(screen.limitWords(), said.limit);
  // By hand: 131 less 63 less base 18 less valleys 4.
  EXPECT_NEAR(given.clear.mean_um, 46, 1e-9);
  EXPECT_TRUE(screen.rangeWords().contains("46")) << screen.rangeWords().toStdString();
  screen.openSum();
  EXPECT_TRUE(screen.sum()->figure().contains("46")) << screen.sum()->figure().toStdString();
  EXPECT_EQ(screen.sum()->rows()->rowCount(), static_cast<int>(given.basis.terms.size()));
}

TEST_F(SameAsTheCalculator, WhatThrewIt) {
  begin_shop();
  for (int i = 0; i < 9; ++i) {
    act(acts::PlaceMark{.job = car().job,
                        .panel = job::Panel::Hood,
                        .x_mm = 480.0 + 14 * i,
                        .y_mm = 500.0 + 11 * (i % 3),
                        .defect = job::DefectKind::Nib});
  }
  EvidenceViewModel screen(*session_);
  worked_out();
  ASSERT_NE(screen.result(), nullptr);
  const trade::DirtPattern asked =
      folds::dirt_of_car(car(), job::pattern(car().body),
                         folds::flat_history(*session_->snapshot().lessons, car().job));
  const auto given = calculated<trade::DirtPatternResult>("dirt-pattern", asked);
  EXPECT_EQ(to_json(*screen.result()), to_json(given));
  ASSERT_EQ(screen.word(), EvidenceViewModel::Word::Points);
  ASSERT_EQ(screen.signs()->rowCount() + screen.otherCount(),
            static_cast<int>(given.evidence.size()));
  int pointing = 0;
  for (int row = 0; row < screen.signs()->rowCount(); ++row) {
    const auto& sign = given.evidence[static_cast<std::size_t>(row)];
    if (!at(screen.signs(), row, "points").toBool()) continue;
    ++pointing;
    EXPECT_EQ(at(screen.signs(), row, "chance").toString(), chance_words(100 * sign.holm_chance));
  }
  EXPECT_GT(pointing, 0);
}

TEST_F(SameAsTheCalculator, ThePlan) {
  begin_shop();
  mark(300, job::DefectKind::RunOrSag);
  CorrectionWork work(*session_);
  PlanViewModel screen(*session_, work);
  worked_out();
  ASSERT_NE(work.planned(), nullptr);
  const auto given =
      calculated<trade::CorrectionPlanResult>("correction-plan", work.planned()->plan.of.plan);
  EXPECT_EQ(to_json(work.planned()->plan.result), to_json(given));
  double minutes = 0;
  for (const auto& step : work.planned()->walk().steps) minutes += step.minutes;
  EXPECT_NEAR(minutes, given.minutes, 1e-9);
  EXPECT_TRUE(screen.total().contains(QString::number(std::lround(given.minutes))))
      << screen.total().toStdString() << " is not " << given.minutes;
  for (const auto& panel : given.advice) {
    const auto film = work.planned()->plan.film.find(*from_word<job::Panel>(panel.panel));
    ASSERT_NE(film, work.planned()->plan.film.end());
    const auto budget = calculated<trade::FilmBudgetResult>("film-budget", film->second.of.budget);
    ASSERT_TRUE(film->second.result);
    EXPECT_EQ(to_json(*film->second.result), to_json(budget));
    const QString takes = removal_words(panel.removal_um, panel.removal_sd_um, session_->units());
    bool said = false;
    for (int row = 0; row < screen.panels()->rowCount(); ++row)
      said = said || at(screen.panels(), row, "facts").toString().contains(takes);
    EXPECT_TRUE(said) << takes.toStdString();
  }
}

TEST_F(SameAsTheCalculator, WhatRoundsTakeIsSaidInTheUnitOfTheSetting) {
  EXPECT_EQ(removal_words(6.5, 1.4, Units::Metric), "6.5 \u00b1 1.4 \u00b5m");
  // One mil is 25.4 um exactly: NIST Special Publication 811, appendix B.
  EXPECT_EQ(removal_words(25.4, 12.7, Units::Us), "1.00 \u00b1 0.50 mil");
}

TEST_F(SameAsTheCalculator, DirtOverTime) {
  constexpr std::int64_t day_ms = 86'400'000;
  begin_shop();
  act(acts::AddBooth{"Booth 1", job::BoothKind::Downdraft});
  const BoothId booth = session_->shop().booths.front().booth;
  const std::int64_t now_ms = clock_.moment.wall_ms;
  act(acts::LogBoothEvent{booth, job::BoothEvent::FiltersChanged, now_ms - 40 * day_ms});
  std::vector<folds::Lesson> lessons;
  for (int i = 0; i < 50; ++i) {
    folds::Lesson one;
    one.job = car().job;
    one.job.bytes[15] = static_cast<std::uint8_t>(i);
    one.counted = true;
    one.sprayed_ms = now_ms - (90 - i * 2) * day_ms;
    if (one.sprayed_ms > now_ms) break;
    one.booth = booth;
    one.painters = {ivo_};
    one.nibs = i < 25 ? 9 + i % 4 : 3 + i % 3;
    one.sprayed_m2 = 2.5 + 0.25 * (i % 5);
    lessons.push_back(one);
  }
  auto next = std::make_shared<engine::Snapshot>(session_->snapshot());
  next->number += 1000;
  next->lessons = std::make_shared<std::vector<folds::Lesson>>(lessons);
  session_->publish(next);
  QCoreApplication::processEvents();
  DirtOverTimeViewModel screen(*session_);
  screen.wake();
  worked_out();
  ASSERT_EQ(screen.state(), DirtOverTimeViewModel::Shown);
  const folds::DirtOverTime asked =
      folds::dirt_over_time(lessons, session_->shop().booth_events, {});
  const auto given = calculated<trade::DirtChartResult>("dirt-chart", asked.chart);
  ASSERT_EQ(static_cast<std::size_t>(screen.rates().size()), given.points.size());
  for (qsizetype i = 0; i < screen.rates().size(); ++i) {
    const auto& point = given.points[static_cast<std::size_t>(i)];
    EXPECT_EQ(screen.rates()[i], point.rate_m2);
    EXPECT_EQ(screen.lows()[i], point.limits.low);
    EXPECT_EQ(screen.highs()[i], point.limits.high);
    EXPECT_EQ(screen.centers()[i], point.limits.center);
    EXPECT_EQ(screen.looks()[i], static_cast<int>(point.signal));
  }
  ASSERT_EQ(screen.eventCount(), 1);
  ASSERT_EQ(given.effects.size(), 1U);
  EXPECT_EQ(at(screen.events(), 0, "ratio").toDouble(), given.effects[0].ratio);
  EXPECT_EQ(at(screen.events(), 0, "low").toDouble(), given.effects[0].interval.low);
  EXPECT_EQ(at(screen.events(), 0, "high").toDouble(), given.effects[0].interval.high);
  EXPECT_LT(given.effects[0].holm_chance, 0.01);
  EXPECT_EQ(screen.flagStrong()[0], 1);
}

}  // namespace
}  // namespace jambline::screens
