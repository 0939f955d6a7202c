// entries/visit_kinds.h: a car's visit besides its paint: how it came, what it waits for, who
// signed, how it came back; what was said afterwards of the clock; when the shop is open,
// and how long it keeps its records.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "entries/shop_kinds.h"
#include "job/calendar.h"
#include "job/check_in.h"
#include "job/hold.h"
#include "job/panel.h"
#include "job/retention.h"

namespace jambline::entries {

struct CalendarSet {
  static constexpr std::uint16_t kind = 27;
  static constexpr std::string_view name = "CalendarSet";
  static constexpr bool erasable = false;
  job::Calendar calendar;
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "calendar"}, self.calendar);
    visit(replaces_field, self.replaces);
  }
};

// How long a class of records is kept here.
struct RetentionSet {
  static constexpr std::uint16_t kind = 29;
  static constexpr std::string_view name = "RetentionSet";
  static constexpr bool erasable = false;
  job::RecordClass record{};
  std::optional<int> years = {};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "record"}, self.record);
    visit(Field{.name = "years",
                .doc = "from the last day it is about; absent: as is usual",
                .min = 1,
                .max = job::most_kept_years},
          self.years);
    visit(replaces_field, self.replaces);
  }
};

struct CheckedIn {
  static constexpr std::uint16_t kind = 107;
  static constexpr std::string_view name = "CheckedIn";
  static constexpr bool erasable = false;
  job::CheckIn said{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "said"}, self.said);
    visit(replaces_field, self.replaces);
  }
};

// Done by whoever taps.
struct OperationDone {
  static constexpr std::uint16_t kind = 111;
  static constexpr std::string_view name = "OperationDone";
  static constexpr bool erasable = false;
  OperationId operation;
  bool done = true;
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "done", .doc = "false: opened again"}, self.done);
    visit(replaces_field, self.replaces);
  }
};

struct PartSaid {
  static constexpr std::uint16_t kind = 120;
  static constexpr std::string_view name = "PartSaid";
  static constexpr bool erasable = false;
  PartId part;
  job::OrderedPart said{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "part"}, self.part);
    visit(Field{.name = "said"}, self.said);
    visit(replaces_field, self.replaces);
  }
};

struct SubletSaid {
  static constexpr std::uint16_t kind = 121;
  static constexpr std::string_view name = "SubletSaid";
  static constexpr bool erasable = false;
  SubletId sublet;
  job::Sublet said{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "sublet"}, self.sublet);
    visit(Field{.name = "said"}, self.said);
    visit(replaces_field, self.replaces);
  }
};

// The car waits, or goes on.
struct WaitSaid {
  static constexpr std::uint16_t kind = 123;
  static constexpr std::string_view name = "WaitSaid";
  static constexpr bool erasable = false;
  job::WaitReason reason{};
  bool waits = true;
  std::optional<std::int64_t> expected_ms = {};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "reason"}, self.reason);
    visit(Field{.name = "waits", .doc = "false: it goes on"}, self.waits);
    visit(Field{.name = "expected_ms", .unit = "ms", .doc = "when it should go on"},
          self.expected_ms);
    visit(replaces_field, self.replaces);
  }
};

// What the clock said stays; hours count by the amended time.
struct ClockAmended {
  static constexpr std::uint16_t kind = 151;
  static constexpr std::string_view name = "ClockAmended";
  static constexpr bool erasable = false;
  Hash target;
  std::int64_t at_ms{};
  std::string reason;
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "target", .doc = "the clock act that was made at another time"},
          self.target);
    visit(Field{.name = "at_ms", .unit = "ms", .doc = "UTC since 1970"}, self.at_ms);
    visit(Field{.name = "reason"}, self.reason);
    visit(replaces_field, self.replaces);
  }
};

// On glass, by somebody who is no person of the shop.
struct Signed {
  static constexpr std::uint16_t kind = 181;
  static constexpr std::string_view name = "Signed";
  static constexpr bool erasable = true;
  job::SignedFor what{};
  std::string signer;
  std::vector<job::Stroke> strokes;
  int open_points = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "signer"}, self.signer);
    visit(Field{.name = "strokes"}, self.strokes);
    visit(Field{.name = "open_points",
                .doc = "that were shown when it was signed",
                .min = 0,
                .max = 10000},
          self.open_points);
  }
};

// The car is in work again until it is delivered anew.
struct CameBack {
  static constexpr std::uint16_t kind = 182;
  static constexpr std::string_view name = "CameBack";
  static constexpr bool erasable = false;
  ComebackId comeback;
  std::string complaint;
  std::optional<job::Panel> panel = {};
  std::string who_pays = {};
  Hash delivered;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "comeback"}, self.comeback);
    visit(Field{.name = "complaint"}, self.complaint);
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "who_pays"}, self.who_pays);
    visit(Field{.name = "delivered", .doc = "the delivery after which it came"}, self.delivered);
  }
};

}  // namespace jambline::entries
