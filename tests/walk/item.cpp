#include "item.h"

#include <algorithm>
#include <array>
#include <cstring>

namespace jambline::walk {

namespace {
std::string plain_type(const QMetaObject& meta) {
  std::string name = meta.className();
  for (const char* tail : {"_QMLTYPE_", "_QML_"})
    if (const auto at = name.find(tail); at != std::string::npos) name.resize(at);
  return name;
}

std::string short_words(const QString& words) {
  const QString line = words.simplified();
  return (line.size() > 48 ? line.left(46) + QStringLiteral("..") : line).toStdString();
}

QAccessibleInterface* face_of(QQuickItem& item) {
  return QAccessible::queryAccessibleInterface(&item);
}
}  // namespace

bool is_kind(const QQuickItem& item, const char* type) {
  const std::size_t length = std::strlen(type);
  for (const QMetaObject* meta = item.metaObject(); meta; meta = meta->superClass())
    if (const char* name = meta->className(); std::strncmp(name, type, length) == 0)
      if (name[length] == '\0' || std::strncmp(name + length, "_QML", 4) == 0) return true;
  return false;
}

std::string words_of(const QQuickItem& item) {
  auto& seen = const_cast<QQuickItem&>(item);
  std::string out = plain_type(*item.metaObject());
  if (!item.objectName().isEmpty()) out += " " + item.objectName().toStdString();
  const QString name = is_letters(item) ? letters_of(item) : spoken(seen);
  out += " \"" + short_words(name) + "\"";
  const QQuickItem* whose = item.parentItem();
  for (int steps = 0; whose && steps < 2; whose = whose->parentItem()) {
    const std::string type = plain_type(*whose->metaObject());
    if (type.starts_with("QQuick") && whose->objectName().isEmpty()) continue;
    out += " in " + type;
    if (!whose->objectName().isEmpty()) out += " " + whose->objectName().toStdString();
    ++steps;
  }
  return out;
}

QAccessible::Role role_of(QQuickItem& item) {
  auto* face = face_of(item);
  return face ? face->role() : QAccessible::NoRole;
}

QString spoken(QQuickItem& item) {
  auto* face = face_of(item);
  return face ? face->text(QAccessible::Name) : QString();
}

bool spoken_focusable(QQuickItem& item) {
  auto* face = face_of(item);
  return face && face->state().focusable;
}

bool is_interactive(QQuickItem& item) {
  static constexpr std::array roles{
      QAccessible::Button,       QAccessible::CheckBox, QAccessible::RadioButton,
      QAccessible::EditableText, QAccessible::PageTab,  QAccessible::Link,
      QAccessible::ListItem,     QAccessible::Slider};  // a column's head where it can be focused
  const auto role = role_of(item);
  if (role == QAccessible::StaticText || item.inherits("QQuickText"))
    return false;  // Qt's own word
  return std::find(roles.begin(), roles.end(), role) != roles.end() || spoken_focusable(item);
}

bool is_letters(const QQuickItem& item) {
  return item.inherits("QQuickText") || is_kind(item, "TimeText");
}

QString letters_of(const QQuickItem& item) {
  return item.property(item.inherits("QQuickText") ? "text" : "shown").toString();
}

QRectF box_of(const QQuickItem& item) {
  return item.mapRectToScene(QRectF(0, 0, item.width(), item.height()));
}

QRectF letters_box(const QQuickItem& item) {
  if (!item.inherits("QQuickText"))
    return item.mapRectToScene(QRectF(0, 0, item.implicitWidth(), item.implicitHeight()));
  const double width = item.property("contentWidth").toDouble();
  const double height = item.property("contentHeight").toDouble();
  const double left = item.property("leftPadding").toDouble();
  const double right = item.property("rightPadding").toDouble();
  const double top = item.property("topPadding").toDouble();
  const double bottom = item.property("bottomPadding").toDouble();
  const int across = item.property("effectiveHorizontalAlignment").toInt();
  const int down = item.property("verticalAlignment").toInt();
  const double wide = item.width() - left - right;
  const double high = item.height() - top - bottom;
  const double x = across & Qt::AlignRight     ? left + wide - width
                   : across & Qt::AlignHCenter ? left + (wide - width) / 2
                                               : left;
  const double y = down & Qt::AlignBottom    ? top + high - height
                   : down & Qt::AlignVCenter ? top + (high - height) / 2
                                             : top;
  return item.mapRectToScene(QRectF(x, y, width, height));
}

QRectF seen_part(const QQuickItem& item, QRectF box) {
  for (const QQuickItem* at = item.parentItem(); at; at = at->parentItem())
    if (at->clip() || at->inherits("QQuickFlickable")) box = box.intersected(box_of(*at));
  return box;
}

double seen_opacity(const QQuickItem& item) {
  double out = 1;
  for (const QQuickItem* at = &item; at; at = at->parentItem()) out *= at->opacity();
  return out;
}

bool inside(const QQuickItem& of, const QQuickItem& root) {
  for (const QQuickItem* at = &of; at; at = at->parentItem())
    if (at == &root) return true;
  return false;
}

const QQuickItem* above(const QQuickItem& item, const char* type) {
  for (const QQuickItem* at = item.parentItem(); at; at = at->parentItem())
    if (is_kind(*at, type)) return at;
  return nullptr;
}

void each(QQuickItem& root, const std::function<void(QQuickItem&)>& visit) {
  if (!root.isVisible()) return;
  visit(root);
  const auto children = root.childItems();
  for (QQuickItem* child : children) each(*child, visit);
}

QQuickItem* find(QQuickItem& root, const std::function<bool(QQuickItem&)>& fits) {
  QQuickItem* out = nullptr;
  each(root, [&](QQuickItem& item) {
    if (!out && fits(item)) out = &item;
  });
  return out;
}

QQuickItem* named(QQuickItem& root, const QString& object_name) {
  return find(root, [&](QQuickItem& item) { return item.objectName() == object_name; });
}

}  // namespace jambline::walk
