// folds/shop_fold.h: folds the shop's own stream (subject zero) into a ShopView.
//
// Promise: the same set of entries gives the same view, in whatever order they come. A
//          refused entry is counted and changes nothing else.
#pragma once

#include <map>

#include "entries/entry.h"
#include "folds/air_fold.h"
#include "folds/heads.h"
#include "folds/shop_view.h"

namespace jambline::folds {

class ShopFold {
 public:
  ShopFold();
  ShopFold(const ShopFold&);
  ShopFold(ShopFold&&) noexcept;
  ShopFold& operator=(const ShopFold&);
  ShopFold& operator=(ShopFold&&) noexcept;
  ~ShopFold();
  void apply(const entries::Entry& entry);
  ShopView view() const;

 private:
  struct Shop {
    std::string name;
    std::string zone;
    friend bool operator==(const Shop&, const Shop&) = default;
  };
  struct Person {
    entries::Order first;
    Heads<job::Role> role;
    Heads<std::string> name;
    std::vector<Hash> leaving;
  };
  struct Rack {
    entries::Order first;
    Hash hash;
    std::string name;
  };
  struct Booth {
    std::string name;
    job::BoothKind kind{};
    friend bool operator==(const Booth&, const Booth&) = default;
  };
  struct BoothWrites {
    entries::Order first;
    Heads<Booth> said;
  };
  struct Event {
    BoothId booth;
    job::BoothEvent what{};
    std::int64_t happened_ms{};
    std::optional<bool> old_filters_out;
    friend bool operator==(const Event&, const Event&) = default;
  };
  void view_booths(ShopView& out) const;
  void view_rules(ShopView& out) const;
  void view_retentions(ShopView& out) const;

  Withdrawals withdrawals_;
  Heads<Shop> shop_;
  std::map<PersonId, Person> people_;
  std::map<DeviceId, Heads<std::string>> device_names_;
  std::map<RackId, Rack> racks_;
  std::map<BoothId, BoothWrites> booths_;
  std::map<BoothEventId, Heads<Event>> booth_events_;
  std::map<job::Stage, Heads<std::vector<job::Shot>>> shot_lists_;
  AirFold air_;
  Heads<job::Calendar> calendar_;
  std::map<RuleId, Heads<job::AssemblyRule>> rules_;
  std::map<job::RecordClass, Heads<std::optional<int>>> retentions_;
  std::vector<Hash> unknown_;
  std::vector<Hash> refused_;
};

}  // namespace jambline::folds
