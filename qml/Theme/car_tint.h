// CarTint: the paper color of a car's panels: the car's own hue at a fixed lightness.
// car: the paint as sRGB; dark: which ground. tint: CIE LCh(ab), D65: L* 88 C 9 light, L* 17 C 8
// dark; white, gray and black cars (C* under 8) take C 3. Undefined hue counts as 0.
#pragma once

#include <QColor>
#include <QObject>
#include <QtQml/qqmlregistration.h>

class CarTint : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QColor car MEMBER car_ NOTIFY carChanged)
  Q_PROPERTY(bool dark MEMBER dark_ NOTIFY darkChanged)
  Q_PROPERTY(QColor tint READ tint NOTIFY tintChanged)
 public:
  explicit CarTint(QObject* parent = nullptr);
  QColor tint() const { return of(car_, dark_); }

  static QColor of(const QColor& car, bool dark);

 signals:
  void carChanged();
  void darkChanged();
  void tintChanged();

 private:
  QColor car_;
  bool dark_ = false;
};
