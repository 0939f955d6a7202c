#include "folds/floor_view.h"

namespace jambline::folds {

namespace {
// The first stage that cannot be done while it stands; common practice, no source.
job::Stage held_from(job::WaitReason reason) {
  switch (reason) {
    case job::WaitReason::Part:
      return job::Stage::Assemble;
    case job::WaitReason::Cure:
      return job::Stage::Correct;
    case job::WaitReason::Booth:
      return job::Stage::BeforeTheGun;
    case job::WaitReason::Approval:
    case job::WaitReason::Sublet:
      return job::Stage::CheckIn;
  }
  return job::Stage::CheckIn;
}
job::Stage held_from(job::SubletKind kind) {
  switch (kind) {
    case job::SubletKind::Glass:
      return job::Stage::Fit;
    case job::SubletKind::Calibration:
    case job::SubletKind::Alignment:
      return job::Stage::LastPolish;
    case job::SubletKind::Other:
      return job::Stage::WalkAround;
  }
  return job::Stage::WalkAround;
}

std::vector<HoldView> holds_of(const CarView& car) {
  std::vector<HoldView> out;
  for (const auto& wait : car.visit.waits)
    if (!wait.end_ms) out.push_back({wait.reason, {}, held_from(wait.reason), wait.expected_ms});
  for (const auto& part : car.visit.parts)
    if (part.said.state == job::PartState::Ordered || part.said.state == job::PartState::Wrong)
      out.push_back(
          {job::WaitReason::Part, part.said.part_name, held_from(job::WaitReason::Part),
           part.said.state == job::PartState::Ordered ? part.said.expected_ms : std::nullopt});
  for (const auto& sublet : car.visit.sublets)
    if (sublet.said.state != job::SubletState::Back)
      out.push_back({job::WaitReason::Sublet, sublet.said.who, held_from(sublet.said.kind),
                     sublet.said.expected_ms});
  for (const auto& operation : car.operations)
    if (operation.approval == job::Approval::Asked && !operation.done)
      out.push_back({job::WaitReason::Approval, operation.title, operation.stage, {}});
  return out;
}
PartAt part_at(const ReleaseView& release) {
  return {{},         false,        release.state,   release.giver,   release.taker,
          release.to, release.rack, release.wall_ms, release.disputed};
}

std::vector<PartAt> parts_of(const CarView& car) {
  std::vector<PartAt> out;
  for (const auto& panel : car.panels) {
    if (panel.plan.on_car && panel.release.state == ReleaseState::None) continue;
    out.push_back(part_at(panel.release));
    out.back().panel = panel.plan.panel;
    out.back().clean = panel.verdict == job::Verdict::Clean && !panel.disputed;
  }
  if (car.car_release.state != ReleaseState::None) out.push_back(part_at(car.car_release));
  return out;
}
}  // namespace

FloorRow floor_row(const CarView& car) {
  FloorRow row;
  row.job = car.job;
  row.plate = car.plate;
  row.vin = car.vin;
  row.color = car.color;
  row.body = car.body;
  row.promised_ms = car.promised_ms;
  row.delivered_ms = car.delivered_ms;
  row.opened_ms = car.opened_ms;
  row.stages = static_cast<int>(car.stages.size());
  for (const auto& stage : car.stages) {
    if (stage.done)
      ++row.stages_done;
    else if (!row.next_stage)
      row.next_stage = stage.stage;
  }
  row.panels = static_cast<int>(car.panels.size());
  for (const auto& panel : car.panels) {
    if (panel.verdict != job::Verdict::NotLookedAt) ++row.panels_looked_at;
    row.marks_open += panel.open_marks();
    row.disputed = row.disputed || panel.disputed || panel.release.disputed;
    if (panel.release.state == ReleaseState::Offered && panel.release.to)
      row.offered_to.push_back(*panel.release.to);
  }
  if (car.car_release.state == ReleaseState::Offered && car.car_release.to)
    row.offered_to.push_back(*car.car_release.to);
  row.disputed = row.disputed || car.car_release.disputed;
  row.read_only = car.unknown_entries > 0;
  row.running = car.running;
  row.operations = car.operations;
  if (car.delivered_ms) return row;
  row.seen = car.seen;
  row.holds = holds_of(car);
  row.parts = parts_of(car);
  row.glass = glass_of(car.air);
  return row;
}

}  // namespace jambline::folds
