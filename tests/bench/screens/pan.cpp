// pan_p95_ms  frameSwapped to frameSwapped, 95th of 100, while a finger moves the map of one panel.
//
// A sedan with 200 marks on its roof, spread evenly, seen in a window of 1440 x 900 at scale 1 on
// the software renderer, zoomed in twice. The finger goes 7 dp further whenever a frame has come,
// to and fro, for 400 frames. `pan_whole_p95_ms` is the same without zoom, where the rings merge;
// `pan_empty_p95_ms`, zoomed too, is a panel without marks: what the map alone costs here.
#include "tests/bench/screens/pan.h"

#include <QGuiApplication>
#include <QLocale>
#include <cmath>

#include "base/clock.h"
#include "screens/inspect_view_model.h"
#include "tests/bench/figures.h"
#include "tests/bench/screens/bench_hand.h"
#include "tests/bench/screens/shops.h"
#include "tests/bench/screens/shown.h"

namespace jambline::bench {

namespace {
constexpr int marks = 200;
constexpr int frames = 400;
constexpr double step_px = 7;
constexpr double reach_px = 160;

class Bench {
 public:
  explicit Bench(app::Program& program) : program_(program), hand_(program, 200) {}

  void prepare() {
    const auto* roof = BenchHand::sedan().find(job::Panel::Roof);
    const auto* hood = BenchHand::sedan().find(job::Panel::Hood);
    must_be(roof && hood, "a sedan without roof or hood");
    hand_.choose_painter();
    const JobId car = hand_.open_sedan("B 13-200", {*roof, *hood}, {{job::Stage::Inspect, "", 60}});
    hand_.throw_nibs(car, {*roof}, marks);
    must_be(hand_.go("Floor", "Panel"), "the panel's screen does not come");
  }

  double p95_ms(const char* panel, double zoom) {
    program_.inspect().openPanel(QString::fromLatin1(panel));
    hand_.wait_for_quiet();
    auto* map = hand_.pattern_of_panel();
    must_be(map != nullptr, "no panel is shown");
    map->fit();
    map->zoomBy(zoom, map->width() / 2, map->height() / 2);
    hand_.wait_for_quiet();
    const QPointF from = map->mapToScene(QPointF(map->width() / 2, map->height() / 2));
    std::vector<double> all;
    long long last_ns = 0;
    int moved = 0;
    const auto frame = QObject::connect(&hand_.window(), &QQuickWindow::frameSwapped, &here_, [&] {
      const long long now_ns = monotonic_ns();
      if (last_ns != 0) all.push_back(static_cast<double>(now_ns - last_ns) / 1e6);
      last_ns = now_ns;
    });
    hand_.press(from);
    for (std::size_t seen = 0; all.size() < frames; seen = all.size()) {
      ++moved;
      const double way = std::fmod(moved * step_px, 4 * reach_px);
      const double x = way < reach_px       ? way
                       : way < 3 * reach_px ? 2 * reach_px - way
                                            : way - 4 * reach_px;
      hand_.move(from + QPointF(x, x / 3));
      must_be(hand_.wait_for([&] { return all.size() > seen || moved < 4; }), "no frame comes");
    }
    QObject::disconnect(frame);
    hand_.release(from);
    hand_.wait_for_quiet();
    std::sort(all.begin(), all.end());
    return all[all.size() * 95 / 100 - 1];
  }

 private:
  app::Program& program_;
  BenchHand hand_;
  QObject here_;
};
}  // namespace

int pan(int argc, char** argv) {
  const BenchFolder folder;
  make_demo(folder.path(), {.delivered = 20, .in_work = 4});
  QGuiApplication gui(argc, argv);
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  SystemClock clock;
  app::Options options;
  options.size = QSize(1440, 900);
  auto program = must(app::Program::open(folder.path(), clock, options), "open the program");
  must_be(program->show(), "no window");
  Bench bench(*program);
  bench.prepare();
  figure("pan_empty_p95_ms", bench.p95_ms("hood", 2), "ms");
  figure("pan_whole_p95_ms", bench.p95_ms("roof", 1), "ms");
  figure("pan_p95_ms", bench.p95_ms("roof", 2), "ms");
  return 0;
}

}  // namespace jambline::bench
