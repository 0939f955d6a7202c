#include "picture/judge.h"

#include <algorithm>

#include "picture/crispness.h"
#include "picture/photo_limits.h"

namespace jambline::picture {

namespace {
// Never enlarged: what is smaller than this is too small as proof anyway.
trade::GrayPicture gray_of(const QImage& image) {
  const int side = std::min(working_px, std::max(image.width(), image.height()));
  const QSize size = image.size().scaled(side, side, Qt::KeepAspectRatio).expandedTo(QSize(3, 3));
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
  JAMBLINE_ASSIGN(auto out, trade::judge_photo(in));
  const double crisp = crispness(in.picture);
  if (out.word == trade::PhotoWord::Good && crisp < least_crispness)
    out.word = trade::PhotoWord::Blurred;
  out.basis.term("crispness", crisp, "", trade::computed);
  out.basis.term("least crispness", least_crispness, "", trade::computed);
  return out;
}

}  // namespace jambline::picture
