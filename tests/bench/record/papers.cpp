// pdf_s       a report of one car with 120 pictures of 1.5 to 2 MB as a camera makes them, written
// to
//             the disk: the words, each picture hashed, read, made smaller and put in.
// pdf_mb      its file. pdf_pages: how many pages it has. pdf_grew_mb: what the process holds more.
#include <QBuffer>
#include <QGuiApplication>
#include <QImage>
#include <QTemporaryDir>
#include <cmath>

#include "app/papers/job_report_file.h"
#include "base/random.h"
#include "blobs/blob_store.h"
#include "folds/job_fold.h"
#include "tests/bench/figures.h"
#include "tests/bench/log_rows.h"
#include "tests/bench/record/record_parts.h"

namespace jambline::bench {

namespace {
constexpr int pictures = 120;
constexpr int width_px = 4000, height_px = 3000;
constexpr std::size_t least_bytes = 1'500'000, most_bytes = 2'000'000;

// A painted panel in a light, with the grain that a camera's sensor leaves.
QByteArray camera_picture(int number, SeededRandom& random) {
  QImage image(width_px, height_px, QImage::Format_RGB32);
  const double lean = 0.6 + 0.01 * number;
  std::array<std::uint8_t, 4096> grain{};
  random.fill(grain);
  for (int y = 0; y < height_px; ++y) {
    auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
    for (int x = 0; x < width_px; ++x) {
      const double sheen = 90 + 80 * std::exp(-std::pow((x - lean * y - 500) / 600.0, 2));
      const int noise = grain[static_cast<std::size_t>(x * 31 + y * 17) % grain.size()] % 12 - 6;
      const int edge = (x / 500 + y / 400) % 5 == 0 ? 25 : 0;
      const int gray = std::clamp(static_cast<int>(sheen) + noise - edge, 0, 255);
      line[x] = qRgb(gray, std::min(255, gray + 20), gray);
    }
  }
  // As good as it has to be for the size that is asked for.
  QByteArray out;
  for (int quality = 60; quality <= 97; ++quality) {
    out.clear();
    QBuffer buffer(&out);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "JPEG", quality);
    if (static_cast<std::size_t>(out.size()) >= least_bytes) break;
  }
  must_be(static_cast<std::size_t>(out.size()) <= most_bytes, "no picture of that size");
  return out;
}

struct Shop {
  SystemClock clock;
  SeededRandom random{7};
  std::unique_ptr<engine::Engine> engine;
  PersonId person;
  JobId job;

  explicit Shop(const std::filesystem::path& folder) {
    auto opened = engine::Engine::open({.folder = folder,
                                        .clock = clock,
                                        .random = std::make_unique<SeededRandom>(5),
                                        .device_name = "cart 1",
                                        .published = {}});
    must_be(opened.has_value(), "no engine");
    engine = std::move(*opened);
    act(acts::NameShop{"Test shop", "America/New_York"});
    act(acts::AddPerson{"Ivo", job::Role::Painter});
    person = engine->snapshot()->shop->people.front().person;
    acts::OpenCar car;
    car.plate = "K 41-206";
    car.color = {"G7", "deep green", "#1F4D3A"};
    car.body = job::BodyShape::FourDoorSedan;
    car.panels = {{job::Panel::Hood, true}, {job::Panel::Roof, true}, {job::Panel::Decklid, true}};
    car.operations = {{job::Stage::Inspect, "", 60}, {job::Stage::Correct, "", 90}};
    job = act(car).job;
    engine->watch(job);
    engine->drain();
  }
  engine::Wrote act(acts::Command command) {
    std::optional<Result<engine::Wrote>> out;
    engine->post(std::move(command), person,
                 [&](Result<engine::Wrote> wrote) { out = std::move(wrote); });
    engine->drain();
    must_be(out && out->has_value(), "an act was refused");
    return std::move(**out);
  }
  // 700 marks: what 20 pages of words need.
  void work() {
    for (int i = 0; i < 700; ++i) {
      const auto panel = std::array{job::Panel::Hood, job::Panel::Roof, job::Panel::Decklid}[i % 3];
      const auto& shape = job::pattern(job::BodyShape::FourDoorSedan).find(panel)->shape;
      act(acts::PlaceMark{job, panel, shape.width_mm() * (0.3 + 0.0005 * i), shape.height_mm() / 2,
                          job::DefectKind::Nib, 1 + i % 3});
    }
  }
  void keep(int number) {
    const QByteArray picture = camera_picture(number, random);
    auto bytes = std::make_shared<const std::vector<std::uint8_t>>(picture.begin(), picture.end());
    blobs::Hasher hasher;
    hasher.update(*bytes);
    acts::TakePicture command;
    command.job = job;
    command.facts.file = *hasher.finish();
    command.facts.size_bytes = picture.size();
    command.facts.width_px = width_px;
    command.facts.height_px = height_px;
    command.from = job::PictureFrom::Camera;
    command.place = {job::Stage::Inspect, {}, job::Panel::Hood, {}};
    bool kept = false;
    engine->keep_picture(bytes, nullptr, command, person,
                         [&](Result<engine::Wrote> wrote) { kept = wrote.has_value(); });
    engine->drain();
    must_be(kept, "a picture was not kept");
  }
};
}  // namespace

void bench_pdf() {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  int count = 1;
  char name[] = "bench-record";
  char* names[] = {name, nullptr};
  const QGuiApplication set_type(count, names);
  const QTemporaryDir place;
  const std::filesystem::path folder = place.path().toStdString();
  Shop shop(folder);
  shop.work();
  for (int i = 0; i < pictures; ++i) shop.keep(i);
  const auto snapshot = shop.engine->snapshot();
  const app::ReportSource source{*snapshot->car,      *snapshot->shop,
                                 *snapshot->timeline, shop.person,
                                 shop.clock.now(),    QStringLiteral("America/New_York")};
  std::optional<app::ReportMade> made;
  const std::int64_t before_kb = memory_kb("VmRSS:");
  const double pdf_s = seconds([&] {
    auto wrote = app::write_report(folder, source, {}, folder / "report.pdf", {}, {});
    must_be(wrote.has_value(), "no report");
    made = std::move(*wrote);
  });
  must_be(made->pdf.pictures == pictures, "not every picture is in it");
  figure("pdf_s", pdf_s, "s");
  figure("pdf_mb", static_cast<double>(made->pdf.bytes) / 1'000'000, "MB");
  figure("pdf_pages", made->pdf.pages, "pages");
  figure("pdf_grew_mb", static_cast<double>(memory_kb("VmRSS:") - before_kb) / 1024, "MB");
}

}  // namespace jambline::bench
