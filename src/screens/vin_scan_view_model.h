// screens/vin_scan_view_model.h: a VIN out of a barcode, from the live view or from a picture.
//
// Shape:   what is read is shown with its check and used only when a person says so; of several
//          barcodes all are shown. A VIN that does not check can be used, marked as typed.
// Camera:  on only while `front` is true and nothing is found yet; the sheet sets it.
// Cost:    five frames a second at most, one at a time.
// Threads: GUI; frames and files are read on a lane of its own. Errors become `notice`.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QUrl>
#include <qqmlregistration.h>

#include "device/camera.h"
#include "engine/lane.h"
#include "picture/barcode.h"
#include "screens/row_list.h"

namespace jambline::screens {

class VinScanViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to OpenCar")
  Q_PROPERTY(jambline::device::Camera* camera READ camera CONSTANT)
  Q_PROPERTY(bool front READ front WRITE setFront NOTIFY changed)
  Q_PROPERTY(bool live READ live NOTIFY changed)
  Q_PROPERTY(bool reading READ reading NOTIFY changed)             // a file
  Q_PROPERTY(QString troubleWhat READ troubleWhat NOTIFY changed)  // why there is no live view
  Q_PROPERTY(bool canRestart READ canRestart NOTIFY changed)
  Q_PROPERTY(QString notice READ notice NOTIFY changed)  // what became of the last picture; or ""
  // Roles: vin, signs (in groups, to be compared), words, years, good, useText.
  Q_PROPERTY(QAbstractItemModel* found READ found CONSTANT)
  Q_PROPERTY(int foundCount READ foundCount NOTIFY changed)

 public:
  static constexpr int apart_ms = 200;

  explicit VinScanViewModel(device::Camera& camera, QObject* parent = nullptr);
  ~VinScanViewModel() override;

  device::Camera* camera() const { return &camera_; }
  bool front() const { return front_; }
  void setFront(bool front);
  bool live() const;
  bool reading() const { return reading_file_; }
  QString troubleWhat() const;
  bool canRestart() const;
  QString notice() const { return notice_; }
  QAbstractItemModel* found() { return &found_; }
  int foundCount() const { return found_.rowCount(); }

  Q_INVOKABLE void scanAgain();
  Q_INVOKABLE void restart();
  Q_INVOKABLE void readFiles(const QList<QUrl>& files);
  Q_INVOKABLE void use(const QString& vin);

 signals:
  void changed();
  void used(const QString& vin, bool as_typed);

 private:
  struct Answer {
    std::vector<picture::Barcode> barcodes;
    std::optional<Error> error;
  };
  void look_at_frame();
  void switch_camera();
  void show(const Answer& answer, bool of_file);

  device::Camera& camera_;
  RowList found_;
  bool front_ = false;
  bool on_ = false;  // the camera, by this
  bool frame_in_work_ = false;
  bool reading_file_ = false;
  int scan_ = 0;  // what was asked before the last "again" does not count
  QElapsedTimer since_;
  QString notice_;
  engine::Lane lane_;  // last: stops before the rest goes
};

// The check of one VIN in words: "The check sign fits. A wrong sign can still pass."
QString vin_check_words(const std::string& vin);

}  // namespace jambline::screens
