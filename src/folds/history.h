// folds/history.h: what one car's entries say of each other, so that each can be told in words: the
// numbers of marks, what operations and releases stand for, who took back what.
//
// Shape:   looks into the given list and keeps no copy: the list must outlive it and not change.
// Promise: refused entries can be told too but tell nothing of others. Mark numbers are those of
// CarView (the order of being found, withdrawn ones count). Threads: read from any after it was
// made.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "entries/entry.h"
#include "folds/heads.h"

namespace jambline::folds {

class History {
 public:
  struct Mark {
    int number = 0;
    job::Panel panel{};
    job::DefectKind defect{};  // as it was placed
  };
  struct Operation {
    job::Stage stage{};
    std::string title;
  };
  struct Release {
    std::optional<job::Panel> panel;
  };

  History() = default;
  explicit History(const std::vector<entries::Entry>& entries);

  job::BodyShape body() const { return body_; }
  const Mark* mark(const MarkId& mark) const;  // null: not of this car
  const Operation* operation(const OperationId& operation) const;
  const Release* release(const ReleaseId& release) const;
  const entries::Entry* find(const Hash& hash) const;
  // The standing withdrawal of an entry; null while the entry stands.
  const entries::Entry* taken_back(const Hash& hash) const;

  // What a withdrawal is about in the end: taking back a withdrawal puts its target back.
  struct Target {
    const entries::Entry* entry = nullptr;  // null: not of this car
    bool put_back = false;
  };
  Target target_of(const entries::Withdrawn& withdrawn) const;

 private:
  job::BodyShape body_{};
  std::map<MarkId, Mark> marks_;
  std::map<OperationId, Operation> operations_;
  std::map<ReleaseId, Release> releases_;
  std::map<Hash, const entries::Entry*> by_hash_;
  std::map<Hash, std::vector<const entries::Entry*>> withdrawals_by_target_;
  Withdrawals withdrawals_;
};

}  // namespace jambline::folds
