// A language that does not exist: every word of the interface longer by four tenths, with accents,
// so that a string that is not translated or has no room to grow shows. %1, %L1 and %n stay.
#pragma once

#include <QTranslator>

namespace jambline::walk {

QString lengthened(const QString& words);

class PseudoWords final : public QTranslator {
 public:
  QString translate(const char* context, const char* source, const char* note,
                    int count) const override;
  bool isEmpty() const override { return false; }
};

}  // namespace jambline::walk
