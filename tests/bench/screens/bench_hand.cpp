#include "tests/bench/screens/bench_hand.h"

#include <cmath>

#include "tests/bench/screens/shops.h"

namespace jambline::bench {

BenchHand::BenchHand(app::Program& program, std::uint64_t seed)
    : ScreenHand(program), program_(program), random_(seed) {}

void BenchHand::choose_painter() {
  auto& session = program_.session();
  for (const auto& one : session.shop().people)
    if (!one.left && one.role == job::Role::Painter)
      session.choosePerson(QString::fromStdString(one.person.hex()));
  must_be(session.hasPerson(), "nobody to look over a car");
}

engine::Wrote BenchHand::post(acts::Command command) {
  bool done = false;
  engine::Wrote out;
  program_.session().post(std::move(command), [&](const Result<engine::Wrote>& wrote) {
    must_be(wrote.has_value(), "an act was refused");
    out = *wrote;
    done = true;
  });
  must_be(wait_for([&] { return done; }), "an act hangs");
  return out;
}

JobId BenchHand::open_sedan(const char* plate, const std::vector<job::PatternPanel>& panels,
                            std::vector<acts::PlannedOperation> operations) {
  acts::OpenCar open;
  open.plate = plate;
  open.color = {"G7", "deep green", "#1F4D3A"};
  open.body = job::BodyShape::FourDoorSedan;
  for (const auto& one : panels) open.panels.push_back({.panel = one.panel});
  open.operations = std::move(operations);
  const JobId car = post(open).job;
  program_.session().openCar(QString::fromStdString(car.hex()));
  must_be(wait_for([&] { return program_.session().hasCar(); }), "the car does not come");
  return car;
}

trade::Point_mm BenchHand::spot(const trade::Polygon& outline) {
  const auto between = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random_() >> 11U) / 9007199254740992.0;
  };
  const auto box = trade::bounds(outline.corners);
  while (true) {
    const trade::Point_mm at{between(box.low.x_mm, box.high.x_mm),
                             between(box.low.y_mm, box.high.y_mm)};
    if (trade::contains(outline, at)) return at;
  }
}

void BenchHand::throw_nib(const JobId& car, const job::PatternPanel& panel) {
  const auto at = spot(panel.shape.outline);
  post(acts::PlaceMark{
      .job = car, .panel = panel.panel, .x_mm = at.x_mm, .y_mm = at.y_mm, .defect = {}});
}

void BenchHand::throw_nibs(const JobId& car, const std::vector<job::PatternPanel>& panels,
                           int nibs) {
  double all_mm2 = 0, sum_mm2 = 0;
  for (const auto& one : panels) all_mm2 += trade::area_mm2(one.shape.outline);
  int thrown = 0;
  for (const auto& one : panels) {
    sum_mm2 += trade::area_mm2(one.shape.outline);
    for (const auto upto = std::lround(nibs * sum_mm2 / all_mm2); thrown < upto; ++thrown)
      throw_nib(car, one);
  }
  must_be(thrown == nibs, "marks are missing");
}

}  // namespace jambline::bench
