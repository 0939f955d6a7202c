// screens/panel_rows.h: the planned panels of the car on the tape, in walking order.
//
// Roles:   panel (the entry's word), title ("Left fender"), shortTitle ("Fender"), look
//          (PanelLook), marks, onCar, aside ("rack 2", "not yet", "4 marks"), isNext, isHere,
//          noCut (nobody sands or polishes there), spoken (for the reader), xMm, yMm, roomMm (where
//          a word fits on the pattern), and boxXMm, boxYMm, boxWidthMm, boxHeightMm (low corner; y
//          up), all in pattern millimetres.
// Threads: GUI thread. Rows are given by InspectViewModel.
#pragma once

#include <QtQml/qqmlregistration.h>

#include "folds/car_view.h"
#include "screens/row_model.h"
#include "trade/geometry.h"

namespace jambline::screens {

namespace PanelLook {
Q_NAMESPACE
QML_ELEMENT
enum class Value { NotYet, Clean, ToCorrect, Redo, BackToBody, Ask, Disputed };
Q_ENUM_NS(Value)
}  // namespace PanelLook

struct PanelRow {
  QString key;  // the entry's word
  job::Panel panel{};
  QString title;
  QString short_title;
  PanelLook::Value look{};
  int marks = 0;
  bool on_car = true;
  QString aside;
  bool next = false;
  bool here = false;
  bool no_cut = false;
  QString spoken;
  trade::Point_mm spot;
  double room_mm = 0;
  trade::Box_mm box;
  friend bool operator==(const PanelRow&, const PanelRow&) = default;
};

std::vector<RowModel<PanelRow>::Column> panel_columns();

// Those that stand in both as they were; none when it is another car or body, or no car (null).
std::vector<job::Panel> as_they_were(const folds::CarView* before, const folds::CarView* now);

QString word_of_panel(job::Panel panel);
std::optional<job::Panel> panel_of_word(const QString& word);
QString short_words(job::Panel panel);  // "Fender", without the side

}  // namespace jambline::screens
