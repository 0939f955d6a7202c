// job/exposure_limit.h: a limit that the shop holds samples against, and those that it begins with.
//
// Shape:   value, unit, authority and year belong together; a shop adds its own and retires what
//          does not hold where it is. Every limit is shown with "check against today's local rule".
// Scheme:  whose protection factors go with it; without one no factor is applied to it, since
//          factors and limits of different schemes do not mix. `dangerous` is what is immediately
//          dangerous to life or health, in the limit's own unit, where somebody published it.
// Source:  each row's own; printed values of the authority, not computed ones.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "trade/exposure.h"
#include "trade/protection.h"

namespace jambline::job {

struct ExposureLimit {
  std::string substance;
  trade::LimitKind kind{};
  double value{};
  std::string unit;
  std::string authority;
  int year{};
  std::string source;
  bool retired{};
  std::optional<trade::FactorScheme> scheme = {};
  std::optional<double> dangerous = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "substance"}, self.substance);
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "value", .min = 1e-12, .max = 1e9}, self.value);
    visit(Field{.name = "unit", .doc = "ppm or mg/m3"}, self.unit);
    visit(Field{.name = "authority"}, self.authority);
    visit(Field{.name = "year", .min = 1900, .max = 2200}, self.year);
    visit(Field{.name = "source", .doc = "where the value was read"}, self.source);
    visit(Field{.name = "retired"}, self.retired);
    visit(Field{.name = "scheme", .doc = "of the protection factors that go with it"}, self.scheme);
    visit(Field{.name = "dangerous",
                .doc = "immediately dangerous to life or health, in the same unit",
                .min = 1e-12,
                .max = 1e9},
          self.dangerous);
  }
  friend bool operator==(const ExposureLimit&, const ExposureLimit&) = default;
};

struct UsualLimit {
  LimitId id;  // begins with zeros: the same in every shop
  ExposureLimit limit;
};
const std::vector<UsualLimit>& usual_limits();

}  // namespace jambline::job
