// folds/air_view.h: the shop's air and protection as screens and acts see them: what is known and
// said of each booth, respirators, each person's fit tests and due days, limits and products.
//
// Shape:  in the order of being added, readings and words as they were made. `said` of a booth goes
//         back to where its air was last logged as cleared. Limits: the usual ones and the shop's
//         own; a shop's word about a usual one takes its place. What several devices wrote without
//         knowing of each other is shown the stricter way: flagged wins over not flagged.
// Heads:  as in car_view.h.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "entries/air_kinds.h"
#include "folds/stamp.h"

namespace jambline::folds {

struct BoothReadView {
  job::BoothReading what{};
  std::vector<double> values;
  double instrument_percent{};
  std::int64_t happened_ms{};
  PersonId by;
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "values"}, self.values);
    visit(Field{.name = "instrument_percent"}, self.instrument_percent);
    visit(Field{.name = "happened_ms", .unit = "ms"}, self.happened_ms);
    visit(Field{.name = "by"}, self.by);
  }
  friend bool operator==(const BoothReadView&, const BoothReadView&) = default;
};

struct BoothSaidView {
  job::BoothWord what{};
  std::optional<SprayId> spray = {};
  std::optional<JobId> job = {};
  std::optional<RespiratorId> respirator = {};
  PersonId by;
  Stamp at{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "spray"}, self.spray);
    visit(Field{.name = "job"}, self.job);
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "at"}, self.at);
  }
  friend bool operator==(const BoothSaidView&, const BoothSaidView&) = default;
};

struct BoothAirView {
  BoothId booth;
  job::BoothFacts facts{};
  std::vector<BoothReadView> readings;
  std::vector<BoothSaidView> said;
  std::vector<Hash> facts_heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "facts"}, self.facts);
    visit(Field{.name = "readings"}, self.readings);
    visit(Field{.name = "said"}, self.said);
  }
  friend bool operator==(const BoothAirView&, const BoothAirView&) = default;
};

struct RespiratorView {
  RespiratorId respirator;
  job::Respirator said{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "said"}, self.said);
  }
  friend bool operator==(const RespiratorView&, const RespiratorView&) = default;
};

struct FitTestView {
  FitTestId test;
  RespiratorId respirator;
  job::FitTest said{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "test"}, self.test);
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "said"}, self.said);
  }
  friend bool operator==(const FitTestView&, const FitTestView&) = default;
};

struct CartridgeView {
  RespiratorId respirator;
  double schedule_h{};
  std::string schedule_basis;
  std::int64_t changed_ms{};
  std::vector<double> used_h;  // one a spray since the change
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "respirator"}, self.respirator);
    visit(Field{.name = "schedule_h", .unit = "h"}, self.schedule_h);
    visit(Field{.name = "schedule_basis"}, self.schedule_basis);
    visit(Field{.name = "changed_ms", .unit = "ms"}, self.changed_ms);
    visit(Field{.name = "used_h", .unit = "h"}, self.used_h);
  }
  friend bool operator==(const CartridgeView&, const CartridgeView&) = default;
};

struct DueView {
  job::DueKind what{};
  int due_day{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "due_day"}, self.due_day);
  }
  friend bool operator==(const DueView&, const DueView&) = default;
};

struct PersonAirView {
  PersonId person;
  bool do_not_spray{};
  std::vector<FitTestView> fit_tests;
  std::vector<CartridgeView> cartridges;
  std::vector<DueView> dues;
  std::vector<Hash> flag_heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "do_not_spray"}, self.do_not_spray);
    visit(Field{.name = "fit_tests"}, self.fit_tests);
    visit(Field{.name = "cartridges"}, self.cartridges);
    visit(Field{.name = "dues"}, self.dues);
  }
  friend bool operator==(const PersonAirView&, const PersonAirView&) = default;
};

struct BreathingAirView {
  job::BreathingAir said{};
  PersonId by;
  std::int64_t wall_ms{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "said"}, self.said);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
  }
  friend bool operator==(const BreathingAirView&, const BreathingAirView&) = default;
};

struct LimitView {
  LimitId limit;
  job::ExposureLimit said{};
  bool usual{};  // as the program came with it
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "limit"}, self.limit);
    visit(Field{.name = "said"}, self.said);
    visit(Field{.name = "usual"}, self.usual);
  }
  friend bool operator==(const LimitView&, const LimitView&) = default;
};

struct ProductView {
  ProductId product;
  job::Product said{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "product"}, self.product);
    visit(Field{.name = "said"}, self.said);
  }
  friend bool operator==(const ProductView&, const ProductView&) = default;
};

struct SampleView {
  SampleId sample;
  PersonId person;
  std::string substance;
  double value{};
  std::string unit;
  std::int64_t from_ms{};
  std::int64_t to_ms{};
  std::optional<RespiratorId> respirator = {};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "sample"}, self.sample);
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "substance"}, self.substance);
    visit(Field{.name = "value"}, self.value);
    visit(Field{.name = "unit"}, self.unit);
    visit(Field{.name = "from_ms", .unit = "ms"}, self.from_ms);
    visit(Field{.name = "to_ms", .unit = "ms"}, self.to_ms);
    visit(Field{.name = "respirator"}, self.respirator);
  }
  friend bool operator==(const SampleView&, const SampleView&) = default;
};

struct AirView {
  std::vector<BoothAirView> booths;  // of which anything is known
  std::vector<RespiratorView> respirators;
  std::vector<PersonAirView> people;
  std::optional<BreathingAirView> breathing_air;
  std::vector<LimitView> limits;
  std::vector<ProductView> products;
  std::vector<SampleView> samples;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booths"}, self.booths);
    visit(Field{.name = "respirators"}, self.respirators);
    visit(Field{.name = "people"}, self.people);
    visit(Field{.name = "breathing_air"}, self.breathing_air);
    visit(Field{.name = "limits"}, self.limits);
    visit(Field{.name = "products"}, self.products);
    visit(Field{.name = "samples"}, self.samples);
  }
  const BoothAirView* find(const BoothId& booth) const {
    for (const auto& one : booths)
      if (one.booth == booth) return &one;
    return nullptr;
  }
  const RespiratorView* find(const RespiratorId& respirator) const {
    for (const auto& one : respirators)
      if (one.respirator == respirator) return &one;
    return nullptr;
  }
  const PersonAirView* find(const PersonId& person) const {
    for (const auto& one : people)
      if (one.person == person) return &one;
    return nullptr;
  }
  const ProductView* find(const ProductId& product) const {
    for (const auto& one : products)
      if (one.product == product) return &one;
    return nullptr;
  }
  friend bool operator==(const AirView&, const AirView&) = default;
};

}  // namespace jambline::folds
