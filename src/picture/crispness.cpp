#include "picture/crispness.h"

#include <algorithm>
#include <vector>

namespace jambline::picture {

namespace {
constexpr double grain = 3;
constexpr double grain_when_blurred = 0.5;
constexpr std::size_t blur_px = 2;  // on each side

struct Energy {
  double as_is = 0;
  double when_blurred = 0;
};

double second_differences(const std::vector<double>& line) {
  double sum = 0;
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const double difference = line[i - 1] + line[i + 1] - 2 * line[i];
    sum += difference * difference;
  }
  return sum;
}

std::vector<double> blurred(const std::vector<double>& line) {
  std::vector<double> out(line.size());
  for (std::size_t i = 0; i < line.size(); ++i) {
    double sum = 0;
    for (std::size_t k = 0; k <= 2 * blur_px; ++k) {
      const std::size_t at = i + k < blur_px ? 0 : std::min(i + k - blur_px, line.size() - 1);
      sum += line[at];
    }
    out[i] = sum / (2 * blur_px + 1);
  }
  return out;
}

void add(Energy& energy, const std::vector<double>& line) {
  energy.as_is += second_differences(line);
  energy.when_blurred += second_differences(blurred(line));
}

double lost(const Energy& energy, double count) {
  return (energy.as_is / count - grain) / (energy.when_blurred / count + grain_when_blurred);
}
}  // namespace

double crispness(const trade::GrayPicture& picture) {
  const auto width = static_cast<std::size_t>(picture.width);
  const auto height = static_cast<std::size_t>(picture.height);
  Energy across;
  Energy down;
  std::vector<double> line(width);
  for (std::size_t y = 0; y < height; ++y) {
    for (std::size_t x = 0; x < width; ++x) line[x] = picture.gray[y * width + x];
    add(across, line);
  }
  line.resize(height);
  for (std::size_t x = 0; x < width; ++x) {
    for (std::size_t y = 0; y < height; ++y) line[y] = picture.gray[y * width + x];
    add(down, line);
  }
  const double count = static_cast<double>(width * height);
  return std::min(lost(across, count), lost(down, count));
}

}  // namespace jambline::picture
