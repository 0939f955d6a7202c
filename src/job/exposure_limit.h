// job/exposure_limit.h: a limit that the shop holds samples against, and those that it begins with.
//
// Shape:   value, unit, authority and year belong together; a shop adds its own and retires what
//          does not hold where it is. Every limit is shown with "check against today's local rule".
// Source:  each row's own; printed values of the authority, not computed ones.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "trade/exposure.h"

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
  }
  friend bool operator==(const ExposureLimit&, const ExposureLimit&) = default;
};

struct UsualLimit {
  LimitId id;  // begins with zeros: the same in every shop
  ExposureLimit limit;
};
const std::vector<UsualLimit>& usual_limits();

}  // namespace jambline::job
