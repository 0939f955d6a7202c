// folds/picture_view.h: a car's pictures as screens and acts see them.
//
// Shape:  in the order in which they were kept. Whether the file itself is here is asked of the
//         blobs, not of the record. Notes and looked-at edges belong to their picture.
// Heads:  as in car_view.h. Edges that were looked at with different finds are disputed; what is
//         shown then holds the finds of all.
#pragma once

#include <optional>
#include <vector>

#include "base/describe.h"
#include "entries/entry.h"
#include "entries/picture_kinds.h"

namespace jambline::folds {

struct PictureNoteView {
  PictureNoteId note;
  job::PictureNote drawn;
  PersonId by;
  std::int64_t wall_ms{};
  entries::Order order;
  std::vector<Hash> heads;  // withdraw these to take it back
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "note"}, self.note);
    visit(Field{.name = "drawn"}, self.drawn);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms"}, self.wall_ms);
  }
  friend bool operator==(const PictureNoteView&, const PictureNoteView&) = default;
};

struct EdgesView {
  std::vector<job::DefectKind> finds;  // none: clean
  bool disputed = false;
  PersonId by;
  std::int64_t wall_ms{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "finds"}, self.finds);
    visit(Field{.name = "disputed"}, self.disputed);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms"}, self.wall_ms);
  }
  friend bool operator==(const EdgesView&, const EdgesView&) = default;
};

struct PictureView {
  PictureId picture;
  job::PictureFacts facts;
  job::PictureFrom from{};
  entries::PicturePlace place;
  bool kept_though_poor = false;
  std::vector<PictureNoteView> notes;
  std::optional<EdgesView> edges;  // none: not looked at
  PersonId by;
  std::int64_t wall_ms{};
  entries::Order order;
  Hash taken;  // withdraw this to take the picture out of the record
  std::vector<Hash> place_heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "picture"}, self.picture);
    visit(Field{.name = "facts"}, self.facts);
    visit(Field{.name = "from"}, self.from);
    visit(Field{.name = "place"}, self.place);
    visit(Field{.name = "kept_though_poor"}, self.kept_though_poor);
    visit(Field{.name = "notes"}, self.notes);
    visit(Field{.name = "edges"}, self.edges);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms"}, self.wall_ms);
  }
  friend bool operator==(const PictureView&, const PictureView&) = default;
};

}  // namespace jambline::folds
