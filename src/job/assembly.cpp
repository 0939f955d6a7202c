#include "job/assembly.h"

#include <functional>
#include <map>

namespace jambline::job {

namespace {
constexpr struct {
  Step before;
  Step after;
  RuleKind kind;
  std::string_view why;
} usual[] = {
    {Step::TrialFit, Step::BaseColor, RuleKind::Hard, "no chips"},
    {Step::BondingFlangeReady, Step::GlassSet, RuleKind::Hold, "the bond holds on cured paint"},
    {Step::SealerAndLastBake, Step::CavityWax, RuleKind::Hard, "craters; heat runs wax out"},
    {Step::CavityWax, Step::TrimPanels, RuleKind::Hard, "no access after"},
    {Step::HandleFrom, Step::HangAndFit, RuleKind::Hold, "prints"},
    {Step::PartsCompounded, Step::MountedToCar, RuleKind::Soft, "edges are reached better off"},
    {Step::SeamsWashed, Step::WeatherstripTrimLamps, RuleKind::Hard, "compound residue"},
    {Step::LampsPolished, Step::LampsInstalled, RuleKind::Hard, "pad hits"},
    {Step::WeatherstripSeated, Step::PanelClosedOnIt, RuleKind::Hard, "prints, leaks"},
    {Step::RearDoorFit, Step::FrontDoorFit, RuleKind::Hard, "datum"},
    {Step::FrontDoorFit, Step::FenderFit, RuleKind::Hard, "datum"},
    {Step::FenderFit, Step::HoodFit, RuleKind::Hard, "datum"},
    {Step::HoodFit, Step::BumperLampsGrille, RuleKind::Hard, "datum"},
    {Step::DoorGlassAndBarrier, Step::DoorPanel, RuleKind::Hard, "water"},
    {Step::HingesFixed, Step::StrikerAndLatch, RuleKind::Hard, "order"},
    {Step::RearLidFit, Step::TailLampsRearBumper, RuleKind::Hard, "gap"},
    {Step::GlassSet, Step::MoldingsAndCowl, RuleKind::Hard, "access"},
    {Step::DriveAwayTime, Step::MovedByDriving, RuleKind::NoOverride, "glass holds the airbag"},
    {Step::DriveAwayTime, Step::Calibration, RuleKind::NoOverride, "glass holds the camera"},
    {Step::AdhesiveHandling, Step::ClampsReleased, RuleKind::Hold, "joint"},
    {Step::AdhesiveFull, Step::LoadedOrDriven, RuleKind::Hold, "joint"},
    {Step::BatteryAndRestraints, Step::IgnitionOn, RuleKind::Hold, "airbag"},
    {Step::BumperAndRadarFinal, Step::Calibration, RuleKind::Hard, "position"},
    {Step::TiresAndAlignment, Step::Calibration, RuleKind::Hard, "angle"},
    {Step::TiresAndAlignment, Step::LampsAimed, RuleKind::Hard, "angle"},
    {Step::LatchAndCatchChecked, Step::RoadTest, RuleKind::NoOverride, "hood opens"},
    {Step::LatchAndCatchChecked, Step::Delivery, RuleKind::NoOverride, "hood opens"},
    {Step::ScanClear, Step::Delivery, RuleKind::Hard, "faults left in the car"},
    {Step::FilmInWindow, Step::LastPolish, RuleKind::Hold, "green film"},
    {Step::LastPolish, Step::FinalWash, RuleKind::Soft, "dust"},
    {Step::FilmWashSafe, Step::FinalWash, RuleKind::Hold, "marks"},
};
}  // namespace

const std::vector<UsualRule>& usual_rules() {
  static const std::vector<UsualRule> rules = [] {
    std::vector<UsualRule> out;
    for (const auto& one : usual) {
      RuleId id;
      id.bytes[15] = static_cast<std::uint8_t>(out.size() + 1);
      out.push_back({id, {one.before, one.after, one.kind, std::string(one.why), false}});
    }
    return out;
  }();
  return rules;
}

std::vector<Step> cycle_in(const std::vector<AssemblyRule>& rules) {
  std::map<Step, std::vector<Step>> after;
  for (const auto& rule : rules)
    if (!rule.retired) after[rule.before].push_back(rule.after);
  enum class Mark : std::uint8_t { New, Open, Closed };
  std::map<Step, Mark> marks;
  std::vector<Step> path;
  const std::function<bool(Step)> closes = [&](Step step) {
    marks[step] = Mark::Open;
    path.push_back(step);
    for (const Step next : after[step]) {
      if (marks[next] == Mark::Open) {
        path.push_back(next);
        return true;
      }
      if (marks[next] == Mark::New && closes(next)) return true;
    }
    marks[step] = Mark::Closed;
    path.pop_back();
    return false;
  };
  for (const auto& rule : rules) {
    if (rule.retired || marks[rule.before] != Mark::New) continue;
    if (!closes(rule.before)) continue;
    const Step again = path.back();
    while (path.front() != again) path.erase(path.begin());
    return path;
  }
  return {};
}

}  // namespace jambline::job
