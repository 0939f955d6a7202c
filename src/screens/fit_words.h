// screens/fit_words.h: what the gaps of a panel say, in words, and how it is to be moved.
//
// Units:   gaps, flush and moves in mm with one place, on every device: that is how they are
//          gauged. A move is rounded to what a ruler shows, 0.1 mm; what rounds to nothing is none.
// Rule:    a move is a proposal for a rigid panel; nothing here says that a panel is safe.
// Pure.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "folds/fit_of_panel.h"
#include "job/fit_edges.h"
#include "screens/state_kind.h"

namespace jambline::screens {

enum class FitAnswer : std::uint8_t {
  NotMeasured,
  TooFew,
  MovedSince,
  Inside,
  ToMove,
  SlotsEnd,
  DatumOut,
  NoAnswer
};

struct FitMoveSaid {
  job::FastenerMove move;  // rounded
  trade::Point_mm at;      // of the fastener, on the panel laid flat
  QString name;            // "upper hinge to body"
  QString words;           // "1.4 mm towards the front, 0.2 mm out"; "stays"
  bool at_its_end = false;
};

struct FitSaid {
  FitAnswer answer{};
  StateKind state = StateKind::NotYet;
  QString word;
  QString more;
  std::vector<FitMoveSaid> moves;  // of every fastener; empty when there is no answer
  bool moves_any() const;
};

FitSaid say_fit(const folds::CarView& car, const folds::FitView* fit,
                const std::optional<folds::FitOfPanel>& of);

QString gap_number(double mm);  // "3.1"
QString gap_words(double mm);   // "3.1 mm"
QString wanted_span_words(double low_mm,
                          double high_mm);  // "wanted 4.0 mm", "wanted 3.8 to 4.2 mm"
QString words_of(job::CarWay way);          // "towards the front", "up"
QString end_words(job::CarWay way);         // an end of an edge: "front", "top"
QString fastener_words(const std::string& fastener_name);
QString neighbor_words(const job::FitEdge& edge, job::BodyShape body);  // "left fender", "cowl"
// "1.4 mm towards the front, 0.2 mm out"; empty: no part of it is 0.1 mm.
QString move_words(const job::FastenerMove& move, const job::PanelWays& ways);

}  // namespace jambline::screens
