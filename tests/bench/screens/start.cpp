#include "tests/bench/screens/start.h"

#include <QGuiApplication>
#include <QLocale>
#include <QStyleHints>
#include <QTimer>
#include <sys/wait.h>
#include <unistd.h>

#include "base/clock.h"
#include "device/camera.h"
#include "tests/bench/figures.h"
#include "tests/bench/screens/shops.h"
#include "tests/bench/screens/shown.h"
#include "tests/threads/screen_hand.h"

namespace jambline::bench {

namespace {
constexpr int rounds = 7;
constexpr int few_cars = 4;           // in work, in the small and in the large folder
constexpr int many_delivered = 1420;  // with few_cars: over 100,000 entries

std::filesystem::path beside_us(const char* program) {
  return std::filesystem::read_symlink("/proc/self/exe").parent_path() / program;
}

Start start(const std::vector<std::string>& words) {
  int ends[2];
  must_be(pipe(ends) == 0, "no pipe");
  std::vector<char*> argv;
  for (const auto& word : words) argv.push_back(const_cast<char*>(word.c_str()));
  argv.push_back(nullptr);
  const long long from_ns = monotonic_ns();
  const pid_t child = fork();
  must_be(child >= 0, "no child");
  if (child == 0) {
    dup2(ends[1], STDOUT_FILENO);
    close(ends[0]);
    close(ends[1]);
    execv(argv[0], argv.data());
    _exit(127);
  }
  close(ends[1]);
  FILE* said = fdopen(ends[0], "r");
  long long shown_ns = 0;
  long rss = 0;
  const bool told = std::fscanf(said, "shown %lld %ld", &shown_ns, &rss) == 2;
  std::fclose(said);
  int status = 0;
  waitpid(child, &status, 0);
  must_be(told && WIFEXITED(status) && WEXITSTATUS(status) == 0, "a start failed");
  return {static_cast<double>(shown_ns - from_ns) / 1e6, static_cast<double>(rss) / 1024};
}

double median_of(const std::vector<Start>& starts, double Start::*what) {
  std::vector<double> values;
  for (const Start& one : starts) values.push_back(one.*what);
  return median(std::move(values));
}
}  // namespace

int show_floor(int argc, char** argv, const std::filesystem::path& folder) {
  QGuiApplication gui(argc, argv);
  device::find_cameras();  // as main() does
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  SystemClock clock;
  auto program = app::Program::open(folder, clock, {});
  if (!program || !(*program)->show()) return 1;
  QQuickWindow* window = (*program)->window();
  const ScreenHand hand(**program);
  bool told = false;
  QObject::connect(window, &QQuickWindow::frameSwapped, window, [&] {
    if (told || !hand.find("FloorCard")) return;
    told = true;
    tell_shown();
    QTimer::singleShot(0, &gui, &QCoreApplication::quit);
  });
  return QGuiApplication::exec();
}

Start start_program(const std::filesystem::path& folder) {
  return start({beside_us("bench-screens"), "--show-floor", folder.string()});
}

Start start_empty_window() {
  return start({beside_us("bench-empty-window")});
}

void bench_start() {
  const BenchFolder demo, small, large;
  make_demo(demo.path(), {});
  std::printf("start_growth: %llu entries",
              static_cast<unsigned long long>(make_demo(small.path(), {0, few_cars})));
  std::printf(" against %llu, %d cars in work in both\n",
              static_cast<unsigned long long>(make_demo(large.path(), {many_delivered, few_cars})),
              few_cars);
  // The first start of a folder folds its log into the shelf; every later one finds it there.
  for (const auto* folder : {&demo, &small, &large}) start_program(folder->path());
  start_empty_window();
  std::vector<Start> of_demo, of_empty, of_small, of_large;
  for (int round = 0; round < rounds; ++round) {
    of_empty.push_back(start_empty_window());
    of_demo.push_back(start_program(demo.path()));
    of_small.push_back(start_program(small.path()));
    of_large.push_back(start_program(large.path()));
  }
  const double empty_ms = median_of(of_empty, &Start::ms);
  const double demo_ms = median_of(of_demo, &Start::ms);
  const double small_ms = median_of(of_small, &Start::ms);
  const double large_ms = median_of(of_large, &Start::ms);
  figure("start_growth", large_ms / small_ms, "ratio");
  figure("start_large_ms", large_ms, "ms");
  figure("start_small_ms", small_ms, "ms");
  figure("start_over_empty_ms", demo_ms - empty_ms, "ms");
  figure("start_demo_ms", demo_ms, "ms");
  figure("start_empty_ms", empty_ms, "ms");
  figure("demo_rss_mb", median_of(of_demo, &Start::rss_mb), "MB");
}

}  // namespace jambline::bench
