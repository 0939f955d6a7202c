// wall_p95_ms         frameSwapped to frameSwapped, 95th of 100, while the wall of a car with 5,000
//                     pictures goes past from top to end in 1,000 steps, one a frame; the small
//                     pictures are made meanwhile, none was there before. Window 1440 x 900, scale
//                     1, software renderer.
// wall_rss_mb         VmRSS after that.
// shutter_to_word_ms  from the bytes of a camera (24 megapixels) to the judgement on the GUI thread
//                     of the running program; median of seven.
#include <QGuiApplication>
#include <QLocale>

#include "base/clock.h"
#include "screens/picture_intake.h"
#include "screens/wall_view_model.h"
#include "tests/bench/figures.h"
#include "tests/bench/photo/photo_bench.h"
#include "tests/bench/screens/bench_hand.h"
#include "tests/bench/screens/shops.h"
#include "tests/bench/screens/shown.h"

namespace jambline::bench {

namespace {
constexpr int pictures = 5000;
constexpr int steps = 1000;

void scroll(BenchHand& hand) {
  auto* list = hand.find_named("wallList");
  must_be(list != nullptr, "there is no wall");
  QObject here;
  std::vector<double> all;
  long long last_ns = 0;
  QObject::connect(&hand.window(), &QQuickWindow::frameSwapped, &here, [&] {
    const long long now_ns = monotonic_ns();
    if (last_ns != 0) all.push_back(static_cast<double>(now_ns - last_ns) / 1e6);
    last_ns = now_ns;
  });
  const double from = list->property("originY").toDouble();
  for (int i = 1; i <= steps; ++i) {
    const double end = list->property("contentHeight").toDouble() - list->height();
    const std::size_t seen = all.size();
    list->setProperty("contentY", from + end * i / steps);
    must_be(hand.wait_for([&] { return all.size() > seen || i < 3; }), "no frame comes");
  }
  std::sort(all.begin(), all.end());
  must_be(all.size() > steps / 2, "frames are missing");
  figure("wall_p95_ms", all[all.size() * 95 / 100], "ms");
  figure("wall_median_ms", median(all), "ms");
}

void shutter(app::Program& program, BenchHand& hand) {
  std::vector<double> all;
  for (int i = 0; i < 7; ++i) {
    const QByteArray bytes = big_jpeg(i);
    bool judged = false;
    all.push_back(1000 * seconds([&] {
                    program.intake().look_at(bytes, [&](const Result<screens::Judged>& answer) {
                      must_be(answer.has_value(), "a picture is not judged");
                      judged = true;
                    });
                    must_be(hand.wait_for([&] { return judged; }), "no judgement comes");
                  }));
  }
  figure("shutter_to_word_ms", median(all), "ms");
}
}  // namespace

int wall(int argc, char** argv) {
  QGuiApplication gui(argc, argv);
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  const BenchFolder folder;
  make_demo(folder.path(), {.delivered = 20, .in_work = 4});
  const JobId car = add_pictures(folder.path(), pictures);
  SystemClock clock;
  app::Options options;
  options.size = QSize(1440, 900);
  auto program = must(app::Program::open(folder.path(), clock, options), "open the program");
  must_be(program->show(), "no window");
  BenchHand hand(*program, 1);
  program->session().openCar(QString::fromStdString(car.hex()));
  must_be(hand.wait_for([&] { return program->session().hasCar(); }), "the car does not come");
  must_be(hand.go("Floor", "Wall"), "the wall does not come");
  hand.wait_for_quiet();
  must_be(program->wall().pictures() == pictures, "pictures are missing");
  scroll(hand);
  figure("wall_rss_mb", static_cast<double>(rss_kb()) / 1024, "MB");
  shutter(*program, hand);
  return 0;
}

}  // namespace jambline::bench
