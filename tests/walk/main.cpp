// One application without a display for all cases, on the software renderer.
#include <QGuiApplication>
#include <QLocale>
#include <gtest/gtest.h>
#include <utility>

#include "device/camera.h"
#include "findings.h"
#include "visit_test.h"

namespace {
std::string warned;

void keep_warning(QtMsgType type, const QMessageLogContext&, const QString& text) {
  if (type != QtDebugMsg && type != QtInfoMsg) warned += text.toStdString() + "\n";
}
}  // namespace

namespace jambline::walk {
std::string warnings() {
  return std::exchange(warned, {});
}
}  // namespace jambline::walk

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qputenv("QT_QUICK_BACKEND", "software");
  qputenv("QT_QPA_UPDATE_IDLE_TIME", "0");
  qputenv("QT_LOGGING_RULES", "qt.quick.touch.target=false");
  qputenv("TZ", "UTC");
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  QGuiApplication application(argc, argv);
  jambline::device::find_cameras();
  if (argc > 2 && std::string(argv[1]) == "--first-half")
    return jambline::walk::first_half(argv[2]);
  qInstallMessageHandler(keep_warning);  // what the platform said of itself before is not ours
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
