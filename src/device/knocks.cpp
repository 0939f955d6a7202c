#include "device/knocks.h"

#include <QAudioDevice>
#include <QAudioFormat>
#include <QAudioSink>
#include <QBuffer>
#include <QMediaDevices>
#include <algorithm>
#include <cmath>

namespace jambline::device {

namespace {
constexpr double pi = 3.14159265358979323846;
constexpr double sound_s = 1.5;
constexpr double first_s = 0.05;
constexpr double apart_s = 0.42;
constexpr double loudness[] = {0.35, 0.6, 0.9};

// A short stick on hard wood: two tones that do not fit each other, gone within a tenth of a
// second.
double knock_at(double since_s) {
  if (since_s < 0 || since_s > 0.3) return 0;
  const double strike = std::min(1.0, since_s / 0.0015);
  return strike * (0.62 * std::exp(-since_s / 0.035) * std::sin(2 * pi * 1400 * since_s) +
                   0.38 * std::exp(-since_s / 0.022) * std::sin(2 * pi * 2270 * since_s));
}

class LoudspeakerKnocks final : public Knocks {
 public:
  bool answers() const override { return !QMediaDevices::defaultAudioOutput().isNull(); }

  void knock() override {
    const QAudioDevice device = QMediaDevices::defaultAudioOutput();
    if (device.isNull()) return;
    QAudioFormat format;
    format.setSampleRate(48'000);
    format.setChannelCount(2);
    format.setSampleFormat(QAudioFormat::Int16);
    if (!device.isFormatSupported(format)) return;
    sink_.reset();
    samples_.close();
    samples_.setData(knock_samples(format.sampleRate(), format.channelCount()));
    samples_.open(QIODevice::ReadOnly);
    sink_ = std::make_unique<QAudioSink>(device, format);
    sink_->start(&samples_);
  }

 private:
  QBuffer samples_;
  std::unique_ptr<QAudioSink> sink_;  // gone before what it plays
};
}  // namespace

QByteArray knock_samples(int samples_per_s, int channels) {
  const int count = static_cast<int>(sound_s * samples_per_s);
  QByteArray out(static_cast<qsizetype>(count) * channels * 2, Qt::Uninitialized);
  auto* at = reinterpret_cast<qint16*>(out.data());
  for (int i = 0; i < count; ++i) {
    const double now_s = static_cast<double>(i) / samples_per_s;
    double sum = 0;
    for (int knock = 0; knock < 3; ++knock)
      sum += loudness[knock] * knock_at(now_s - first_s - knock * apart_s);
    const auto sample = static_cast<qint16>(std::lround(std::clamp(sum, -1.0, 1.0) * 32'000));
    for (int channel = 0; channel < channels; ++channel) *at++ = sample;
  }
  return out;
}

std::unique_ptr<Knocks> make_knocks() {
  return std::make_unique<LoudspeakerKnocks>();
}

}  // namespace jambline::device
