// screens/entry_words.h: an entry in one plain line, as people read the time line.
//
// Shape:   "Nib 6 placed on the left fender", "Correct started", "Note erased". A kind without
// words
//          does not compile. What an erased or a newer entry said is not guessed.
// Times:   in the zone given; a promise for the entry's own day without the day ("Promised 16:30").
// Threads: any; words through translation.
#pragma once

#include <QString>

#include "entries/entry.h"
#include "folds/history.h"
#include "folds/shop_view.h"

namespace jambline::screens {

struct Telling {
  const folds::ShopView& shop;
  const folds::History& history;
  QString zone;
};

QString words_of(const entries::Entry& entry, const Telling& telling);
QString name_of(const PersonId& person, const folds::ShopView& shop);  // "someone" when erased

// What the time line can be narrowed to.
enum class EntryGroup : std::uint8_t { All, Looks, Hours, HandOff, Air, Notes, Other };
EntryGroup group_of(const entries::Entry& entry);

// Whether a person may take it back: facts of this version, not withdrawals and not the opening.
bool may_be_taken_back(const entries::Entry& entry);

// Why an entry is not obeyed; empty: it is.
QString refused_words(const entries::Entry& entry);

// What is doubtful about the entry's wall clock; empty when nothing is.
QString clock_doubt_words(std::uint8_t clock_flags);

}  // namespace jambline::screens
