#include "folds/history.h"

#include <algorithm>

namespace jambline::folds {

namespace {
template <class Map>
const typename Map::mapped_type* look_up(const Map& map, const typename Map::key_type& key) {
  const auto found = map.find(key);
  return found == map.end() ? nullptr : &found->second;
}
}  // namespace

History::History(const std::vector<entries::Entry>& entries) {
  std::vector<std::pair<entries::Order, MarkId>> found;
  for (const auto& entry : entries) {
    by_hash_.emplace(entry.hash, &entry);
    const bool obeyed = entry.refused == entries::Refused::No;
    if (const auto* opened = entry.payload.get_if<entries::CarOpened>(); opened && obeyed) {
      body_ = opened->body;
    } else if (const auto* placed = entry.payload.get_if<entries::MarkPlaced>()) {
      const bool first =
          marks_.emplace(placed->mark, Mark{0, placed->panel, placed->defect}).second;
      if (first && obeyed) found.emplace_back(entry.order, placed->mark);
    } else if (const auto* planned = entry.payload.get_if<entries::OperationPlanned>()) {
      if (obeyed || operations_.count(planned->operation) == 0)
        operations_[planned->operation] = {planned->stage, planned->title};
    } else if (const auto* offered = entry.payload.get_if<entries::ReleaseOffered>()) {
      releases_[offered->release] = {offered->panel};
    } else if (const auto* withdrawn = entry.payload.get_if<entries::Withdrawn>()) {
      if (!obeyed) continue;
      withdrawals_by_target_[withdrawn->target].push_back(&entry);
      withdrawals_.add(entry.hash, withdrawn->target);
    }
  }
  std::sort(found.begin(), found.end());
  for (std::size_t i = 0; i < found.size(); ++i)
    marks_[found[i].second].number = static_cast<int>(i) + 1;
}

const History::Mark* History::mark(const MarkId& mark) const {
  return look_up(marks_, mark);
}
const History::Operation* History::operation(const OperationId& operation) const {
  return look_up(operations_, operation);
}
const History::Release* History::release(const ReleaseId& release) const {
  return look_up(releases_, release);
}
const entries::Entry* History::find(const Hash& hash) const {
  const auto* found = look_up(by_hash_, hash);
  return found ? *found : nullptr;
}

const entries::Entry* History::taken_back(const Hash& hash) const {
  if (const auto* all = look_up(withdrawals_by_target_, hash))
    for (const auto* withdrawal : *all)
      if (withdrawals_.stands(withdrawal->hash)) return withdrawal;
  return nullptr;
}

History::Target History::target_of(const entries::Withdrawn& withdrawn) const {
  Target out{find(withdrawn.target), false};
  while (out.entry) {
    const auto* inner = out.entry->payload.get_if<entries::Withdrawn>();
    if (!inner) break;
    out.entry = find(inner->target);
    out.put_back = !out.put_back;
  }
  return out;
}

}  // namespace jambline::folds
