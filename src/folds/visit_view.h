// folds/visit_view.h: a car's visit besides its paint: how it came, what it waits for, who signed,
// how it came back, and its clock acts one by one.
//
// Shape:  in the order in which it was said. Waits are spans; one without an end goes on. A clock
//         act counts at `at_ms`; what the clock said then stands beside it.
// Heads:  as in car_view.h.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "entries/visit_kinds.h"
#include "entries/work_kinds.h"

namespace jambline::folds {

struct CheckInView {
  job::CheckIn said{};
  PersonId by;
  std::int64_t wall_ms{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "said"}, self.said);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
  }
  friend bool operator==(const CheckInView&, const CheckInView&) = default;
};

struct PartView {
  PartId part;
  job::OrderedPart said{};
  PersonId by;
  std::int64_t wall_ms{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "part"}, self.part);
    visit(Field{.name = "said"}, self.said);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
  }
  friend bool operator==(const PartView&, const PartView&) = default;
};

struct SubletView {
  SubletId sublet;
  job::Sublet said{};
  PersonId by;
  std::int64_t wall_ms{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "sublet"}, self.sublet);
    visit(Field{.name = "said"}, self.said);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
  }
  friend bool operator==(const SubletView&, const SubletView&) = default;
};

struct WaitView {
  job::WaitReason reason{};
  std::int64_t start_ms{};
  std::optional<std::int64_t> end_ms = {};
  std::optional<std::int64_t> expected_ms = {};
  PersonId by;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "reason"}, self.reason);
    visit(Field{.name = "start_ms", .unit = "ms"}, self.start_ms);
    visit(Field{.name = "end_ms", .unit = "ms"}, self.end_ms);
    visit(Field{.name = "expected_ms", .unit = "ms"}, self.expected_ms);
    visit(Field{.name = "by"}, self.by);
  }
  friend bool operator==(const WaitView&, const WaitView&) = default;
};

struct SignatureView {
  job::SignedFor what{};
  std::string signer;
  std::vector<job::Stroke> strokes;
  int open_points = 0;
  PersonId by;
  std::int64_t wall_ms{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "what"}, self.what);
    visit(Field{.name = "signer"}, self.signer);
    visit(Field{.name = "strokes"}, self.strokes);
    visit(Field{.name = "open_points"}, self.open_points);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
  }
  friend bool operator==(const SignatureView&, const SignatureView&) = default;
};

struct ComebackView {
  ComebackId comeback;
  std::string complaint;
  std::optional<job::Panel> panel = {};
  std::string who_pays;
  bool over = false;
  PersonId by;
  std::int64_t wall_ms{};
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "comeback"}, self.comeback);
    visit(Field{.name = "complaint"}, self.complaint);
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "who_pays"}, self.who_pays);
    visit(Field{.name = "over"}, self.over);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
  }
  friend bool operator==(const ComebackView&, const ComebackView&) = default;
};

struct NoteView {
  std::string text;
  PersonId by;
  std::int64_t wall_ms{};
  Hash entry;
  friend bool operator==(const NoteView&, const NoteView&) = default;
};

struct ClockActView {
  Hash entry;
  PersonId worker;
  entries::ClockActKind act{};
  OperationId operation;
  std::int64_t at_ms{};
  std::int64_t clock_ms{};
  std::string reason;
  std::optional<PersonId> amended_by = {};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "worker"}, self.worker);
    visit(Field{.name = "act"}, self.act);
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "at_ms", .unit = "ms"}, self.at_ms);
    visit(Field{.name = "clock_ms", .unit = "ms"}, self.clock_ms);
    visit(Field{.name = "reason"}, self.reason);
    visit(Field{.name = "amended_by"}, self.amended_by);
  }
  friend bool operator==(const ClockActView&, const ClockActView&) = default;
};

struct VisitView {
  std::optional<CheckInView> check_in = {};
  std::vector<PartView> parts;
  std::vector<SubletView> sublets;
  std::vector<WaitView> waits;
  std::vector<job::WaitReason> waits_for;  // now
  std::vector<SignatureView> signatures;
  std::vector<ComebackView> comebacks;
  std::vector<ClockActView> amended;     // those that count at another time than the clock said
  std::vector<ClockActView> clock_acts;  // all of them; not described: they follow from the entries
  std::vector<NoteView> notes;           // not described either
  std::map<job::WaitReason, std::vector<Hash>> wait_heads;
  const ComebackView* open_comeback() const {
    for (const auto& one : comebacks)
      if (!one.over) return &one;
    return nullptr;
  }
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "check_in"}, self.check_in);
    visit(Field{.name = "parts"}, self.parts);
    visit(Field{.name = "sublets"}, self.sublets);
    visit(Field{.name = "waits"}, self.waits);
    visit(Field{.name = "waits_for"}, self.waits_for);
    visit(Field{.name = "signatures"}, self.signatures);
    visit(Field{.name = "comebacks"}, self.comebacks);
    visit(Field{.name = "amended"}, self.amended);
  }
  friend bool operator==(const VisitView&, const VisitView&) = default;
};

}  // namespace jambline::folds
