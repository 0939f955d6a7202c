#include "screens/round_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "screens/correct_words.h"
#include "screens/film_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::Round;

QString round_tr(const char* words) {
  return QCoreApplication::translate("rounds", words);
}
}  // namespace

QString sentence_of(Round round) {
  return sentence(words_of(round));
}

QString marks_words(int marks) {
  return marks == 1 ? round_tr("1 mark") : round_tr("%1 marks").arg(marks);
}

QString round_title(Round round, int marks) {
  if (marks == 0) return round_tr("%1 the whole panel").arg(sentence_of(round));
  return round_tr("%1 %2").arg(sentence_of(round), marks_words(marks));
}

QString round_done(Round round, int marks) {
  if (marks == 0) return round_tr("%1 done: whole panel").arg(sentence_of(round));
  return round_tr("%1 done: %2").arg(sentence_of(round), marks_words(marks));
}

QString grade_words(Round round, bool whole, bool run) {
  switch (round) {
    case Round::Level:
      if (whole) return round_tr("P1500, then P2000 (FEPA scale)");
      return run ? round_tr("Run: shave its top, then P1200. Nib: P2000 (FEPA scale)")
                 : round_tr("P2000 (FEPA scale); P1500 on hard clear");
    case Round::Refine:
      return round_tr("P2500 (FEPA scale), then a 3000 disc (its maker's scale)");
    case Round::Compound:
      return round_tr("Compound, coarse");
    case Round::Polish:
      return round_tr("Polish, medium");
    case Round::Finish:
      break;
  }
  return round_tr("Finish polish, fine");
}

QString tool_words(Round round, bool whole, Units units) {
  const auto size = [&](double mm) { return length_words(mm, units); };
  switch (round) {
    case Round::Level:
      return whole ? round_tr("%1 random orbital on a soft interface, wet or extracted")
                         .arg(size(150))
                   : round_tr("Small hard block, %1, wet, no finger behind it").arg(size(30));
    case Round::Refine:
      return round_tr("Random orbital on a soft interface, wet or extracted");
    case Round::Compound:
      return whole ? round_tr("Random orbital, %1 pad").arg(size(150))
                   : round_tr("%1 pad on a spot, %2 on a wider area").arg(size(75), size(150));
    case Round::Polish:
      return round_tr("Random orbital, %1 foam pad").arg(size(125));
    case Round::Finish:
      break;
  }
  return round_tr("Random orbital, %1 soft foam pad").arg(size(150));
}

QString towel_words(Round round) {
  switch (round) {
    case Round::Level:
      return round_tr("Fresh paper every 3 to 5 nibs. The sludge towel is never used again.");
    case Round::Refine:
      return round_tr("Clean the disc at each area. A towel of its own.");
    case Round::Compound:
      return round_tr("Compound pad and towel only. Brush or air off the pad at each area.");
    case Round::Polish:
      return round_tr("A clean pad and towel. The compound pad never comes back.");
    case Round::Finish:
      break;
  }
  return round_tr("A clean pad and towel. Then wipe the panel and look under the light.");
}

QString then_words(Round round, Units units) {
  return round_tr("then %1: %2").arg(words_of(round), tool_words(round, false, units));
}

QString between_words(Round before, Round after) {
  const bool sanded = before == Round::Level || before == Round::Refine;
  if (sanded && after > Round::Refine)
    return round_tr("Clean down: wash sludge off panel, gaps and tape. New towel, wipe the cart.");
  if (sanded) return round_tr("Rinse. Change to the finer disc.");
  return round_tr("Change pad and towel.");
}

QString minutes_words(double minutes) {
  const int whole = std::max(1, static_cast<int>(std::lround(minutes)));
  if (whole < 60) return round_tr("about %1 min").arg(whole);
  return round_tr("about %1 h %2 min").arg(whole / 60).arg(whole % 60);
}

QString kit_words(int pads, int towels, Round round) {
  const bool papers = round == Round::Level || round == Round::Refine;
  const QString pad =
      papers ? (pads == 1 ? round_tr("1 paper or disc") : round_tr("%1 papers or discs").arg(pads))
             : (pads == 1 ? round_tr("1 pad") : round_tr("%1 pads").arg(pads));
  const QString towel = towels == 1 ? round_tr("1 towel") : round_tr("%1 towels").arg(towels);
  return round_tr("%1, %2").arg(pad, towel);
}

QString film_words(const folds::PanelFilm& film, Units units) {
  const FilmSaid said = say_film(film.of, film.result, units);
  QStringList out{round_tr("Film: %1").arg(said.word)};
  for (const QString& one : {said.range, said.rests})
    if (!one.isEmpty()) out << one;
  return out.join(QStringLiteral(" \u00b7 "));
}

QString why_words(folds::NotPlanned why) {
  using folds::NotPlanned;
  switch (why) {
    case NotPlanned::DoNotCut:
      return round_tr("Do not cut: matte, textured or film. Never sanded, never polished.");
    case NotPlanned::FilmSaysNo:
      return round_tr("Do not cut: the film word of this panel.");
    case NotPlanned::ClearFade:
      return round_tr(
          "A spot with a clear fade. Where it runs is not on record: by hand, finest only, from "
          "new clear to old.");
    case NotPlanned::PanelWaits:
      return round_tr("The panel is not one to correct. Its verdict comes first.");
    case NotPlanned::Redo:
      return round_tr("Redo: polishing does not take it out.");
    case NotPlanned::BackToPrep:
      return round_tr("Back to prep: a hole below the paint.");
    case NotPlanned::LongerRest:
      return round_tr("A longer rest: heavy film stays soft longer than the panel.");
    case NotPlanned::Tint:
      return round_tr("Tint or blend: the color itself.");
    case NotPlanned::StripIfSoft:
      return round_tr("Heat it and test it. What stays soft is stripped.");
    case NotPlanned::NoRound:
      break;
  }
  return round_tr("No round takes it out.");
}

}  // namespace jambline::screens
