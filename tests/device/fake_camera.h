// tests/device/fake_camera.h: a camera whose every move the test makes.
#pragma once

#include <utility>

#include "device/camera.h"

namespace jambline::device {

class FakeCamera : public Camera {
 public:
  State now = State::Off;
  QImage frame;
  std::optional<Error> why;
  Then then;  // of the picture that is being taken
  int starts = 0, stops = 0, restarts = 0;

  State state() const override { return now; }
  QString camera_name() const override {
    return now == State::NoCamera ? QString() : QStringLiteral("test camera");
  }
  std::optional<Error> trouble() const override { return why; }
  void start() override {
    ++starts;
    if (now == State::Off) go(State::Ready);
  }
  void stop() override {
    ++stops;
    if (now != State::NoCamera) go(State::Off);
  }
  void restart() override {
    ++restarts;
    go(State::Ready);
  }
  QImage latest_frame() const override { return frame; }
  void take(Then answer) override {
    then = std::move(answer);
    go(State::Taking);
  }

  void go(State state) {
    now = state;
    emit stateChanged();
  }
  void show(const QImage& image) {
    frame = image;
    emit frameArrived();
  }
  void answer(Result<QByteArray> file) {
    go(State::Ready);
    std::exchange(then, nullptr)(std::move(file));
  }
};

}  // namespace jambline::device
