// screens/round_words.h: what a round of the correction is called and how it is done.
//
// Source: grades, tools, pads and towels are common practice, no source. P-grades are FEPA's and
// end
//         at P2500; what is finer is the maker's own scale and is said so. The product's sheet
//         wins.
#pragma once

#include <QStringList>

#include "folds/planned_car.h"
#include "screens/units.h"

namespace jambline::screens {

QString sentence_of(job::Round round);             // "Level"
QString marks_words(int marks);                    // "7 marks"
QString round_title(job::Round round, int marks);  // "Level 7 marks", "Level the whole panel"
QString round_done(job::Round round, int marks);   // "Level done: 7 marks"
QString grade_words(job::Round round, bool whole, bool run);  // "P2000 (FEPA scale), ..."
QString tool_words(job::Round round, bool whole, Units units);
QString towel_words(job::Round round);
QString then_words(job::Round round, Units units);           // "then polish, 5 in pad, a clean one"
QString between_words(job::Round before, job::Round after);  // "Clean down ..."; "" nothing
QString minutes_words(double minutes);                       // "about 6 min"
QString kit_words(int pads, int towels, job::Round round);
// Word, range and what it rests on, of screens/film_words.h.
QString film_words(const folds::PanelFilm& film, Units units);
QString why_words(folds::NotPlanned why);

}  // namespace jambline::screens
