// folds/shop_view.h: the shop as screens and acts see it: name, zone, people, rack places,
// booths and what was done to them.
//
// Shape:  values in a stable order (people, racks and booths by order of being added, events by
//         when they happened).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "folds/air_view.h"
#include "job/booth.h"
#include "job/person.h"
#include "job/retention.h"
#include "job/shot.h"

namespace jambline::folds {

struct PersonView {
  PersonId person;
  std::string name;  // empty when erased or not yet named
  job::Role role{};
  bool left = false;
  std::vector<Hash> role_heads;
  std::vector<Hash> name_heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "role"}, self.role);
    visit(Field{.name = "left"}, self.left);
  }
  friend bool operator==(const PersonView&, const PersonView&) = default;
};

// What people call a device since its admission.
struct DeviceNameView {
  DeviceId device;
  std::string name;
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "name"}, self.name);
  }
  friend bool operator==(const DeviceNameView&, const DeviceNameView&) = default;
};

struct RackView {
  RackId rack;
  std::string name;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "rack"}, self.rack);
    visit(Field{.name = "name"}, self.name);
  }
  friend bool operator==(const RackView&, const RackView&) = default;
};

struct BoothView {
  BoothId booth;
  std::string name;
  job::BoothKind kind{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "kind"}, self.kind);
  }
  friend bool operator==(const BoothView&, const BoothView&) = default;
};

struct BoothEventView {
  BoothEventId event;
  BoothId booth;
  job::BoothEvent what{};
  std::int64_t happened_ms{};
  std::optional<bool> old_filters_out;
  PersonId by;
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "event"}, self.event);
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "happened_ms", .unit = "ms"}, self.happened_ms);
    visit(Field{.name = "old_filters_out"}, self.old_filters_out);
    visit(Field{.name = "by"}, self.by);
  }
  friend bool operator==(const BoothEventView&, const BoothEventView&) = default;
};

// What the shop itself wants at a stage; a stage without one wants the usual shots.
struct ShotListView {
  job::Stage stage{};
  std::vector<job::Shot> shots;
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "shots"}, self.shots);
  }
  friend bool operator==(const ShotListView&, const ShotListView&) = default;
};

struct RuleView {
  RuleId rule;
  job::AssemblyRule said{};
  bool usual{};  // as the program came with it
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "rule"}, self.rule);
    visit(Field{.name = "said"}, self.said);
    visit(Field{.name = "usual"}, self.usual);
  }
  friend bool operator==(const RuleView&, const RuleView&) = default;
};

// Years of its own that the shop said, or said anew to be the usual ones.
struct RetentionView {
  job::RecordClass record{};
  std::optional<int> years = {};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "record"}, self.record);
    visit(Field{.name = "years"}, self.years);
  }
  friend bool operator==(const RetentionView&, const RetentionView&) = default;
};

struct ShopView {
  ShopView();
  ShopView(const ShopView&);
  ShopView(ShopView&&) noexcept;
  ShopView& operator=(const ShopView&);
  ShopView& operator=(ShopView&&) noexcept;
  ~ShopView();
  std::string name;
  std::string zone;  // empty until set
  std::vector<Hash> name_heads;
  std::vector<PersonView> people;
  std::vector<DeviceNameView> device_names;
  std::vector<RackView> racks;
  std::vector<BoothView> booths;
  std::vector<BoothEventView> booth_events;
  AirView air;
  std::vector<ShotListView> shot_lists;  // by stage
  job::Calendar calendar;                // the usual one until somebody set it
  std::vector<Hash> calendar_heads;
  std::vector<RuleView> rules;            // own ones and the usual ones
  std::vector<RetentionView> retentions;  // of which something was said, by class
  int unknown_entries = 0;
  int refused_entries = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "zone"}, self.zone);
    visit(Field{.name = "people"}, self.people);
    visit(Field{.name = "device_names"}, self.device_names);
    visit(Field{.name = "racks"}, self.racks);
    visit(Field{.name = "booths"}, self.booths);
    visit(Field{.name = "booth_events"}, self.booth_events);
    visit(Field{.name = "shot_lists"}, self.shot_lists);
    visit(Field{.name = "air"}, self.air);
    visit(Field{.name = "calendar"}, self.calendar);
    visit(Field{.name = "rules"}, self.rules);
    visit(Field{.name = "retentions"}, self.retentions);
    visit(Field{.name = "unknown_entries"}, self.unknown_entries);
    visit(Field{.name = "refused_entries"}, self.refused_entries);
  }
  const PersonView* find(const PersonId& person) const {
    for (const auto& one : people)
      if (one.person == person) return &one;
    return nullptr;
  }
  const BoothView* find(const BoothId& booth) const {
    for (const auto& one : booths)
      if (one.booth == booth) return &one;
    return nullptr;
  }
  const RetentionView* find(job::RecordClass record) const {
    for (const auto& one : retentions)
      if (one.record == record) return &one;
    return nullptr;
  }
  const BoothEventView* find(const BoothEventId& event) const {
    for (const auto& one : booth_events)
      if (one.event == event) return &one;
    return nullptr;
  }
  friend bool operator==(const ShopView&, const ShopView&) = default;
};

}  // namespace jambline::folds
