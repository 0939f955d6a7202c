// folds/shop_view.h: the shop as screens and acts see it: name, zone, people, rack places.
//
// Shape:  values in a stable order (people and racks by order of being added).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "job/person.h"

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

struct ShopView {
  std::string name;
  std::string zone;  // empty until set
  std::vector<Hash> name_heads;
  std::vector<PersonView> people;
  std::vector<RackView> racks;
  int unknown_entries = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "zone"}, self.zone);
    visit(Field{.name = "people"}, self.people);
    visit(Field{.name = "racks"}, self.racks);
    visit(Field{.name = "unknown_entries"}, self.unknown_entries);
  }
  const PersonView* find(const PersonId& person) const {
    for (const auto& one : people)
      if (one.person == person) return &one;
    return nullptr;
  }
  friend bool operator==(const ShopView&, const ShopView&) = default;
};

}  // namespace jambline::folds
