// screens/span_words.h: worked spans in words, the same wherever one is shown.
//
// Times:   of the shop's zone. Lengths to the second, nothing is rounded: "1:02:20".
// Amended: an end that counts at another time than the clock said shows both: "16:30, clock said
//          17:12, Jo: went home".
// Threads: GUI thread.
#pragma once

#include <QString>
#include <vector>

#include "folds/hours_sheet.h"
#include "screens/session.h"

namespace jambline::screens {

QString operation_words(const folds::WorkedRow& row);  // "Inspect", "Level and polish, redo"
QString operation_words(job::Stage stage, const std::string& title, job::WorkKind work);
QString span_words(std::int64_t start_ms, std::int64_t end_ms, const QString& zone);
QString runs_words(std::int64_t start_ms, const QString& zone);
// Empty when both ends are as the clock said.
QString said_words(const folds::WorkedRow& row, const Session& session);
// What an amended act counts as beside what the clock said; the reason in the reader's language.
QString amended_words(std::int64_t at_ms, std::int64_t clock_ms, const std::string& reason,
                      const std::optional<PersonId>& by, const Session& session);
// The clocks that run now, as spans that end now.
std::vector<folds::WorkedRow> running_spans(const std::vector<folds::FloorRow>& floor,
                                            const Moment& now);

}  // namespace jambline::screens
