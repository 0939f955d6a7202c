#include "app/calc/calculation.h"
#include "trade/airflow.h"
#include "trade/clearance.h"
#include "trade/climate.h"

namespace jambline::app {

namespace {
trade::Clearance clearance_example() {
  trade::Clearance out;
  out.smoke_test = trade::SmokeTest{5, 268, 424};
  out.volume_m3 = 92;
  out.exhaust_m3_h = 18500;
  return out;
}

trade::ClearanceCount count_example() {
  using trade::ExhaustEvent;
  return {600,
          5,
          1300,
          {{ExhaustEvent::FreshAirDoorsShut, 0},
           {ExhaustEvent::DoorOpened, 700},
           {ExhaustEvent::FreshAirDoorsShut, 760},
           {ExhaustEvent::Bake, 980},
           {ExhaustEvent::FreshAirDoorsShut, 1100}}};
}

struct Purge {
  double air_changes_1_h{};
  double removed_percent{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "air_changes_1_h", .unit = "1/h", .min = 0.01, .max = 1e5},
          self.air_changes_1_h);
    visit(Field{.name = "removed_percent", .unit = "%", .min = 1, .max = 99.9999},
          self.removed_percent);
  }
};

Result<Number> purge(const Purge& in) {
  Number out{trade::purge_min(in.air_changes_1_h, in.removed_percent), {}};
  out.basis.method = "Minutes = -ln(1 - share removed) / air changes x 60, air mixed all the time.";
  out.basis.term("air changes", in.air_changes_1_h, "1/h", trade::entered);
  out.basis.term("removed", in.removed_percent, "%", "CDC 2003, appendix B, table B.1");
  out.basis.term("minutes", out.value, "min", trade::computed);
  return out;
}

Purge purge_example() {
  return {12, 99};
}

trade::Airflow airflow_example() {
  return {{0.52, 0.49, 0.55, 0.51, 0.47, 0.53, 0.50, 0.54, 0.48},
          0.5,
          "the booth's maker, sheet of 2019",
          5,
          24.5};
}

trade::FilterTrend filter_example() {
  return {{{0, 62}, {7, 71}, {14, 78}, {21, 90}, {28, 97}, {35, 109}}, 180};
}

trade::Dilution dilution_example() {
  return {30.4, 1.4, 0.25};
}

trade::Climate climate_example() {
  trade::Climate out;
  out.air_c = 23;
  out.surface_c = 20.5;
  out.humidity_percent = 58;
  out.air_min_c = 18;
  out.air_max_c = 28;
  out.humidity_max_percent = 75;
  return out;
}
}  // namespace

std::vector<Calculation> air_calculations() {
  return {
      calculation<&trade::clearance_time, &clearance_example>(
          "clearance-time", "how long a booth's air is left to clear, and by which rule"),
      calculation<&trade::clearance_count, &count_example>(
          "clearance-count", "how much of that time has gone by in one piece"),
      calculation<&purge, &purge_example>("purge-time", "minutes to remove a share, mixed air"),
      calculation<&trade::compare_airflow, &airflow_example>(
          "airflow", "velocity against the wanted one, with its uncertainty"),
      calculation<&trade::filter_due, &filter_example>("filter-due",
                                                       "when a filter reaches its pressure limit"),
      calculation<&trade::dilution_air, &dilution_example>(
          "dilution-air", "air that thins a solvent to a share of its explosive limit"),
      calculation<&trade::check_climate, &climate_example>(
          "climate", "dew point, its margin and the other gates before spraying"),
  };
}

}  // namespace jambline::app
