// The three knocks: under two seconds, each louder, most of it between 1 and 3 kHz, as the design's
// list of sounds has it.
#include "device/knocks.h"

#include <cmath>
#include <gtest/gtest.h>
#include <vector>

namespace jambline::device {
namespace {

constexpr int rate = 48'000;

std::vector<double> one_channel() {
  const QByteArray bytes = knock_samples(rate, 2);
  const auto* at = reinterpret_cast<const qint16*>(bytes.constData());
  std::vector<double> out;
  for (qsizetype i = 0; i < bytes.size() / 4; ++i) {
    EXPECT_EQ(at[2 * i], at[2 * i + 1]);
    out.push_back(at[2 * i] / 32'768.0);
  }
  return out;
}

double loudest(const std::vector<double>& samples, double from_s, double to_s) {
  double out = 0;
  for (auto i = static_cast<std::size_t>(from_s * rate); i < static_cast<std::size_t>(to_s * rate);
       ++i)
    out = std::max(out, std::abs(samples[i]));
  return out;
}

// Power at one frequency, by the sum of a discrete Fourier transform over the first knock.
double power_at(const std::vector<double>& samples, double hertz) {
  double re = 0, im = 0;
  for (std::size_t i = 0; i < rate / 4; ++i) {
    const double turn = 2 * 3.14159265358979 * hertz * static_cast<double>(i) / rate;
    re += samples[i] * std::cos(turn);
    im += samples[i] * std::sin(turn);
  }
  return re * re + im * im;
}

TEST(Knocks, AreThreeEachLouderAndShort) {
  const auto samples = one_channel();
  EXPECT_LT(static_cast<double>(samples.size()) / rate, 2);
  const double first = loudest(samples, 0, 0.4);
  const double second = loudest(samples, 0.45, 0.85);
  const double third = loudest(samples, 0.88, 1.3);
  EXPECT_GT(first, 0.1);
  EXPECT_GT(second, 1.3 * first);
  EXPECT_GT(third, 1.3 * second);
  EXPECT_LT(third, 0.99) << "it is not cut";
  EXPECT_LT(loudest(samples, 0.35, 0.45), 0.01) << "silence between two";
}

TEST(Knocks, LieWhereEarMuffsLetThemThrough) {
  const auto samples = one_channel();
  double inside = 0, outside = 0;
  for (double hertz = 50; hertz < 8000; hertz += 25)
    (hertz >= 1000 && hertz <= 3000 ? inside : outside) += power_at(samples, hertz);
  EXPECT_GT(inside, 9 * outside);
}

}  // namespace
}  // namespace jambline::device
