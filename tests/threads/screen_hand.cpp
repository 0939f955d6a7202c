#include "tests/threads/screen_hand.h"

#include <QElapsedTimer>
#include <QMetaEnum>
#include <QtTest/qtesttouch.h>

#include "tests/screens/until.h"

namespace jambline {

namespace {
QPointingDevice& finger() {
  static QPointingDevice* device = [] {
    QPointingDevice* made = QTest::createTouchDevice();
    made->setParent(nullptr);  // ends with the process: after the program it cannot end alone
    return made;
  }();
  return *device;
}

QQuickItem* find_below(QQuickItem* item, const std::function<bool(const QQuickItem&)>& wanted) {
  if (!item || !item->isVisible()) return nullptr;
  if (wanted(*item)) return item;
  for (QQuickItem* child : item->childItems())
    if (QQuickItem* found = find_below(child, wanted)) return found;
  return nullptr;
}

int value_of(const QObject& object, const char* enumeration, const char* key) {
  const QMetaObject* meta = object.metaObject();
  return meta->enumerator(meta->indexOfEnumerator(enumeration)).keyToValue(key);
}
}  // namespace

ScreenHand::ScreenHand(app::Program& program) : window_(*program.window()) {
  QObject::connect(&window_, &QQuickWindow::frameSwapped, &window_, [this] { ++frames_; });
}

bool ScreenHand::wait_for(const std::function<bool()>& so, int most_ms) {
  return until(so, most_ms);
}

void ScreenHand::wait_for_quiet(int quiet_ms, int most_ms) {
  QElapsedTimer all, quiet;
  all.start();
  quiet.start();
  const qint64 before = frames_;
  qint64 seen = before;
  window_.update();  // words and rows find their places when a frame is made
  wait_for(
      [&] {
        if (seen != frames_) quiet.restart();
        seen = frames_;
        return frames_ > before && (quiet.elapsed() >= quiet_ms || all.elapsed() >= most_ms);
      },
      10 * most_ms);
}

QQuickItem* ScreenHand::find(const char* type) const {
  const QByteArray start = QByteArray(type) + "_QMLTYPE_";
  return find_below(window_.contentItem(), [&](const QQuickItem& item) {
    return QByteArray(item.metaObject()->className()).startsWith(start);
  });
}

QQuickItem* ScreenHand::find_named(const char* object_name) const {
  return find_below(window_.contentItem(), [&](const QQuickItem& item) {
    return item.objectName() == QLatin1String(object_name);
  });
}

screens::PatternItem* ScreenHand::pattern_of_panel() const {
  return qobject_cast<screens::PatternItem*>(
      find_below(window_.contentItem(), [](const QQuickItem& item) {
        const auto* pattern = qobject_cast<const screens::PatternItem*>(&item);
        return pattern && !pattern->panel().isEmpty();
      }));
}

bool ScreenHand::go(const char* place, const char* work) {
  auto* way = window_.property("way").value<QObject*>();
  if (!way) return false;
  way->setProperty("place", value_of(*way, "Place", place));
  way->setProperty("work", value_of(*way, "Work", work));
  wait_for_quiet();
  return true;
}

void ScreenHand::press(QPointF scene) {
  QTest::touchEvent(&window_, &finger()).press(0, scene.toPoint());
}

void ScreenHand::move(QPointF scene) {
  QTest::touchEvent(&window_, &finger()).move(0, scene.toPoint());
}

void ScreenHand::release(QPointF scene) {
  QTest::touchEvent(&window_, &finger()).release(0, scene.toPoint());
}

void ScreenHand::touch(QPointF scene) {
  press(scene);
  wait_for_quiet(10, 50);
  release(scene);
  wait_for_quiet();
}

bool ScreenHand::touch(QQuickItem* item) {
  if (!item) return false;
  touch(item->mapToScene(QPointF(item->width() / 2, item->height() / 2)));
  return true;
}

}  // namespace jambline
