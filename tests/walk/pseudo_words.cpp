#include "pseudo_words.h"

namespace jambline::walk {

namespace {
QChar accented(QChar letter) {
  static const QString plain = QStringLiteral("aeiouAEIOU");
  static const QString marked = QString::fromUtf8("áéíóúÁÉÍÓÚ");
  const auto at = plain.indexOf(letter);
  return at < 0 ? letter : marked[at];
}
}  // namespace

QString lengthened(const QString& words) {
  QString out;
  double owed = 0;
  for (qsizetype i = 0; i < words.size(); ++i) {
    if (words[i] == u'%') {
      out += words[i];
      while (i + 1 < words.size() &&
             (words[i + 1].isDigit() || words[i + 1] == u'L' || words[i + 1] == u'n'))
        out += words[++i];
      continue;
    }
    out += accented(words[i]);
    if (!words[i].isLetter()) continue;
    owed += 0.4;
    const bool ends = i + 1 == words.size() || !words[i + 1].isLetter();
    const QString more = QString::fromUtf8("öüéäí");
    for (int k = 0; owed >= 1 && (ends || accented(words[i]) != words[i]); ++k, owed -= 1)
      out += more[k % more.size()];
  }
  return out;
}

QString PseudoWords::translate(const char*, const char* source, const char*, int) const {
  return lengthened(QString::fromUtf8(source));
}

}  // namespace jambline::walk
