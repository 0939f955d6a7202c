// screens/step_words.h: which caution belongs to a step of putting a car together, and whether gaps
// are measured at it; the words are those of screens/caution_words.h.
//
// Source: common practice, no source.
#pragma once

#include <QStringList>

#include "job/assembly.h"

namespace jambline::screens {

QStringList step_cautions(job::Step step);
bool is_of_fit(job::Step step);    // a panel is set to its gaps
bool is_of_clock(job::Step step);  // a cure clock may say it

}  // namespace jambline::screens
