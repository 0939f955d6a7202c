// screens/join_scan_view_model.h: the square code of a hub, before the camera or in a picture file.
//
// Shape:   the first code that is an invitation (sync/invitation.h) is given by read(); another
//          square code says so in `notice`. Nothing is asked of anybody here.
// Camera:  on only while `front` is true and nothing was read; the sheet sets it.
// Cost:    five frames a second at most, one at a time.
// Threads: GUI; frames and files are read on a lane of its own.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QUrl>
#include <qqmlregistration.h>

#include "device/camera.h"
#include "engine/lane.h"
#include "picture/barcode.h"

namespace jambline::screens {

class JoinScanViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Part of JoinViewModel")
  Q_PROPERTY(jambline::device::Camera* camera READ camera CONSTANT)
  Q_PROPERTY(bool front READ front WRITE setFront NOTIFY changed)
  Q_PROPERTY(bool live READ live NOTIFY changed)
  Q_PROPERTY(bool reading READ reading NOTIFY changed)             // a file
  Q_PROPERTY(QString troubleWhat READ troubleWhat NOTIFY changed)  // why there is no live view
  Q_PROPERTY(bool canRestart READ canRestart NOTIFY changed)
  Q_PROPERTY(QString notice READ notice NOTIFY changed)  // what became of the last code; or ""

 public:
  static constexpr int apart_ms = 200;

  explicit JoinScanViewModel(device::Camera& camera, QObject* parent = nullptr);
  ~JoinScanViewModel() override;

  device::Camera* camera() const { return &camera_; }
  bool front() const { return front_; }
  void setFront(bool front);
  bool live() const;
  bool reading() const { return reading_file_; }
  QString troubleWhat() const;
  bool canRestart() const;
  QString notice() const { return notice_; }

  Q_INVOKABLE void restart();
  Q_INVOKABLE void readFiles(const QList<QUrl>& files);

 signals:
  void changed();
  void read(const QString& text);

 private:
  void look_at_frame();
  void switch_camera(bool on);
  void show(const std::vector<picture::Barcode>& codes, bool of_file);

  device::Camera& camera_;
  bool front_ = false;
  bool on_ = false;  // the camera, by this
  bool frame_in_work_ = false;
  bool reading_file_ = false;
  int scan_ = 0;  // what was asked before the last opening does not count
  QElapsedTimer since_;
  QString notice_;
  engine::Lane lane_;  // last: stops before the rest goes
};

}  // namespace jambline::screens
