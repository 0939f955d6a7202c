// The whole path: device, camera, file, hash, entry; beside two processes that never rest.
#include <QCryptographicHash>
#include <algorithm>
#include <atomic>
#include <set>
#include <signal.h>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/device/camera_desk.h"
#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"

namespace jambline::device {
namespace {

using State = Camera::State;

class Busy {
 public:
  Busy() : child_(fork()) {
    if (child_ != 0) return;
    prctl(PR_SET_PDEATHSIG, SIGKILL);
    while (true) (void)getppid();
  }
  ~Busy() {
    kill(child_, SIGKILL);
    waitpid(child_, nullptr, 0);
  }

 private:
  pid_t child_;
};

struct WholePath : CameraDesk {
  log::TempFolder folder;
  FakeClock clock;
  std::unique_ptr<engine::Engine> engine;
  engine::SmallShop shop;

  void SetUp() override {
    clock.moment = {1'790'000'000'000, 1000, BootId{{1}}, 0};
    engine::Engine::Parts parts{folder.path(), clock, std::make_unique<SystemRandom>(),
                                "cart",        {},    {}};
    engine = log::must(engine::Engine::open(std::move(parts)));
    furnish(*engine, clock, shop);
  }
};

TEST_F(WholePath, FiftyPicturesBesideTwoBusyProcessesAre50FilesAnd50Entries) {
  const std::size_t before = engine->snapshot()->car->pictures.size();
  const std::size_t files_before = log::must(engine->blobs()->list()).size();
  const Busy one;
  const Busy two;
  start();
  std::set<QByteArray> taken;  // SHA-256 by Qt's own code, which the store does not use
  std::vector<std::int64_t> all_ms;
  for (int i = 0; i < 50; ++i) {
    ASSERT_TRUE(wait_until([this] { return is(State::Ready); })) << "picture " << i;
    const Answer answer = take();
    ASSERT_TRUE(answer.file) << "picture " << i << ": " << answer.cause();
    all_ms.push_back(answer.after_ms);
    taken.insert(QCryptographicHash::hash(*answer.file, QCryptographicHash::Sha256));
    const std::vector<std::uint8_t> bytes(answer.file->begin(), answer.file->end());
    std::optional<Result<engine::Wrote>> wrote;
    std::atomic<bool> kept = false;
    engine->keep_picture(std::make_shared<const std::vector<std::uint8_t>>(bytes), nullptr,
                         engine::picture_of(shop.job, bytes), shop.ivo, [&](auto result) {
                           wrote = std::move(result);
                           kept = true;
                         });
    ASSERT_TRUE(wait_until([&] { return kept.load(); }));
    ASSERT_TRUE(*wrote) << "picture " << i;
  }
  EXPECT_TRUE(wait_until([this] { return is(State::Ready); })) << "a stall was left behind";
  engine->drain();
  ASSERT_EQ(taken.size(), 50U) << "each frame is another one";
  EXPECT_EQ(left_behind(), 0);

  const auto& pictures = engine->snapshot()->car->pictures;
  ASSERT_EQ(pictures.size(), before + 50);
  std::set<QByteArray> named;
  for (const auto& picture : pictures) {
    const Hash& name = picture.facts.file;
    QFile file(QString::fromStdString(engine->blobs()->path_of(name).string()));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray hash = QCryptographicHash::hash(file.readAll(), QCryptographicHash::Sha256);
    EXPECT_EQ(hash.toHex().toStdString(), name.hex());
    if (taken.count(hash) != 0) named.insert(hash);
  }
  EXPECT_EQ(named, taken);
  EXPECT_EQ(log::must(engine->blobs()->list()).size(), files_before + 50);

  std::sort(all_ms.begin(), all_ms.end());
  std::printf("50 pictures beside two busy processes: median %lld ms, slowest %lld ms\n",
              static_cast<long long>(all_ms[25]), static_cast<long long>(all_ms.back()));
}

}  // namespace
}  // namespace jambline::device
