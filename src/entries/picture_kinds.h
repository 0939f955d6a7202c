// entries/picture_kinds.h: pictures, where they belong, what is drawn on them, edges looked at on
// them, and the shots that the shop wants.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "entries/shop_kinds.h"
#include "job/mark.h"
#include "job/panel.h"
#include "job/picture.h"
#include "job/shot.h"
#include "job/stage.h"

namespace jambline::entries {

// Where a picture belongs: to a stage, and there to a wanted shot, a panel and a mark if any.
struct PicturePlace {
  job::Stage stage{};
  std::optional<ShotId> shot = {};
  std::optional<job::Panel> panel = {};
  std::optional<MarkId> mark = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "shot"}, self.shot);
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "mark"}, self.mark);
  }
  friend bool operator==(const PicturePlace&, const PicturePlace&) = default;
};

struct PictureTaken {
  static constexpr std::uint16_t kind = 200;
  static constexpr std::string_view name = "PictureTaken";
  static constexpr bool erasable = false;
  PictureId picture;
  job::PictureFacts facts;
  job::PictureFrom from{};
  PicturePlace place;
  bool kept_though_poor = false;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "picture"}, self.picture);
    visit(Field{.name = "facts"}, self.facts);
    visit(Field{.name = "from"}, self.from);
    visit(Field{.name = "place"}, self.place);
    visit(Field{.name = "kept_though_poor", .doc = "a person said: keep it"},
          self.kept_though_poor);
  }
};

struct PictureFiled {
  static constexpr std::uint16_t kind = 201;
  static constexpr std::string_view name = "PictureFiled";
  static constexpr bool erasable = false;
  PictureId picture;
  PicturePlace place;
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "picture"}, self.picture);
    visit(Field{.name = "place"}, self.place);
    visit(replaces_field, self.replaces);
  }
};

// Beside the picture, which stays as it is. A later entry of the same note changes it.
struct PictureNoted {
  static constexpr std::uint16_t kind = 202;
  static constexpr std::string_view name = "PictureNoted";
  static constexpr bool erasable = true;
  PictureNoteId note;
  PictureId picture;
  job::PictureNote drawn;
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "note"}, self.note);
    visit(Field{.name = "picture"}, self.picture);
    visit(Field{.name = "drawn"}, self.drawn);
    visit(replaces_field, self.replaces);
  }
};

// An edge or a jamb was looked at on a picture. No finds: clean.
struct EdgesLookedAt {
  static constexpr std::uint16_t kind = 203;
  static constexpr std::string_view name = "EdgesLookedAt";
  static constexpr bool erasable = false;
  PictureId picture;
  std::vector<job::DefectKind> finds;
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "picture"}, self.picture);
    visit(Field{.name = "finds", .doc = "none: clean"}, self.finds);
    visit(replaces_field, self.replaces);
  }
};

// Of the shop: all shots that are wanted at a stage; an empty list: none.
struct ShotListSet {
  static constexpr std::uint16_t kind = 31;
  static constexpr std::string_view name = "ShotListSet";
  static constexpr bool erasable = false;
  job::Stage stage{};
  std::vector<job::Shot> shots;
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "shots"}, self.shots);
    visit(replaces_field, self.replaces);
  }
};

}  // namespace jambline::entries
