// screens/hand_over_words.h: the note that a customer takes home with the car: what was refinished,
// what is still open, and how new paint is treated.
//
// Kept out: all that is the shop's own: hours, people, marks, film, reasons, notes, pictures.
// Waiting:  wax, sealant, coating and wrap wait as long as the sheets of what was sprayed say, the
//           longest counts, from the last coat. No sheet says it: "30 to 90 days", and the sheet
//           wins. That span, the words on washing and on set glass: common practice, no source.
// Pure; words through translation.
#pragma once

#include <QString>
#include <QVariantList>
#include <vector>

#include "base/clock.h"
#include "folds/car_view.h"
#include "folds/open_points.h"
#include "folds/shop_view.h"

namespace jambline::screens {

struct HandOverLine {
  QString label;  // "" none
  QString words;
};
struct HandOverPart {
  QString title;
  std::vector<HandOverLine> lines;
};
struct HandOverNote {
  QString title;     // "Hand-over note"
  QString subtitle;  // "K 41-206, Sep 21, 2026"
  QString shop;      // its name; "" not said
  std::vector<HandOverPart> parts;
  QString signed_words;  // "" nobody signed
  std::vector<job::Stroke> strokes;
  QString foot;
  QString file_name;  // without a folder
  bool letter_paper = true;
};

HandOverNote hand_over_note(const folds::CarView& car, const folds::ShopView& shop,
                            const std::vector<folds::OpenPoint>& open, const Moment& now,
                            const QString& zone);

}  // namespace jambline::screens
