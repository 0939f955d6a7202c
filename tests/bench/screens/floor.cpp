// floor_60_ms        the Floor's list model rebuilt: 60 cars in work, sorted and worded with their
//                    forecasts known; median of the rounds.
// floor_60_bare_ms   the same without forecasts, taking turns with it: what it is held against.
// floor_60_frame_ms  somebody else acts, so that all cars are sorted anew, to the frame that shows
// it. floor_60_worked_ms all 60 forecasts, 2,000 drawn runs each, on the calc lane.
//
// A shop with 1,000 delivered cars, a window of 412 x 892 on the software
// renderer.
#include "tests/bench/screens/floor.h"

#include <QGuiApplication>
#include <QLocale>

#include "base/clock.h"
#include "screens/floor_forecasts.h"
#include "screens/floor_view_model.h"
#include "tests/bench/figures.h"
#include "tests/bench/screens/bench_hand.h"
#include "tests/bench/screens/shops.h"
#include "tests/bench/screens/shown.h"

namespace jambline::bench {

namespace {
constexpr int delivered = 1000;
constexpr int cars = 60;
constexpr int rounds = 41;
constexpr std::int64_t hour_ms = 3'600'000;

void open_cars(BenchHand& hand, app::Program& program) {
  using job::Stage;
  const auto now_ms = program.session().now().wall_ms;
  for (int i = static_cast<int>(program.session().snapshot().floor->size()); i < cars; ++i) {
    acts::OpenCar open;
    open.plate = "B 60-" + std::to_string(100 + i);
    open.color = {"G7", "deep green", "#1F4D3A"};
    open.body = static_cast<job::BodyShape>(i % 5);
    open.promised_ms = now_ms + (i % 17 - 2) * 7 * hour_ms;
    open.panels = {{.panel = job::Panel::Hood}};
    for (const auto stage : {Stage::Prep, Stage::Mask, Stage::Spray, Stage::Inspect, Stage::Correct,
                             Stage::EdgesAndJambs, Stage::Assemble, Stage::Fit, Stage::WalkAround})
      open.operations.push_back({stage, "", 15 + i % 7 * 5});
    hand.post(open);
  }
}

PersonId somebody(const screens::Session& session, job::Role role) {
  for (const auto& one : session.shop().people)
    if (one.role == role && !one.left) return one.person;
  return {};
}
}  // namespace

int floor_60(int argc, char** argv) {
  const BenchFolder folder;
  const std::uint64_t entries = make_demo(folder.path(), {.delivered = delivered});
  QGuiApplication gui(argc, argv);
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  SystemClock clock;
  app::Options options;
  options.size = QSize(412, 892);
  auto program = must(app::Program::open(folder.path(), clock, options), "open the program");
  must_be(program->show(), "no window");
  auto& session = program->session();
  auto& forecasts = program->forecasts();
  BenchHand hand(*program, 60);
  hand.choose_painter();
  open_cars(hand, *program);
  forecasts.look();
  const auto known = [&] {
    return forecasts.ready() &&
           std::all_of(session.snapshot().floor->begin(), session.snapshot().floor->end(),
                       [&](const auto& row) { return forecasts.of(row.job); });
  };
  must_be(hand.wait_for([&] { return known(); }, 60'000), "no forecasts");
  must_be(session.snapshot().floor->size() == cars, "not sixty cars");
  std::printf("floor: %llu entries, %d cars in work\n", static_cast<unsigned long long>(entries),
              cars);

  screens::FloorViewModel with(session), bare(session);
  with.follow(forecasts);
  const auto rebuilt_ms = [](screens::FloorViewModel& floor) {
    return 1000 * seconds([&] { floor.rebuild(); });
  };
  std::vector<double> with_ms, bare_ms, frame_ms;
  for (int i = 0; i < rounds; ++i) {
    with_ms.push_back(rebuilt_ms(with));
    bare_ms.push_back(rebuilt_ms(bare));
  }
  figure("floor_60_ms", median(with_ms), "ms");
  figure("floor_60_bare_ms", median(bare_ms), "ms");

  must_be(hand.go("Floor", "None"), "the floor does not come");
  const PersonId painter = somebody(session, job::Role::Painter);
  const PersonId body = somebody(session, job::Role::BodyTechnician);
  QObject here;
  for (int i = 0; i < rounds; ++i) {
    hand.wait_for_quiet();
    long long shown_ns = 0;
    const auto frame = QObject::connect(&hand.window(), &QQuickWindow::frameSwapped, &here, [&] {
      if (shown_ns == 0) shown_ns = monotonic_ns();
    });
    const long long from_ns = monotonic_ns();
    session.choose_unlocked(i % 2 ? painter : body);
    must_be(hand.wait_for([&] { return shown_ns != 0; }), "it was not shown");
    QObject::disconnect(frame);
    frame_ms.push_back(static_cast<double>(shown_ns - from_ns) / 1e6);
  }
  figure("floor_60_frame_ms", median(frame_ms), "ms");

  const auto& floor = *session.snapshot().floor;
  figure("floor_60_worked_ms", median_ms([&] {
           for (const auto& row : floor) {
             const auto worked = folds::forecast_of(row, session.shop(), forecasts.learned(),
                                                    session.now().wall_ms);
             must_be(worked || worked.error().code == Code::AlreadyDone, "no forecast");
           }
         }),
         "ms");
  return 0;
}

}  // namespace jambline::bench
