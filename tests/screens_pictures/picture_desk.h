// tests/screens_pictures/picture_desk.h: a shop desk with pictures in the record of one car, and
// their files in the shop's folder.
#pragma once

#include <QBuffer>
#include <QImage>
#include <QThread>

#include "blobs/hasher.h"
#include "screens/picture_store.h"
#include "tests/screens/shop_desk.h"
#include "tests/screens/until.h"

namespace jambline::screens {

class PictureDesk : public ShopDesk {
 protected:
  using Bytes = std::vector<std::uint8_t>;

  void SetUp() override {
    ShopDesk::SetUp();
    be(add("Ivo", job::Role::Manager));
    open_car();
    store_ = std::make_unique<PictureStore>(
        PictureStore::of(engine_->blobs(), std::filesystem::path(folder_) / "thumbnails"));
  }
  void TearDown() override {
    engine_->drain();
    store_.reset();
    ShopDesk::TearDown();
  }

  // A picture of its own for each number.
  static Bytes file_of(int number) {
    QImage image(64, 48, QImage::Format_RGB32);
    image.fill(QColor::fromHsv(number * 37 % 360, 120, 200).rgb());
    image.setPixelColor(number % 64, number / 64 % 48, Qt::black);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return {bytes.begin(), bytes.end()};
  }
  static Hash hash_of(const Bytes& bytes) {
    blobs::Hasher hasher;
    hasher.update(bytes);
    return *hasher.finish();
  }
  acts::TakePicture command_of(const Bytes& bytes, entries::PicturePlace place) const {
    acts::TakePicture out{session_->car()->job, {}, job::PictureFrom::Camera, place, false};
    out.facts.file = hash_of(bytes);
    out.facts.size_bytes = static_cast<std::int64_t>(bytes.size());
    out.facts.format = job::PictureFormat::Png;
    out.facts.width_px = 4000;
    out.facts.height_px = 3000;
    out.facts.sharpness = 212;
    out.facts.mean = 120;
    out.facts.clipped_percent = 2;
    return out;
  }
  using Change = std::function<void(acts::TakePicture&)>;
  QString keep(entries::PicturePlace place, const Change& change = {}) {
    const Bytes bytes = file_of(++number_);
    acts::TakePicture command = command_of(bytes, place);
    if (change) change(command);
    engine_->keep_picture(std::make_shared<const Bytes>(bytes), nullptr, command,
                          session_->person(),
                          [](const Result<engine::Wrote>& wrote) { ASSERT_TRUE(wrote); });
    settle();
    return QString::fromStdString(car().pictures.back().picture.hex());
  }
  MarkId mark_hood() {
    act(acts::PlaceMark{.job = car().job,
                        .panel = job::Panel::Hood,
                        .x_mm = 500,
                        .y_mm = 500,
                        .defect = job::DefectKind::Nib});
    return car().find(job::Panel::Hood)->marks.back().mark;
  }
  std::filesystem::path blob_path(const Hash& file) const {
    const std::string hex = file.hex();
    return std::filesystem::path(folder_) / "blobs" / hex.substr(0, 2) / hex.substr(2, 2) / hex;
  }
  bool until(const std::function<bool()>& holds) {
    return jambline::until([&] {
      settle();
      return holds();
    });
  }

  int number_ = 0;
  std::unique_ptr<PictureStore> store_;
};

}  // namespace jambline::screens
