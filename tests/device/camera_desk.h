// tests/device/camera_desk.h: the switched camera of virtual_camera.c, and waiting with events.
#pragma once

#include <QCoreApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QImage>
#include <QTemporaryDir>
#include <QThread>
#include <functional>
#include <gtest/gtest.h>

#include "device/camera.h"
#include "tests/screens/until.h"

namespace jambline::device {

inline bool wait_until(const std::function<bool()>& holds, int most_ms = 10000) {
  return until(holds, most_ms);
}

inline void wait_ms(int ms) {
  (void)wait_until([] { return false; }, ms);
}

class Switch {
 public:
  explicit Switch(const char* name)
      : file_(qEnvironmentVariable("JAMBLINE_TEST_CAMERA") + '/' + name) {
    off();
  }
  ~Switch() { off(); }
  void on() { EXPECT_TRUE(QFile(file_).open(QIODevice::WriteOnly)); }
  void off() { QFile::remove(file_); }

 private:
  QString file_;
};

// The number that virtual_camera.c wrote into a frame; -1 when there is none.
inline int frame_number(const QImage& image) {
  if (image.width() != 1280) return -1;
  int number = 0;
  for (int bit = 0; bit < 16; ++bit)
    number = number * 2 + (qGray(image.pixel(bit * 32 + 16, 16)) > 128 ? 1 : 0);
  return number;
}

struct Answer {
  int times = 0;
  std::int64_t after_ms = 0;
  Result<QByteArray> file = fail(Code::NotYet, "", "");
  QImage image() const { return file ? QImage::fromData(*file, "JPG") : QImage(); }
  std::string cause() const { return file ? "" : std::string(file.error().arg("cause")); }
};

struct CameraDesk : testing::Test {
  QTemporaryDir passing;
  Switch unplugged{"unplugged"};
  Switch stalled{"stalled"};
  std::unique_ptr<Camera> camera;

  void plug_in() {
    camera = make_camera(passing.path().toStdString());
    ASSERT_TRUE(wait_until([this] { return camera->state() == Camera::State::Off; }));
  }
  void start() {
    plug_in();
    camera->start();
    ASSERT_TRUE(wait_until([this] { return is(Camera::State::Ready); }));
  }
  bool is(Camera::State state) const { return camera->state() == state; }

  // Presses the shutter; `then` is run at once after it.
  Answer take(const std::function<void()>& then = {}) {
    Answer answer;
    QElapsedTimer since;
    since.start();
    camera->take([&](Result<QByteArray> file) {
      ++answer.times;
      answer.after_ms = since.elapsed();
      answer.file = std::move(file);
    });
    EXPECT_EQ(answer.times, 0) << "answered within the call";
    if (then) then();
    EXPECT_TRUE(wait_until([&] { return answer.times > 0; }, 4000));
    wait_ms(50);
    EXPECT_EQ(answer.times, 1);
    return answer;
  }
  int left_behind() const {
    return static_cast<int>(QDir(passing.path()).entryList(QDir::Files).size());
  }
};

}  // namespace jambline::device
