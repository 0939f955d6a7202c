// tests/bad_input/desk.h: a small shop with a session and the shell's view model on it.
#pragma once

#include <QCoreApplication>
#include <atomic>

#include "screens/session.h"
#include "screens/shell_view_model.h"
#include "tests/bad_input/shop_folder.h"
#include "tests/log/refusing_log.h"
#include "tests/screens/until.h"

namespace jambline::bad_input {

class Desk {
 public:
  Desk() {
    auto refusing = std::make_unique<log::RefusingLog>(log::open_log(folder_.path()));
    log_ = refusing.get();
    clock_.moment = {1'790'000'000'000, 1'000'000'000, BootId{{1}}, 0};
    engine::Engine::Parts parts{folder_.path(), clock_, std::make_unique<SeededRandom>(7), "cart 1",
                                [this](std::shared_ptr<const engine::Snapshot> snapshot) {
                                  if (auto* session = to_.load())
                                    session->publish(std::move(snapshot));
                                }};
    parts.log = std::move(refusing);
    engine_ = log::must(engine::Engine::open(std::move(parts)));
    engine::furnish(*engine_, clock_, shop_);
    session_ = std::make_unique<screens::Session>(*engine_, clock_);
    shell_ = std::make_unique<screens::ShellViewModel>(*session_);
    to_ = session_.get();
    session_->choose_unlocked(shop_.ivo);
    session_->openCar(QString::fromStdString(shop_.job.hex()));
    settle();
  }
  ~Desk() {
    to_ = nullptr;
    engine_->drain();
  }
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;

  void settle() {
    for (int i = 0; i < 3; ++i) {
      engine_->drain();
      QCoreApplication::processEvents();
      QCoreApplication::sendPostedEvents();
    }
  }
  void wait(const std::function<bool()>& done) { EXPECT_TRUE(until(done)); }
  const std::filesystem::path& path() const { return folder_.path(); }
  const engine::SmallShop& shop() const { return shop_; }
  engine::Engine& engine() { return *engine_; }
  screens::Session& session() { return *session_; }
  screens::ShellViewModel& shell() { return *shell_; }
  log::RefusingLog& log() { return *log_; }

 private:
  log::TempFolder folder_;
  FakeClock clock_;
  engine::SmallShop shop_;
  log::RefusingLog* log_ = nullptr;
  std::atomic<screens::Session*> to_ = nullptr;
  std::unique_ptr<engine::Engine> engine_;
  std::unique_ptr<screens::Session> session_;
  std::unique_ptr<screens::ShellViewModel> shell_;
};

}  // namespace jambline::bad_input
