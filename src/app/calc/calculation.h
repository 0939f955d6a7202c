// app/calc/calculation.h: a calculation of src/trade by name, from JSON to JSON.
//
// Shape:   one row a calculation; schema and example come from the input's describe(). Reading is
//          strict: a field that nobody described is refused, and so is one that is not there.
// Errors:  of base/json.h and of the calculation; they name the field. refused() says one in a
//          sentence.
// Threads: plain functions.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/json.h"
#include "trade/basis.h"

namespace jambline::app {

struct Calculation {
  std::string_view name;
  std::string_view what;  // one line
  std::string (*schema)();
  std::string (*example)();
  Result<std::string> (*run)(std::string_view input);
};

// calculation<&trade::check_climate, &climate_example>("climate", "...")
template <auto compute, auto make_example>
Calculation calculation(std::string_view name, std::string_view what) {
  using Input = decltype(make_example());
  return {name, what, [] { return json_schema<Input>(); }, [] { return to_json(make_example()); },
          [](std::string_view text) -> Result<std::string> {
            JAMBLINE_ASSIGN(const Input input, from_json<Input>(text, Strict::Yes));
            JAMBLINE_ASSIGN(const auto output, compute(input));
            return to_json(output);
          }};
}

// One number and what it was made from, for the small ones.
struct Number {
  double value{};
  trade::Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "value"}, self.value);
    visit(Field{.name = "basis"}, self.basis);
  }
};

// The families, each in a file of its own; all of them in calculations().
std::vector<Calculation> film_calculations();
std::vector<Calculation> dirt_calculations();
std::vector<Calculation> chance_calculations();
std::vector<Calculation> plan_calculations();
std::vector<Calculation> cure_calculations();
std::vector<Calculation> air_calculations();
std::vector<Calculation> breathing_calculations();
std::vector<Calculation> assembly_calculations();
std::vector<Calculation> record_calculations();
const std::vector<Calculation>& calculations();

// "The field 'jobs[3].area_m2' is refused: -1 is under 0.01." One line, with its end.
std::string refused(const Error& error, std::string_view input = {});

}  // namespace jambline::app
