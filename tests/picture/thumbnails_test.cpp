// Thumbnails and previews: what is kept may be damaged or gone at any time.
#include "picture/thumbnails.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>

#include "picture/read.h"
#include "tests/picture/photo_set.h"
#include "tests/picture/sample_files.h"

namespace jambline::picture {
namespace {

namespace fs = std::filesystem;

// Mean difference of a channel; what is made anew is made of another JPEG.
double apart(const QImage& a, const QImage& b) {
  double sum = 0;
  for (int y = 0; y < a.height(); ++y)
    for (int x = 0; x < a.width() * 4; ++x)
      sum += std::abs(a.constScanLine(y)[x] - b.constScanLine(y)[x]);
  return sum / (a.width() * a.height() * 4.0);
}

class ThumbnailsTest : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = (fs::temp_directory_path() / "jambline-picture-XXXXXX").string();
    ASSERT_TRUE(mkdtemp(name.data()));
    folder_ = name;
    auto store = blobs::BlobStore::open(files_, folder_ / "blobs");
    ASSERT_TRUE(store);
    store_ = std::move(*store);
    file_ = *store_->put(as_jpeg(source_picture(3)));
  }
  void TearDown() override { fs::remove_all(folder_); }

  fs::path cache() const { return folder_ / "cache"; }
  fs::path kept(const char* ending) const { return cache() / (file_.hex() + ending); }

  blobs::PosixFiles files_;
  fs::path folder_;
  std::unique_ptr<blobs::BlobStore> store_;
  Hash file_;
};

TEST_F(ThumbnailsTest, ASideIsRoundedUpAndKept) {
  const Thumbnails thumbnails(*store_, cache());
  EXPECT_EQ(thumbnails.get(file_, 161)->size(), QSize(320, 240));
  EXPECT_TRUE(fs::exists(kept("-320.jpg")));
  EXPECT_EQ(thumbnails.get(file_, 1)->size(), QSize(160, 120));
  EXPECT_EQ(thumbnails.get(file_, 9999)->size(), QSize(1280, 960));
}

TEST_F(ThumbnailsTest, WhatIsKeptNeedsNoOriginal) {
  const Thumbnails thumbnails(*store_, cache());
  QImage small;
  ASSERT_TRUE(look_at(*store_->get(file_), &small));
  thumbnails.keep(file_, small);
  ASSERT_TRUE(store_->remove(file_));
  EXPECT_EQ(thumbnails.get(file_, 160)->size(), QSize(160, 120));
  EXPECT_EQ(thumbnails.get(file_, 1280)->size(), QSize(1280, 960));
  thumbnails.forget_all();
  EXPECT_EQ(thumbnails.get(file_, 160).error().code, Code::NoSuchFile);
}

TEST_F(ThumbnailsTest, ADeletedOrDamagedCacheIsMadeAnew) {
  const Thumbnails thumbnails(*store_, cache());
  const QImage first = *thumbnails.get(file_, 320);
  for (int round = 0; round < 3; ++round) {
    if (round == 0) fs::remove_all(cache());
    if (round == 1) fs::resize_file(kept("-320.jpg"), 900);
    if (round == 2) {
      std::fstream file(kept("-320.jpg"), std::ios::in | std::ios::out | std::ios::binary);
      file.seekp(1500);
      file.put('\x13');
    }
    const auto again = thumbnails.get(file_, 320);
    ASSERT_TRUE(again) << round;
    EXPECT_EQ(again->size(), first.size()) << round;
    EXPECT_TRUE(fs::exists(kept("-320.jpg"))) << round;
    EXPECT_LT(apart(*thumbnails.get(file_, 320), first), 2) << round;
  }
  for (const auto& item : fs::directory_iterator(cache()))
    EXPECT_EQ(item.path().extension(), ".jpg") << item.path();
}

TEST_F(ThumbnailsTest, ACacheThatCannotBeWrittenCostsNoPicture) {
  std::ofstream(cache()) << "a file where the folder should be";
  const Thumbnails thumbnails(*store_, cache());
  EXPECT_EQ(thumbnails.get(file_, 160)->size(), QSize(160, 120));
  EXPECT_TRUE(thumbnails.preview(file_));
}

TEST_F(ThumbnailsTest, APreviewIsSmallEvenOfNoise) {
  QImage noise(3000, 2000, QImage::Format_RGB32);
  Draw draw(1);
  for (int y = 0; y < noise.height(); ++y)
    for (int x = 0; x < noise.width(); ++x)
      noise.setPixel(x, y, static_cast<QRgb>(draw.whole(0, 0xffffff)));
  const Thumbnails thumbnails(*store_, cache());
  for (const File& original : {encoded(noise, "jpeg", 95), as_jpeg(source_picture(3)),
                               as_jpeg(source_picture(panels + 10))}) {
    const auto preview = thumbnails.preview(*store_->put(original));
    ASSERT_TRUE(preview);
    EXPECT_LE(preview->size(), 60'000U);
    EXPECT_GE(preview->size(), 10'000U);
    const auto image = decode(*preview, 5000);
    ASSERT_TRUE(image);
    EXPECT_LE(std::max(image->width(), image->height()), 1280);
    EXPECT_GE(std::max(image->width(), image->height()), 400);
  }
}

TEST_F(ThumbnailsTest, APreviewSaysNeitherWhenNorWhere) {
  const File file = with_facts(as_jpeg(source_picture(2)), [](Exiv2::Image& image) {
    image.exifData()["Exif.Photo.DateTimeOriginal"] = "2026:11:24 15:40:12";
    image.exifData()["Exif.GPSInfo.GPSLatitude"] = "48/1 8/1 0/1";
  });
  const Thumbnails thumbnails(*store_, cache());
  const File preview = *thumbnails.preview(*store_->put(file));
  const auto seen = look_at(preview);
  ASSERT_TRUE(seen);
  EXPECT_FALSE(seen->taken);
  EXPECT_FALSE(seen->has_location);
  EXPECT_FALSE(contains(preview, "2026:11:24"));
}

}  // namespace
}  // namespace jambline::picture
