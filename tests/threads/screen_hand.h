// tests/threads/screen_hand.h: a finger on the running program: waits, finds items, goes to places,
// touches. A touch goes the way of a real one: as a QTouchEvent through the window. GUI thread.
#pragma once

#include <QPointF>
#include <QQuickItem>
#include <QQuickWindow>
#include <functional>

#include "app/jambline/program.h"
#include "screens/pattern_item.h"

namespace jambline {

class ScreenHand {
 public:
  explicit ScreenHand(app::Program& program);

  QQuickWindow& window() { return window_; }
  // As until() of tests/screens/until.h.
  bool wait_for(const std::function<bool()>& so, int most_ms = 60'000);
  // Until a frame has come and then none for a while, as when all animations are over, or until
  // frames have come for `most_ms`.
  void wait_for_quiet(int quiet_ms = 60, int most_ms = 1'500);

  // The first visible item, its own or a child's QML type being `type` ("FloorCard").
  QQuickItem* find(const char* type) const;
  QQuickItem* find_named(const char* object_name) const;
  screens::PatternItem* pattern_of_panel() const;  // of the panel shown large

  bool go(const char* place, const char* work);  // names of qml/Shell/Navigation.qml
  void press(QPointF scene);
  void move(QPointF scene);
  void release(QPointF scene);
  void touch(QPointF scene);
  bool touch(QQuickItem* item);  // its middle

 private:
  QQuickWindow& window_;
  qint64 frames_ = 0;
};

}  // namespace jambline
