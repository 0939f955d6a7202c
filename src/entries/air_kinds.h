// entries/air_kinds.h: booths and their air, protection, limits and products of the shop (subject
// zero), and what was sprayed, baked and bonded on a car.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "entries/shop_kinds.h"
#include "job/booth.h"
#include "job/exposure_limit.h"
#include "job/first_aid.h"
#include "job/gun_check.h"
#include "job/panel.h"
#include "job/product.h"
#include "job/respirator.h"

namespace jambline::entries {

// 1) Of the shop

struct BoothFactsSet {
  static constexpr std::uint16_t kind = 24;
  static constexpr std::string_view name = "BoothFactsSet";
  static constexpr bool erasable = false;
  BoothId booth;
  job::BoothFacts facts{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "facts"}, self.facts);
    visit(replaces_field, self.replaces);
  }
};

struct BoothRead {
  static constexpr std::uint16_t kind = 25;
  static constexpr std::string_view name = "BoothRead";
  static constexpr bool erasable = false;
  BoothId booth;
  job::BoothReading what{};
  std::vector<double> values;
  double instrument_percent = 5;
  std::optional<std::int64_t> happened_ms = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "what"}, self.what);
    visit(
        Field{
            .name = "values", .doc = "m/s, Pa, m3/h or min by what was read", .min = 0, .max = 1e7},
        self.values);
    visit(Field{.name = "instrument_percent",
                .unit = "%",
                .doc = "of reading, k = 2",
                .min = 0,
                .max = 50},
          self.instrument_percent);
    visit(Field{.name = "happened_ms",
                .unit = "ms",
                .doc = "UTC since 1970; absent: when it was tapped"},
          self.happened_ms);
  }
};

// What the whole shop has to know of a booth; the car has the rest.
struct BoothSaid {
  static constexpr std::uint16_t kind = 26;
  static constexpr std::string_view name = "BoothSaid";
  static constexpr bool erasable = false;
  BoothId booth;
  job::BoothWord what{};
  std::optional<SprayId> spray = {};
  std::optional<JobId> job = {};
  std::optional<RespiratorId> respirator = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "spray", .doc = "of a start and a gun down"}, self.spray);
    visit(Field{.name = "job", .doc = "the car that is sprayed"}, self.job);
    visit(Field{.name = "respirator", .doc = "of a start"}, self.respirator);
  }
};

struct RespiratorSet {
  static constexpr std::uint16_t kind = 50;
  static constexpr std::string_view name = "RespiratorSet";
  static constexpr bool erasable = false;
  RespiratorId respirator;
  job::Respirator said{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "said"}, self.said);
    visit(replaces_field, self.replaces);
  }
};

struct FitTestDone {
  static constexpr std::uint16_t kind = 51;
  static constexpr std::string_view name = "FitTestDone";
  static constexpr bool erasable = true;
  FitTestId test;
  PersonId person;
  RespiratorId respirator;
  job::FitTest said{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "test"}, self.test);
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "said"}, self.said);
    visit(replaces_field, self.replaces);
  }
};

struct CartridgeChanged {
  static constexpr std::uint16_t kind = 52;
  static constexpr std::string_view name = "CartridgeChanged";
  static constexpr bool erasable = false;
  PersonId person;
  RespiratorId respirator;
  double schedule_h{};
  std::string schedule_basis;
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "schedule_h", .unit = "h", .min = 0.1, .max = 10000}, self.schedule_h);
    visit(Field{.name = "schedule_basis", .doc = "what the schedule rests on"},
          self.schedule_basis);
    visit(replaces_field, self.replaces);
  }
};

struct BreathingAirChecked {
  static constexpr std::uint16_t kind = 53;
  static constexpr std::string_view name = "BreathingAirChecked";
  static constexpr bool erasable = false;
  job::BreathingAir said{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "said"}, self.said);
    visit(replaces_field, self.replaces);
  }
};

// No medical detail, here or anywhere.
struct DoNotSpraySaid {
  static constexpr std::uint16_t kind = 54;
  static constexpr std::string_view name = "DoNotSpraySaid";
  static constexpr bool erasable = true;
  PersonId person;
  bool do_not_spray = true;
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "do_not_spray"}, self.do_not_spray);
    visit(replaces_field, self.replaces);
  }
};

struct DueSet {
  static constexpr std::uint16_t kind = 55;
  static constexpr std::string_view name = "DueSet";
  static constexpr bool erasable = true;
  PersonId person;
  job::DueKind what{};
  int due_day{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "due_day", .unit = "d", .doc = "days since 1970", .min = 0, .max = 100000},
          self.due_day);
    visit(replaces_field, self.replaces);
  }
};

struct LimitSet {
  static constexpr std::uint16_t kind = 56;
  static constexpr std::string_view name = "LimitSet";
  static constexpr bool erasable = false;
  LimitId limit;
  job::ExposureLimit said{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "limit"}, self.limit);
    visit(Field{.name = "said"}, self.said);
    visit(replaces_field, self.replaces);
  }
};

struct ProductSet {
  static constexpr std::uint16_t kind = 57;
  static constexpr std::string_view name = "ProductSet";
  static constexpr bool erasable = false;
  ProductId product;
  job::Product said{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "product"}, self.product);
    visit(Field{.name = "said"}, self.said);
    visit(replaces_field, self.replaces);
  }
};

struct ExposureSampled {
  static constexpr std::uint16_t kind = 58;
  static constexpr std::string_view name = "ExposureSampled";
  static constexpr bool erasable = true;
  SampleId sample;
  PersonId person;
  std::string substance;
  double value{};
  std::string unit;
  std::int64_t from_ms{};
  std::int64_t to_ms{};
  std::optional<RespiratorId> respirator = {};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "sample"}, self.sample);
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "substance"}, self.substance);
    visit(Field{.name = "value", .min = 0, .max = 1e9}, self.value);
    visit(Field{.name = "unit", .doc = "ppm or mg/m3"}, self.unit);
    visit(Field{.name = "from_ms", .unit = "ms"}, self.from_ms);
    visit(Field{.name = "to_ms", .unit = "ms"}, self.to_ms);
    visit(Field{.name = "respirator", .doc = "worn meanwhile"}, self.respirator);
    visit(replaces_field, self.replaces);
  }
};

// That it was needed, and for what; who was hurt is said by nobody here.
struct FirstAidOpened {
  static constexpr std::uint16_t kind = 59;
  static constexpr std::string_view name = "FirstAidOpened";
  static constexpr bool erasable = true;
  job::FirstAid what{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "what"}, self.what);
  }
};

// 2) Of a car

struct SprayStarted {
  static constexpr std::uint16_t kind = 210;
  static constexpr std::string_view name = "SprayStarted";
  static constexpr bool erasable = false;
  SprayId spray;
  BoothId booth;
  RespiratorId respirator;
  bool activated{};
  std::vector<job::GunCheck> checks;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "spray"}, self.spray);
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "activated", .doc = "isocyanate hardener"}, self.activated);
    visit(Field{.name = "checks"}, self.checks);
  }
};

// Said afterwards: it was sprayed although a stop stood.
struct SprayedWithout {
  static constexpr std::uint16_t kind = 211;
  static constexpr std::string_view name = "SprayedWithout";
  static constexpr bool erasable = false;
  BoothId booth;
  std::vector<job::GunItem> items;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "items"}, self.items);
  }
};

struct Mixed {
  static constexpr std::uint16_t kind = 212;
  static constexpr std::string_view name = "Mixed";
  static constexpr bool erasable = false;
  MixId mix;
  ProductId product;
  std::string batch;
  bool color_approved{};
  std::optional<std::int64_t> mixed_ms = {};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mix"}, self.mix);
    visit(Field{.name = "product"}, self.product);
    visit(Field{.name = "batch", .doc = "numbers on the cans"}, self.batch);
    visit(Field{.name = "color_approved", .doc = "variant and spray-out, of a color"},
          self.color_approved);
    visit(
        Field{
            .name = "mixed_ms", .unit = "ms", .doc = "said afterwards; absent: when it was tapped"},
        self.mixed_ms);
    visit(replaces_field, self.replaces);
  }
};

struct Coated {
  static constexpr std::uint16_t kind = 213;
  static constexpr std::string_view name = "Coated";
  static constexpr bool erasable = false;
  MixId mix;
  std::vector<job::Panel> panels;
  int coats = 1;
  std::vector<double> flash_min;
  std::string gun;
  bool heavy_film{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mix"}, self.mix);
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "coats", .min = 1, .max = 10}, self.coats);
    visit(Field{.name = "flash_min", .unit = "min", .doc = "between coats", .min = 0, .max = 600},
          self.flash_min);
    visit(Field{.name = "gun", .doc = "gun, tip, pressure"}, self.gun);
    visit(Field{.name = "heavy_film", .doc = "a run, or a heavy build"}, self.heavy_film);
  }
};

struct BakeLimitRead {
  static constexpr std::uint16_t kind = 214;
  static constexpr std::string_view name = "BakeLimitRead";
  static constexpr bool erasable = false;
  double most_c{};
  double most_min{};
  std::string source;
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "most_c", .unit = "C", .min = 20, .max = 150}, self.most_c);
    visit(Field{.name = "most_min", .unit = "min", .min = 1, .max = 600}, self.most_min);
    visit(Field{.name = "source", .doc = "where the carmaker says so"}, self.source);
    visit(replaces_field, self.replaces);
  }
};

struct BakeSaid {
  static constexpr std::uint16_t kind = 215;
  static constexpr std::string_view name = "BakeSaid";
  static constexpr bool erasable = false;
  bool on = true;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "on"}, self.on);
  }
};

struct PanelTemperatureRead {
  static constexpr std::uint16_t kind = 216;
  static constexpr std::string_view name = "PanelTemperatureRead";
  static constexpr bool erasable = false;
  job::PanelGroup group{};
  double surface_c{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "group"}, self.group);
    visit(Field{.name = "surface_c", .unit = "C", .min = -20, .max = 200}, self.surface_c);
  }
};

struct ThumbnailChecked {
  static constexpr std::uint16_t kind = 217;
  static constexpr std::string_view name = "ThumbnailChecked";
  static constexpr bool erasable = false;
  job::PanelGroup group{};
  bool firm{};
  std::optional<ProductId> product = {};
  std::optional<double> sheet_percent = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "group"}, self.group);
    visit(Field{.name = "firm"}, self.firm);
    visit(Field{.name = "product", .doc = "of the last coat there"}, self.product);
    visit(Field{.name = "sheet_percent",
                .unit = "%",
                .doc = "of its sheet's time until the film may be touched",
                .min = 0,
                .max = 1e6},
          self.sheet_percent);
  }
};

struct Bonded {
  static constexpr std::uint16_t kind = 218;
  static constexpr std::string_view name = "Bonded";
  static constexpr bool erasable = false;
  BondId bond;
  ProductId product;
  std::string what;
  std::string case_name;
  std::optional<std::int64_t> set_ms = {};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "bond"}, self.bond);
    visit(Field{.name = "product"}, self.product);
    visit(Field{.name = "what", .doc = "windshield, quarter panel"}, self.what);
    visit(Field{.name = "case_name", .doc = "of the drive-away table; empty: no glass"},
          self.case_name);
    visit(
        Field{.name = "set_ms", .unit = "ms", .doc = "said afterwards; absent: when it was tapped"},
        self.set_ms);
    visit(replaces_field, self.replaces);
  }
};

struct ClimateRead {
  static constexpr std::uint16_t kind = 219;
  static constexpr std::string_view name = "ClimateRead";
  static constexpr bool erasable = false;
  BoothId booth;  // none: where the car stands otherwise
  double air_c{};
  double surface_c{};
  double humidity_percent{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "air_c", .unit = "C", .min = -45, .max = 60}, self.air_c);
    visit(Field{.name = "surface_c", .unit = "C", .min = -45, .max = 60}, self.surface_c);
    visit(Field{.name = "humidity_percent", .unit = "%", .min = 0.1, .max = 100},
          self.humidity_percent);
  }
};

}  // namespace jambline::entries
