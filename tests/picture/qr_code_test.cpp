// What is drawn is held against the reader of the same library at several sizes (our own camera's
// way), and its quiet ground against ISO/IEC 18004 (four modules).
#include "picture/qr_code.h"

#include <gtest/gtest.h>

#include "picture/barcode.h"

namespace jambline::picture {
namespace {

const std::string invitation =
    "jambline:1?hub=" + std::string(64, 'a') + "&shop=" + std::string(32, '0') +
    "&code=0123456789abcdef0123456789abcdef&at=192.168.1.20:8740&at=[fe80::1]:8740";

TEST(QrCode, IsReadBackAsItWasWritten) {
  const auto code = qr_code(invitation);
  ASSERT_TRUE(code);
  for (const int module_px : {3, 5, 8}) {
    const QImage large = code->scaled(code->size() * module_px);
    const auto read = read_barcodes(large, Effort::Quick);
    ASSERT_EQ(read.size(), 1U) << module_px;
    EXPECT_EQ(read.front().kind, Barcode::Kind::Qr);
    EXPECT_EQ(read.front().text, invitation);
  }
}

TEST(QrCode, HasItsQuietGround) {
  const auto code = qr_code("jambline");
  ASSERT_TRUE(code);
  ASSERT_EQ(code->width(), code->height());
  for (int y = 0; y < code->height(); ++y)
    for (int x = 0; x < code->width(); ++x)
      if (x < 4 || y < 4 || x >= code->width() - 4 || y >= code->height() - 4) {
        ASSERT_EQ(code->pixel(x, y), qRgb(255, 255, 255)) << x << " " << y;
      }
  EXPECT_EQ(code->pixel(4, 4), qRgb(0, 0, 0));  // the corner of a finder pattern
}

TEST(QrCode, TooMuchOrNothingIsRefused) {
  EXPECT_EQ(qr_code(std::string(most_qr_bytes + 1, 'a')).error().code, Code::TooLarge);
  EXPECT_EQ(qr_code("").error().code, Code::Malformed);
  EXPECT_TRUE(qr_code(std::string(most_qr_bytes, 'a')));
}

}  // namespace
}  // namespace jambline::picture
