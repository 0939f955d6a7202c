// engine/saved_questions.h: what a manager asks again and again, under a name of his own.
//
// Kept on this device only, beside the half-typed forms (drafts.db): no entries, so they neither
// travel nor are they proven. A text that cannot be read any more is no question.
// Threads: as Engine::draft and keep_draft.
#pragma once

#include <string>
#include <vector>

#include "base/json.h"
#include "engine/engine.h"

namespace jambline::engine {

// When cars were opened, counted from the day on which it is asked.
enum class OpenedIn : std::uint8_t { Today, ThisWeek, ThisMonth, LastMonth, ThisYear, LastYear };

}  // namespace jambline::engine

template <>
inline constexpr auto jambline::enum_words<jambline::engine::OpenedIn> =
    std::to_array<std::string_view>({"today", "this week", "this month", "last month", "this year",
                                     "last year"});

namespace jambline::engine {

struct SavedQuestion {
  std::string name;
  shelf::FindAsked asked;
  std::optional<OpenedIn> opened = {};  // instead of asked.opened_from_ms and opened_to_ms
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "asked"}, self.asked);
    visit(Field{.name = "opened"}, self.opened);
  }
  friend bool operator==(const SavedQuestion&, const SavedQuestion&) = default;
};

inline constexpr const char* saved_questions_form = "saved questions";

inline std::vector<SavedQuestion> saved_questions(const Engine& engine) {
  const std::string text = engine.draft(saved_questions_form);
  auto read = from_json<std::vector<SavedQuestion>>(text);
  return read ? std::move(*read) : std::vector<SavedQuestion>();
}

inline void keep_questions(Engine& engine, const std::vector<SavedQuestion>& questions) {
  engine.keep_draft(saved_questions_form, questions.empty() ? std::string() : to_json(questions));
}

}  // namespace jambline::engine
