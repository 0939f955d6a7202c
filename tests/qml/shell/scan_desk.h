// tests/qml/shell/scan_desk.h: a camera before which the test holds labels, and what reads them.
#pragma once

#include <QQmlEngine>

#include "app/demo_pictures/painting.h"
#include "screens/vin_scan_view_model.h"
#include "tests/device/fake_camera.h"

class ScanDesk : public QObject {
  Q_OBJECT
  Q_PROPERTY(jambline::screens::VinScanViewModel* scan READ scan CONSTANT)
  Q_PROPERTY(QString used MEMBER used_ NOTIFY usedChanged)
  Q_PROPERTY(bool asTyped MEMBER as_typed_ NOTIFY usedChanged)
  Q_PROPERTY(bool cameraOn READ camera_on)
 public:
  ScanDesk() {
    QQmlEngine::setObjectOwnership(&scan_, QQmlEngine::CppOwnership);
    connect(&scan_, &jambline::screens::VinScanViewModel::used, this,
            [this](const QString& vin, bool as_typed) {
              used_ = vin;
              as_typed_ = as_typed;
              emit usedChanged();
            });
  }
  jambline::screens::VinScanViewModel* scan() { return &scan_; }
  bool camera_on() const { return camera_.now == jambline::device::Camera::State::Ready; }
  Q_INVOKABLE void plug(bool in) {
    used_.clear();
    camera_.go(in ? jambline::device::Camera::State::Off
                  : jambline::device::Camera::State::NoCamera);
  }
  Q_INVOKABLE void hold(const QString& vin) {
    jambline::demo::PictureWish wish;
    wish.view = jambline::job::ShotView::PlateOrLabel;
    wish.color.hex = "#9c2b2a";
    wish.vin = vin.toStdString();
    wish.seed = 5;
    camera_.show(jambline::demo::painting_of(wish));
  }

 signals:
  void usedChanged();

 private:
  jambline::device::FakeCamera camera_;
  jambline::screens::VinScanViewModel scan_{camera_};
  QString used_;
  bool as_typed_ = false;
};
