#include "screens/join_scan_view_model.h"

#include <QFile>

#include "exchange/exchange.h"
#include "picture/read.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr int code_side_px = 2400;  // a file is read at this size

QImage image_of(const QUrl& url) {
  QFile file(url.isLocalFile() ? url.toLocalFile() : url.toString());
  if (!file.open(QIODevice::ReadOnly) || file.size() > static_cast<qint64>(picture::most_bytes))
    return {};
  const QByteArray bytes = file.readAll();
  const auto image = picture::decode({reinterpret_cast<const std::uint8_t*>(bytes.constData()),
                                      static_cast<std::size_t>(bytes.size())},
                                     code_side_px);
  return image ? *image : QImage();
}
}  // namespace

JoinScanViewModel::JoinScanViewModel(device::Camera& camera, QObject* parent)
    : QObject(parent), camera_(camera) {
  connect(&camera_, &device::Camera::frameArrived, this, &JoinScanViewModel::look_at_frame);
  connect(&camera_, &device::Camera::stateChanged, this, &JoinScanViewModel::changed);
}

JoinScanViewModel::~JoinScanViewModel() {
  if (on_) camera_.stop();
}

void JoinScanViewModel::setFront(bool front) {
  if (front == front_) return;
  front_ = front;
  ++scan_;
  notice_.clear();
  reading_file_ = false;
  since_.invalidate();
  switch_camera(front);
  emit changed();
}

void JoinScanViewModel::switch_camera(bool on) {
  if (on == on_) return;
  on_ = on;
  if (on)
    camera_.start();
  else
    camera_.stop();
}

bool JoinScanViewModel::live() const {
  using State = device::Camera::State;
  return on_ && (camera_.state() == State::Ready || camera_.state() == State::Starting);
}

QString JoinScanViewModel::troubleWhat() const {
  using State = device::Camera::State;
  const auto state = camera_.state();
  if (state != State::NoCamera && state != State::Stalled && state != State::Failed) return {};
  if (const auto why = camera_.trouble()) return words_of(*why).what;
  return state == State::NoCamera ? tr("There is no camera on this device.")
                                  : tr("The camera gives no picture.");
}

bool JoinScanViewModel::canRestart() const {
  using State = device::Camera::State;
  return camera_.state() == State::Stalled || camera_.state() == State::Failed;
}

void JoinScanViewModel::restart() {
  camera_.restart();
}

void JoinScanViewModel::look_at_frame() {
  if (!on_ || frame_in_work_ || reading_file_) return;
  if (since_.isValid() && since_.elapsed() < apart_ms) return;
  const QImage frame = camera_.latest_frame();
  if (frame.isNull()) return;
  since_.start();
  frame_in_work_ = true;
  lane_.post([this, frame, scan = scan_] {
    auto codes = picture::read_barcodes(frame, picture::Effort::Quick);
    QMetaObject::invokeMethod(
        this,
        [this, codes = std::move(codes), scan] {
          frame_in_work_ = false;
          if (scan == scan_ && on_) show(codes, false);
        },
        Qt::QueuedConnection);
  });
}

void JoinScanViewModel::readFiles(const QList<QUrl>& files) {
  if (files.isEmpty() || reading_file_) return;
  notice_.clear();
  reading_file_ = true;
  emit changed();
  lane_.post([this, files, scan = scan_] {
    std::vector<picture::Barcode> codes;
    for (const QUrl& file : files)
      for (auto& one : picture::read_barcodes(image_of(file))) codes.push_back(std::move(one));
    QMetaObject::invokeMethod(
        this,
        [this, codes = std::move(codes), scan] {
          if (scan != scan_) return;
          reading_file_ = false;
          show(codes, true);
        },
        Qt::QueuedConnection);
  });
}

void JoinScanViewModel::show(const std::vector<picture::Barcode>& codes, bool of_file) {
  for (const auto& one : codes) {
    if (one.kind != picture::Barcode::Kind::Qr || !sync::decode_invitation(one.text)) continue;
    notice_.clear();
    switch_camera(false);
    emit changed();
    emit read(text(one.text));
    return;
  }
  if (!codes.empty())
    notice_ = tr("A code was read, and it is none of a hub.");
  else if (of_file)
    notice_ = tr("No square code could be read in this picture. Take it nearer, and straight on.");
  emit changed();
}

}  // namespace jambline::screens
