// The parts of JobFold::view() that tell of the visit and of putting the car together. Few entries
// of a car are of these kinds: they are kept as they came and worked out when the view is.
#include <algorithm>

#include "folds/job_fold.h"

namespace jambline::folds {

namespace {

std::vector<const entries::Entry*> standing_of(const std::vector<entries::Entry>& entries,
                                               const Withdrawals& withdrawals) {
  std::vector<const entries::Entry*> out;
  for (const auto& entry : entries)
    if (withdrawals.stands(entry.hash)) out.push_back(&entry);
  std::sort(out.begin(), out.end(),
            [](const auto* a, const auto* b) { return a->order < b->order; });
  return out;
}

// What was said of one thing after another, the things in the order in which they were first named.
template <class Key, class T>
class Things {
 public:
  void write(const Key& key, const entries::Entry& entry, const T& said) {
    if (heads_.find(key) == heads_.end()) order_.push_back(key);
    heads_[key].write(entry, said.replaces, said);
  }
  template <class Add>
  void each(const Withdrawals& withdrawals, Add add) const {
    for (const Key& key : order_)
      if (const auto heads = heads_.at(key).heads(withdrawals); !heads.empty())
        add(*heads.back(), hashes_of(heads));
  }

 private:
  std::vector<Key> order_;
  std::map<Key, Heads<T>> heads_;
};

// Each reason is a wait of its own, from the first word that it waits to the one that it goes on.
void take_wait(const entries::Entry& entry, const entries::WaitSaid& said, VisitView& out) {
  const auto open = std::find_if(out.waits.rbegin(), out.waits.rend(), [&](const WaitView& one) {
    return one.reason == said.reason && !one.end_ms;
  });
  if (open == out.waits.rend()) {
    if (said.waits)
      out.waits.push_back({said.reason, entry.wall_ms, {}, said.expected_ms, entry.person});
  } else if (said.waits) {
    open->expected_ms = said.expected_ms;
  } else {
    open->end_ms = std::max(open->start_ms, entry.wall_ms);
  }
}

}  // namespace

void JobFold::view_visit(CarView& out) const {
  using namespace entries;
  VisitView& view = out.visit;
  Heads<CheckedIn> check_ins;
  Things<PartId, PartSaid> parts;
  Things<SubletId, SubletSaid> sublets;
  std::map<job::WaitReason, Heads<bool>> waits;
  std::vector<std::pair<const Entry*, CarDelivered>> deliveries;
  for (const auto* entry : standing_of(visit_, withdrawals_)) {
    entry->payload.visit([&](const auto& said) {
      using T = std::decay_t<decltype(said)>;
      if constexpr (std::is_same_v<T, CheckedIn>) {
        check_ins.write(*entry, said.replaces, said);
      } else if constexpr (std::is_same_v<T, PartSaid>) {
        parts.write(said.part, *entry, said);
      } else if constexpr (std::is_same_v<T, SubletSaid>) {
        sublets.write(said.sublet, *entry, said);
      } else if constexpr (std::is_same_v<T, WaitSaid>) {
        waits[said.reason].write(*entry, said.replaces, said.waits);
        take_wait(*entry, said, view);
      } else if constexpr (std::is_same_v<T, Signed>) {
        view.signatures.push_back({said.what, said.signer, said.strokes, said.open_points,
                                   entry->person, entry->wall_ms, entry->hash});
      } else if constexpr (std::is_same_v<T, CameBack>) {
        view.comebacks.push_back({said.comeback, said.complaint, said.panel, said.who_pays, false,
                                  entry->person, entry->wall_ms, entry->hash});
      } else if constexpr (std::is_same_v<T, NoteWritten>) {
        view.notes.push_back({said.text, entry->person, entry->wall_ms, entry->hash});
      } else if constexpr (std::is_same_v<T, CarDelivered>) {
        deliveries.emplace_back(entry, said);
      }
    });
  }
  if (const auto heads = check_ins.heads(withdrawals_); !heads.empty())
    view.check_in = CheckInView{heads.back()->value.said, heads.back()->person,
                                heads.back()->wall_ms, hashes_of(heads)};
  parts.each(withdrawals_, [&](const auto& head, std::vector<Hash> heads) {
    view.parts.push_back(
        {head.value.part, head.value.said, head.person, head.wall_ms, std::move(heads)});
  });
  sublets.each(withdrawals_, [&](const auto& head, std::vector<Hash> heads) {
    view.sublets.push_back(
        {head.value.sublet, head.value.said, head.person, head.wall_ms, std::move(heads)});
  });
  // Of several words that knew nothing of each other, the one that it waits counts.
  for (const auto& [reason, writes] : waits) {
    const auto heads = writes.heads(withdrawals_);
    view.wait_heads[reason] = hashes_of(heads);
    if (std::any_of(heads.begin(), heads.end(), [](const auto* head) { return head->value; }))
      view.waits_for.push_back(reason);
  }
  for (auto& comeback : view.comebacks)
    for (const auto& [entry, said] : deliveries)
      comeback.over = comeback.over || said.comeback == comeback.comeback;
  if (deliveries.empty() || view.open_comeback()) return;
  out.delivered_ms = deliveries.back().first->wall_ms;
  out.delivered_entry = deliveries.back().first->hash;
}

void JobFold::view_assembly(CarView& out) const {
  using namespace entries;
  std::map<job::Step, Heads<StepSaid>> steps;
  std::map<FitId, Heads<FitMeasured>> fits;
  for (const auto* entry : standing_of(assembly_, withdrawals_)) {
    entry->payload.visit([&](const auto& said) {
      using T = std::decay_t<decltype(said)>;
      if constexpr (std::is_same_v<T, StepSaid>)
        steps[said.step].write(*entry, said.replaces, said);
      else if constexpr (std::is_same_v<T, FitMeasured>)
        fits[said.fit].write(*entry, said.replaces, said);
      else if constexpr (std::is_same_v<T, FastenersMoved>)
        out.assembly.moves.push_back(
            {said.panel, said.moves, entry->person, entry->wall_ms, entry->order, entry->hash});
    });
  }
  // A step that one of two has not done is not done.
  for (const auto& [step, writes] : steps) {
    const auto heads = writes.heads(withdrawals_);
    const auto* last = heads.back();
    StepView view{step,          last->value.done, last->value.broken, last->person,
                  last->wall_ms, last->order,      hashes_of(heads)};
    for (const auto* head : heads) view.done = view.done && head->value.done;
    out.assembly.steps.push_back(std::move(view));
  }
  for (const auto& [id, writes] : fits) {
    const auto heads = writes.heads(withdrawals_);
    const auto* last = heads.back();
    const auto& said = last->value;
    out.assembly.fits.push_back({id, said.panel, said.round, said.datum, said.points, last->person,
                                 last->wall_ms, last->order, hashes_of(heads)});
  }
  sort_by_order(out.assembly.fits);
}

}  // namespace jambline::folds
