// The running program on the demo shop, opened, touched and shown on every screen, with watched
// calls. Program::open itself reads the folder on the thread that calls it, before there is a
// window (engine/engine.h: "Blocks: call before the event loop"); the rule holds from then on until
// the window goes.
#include <QGuiApplication>
#include <QTemporaryDir>
#include <cerrno>
#include <fstream>
#include <gtest/gtest.h>
#include <netinet/in.h>
#include <sqlite3.h>
#include <sys/socket.h>
#include <thread>
#include <unistd.h>

#include "app/demo/demo_shop.h"
#include "app/jambline/pictures.h"
#include "screens/inspect_view_model.h"
#include "screens/settings_view_model.h"
#include "tests/threads/screen_hand.h"
#include "tests/threads/watched_calls.h"

namespace jambline {
namespace {

std::string listed(const std::vector<std::string>& calls) {
  std::string out;
  for (const auto& call : calls) out += call + "\n";
  return out;
}

class GuiThread : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    if (QCoreApplication::instance()) return;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    static int count = 1;
    static char name[] = "threads_test";
    static char* names[] = {name, nullptr};
    static auto* const app = new QGuiApplication(count, names);  // ends with the process
    (void)app;
  }
  void SetUp() override {
    ASSERT_TRUE(folder_.isValid());
    path_ = folder_.path().toStdString();
  }
  void TearDown() override { stop_watching(); }

  void open() {
    demo::DemoOptions shop;
    shop.delivered = 30;
    clock_.moment = shop.now;
    ASSERT_TRUE(demo::make_shop(path_, shop));
    app::Options options;
    options.size = QSize(412, 892);
    auto opened = app::Program::open(path_, clock_, options);
    ASSERT_TRUE(opened);
    program_ = std::move(*opened);
    watch_this_thread(path_);
  }
  void expect_nothing_seen(const char* after) {
    EXPECT_EQ(listed(seen_calls()), "") << after;
    EXPECT_EQ(internet_sockets(), 0) << after;
  }
  std::shared_ptr<const engine::Snapshot> snapshot() { return program_->engine().snapshot(); }

  QTemporaryDir folder_;
  std::filesystem::path path_;
  FakeClock clock_;
  std::unique_ptr<app::Program> program_;
};

TEST_F(GuiThread, TheWatcherSeesFileAndSqliteCallsOfThisThreadOnly) {
  watch_this_thread(path_);
  const auto use_files = [&] {
    sqlite3* database = nullptr;
    EXPECT_EQ(sqlite3_open_v2((path_ / "x.db").c_str(), &database,
                              SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, nullptr),
              SQLITE_OK);
    EXPECT_EQ(sqlite3_exec(database, "CREATE TABLE t(a)", nullptr, nullptr, nullptr), SQLITE_OK);
    EXPECT_EQ(sqlite3_close_v2(database), SQLITE_OK);
    std::filesystem::remove(path_ / "x.db");
    std::ofstream(path_ / "plain") << "some words" << std::flush;
    EXPECT_TRUE(std::filesystem::exists(path_ / "plain"));
  };
  std::thread(use_files).join();
  EXPECT_EQ(listed(seen_calls()), "");
  use_files();
  const std::string seen = listed(seen_calls());
  for (const char* call : {"sqlite3_open_v2\n", "sqlite3_exec\n", "sqlite3_close_v2\n",
                           "open " /* SQLite's own */, "fdatasync ", "pwrite ", "write "})
    EXPECT_NE(seen.find(call), std::string::npos) << call << "is not among\n" << seen;
  EXPECT_NE(seen.find("open " + (path_ / "x.db").string()), std::string::npos) << seen;
  EXPECT_NE(seen.find((path_ / "plain").string()), std::string::npos) << seen;
  std::ifstream("/etc/hostname").get();
  EXPECT_EQ(listed(seen_calls()), seen) << "outside the folder";
}

TEST_F(GuiThread, StartsShowsAndTouchesWithoutAFileOrSqliteCallOfItsOwn) {
  open();
  bool framed = false;
  ASSERT_TRUE(program_->show());
  const auto frame = QObject::connect(program_->window(), &QQuickWindow::frameSwapped,
                                      program_->window(), [&] { framed = true; });
  ScreenHand hand(*program_);
  ASSERT_TRUE(hand.wait_for([&] { return framed; }));
  QObject::disconnect(frame);
  expect_nothing_seen("the first frame");

  for (const auto& one : snapshot()->shop->people)
    if (!one.left && one.role == job::Role::Painter)
      program_->session().choosePerson(QString::fromStdString(one.person.hex()));
  hand.wait_for_quiet();
  ASSERT_TRUE(hand.touch(hand.find("FloorCard")));
  ASSERT_TRUE(hand.wait_for([&] { return program_->session().hasCar(); }));
  expect_nothing_seen("a car is opened by a touch");

  const auto& car = *program_->session().car();
  const auto word = word_of(car.panels.front().plan.panel);
  program_->inspect().openPanel(
      QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size())));
  ASSERT_TRUE(hand.go("Floor", "Panel"));
  const auto* pattern = hand.pattern_of_panel();
  ASSERT_TRUE(pattern);
  const auto entries_before = snapshot()->own_entries;
  const auto* drawing = program_->inspect().drawing();
  const auto outline = screens::upright(*drawing).apply(drawing->shape.outline);
  const auto box = pattern->contentPx();
  int touched = 0;
  for (double x = box.left() + 8; x < box.right() && touched < 3; x += 45)
    for (double y = box.top() + 8; y < box.bottom() && touched < 3; y += 45) {
      const QPointF mm = pattern->toMm(x, y);
      if (!trade::contains(outline, {mm.x(), mm.y()})) continue;
      hand.touch(pattern->mapToScene(QPointF(x, y)));
      ++touched;
    }
  ASSERT_TRUE(hand.wait_for([&] { return snapshot()->own_entries > entries_before; }))
      << "no touch became a mark: " << qPrintable(program_->inspect().refusal());
  expect_nothing_seen("marks are placed by touches");

  program_->settings().set_look(screens::SettingsViewModel::Stall);
  program_->engine().keep_draft("thread test", "{}");
  EXPECT_EQ(program_->engine().draft("thread test"), "{}");
  std::atomic<bool> checked{false};
  program_->engine().audit([](double) {}, [&](const Result<log::Audit>&) { checked = true; });
  ASSERT_TRUE(app::visit_screens(*program_));
  ASSERT_TRUE(hand.wait_for([&] { return checked.load(); }));
  expect_nothing_seen("every screen was shown");
}

// Last in this file: from here on a socket of the internet has been there.
TEST_F(GuiThread, TheWatcherSeesAnInternetSocket) {
  const int before = internet_sockets();
  const int one = socket(AF_INET, SOCK_STREAM, 0);
  EXPECT_EQ(internet_sockets(), before + 1);
  if (one >= 0) close(one);
}

}  // namespace
}  // namespace jambline
