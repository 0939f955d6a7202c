// The pictures of the demo shop: drawn, then judged and read like any others.
#include "app/demo_pictures/drawn_camera.h"

#include <gtest/gtest.h>

#include "picture/barcode.h"
#include "picture/read.h"

namespace jambline::demo {
namespace {

PictureWish wish(int view, const char* color, trade::PhotoWord word = trade::PhotoWord::Good) {
  PictureWish out;
  out.view = static_cast<job::ShotView>(view);
  out.color.hex = color;
  out.vin = std::string(17, '1');
  out.word = word;
  out.camera_time = "2026-11-24T15:40:12";
  out.offset_min = -300;
  out.seed = static_cast<std::uint64_t>(view) * 7919 + 5;
  return out;
}

constexpr int views = static_cast<int>(enum_words<job::ShotView>.size());

picture::Seen seen_of(const PictureWish& asked) {
  const auto bytes = drawn_picture(asked);
  EXPECT_TRUE(bytes);
  auto seen = picture::look_at(*bytes);
  EXPECT_TRUE(seen);
  return std::move(*seen);
}

TEST(DrawnCamera, EveryViewIsGoodInLightAndDarkColors) {
  for (int view = 0; view < views; ++view)
    for (const char* color : {"#eceae4", "#1d1f21", "#9c2b2a", "#1b2a44", "#d3a72c"})
      for (const Surface surface : {Surface::Damaged, Surface::Fresh}) {
        PictureWish asked = wish(view, color);
        asked.surface = surface;
        const auto seen = seen_of(asked);
        EXPECT_EQ(seen.judgement.word, trade::PhotoWord::Good)
            << view << " " << color << " sharpness " << seen.judgement.sharpness << " mean "
            << seen.judgement.mean << " clipped " << seen.judgement.clipped_percent;
      }
}

TEST(DrawnCamera, SpoiltOnesAreWhatTheyAreSpoiltBy) {
  for (int view = 0; view < views; ++view)
    for (const auto word : {trade::PhotoWord::Blurred, trade::PhotoWord::TooDark}) {
      EXPECT_EQ(seen_of(wish(view, "#9c2b2a", word)).judgement.word, word) << view;
    }
}

TEST(DrawnCamera, TheLabelCarriesTheCarsNumberAsABarcode) {
  PictureWish asked = wish(static_cast<int>(job::ShotView::PlateOrLabel), "#9c2b2a");
  asked.vin = "0TYABC8D5KA123456";
  const auto bytes = drawn_picture(asked);
  const auto barcodes = picture::read_barcodes(*picture::decode(*bytes, 1280));
  ASSERT_EQ(barcodes.size(), 1U);
  EXPECT_EQ(picture::vin_in(barcodes.front()), asked.vin);
}

TEST(DrawnCamera, TheFileSaysWhenAndNowAndThenWhere) {
  PictureWish asked = wish(0, "#9c2b2a");
  EXPECT_FALSE(seen_of(asked).has_location);
  asked.says_place = true;
  const auto seen = seen_of(asked);
  EXPECT_TRUE(seen.has_location);
  EXPECT_EQ(seen.taken->local, asked.camera_time);
  EXPECT_EQ(seen.taken->offset_min, -300);
}

TEST(DrawnCamera, TheSameWishGivesTheSameFile) {
  EXPECT_EQ(*drawn_picture(wish(3, "#9c2b2a")), *drawn_picture(wish(3, "#9c2b2a")));
}

}  // namespace
}  // namespace jambline::demo
