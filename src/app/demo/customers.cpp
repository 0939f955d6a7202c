#include "app/demo/customers.h"

#include <cmath>
#include <iterator>
#include <numbers>

#include "app/demo/invented.h"

namespace jambline::demo {

namespace {
constexpr const char* customers[] = {"Dana Whitlow",   "Marcus Oyelowo", "Priya Anandan",
                                     "Lena Brook",     "Tomas Arce",     "Greta Holm",
                                     "Samir Haddadin", "Ruth Calloway"};
constexpr const char* old_damages[] = {"chip at the fuel door", "scratch on the left mirror",
                                       "curb marks on two wheels", "star in the windshield"};
constexpr const char* lamps[] = {"tire pressure", "engine"};

SeededRandom of_plate(const folds::CarView& car, std::string_view what) {
  return stream(0, std::string(what) + " of " + car.plate);
}

// A looping line, another one each time: nobody's hand.
job::Stroke loops(SeededRandom& random, double from, double to, double middle) {
  job::Stroke out;
  const int turns = between(random, 2, 4);
  const double height = 0.04 + 0.03 * random.unit();
  constexpr int steps_a_turn = 12;
  for (int i = 0; i <= turns * steps_a_turn; ++i) {
    const double part = static_cast<double>(i) / (turns * steps_a_turn);
    const double angle = 2 * std::numbers::pi * i / steps_a_turn;
    const auto rounded = [](double value) { return std::round(value * 1000) / 1000; };
    out.points.push_back({rounded(from + (to - from) * part + 0.02 * std::sin(angle)),
                          rounded(middle - height * std::cos(angle) * (1 - 0.5 * part))});
  }
  return out;
}
}  // namespace

job::CheckIn invented_check_in(const folds::CarView& car) {
  SeededRandom random = of_plate(car, "check-in");
  job::CheckIn out;
  out.odometer = between(random, 900, 138'000);
  out.fuel_percent = 25 * between(random, 0, 4);
  out.keys = between(random, 1, 2);
  if (chance(random, 0.2)) out.warning_lamps = lamps[random.below(std::size(lamps))];
  if (chance(random, 0.35)) out.old_damage = old_damages[random.below(std::size(old_damages))];
  if (car.drive == job::Drive::Hybrid || car.drive == job::Drive::PlugIn ||
      car.drive == job::Drive::Electric)
    out.state_of_pack = "no damage seen";
  return out;
}

acts::Sign signed_by_customer(const folds::CarView& car, job::SignedFor what) {
  SeededRandom random = of_plate(car, "customer");
  acts::Sign out{car.job, what, customers[random.below(std::size(customers))], {}};
  out.strokes.push_back(loops(random, 0.1, 0.4, 0.2));
  out.strokes.push_back(loops(random, 0.45, 0.85, 0.22));
  return out;
}

}  // namespace jambline::demo
