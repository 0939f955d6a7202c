// tests/walk/stage.h: a window with the given items on paper, drawn.
#pragma once

#include <QQmlComponent>
#include <QQmlEngine>
#include <QQuickWindow>
#include <gtest/gtest.h>
#include <memory>

#include "rules.h"

namespace jambline::walk {

struct Stage {
  QQmlEngine engine;
  std::unique_ptr<QQuickWindow> window;
};

// 412 x 400.
inline std::unique_ptr<Stage> show(const QByteArray& items) {
  auto out = std::make_unique<Stage>();
  out->engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
  QQmlComponent component(&out->engine);
  component.setData(
      "import QtQuick\nimport QtQuick.Window\nimport Jambline.Theme\n"
      "Window { visible: true; width: 412; height: 400; color: Theme.paper\n"
      "Item { anchors.fill: parent\n" +
          items + "\n} }",
      QUrl());
  out->window.reset(qobject_cast<QQuickWindow*>(component.create()));
  EXPECT_TRUE(out->window) << qPrintable(component.errorString());
  settle(*out->window);
  return out;
}

}  // namespace jambline::walk
