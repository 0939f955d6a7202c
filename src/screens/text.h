// screens/text.h: text of the folds, which is UTF-8, as Qt has it.
#pragma once

#include <QString>
#include <optional>
#include <string_view>

namespace jambline::screens {

inline QString text(std::string_view utf8) {
  return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

inline const QString dot = QStringLiteral(" \u00b7 ");  // between facts of one line

// The id that a row's key stands for.
template <class Id>
std::optional<Id> parsed(const QString& hex) {
  const auto id = Id::parse(hex.toStdString());
  return id ? std::optional<Id>(Id{*id}) : std::nullopt;
}

// An id or hash, as the key of a row.
template <class Id>
QString hex(const Id& id) {
  return text(id.hex());
}

}  // namespace jambline::screens
