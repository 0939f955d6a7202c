// app/demo/correction.h: how people of the demo shop work on the marks of a car, from the check
// before cutting to the last mark that is gone.
//
// Rounds:  in the order of trade/correction_plan.h, panel by panel; areas are circles of its usual
//          size round the marks, minutes those of its rule in the hands of somebody who takes
//          longer. How much longer, how often a mark comes back: made up.
// Asks:    each act looks at the car as it then is: what was burnt through is not worked on.
#pragma once

#include <functional>
#include <vector>

#include "acts/commands.h"
#include "app/demo/times.h"
#include "base/random.h"
#include "folds/car_view.h"

namespace jambline::demo {

using Commands = std::vector<acts::Command>;
using CarAct = std::function<Commands(const folds::CarView& car)>;

// What one car's correction is like; drawn before anything is done.
struct Correction {
  Who by = Who::Ana;
  bool battery_tools = true;
  bool no_gloves = false;  // none at hand
  bool skips_refine = false;
  bool reads_film = false;        // before the first and after the last round, on one panel
  bool burns_through = false;     // on the first panel
  double slower = 1;              // than the usual minutes
  std::vector<double> before_um;  // three readings
  double taken_um = 0;
};
Correction invented_correction(SeededRandom& random);

// The acts of one session in their order, from the check to the last round.
std::vector<CarAct> correction_acts(const Correction& correction,
                                    const std::vector<job::Panel>& panels);

// One step of them, for cars that stand in the middle.
CarAct answer_before_cut(const Correction& correction);
CarAct finish_round(const Correction& correction, job::Panel panel, job::Round round);

// What nobody sanded is gone too when the panel is called clean.
Commands end_open_marks(const folds::CarView& car, job::Panel panel);

// One mark that was gone comes back, is polished once more and is gone again: three acts.
CarAct comes_back(job::Panel panel);
CarAct polish_again(const Correction& correction, job::Panel panel);

}  // namespace jambline::demo
