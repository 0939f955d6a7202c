#include "tests/fuzz/picture_target.h"

#include <algorithm>
#include <cstdlib>

#include "picture/export_copy.h"
#include "picture/read.h"

namespace jambline::fuzz {

namespace {
void promised(bool kept) {
  if (!kept) std::abort();
}
}  // namespace

void run_picture(std::span<const std::uint8_t> input) {
  qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
  const auto seen = picture::look_at(input);
  const auto image = picture::decode(input, 64);
  promised(seen.has_value() == image.has_value());
  const auto copy = picture::without_location(input);
  if (!seen) return;
  promised(std::max(image->width(), image->height()) <= 64);
  promised((seen->width_px >= seen->height_px) == (image->width() >= image->height()) ||
           image->width() == image->height());
  promised(seen->width_px > 0 && seen->height_px > 0);
  if (!copy) return;
  const auto again = picture::look_at(*copy);
  promised(again.has_value() && !again->has_location);
  promised(again->width_px * std::int64_t{again->height_px} ==
           seen->width_px * std::int64_t{seen->height_px});
}

}  // namespace jambline::fuzz
