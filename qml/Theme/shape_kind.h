// The shapes that say a state. QML: ShapeKind.Done. None draws nothing. Ring is a grease pencil
// ring ("to correct").
#pragma once

#include <QObject>
#include <QtQml/qqmlregistration.h>

namespace ShapeKind {
Q_NAMESPACE
QML_ELEMENT
enum class Value {
  None,
  Done,
  Running,
  Waits,
  Must,
  NotYet,
  Unseen,
  Disputed,
  Respray,
  Paused,
  Ring
};
Q_ENUM_NS(Value)
}  // namespace ShapeKind
