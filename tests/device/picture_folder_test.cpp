#include "device/picture_folder.h"

#include "tests/device/camera_desk.h"

namespace jambline::device {
namespace {

struct FolderDesk : testing::Test {
  QTemporaryDir above;
  QString card = above.path() + "/card";
  PictureFolder folder;
  QStringList found;
  int gone = 0, back = 0;

  FolderDesk() {
    QDir().mkpath(card);
    QObject::connect(&folder, &PictureFolder::found,
                     [this](const QString& file) { found << QFileInfo(file).fileName(); });
    QObject::connect(&folder, &PictureFolder::gone, [this] { ++gone; });
    QObject::connect(&folder, &PictureFolder::back, [this] { ++back; });
  }
  void put(const QString& name, const QByteArray& bytes = "picture") {
    QFile file(card + '/' + name);
    ASSERT_TRUE(file.open(QIODevice::Append));
    file.write(bytes);
  }
  void watch() {
    folder.watch(card);
    ASSERT_TRUE(wait_until([this] { return folder.here(); }));
  }
  bool comes(const QStringList& all) {
    const bool came = wait_until([&] { return found.size() >= all.size(); });
    found.sort();
    return came && found == all;
  }
};

TEST_F(FolderDesk, NewPicturesAreFoundOnceByTheirEnding) {
  put("before.jpg");
  watch();
  for (const char* name : {"a.jpg", "b.JPEG", "c.Png", "d.txt", "e.jpg.part"}) put(name);
  EXPECT_TRUE(comes({"a.jpg", "b.JPEG", "c.Png"}));
  wait_ms(900);
  EXPECT_EQ(found.size(), 3);
}

TEST_F(FolderDesk, WhatWasThereBeforeComesWhenAskedFor) {
  put("before.jpg");
  watch();
  put("new.jpg");
  ASSERT_TRUE(comes({"new.jpg"}));
  folder.offer_all();
  EXPECT_TRUE(comes({"before.jpg", "new.jpg"}));
}

TEST_F(FolderDesk, AFileThatGrowsIsWaitedFor) {
  watch();
  QElapsedTimer since;
  since.start();
  while (since.elapsed() < 1500) {
    put("slow.jpg", "more");
    wait_ms(100);
    ASSERT_TRUE(found.isEmpty());
  }
  EXPECT_TRUE(comes({"slow.jpg"}));
}

TEST_F(FolderDesk, ACardThatIsPulledIsSaidAndGoesOnWhenItIsBack) {
  put("old.jpg");
  watch();
  ASSERT_TRUE(QDir(above.path()).rename("card", "pocket"));
  ASSERT_TRUE(wait_until([this] { return gone == 1; }));
  EXPECT_FALSE(folder.here());
  ASSERT_TRUE(QDir(above.path()).rename("pocket", "card"));
  put("new.jpg");
  ASSERT_TRUE(wait_until([this] { return back == 2; }));
  EXPECT_TRUE(comes({"new.jpg"}));
  EXPECT_EQ(gone, 1);
}

TEST_F(FolderDesk, AFolderThatIsNotThereYetIsSaidAndAllOfItIsNew) {
  QDir().rmdir(card);
  folder.watch(card);
  ASSERT_TRUE(wait_until([this] { return gone == 1; }));
  QDir().mkpath(card);
  put("first.png");
  EXPECT_TRUE(comes({"first.png"}));
}

TEST_F(FolderDesk, AnEmptyFileIsGivenTimeAndThenOffered) {
  watch();
  QElapsedTimer since;
  since.start();
  put("empty.jpg", "");
  EXPECT_TRUE(comes({"empty.jpg"}));
  EXPECT_GE(since.elapsed(), 5000);
}

TEST_F(FolderDesk, StoppedItFindsNothingMore) {
  watch();
  put("a.jpg");
  folder.stop();
  wait_ms(1200);
  EXPECT_TRUE(found.isEmpty());
  EXPECT_TRUE(folder.folder().isEmpty());
}

}  // namespace
}  // namespace jambline::device
