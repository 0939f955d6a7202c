// folds/car_air_view.h: what was sprayed on a car, in what, and how it is baked, warmed and bonded.
//
// Shape: in the order in which it was said. Stamps, not wall times: folds/stamp.h says how long
// ago. Heads: as in car_view.h.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "entries/air_kinds.h"
#include "folds/stamp.h"

namespace jambline::folds {

struct SprayView {
  SprayId spray;
  BoothId booth;
  RespiratorId respirator;
  bool activated{};
  std::vector<job::GunCheck> checks;
  PersonId by;
  Stamp at{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "spray"}, self.spray);
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "activated"}, self.activated);
    visit(Field{.name = "checks"}, self.checks);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
  }
  friend bool operator==(const SprayView&, const SprayView&) = default;
};

struct SprayedWithoutView {
  BoothId booth;
  std::vector<job::GunItem> items;
  PersonId by;
  Stamp at{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "items"}, self.items);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
  }
  friend bool operator==(const SprayedWithoutView&, const SprayedWithoutView&) = default;
};

struct CoatView {
  std::vector<job::Panel> panels;
  int coats{};
  std::vector<double> flash_min;
  std::string gun;
  bool heavy_film{};
  PersonId by;
  Stamp at{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "coats"}, self.coats);
    visit(Field{.name = "flash_min"}, self.flash_min);
    visit(Field{.name = "gun"}, self.gun);
    visit(Field{.name = "heavy_film"}, self.heavy_film);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
  }
  friend bool operator==(const CoatView&, const CoatView&) = default;
};

struct MixView {
  MixId mix;
  ProductId product;
  std::string batch;
  bool color_approved{};
  std::optional<std::int64_t> mixed_ms = {};
  PersonId by;
  Stamp at{};
  std::vector<CoatView> coats;
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mix"}, self.mix);
    visit(Field{.name = "product"}, self.product);
    visit(Field{.name = "batch"}, self.batch);
    visit(Field{.name = "color_approved"}, self.color_approved);
    visit(Field{.name = "mixed_ms", .unit = "ms"}, self.mixed_ms);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
    visit(Field{.name = "coats"}, self.coats);
  }
  friend bool operator==(const MixView&, const MixView&) = default;
};

// Of several that knew nothing of each other: the lowest and the shortest.
struct BakeLimitView {
  double most_c{};
  double most_min{};
  std::string source;
  PersonId by;
  Stamp at{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "most_c", .unit = "C"}, self.most_c);
    visit(Field{.name = "most_min"}, self.most_min);
    visit(Field{.name = "source"}, self.source);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
  }
  friend bool operator==(const BakeLimitView&, const BakeLimitView&) = default;
};

struct BakeView {
  bool on{};
  PersonId by;
  Stamp at{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "on"}, self.on);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
  }
  friend bool operator==(const BakeView&, const BakeView&) = default;
};

struct PanelTemperatureView {
  job::PanelGroup group{};
  double surface_c{};
  PersonId by;
  Stamp at{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "group"}, self.group);
    visit(Field{.name = "surface_c", .unit = "C"}, self.surface_c);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
  }
  friend bool operator==(const PanelTemperatureView&, const PanelTemperatureView&) = default;
};

struct ThumbnailView {
  job::PanelGroup group{};
  bool firm{};
  std::optional<ProductId> product = {};
  std::optional<double> sheet_percent = {};
  PersonId by;
  Stamp at{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "group"}, self.group);
    visit(Field{.name = "firm"}, self.firm);
    visit(Field{.name = "product"}, self.product);
    visit(Field{.name = "sheet_percent", .unit = "%"}, self.sheet_percent);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
  }
  friend bool operator==(const ThumbnailView&, const ThumbnailView&) = default;
};

struct BondView {
  BondId bond;
  ProductId product;
  std::string what;
  std::string case_name;
  std::optional<std::int64_t> set_ms = {};
  PersonId by;
  Stamp at{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "bond"}, self.bond);
    visit(Field{.name = "product"}, self.product);
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "case_name"}, self.case_name);
    visit(Field{.name = "set_ms", .unit = "ms"}, self.set_ms);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
  }
  friend bool operator==(const BondView&, const BondView&) = default;
};

struct ClimateView {
  BoothId booth;
  double air_c{};
  double surface_c{};
  double humidity_percent{};
  PersonId by;
  Stamp at{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "air_c", .unit = "C"}, self.air_c);
    visit(Field{.name = "surface_c", .unit = "C"}, self.surface_c);
    visit(Field{.name = "humidity_percent"}, self.humidity_percent);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
  }
  friend bool operator==(const ClimateView&, const ClimateView&) = default;
};

struct CarAirView {
  std::vector<SprayView> sprays;
  std::vector<SprayedWithoutView> without;
  std::vector<MixView> mixes;
  std::optional<BakeLimitView> bake_limit = {};
  std::vector<BakeView> bakes;
  std::vector<PanelTemperatureView> temperatures;
  std::vector<ThumbnailView> thumbnails;
  std::vector<BondView> bonds;
  std::vector<ClimateView> climates;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "sprays"}, self.sprays);
    visit(Field{.name = "without"}, self.without);
    visit(Field{.name = "mixes"}, self.mixes);
    visit(Field{.name = "bake_limit"}, self.bake_limit);
    visit(Field{.name = "bakes"}, self.bakes);
    visit(Field{.name = "temperatures"}, self.temperatures);
    visit(Field{.name = "thumbnails"}, self.thumbnails);
    visit(Field{.name = "bonds"}, self.bonds);
    visit(Field{.name = "climates"}, self.climates);
  }
  friend bool operator==(const CarAirView&, const CarAirView&) = default;
};

}  // namespace jambline::folds
