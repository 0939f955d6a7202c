#include "app/calc/calculation.h"
#include "trade/hours.h"
#include "trade/photo_judgement.h"
#include "trade/vin.h"

namespace jambline::app {

std::vector<Calculation> hours_calculations();  // hours.cpp

namespace {
struct Vin {
  std::string vin;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "vin"}, self.vin);
  }
};

struct VinSuspect {
  int place{};
  std::string instead;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "place", .doc = "1 to 17"}, self.place);
    visit(Field{.name = "instead", .doc = "a sign with which the number would pass"}, self.instead);
  }
};

struct VinResult {
  std::string read;
  bool passes = false;
  bool length_right = false;
  std::vector<int> forbidden_places;
  std::optional<int> sum;
  std::optional<std::string> expected;
  std::vector<VinSuspect> suspects;
  std::vector<int> model_years;
  trade::Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "read", .doc = "upper case, blanks and hyphens taken out"}, self.read);
    visit(Field{.name = "passes", .doc = "no proof that it is right"}, self.passes);
    visit(Field{.name = "length_right"}, self.length_right);
    visit(Field{.name = "forbidden_places"}, self.forbidden_places);
    visit(Field{.name = "sum"}, self.sum);
    visit(Field{.name = "expected", .doc = "at place 9"}, self.expected);
    visit(Field{.name = "suspects"}, self.suspects);
    visit(Field{.name = "model_years", .doc = "the likelier one first"}, self.model_years);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<VinResult> vin(const Vin& in) {
  if (in.vin.empty())
    return fail(Error{Code::Missing, "calculate", "vin", {{"field", "vin"}, {"cause", "empty"}}});
  if (in.vin.size() > 100)
    return fail(Error{
        Code::TooLarge, "calculate", "vin", {{"field", "vin"}, {"cause", "100 signs at most"}}});
  const trade::VinCheck found = trade::check_vin(in.vin);
  VinResult out;
  out.read = found.text;
  out.passes = found.passes;
  out.length_right = found.length_right;
  out.forbidden_places = found.forbidden_places;
  if (found.summed) {
    out.sum = found.sum;
    out.expected = std::string(1, found.expected);
    for (std::size_t i = 0; i < trade::vin_weights.size(); ++i)
      out.basis.term("place " + std::to_string(i + 1) + ", value of " + found.text[i] + " x weight",
                     trade::vin_value(found.text[i]) * trade::vin_weights[i], "",
                     "49 CFR 565.15, 2008");
    out.basis.term("sum mod 11", found.sum % 11, "", trade::computed);
  }
  for (const auto& one : found.suspects)
    out.suspects.push_back({one.place, std::string(1, one.instead)});
  out.model_years = found.model_years;
  out.basis.method = "Sum of value x weight, mod 11, ten written X, stands at place 9.";
  return out;
}

Vin vin_example() {
  return {"9ZZHX4K16L1004Z06"};
}

struct Rounding {
  std::int64_t ms{};
  int step_min{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "ms", .unit = "ms", .min = -1e15, .max = 1e15}, self.ms);
    visit(Field{.name = "step_min", .unit = "min", .min = 1, .max = 60}, self.step_min);
  }
};

struct RoundingResult {
  std::int64_t rounded_ms{};
  trade::Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "rounded_ms", .unit = "ms"}, self.rounded_ms);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<RoundingResult> rounding(const Rounding& in) {
  JAMBLINE_ASSIGN(const std::int64_t rounded, trade::round_neutral(in.ms, in.step_min));
  RoundingResult out{rounded, {}};
  out.basis.method = "To the nearest step, up and down alike; an exact half to the even multiple.";
  out.basis.term("time", static_cast<double>(in.ms), "ms", trade::measured);
  out.basis.term("step", in.step_min, "min", trade::entered);
  out.basis.term("rounded", static_cast<double>(rounded), "ms", "29 CFR 785.48(b), 1961");
  return out;
}

Rounding rounding_example() {
  return {1'365'000, 6};
}

// Sixteen by twelve pixels: a bright nib on dark paint.
trade::PhotoJudgement photo_example() {
  trade::PhotoJudgement out;
  out.picture.width = 16;
  out.picture.height = 12;
  for (int y = 0; y < 12; ++y)
    for (int x = 0; x < 16; ++x) {
      const bool nib = (x - 8) * (x - 8) + (y - 6) * (y - 6) < 7;
      out.picture.gray.push_back(nib ? 190 : 70 + 2 * x);
    }
  out.taken_width = 4000;
  out.taken_height = 3000;
  return out;
}
}  // namespace

std::vector<Calculation> record_calculations() {
  std::vector<Calculation> out{
      calculation<&vin, &vin_example>("vin", "is a vehicle identification number written right"),
      calculation<&rounding, &rounding_example>("round-hours", "neutral rounding of a time"),
      calculation<&trade::judge_photo, &photo_example>(
          "photo", "is a gray picture sharp and light enough to prove something"),
  };
  for (Calculation& one : hours_calculations()) out.push_back(one);
  return out;
}

}  // namespace jambline::app
