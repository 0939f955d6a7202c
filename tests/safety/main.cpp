// One application without a display for all cases; or, as `--child WHAT FOLDER`, one life of a shop
// that set_clock_test.cpp ends or asks.
#include <QGuiApplication>
#include <QLocale>
#include <cstring>
#include <gtest/gtest.h>

#include "tests/safety/set_clock.h"

int main(int argc, char** argv) {
  if (argc == 4 && std::strcmp(argv[1], "--child") == 0)
    return jambline::safety::child(argv[2], argv[3]);
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qputenv("QT_QUICK_BACKEND", "software");
  qputenv("QT_LOGGING_RULES", "qt.quick.touch.target=false");
  qputenv("TZ", "UTC");
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  QGuiApplication application(argc, argv);
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
