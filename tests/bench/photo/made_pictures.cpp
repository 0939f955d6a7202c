#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <fstream>

#include "app/demo/demo_shop.h"
#include "blobs/blob_store.h"
#include "blobs/hasher.h"
#include "engine/read_entry.h"
#include "log/entry_log.h"
#include "tests/bench/photo/photo_bench.h"
#include "tests/bench/screens/shops.h"

namespace jambline::bench {

namespace {
constexpr int a_time = 100;  // entries an action

QByteArray jpeg_of(const QImage& image, int quality) {
  QByteArray out;
  QBuffer buffer(&out);
  buffer.open(QIODevice::WriteOnly);
  must_be(image.save(&buffer, "jpg", quality), "a JPEG is not written");
  return out;
}

QByteArray small_jpeg(int number) {
  QImage image(640, 480, QImage::Format_RGB32);
  QPainter painter(&image);
  QLinearGradient down(0, 0, 640, 480);
  const int hue = number * 37 % 360;
  down.setColorAt(0, QColor::fromHsv(hue, 120, 220));
  down.setColorAt(1, QColor::fromHsv(hue, 160, 70));
  painter.fillRect(image.rect(), down);
  for (int i = 0; i < 14; ++i)
    painter.fillRect((number * 53 + i * 97) % 600, (number * 31 + i * 71) % 440, 12 + i * 3, 9 + i,
                     QColor::fromHsv((hue + i * 25) % 360, 200, 60 + i * 12));
  painter.end();
  return jpeg_of(image, 80);
}

job::PictureFacts facts_of(const QByteArray& bytes) {
  blobs::Hasher hasher;
  hasher.update({reinterpret_cast<const std::uint8_t*>(bytes.constData()),
                 static_cast<std::size_t>(bytes.size())});
  job::PictureFacts out;
  out.file = must(hasher.finish(), "hash");
  out.size_bytes = bytes.size();
  out.width_px = 640;
  out.height_px = 480;
  return out;
}
}  // namespace

QByteArray big_jpeg(int number) {
  static const QByteArray plain = [] {
    QImage image(6000, 4000, QImage::Format_RGB32);
    QPainter painter(&image);
    QLinearGradient down(0, 0, 6000, 4000);
    down.setColorAt(0, QColor(150, 60, 50));
    down.setColorAt(1, QColor(70, 25, 22));
    painter.fillRect(image.rect(), down);
    for (int i = 0; i < 400; ++i)
      painter.fillRect(i * 977 % 5800, i * 613 % 3900, 40 + i % 90, 20 + i % 60,
                       QColor(200 - i % 90, 120, 90 + i % 80));
    painter.end();
    std::uint32_t state = 5;
    for (int y = 0; y < image.height(); ++y) {
      auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
      for (int x = 0; x < image.width(); ++x) {
        state = state * 1664525U + 1013904223U;
        const int more = static_cast<int>(state >> 28U) - 8;
        line[x] = qRgb(qBound(0, qRed(line[x]) + more, 255), qBound(0, qGreen(line[x]) + more, 255),
                       qBound(0, qBlue(line[x]) + more, 255));
      }
    }
    return jpeg_of(image, 92);
  }();
  const QByteArray comment = QByteArray::number(number).rightJustified(8, '0');
  QByteArray out = plain;
  out.insert(2, QByteArray("\xFF\xFE\x00\x0A", 4) + comment);
  return out;
}

JobId add_pictures(const std::filesystem::path& folder, int count) {
  const auto log = must(log::EntryLog::open(folder, log::OpenMode::Write), "open the log");
  const auto key = must(seal::SigningKey::load(folder / "device.key"), "load the key");
  JobId job;
  PersonId person;
  must(log->said_after(0,
                       [&](const log::Said& said) {
                         const auto entry = engine::read_entry(said);
                         if (entry.payload.is<entries::CarOpened>()) {
                           job = entry.subject;
                           person = entry.person;
                         }
                         return true;
                       }),
       "read the log");
  blobs::PosixFiles files;
  const auto store = must(blobs::BlobStore::open(files, folder / "blobs"), "open blobs");
  SeededRandom random(5000);
  std::vector<log::Draft> drafts;
  Moment moment;
  moment.wall_ms = SystemClock().now().wall_ms;
  for (int i = 0; i < count; ++i) {
    const QByteArray bytes = small_jpeg(i);
    entries::PictureTaken taken;
    taken.picture = random.make<PictureId>();
    taken.facts = facts_of(bytes);
    taken.place.stage = static_cast<job::Stage>(i * 22 / count);
    const auto path = store->path_of(taken.facts.file);
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path, std::ios::binary).write(bytes.constData(), bytes.size());
    auto written = entries::write(entries::Payload(taken));
    drafts.push_back({job, written.kind, written.schema, std::move(written.payload)});
    if (drafts.size() < a_time && i + 1 < count) continue;
    moment.wall_ms += 1000;
    must(log->append(key, person, drafts, moment, random), "append");
    drafts.clear();
  }
  return job;
}

}  // namespace jambline::bench
