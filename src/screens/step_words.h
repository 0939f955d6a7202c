// screens/step_words.h: which caution belongs to a step of putting a car together; the words are
// those of screens/caution_words.h.
//
// Source: common practice, no source.
#pragma once

#include <QStringList>

#include "job/assembly.h"

namespace jambline::screens {

QStringList step_cautions(job::Step step);

}  // namespace jambline::screens
