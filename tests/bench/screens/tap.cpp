// tap_p95_ms  pointer release to the first frame in which the mark stands, 95th of 100.
//
// A sedan of 13 panels with 120 marks, spread by area; 200 taps, one panel after the other, each
// on a free spot; every mark is withdrawn again before the next tap, so that 120 stand. Meanwhile
// the calc lane checks the whole chain again and again, and before each release the work lane
// begins to import 500 entries that other tablets wrote. The window is 412 x 892, software
// renderer, no display: no wait for a screen's refresh is in the figure. A mark is shown when it is
// on disk, so the commit (fsync) is in it; the folder lies under TMPDIR, and `commit_ms`, one write
// and fsync there, says what that costs. `tap_work_ms` is the processor's time of the screens'
// thread within the tap, whatever else the machine does: the part of the figure that does not hang
// on its load.
#include "tests/bench/screens/tap.h"

#include <QGuiApplication>
#include <QLineF>
#include <QLocale>
#include <atomic>
#include <fcntl.h>
#include <thread>
#include <unistd.h>

#include "base/clock.h"
#include "screens/inspect_view_model.h"
#include "tests/bench/figures.h"
#include "tests/bench/screens/bench_hand.h"
#include "tests/bench/screens/shops.h"
#include "tests/bench/screens/shown.h"

namespace jambline::bench {

namespace {
constexpr int taps = 200;
constexpr std::size_t wanted_panels = 13;
constexpr int marks_before = 120;
constexpr int imported_cars = 400;  // of each of the other tablets
constexpr int tablets = 4;

long long worked_here_ns() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return now.tv_sec * 1'000'000'000LL + now.tv_nsec;
}

class Bench {
 public:
  // `packs` are imported from the back.
  Bench(app::Program& program, std::vector<std::filesystem::path> packs)
      : program_(program), hand_(program, 120), packs_(std::move(packs)) {}

  void prepare() {
    choose_panels();
    hand_.choose_painter();
    job_ = hand_.open_sedan("B 13-120", panels_,
                            {{job::Stage::Inspect, "", 60}, {job::Stage::Correct, "", 90}});
    hand_.throw_nibs(job_, panels_, marks_before);
    must_be(hand_.go("Floor", "Panel"), "the panel's screen does not come");
  }
  void keep_busy() { audit(); }
  std::vector<double> tap_all();
  std::vector<double> work_ms() const { return work_ms_; }
  int while_importing() const { return while_importing_; }
  int audits() const { return audits_; }

 private:
  screens::InspectViewModel& inspect() { return program_.inspect(); }

  void choose_panels() {
    panels_ = BenchHand::sedan().panels;
    std::sort(panels_.begin(), panels_.end(), [](const auto& a, const auto& b) {
      return trade::area_mm2(a.shape.outline) > trade::area_mm2(b.shape.outline);
    });
    panels_.resize(std::min(panels_.size(), wanted_panels));
    must_be(panels_.size() == wanted_panels, "the sedan has too few panels");
  }
  // Ends by itself when the engine goes: audits are stopped, imports run to their end.
  void audit() {
    program_.engine().audit([](double) {},
                            [this](const Result<log::Audit>& found) {
                              if (!found || stopping_) return;
                              must_be(!found->first_bad, "the chain is broken");
                              ++audits_;
                              QMetaObject::invokeMethod(
                                  &here_,
                                  [this] {
                                    if (!stopping_) audit();
                                  },
                                  Qt::QueuedConnection);
                            });
  }
  void import_next() {
    if (importing_ || packs_.empty()) return;
    importing_ = true;
    program_.engine().import_shop(packs_.back(), {}, {}, [this](const Result<log::Imported>& done) {
      must_be(done && done->refused.empty() && done->entries > 0, "an import failed");
      importing_ = false;
    });
    packs_.pop_back();
  }
  std::optional<QPointF> free_place(const job::PatternPanel& panel, trade::Point_mm& at);
  double tap_one(QPointF scene);

  app::Program& program_;
  BenchHand hand_;
  std::vector<std::filesystem::path> packs_;
  std::vector<job::PatternPanel> panels_;
  JobId job_;
  std::atomic<bool> importing_ = false;
  std::atomic<bool> stopping_ = false;
  std::atomic<int> audits_ = 0;
  QPointF last_place_;
  int while_importing_ = 0;
  std::vector<double> work_ms_;
  QObject here_;
};

// A place on the panel, away from marks, the small map, the edge of the map and the last tap (two
// quick touches of one place are a double click to Qt).
std::optional<QPointF> Bench::free_place(const job::PatternPanel& panel, trade::Point_mm& at) {
  const auto* shown = hand_.pattern_of_panel();
  must_be(shown, "no panel is shown");
  const auto* small_map = hand_.find_named("smallMap");
  const QRectF taken =
      small_map ? small_map->mapRectToScene(QRectF(0, 0, small_map->width(), small_map->height()))
                : QRectF();
  const auto outline = screens::upright(panel).apply(panel.shape.outline);
  for (int tries = 0; tries < 500; ++tries) {
    at = hand_.spot(outline);
    const QPointF on_map(shown->originX() + at.x_mm * shown->pxPerMm(),
                         shown->originY() - at.y_mm * shown->pxPerMm());
    const QPointF scene = shown->mapToScene(on_map);
    if (!QRectF(12, 12, shown->width() - 24, shown->height() - 24).contains(on_map) ||
        taken.adjusted(-4, -4, 4, 4).contains(scene) || QLineF(scene, last_place_).length() < 40)
      continue;
    const QPointF whole = scene.toPoint();
    const QPointF mm =
        shown->toMm(on_map.x() + whole.x() - scene.x(), on_map.y() + whole.y() - scene.y());
    if (trade::contains(outline, {mm.x(), mm.y()}) && inspect().markNear(mm.x(), mm.y()).isEmpty())
      return whole;
  }
  return std::nullopt;
}

double Bench::tap_one(QPointF scene) {
  const int before = inspect().marks()->count();
  long long shown_ns = 0, worked_ns = 0;
  const auto frame = QObject::connect(&hand_.window(), &QQuickWindow::frameSwapped, &here_, [&] {
    if (shown_ns != 0 || inspect().marks()->count() <= before) return;
    shown_ns = monotonic_ns();
    worked_ns = worked_here_ns();
  });
  hand_.press(scene);
  hand_.wait_for_quiet(20, 60);
  import_next();
  std::this_thread::sleep_for(std::chrono::milliseconds(5));
  const bool importing = importing_;
  const long long from_ns = monotonic_ns();
  const long long worked_before_ns = worked_here_ns();
  hand_.release(scene);
  const bool shown = hand_.wait_for([&] { return shown_ns != 0; });
  QObject::disconnect(frame);
  if (!shown)
    std::fprintf(stderr, "refusal: '%s', marks %d\n", qPrintable(inspect().refusal()), before);
  must_be(shown, "a tap gave no mark");
  if (importing) ++while_importing_;
  work_ms_.push_back(static_cast<double>(worked_ns - worked_before_ns) / 1e6);
  return static_cast<double>(shown_ns - from_ns) / 1e6;
}

std::vector<double> Bench::tap_all() {
  std::vector<double> out;
  for (std::size_t turn = 0; out.size() < taps; ++turn) {
    must_be(turn < 10 * taps, "no free place on the car");
    const auto& panel = panels_[turn % panels_.size()];
    const auto word = word_of(panel.panel);
    inspect().openPanel(QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size())));
    inspect().choose({});
    hand_.wait_for_quiet(40, 400);
    trade::Point_mm at;
    const auto scene = free_place(panel, at);
    if (!scene) continue;
    last_place_ = *scene;
    out.push_back(tap_one(*scene));
    const auto mark = MarkId::parse(inspect().chosenMark().toStdString());
    must_be(mark.has_value(), "the new mark is not the chosen one");
    const int count = inspect().marks()->count();
    hand_.post(acts::WithdrawMark{job_, MarkId{*mark}});
    must_be(hand_.wait_for([&] { return inspect().marks()->count() < count; }), "a mark stays");
  }
  stopping_ = true;
  program_.engine().stop_audit();
  return out;
}

double commit_ms(const std::filesystem::path& folder) {
  const int file = open((folder / "commit").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  must_be(file >= 0, "no file for the commit");
  std::vector<double> all;
  const std::string bytes(8192, 'x');
  for (int i = 0; i < 50; ++i)
    all.push_back(1000 * seconds([&] {
                    must_be(write(file, bytes.data(), bytes.size()) > 0 && fdatasync(file) == 0,
                            "commit");
                  }));
  close(file);
  return median(all);
}
}  // namespace

int tap(int argc, char** argv) {
  const BenchFolder folder, exported;
  const std::uint64_t entries = make_demo(folder.path(), {});
  std::vector<std::filesystem::path> packs;
  for (int i = 0; i < tablets; ++i)
    for (auto& pack : packs_of_other_tablet(folder.path(), exported.path(), imported_cars,
                                            500 + static_cast<std::uint64_t>(i)))
      packs.push_back(std::move(pack));
  must_be(packs.size() >= taps, "too little to import");
  std::printf("tap: a shop of %llu entries, %zu packs of 500 to import\n",
              static_cast<unsigned long long>(entries), packs.size());
  std::reverse(packs.begin(), packs.end());
  figure("commit_ms", commit_ms(exported.path()), "ms");

  QGuiApplication gui(argc, argv);
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  SystemClock clock;
  app::Options options;
  options.size = QSize(412, 892);
  auto program = must(app::Program::open(folder.path(), clock, options), "open the program");
  must_be(program->show(), "no window");
  std::vector<double> all, work;
  {
    Bench bench(*program, std::move(packs));
    bench.prepare();
    bench.keep_busy();
    all = bench.tap_all();
    work = bench.work_ms();
    std::printf("tap: %d taps, %d of them released during an import, %d checks of the chain done\n",
                taps, bench.while_importing(), bench.audits());
    program.reset();
  }
  std::sort(all.begin(), all.end());
  figure("tap_p95_ms", all[all.size() * 95 / 100 - 1], "ms");
  figure("tap_median_ms", all[all.size() / 2], "ms");
  figure("tap_most_ms", all.back(), "ms");
  figure("tap_work_ms", median(std::move(work)), "ms");
  return 0;
}

}  // namespace jambline::bench
