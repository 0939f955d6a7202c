// The part of JobFold::view() that tells of pictures, what is drawn on them and the edges on them.
#include <algorithm>

#include "folds/job_fold.h"

namespace jambline::folds {

namespace {

EdgesView edges_view(const std::vector<const Write<std::vector<job::DefectKind>>*>& heads) {
  EdgesView out;
  for (const auto* head : heads) {
    out.disputed = out.disputed || head->value != heads.back()->value;
    for (const auto find : head->value)
      if (std::find(out.finds.begin(), out.finds.end(), find) == out.finds.end())
        out.finds.push_back(find);
  }
  std::sort(out.finds.begin(), out.finds.end());
  out.by = heads.back()->person;
  out.wall_ms = heads.back()->wall_ms;
  out.heads = hashes_of(heads);
  return out;
}

}  // namespace

void JobFold::view_pictures(CarView& out) const {
  if (pictures_.empty()) return;
  const auto places = picture_places_.by_key();
  const auto edges = edges_.by_key();
  for (const auto& [id, writes] : pictures_.by_key()) {
    const auto heads = standing_heads(writes, withdrawals_);
    const auto filed = standing_heads(of_key(places, id), withdrawals_);
    if (heads.empty() || filed.empty()) continue;
    const auto& head = *heads.front();
    PictureView view;
    view.picture = id;
    view.facts = head.value.facts;
    view.from = head.value.from;
    view.kept_though_poor = head.value.kept_though_poor;
    view.place = filed.back()->value;
    view.place_heads = hashes_of(filed);
    view.by = head.person;
    view.wall_ms = head.wall_ms;
    view.order = head.order;
    view.taken = head.hash;
    if (const auto looked = standing_heads(of_key(edges, id), withdrawals_); !looked.empty())
      view.edges = edges_view(looked);
    out.pictures.push_back(std::move(view));
  }
  sort_by_order(out.pictures);
  for (const auto& [id, writes] : picture_notes_.by_key()) {
    const auto heads = standing_heads(writes, withdrawals_);
    if (heads.empty()) continue;
    const auto& said = heads.back()->value;
    for (auto& picture : out.pictures)
      if (picture.picture == said.picture)
        picture.notes.push_back({id, said.drawn, heads.back()->person, heads.back()->wall_ms,
                                 heads.front()->order, hashes_of(heads)});
  }
  for (auto& picture : out.pictures) sort_by_order(picture.notes);
}

}  // namespace jambline::folds
