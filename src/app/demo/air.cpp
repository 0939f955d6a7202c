#include "app/demo/air.h"

#include <algorithm>

#include "app/demo/booths.h"
#include "base/spans.h"

namespace jambline::demo {

namespace {

using job::BoothReading;
using job::ProductKind;
using trade::CureMilestone;

constexpr int kept_from_days_ago = 70;
constexpr std::int64_t air_before_work_ms = 40 * minute_ms;
constexpr std::int64_t reading_before_work_ms = 12 * minute_ms;
constexpr int readings_of_days = 12;

constexpr std::string_view base_name = "Yarrow base 4";
constexpr std::string_view clear_name = "Yarrow clear 12";
constexpr std::string_view spot_name = "Yarrow spot clear UV";
constexpr std::string_view primer_name = "Yarrow primer 2";
constexpr std::string_view bond_name = "Sorrel bond 6";
constexpr std::string_view glass_name = "Sorrel glass 1";
constexpr std::string_view belted = "two front airbags, belts fastened";

job::Product paint(std::string_view name, ProductKind kind, bool activated) {
  job::Product out;
  out.product_name = name;
  out.kind = kind;
  out.activated = activated;
  out.minimum_c = 12;
  out.air_min_c = 15;
  out.air_max_c = 32;
  out.humidity_max_percent = kind == ProductKind::Base ? 70 : 85;
  return out;
}

std::vector<job::Product> invented_products() {
  std::vector<job::Product> out;
  out.push_back(paint(primer_name, ProductKind::Primer, true));
  out.back().steps = {{CureMilestone::SandFrom, {{20, 180}, {60, 30}}},
                      {CureMilestone::PotLife, {{20, 60}}}};
  out.push_back(paint(base_name, ProductKind::Base, false));
  out.back().steps = {{CureMilestone::DustFree, {{20, 15}}}};
  out.push_back(paint(clear_name, ProductKind::Clear, true));
  out.back().wax_wait_days = 60;
  out.back().steps = {
      {CureMilestone::DustFree, {{20, 20}, {60, 4}}},
      {CureMilestone::PullTape, {{20, 60}, {60, 15}}},
      {CureMilestone::Handle, {{20, 480}, {60, 35}}},
      {CureMilestone::SandFrom, {{20, 960}, {60, 45}}},
      {CureMilestone::PolishFrom, {{20, 1080}, {60, 50}}},
      {CureMilestone::PolishUntil, {{20, 14400}, {60, 960}}},
      {CureMilestone::Assemble, {{20, 1440}, {60, 75}}},
      {CureMilestone::LastPolish, {{20, 2880}, {60, 180}}},
      {CureMilestone::Full, {{20, 10080}, {60, 600}}},
      {CureMilestone::PotLife, {{20, 120}, {30, 60}}},
  };
  out.push_back(paint(spot_name, ProductKind::Clear, false));
  out.back().cure = trade::CureKind::Uv;
  out.back().steps = {{CureMilestone::PolishFrom, {{20, 5}}}};
  job::Product bond;
  bond.product_name = bond_name;
  bond.kind = ProductKind::PanelAdhesive;
  bond.minimum_c = 10;
  bond.steps = {{CureMilestone::HandlingStrength, {{10, 480}, {23, 180}}},
                {CureMilestone::FullStrength, {{10, 2880}, {23, 1440}}}};
  out.push_back(bond);
  job::Product glass;
  glass.product_name = glass_name;
  glass.kind = ProductKind::GlassUrethane;
  glass.cure = trade::CureKind::MoistureCure;
  glass.drive_away = {{std::string(belted),
                       {{5, 30, 720}, {5, 50, 480}, {15, 30, 480}, {15, 50, 240}, {23, 50, 90}}},
                      {"no airbag", {{5, 30, 360}, {15, 30, 240}, {15, 50, 120}, {23, 50, 60}}}};
  out.push_back(glass);
  return out;
}

job::BoothFacts facts_of(std::size_t booth) {
  job::BoothFacts out;
  out.volume_m3 = booth == 0 ? 98 : 84;
  out.wanted_m_s = booth == 0 ? 0.3 : 0.5;
  out.wanted_from = "the plate of the booth";
  out.rated_exhaust_m3_h = booth == 0 ? 23'000 : 19'500;
  out.most_pressure_pa = booth == 0 ? 150 : 125;
  return out;
}

const folds::RespiratorView* respirator(const folds::ShopView& shop, job::RespiratorKind kind) {
  for (const auto& one : shop.air.respirators)
    if (one.said.kind == kind) return &one;
  return nullptr;
}

// Before work of the first working day that is not longer ago.
int workday_after(const Calendar& calendar, std::int64_t from_ms) {
  int workday = 0;
  while (calendar.morning_ms(workday) < from_ms) ++workday;
  return workday;
}

class Keeping {
 public:
  Keeping(const Calendar& calendar, std::int64_t now_ms, const Crew& crew,
          const std::vector<BoothId>& booths)
      : calendar_(calendar), now_ms_(now_ms), crew_(crew), booths_(booths) {}

  Visit write() {
    const int first = workday_after(calendar_, now_ms_ - kept_from_days_ago * day_ms);
    at_ms_ = calendar_.morning_ms(first) - air_before_work_ms;
    booths();
    protection();
    for (const auto& product : invented_products()) say(Who::Rosa, acts::SetProduct{{}, product});
    samples();
    readings(first);
    std::stable_sort(out_.steps.begin(), out_.steps.end(),
                     [](const Step& a, const Step& b) { return a.at_ms < b.at_ms; });
    return std::move(out_);
  }

 private:
  int day(int days_ago) const { return static_cast<int>(now_ms_ / day_ms) - days_ago; }
  void add(std::int64_t at_ms, Who who, AirAct act) {
    if (at_ms > now_ms_) return;
    Step step{at_ms, crew_.at(who), {}};
    step.air = std::move(act);
    out_.steps.push_back(std::move(step));
  }
  void say(Who who, acts::Command command) {
    add(at_ms_ += 30'000, who,
        [command = std::move(command)](const folds::CarView&, const folds::ShopView&,
                                       const Moment&) { return Commands{command}; });
  }

  void booths() {
    for (std::size_t i = 0; i < booths_.size(); ++i)
      say(Who::Rosa, acts::SetBoothFacts{booths_[i], facts_of(i)});
    say(Who::Rosa,
        acts::ReadBooth{
            booths_[0], BoothReading::SmokeTest, {4.4, 4.7, 4.5}, 5, now_ms_ - 128 * day_ms});
    if (booths_.size() > 1)
      say(Who::Rosa,
          acts::ReadBooth{
              booths_[1], BoothReading::SmokeTest, {6.1, 6.4, 6.2}, 5, now_ms_ - 455 * day_ms});
    say(Who::Ivo,
        acts::ReadBooth{
            booths_[0], BoothReading::Velocity, {0.34, 0.36, 0.33, 0.37, 0.35, 0.34}, 5, {}});
    if (booths_.size() > 1)
      say(Who::Ivo,
          acts::ReadBooth{
              booths_[1], BoothReading::Velocity, {0.49, 0.52, 0.51, 0.5, 0.53, 0.5}, 5, {}});
    say(Who::Ivo, acts::ReadBooth{booths_[0], BoothReading::Exhaust, {22'100}, 5, {}});
  }

  void protection() {
    using Kind = job::RespiratorKind;
    const auto set = [&](const char* model, Kind kind) {
      say(Who::Rosa,
          acts::SetRespirator{{},
                              {model, kind, trade::FactorScheme::Us, job::usual_us_factor(kind),
                               "29 CFR 1910.134", 2006, "", false}});
    };
    set("Aster hood", Kind::SuppliedHood);
    set("Aster full face, M", Kind::SuppliedFull);
    set("Aster half mask, M", Kind::HalfAirPurifying);
    const auto fit = [&](Who who, Kind kind, std::vector<double> factors, int days_ago) {
      add(at_ms_ += 30'000, Who::Rosa,
          [person = crew_.at(who), kind, factors = std::move(factors), tested = day(days_ago)](
              const folds::CarView&, const folds::ShopView& shop, const Moment&) {
            return Commands{
                acts::RecordFitTest{person,
                                    respirator(shop, kind)->respirator,
                                    {"M", job::FitMethod::Quantitative, factors, true, tested, 365},
                                    {}}};
          });
    };
    fit(Who::Ivo, Kind::SuppliedFull, {2400, 3100, 2700, 1900, 2200, 2600, 3000}, 122);
    fit(Who::Ana, Kind::HalfAirPurifying, {310, 280, 350, 240, 260, 300, 330}, 402);
    fit(Who::Ben, Kind::HalfAirPurifying, {190, 220, 260, 170, 210, 240, 230}, 96);
    add(at_ms_ += 30'000, Who::Rosa,
        [person = crew_.at(Who::Ana)](const folds::CarView&, const folds::ShopView& shop,
                                      const Moment&) {
          return Commands{
              acts::ChangeCartridge{person, respirator(shop, Kind::HalfAirPurifying)->respirator,
                                    24, "written program of the shop, section 4"}};
        });
    say(Who::Rosa, acts::CheckBreathingAir{{true, true, true, day(kept_from_days_ago), 90}});
    say(Who::Rosa, acts::SetDue{crew_.at(Who::Ivo), job::DueKind::PainterTraining, day(-640)});
    say(Who::Rosa, acts::SetDue{crew_.at(Who::Ivo), job::DueKind::HealthSurveillance, day(-74)});
    say(Who::Rosa, acts::SetDue{crew_.at(Who::Ana), job::DueKind::RespiratorTraining, day(17)});
  }

  // Two mornings that a laboratory sampled: one below every limit, one over a ceiling.
  void samples() {
    const auto sample = [&](int days_ago, double value, double from_h, double to_h) {
      const std::int64_t begin_ms = (now_ms_ / day_ms - days_ago) * day_ms + 780 * minute_ms;
      const auto at = [&](double hours) {
        return begin_ms + static_cast<std::int64_t>(hours * 60) * minute_ms;
      };
      add(at_ms_ += 30'000, Who::Rosa,
          [person = crew_.at(Who::Ivo), value, from_ms = at(from_h), to_ms = at(to_h)](
              const folds::CarView&, const folds::ShopView& shop, const Moment&) {
            return Commands{
                acts::LogSample{person, "HDI", value, "ppm", from_ms, to_ms,
                                respirator(shop, job::RespiratorKind::SuppliedFull)->respirator}};
          });
    };
    sample(87, 0.0011, 0, 3.5);
    sample(87, 0.0087, 3.5, 3.75);
    sample(73, 0.0024, 0, 3);
    sample(73, 0.0310, 3, 3.25);
  }

  // On each of the last working days, rising.
  void readings(int first) {
    std::vector<std::int64_t> mornings;
    for (int workday = first; workday < calendar_.workdays(); ++workday) {
      if (calendar_.morning_ms(workday) > now_ms_) break;
      mornings.push_back(calendar_.morning_ms(workday));
    }
    // The calendar ends with last week; this week's days are those after it.
    for (std::int64_t next = mornings.back() + day_ms; next < now_ms_; next += day_ms)
      if ((next / day_ms + 3) % 7 < 5) mornings.push_back(next);  // Monday is 0
    const std::size_t from =
        mornings.size() > readings_of_days ? mornings.size() - readings_of_days : 0;
    for (std::size_t i = from; i < mornings.size(); ++i)
      for (std::size_t booth = 0; booth < booths_.size(); ++booth) {
        const double rising = static_cast<double>(i - from);
        const double read_pa = booth == 0 ? 92 + 3.5 * rising + static_cast<double>(i % 3)
                                          : 61 + 1.6 * rising + static_cast<double>(i % 2);
        const acts::ReadBooth read{booths_[booth], BoothReading::FilterPressure, {read_pa}, 5, {}};
        add(mornings[i] - reading_before_work_ms + static_cast<std::int64_t>(booth) * minute_ms,
            Who::Ben, [read](const folds::CarView&, const folds::ShopView&, const Moment&) {
              return Commands{read};
            });
      }
  }

  const Calendar& calendar_;
  std::int64_t now_ms_;
  const Crew& crew_;
  const std::vector<BoothId>& booths_;
  std::int64_t at_ms_ = 0;
  Visit out_;
};
}  // namespace

Visit air_of_shop(const Calendar& calendar, std::int64_t now_ms, const Crew& crew,
                  const std::vector<BoothId>& booths) {
  return Keeping(calendar, now_ms, crew, booths).write();
}

}  // namespace jambline::demo
