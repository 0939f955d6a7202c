#include "screens/typed_words.h"

#include <QRegularExpression>

#include "screens/units.h"

namespace jambline::screens {

std::optional<QTime> typed_time(const QString& text) {
  const QString words = text.trimmed().toLower();
  for (const char* form : {"h:mm ap", "h:mmap", "h ap", "hap", "H:mm", "H.mm", "HHmm", "H"}) {
    const QTime time = QTime::fromString(words, QString::fromLatin1(form));
    if (time.isValid()) return time;
  }
  return std::nullopt;
}

std::optional<double> typed_minutes(const QString& text) {
  const QString words = text.trimmed().toLower();
  static const QRegularExpression clock(QStringLiteral("^(\\d+):([0-5]\\d)$"));
  if (const auto match = clock.match(words); match.hasMatch())
    return match.captured(1).toDouble() * 60 + match.captured(2).toDouble();
  if (const auto plain = typed_number(words)) return plain;
  static const QRegularExpression part(
      QStringLiteral("\\s*(\\d+(?:[.,]\\d+)?)\\s*(min|m|hours|hour|h|days|day|d)"));
  double sum = 0;
  qsizetype at = 0;
  while (at < words.size()) {
    const auto match = part.match(words, at, QRegularExpression::NormalMatch,
                                  QRegularExpression::AnchorAtOffsetMatchOption);
    if (!match.hasMatch()) return std::nullopt;
    const double number = *typed_number(match.captured(1));
    const QChar unit = match.captured(2).at(0);
    sum += number * (unit == QChar('d') ? 1440 : unit == QChar('h') ? 60 : 1);
    at = match.capturedEnd();
  }
  return at > 0 ? std::optional(sum) : std::nullopt;
}

}  // namespace jambline::screens
