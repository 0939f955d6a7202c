// entries/shop_kinds.h: entries of the shop's own stream (subject zero).
//
// Every kind is a fact in the past tense with a number that is never used again. `replaces` names
// the entries (by hash) whose value this one takes the place of: that, not a clock, decides what is
// current. A kind with `erasable` carries personal text and may be erased; its ids stay.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "job/booth.h"
#include "job/person.h"

namespace jambline::entries {

inline constexpr Field replaces_field{.name = "replaces",
                                      .doc = "hashes of the entries this one replaces"};

struct ShopNamed {
  static constexpr std::uint16_t kind = 10;
  static constexpr std::string_view name = "ShopNamed";
  static constexpr bool erasable = false;
  std::string shop_name;
  std::string zone;  // IANA, "America/New_York"
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shop_name"}, self.shop_name);
    visit(Field{.name = "zone", .doc = "IANA time zone"}, self.zone);
    visit(replaces_field, self.replaces);
  }
};

struct PersonAdded {
  static constexpr std::uint16_t kind = 12;
  static constexpr std::string_view name = "PersonAdded";
  static constexpr bool erasable = false;
  PersonId person;
  job::Role role{};
  std::vector<Hash> replaces;  // a later PersonAdded of the same person changes the role
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "role"}, self.role);
    visit(replaces_field, self.replaces);
  }
};

struct PersonNamed {
  static constexpr std::uint16_t kind = 13;
  static constexpr std::string_view name = "PersonNamed";
  static constexpr bool erasable = true;
  PersonId person;
  std::string person_name;
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "person_name"}, self.person_name);
    visit(replaces_field, self.replaces);
  }
};

struct PersonLeft {
  static constexpr std::uint16_t kind = 14;
  static constexpr std::string_view name = "PersonLeft";
  static constexpr bool erasable = false;
  PersonId person;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
  }
};

// What people call a device from now on. Its first name stands in its admission.
struct DeviceNamed {
  static constexpr std::uint16_t kind = 16;
  static constexpr std::string_view name = "DeviceNamed";
  static constexpr bool erasable = false;
  DeviceId device;
  std::string device_name;
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "device_name"}, self.device_name);
    visit(replaces_field, self.replaces);
  }
};

// Why work of one device is said again by another.
enum class TakenOverWhy : std::uint8_t { CopiedFolder, AfterRevocation };

// Work of another device follows, said again by this one: the entries after this one in this
// device's chain say again, one for one, what `origins` said. They keep person, time and words.
struct WorkTakenOver {
  static constexpr std::uint16_t kind = 17;
  static constexpr std::string_view name = "WorkTakenOver";
  static constexpr bool erasable = false;
  static constexpr std::size_t most_origins = 500;
  DeviceId from;
  TakenOverWhy why{};
  std::vector<Hash> origins;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "from", .doc = "whose work it was"}, self.from);
    visit(Field{.name = "why"}, self.why);
    visit(Field{.name = "origins", .doc = "hashes of the entries said again, in order"},
          self.origins);
  }
};

struct RackPlaceAdded {
  static constexpr std::uint16_t kind = 20;
  static constexpr std::string_view name = "RackPlaceAdded";
  static constexpr bool erasable = false;
  RackId rack;
  std::string rack_name;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "rack"}, self.rack);
    visit(Field{.name = "rack_name", .doc = "\"rack 2\""}, self.rack_name);
  }
};

struct BoothSet {
  static constexpr std::uint16_t kind = 22;
  static constexpr std::string_view name = "BoothSet";
  static constexpr bool erasable = false;
  BoothId booth;
  std::string booth_name;
  job::BoothKind booth_kind{};
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "booth_name", .doc = "\"booth 1\""}, self.booth_name);
    visit(Field{.name = "booth_kind"}, self.booth_kind);
    visit(replaces_field, self.replaces);
  }
};

// Something was done to a booth. A later entry of the same event corrects it.
struct BoothEventLogged {
  static constexpr std::uint16_t kind = 23;
  static constexpr std::string_view name = "BoothEventLogged";
  static constexpr bool erasable = false;
  BoothEventId event;
  BoothId booth;
  job::BoothEvent what{};
  std::optional<std::int64_t> happened_ms = {};  // said afterwards; absent: when it was tapped
  std::optional<bool> old_filters_out = {};      // of a filter change: out of the building
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "event"}, self.event);
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "happened_ms",
                .unit = "ms",
                .doc = "UTC since 1970, said afterwards; absent: when it was tapped"},
          self.happened_ms);
    visit(Field{.name = "old_filters_out", .doc = "old filters out of the building"},
          self.old_filters_out);
    visit(replaces_field, self.replaces);
  }
};

// Takes back any fact or write, also a withdrawal; the entry stays in the log.
struct Withdrawn {
  static constexpr std::uint16_t kind = 30;
  static constexpr std::string_view name = "Withdrawn";
  static constexpr bool erasable = false;
  Hash target;
  std::string reason;  // empty: taken back on the spot
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "target", .doc = "hash of the entry taken back"}, self.target);
    visit(Field{.name = "reason"}, self.reason);
  }
};

}  // namespace jambline::entries

template <>
inline constexpr auto jambline::enum_words<jambline::entries::TakenOverWhy> =
    std::to_array<std::string_view>({"copied folder", "after revocation"});
