// What the screens of booths, spraying and cure show is what the program jambline-calc gives for
// the same input; the inputs are built from what was typed, not from what the screens asked with.
#include "base/spans.h"
#include "device/knocks.h"
#include "screens/air_units.h"
#include "screens/booth_view_model.h"
#include "screens/clearance_view_model.h"
#include "screens/climate_view_model.h"
#include "screens/cure_view_model.h"
#include "screens/cure_words.h"
#include "screens/rate_units.h"
#include "screens/sprayed_view_model.h"
#include "tests/screens/calculator_desk.h"

namespace jambline::screens {
namespace {

using job::BoothReading;

struct NoKnocks final : device::Knocks {
  bool answers() const override { return false; }
  void knock() override {}
};

class SameSprayAsTheCalculator : public CalculatorDesk {
 protected:
  void begin_with_booth() {
    rosa_ = add("Rosa", job::Role::Manager);
    be(rosa_);
    act(acts::AddBooth{"booth 1", job::BoothKind::Downdraft});
    booth_ = session_->shop().booths.back().booth;
    act(acts::SetBoothFacts{booth_,
                            {.volume_m3 = 92,
                             .wanted_m_s = 0.3,
                             .wanted_from = "the plate of the booth",
                             .rated_exhaust_m3_h = 20'500,
                             .most_pressure_pa = 150}});
    ASSERT_FALSE(failed_);
  }
  void read(BoothReading what, std::vector<double> values, std::int64_t ago_ms = 0) {
    act(acts::ReadBooth{booth_, what, std::move(values), 5, clock_.moment.wall_ms - ago_ms});
    ASSERT_FALSE(failed_);
  }
  QString key() { return QString::fromStdString(booth_.hex()); }
  ProductId product(const job::Product& said) {
    act(acts::SetProduct{{}, said});
    return session_->shop().air.products.back().product;
  }

  PersonId rosa_;
  BoothId booth_;
};

TEST_F(SameSprayAsTheCalculator, TheAirOfABooth) {
  begin_with_booth();
  const std::vector<double> velocities{0.34, 0.36, 0.31, 0.37, 0.33};
  read(BoothReading::Velocity, velocities);
  BoothViewModel shown(*session_);
  const auto given = calculated<trade::AirflowResult>(
      "airflow", trade::Airflow{velocities, 0.3, "the plate of the booth", 5, {}});
  EXPECT_EQ(at(shown.booths(), 0, "air").toString(),
            air_words(AirQuantity::Velocity, given.mean_m_s, 0.3, Units::Metric));
  EXPECT_EQ(at(shown.booths(), 0, "airOut").toBool(), given.word == trade::AirflowWord::Under);
  shown.openSum(key(), BoothViewModel::Figure::Air);
  same_sum(*shown.sum(), given.basis);
}

TEST_F(SameSprayAsTheCalculator, WhenAFilterIsDue) {
  begin_with_booth();
  trade::FilterTrend asked;
  asked.limit_pa = 150;
  for (const auto& [ago, pressure_pa] :
       {std::pair{24, 80.0}, {18, 84.0}, {11, 97.0}, {5, 105.0}, {0, 112.0}}) {
    read(BoothReading::FilterPressure, {pressure_pa}, ago * day_ms);
    asked.readings.push_back(
        {static_cast<double>(clock_.moment.wall_ms - ago * day_ms) / static_cast<double>(day_ms),
         pressure_pa});
  }
  BoothViewModel shown(*session_);
  const auto given = calculated<trade::FilterTrendResult>("filter-due", asked);
  ASSERT_TRUE(given.due_day);
  const auto due_ms = static_cast<std::int64_t>(*given.due_day * static_cast<double>(day_ms));
  const QString note = at(shown.booths(), 0, "filterNote").toString();
  EXPECT_TRUE(note.contains(date_words(due_ms, clock_.moment.wall_ms, session_->zone())))
      << note.toStdString();
  shown.openSum(key(), BoothViewModel::Figure::Filter);
  same_sum(*shown.sum(), given.basis);
}

TEST_F(SameSprayAsTheCalculator, HowLongABoothIsLeftToClearAndWhatIsLeftOfIt) {
  begin_with_booth();
  open_car();
  const NoKnocks knocks;
  ClearanceViewModel shown(*session_, knocks);
  trade::Clearance asked;
  asked.volume_m3 = 92;
  asked.exhaust_m3_h = 20'500;
  auto given = calculated<trade::ClearanceResult>("clearance-time", asked);
  act(acts::SetRespirator{{},
                          {"hood", job::RespiratorKind::SuppliedHood, trade::FactorScheme::Us, 25,
                           "OSHA", 2006, "", false}});
  acts::StartSpray spray{
      car().job, booth_, session_->shop().air.respirators[0].respirator, true, {}};
  for (std::size_t i = 0; i < enum_words<job::GunItem>.size(); ++i) {
    const auto item = static_cast<job::GunItem>(i);
    if (job::is_of_now(item))
      spray.checks.push_back({item, job::CutAnswer::Yes, {}, {}});
    else if (job::class_of(item) == job::CheckClass::Must)
      spray.checks.push_back({item, job::CutAnswer::No, job::GunReason::RecordNotHere, {}});
  }
  act(spray);
  ASSERT_FALSE(failed_) << failed_->subject;
  clock_.advance_ms(20 * minute_ms);
  act(acts::GunDown{booth_, {}});
  shown.open(key());
  ASSERT_EQ(shown.state(), ClearanceViewModel::State::Counting);
  shown.openSum();
  EXPECT_EQ(shown.sum()->figure(), minutes_seconds(given.minutes));
  same_sum(*shown.sum(), basis_of(given));
  clock_.advance_ms(40'000);
  act(acts::AddRack{"rack 1"});  // the screen looks again
  const auto count = calculated<trade::ClearanceCountResult>(
      "clearance-count",
      trade::ClearanceCount{
          -40, given.minutes, 0, {{trade::ExhaustEvent::FreshAirDoorsShut, -40 - 20 * 60}}});
  ASSERT_TRUE(count.counting);
  EXPECT_EQ(shown.digits(), count_words(count.left_s));
  // A smoke test in date takes the place of the formula.
  read(BoothReading::SmokeTest, {4.5, 4.7}, 3 * day_ms);
  asked.smoke_test = trade::SmokeTest{4.7, 3, 424};
  given = calculated<trade::ClearanceResult>("clearance-time", asked);
  shown.openSum();
  EXPECT_EQ(shown.sum()->figure(), minutes_seconds(given.minutes));
  EXPECT_EQ(given.rule, trade::ClearanceRule::SmokeTest);
}

TEST_F(SameSprayAsTheCalculator, TheClimateAtSpraying) {
  begin_with_booth();
  open_car();
  ClimateViewModel shown(*session_);
  shown.begin();
  for (const int number : {23, 19, 61}) shown.type(number);
  ASSERT_TRUE(shown.complete());
  trade::Climate asked;
  asked.air_c = 23;
  asked.surface_c = 19;
  asked.humidity_percent = 61;
  const auto given = calculated<trade::ClimateResult>("climate", asked);
  EXPECT_EQ(shown.answer().startsWith("Go"), given.go);
  ASSERT_EQ(shown.gates()->rowCount(), static_cast<int>(given.checks.size()));
  shown.openSum();
  same_sum(*shown.sum(), given.basis);
}

TEST_F(SameSprayAsTheCalculator, TheCureClock) {
  begin_with_booth();
  open_car();
  job::Product clear;
  clear.product_name = "clear one";
  clear.kind = job::ProductKind::Clear;
  clear.activated = true;
  clear.minimum_c = 10;
  clear.steps = {{trade::CureMilestone::Handle, {{20, 480}, {60, 30}}},
                 {trade::CureMilestone::SandFrom, {{20, 960}, {60, 45}}}};
  const ProductId id = product(clear);
  ASSERT_FALSE(failed_) << failed_->subject;
  act(acts::MixProduct{car().job, id, "B1", true});
  act(acts::SayCoats{.job = car().job,
                     .mix = car().air.mixes.back().mix,
                     .panels = {job::Panel::Hood},
                     .coats = 2});
  clock_.advance_ms(5 * minute_ms);
  act(acts::ReadPanelTemperature{car().job, job::PanelGroup::Roof, 24});
  clock_.advance_ms(40 * minute_ms);  // a warm reading is believed for an hour
  CureWork work(*session_);
  CureViewModel shown(*session_, work);
  worked_out();
  ASSERT_EQ(shown.clockCount(), 1);
  trade::CureClock asked;
  asked.steps = clear.steps;
  asked.minimum_c = 10;
  // Before the first reading the colder of it and 20 C counts.
  asked.readings = {{0, 20}, {5, 24}};
  asked.now_min = 45;
  const auto given = calculated<trade::CureResult>("cure-clock", asked);
  const auto& clock = work.cures().front();
  ASSERT_TRUE(clock.result && *clock.result);
  EXPECT_EQ(to_json(**clock.result), to_json(given));
  const CureSeen seen{work.at(), session_->zone(), session_->units()};
  auto* steps = at(shown.clocks(), 0, "steps").value<QAbstractItemModel*>();
  ASSERT_NE(steps, nullptr);
  ASSERT_EQ(steps->rowCount(), static_cast<int>(given.standings.size()));
  for (int row = 0; row < steps->rowCount(); ++row)
    EXPECT_EQ(at(steps, row, "words").toString(),
              standing_words(clock, given.standings[static_cast<std::size_t>(row)], seen).words);
  ASSERT_TRUE(shown.openSum(at(shown.clocks(), 0, "key").toString()));
  same_sum(*shown.sum(), given.basis);
}

TEST_F(SameSprayAsTheCalculator, ThePotLife) {
  begin_with_booth();
  open_car();
  job::Product clear;
  clear.product_name = "clear two";
  clear.kind = job::ProductKind::Clear;
  clear.steps = {{trade::CureMilestone::PotLife, {{20, 60}, {30, 35}}}};
  const ProductId id = product(clear);
  act(acts::MixProduct{car().job, id, "B2"});
  const std::int64_t mixed_ms = clock_.moment.wall_ms;
  act(acts::ReadClimate{car().job, booth_, 25, 22, 50});
  clock_.advance_ms(12 * minute_ms);
  act(acts::WriteNote{car().job, "12 minutes later"});
  ASSERT_FALSE(failed_);
  SprayedViewModel shown(*session_);
  trade::CureClock asked;
  asked.steps = clear.steps;
  asked.readings = {{0, 25}};
  asked.now_min = 12;
  const auto given = calculated<trade::CureResult>("cure-clock", asked);
  ASSERT_TRUE(given.standings.front().reached_min);
  const double ends_min = *given.standings.front().reached_min;
  EXPECT_GT(ends_min, 35);
  EXPECT_LT(ends_min, 60);
  const auto ends_ms = mixed_ms + static_cast<std::int64_t>(ends_min * minute_ms);
  const std::int64_t now_ms = clock_.moment.wall_ms;
  EXPECT_EQ(
      at(shown.mixes(), 0, "potWords").toString(),
      QStringLiteral("pot life until %1, %2 left")
          .arg(time_words(ends_ms, now_ms, session_->zone()), duration_words(ends_ms - now_ms)));
}

TEST_F(SameSprayAsTheCalculator, UntilWhenGlassIsNotDriven) {
  begin_with_booth();
  open_car();
  job::Product urethane;
  urethane.product_name = "urethane one";
  urethane.kind = job::ProductKind::GlassUrethane;
  urethane.cure = trade::CureKind::MoistureCure;
  urethane.drive_away = {
      {"airbags, belted", {{25, 50, 60}, {15, 50, 120}, {15, 30, 180}, {5, 30, 480}}}};
  const ProductId id = product(urethane);
  ASSERT_FALSE(failed_) << failed_->subject;
  act(acts::SayBonded{car().job, id, "windshield", "airbags, belted"});
  const std::int64_t set_ms = clock_.moment.wall_ms;
  clock_.advance_ms(minute_ms);
  act(acts::ReadClimate{car().job, booth_, 17, 16, 55});
  ASSERT_FALSE(failed_) << failed_->subject;
  CureWork work(*session_);
  CureViewModel shown(*session_, work);
  worked_out();
  ASSERT_EQ(work.bonds().size(), 1U);
  const auto given = calculated<trade::DriveAwayResult>(
      "drive-away", trade::DriveAway{urethane.drive_away[0].rows, 17, 55});
  ASSERT_TRUE(given.minutes);
  const auto& bond = work.bonds().front();
  ASSERT_TRUE(bond.result && *bond.result);
  EXPECT_EQ(to_json(**bond.result), to_json(given));
  ASSERT_TRUE(bond.drive_from_ms);
  EXPECT_EQ(*bond.drive_from_ms - set_ms, static_cast<std::int64_t>(*given.minutes) * minute_ms);
  // Said to the minute that is not over yet.
  const std::int64_t said_ms = (*bond.drive_from_ms + minute_ms - 1) / minute_ms * minute_ms;
  EXPECT_TRUE(shown.doNotDrive().contains(clock_words(said_ms, session_->zone())))
      << shown.doNotDrive().toStdString();
}

}  // namespace
}  // namespace jambline::screens
