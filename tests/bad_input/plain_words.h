// tests/bad_input/plain_words.h: a message has its three parts, in words that people in a shop use.
#pragma once

#include <QRegularExpression>
#include <gtest/gtest.h>

#include "screens/words.h"

namespace jambline::bad_input {

// What is wrong with the message; empty when nothing is.
inline std::string complaint(const screens::ErrorWords& words) {
  for (const auto& [name, part] : {std::pair{"what happened", words.what},
                                   {"what is kept", words.kept},
                                   {"what to do", words.todo}}) {
    const std::string where = std::string(name) + ": " + part.toStdString();
    if (part.trimmed().isEmpty()) return std::string(name) + " is empty";
    if (!part.endsWith(QChar('.'))) return where + " is no sentence";
    if (part.contains(QChar('%'))) return where + " has a place that was not filled";
    static const QRegularExpression code_name(
        QStringLiteral("_|\\b[A-Z]?[a-z]+[A-Z][a-z]+\\b|\\b[0-9a-f]{8,}\\b"));
    static const QRegularExpression computer_words(
        QStringLiteral("\\.(db|key|toml|csv)\\b|/|\\b(sqlite|database|schema|wal|utf|json|csv|hash|"
                       "chain|signature|payload|header|errno|append|null|bytes?|stream|index|"
                       "exception|error|code|invalid|malformed|fold)\\b"),
        QRegularExpression::CaseInsensitiveOption);
    for (const auto* rule : {&code_name, &computer_words})
      if (const auto match = rule->match(part); match.hasMatch())
        return where + " says \"" + match.captured().toStdString() + "\"";
  }
  return {};
}

inline void expect_plain(const Error& error) {
  EXPECT_EQ(complaint(screens::words_of(error)), "")
      << code_name(error.code) << " " << error.operation << " " << error.subject;
}

}  // namespace jambline::bad_input
