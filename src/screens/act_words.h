// screens/act_words.h: the last act in a few words for the undo row, and whether one tap may take
// it back.
#pragma once

#include <QString>

#include "engine/engine.h"

namespace jambline::screens {

struct ActWords {
  QString done;        // "Nib 6 placed"
  QString taken_back;  // "Nib 6 taken back"
  int shape = 0;       // StateKind
  bool may_undo = true;
};

// `car` may be null; with it marks have numbers and panels the words of its body.
ActWords words_of(const engine::LastAct& act, const folds::CarView* car,
                  const folds::ShopView& shop);

}  // namespace jambline::screens
