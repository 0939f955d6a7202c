// bench-empty-window: an empty window of Qt Quick Controls, to hold the program's start against. It
// links nothing of the program.
#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <QTimer>

#include "tests/bench/screens/shown.h"

int main(int argc, char** argv) {
  QGuiApplication gui(argc, argv);
  QQmlApplicationEngine qml;
  qml.loadData(
      "import QtQuick.Controls\nApplicationWindow { visible: true; width: 412; height: 892 }");
  if (qml.rootObjects().isEmpty()) return 1;
  auto* window = qobject_cast<QQuickWindow*>(qml.rootObjects().first());
  QObject::connect(
      window, &QQuickWindow::frameSwapped, window,
      [&] {
        jambline::bench::tell_shown();
        QTimer::singleShot(0, &gui, &QCoreApplication::quit);
      },
      Qt::SingleShotConnection);
  return QGuiApplication::exec();
}
