// The whole way from a device to the bytes of a picture, on the camera of virtual_camera.c.
#include "tests/device/camera_desk.h"

namespace jambline::device {
namespace {

using State = Camera::State;

TEST_F(CameraDesk, StartsShowsFramesAndStops) {
  plug_in();
  EXPECT_EQ(camera->camera_name(), "Test camera");
  EXPECT_FALSE(camera->trouble());
  EXPECT_TRUE(camera->latest_frame().isNull());
  int frames = 0;
  QObject::connect(camera.get(), &Camera::frameArrived, [&] { ++frames; });
  camera->start();
  ASSERT_TRUE(wait_until([&] { return frames >= 3 && is(State::Ready); }));
  EXPECT_EQ(camera->latest_frame().size(), QSize(1280, 720));
  EXPECT_GE(frame_number(camera->latest_frame()), 0);
  camera->stop();
  EXPECT_TRUE(is(State::Off));
  EXPECT_TRUE(camera->latest_frame().isNull());
  wait_ms(200);
  frames = 0;
  wait_ms(300);
  EXPECT_EQ(frames, 0);
  camera->start();
  EXPECT_TRUE(wait_until([this] { return is(State::Ready); }));
}

TEST_F(CameraDesk, ComingAndGoingAtAnyMomentNeverStandsStill) {
  plug_in();
  for (int round = 0; round < 40; ++round) {
    camera->start();
    wait_ms(round * 37 % 200);
    camera->stop();
    EXPECT_TRUE(is(State::Off));
    if (round % 3 == 0) wait_ms(round * 11 % 60);
  }
  camera->start();
  EXPECT_TRUE(wait_until([this] { return is(State::Ready); }));
}

TEST_F(CameraDesk, TheLiveViewIsNoFasterThanFifteenASecond) {
  start();
  int frames = 0;
  QObject::connect(camera.get(), &Camera::frameArrived, [&] { ++frames; });
  QElapsedTimer since;
  since.start();
  wait_ms(2000);
  EXPECT_GT(frames, 4);
  EXPECT_LE(frames, since.elapsed() * 16 / 1000 + 1);
}

TEST_F(CameraDesk, EachOf25PicturesShowsWhatTheCameraSawAfterTheShutter) {
  start();
  for (int i = 0; i < 25; ++i) {
    ASSERT_TRUE(
        wait_until([this] { return is(State::Ready) && !camera->latest_frame().isNull(); }));
    const int seen = frame_number(camera->latest_frame());
    const Answer answer = take();
    ASSERT_TRUE(answer.file) << answer.cause();
    EXPECT_GE(frame_number(answer.image()), seen) << "picture " << i;
    std::printf("%lld ", static_cast<long long>(answer.after_ms));
  }
  std::printf("ms from the shutter\n");
  EXPECT_EQ(left_behind(), 0);
}

TEST_F(CameraDesk, UnpluggedInMidShotIsSaidAndItComesBackWhenPluggedIn) {
  start();
  stalled.on();  // so that the picture cannot come before the plug is out
  wait_ms(100);
  const Answer answer = take([this] { unplugged.on(); });
  EXPECT_EQ(answer.cause(), "unplugged");
  EXPECT_LT(answer.after_ms, 3000);
  EXPECT_TRUE(is(State::NoCamera));
  ASSERT_TRUE(camera->trouble());
  EXPECT_EQ(camera->trouble()->arg("cause"), "unplugged");
  EXPECT_TRUE(camera->camera_name().isEmpty());
  EXPECT_EQ(take().cause(), "unplugged");
  stalled.off();
  unplugged.off();
  ASSERT_TRUE(wait_until([this] { return is(State::Ready); }));
  EXPECT_TRUE(take().file);
  EXPECT_EQ(left_behind(), 0);
}

TEST_F(CameraDesk, NoCameraIsSaid) {
  plug_in();
  unplugged.on();
  ASSERT_TRUE(wait_until([this] { return is(State::NoCamera); }));
  camera = make_camera(passing.path().toStdString());
  camera->start();
  EXPECT_TRUE(is(State::NoCamera));
  EXPECT_EQ(camera->trouble()->arg("cause"), "no camera");
  EXPECT_EQ(take().cause(), "no camera");
}

TEST_F(CameraDesk, WhereTheFileDoesNotComeTheFrameOnTheScreenIsThePicture) {
  start();
  stalled.on();
  wait_ms(200);
  ASSERT_TRUE(is(State::Ready));
  const Answer answer = take();
  ASSERT_TRUE(answer.file) << answer.cause();
  EXPECT_EQ(answer.image().size(), QSize(1280, 720));
  EXPECT_LT(answer.after_ms, 3000);
  EXPECT_EQ(left_behind(), 0);
}

TEST_F(CameraDesk, AnOldFrameIsNoPictureTheStreamIsBuiltAnew) {
  start();
  ASSERT_TRUE(wait_until([this] { return frame_number(camera->latest_frame()) > 20; }));
  const int seen = frame_number(camera->latest_frame());
  stalled.on();
  QThread::msleep(1500);  // nothing is noticed meanwhile
  const Answer answer = take([this] {
    wait_ms(1400);
    stalled.off();
  });
  ASSERT_TRUE(answer.file) << answer.cause();
  EXPECT_LT(answer.after_ms, 3000);
  EXPECT_LT(frame_number(answer.image()), seen) << "a new stream counts from zero";
  EXPECT_TRUE(wait_until([this] { return is(State::Ready); }));
}

TEST_F(CameraDesk, AStallIsSaidWithin3SecondsAndEndsWhenFramesComeAgain) {
  start();
  stalled.on();
  QThread::msleep(1500);
  const Answer answer = take();
  EXPECT_EQ(answer.cause(), "stalled");
  EXPECT_LE(answer.after_ms, 3000);
  ASSERT_TRUE(wait_until([this] { return is(State::Stalled); }));
  EXPECT_EQ(camera->trouble()->arg("cause"), "stalled");
  EXPECT_EQ(take().cause(), "stalled");
  stalled.off();
  ASSERT_TRUE(wait_until([this] { return is(State::Ready); }));
  EXPECT_FALSE(camera->trouble());
  EXPECT_TRUE(take().file);
}

TEST_F(CameraDesk, StartedAgainByHandAStalledCameraIsThereAgain) {
  start();
  stalled.on();
  ASSERT_TRUE(wait_until([this] { return is(State::Stalled); }));
  camera->restart();
  EXPECT_TRUE(is(State::Starting));
  stalled.off();
  ASSERT_TRUE(wait_until([this] { return is(State::Ready); }));
}

TEST_F(CameraDesk, AScreenThatStandsStillLosesNoCamera) {
  start();
  for (int round = 0; round < 3; ++round) {
    QThread::msleep(700);  // over 300 ms ends the stream of Qt 6.4
    ASSERT_TRUE(wait_until([this] { return is(State::Ready); })) << "round " << round;
    const Answer answer = take();
    EXPECT_TRUE(answer.file) << answer.cause();
    EXPECT_LE(answer.after_ms, 3000);
  }
}

TEST_F(CameraDesk, AListenerThatTakesLongLosesNoCamera) {
  start();
  const auto slow =
      QObject::connect(camera.get(), &Camera::frameArrived, [] { QThread::msleep(400); });
  wait_ms(3000);
  QObject::disconnect(slow);
  ASSERT_TRUE(wait_until([this] { return is(State::Ready); }));
  EXPECT_TRUE(take().file);
}

TEST_F(CameraDesk, StoppedWhileTakingItAnswersOnceAndLeavesNoFile) {
  start();
  const Answer answer = take([this] { camera->stop(); });
  EXPECT_EQ(answer.cause(), "stopped");
  EXPECT_TRUE(is(State::Off));
  EXPECT_TRUE(wait_until([this] { return left_behind() == 0; }));
  EXPECT_EQ(take().cause(), "not ready");
}

TEST_F(CameraDesk, WithoutAFolderToWriteIntoThePictureComesAllTheSame) {
  start();
  ASSERT_TRUE(passing.remove());
  const Answer answer = take();
  EXPECT_TRUE(answer.file) << answer.cause();
  EXPECT_LE(answer.after_ms, 3000);
}

TEST_F(CameraDesk, WhatAKillLeftInTheFolderGoesAndOtherFilesStay) {
  for (const char* name : {"/jambline-shot-3.jpg", "/holiday.jpg"})
    ASSERT_TRUE(QFile(passing.path() + name).open(QIODevice::WriteOnly));
  camera = make_camera(passing.path().toStdString());
  EXPECT_TRUE(wait_until([this] { return left_behind() == 1; }));
  EXPECT_TRUE(QFile::exists(passing.path() + "/holiday.jpg"));
}

}  // namespace
}  // namespace jambline::device
