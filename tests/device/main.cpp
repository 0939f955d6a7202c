// One application without a display for all cases, and a camera that the tests switch.
#include <QGuiApplication>
#include <QTemporaryDir>
#include <gtest/gtest.h>

#include "device/camera.h"

int main(int argc, char** argv) {
  const QTemporaryDir switches;
  const QByteArray plugins = JAMBLINE_TEST_CAMERAS;
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qputenv("QT_MEDIA_BACKEND", "gstreamer");
  qputenv("JAMBLINE_TEST_CAMERA", switches.path().toUtf8());
  qputenv("GST_PLUGIN_PATH", plugins);
  qputenv("GST_REGISTRY", plugins + "/registry.bin");
  // The cameras of the machine itself stay out of it.
  qputenv("GST_PLUGIN_FEATURE_RANK",
          "v4l2deviceprovider:NONE,pipewiredeviceprovider:NONE,decklinkdeviceprovider:NONE,"
          "uvch264deviceprovider:NONE,pulsedeviceprovider:NONE,alsadeviceprovider:NONE");
  testing::InitGoogleTest(&argc, argv);
  if (testing::GTEST_FLAG(list_tests)) return RUN_ALL_TESTS();
  const QGuiApplication application(argc, argv);
  jambline::device::find_cameras();
  return RUN_ALL_TESTS();
}
