// Panel fit, networks of work and the clock of entries against values from outside.
#include <gtest/gtest.h>

#include "folds/fit_of_panel.h"
#include "seal/hlc.h"
#include "tests/outside/table.h"
#include "trade/panel_fit.h"
#include "trade/ready_by.h"

namespace jambline::trade {
namespace {

using outside::number;
using outside::numbers;
using outside::same;
using outside::table;

PanelFit fit_of(const outside::Row& row) {
  PanelFit in;
  in.flush = row.at("flush") == "yes";
  const auto points = numbers(row.at("points"));
  for (std::size_t i = 0; i + 5 < points.size(); i += 6)
    in.points.push_back({"point", points[i], points[i + 1], points[i + 2], points[i + 3],
                         points[i + 4], points[i + 5]});
  const auto fasteners = numbers(row.at("fasteners"));
  for (std::size_t i = 0; i + 3 < fasteners.size(); i += 4)
    in.fasteners.push_back(
        {"bolt", fasteners[i], fasteners[i + 1], fasteners[i + 2], fasteners[i + 3]});
  return in;
}

TEST(PanelFitOutside, BoundedLeastSquaresFindTheSameMove) {
  for (const auto& row : table("scipy_panel_fits.csv")) {
    const auto fit = panel_fit(fit_of(row));
    ASSERT_TRUE(fit) << row.at("case");
    EXPECT_TRUE(same(fit->shift_x_mm, number(row, "shift_x"), 1e-9)) << row.at("case");
    EXPECT_TRUE(same(fit->shift_y_mm, number(row, "shift_y"), 1e-9)) << row.at("case");
    EXPECT_TRUE(same(fit->turn_deg, number(row, "turn"), 1e-9)) << row.at("case");
    EXPECT_TRUE(same(fit->rms_mm, number(row, "rms"), 1e-9)) << row.at("case");
    EXPECT_TRUE(same(fit->free_rms_mm, number(row, "free_rms"), 1e-9)) << row.at("case");
    EXPECT_EQ(fit->stopped_by_slots, row.at("stopped") == "yes") << row.at("case");
  }
}

TEST(PanelFitOutside, MoreSlotsThanUnknownsFindTheSameMove) {
  for (const auto& row : table("scipy_panel_slots.csv")) {
    const auto fit = panel_fit(fit_of(row));
    ASSERT_TRUE(fit) << row.at("case");
    EXPECT_NEAR(fit->shift_x_mm, number(row, "shift_x"), 1e-6) << row.at("case");
    EXPECT_NEAR(fit->shift_y_mm, number(row, "shift_y"), 1e-6) << row.at("case");
    EXPECT_NEAR(fit->turn_deg, number(row, "turn"), 1e-6) << row.at("case");
    EXPECT_NEAR(fit->rms_mm, number(row, "rms"), 1e-8) << row.at("case");
  }
}

// As it stands in a car: measured after hanging, at the hinges and the striker of the door's table.
TEST(PanelFitOutside, TheDoorOfACarIsMovedTheSameAndNoSlotReachesTooFar) {
  int not_reached = 0;
  for (const auto& row : table("scipy_panel_cars.csv")) {
    SCOPED_TRACE(row.at("case"));
    folds::CarView car;
    car.body = job::BodyShape::FourDoorSedan;
    folds::FitView measured;
    measured.panel = job::Panel::LeftFrontDoor;
    const auto points = numbers(row.at("points"));
    for (std::size_t i = 0; i + 4 < points.size(); i += 5)
      measured.points.push_back(
          {points[i], points[i + 1], points[i + 2], points[i + 3], points[i + 4]});
    car.assembly.fits = {measured};
    const auto fit = folds::fit_of_panel(car, job::Panel::LeftFrontDoor);
    ASSERT_TRUE(fit && fit->gaps && *fit->gaps);
    const auto& asked = fit->gaps_asked.fasteners;
    ASSERT_EQ(asked.size(), 3U);
    const auto hinges = numbers(row.at("hinges"));
    for (std::size_t i = 0; i < 2; ++i) {
      EXPECT_NEAR(asked[i].x_mm, hinges[2 * i], 1e-6);
      EXPECT_NEAR(asked[i].y_mm, hinges[2 * i + 1], 1e-6);
    }
    for (const auto& one : asked) EXPECT_EQ(one.travel_x_mm, number(row, "travel"));
    const PanelFitResult& said = **fit->gaps;
    const char* const names[] = {"upper", "lower", "at_striker"};
    for (std::size_t i = 0; i < 3; ++i) {
      const auto move = numbers(row.at(names[i]));
      EXPECT_NEAR(said.moves[i].x_mm, move[0], 1e-7) << names[i];
      EXPECT_NEAR(said.moves[i].y_mm, move[1], 1e-7) << names[i];
    }
    const auto after = numbers(row.at("after"));
    for (std::size_t i = 0; i < after.size(); ++i)
      EXPECT_NEAR(said.points[i].after_mm, after[i], 1e-7);
    EXPECT_NEAR(said.rms_mm, number(row, "rms"), 1e-8);
    EXPECT_NEAR(said.free_rms_mm, number(row, "free_rms"), 1e-8);
    const bool stopped = row.at("stopped") == "yes";
    EXPECT_EQ(said.stopped_by_slots, stopped);
    EXPECT_EQ(said.reached, !stopped);
    EXPECT_FALSE(said.datum_is_out) << "a free move brings every point right";
    not_reached += stopped ? 1 : 0;
  }
  EXPECT_EQ(not_reached, 2);
}

TEST(PanelFitOutside, RigidMovesAreFoundAgain) {
  for (const auto& row : table("scipy_rigid_moves.csv")) {
    const auto places = [&](const char* column) {
      std::vector<Point_mm> out;
      const auto flat = numbers(row.at(column));
      for (std::size_t i = 0; i + 1 < flat.size(); i += 2) out.push_back({flat[i], flat[i + 1]});
      return out;
    };
    const RigidFit fit = rigid_fit(places("from"), places("to"));
    EXPECT_TRUE(same(fit.turn_deg, number(row, "turn_deg"), 1e-9)) << row.at("case");
    EXPECT_TRUE(same(fit.shift_x_mm, number(row, "shift_x"), 1e-9)) << row.at("case");
    EXPECT_TRUE(same(fit.shift_y_mm, number(row, "shift_y"), 1e-9)) << row.at("case");
    EXPECT_TRUE(same(fit.rms_mm, number(row, "rms"), 1e-9)) << row.at("case");
  }
}

// Source: Umeyama 1991; inputs from memory, turn [[0.83205, 0.55470], [-0.55470, 0.83205]] of his
// mirrored example
TEST(PanelFitOutside, AMirroredPanelIsTurnedAndNotMirrored) {
  const RigidFit fit = rigid_fit({{0, 0}, {1, 0}, {0, 2}}, {{0, 0}, {-1, 0}, {0, 2}});
  const double turn = fit.turn_deg * 3.14159265358979323846 / 180;
  EXPECT_NEAR(std::cos(turn), 0.83205, 5e-6);
  EXPECT_NEAR(-std::sin(turn), 0.55470, 5e-6);
  EXPECT_NEAR(fit.rms_mm * fit.rms_mm, 0.619755, 5e-7);
}

struct Network {
  ReadyBy in;
  std::vector<outside::Row> rows;
};

std::map<std::string, Network> networks() {
  std::map<std::string, Network> out;
  for (const auto& row : table("critical_paths.csv")) {
    Network& network = out[row.at("example")];
    const double likely = number(row, "likely");
    std::vector<std::string> before;
    std::istringstream names(row.at("before"));
    for (std::string one; names >> one;) before.push_back(one);
    network.in.work.push_back({row.at("activity"), likely, likely, likely, false, before});
    network.in.trials = 20;
    network.rows.push_back(row);
  }
  return out;
}

TEST(ReadyByOutside, EveryTimeAndFloatOfEveryNetwork) {
  const auto all = networks();
  EXPECT_EQ(all.size(), 5U);
  for (const auto& [name, network] : all) {
    const auto result = ready_by(network.in);
    ASSERT_TRUE(result) << name;
    EXPECT_TRUE(same(result->length_min, number(network.rows[0], "length"), 1e-9)) << name;
    EXPECT_TRUE(same(*result->p50_min, number(network.rows[0], "length"), 1e-9)) << name;
    for (std::size_t i = 0; i < network.rows.size(); ++i) {
      const auto& row = network.rows[i];
      const WorkTimes& one = result->work[i];
      const std::string what = name + ", " + one.name;
      EXPECT_TRUE(same(one.early_start_min, number(row, "early_start"), 1e-9)) << what;
      EXPECT_TRUE(same(one.early_finish_min, number(row, "early_finish"), 1e-9)) << what;
      EXPECT_TRUE(same(one.late_start_min, number(row, "late_start"), 1e-9)) << what;
      EXPECT_TRUE(same(one.late_finish_min, number(row, "late_finish"), 1e-9)) << what;
      EXPECT_TRUE(same(one.total_float_min, number(row, "total_float"), 1e-9)) << what;
      EXPECT_TRUE(same(one.free_float_min, number(row, "free_float"), 1e-9)) << what;
      EXPECT_EQ(one.critical, std::abs(number(row, "total_float")) < 1e-9) << what;
    }
  }
}

TEST(ReadyByOutside, TheChanceOfAPromiseAmongTriangularTimes) {
  const WorkItem first{"first", 30, 45, 90, false, {}};
  WorkItem second{"second", 60, 70, 200, false, {}};
  WorkItem last{"last", 20, 40, 50, false, {}};
  for (const auto& row : table("scipy_forecasts.csv")) {
    const std::string& shape = row.at("shape");
    ReadyBy in;
    in.work = {first};
    if (shape != "one") {
      second.after =
          shape == "chain" ? std::vector<std::string>{"first"} : std::vector<std::string>{};
      in.work.push_back(second);
    }
    if (shape == "chain" || shape == "joined") {
      last.after = {"first", "second"};
      in.work.push_back(last);
    }
    in.promised_min = number(row, "promised_min");
    in.trials = 20000;
    in.seed = 17;
    const auto result = ready_by(in);
    ASSERT_TRUE(result);
    const double share = number(row, "chance_percent") / 100;
    EXPECT_NEAR(*result->promise_percent / 100, share, 5 * std::sqrt(share * (1 - share) / 20000))
        << shape << " " << row.at("promised_min");
    // Quantiles move as the drawn share does; these are far from flat places of the distribution.
    EXPECT_NEAR(*result->p10_min, number(row, "p10_min"), 1.5) << shape;
    EXPECT_NEAR(*result->p50_min, number(row, "p50_min"), 1.5) << shape;
    EXPECT_NEAR(*result->p90_min, number(row, "p90_min"), 2.5) << shape;
  }
}

}  // namespace
}  // namespace jambline::trade

namespace jambline::seal {
namespace {

TEST(ClockOutside, FollowsThePublishedTrace) {
  Hlc now;
  for (const auto& row : outside::table("clock_trace.csv")) {
    const std::int64_t wall_ms = std::stoll(row.at("wall_ms"));
    now = row.at("heard_ms").empty()
              ? hlc_local(now, wall_ms)
              : hlc_receive(now,
                            {std::stoull(row.at("heard_ms")),
                             static_cast<std::uint16_t>(std::stoul(row.at("heard_counter")))},
                            wall_ms);
    EXPECT_EQ(now.ms, std::stoull(row.at("ms"))) << wall_ms;
    EXPECT_EQ(now.counter, std::stoul(row.at("counter"))) << wall_ms;
  }
}

}  // namespace
}  // namespace jambline::seal
