#include "screens/vin_scan_view_model.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QStringList>
#include <algorithm>

#include "picture/read.h"
#include "screens/words.h"
#include "trade/vin.h"

namespace jambline::screens {

namespace {
constexpr int longest_side_px = 2400;  // a file is read at this size
constexpr qsizetype group = 3;         // 3, 5, 1, 8 signs: maker, car, check sign, the rest

// In the groups in which a person compares it with the plate.
QString in_groups(const QString& vin) {
  if (vin.size() != 17) return vin;
  return QStringList{vin.left(group), vin.mid(3, 5), vin.mid(8, 1), vin.mid(9)}.join(u' ');
}

QString years_words(const trade::VinCheck& check) {
  if (check.model_years.empty())
    return QCoreApplication::translate("VinScan", "Place 10 stands for no model year.");
  QStringList years;
  for (const int year : check.model_years) years.append(QString::number(year));
  return QCoreApplication::translate("VinScan", "Model year by place 10: %1.")
      .arg(years.join(QCoreApplication::translate("VinScan", " or ")));
}

Result<QImage> picture_of(const QString& path) {
  QFile file(path);
  const QString name = QFileInfo(path).fileName();
  if (!file.open(QIODevice::ReadOnly))
    return fail(Code::NoSuchFile, "take in a picture", name.toStdString());
  if (file.size() > static_cast<qint64>(picture::most_bytes))
    return fail(Error{Code::TooLarge,
                      "take in a picture",
                      name.toStdString(),
                      {{"limit", std::to_string(picture::most_bytes)},
                       {"is", std::to_string(file.size())},
                       {"unit", "byte"}}});
  const QByteArray bytes = file.readAll();
  return picture::decode({reinterpret_cast<const std::uint8_t*>(bytes.constData()),
                          static_cast<std::size_t>(bytes.size())},
                         longest_side_px);
}
}  // namespace

QString vin_check_words(const std::string& vin) {
  const auto check = trade::check_vin(vin);
  const auto tr = [](const char* text) { return QCoreApplication::translate("VinScan", text); };
  if (check.passes) return tr("The check sign fits. A wrong sign can still pass.");
  if (!check.length_right) return tr("This VIN has %1 signs, not 17.").arg(check.text.size());
  if (!check.forbidden_places.empty())
    return tr("This VIN does not check. Look at place %1.").arg(check.forbidden_places.front());
  if (!check.suspects.empty())
    return tr("This VIN does not check. Look at place %1: is it %2?")
        .arg(check.suspects.front().place)
        .arg(QLatin1Char(check.suspects.front().instead));
  return tr("This VIN does not check. Look at place 9.");
}

VinScanViewModel::VinScanViewModel(device::Camera& camera, QObject* parent)
    : QObject(parent),
      camera_(camera),
      found_({"vin", "signs", "words", "years", "good", "useText"}, this) {
  connect(&camera_, &device::Camera::frameArrived, this, &VinScanViewModel::look_at_frame);
  connect(&camera_, &device::Camera::stateChanged, this, &VinScanViewModel::changed);
}

VinScanViewModel::~VinScanViewModel() {
  if (on_) camera_.stop();
}

void VinScanViewModel::setFront(bool front) {
  if (front == front_) return;
  front_ = front;
  if (front) scanAgain();
  switch_camera();
  emit changed();
}

// On while it is looked through, and nothing is found.
void VinScanViewModel::switch_camera() {
  const bool on = front_ && foundCount() == 0;
  if (on == on_) return;
  on_ = on;
  if (on)
    camera_.start();
  else
    camera_.stop();
}

bool VinScanViewModel::live() const {
  using State = device::Camera::State;
  return on_ && (camera_.state() == State::Ready || camera_.state() == State::Starting);
}

QString VinScanViewModel::troubleWhat() const {
  using State = device::Camera::State;
  const auto state = camera_.state();
  if (state != State::NoCamera && state != State::Stalled && state != State::Failed) return {};
  if (const auto why = camera_.trouble()) return words_of(*why).what;
  return state == State::NoCamera ? tr("There is no camera on this device.")
                                  : tr("The camera gives no picture.");
}

bool VinScanViewModel::canRestart() const {
  using State = device::Camera::State;
  return camera_.state() == State::Stalled || camera_.state() == State::Failed;
}

void VinScanViewModel::restart() {
  camera_.restart();
}

void VinScanViewModel::scanAgain() {
  ++scan_;
  reading_file_ = false;
  notice_.clear();
  found_.set({});
  since_.invalidate();
  switch_camera();
  emit changed();
}

void VinScanViewModel::look_at_frame() {
  if (!on_ || frame_in_work_ || reading_file_) return;
  if (since_.isValid() && since_.elapsed() < apart_ms) return;
  const QImage frame = camera_.latest_frame();
  if (frame.isNull()) return;
  since_.start();
  frame_in_work_ = true;
  lane_.post([this, frame, scan = scan_] {
    Answer answer{picture::read_barcodes(frame, picture::Effort::Quick), {}};
    QMetaObject::invokeMethod(
        this,
        [this, answer = std::move(answer), scan] {
          frame_in_work_ = false;
          if (scan == scan_ && on_) show(answer, false);
        },
        Qt::QueuedConnection);
  });
}

void VinScanViewModel::readFiles(const QList<QUrl>& files) {
  if (files.isEmpty()) return;
  scanAgain();
  reading_file_ = true;
  emit changed();
  lane_.post([this, files, scan = scan_] {
    Answer answer;
    for (const QUrl& file : files) {
      const auto image = picture_of(file.isLocalFile() ? file.toLocalFile() : file.toString());
      if (!image) {
        answer.error = image.error();
        continue;
      }
      for (auto& one : picture::read_barcodes(*image)) answer.barcodes.push_back(std::move(one));
    }
    QMetaObject::invokeMethod(
        this,
        [this, answer = std::move(answer), scan] {
          if (scan != scan_) return;
          reading_file_ = false;
          show(answer, true);
        },
        Qt::QueuedConnection);
  });
}

void VinScanViewModel::show(const Answer& answer, bool of_file) {
  QStringList vins;
  for (const auto& barcode : answer.barcodes)
    if (const auto vin = picture::vin_in(barcode))
      if (const auto text = QString::fromStdString(*vin); !vins.contains(text)) vins.append(text);
  std::vector<QVariantList> rows;
  for (const QString& vin : vins) {
    const auto check = trade::check_vin(vin.toStdString());
    rows.push_back({vin, in_groups(vin), vin_check_words(check.text), years_words(check),
                    check.passes, check.passes ? tr("Use this VIN") : tr("Use it as read")});
  }
  notice_.clear();
  if (rows.empty() && answer.error)
    notice_ = words_of(*answer.error).what;
  else if (rows.empty() && !answer.barcodes.empty())
    notice_ = tr("A barcode was read, and there is no VIN in it.");
  else if (rows.empty() && of_file)
    notice_ =
        tr("No barcode could be read in this picture. Take it nearer, and square to the label.");
  found_.set(std::move(rows));
  switch_camera();
  emit changed();
}

void VinScanViewModel::use(const QString& vin) {
  emit used(vin, !trade::check_vin(vin.toStdString()).passes);
}

}  // namespace jambline::screens
