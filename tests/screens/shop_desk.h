// A shop in a temporary folder with a real engine, a session on it, and a clock turned by hand.
#pragma once

#include <QCoreApplication>
#include <atomic>
#include <filesystem>
#include <gtest/gtest.h>
#include <memory>

#include "engine/engine.h"
#include "screens/session.h"

namespace jambline::screens {

class ShopDesk : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    if (QCoreApplication::instance()) return;
    static int count = 1;
    static char name[] = "screens_test";
    static char* names[] = {name, nullptr};
    static QCoreApplication app(count, names);
  }
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "jambline-screens-XXXXXX").string();
    folder_ = mkdtemp(pattern.data());
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, 0};  // 2026-09-21 14:13:20 UTC
    open();
  }
  void TearDown() override {
    close();
    std::filesystem::remove_all(folder_);
  }

  void open() {
    engine::Engine::Parts parts{folder_, clock_, std::make_unique<SeededRandom>(++seed_), "cart 1",
                                [this](std::shared_ptr<const engine::Snapshot> snapshot) {
                                  if (auto* session = to_.load())
                                    session->publish(std::move(snapshot));
                                }};
    auto opened = engine::Engine::open(std::move(parts));
    ASSERT_TRUE(opened) << code_name(opened.error().code);
    engine_ = std::move(*opened);
    session_ = std::make_unique<Session>(*engine_, clock_);
    QObject::connect(session_.get(), &Session::failed, session_.get(),
                     [this](const Error& error) { failed_ = error; });
    to_ = session_.get();
  }
  void close() {
    to_ = nullptr;
    if (engine_) engine_->drain();
    session_.reset();
    engine_.reset();
  }
  // Until everything that was posted is done and has come to the screens.
  void settle() {
    for (int i = 0; i < 3; ++i) {
      engine_->drain();
      QCoreApplication::processEvents();
      QCoreApplication::sendPostedEvents();
    }
  }
  void act(acts::Command command) {
    session_->post(std::move(command));
    settle();
  }
  PersonId add(const char* name, job::Role role) {
    act(acts::AddPerson{name, role});
    return session_->shop().people.back().person;
  }
  void be(const PersonId& person) {
    session_->choosePerson(QString::fromStdString(person.hex()));
    settle();
  }
  // Hood on the car, front bumper cover loose; prep, inspect and correct planned.
  void open_car() {
    acts::OpenCar open;
    open.plate = "K 41-206";
    open.color = {"G7", "deep green", "#1F4D3A"};
    open.body = job::BodyShape::FourDoorSedan;
    open.promised_ms = clock_.moment.wall_ms + 2 * 3'600'000;
    open.panels = {{job::Panel::Hood, true}, {job::Panel::FrontBumper, false}};
    open.operations = {
        {job::Stage::Prep, "", 60}, {job::Stage::Inspect, "", 60}, {job::Stage::Correct, "", 90}};
    JobId job;
    session_->post(open, [&](const Result<engine::Wrote>& wrote) {
      ASSERT_TRUE(wrote);
      job = wrote->job;
    });
    settle();
    session_->openCar(QString::fromStdString(job.hex()));
    settle();
    ASSERT_NE(session_->car(), nullptr);
  }
  const folds::CarView& car() { return *session_->car(); }

  std::string folder_;
  FakeClock clock_;
  std::uint64_t seed_ = 0;
  std::atomic<Session*> to_ = nullptr;
  std::unique_ptr<engine::Engine> engine_;
  std::unique_ptr<Session> session_;
  std::optional<Error> failed_;
};

}  // namespace jambline::screens
