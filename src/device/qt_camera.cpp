#include "device/qt_camera.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QSet>
#include <QThread>
#include <algorithm>

namespace jambline::device {

namespace {

constexpr int frame_tick_ms = 250;
constexpr int quiet_ticks_are_stall = 4;
constexpr int ticks_for_first_frame = 12;
constexpr int ticks_of_health = 8;
constexpr int file_late_ms = 1200;
constexpr int shot_end_ms = 2700;
constexpr int old_frame_ms = 1000;
constexpr int frames_are_flow = 3;
constexpr int first_frames_ms = 1000;
constexpr int no_flow_ms = 400;
constexpr int leave_tick_ms = 20;
constexpr int live_every_ms = 66;
constexpr int live_px = 1280;
constexpr int frame_quality = 95;

const QString passing_name = QStringLiteral("jambline-shot-");

Error error_of(const char* operation, const QString& cause) {
  return Error{Code::FileFailed, operation, "camera", {}}.with("cause", cause.toStdString());
}

QThreadPool& one_thread(QThreadPool& pool) {
  pool.setMaxThreadCount(1);
  return pool;
}

// Ids of entries that Qt lists for a camera that it lists already; they stay when it is unplugged.
QSet<QByteArray>& twins() {
  static QSet<QByteArray> ids;
  return ids;
}

QList<QCameraDevice> cameras() {
  QList<QCameraDevice> all = QMediaDevices::videoInputs();
  all.removeIf([](const QCameraDevice& one) { return twins().contains(one.id()); });
  return all;
}

// A JPEG file begins with the marker SOI and ends with EOI (ITU-T T.81, B.1.1.3); a file that was
// cut short by a full disk lacks the second.
bool is_whole_jpeg(const QByteArray& bytes) {
  return bytes.startsWith("\xFF\xD8") && bytes.endsWith("\xFF\xD9");
}

}  // namespace

QtCamera::Stream::Stream(const QCameraDevice& device) : camera(device) {
  since.start();
  connect(&sink, &QVideoSink::videoFrameChanged, &sink, [this] { ++frames; });
  session.setImageCapture(&capture);
  session.setVideoSink(&sink);
  capture.setFileFormat(QImageCapture::JPEG);
  capture.setQuality(QImageCapture::VeryHighQuality);
  session.setCamera(&camera);
}

// Qt 6.4 holds the stream to take the camera out of it. If the camera asks just then for buffers of
// another kind, as it does at first and whenever a part was taken off, it waits for the stream and
// Qt waits for the camera, for ever. So: let it flow, take the rest off, let it flow again.
bool QtCamera::Stream::may_go() {
  const bool flows = frames >= frames_are_flow;
  if (!leaving) {
    if (!flows && since.elapsed() < first_frames_ms) return false;
    leaving = true;
    session.setImageCapture(nullptr);
    frames = 0;
    since.start();
    return false;
  }
  return flows || since.elapsed() >= no_flow_ms;
}

QtCamera::QtCamera(std::filesystem::path passing_folder)
    : passing_folder_(std::move(passing_folder)) {
  one_thread(live_lane_);
  // What a kill left of earlier pictures goes.
  one_thread(file_lane_).start([folder = QString::fromStdString(passing_folder_.string())] {
    QDir left(folder);
    for (const QString& name : left.entryList({passing_name + QLatin1Char('*')}, QDir::Files))
      left.remove(name);
  });
  file_late_.setSingleShot(true);
  shot_end_.setSingleShot(true);
  connect(&devices_, &QMediaDevices::videoInputsChanged, this, &QtCamera::look_for_device,
          Qt::QueuedConnection);
  connect(&watch_, &QTimer::timeout, this, &QtCamera::tick);
  connect(&leave_, &QTimer::timeout, this, &QtCamera::let_go);
  connect(&file_late_, &QTimer::timeout, this, &QtCamera::file_is_late);
  connect(&shot_end_, &QTimer::timeout, this,
          [this] { end_shot(fail(error_of("take a picture", QStringLiteral("stalled")))); });
  look_for_device();
}

QtCamera::~QtCamera() {
  take_down();
  // Nobody takes its frames any more: after 300 ms it ends by itself.
  if (leaving_) QThread::msleep(no_flow_ms);
  leaving_.reset();
  live_lane_.waitForDone();
  file_lane_.waitForDone();
}

std::optional<Error> QtCamera::trouble() const {
  switch (state_) {
    case State::NoCamera:
    case State::Stalled:
    case State::Failed:
      return error_of("start", cause_);
    default:
      return std::nullopt;
  }
}

void QtCamera::look_for_device() {
  const QList<QCameraDevice> all = cameras();
  const auto is_ours = [this](const QCameraDevice& one) { return one.id() == device_.id(); };
  if (!device_.isNull() && std::any_of(all.begin(), all.end(), is_ours)) return;
  const bool had = !device_.isNull();
  if (had) {
    take_down();
    end_shot(fail(error_of("take a picture", QStringLiteral("unplugged"))));
  }
  const auto usual =
      std::find_if(all.begin(), all.end(), [](const auto& o) { return o.isDefault(); });
  device_ = usual != all.end() ? *usual : all.value(0);
  if (device_.isNull()) {
    if (had)
      cause_ = QStringLiteral("unplugged");
    else if (cause_ != QLatin1String("unplugged"))
      cause_ = QStringLiteral("no camera");
    become(State::NoCamera);
  } else if (wanted_) {
    rebuilds_ = 0;
    build();
  } else {
    become(State::Off);
  }
}

void QtCamera::start() {
  if (wanted_) return;
  wanted_ = true;
  rebuilds_ = 0;
  if (!device_.isNull()) build();
}

void QtCamera::stop() {
  if (!wanted_) return;
  wanted_ = false;
  take_down();
  end_shot(fail(error_of("take a picture", QStringLiteral("stopped"))));
  live_ = {};
  become(device_.isNull() ? State::NoCamera : State::Off);
}

void QtCamera::restart() {
  if (!wanted_ || device_.isNull()) return;
  end_shot(fail(error_of("take a picture", QStringLiteral("stopped"))));
  rebuilds_ = 0;
  build();
}

void QtCamera::take_down() {
  watch_.stop();
  ++stream_number_;
  frame_ = {};
  build_waits_ = false;
  if (!stream_) return;
  leaving_ = std::move(stream_);
  leave_.start(leave_tick_ms);
}

void QtCamera::let_go() {
  if (leaving_ && !leaving_->may_go()) return;
  leave_.stop();
  leaving_.reset();
  if (build_waits_) build();
}

void QtCamera::build() {
  take_down();
  become(shot_ ? State::Taking : State::Starting);
  if (leaving_) {
    build_waits_ = true;
    return;
  }
  const std::uint64_t number = stream_number_;
  stream_ = std::make_unique<Stream>(device_);
  const auto of_now = [this, number] { return number == stream_number_; };
  connect(&stream_->sink, &QVideoSink::videoFrameChanged, this,
          [this, of_now](const QVideoFrame& frame) {
            if (of_now()) keep_frame(frame);
          });
  connect(
      &stream_->capture, &QImageCapture::readyForCaptureChanged, this,
      [this, of_now] {
        if (of_now()) settle();
      },
      Qt::QueuedConnection);
  connect(
      &stream_->capture, &QImageCapture::imageSaved, this,
      [this, of_now](int id, const QString& file) {
        if (of_now() && shot_ && shot_->wait == Wait::File && shot_->capture_id == id)
          read_file(file);
        else
          file_lane_.start([file] { QFile::remove(file); });
      },
      Qt::QueuedConnection);
  connect(
      &stream_->capture, &QImageCapture::errorOccurred, this,
      [this, of_now](int id) {
        if (of_now() && shot_ && shot_->capture_id == id) file_is_late();
      },
      Qt::QueuedConnection);
  connect(
      &stream_->camera, &QCamera::errorOccurred, this,
      [this, of_now](QCamera::Error, const QString& text) {
        if (of_now()) fail_with(text);
      },
      Qt::QueuedConnection);
  frames_in_tick_ = quiet_ticks_ = good_ticks_ = 0;
  watch_.start(frame_tick_ms);
  stream_->camera.start();
}

void QtCamera::fail_with(const QString& cause) {
  take_down();
  cause_ = cause;
  end_shot(fail(error_of("take a picture", cause)));
  become(State::Failed);
}

void QtCamera::become(State state) {
  if (state == state_) return;
  state_ = state;
  emit stateChanged();
}

void QtCamera::settle() {
  if (!stream_) return;
  if (shot_)
    become(State::Taking);
  else if (frame_.isValid() && quiet_ticks_ < quiet_ticks_are_stall)
    become(stream_->capture.isReadyForCapture() ? State::Ready : State::Starting);
}

// A handler that takes long ends the stream: nothing but this is done here.
void QtCamera::keep_frame(const QVideoFrame& frame) {
  if (!frame.isValid()) return;
  frame_ = frame;
  frame_age_.start();
  ++frames_in_tick_;
  if (frame_told_) return;
  frame_told_ = true;
  QMetaObject::invokeMethod(this, &QtCamera::after_frame, Qt::QueuedConnection);
}

void QtCamera::after_frame() {
  frame_told_ = false;
  if (!stream_ || !frame_.isValid()) return;
  quiet_ticks_ = 0;
  if (shot_ && shot_->wait == Wait::NewStream) take_of_frame();
  if (state_ == State::Starting || state_ == State::Stalled) settle();
  convert_frame();
}

void QtCamera::convert_frame() {
  if (converting_ || (live_age_.isValid() && live_age_.elapsed() < live_every_ms)) return;
  converting_ = true;
  live_age_.start();
  live_lane_.start([this, frame = frame_, number = stream_number_] {
    QImage image = frame.toImage();
    if (image.width() > live_px || image.height() > live_px)
      image = image.scaled(live_px, live_px, Qt::KeepAspectRatio, Qt::SmoothTransformation);
    QMetaObject::invokeMethod(this, [this, number, image = std::move(image)] {
      converting_ = false;
      if (number != stream_number_ || !stream_ || image.isNull()) return;
      live_ = image;
      emit frameArrived();
    });
  });
}

// Ticks are counted and not the clock: one that comes late because the screen stood still does not
// blame the camera.
void QtCamera::tick() {
  const bool alive = frames_in_tick_ > 0;
  frames_in_tick_ = 0;
  quiet_ticks_ = alive ? 0 : quiet_ticks_ + 1;
  good_ticks_ = alive ? good_ticks_ + 1 : 0;
  if (good_ticks_ == ticks_of_health) rebuilds_ = 0;
  if (shot_ || state_ == State::Stalled) return;
  const int most = frame_.isValid() ? quiet_ticks_are_stall : ticks_for_first_frame;
  if (quiet_ticks_ < most) return;
  if (rebuilds_ == 0) {
    ++rebuilds_;
    build();
  } else {
    cause_ = QStringLiteral("stalled");
    become(State::Stalled);
  }
}

void QtCamera::take(Then then) {
  if (state_ != State::Ready) {
    const auto why = trouble();
    answer_later(std::move(then),
                 fail(error_of("take a picture", why ? cause_ : QStringLiteral("not ready"))));
    return;
  }
  shot_.emplace();
  shot_->number = ++shots_;
  shot_->then = std::move(then);
  shot_->file = QString::fromStdString(passing_folder_.string()) + QLatin1Char('/') + passing_name +
                QString::number(shots_) + QLatin1String(".jpg");
  shot_->since_shutter.start();
  file_late_.start(file_late_ms);
  shot_end_.start(shot_end_ms);
  become(State::Taking);
  shot_->capture_id = stream_->capture.captureToFile(shot_->file);
}

void QtCamera::read_file(const QString& file) {
  file_lane_.start([this, file, shot = shot_->number] {
    QByteArray bytes;
    if (QFile reader(file); reader.open(QIODevice::ReadOnly)) bytes = reader.readAll();
    QFile::remove(file);
    if (!is_whole_jpeg(bytes)) bytes.clear();
    QMetaObject::invokeMethod(
        this, [this, shot, bytes = std::move(bytes)] { answer(shot, Wait::File, bytes); });
  });
}

void QtCamera::file_is_late() {
  if (!shot_ || shot_->wait != Wait::File) return;
  const bool seen_at_shutter =
      stream_ && frame_.isValid() &&
      frame_age_.elapsed() - shot_->since_shutter.elapsed() <= old_frame_ms;
  if (seen_at_shutter)
    take_of_frame();
  else
    take_of_new_stream();
}

void QtCamera::take_of_frame() {
  shot_->wait = Wait::Frame;
  file_lane_.start([this, frame = frame_, shot = shot_->number] {
    QByteArray bytes;
    QBuffer out(&bytes);
    out.open(QIODevice::WriteOnly);
    if (!frame.toImage().save(&out, "JPG", frame_quality)) bytes.clear();
    QMetaObject::invokeMethod(
        this, [this, shot, bytes = std::move(bytes)] { answer(shot, Wait::Frame, bytes); });
  });
}

void QtCamera::take_of_new_stream() {
  shot_->wait = Wait::NewStream;
  shot_->rebuilt = true;
  ++rebuilds_;
  build();
}

void QtCamera::answer(std::uint64_t shot, Wait of, const QByteArray& jpeg) {
  if (!shot_ || shot_->number != shot) return;
  if (!jpeg.isEmpty())
    end_shot(jpeg);
  else if (shot_->wait != of)
    return;
  else if (of == Wait::File)
    file_is_late();
  else if (!shot_->rebuilt)
    take_of_new_stream();
  else
    end_shot(fail(error_of("take a picture", QStringLiteral("stalled"))));
}

void QtCamera::end_shot(Result<QByteArray> result) {
  if (!shot_) return;
  Shot shot = std::move(*shot_);
  shot_.reset();
  file_late_.stop();
  shot_end_.stop();
  file_lane_.start([file = shot.file] { QFile::remove(file); });
  settle();
  if (stream_ && state_ == State::Taking) become(State::Starting);
  answer_later(std::move(shot.then), std::move(result));
}

void QtCamera::answer_later(Then then, Result<QByteArray> result) {
  QMetaObject::invokeMethod(
      this,
      [then = std::move(then), result = std::move(result)]() mutable { then(std::move(result)); },
      Qt::QueuedConnection);
}

void find_cameras() {
  QCoreApplication::setAttribute(Qt::AA_ForceRasterWidgets);
  const QList<QCameraDevice> first = QMediaDevices::videoInputs();
  const QMediaDevices asked;          // what has to be said of the machine's sound is said now
  QCoreApplication::processEvents();  // what the system said of them meanwhile
  QStringList once;
  for (const QCameraDevice& one : first) once << one.description();
  for (const QCameraDevice& one : QMediaDevices::videoInputs())
    if (!first.contains(one) && once.removeOne(one.description())) twins().insert(one.id());
}

std::unique_ptr<Camera> make_camera(std::filesystem::path passing_folder) {
  return std::make_unique<QtCamera>(std::move(passing_folder));
}

}  // namespace jambline::device
