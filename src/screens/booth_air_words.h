// screens/booth_air_words.h: a booth's air in words: what stands in it now, what its readings and
// tests say, and what of it is due.
//
// Rule:    numbers and verdicts are those of folds/booth_state.h and src/trade; here they only get
//          their words, in the units of the device. Of a smoke test never a percentage.
// Threads: GUI thread.
#pragma once

#include <QString>
#include <optional>

#include "folds/booth_state.h"
#include "screens/session.h"
#include "screens/state_kind.h"

namespace jambline::screens {

struct BoothSaid {
  folds::BoothState state;
  StateKind shape{};
  QString word;                // "Stay out"
  QString line;                // "clears 10:49", "The fan stopped. Nothing counts."
  QString countdown;           // "6:40"; "" nothing counts
  std::int64_t clears_ms = 0;  // wall, of Counting, up to the full minute
};
BoothSaid say_booth(const Session& session, const folds::BoothView& booth);

// One number of a booth: the value as it stands, what is to be said with it, and whether it is out.
struct BoothFigure {
  QString value;  // words where there is none
  QString note;
  bool missing = false;
  bool out = false;
  bool has_sum = false;
};
BoothFigure say_filter(const Session& session, const folds::BoothView& booth);
BoothFigure say_smoke_test(const Session& session, const folds::BoothView& booth);
BoothFigure say_airflow(const Session& session, const folds::BoothView& booth);

// "smoke test 5:00, measured Mar 3"; "formula, the weaker basis"; "" without a time.
QString rests_words(const Session& session, const folds::BoothView& booth,
                    const trade::ClearanceResult& needed);
// What of the sum was used: a test that governs has nothing to do with the formula.
trade::Basis basis_of(const trade::ClearanceResult& needed);

enum class BoothDueKind : std::uint8_t {
  Nothing,
  LogOver,
  ChangeFilters,
  ReadPressure,
  SmokeTest,
  ReadVelocity,
};
struct BoothDue {
  BoothDueKind what{};
  BoothId booth;
  QString text;    // "Log the filter pressure"
  QString second;  // "Booth 2, not read today"
};
BoothDue booth_due(const Session& session);  // the most pressing of all booths

QString sprayer_words(const Session& session, const folds::BoothSaidView& up);  // "Ivo, K 41-206"
QString plate_of(const Session& session, const JobId& job);  // "" not on the floor
QString count_words(double left_s);  // "6:40", from 100 minutes on "104 min"

}  // namespace jambline::screens
