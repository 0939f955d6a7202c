#include "trade/photo_judgement.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr double black = 3;
constexpr double white = 252;

Status checked(const PhotoJudgement& in) {
  JAMBLINE_TRY(need("picture.width", in.picture.width, 3, 20000, "3 to 20,000 px"));
  JAMBLINE_TRY(need("picture.height", in.picture.height, 3, 20000, "3 to 20,000 px"));
  const auto wanted =
      static_cast<std::size_t>(in.picture.width) * static_cast<std::size_t>(in.picture.height);
  if (in.picture.gray.size() != wanted)
    return fail(refusal(Code::Malformed, "picture.gray", "not width x height values"));
  for (std::size_t i = 0; i < in.picture.gray.size(); ++i)
    if (!(in.picture.gray[i] >= 0 && in.picture.gray[i] <= 255))
      return fail(refusal(Code::OutOfRange, "picture.gray[" + std::to_string(i) + ']', "0 to 255"));
  JAMBLINE_TRY(need("taken_width", in.taken_width, 1, 1e5, "over 0"));
  JAMBLINE_TRY(need("taken_height", in.taken_height, 1, 1e5, "over 0"));
  JAMBLINE_TRY(need("least_sharpness", in.least_sharpness, 0, 1e6, "not negative"));
  JAMBLINE_TRY(need("least_mean", in.least_mean, 0, 255, "0 to 255"));
  JAMBLINE_TRY(need("most_mean", in.most_mean, in.least_mean, 255, "from least_mean to 255"));
  JAMBLINE_TRY(need("most_clipped_percent", in.most_clipped_percent, 0, 100, "0 to 100 %"));
  return need("least_long_side", in.least_long_side, 1, 1e5, "over 0");
}
}  // namespace

double laplacian_variance(const GrayPicture& picture) {
  const int w = picture.width;
  const int h = picture.height;
  const auto mirrored = [](int at, int size) {
    return at < 0 ? -at : at >= size ? 2 * size - 2 - at : at;
  };
  const auto gray = [&](int x, int y) {
    return picture.gray[static_cast<std::size_t>(mirrored(y, h)) * static_cast<std::size_t>(w) +
                        static_cast<std::size_t>(mirrored(x, w))];
  };
  double sum = 0;
  double squares = 0;
  for (int y = 0; y < h; ++y)
    for (int x = 0; x < w; ++x) {
      const double edge =
          gray(x - 1, y) + gray(x + 1, y) + gray(x, y - 1) + gray(x, y + 1) - 4 * gray(x, y);
      sum += edge;
      squares += edge * edge;
    }
  const double count = static_cast<double>(w) * h;
  const double mean = sum / count;
  return squares / count - mean * mean;
}

Result<PhotoJudgementResult> judge_photo(const PhotoJudgement& in) {
  JAMBLINE_TRY(checked(in));
  PhotoJudgementResult out;
  const auto& gray = in.picture.gray;
  const double count = static_cast<double>(gray.size());
  out.sharpness = laplacian_variance(in.picture);
  out.mean = std::accumulate(gray.begin(), gray.end(), 0.0) / count;
  out.clipped_percent =
      100 *
      static_cast<double>(std::count_if(gray.begin(), gray.end(),
                                        [](double one) { return one <= black || one >= white; })) /
      count;
  if (std::max(in.taken_width, in.taken_height) < in.least_long_side)
    out.word = PhotoWord::TooSmall;
  else if (out.mean < in.least_mean)
    out.word = PhotoWord::TooDark;
  else if (out.mean > in.most_mean)
    out.word = PhotoWord::TooBright;
  else if (out.clipped_percent > in.most_clipped_percent)
    out.word = PhotoWord::Clipped;
  else if (out.sharpness < in.least_sharpness)
    out.word = PhotoWord::Blurred;
  out.basis.method =
      "Variance of the Laplacian at one working size, mean gray, share of black and white.";
  out.basis.term("sharpness", out.sharpness, "", computed);
  out.basis.term("least sharpness", in.least_sharpness, "",
                 usual(in.least_sharpness, PhotoJudgement{}.least_sharpness));
  out.basis.term("working width", in.picture.width, "px", measured);
  out.basis.term("working height", in.picture.height, "px", measured);
  out.basis.term("mean gray", out.mean, "", computed);
  const PhotoJudgement usually;
  out.basis.term("least mean gray", in.least_mean, "", usual(in.least_mean, usually.least_mean));
  out.basis.term("most mean gray", in.most_mean, "", usual(in.most_mean, usually.most_mean));
  out.basis.term("clipped", out.clipped_percent, "%", computed);
  out.basis.term("most clipped", in.most_clipped_percent, "%",
                 usual(in.most_clipped_percent, usually.most_clipped_percent));
  out.basis.term("black up to", black, "", common_practice);
  out.basis.term("white from", white, "", common_practice);
  out.basis.term("long side as taken", std::max(in.taken_width, in.taken_height), "px", measured);
  out.basis.term("least long side", in.least_long_side, "px",
                 usual(in.least_long_side, usually.least_long_side));
  return out;
}

}  // namespace jambline::trade
