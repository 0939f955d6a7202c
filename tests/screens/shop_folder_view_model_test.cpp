#include "screens/shop_folder_view_model.h"

#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class ShopFolderScreen : public ShopDesk {
 protected:
  std::filesystem::path out() const { return std::filesystem::path(folder_) / "out"; }
  std::filesystem::path exported() const {
    for (const auto& one : std::filesystem::directory_iterator(out())) return one.path();
    return {};
  }
  QString text(const std::filesystem::path& path) { return QString::fromStdString(path.string()); }
};

TEST_F(ShopFolderScreen, TheShopGoesOutAndItsEntriesAreKnownWhenTheyComeBack) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  std::filesystem::create_directory(out());
  ShopFolderViewModel screen(*session_, {});
  screen.exportTo(text(out()));
  EXPECT_TRUE(screen.busy());
  settle();
  EXPECT_FALSE(screen.busy());
  EXPECT_TRUE(screen.what().contains(QString::number(session_->snapshot().own_entries)));
  EXPECT_FALSE(screen.todo().isEmpty());
  ASSERT_TRUE(std::filesystem::exists(exported() / "README.txt"));
  screen.importFrom(QStringLiteral("file://") + text(exported()));
  settle();
  EXPECT_TRUE(screen.what().startsWith("0 entries")) << screen.what().toStdString();
}

TEST_F(ShopFolderScreen, WhatCannotBeReadIsSaidInThreeParts) {
  add("Ivo", job::Role::Painter);
  ShopFolderViewModel screen(*session_, {});
  screen.importFrom(text(out() / "nothing here"));
  settle();
  EXPECT_FALSE(screen.busy());
  EXPECT_FALSE(screen.what().isEmpty());
  EXPECT_FALSE(screen.kept().isEmpty());
  EXPECT_FALSE(screen.todo().isEmpty());
}

TEST_F(ShopFolderScreen, AnotherShopsEntriesAreRefusedAndChangeNothing) {
  be(add("Ivo", job::Role::Painter));
  std::filesystem::create_directory(out());
  ShopFolderViewModel screen(*session_, {});
  screen.exportTo(text(out()));
  settle();
  const auto other = exported();
  close();
  for (const char* file : {"log.db", "log.db-wal", "log.db-shm", "shelf.db", "device.key"})
    std::filesystem::remove(std::filesystem::path(folder_) / file);
  open();
  add("Mara", job::Role::Manager);
  const auto entries = session_->snapshot().own_entries;
  ShopFolderViewModel again(*session_, {});
  again.importFrom(text(other));
  settle();
  EXPECT_TRUE(again.what().startsWith("0 entries")) << again.what().toStdString();
  EXPECT_FALSE(again.kept().isEmpty());
  EXPECT_EQ(session_->shop().people.size(), 1U);
  EXPECT_EQ(session_->snapshot().own_entries, entries);
}

}  // namespace
}  // namespace jambline::screens
