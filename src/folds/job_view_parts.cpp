// The parts of JobFold::view(): labels, panels with their marks, stages and hours.
#include <algorithm>
#include <ctime>
#include <set>
#include <tuple>

#include "folds/job_fold.h"
#include "job/body_shape.h"

namespace jambline::folds {

namespace {

std::string utc_words(std::int64_t ms) {
  const std::time_t seconds = ms / 1000;
  std::tm utc{};
  gmtime_r(&seconds, &utc);
  char text[32];
  std::strftime(text, sizeof text, "%Y-%m-%dT%H:%MZ", &utc);
  return text;
}

// Two values that say the same are no conflict worth a person's time.
template <class T, class ToText>
void note_conflict(CarView& out, const char* label, const std::vector<const Write<T>*>& heads,
                   ToText to_text) {
  if (heads.size() < 2) return;
  LabelConflict conflict{label, {}, {}, {}};
  const std::string shown = to_text(heads.back()->value);
  for (std::size_t i = 0; i + 1 < heads.size(); ++i) {
    const std::string other = to_text(heads[i]->value);
    if (other == shown) continue;
    conflict.others.push_back(other);
    conflict.other_hashes.push_back(heads[i]->hash);
    conflict.others_by.push_back(heads[i]->person);
  }
  if (!conflict.others.empty()) out.conflicts.push_back(std::move(conflict));
}

// Nothing may hide a burn-through: among several heads it is the shown one.
void view_end(const std::vector<const Write<job::MarkEnd>*>& writes, const Withdrawals& withdrawals,
              MarkView& out) {
  for (const auto* write : writes)
    if (write->value == job::MarkEnd::CameBack && withdrawals.stands(write->hash))
      out.came_back = true;
  const auto heads = standing_heads(writes, withdrawals);
  out.end_heads = hashes_of(heads);
  for (const auto* head : heads) {
    if (out.end == job::MarkEnd::BurnThrough) break;
    out.end = head->value;
    out.end_order = head->order;
  }
}

}  // namespace

void JobFold::view_labels(CarView& out) const {
  const auto plates = plate_.heads(withdrawals_);
  out.plate_heads = hashes_of(plates);
  if (!plates.empty()) out.plate = plates.back()->value;
  note_conflict(out, "plate", plates, [](const std::string& plate) { return plate; });

  const auto vins = vin_.heads(withdrawals_);
  out.vin_heads = hashes_of(vins);
  if (!vins.empty()) {
    out.vin = vins.back()->value.vin;
    out.vin_passes = vins.back()->value.passes;
  }
  note_conflict(out, "vin", vins, [](const Vin& vin) { return vin.vin; });

  const auto colors = color_.heads(withdrawals_);
  out.color_heads = hashes_of(colors);
  if (!colors.empty()) out.color = colors.back()->value;
  note_conflict(out, "color", colors,
                [](const job::Color& color) { return color.code + " " + color.name; });

  const auto promises = promise_.heads(withdrawals_);
  out.promise_heads = hashes_of(promises);
  if (!promises.empty()) out.promised_ms = promises.back()->value;
  note_conflict(out, "promise", promises, utc_words);

  const auto booths = booth_.heads(withdrawals_);
  out.booth_heads = hashes_of(booths);
  if (!booths.empty()) out.booth = booths.back()->value;
}

void JobFold::view_panels(CarView& out) const {
  // Numbers go by the order of being found and count withdrawn marks too, so that they stay.
  std::vector<Mark> found = marks_;
  std::sort(found.begin(), found.end(),
            [](const Mark& a, const Mark& b) { return a.order < b.order; });
  std::set<MarkId> known;
  std::erase_if(found, [&](const Mark& mark) { return !known.insert(mark.mark).second; });

  const auto all_plans = plans_.by_key();
  const auto all_verdicts = verdicts_.by_key();
  const auto all_dirt = dirt_.by_key();
  const auto all_places = places_.by_key();
  const auto all_words = words_.by_key();
  const auto all_ends = ends_.by_key();
  const auto offers = offers_.by_key();
  const auto answers = answers_.by_key();

  for (const auto& placed : job::pattern(out.body).panels) {
    const auto plans = standing_heads(of_key(all_plans, placed.panel), withdrawals_);
    if (plans.empty()) continue;
    PanelView& view = out.panels.emplace_back();
    view.plan = plans.back()->value;
    view.plan_heads = hashes_of(plans);

    const auto& looks = of_key(all_verdicts, placed.panel);
    for (const auto* look : looks)
      if (withdrawals_.stands(look->hash))
        view.looks.push_back({look->value.verdict, look->person, look->wall_ms, look->hash});
    const auto verdicts = standing_heads(looks, withdrawals_);
    view.verdict_heads = hashes_of(verdicts);
    for (const auto* verdict : verdicts) {
      view.verdicts.push_back({verdict->value.verdict, verdict->person, verdict->wall_ms});
      view.disputed = view.disputed || !(verdict->value.verdict == verdicts.back()->value.verdict);
    }
    if (!verdicts.empty()) {
      view.verdict = verdicts.back()->value.verdict;
      view.edges_and_back = verdicts.back()->value.edges_and_back;
    }
    const auto dirt = standing_heads(of_key(all_dirt, placed.panel), withdrawals_);
    view.dirt_heads = hashes_of(dirt);
    if (!dirt.empty()) view.dirt = dirt.back()->value;

    for (std::size_t i = 0; i < found.size(); ++i) {
      const Mark& mark = found[i];
      if (mark.panel != placed.panel || !withdrawals_.stands(mark.hash)) continue;
      const auto places = standing_heads(of_key(all_places, mark.mark), withdrawals_);
      const auto words = standing_heads(of_key(all_words, mark.mark), withdrawals_);
      if (places.empty() || words.empty()) continue;
      const Place& at = places.back()->value;
      const Words& said = words.back()->value;
      view.marks.push_back({mark.mark, static_cast<int>(i) + 1, at.x_mm, at.y_mm, said.defect,
                            said.size, said.layer, mark.stage, mark.by, mark.wall_ms, mark.hash,
                            hashes_of(places), hashes_of(words), said.look});
      view_end(of_key(all_ends, mark.mark), withdrawals_, view.marks.back());
    }
    view.release = release_view(of_key(offers, std::optional(placed.panel)), answers);
  }
  out.car_release = release_view(of_key(offers, std::optional<job::Panel>()), answers);
}

void JobFold::view_operations(CarView& out) const {
  const auto done = operations_done_.by_key();
  std::map<OperationId, entries::Order> planned_at;
  for (const auto& [id, writes] : operations_.by_key()) {
    const auto heads = standing_heads(writes, withdrawals_);
    if (heads.empty()) continue;
    const Operation& said = heads.back()->value;
    planned_at[id] = writes.front()->order;
    OperationView view{id, said.stage, said.title, said.estimate_min, 0, hashes_of(heads)};
    view.work = said.work;
    view.why = said.why;
    view.picture = said.picture;
    view.approval = said.approval;
    const auto ends = standing_heads(of_key(done, id), withdrawals_);
    view.done_heads = hashes_of(ends);
    if (!ends.empty() && ends.back()->value) {
      view.done = true;
      view.done_by = ends.back()->person;
    }
    out.operations.push_back(std::move(view));
  }
  std::stable_sort(out.operations.begin(), out.operations.end(),
                   [](const auto& a, const auto& b) { return a.stage < b.stage; });

  std::map<job::Stage, bool> planned;
  for (const auto& operation : out.operations) planned[operation.stage] = true;
  const auto stages = stages_.by_key();
  for (const auto& [stage, writes] : stages)
    if (!standing_heads(writes, withdrawals_).empty()) planned[stage] = true;
  for (const auto& [stage, any] : planned) {
    StageView view;
    view.stage = stage;
    const auto heads = standing_heads(of_key(stages, stage), withdrawals_);
    view.heads = hashes_of(heads);
    if (!heads.empty()) {
      view.done = heads.back()->value.done;
      view.without_shots = heads.back()->value.without_shots;
      view.shots_missing = heads.back()->value.shots_missing;
      view.said_ms = heads.back()->wall_ms;
    }
    if (view.done)
      for (auto& operation : out.operations)
        if (operation.stage == stage && !operation.done &&
            planned_at[operation.operation] < heads.back()->order) {
          operation.done = true;
          operation.done_by = heads.back()->person;
        }
    out.stages.push_back(std::move(view));
  }
}

void JobFold::view_hours(CarView& out) const {
  view_operations(out);
  std::vector<trade::ClockAct> acts;
  const auto amended = amended_.by_key();
  std::vector<trade::ClockAct> in_order = clock_acts_;
  std::sort(in_order.begin(), in_order.end(), [](const auto& a, const auto& b) {
    return std::tie(a.hlc, a.device, a.seq) < std::tie(b.hlc, b.device, b.seq);
  });
  for (const auto& act : in_order) {
    if (!withdrawals_.stands(act.entry)) continue;
    acts.push_back(act);
    const auto heads = standing_heads(of_key(amended, act.entry), withdrawals_);
    ClockActView view{act.entry, act.person, static_cast<entries::ClockActKind>(act.kind),
                      act.operation};
    view.clock_ms = act.wall_ms;
    view.heads = hashes_of(heads);
    if (!heads.empty()) {
      acts.back().amended_wall_ms = heads.back()->value.at_ms;
      view.reason = heads.back()->value.reason;
      view.amended_by = heads.back()->person;
    }
    view.at_ms = acts.back().amended_wall_ms.value_or(act.wall_ms);
    if (view.at_ms != view.clock_ms) out.visit.amended.push_back(view);
    out.visit.clock_acts.push_back(std::move(view));
  }
  const trade::Hours hours = trade::count_hours(acts);
  for (const auto& interval : hours.intervals) {
    if (interval.end_ms) {
      out.worked.push_back({interval.person, interval.operation, interval.start_ms,
                            *interval.end_ms, interval.clock_doubt, interval.from, interval.to});
      for (auto& operation : out.operations)
        if (operation.operation == interval.operation) operation.clocked_ms += interval.length_ms();
    } else {
      out.running.push_back({interval.person, interval.operation, false, interval.start_ms,
                             interval.start_since_boot_ms,
                             interval.start_amended ? BootId{} : interval.start_boot,
                             interval.clock_doubt, interval.from});
    }
  }

  // A person whose last act here is a pause is paused here.
  std::map<PersonId, const trade::ClockAct*> last;
  for (const auto& act : acts) {
    const trade::ClockAct*& known = last[act.person];
    const auto order = [](const trade::ClockAct& one) {
      return entries::Order{one.hlc, one.device, one.seq};
    };
    if (!known || order(*known) < order(act)) known = &act;
  }
  for (const auto& [person, act] : last)
    if (act->kind == trade::ClockActKind::Pause)
      out.running.push_back({person, act->operation, true,
                             act->amended_wall_ms.value_or(act->wall_ms), act->since_boot_ms,
                             act->boot, false, act->entry});
}

}  // namespace jambline::folds
