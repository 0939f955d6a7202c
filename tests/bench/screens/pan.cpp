// pan_p95_ms  frameSwapped to frameSwapped, 95th of 100, while a finger moves the map of one panel.
//
// A sedan with 200 marks on its roof, spread evenly, seen in a window of 1440 x 900 at scale 1 on
// the software renderer, zoomed in twice. The finger goes 7 dp further whenever a frame has come,
// to and fro, for 400 frames. `pan_whole_p95_ms` is the same without zoom, where the rings merge;
// `pan_empty_p95_ms`, zoomed too, is a panel without marks: what the map alone costs here.
#include "tests/bench/screens/pan.h"

#include <QGuiApplication>
#include <QLocale>
#include <random>

#include "base/clock.h"
#include "tests/bench/figures.h"
#include "tests/bench/screens/shops.h"
#include "tests/bench/screens/shown.h"
#include "tests/threads/screen_hand.h"

namespace jambline::bench {

namespace {
constexpr int marks = 200;
constexpr int frames = 400;
constexpr double step_px = 7;
constexpr double reach_px = 160;

class Bench {
 public:
  explicit Bench(app::Program& program) : program_(program), hand_(program) {}

  void prepare() {
    for (const auto& one : session().shop().people)
      if (!one.left && one.role == job::Role::Painter)
        session().choosePerson(QString::fromStdString(one.person.hex()));
    acts::OpenCar open;
    open.plate = "B 13-200";
    open.color = {"G7", "deep green", "#1F4D3A"};
    open.body = job::BodyShape::FourDoorSedan;
    open.panels = {{.panel = job::Panel::Roof}, {.panel = job::Panel::Hood}};
    open.operations = {{job::Stage::Inspect, "", 60}};
    const JobId car = post(open);
    const auto* roof = job::pattern(open.body).find(job::Panel::Roof);
    must_be(roof != nullptr, "a sedan without a roof");
    const auto box = trade::bounds(roof->shape.outline.corners);
    std::mt19937_64 random(200);
    const auto between = [&](double low, double high) {
      return low + (high - low) * static_cast<double>(random() >> 11U) / 9007199254740992.0;
    };
    for (int placed = 0; placed < marks;) {
      const trade::Point_mm at{between(box.low.x_mm, box.high.x_mm),
                               between(box.low.y_mm, box.high.y_mm)};
      if (!trade::contains(roof->shape.outline, at)) continue;
      post(acts::PlaceMark{.job = car,
                           .panel = job::Panel::Roof,
                           .x_mm = at.x_mm,
                           .y_mm = at.y_mm,
                           .defect = job::DefectKind::Nib});
      ++placed;
    }
    session().openCar(QString::fromStdString(car.hex()));
    must_be(hand_.wait_for([&] { return session().hasCar(); }), "the car does not come");
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
  screens::Session& session() { return program_.session(); }
  JobId post(acts::Command command) {
    bool done = false;
    JobId job;
    session().post(std::move(command), [&](const Result<engine::Wrote>& wrote) {
      must_be(wrote.has_value(), "an act was refused");
      job = wrote->job;
      done = true;
    });
    must_be(hand_.wait_for([&] { return done; }), "an act hangs");
    return job;
  }

  app::Program& program_;
  ScreenHand hand_;
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
