// job/car.h: what has to be known of a car and of each of its panels before anyone cuts or sprays.
//
// Source: finish, treatment, cure and clear decide what may be sanded or polished at all; common
//         practice, no source. The product's sheet and the carmaker win.
#pragma once

#include <cstdint>
#include <string>

#include "base/describe.h"
#include "job/panel.h"
#include "trade/panel_shape.h"

namespace jambline::job {

enum class Drive : std::uint8_t { Combustion, Hybrid, PlugIn, Electric, FuelCellOrGas };

enum class Finish : std::uint8_t {
  GlossBaseClear,
  TriCoat,
  SingleStageSolid,
  SingleStageMetallic,
  Matte,
  Textured,
  Film,
};

enum class Treatment : std::uint8_t {
  Full,
  ColorBlendFullClear,
  ClearOnly,
  SpotWithClearFade,
  EdgeOrJambOnly,
  NotRefinished,
};

// Matte, textured and filmed panels are never sanded, compounded or machine polished.
constexpr bool may_be_cut(Finish finish) {
  return finish != Finish::Matte && finish != Finish::Textured && finish != Finish::Film;
}

struct PanelPlan {
  Panel panel{};
  bool on_car = true;
  trade::Substrate substrate = trade::Substrate::Steel;
  Finish finish = Finish::GlossBaseClear;
  Treatment treatment = Treatment::Full;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "on_car", .doc = "false: painted loose"}, self.on_car);
    visit(Field{.name = "substrate"}, self.substrate);
    visit(Field{.name = "finish"}, self.finish);
    visit(Field{.name = "treatment"}, self.treatment);
  }
  friend bool operator==(const PanelPlan&, const PanelPlan&) = default;
};

struct Color {
  std::string code;  // as on the car's label or the mix card
  std::string name;  // in the shop's words: "deep green"
  std::string hex;   // "#RRGGBB", for tints only
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "code", .doc = "as on the car's label"}, self.code);
    visit(Field{.name = "name", .doc = "in the shop's words"}, self.name);
    visit(Field{.name = "hex", .doc = "#RRGGBB, for tints on screens only"}, self.hex);
  }
  friend bool operator==(const Color&, const Color&) = default;
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::Drive> = std::to_array<std::string_view>(
    {"combustion", "hybrid", "plug-in", "electric", "fuel cell or gas"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::Finish> =
    std::to_array<std::string_view>({"gloss base and clear", "tri-coat", "single-stage solid",
                                     "single-stage metallic", "matte", "textured", "film"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::Treatment> =
    std::to_array<std::string_view>({"full", "color blend, full clear", "clear only",
                                     "spot with clear fade", "edge or jamb only",
                                     "not refinished"});
