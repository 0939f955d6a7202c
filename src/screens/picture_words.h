// screens/picture_words.h: the words that people read for pictures, shots and edges.
#pragma once

#include <QString>

#include "entries/entry.h"

namespace jambline::screens {

// What is wrong with a picture, in a word: "good", "blurred".
QString words_of(trade::PhotoWord photo_word);
// What to do about it: "Hold the phone against the panel." Empty for a good one.
QString advice_of(trade::PhotoWord photo_word);
QString words_of(job::PictureFrom from);
QString words_of(job::PictureNoteShape shape);
QString words_of(job::WithoutShots reason);
QString words_of(job::ShotView view);      // where to stand: "front left corner, 2 to 3 m away"
QString words_of(job::ShotWanted wanted);  // how often: "on each panel"
// The shop's own name of a shot, or a usual one's in the language of the device.
QString name_of(const job::Shot& shot);
// "clean", or the finds: "tape line, primer showing".
QString edges_words(const std::vector<job::DefectKind>& finds);

}  // namespace jambline::screens
