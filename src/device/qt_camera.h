// device/qt_camera.h: the camera of device/camera.h on Qt Multimedia 6.4.
//
// Shape:   camera, session, sink and capture are one Stream and are built anew together: nothing
//          less brings a stalled one back. What comes of an
//          earlier Stream is dropped by its number.
// Threads: as the contract says. Signals of a Stream are taken up later than they are sent, so that
//          no Stream is taken down within its own signal.
#pragma once

#include <QCamera>
#include <QElapsedTimer>
#include <QImageCapture>
#include <QMediaCaptureSession>
#include <QMediaDevices>
#include <QThreadPool>
#include <QTimer>
#include <QVideoFrame>
#include <QVideoSink>

#include "device/camera.h"

namespace jambline::device {

class QtCamera : public Camera {
 public:
  explicit QtCamera(std::filesystem::path passing_folder);
  ~QtCamera() override;

  State state() const override { return state_; }
  QString camera_name() const override { return device_.description(); }
  std::optional<Error> trouble() const override;
  void start() override;
  void stop() override;
  void restart() override;
  QImage latest_frame() const override { return live_; }
  void take(Then then) override;

 private:
  struct Stream {
    explicit Stream(const QCameraDevice& device);
    bool may_go();  // asked again and again until it says so
    int frames = 0;
    bool leaving = false;
    QElapsedTimer since;  // made, or leaving
    QMediaCaptureSession session;
    QVideoSink sink;
    QImageCapture capture;
    QCamera camera;
  };
  // A picture is first waited for as a file, then made of a frame, then of a new stream's frame.
  enum class Wait : std::uint8_t { File, Frame, NewStream };
  struct Shot {
    std::uint64_t number = 0;
    Then then;
    Wait wait = Wait::File;
    bool rebuilt = false;
    int capture_id = -1;
    QString file;
    QElapsedTimer since_shutter;
  };

  void look_for_device();
  void build();
  void take_down();
  void let_go();
  void become(State state);
  void settle();
  void fail_with(const QString& cause);
  void keep_frame(const QVideoFrame& frame);
  void after_frame();
  void convert_frame();
  void tick();
  void read_file(const QString& file);
  void file_is_late();
  void take_of_frame();
  void take_of_new_stream();
  void answer(std::uint64_t shot, Wait of, const QByteArray& jpeg);
  void end_shot(Result<QByteArray> result);
  void answer_later(Then then, Result<QByteArray> result);

  std::filesystem::path passing_folder_;
  QMediaDevices devices_;
  QCameraDevice device_;
  State state_ = State::NoCamera;
  QString cause_;
  bool wanted_ = false;
  std::unique_ptr<Stream> stream_;
  std::unique_ptr<Stream> leaving_;  // cannot be taken down at once; the next one waits for it
  bool build_waits_ = false;
  std::uint64_t stream_number_ = 0;

  QVideoFrame frame_;  // the last one of this stream
  QElapsedTimer frame_age_;
  QElapsedTimer live_age_;
  QImage live_;
  bool converting_ = false;
  bool frame_told_ = false;
  int frames_in_tick_ = 0;
  int quiet_ticks_ = 0;
  int good_ticks_ = 0;
  int rebuilds_ = 0;

  std::optional<Shot> shot_;
  std::uint64_t shots_ = 0;
  QTimer watch_;
  QTimer leave_;
  QTimer file_late_;
  QTimer shot_end_;
  QThreadPool live_lane_;
  QThreadPool file_lane_;
};

}  // namespace jambline::device
