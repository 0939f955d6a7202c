#include "screens/step_words.h"

#include <algorithm>

#include "screens/caution_words.h"

namespace jambline::screens {

using job::Step;

namespace {
bool among(Step step, std::initializer_list<Step> steps) {
  return std::find(steps.begin(), steps.end(), step) != steps.end();
}
}  // namespace

bool is_of_fit(Step step) {
  return among(step, {Step::TrialFit, Step::HangAndFit, Step::RearDoorFit, Step::FrontDoorFit,
                      Step::FenderFit, Step::HoodFit, Step::RearLidFit, Step::StrikerAndLatch});
}

bool is_of_clock(Step step) {
  return among(step, {Step::DriveAwayTime, Step::HandleFrom, Step::FilmInWindow,
                      Step::AdhesiveHandling, Step::AdhesiveFull});
}

QStringList step_cautions(Step step) {
  const auto is = [&](std::initializer_list<Step> steps) { return among(step, steps); };
  QStringList out;
  // What is heavy, and what a strut or a prop holds up.
  if (is({Step::TrialFit, Step::GlassSet, Step::HangAndFit, Step::MountedToCar, Step::RearDoorFit,
          Step::FrontDoorFit, Step::FenderFit, Step::HoodFit, Step::BumperLampsGrille,
          Step::HingesFixed, Step::StrikerAndLatch, Step::RearLidFit, Step::TailLampsRearBumper}))
    out << words_of(Caution::Lifting);
  // Near airbags, belts and the high-voltage side.
  if (is({Step::TrimPanels, Step::DoorPanel, Step::DoorGlassAndBarrier, Step::MoldingsAndCowl,
          Step::BatteryAndRestraints, Step::IgnitionOn, Step::BumperLampsGrille,
          Step::TailLampsRearBumper}))
    out << words_of(Caution::StoredEnergy);
  return out;
}

}  // namespace jambline::screens
