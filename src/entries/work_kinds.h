// entries/work_kinds.h: marks, verdicts, clock acts and releases.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "entries/shop_kinds.h"
#include "job/mark.h"
#include "job/panel.h"
#include "job/stage.h"

namespace jambline::entries {

struct MarkPlaced {
  static constexpr std::uint16_t kind = 130;
  static constexpr std::string_view name = "MarkPlaced";
  static constexpr bool erasable = false;
  MarkId mark;
  job::Panel panel{};
  double x_mm{};
  double y_mm{};
  job::DefectKind defect{};
  int size = 1;
  job::Layer layer{};
  job::Stage stage = job::Stage::Inspect;
  std::optional<job::ParticleLook> look = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mark"}, self.mark);
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "x_mm",
                .unit = "mm",
                .doc = "on the panel laid flat",
                .min = -10000,
                .max = 10000},
          self.x_mm);
    visit(Field{.name = "y_mm",
                .unit = "mm",
                .doc = "on the panel laid flat",
                .min = -10000,
                .max = 10000},
          self.y_mm);
    visit(Field{.name = "defect"}, self.defect);
    visit(Field{.name = "size", .doc = "1 small to 4 large", .min = 1, .max = 4}, self.size);
    visit(Field{.name = "layer"}, self.layer);
    visit(Field{.name = "stage", .doc = "where in the job it was found"}, self.stage);
    visit(Field{.name = "look", .doc = "of the particle; absent: not said"}, self.look);
  }
};

struct MarkMoved {
  static constexpr std::uint16_t kind = 131;
  static constexpr std::string_view name = "MarkMoved";
  static constexpr bool erasable = false;
  MarkId mark;
  double x_mm{};
  double y_mm{};
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mark"}, self.mark);
    visit(Field{.name = "x_mm", .unit = "mm", .min = -10000, .max = 10000}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm", .min = -10000, .max = 10000}, self.y_mm);
    visit(replaces_field, self.replaces);
  }
};

struct MarkDescribed {
  static constexpr std::uint16_t kind = 132;
  static constexpr std::string_view name = "MarkDescribed";
  static constexpr bool erasable = false;
  MarkId mark;
  job::DefectKind defect{};
  int size = 1;
  job::Layer layer{};
  std::vector<Hash> replaces;
  std::optional<job::ParticleLook> look = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mark"}, self.mark);
    visit(Field{.name = "defect"}, self.defect);
    visit(Field{.name = "size", .min = 1, .max = 4}, self.size);
    visit(Field{.name = "layer"}, self.layer);
    visit(replaces_field, self.replaces);
    visit(Field{.name = "look", .doc = "of the particle; absent: not said"}, self.look);
  }
};

struct DirtAllOver {
  static constexpr std::uint16_t kind = 133;
  static constexpr std::string_view name = "DirtAllOver";
  static constexpr bool erasable = false;
  job::Panel panel{};
  job::DirtClass dirt{};
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "dirt"}, self.dirt);
    visit(replaces_field, self.replaces);
  }
};

struct VerdictGiven {
  static constexpr std::uint16_t kind = 140;
  static constexpr std::string_view name = "VerdictGiven";
  static constexpr bool erasable = false;
  job::Panel panel{};
  job::Verdict verdict{};
  bool edges_and_back = false;  // a loose part: edges and back were looked at too
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "verdict"}, self.verdict);
    visit(Field{.name = "edges_and_back", .doc = "edges and back looked at"}, self.edges_and_back);
    visit(replaces_field, self.replaces);
  }
};

enum class ClockActKind : std::uint8_t { Start, Pause, Switch, Stop };

// A person has one clock. The worker may be another than the one who tapped.
struct ClockActed {
  static constexpr std::uint16_t kind = 150;
  static constexpr std::string_view name = "ClockActed";
  static constexpr bool erasable = false;
  PersonId worker;
  ClockActKind act{};
  OperationId operation;                         // what starts; for pause and stop what ends
  std::optional<std::int64_t> happened_ms = {};  // said afterwards; absent: when it was tapped
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "worker"}, self.worker);
    visit(Field{.name = "act"}, self.act);
    visit(Field{.name = "operation"}, self.operation);
    visit(Field{.name = "happened_ms",
                .unit = "ms",
                .doc = "UTC since 1970, said afterwards; absent: when it was tapped"},
          self.happened_ms);
  }
};

// A part (or with no panel the whole car) is handed on.
struct ReleaseOffered {
  static constexpr std::uint16_t kind = 160;
  static constexpr std::string_view name = "ReleaseOffered";
  static constexpr bool erasable = false;
  ReleaseId release;
  std::optional<job::Panel> panel;
  std::optional<job::Role> to;  // who is to take it
  std::optional<RackId> rack;   // where it hangs
  std::vector<Hash> replaces;   // an earlier release of the same part
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "release"}, self.release);
    visit(Field{.name = "panel", .doc = "absent: the whole car"}, self.panel);
    visit(Field{.name = "to"}, self.to);
    visit(Field{.name = "rack"}, self.rack);
    visit(replaces_field, self.replaces);
  }
};

struct ReleaseAnswered {
  static constexpr std::uint16_t kind = 161;
  static constexpr std::string_view name = "ReleaseAnswered";
  static constexpr bool erasable = false;
  ReleaseId release;
  bool taken = true;   // false: returned
  std::string reason;  // of a return
  std::vector<Hash> replaces;
  std::optional<PictureId> picture = {};
  std::optional<PersonId> taker = {};  // said afterwards, where two took it
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "release"}, self.release);
    visit(Field{.name = "taken", .doc = "false: returned to the giver"}, self.taken);
    visit(Field{.name = "reason"}, self.reason);
    visit(replaces_field, self.replaces);
    visit(Field{.name = "picture", .doc = "of why it is returned"}, self.picture);
    visit(Field{.name = "taker", .doc = "absent: whoever tapped"}, self.taker);
  }
};

}  // namespace jambline::entries

template <>
inline constexpr auto jambline::enum_words<jambline::entries::ClockActKind> =
    std::to_array<std::string_view>({"start", "pause", "switch", "stop"});
