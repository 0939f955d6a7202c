#include "picture/judge.h"

#include <algorithm>

#include "picture/photo_limits.h"

namespace jambline::picture {

namespace {
trade::GrayPicture gray_of(const QImage& image) {
  const QSize size =
      image.size().scaled(working_px, working_px, Qt::KeepAspectRatio).expandedTo(QSize(3, 3));
  const QImage gray = image.scaled(size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation)
                          .convertToFormat(QImage::Format_Grayscale8);
  trade::GrayPicture out{gray.width(), gray.height(), {}};
  out.gray.reserve(static_cast<std::size_t>(gray.width()) *
                   static_cast<std::size_t>(gray.height()));
  for (int y = 0; y < gray.height(); ++y) {
    const std::uint8_t* row = gray.constScanLine(y);
    out.gray.insert(out.gray.end(), row, row + gray.width());
  }
  return out;
}
}  // namespace

Result<trade::PhotoJudgementResult> judge(const QImage& image, int taken_width_px,
                                          int taken_height_px) {
  trade::PhotoJudgement in;
  in.picture = gray_of(image);
  in.taken_width = taken_width_px;
  in.taken_height = taken_height_px;
  in.least_sharpness = least_sharpness;
  in.least_mean = least_mean;
  in.most_mean = most_mean;
  in.most_clipped_percent = most_clipped_percent;
  in.least_long_side = least_long_side_px;
  return trade::judge_photo(in);
}

}  // namespace jambline::picture
