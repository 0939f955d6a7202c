// tests/screens_pictures/shot_desk.h: a shop desk with a camera that the test moves, and pictures
// that are good or poor by the rules of src/picture (rendered panels of our own).
#pragma once

#include <QBuffer>
#include <QFile>
#include <QThread>

#include "screens/shot_view_model.h"
#include "screens/shots_view_model.h"
#include "tests/device/fake_camera.h"
#include "tests/picture/rendered_panels.h"
#include "tests/screens/shop_desk.h"
#include "tests/screens/until.h"

namespace jambline::screens {

class ShotDesk : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    intake_ = std::make_unique<PictureIntake>(*session_, folder_ + "/thumbnails");
    shot_ = std::make_unique<ShotViewModel>(*session_, *intake_, camera_);
    shots_ = std::make_unique<ShotsViewModel>(*session_, *intake_);
    QObject::connect(shot_.get(), &ShotViewModel::finished, shot_.get(), [this] { ++finished_; });
  }
  void TearDown() override {
    engine_->drain();
    shots_.reset();
    shot_.reset();
    intake_.reset();
    ShopDesk::TearDown();
  }

  // A sedan with hood and doors in the job and these stages planned.
  void open_at(std::vector<job::Stage> stages,
               std::vector<job::Panel> panels = {job::Panel::Hood, job::Panel::LeftFrontDoor}) {
    be(add("Ivo", job::Role::Manager));
    acts::OpenCar open;
    open.plate = "K 41-206";
    open.color = {"G7", "deep green", "#1F4D3A"};
    open.body = job::BodyShape::FourDoorSedan;
    for (const auto panel : panels) open.panels.push_back({panel, true});
    for (const auto stage : stages) open.operations.push_back({stage, "", 60});
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

  static QByteArray file_of(const QImage& image, const char* format = "JPG") {
    QByteArray out;
    QBuffer buffer(&out);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, format, 92);
    return out;
  }
  static QByteArray good(unsigned seed = 3) { return file_of(picture::PanelPicture(seed).taken()); }
  static QByteArray poor(unsigned seed = 3) {
    return file_of(picture::blurred(picture::PanelPicture(seed).taken(), 16));
  }
  QUrl put(const QString& name, const QByteArray& bytes) {
    const QString path = QString::fromStdString(folder_) + '/' + name;
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    EXPECT_EQ(file.write(bytes), bytes.size());
    return QUrl::fromLocalFile(path);
  }

  bool until(const std::function<bool()>& holds) {
    return jambline::until([&] {
      settle();
      return holds();
    });
  }
  bool at(ShotViewModel::Step step) {
    return until([this, step] { return shot_->step() == step; });
  }
  // One press of the main act, answered by the camera with these bytes.
  void shoot(const QByteArray& bytes) {
    ASSERT_TRUE(shot_->mainAct() == ShotViewModel::Main::Shutter ||
                shot_->mainAct() == ShotViewModel::Main::Again);
    shot_->act();
    ASSERT_TRUE(camera_.then);
    camera_.answer(bytes);
    ASSERT_TRUE(until([this] { return shot_->step() != ShotViewModel::Step::Busy; }));
  }
  void front_on(job::Stage stage) {
    shot_->setFront(true);
    shots_->choose(QString::fromStdString(std::string(word_of(stage))));
    shot_->open(shots_->stage(), shots_->nextKey());
  }
  const std::vector<folds::PictureView>& pictures() { return car().pictures; }

  device::FakeCamera camera_;
  std::unique_ptr<PictureIntake> intake_;
  std::unique_ptr<ShotViewModel> shot_;
  std::unique_ptr<ShotsViewModel> shots_;
  int finished_ = 0;
};

}  // namespace jambline::screens
