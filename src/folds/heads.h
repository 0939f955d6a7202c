// folds/heads.h: what is current when several devices write without knowing of each other.
//
// Rule:    each write names the writes it replaces. A head is a write that stands (is not
// withdrawn)
//          and that no standing write replaces. One head is the value; several are a conflict. The
//          shown one of several is the last in (hlc, device, seq): display only.
// Promise: a function of the set of entries: order of arrival and duplicates change nothing.
// Threads: plain values.
#pragma once

#include <algorithm>
#include <map>
#include <vector>

#include "entries/entry.h"

namespace jambline::folds {

// Who took back what. A withdrawal may itself be taken back.
class Withdrawals {
 public:
  void add(const Hash& withdrawal, const Hash& target) {
    auto& list = by_target_[target];
    const auto place = std::lower_bound(list.begin(), list.end(), withdrawal);
    if (place == list.end() || *place != withdrawal) list.insert(place, withdrawal);
  }
  bool stands(const Hash& entry) const {
    const auto found = by_target_.find(entry);
    if (found == by_target_.end()) return true;
    return std::none_of(found->second.begin(), found->second.end(),
                        [&](const Hash& withdrawal) { return stands(withdrawal); });
  }
  friend bool operator==(const Withdrawals&, const Withdrawals&) = default;

 private:
  std::map<Hash, std::vector<Hash>> by_target_;  // a hash can only name an earlier one: no cycles
};

template <class T>
struct Write {
  entries::Order order;
  Hash hash;
  PersonId person;
  std::int64_t wall_ms{};
  std::vector<Hash> replaces;
  T value;
  friend bool operator==(const Write&, const Write&) = default;
};

// Of writes in display order: those that stand and that no standing one replaces; the last is
// shown.
template <class T>
std::vector<const Write<T>*> standing_heads(const std::vector<const Write<T>*>& writes,
                                            const Withdrawals& withdrawals) {
  std::vector<const Write<T>*> standing;
  for (const auto* write : writes)
    if (withdrawals.stands(write->hash)) standing.push_back(write);
  std::vector<const Write<T>*> out;
  for (const auto* write : standing) {
    const bool replaced = std::any_of(standing.begin(), standing.end(), [&](const auto* other) {
      return std::find(other->replaces.begin(), other->replaces.end(), write->hash) !=
             other->replaces.end();
    });
    if (!replaced) out.push_back(write);
  }
  return out;
}

// Everything that was written about one thing.
template <class T>
class Heads {
 public:
  void write(const entries::Entry& entry, std::vector<Hash> replaces, T value) {
    auto place = writes_.end();
    if (!writes_.empty() && !(writes_.back().order < entry.order)) {
      place = std::lower_bound(
          writes_.begin(), writes_.end(), entry.order,
          [](const Write<T>& write, const entries::Order& order) { return write.order < order; });
      if (place->order == entry.order) return;
    }
    writes_.insert(place, Write<T>{entry.order, entry.hash, entry.person, entry.wall_ms,
                                   std::move(replaces), std::move(value)});
  }

  std::vector<const Write<T>*> heads(const Withdrawals& withdrawals) const {
    std::vector<const Write<T>*> writes;
    writes.reserve(writes_.size());
    for (const auto& write : writes_) writes.push_back(&write);
    return standing_heads(writes, withdrawals);
  }

  friend bool operator==(const Heads&, const Heads&) = default;

 private:
  std::vector<Write<T>> writes_;  // by order
};

// Everything that was written about all things of one kind, in one piece, as it came. The caller
// keeps an entry from coming twice.
template <class Key, class T>
class Writes {
 public:
  void write(const Key& key, const entries::Entry& entry, std::vector<Hash> replaces, T value) {
    if (writes_.empty()) writes_.reserve(at_first);
    writes_.emplace_back(key, Write<T>{entry.order, entry.hash, entry.person, entry.wall_ms,
                                       std::move(replaces), std::move(value)});
  }

  bool empty() const { return writes_.empty(); }

  // A key's writes in display order, by key.
  std::map<Key, std::vector<const Write<T>*>> by_key() const {
    std::map<Key, std::vector<const Write<T>*>> out;
    for (const auto& [key, write] : writes_) out[key].push_back(&write);
    for (auto& [key, writes] : out)
      std::sort(writes.begin(), writes.end(),
                [](const auto* a, const auto* b) { return a->order < b->order; });
    return out;
  }

 private:
  static constexpr std::size_t at_first = 8;
  std::vector<std::pair<Key, Write<T>>> writes_;
};

// The writes of one key, or none.
template <class Key, class T>
const std::vector<const Write<T>*>& of_key(
    const std::map<Key, std::vector<const Write<T>*>>& writes, const Key& key) {
  static const std::vector<const Write<T>*> none;
  const auto found = writes.find(key);
  return found == writes.end() ? none : found->second;
}

// Of things with an `order`, as they were made.
template <class View>
void sort_by_order(std::vector<View>& views) {
  std::sort(views.begin(), views.end(),
            [](const View& a, const View& b) { return a.order < b.order; });
}

template <class T>
std::vector<Hash> hashes_of(const std::vector<const Write<T>*>& heads) {
  std::vector<Hash> out;
  out.reserve(heads.size());
  for (const auto* head : heads) out.push_back(head->hash);
  return out;
}

}  // namespace jambline::folds
