// What can be said of an item on a screen from outside: its type, how the screen reader sees it,
// where it is and where its letters are. All places are in the window, in dp.
#pragma once

#include <QAccessible>
#include <QQuickItem>
#include <functional>
#include <string>

namespace jambline::walk {

// Of the QML type or one that is made from it: is_kind(item, "Pressable").
bool is_kind(const QQuickItem& item, const char* type);
std::string words_of(const QQuickItem& item);  // type, object name, spoken name, whose part

QAccessible::Role role_of(QQuickItem& item);  // NoRole: the screen reader does not see it
QString spoken(QQuickItem& item);
bool spoken_focusable(QQuickItem& item);
bool is_interactive(QQuickItem& item);

bool is_letters(const QQuickItem& item);  // Words, TimeText: something to read
QString letters_of(const QQuickItem& item);
QRectF box_of(const QQuickItem& item);
QRectF letters_box(const QQuickItem& item);            // the painted text
QRectF seen_part(const QQuickItem& item, QRectF box);  // what clipping leaves of it
double seen_opacity(const QQuickItem& item);

bool inside(const QQuickItem& of, const QQuickItem& root);
const QQuickItem* above(const QQuickItem& item, const char* type);  // nearest of that type, or null
void each(QQuickItem& root, const std::function<void(QQuickItem&)>& visit);  // that is visible
QQuickItem* find(QQuickItem& root, const std::function<bool(QQuickItem&)>& fits);
QQuickItem* named(QQuickItem& root, const QString& object_name);  // visible, or null

}  // namespace jambline::walk
