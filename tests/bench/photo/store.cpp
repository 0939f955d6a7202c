// store_ratio             a JPEG of 24 megapixels in memory until its entry is committed: judged on
//                         a scaled decode, preview made, file written, entry appended, without the
//                         time in fsync and fdatasync; against one full decode of the same bytes by
//                         libjpeg-turbo (tjDecompress2). Medians of nine rounds that take turns.
// store_ratio_with_fsync  the same with the waiting for the disk in it.
// fsync_ms                what that is, a picture: of file, folders, log and draft, on all threads.
#include <QGuiApplication>
#include <atomic>
#include <chrono>
#include <future>
#include <sys/syscall.h>
#include <turbojpeg.h>
#include <unistd.h>

#include "base/clock.h"
#include "engine/engine.h"
#include "picture/read.h"
#include "picture/thumbnails.h"
#include "tests/bench/figures.h"
#include "tests/bench/photo/photo_bench.h"
#include "tests/bench/screens/shops.h"

namespace {
std::atomic<long long> sync_ns{0};

int timed(long call, int file) {
  const auto start = std::chrono::steady_clock::now();
  const auto result = static_cast<int>(syscall(call, file));
  sync_ns += (std::chrono::steady_clock::now() - start).count();
  return result;
}
}  // namespace

// In front of the C library's: SQLite and our own files call these.
extern "C" int fsync(int file) {
  return timed(SYS_fsync, file);
}
extern "C" int fdatasync(int file) {
  return timed(SYS_fdatasync, file);
}

namespace jambline::bench {

namespace {
constexpr int rounds = 9;
using Bytes = std::vector<std::uint8_t>;

double full_decode_ms(const Bytes& bytes) {
  return 1000 * seconds([&] {
           const tjhandle reader = tjInitDecompress();
           int width = 0, height = 0, subsampling = 0, colors = 0;
           must_be(tjDecompressHeader3(reader, bytes.data(), bytes.size(), &width, &height,
                                       &subsampling, &colors) == 0,
                   "no header");
           std::vector<std::uint8_t> pixels(static_cast<std::size_t>(width) *
                                            static_cast<std::size_t>(height) * 4);
           must_be(tjDecompress2(reader, bytes.data(), bytes.size(), pixels.data(), width, 0,
                                 height, TJPF_BGRX, 0) == 0,
                   "no pixels");
           tjDestroy(reader);
         });
}

void store_one(engine::Engine& engine, const PersonId& person, const JobId& job,
               const std::shared_ptr<const Bytes>& bytes) {
  QImage small;
  const auto seen = must(picture::look_at(*bytes, &small), "look at it");
  must_be(!picture::preview_of(small).empty(), "no preview");
  acts::TakePicture take;
  take.job = job;
  take.facts.file = seen.file;
  take.facts.size_bytes = static_cast<std::int64_t>(seen.size_bytes);
  take.facts.width_px = seen.width_px;
  take.facts.height_px = seen.height_px;
  take.facts.word = seen.judgement.word;
  take.kept_though_poor = seen.judgement.word != trade::PhotoWord::Good;
  std::promise<bool> kept;
  engine.keep_picture(bytes, nullptr, take, person,
                      [&](const auto& wrote) { kept.set_value(!!wrote); });
  must_be(kept.get_future().get(), "it is not kept");
}
}  // namespace

int store(int argc, char** argv) {
  QGuiApplication gui(argc, argv);
  const BenchFolder folder;
  make_demo(folder.path(), {.delivered = 20, .in_work = 4});
  SystemClock clock;
  auto engine = must(
      engine::Engine::open({folder.path(), clock, std::make_unique<SystemRandom>(), "bench", {}}),
      "open the engine");
  engine->drain();
  const PersonId person = engine->snapshot()->shop->people.front().person;
  const JobId job = engine->snapshot()->floor->front().job;
  std::vector<double> decode_ms, store_ms, waited_ms;
  for (int round = 0; round < rounds; ++round) {
    const QByteArray jpeg = big_jpeg(round);
    const auto bytes = std::make_shared<const Bytes>(jpeg.begin(), jpeg.end());
    decode_ms.push_back(full_decode_ms(*bytes));
    sync_ns = 0;
    store_ms.push_back(1000 * seconds([&] { store_one(*engine, person, job, bytes); }));
    waited_ms.push_back(static_cast<double>(sync_ns) / 1e6);
  }
  const double decode = median(decode_ms), stored = median(store_ms), waited = median(waited_ms);
  std::vector<double> without;
  for (std::size_t i = 0; i < store_ms.size(); ++i) without.push_back(store_ms[i] - waited_ms[i]);
  figure("store_ratio", median(without) / decode, "times a full decode, fsync left out");
  figure("store_ratio_with_fsync", stored / decode, "times a full decode, fsync in it");
  figure("fsync_ms", waited, "ms a picture");
  figure("store_ms", stored, "ms, fsync in it");
  figure("full_decode_ms", decode, "ms");
  return 0;
}

}  // namespace jambline::bench
