// Pictures on the disk that no entry names, and files that are not as they were kept.
#include <fstream>

#include "blobs/blob_store.h"
#include "engine/integrity.h"
#include "engine/pictures.h"
#include "screens/integrity_view_model.h"
#include "screens/leftovers_view_model.h"
#include "tests/picture/rendered_panels.h"
#include "tests/screens_pictures/picture_desk.h"

namespace jambline::screens {

namespace {
using job::Panel;
using job::Stage;

class Leftovers : public PictureDesk {
 protected:
  // As a kill between file and entry leaves it.
  Hash leave(const Bytes& bytes, const std::optional<acts::TakePicture>& meant) {
    static blobs::PosixFiles files;
    const auto blobs = blobs::BlobStore::open(files, std::filesystem::path(folder_) / "blobs");
    EXPECT_TRUE(blobs && (*blobs)->put(bytes));
    const Hash file = hash_of(bytes);
    if (meant)
      engine_->keep_draft(engine::meant_form(file), engine::meant_text(*meant, session_->person()));
    settle();
    return file;
  }
  void find() {
    left_ = std::make_unique<LeftoversViewModel>(*session_, *store_);
    left_->look();
    settle();
  }
  std::string row(int at, const char* role) {
    const auto* model = left_->rows();
    return model->data(model->index(at, 0), model->roleNames().key(role, -1))
        .toString()
        .toStdString();
  }
  void TearDown() override {
    left_.reset();
    PictureDesk::TearDown();
  }
  std::unique_ptr<LeftoversViewModel> left_;
};

TEST_F(Leftovers, WhatWasTakenAndNotKeptIsKeptWhereItWasMeantToGo) {
  const Bytes bytes = file_of(500);
  leave(bytes, command_of(bytes, {Stage::Inspect, {}, Panel::Hood, {}}));
  find();
  ASSERT_EQ(left_->count(), 1);
  EXPECT_EQ(left_->words(), "1 picture was taken but not kept");
  EXPECT_EQ(row(0, "title"), "Hood");
  EXPECT_EQ(row(0, "line").substr(0, 13), "K 41-206, Ivo");
  left_->keep(QString::fromStdString(hash_of(bytes).hex()));
  ASSERT_TRUE(until([&] { return left_->count() == 0; }));
  ASSERT_EQ(car().pictures.size(), 1U);
  EXPECT_EQ(car().pictures[0].place.panel, Panel::Hood);
  EXPECT_EQ(car().pictures[0].facts.file, hash_of(bytes));
  EXPECT_TRUE(engine_->draft(engine::meant_form(hash_of(bytes))).empty());
  find();
  EXPECT_EQ(left_->count(), 0);
}

TEST_F(Leftovers, OneOfWhichNothingIsKnownGoesToTheCarOnTheTape) {
  QByteArray jpeg;
  QBuffer buffer(&jpeg);
  buffer.open(QIODevice::WriteOnly);
  picture::PanelPicture(4).taken().save(&buffer, "JPG", 92);
  const Bytes bytes(jpeg.begin(), jpeg.end());
  leave(bytes, {});
  find();
  ASSERT_EQ(left_->count(), 1);
  EXPECT_EQ(row(0, "title"), "Where it belongs is not known");
  left_->keep(QString::fromStdString(hash_of(bytes).hex()));
  ASSERT_TRUE(until([&] { return left_->count() == 0; }));
  ASSERT_EQ(car().pictures.size(), 1U);
  EXPECT_EQ(car().pictures[0].facts.size_bytes, static_cast<std::int64_t>(bytes.size()));
  EXPECT_EQ(car().pictures[0].place.stage, Stage::Prep);  // the first that is not done
}

TEST_F(Leftovers, OneThatIsNotNeededGoesFromTheDiskAndOneInTheRecordIsNeverOffered) {
  keep({Stage::CheckIn, {}, {}, {}});
  const Bytes bytes = file_of(501);
  leave(bytes, command_of(bytes, {Stage::Inspect, {}, Panel::Hood, {}}));
  find();
  ASSERT_EQ(left_->count(), 1);
  EXPECT_TRUE(std::filesystem::exists(blob_path(hash_of(bytes))));
  left_->letGo(QString::fromStdString(hash_of(bytes).hex()));
  ASSERT_TRUE(until([&] { return left_->count() == 0; }));
  EXPECT_FALSE(std::filesystem::exists(blob_path(hash_of(bytes))));
  EXPECT_EQ(car().pictures.size(), 1U);
}

TEST_F(Leftovers, TheCheckNamesADamagedAndAMissingPictureByCarStageAndWhatItShows) {
  keep({Stage::Inspect, {}, Panel::Hood, {}});
  keep({Stage::CheckIn, {}, {}, {}});
  keep({Stage::Inspect, {}, Panel::FrontBumper, {}});
  IntegrityViewModel check(*session_);
  check.check_by([this](const std::stop_token& stop, const std::function<void(double)>& progress) {
    return engine::check_integrity(folder_, stop, progress);
  });
  const auto run = [&] {
    check.start();
    return until([&] { return check.state() != IntegrityViewModel::Running; });
  };
  ASSERT_TRUE(run());
  EXPECT_EQ(check.state(), IntegrityViewModel::Sound);
  EXPECT_FALSE(check.picturesBad());
  EXPECT_EQ(check.picturesWhat().left(10), "3 pictures");
  EXPECT_EQ(check.progress(), 1);

  std::ofstream(blob_path(car().pictures[0].facts.file), std::ios::app) << "more";
  std::filesystem::remove(blob_path(car().pictures[1].facts.file));
  ASSERT_TRUE(run());
  EXPECT_EQ(check.state(), IntegrityViewModel::Sound);  // the entries are
  EXPECT_TRUE(check.picturesBad());
  auto& named = *check.pictures();
  ASSERT_EQ(named.rowCount(), 2);
  const auto said = [&](int at, int role) {
    return named.data(named.index(at), role).toString().toStdString();
  };
  EXPECT_EQ(said(0, DetailRows::LabelRole), "K 41-206, Inspect: Hood");
  EXPECT_EQ(said(0, DetailRows::ValueRole), "damaged: not the bytes that were kept");
  EXPECT_EQ(said(1, DetailRows::LabelRole), "K 41-206, Check-in");
  EXPECT_EQ(said(1, DetailRows::ValueRole), "its file is not in this folder");
}
}  // namespace

}  // namespace jambline::screens
