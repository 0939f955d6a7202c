#include "folds/booth_state.h"

#include <algorithm>
#include <cmath>

#include "base/spans.h"

namespace jambline::folds {

namespace {

double mean_of(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return values.empty() ? 0 : sum / static_cast<double>(values.size());
}

trade::ExhaustEvent event_of(job::BoothWord word) {
  switch (word) {
    case job::BoothWord::FanStopped:
      return trade::ExhaustEvent::FanStopped;
    case job::BoothWord::Bake:
      return trade::ExhaustEvent::Bake;
    case job::BoothWord::DoorOpened:
      return trade::ExhaustEvent::DoorOpened;
    default:
      return trade::ExhaustEvent::FreshAirDoorsShut;
  }
}

bool is_exhaust(job::BoothWord word) {
  return word == job::BoothWord::FreshAirDoorsShut || word == job::BoothWord::FanStopped ||
         word == job::BoothWord::Bake || word == job::BoothWord::DoorOpened;
}
}  // namespace

const BoothReadView* last_reading(const BoothAirView* air, job::BoothReading what) {
  if (!air) return nullptr;
  for (auto one = air->readings.rbegin(); one != air->readings.rend(); ++one)
    if (one->what == what && !one->values.empty()) return &*one;
  return nullptr;
}

std::optional<std::int64_t> smoke_test_due_ms(const BoothAirView& air) {
  const auto* test = last_reading(&air, job::BoothReading::SmokeTest);
  if (!test) return std::nullopt;
  return test->happened_ms + static_cast<std::int64_t>(air.facts.smoke_valid_days * ms_per_day);
}

Result<trade::ClearanceResult> clearance_needed(const BoothView& booth, const BoothAirView* air,
                                                const Moment& now) {
  trade::Clearance in;
  in.place = job::is_open(booth.kind) ? trade::SprayPlace::OpenDeck : trade::SprayPlace::Booth;
  if (air) {
    in.volume_m3 = air->facts.volume_m3;
    in.mixing_factor = air->facts.mixing_factor;
    in.fixed_min = air->facts.fixed_clear_min;
    in.extra_factor = air->facts.extra_factor;
    in.exhaust_m3_h = air->facts.rated_exhaust_m3_h;
    if (const auto* exhaust = last_reading(air, job::BoothReading::Exhaust)) {
      in.exhaust_m3_h = mean_of(exhaust->values);
      in.exhaust_measured = true;
    }
    if (const auto* smoke = last_reading(air, job::BoothReading::SmokeTest)) {
      // A test from the future says that a clock is wrong: it is taken as overdue.
      const double age_days = static_cast<double>(now.wall_ms - smoke->happened_ms) / ms_per_day;
      const double valid_days = air->facts.smoke_valid_days;
      in.smoke_test =
          trade::SmokeTest{*std::max_element(smoke->values.begin(), smoke->values.end()),
                           age_days < 0 ? valid_days + 1 : age_days, valid_days};
    }
  }
  return trade::clearance_time(in);
}

BoothState booth_state(const BoothView& booth, const BoothAirView* air, const Moment& now) {
  BoothState out;
  if (!air) return out;
  std::vector<const BoothSaidView*> exhaust;
  bool sprayed = false;
  for (const auto& said : air->said) {
    switch (said.what) {
      case job::BoothWord::SprayStarted:
        sprayed = true;
        out.up.push_back(said);
        exhaust.push_back(&said);
        break;
      case job::BoothWord::GunDown:
        sprayed = true;  // also where it was sprayed without a start
        std::erase_if(out.up, [&](const auto& one) { return one.spray == said.spray; });
        out.last_down = said;
        break;
      case job::BoothWord::ClearanceOver:
        break;
      default:
        if (is_exhaust(said.what)) exhaust.push_back(&said);
    }
  }
  if (!sprayed) return out;
  auto needed = clearance_needed(booth, air, now);
  if (needed) out.needed = *needed;
  if (!out.up.empty() || !out.last_down) {
    out.word = BoothWordNow::Spraying;
    return out;
  }
  if (!out.needed) {
    out.word = BoothWordNow::NoTime;
    return out;
  }

  // Seconds before now; a clock that ran backwards never makes a later word an earlier one.
  const auto ago_s = [&](const Stamp& at) {
    return -static_cast<double>(elapsed_ms(at, now)) / 1000;
  };
  trade::ClearanceCount count;
  count.now_s = 0;
  count.needed_min = out.needed->minutes;
  count.gun_down_s = ago_s(out.last_down->at);
  std::vector<double> at_s;
  at_s.reserve(exhaust.size());
  for (const auto* said : exhaust)
    at_s.push_back(std::max(ago_s(said->at), at_s.empty() ? -1e12 : at_s.back() + 0.001));
  // What would be still to come by that is of just now, and still in its order.
  double latest_s = 0;
  for (auto at = at_s.rbegin(); at != at_s.rend(); ++at, latest_s -= 0.001)
    latest_s = *at = std::min(*at, latest_s);
  for (std::size_t i = 0; i < exhaust.size(); ++i)
    count.changes.push_back({event_of(exhaust[i]->what), at_s[i]});
  const auto counted = trade::clearance_count(count);
  if (!counted) {
    out.word = BoothWordNow::NoTime;
    return out;
  }
  out.restarts = counted->restarts;
  out.left_s = counted->left_s;
  if (counted->over) {
    out.word = BoothWordNow::TimeOver;
  } else if (counted->counting) {
    out.word = BoothWordNow::Counting;
  } else {
    out.word = BoothWordNow::NotCounting;
    out.left_s = out.needed->minutes * 60;
    if (!exhaust.empty()) out.stopped_by = exhaust.back()->what;
  }
  return out;
}

Result<trade::AirflowResult> booth_airflow(const BoothAirView& air) {
  const auto* read = last_reading(&air, job::BoothReading::Velocity);
  if (!read || !air.facts.wanted_m_s)
    return fail(Code::Missing, "compare the air", read ? "required velocity" : "reading");
  trade::Airflow in;
  in.velocities_m_s = read->values;
  in.wanted_m_s = *air.facts.wanted_m_s;
  in.wanted_from = air.facts.wanted_from;
  in.instrument_percent = read->instrument_percent;
  return trade::compare_airflow(in);
}

Result<trade::FilterTrendResult> filter_trend(const ShopView& shop, const BoothAirView& air) {
  std::int64_t since_ms = 0;
  for (const auto& event : shop.booth_events)
    if (event.booth == air.booth && event.what == job::BoothEvent::FiltersChanged)
      since_ms = std::max(since_ms, event.happened_ms);
  if (!air.facts.most_pressure_pa)
    return fail(Code::Missing, "look at the filter", "most pressure");
  trade::FilterTrend in;
  in.limit_pa = *air.facts.most_pressure_pa;
  double last_day = -1e9;
  for (const auto& read : air.readings) {
    if (read.what != job::BoothReading::FilterPressure || read.happened_ms < since_ms) continue;
    const double day = static_cast<double>(read.happened_ms) / ms_per_day;
    if (day <= last_day || read.values.empty()) continue;
    in.readings.push_back({day, mean_of(read.values)});
    last_day = day;
  }
  return trade::filter_due(in);
}

}  // namespace jambline::folds
