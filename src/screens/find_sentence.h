// screens/find_sentence.h: a question to the record as a sentence: "Delivered cars opened this
// year, late, with a spray override".
//
// Shape:   a question has parts in a fixed order, each with its choices in words. A yes-or-no part
//          has two choices; one of several (people, defects) may have many that are all set.
// Threads: any, while no translation is being changed.
#pragma once

#include <QStringList>
#include <array>
#include <optional>

#include "engine/saved_questions.h"

namespace jambline::screens {

enum class FindPart : std::uint8_t {
  Where,  // always said
  Opened,
  Color,  // typed, not chosen
  Late,
  Next,
  Person,
  Booth,
  Defect,
  Cause,
  Redo,
  CameBack,
  SprayOverride,
  OtherOverride,
  SprayedWithout,
  PicturesMissing,
  Amended,
  Disputed,
};
inline constexpr std::size_t find_parts = 17;

// What a question is asked in.
struct FindWorld {
  const folds::ShopView* shop;
  std::int64_t now_ms;
  QString zone;
  std::optional<std::int64_t> oldest_ms;  // the first car was opened then
};

QString key_of(FindPart part);
std::optional<FindPart> part_of(const QString& key);

bool is_set(FindPart part, const engine::SavedQuestion& question);
bool is_set(const engine::SavedQuestion& question);  // any part; the words do not count
bool has_many(FindPart part);                        // several choices may be set
QString name_of(FindPart part);                      // "late, or in time"
QString said(FindPart part, const engine::SavedQuestion& question, const FindWorld& world);

QStringList choices_of(FindPart part, const FindWorld& world);
QList<int> chosen_of(FindPart part, const engine::SavedQuestion& question, const FindWorld& world);
// Sets a choice; of a part with many it is taken away when it was set.
void choose(FindPart part, int choice, engine::SavedQuestion& question, const FindWorld& world);
void leave_out(FindPart part, engine::SavedQuestion& question);

// What the shelf is asked now: days counted from the day in the zone.
shelf::FindAsked asked_now(const engine::SavedQuestion& question, const FindWorld& world);

}  // namespace jambline::screens
