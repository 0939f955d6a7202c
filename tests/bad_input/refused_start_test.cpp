// The program on a folder that it cannot open: the window that stands in its place.
#include "app/jambline/program.h"
#include "app/jambline/refusal.h"
#include "tests/bad_input/full_disk.h"
#include "tests/bad_input/plain_words.h"
#include "tests/bad_input/shop_folder.h"
#include "tests/bad_input/shown.h"

namespace jambline::bad_input {
namespace {

class RefusedStart : public testing::Test {
 protected:
  // Starts the program as main does, and reads its refusal off the window.
  void expect_refused(const fs::path& folder, Code code, const char* picture, bool plain = false) {
    std::optional<Error> error;
    {
      std::optional<PlainPerson> person;
      if (plain) person.emplace();
      const auto program = app::Program::open(folder, shop.clock, {});
      ASSERT_FALSE(program) << picture;
      error = program.error();
    }
    EXPECT_EQ(code_name(error->code), code_name(code)) << picture;
    expect_plain(*error);
    const auto words = screens::words_of(*error);
    const auto qml = app::refusal_window(*error, folder, false);
    ASSERT_EQ(qml->rootObjects().size(), 1);
    auto* window = qobject_cast<QQuickWindow*>(qml->rootObjects().first());
    ASSERT_NE(window, nullptr);
    window->resize(412, 892);
    expect_shown(*window, words.what);
    expect_shown(*window, words.kept);
    expect_shown(*window, words.todo);
    draw(*window, picture);
  }
  void expect_whole(const std::string& bytes, const std::vector<std::string>& wanted) {
    shop.put_log(bytes);
    EXPECT_EQ(shop.entries(), wanted);
    const auto program = app::Program::open(shop.path(), shop.clock, {});
    ASSERT_TRUE(program);
    EXPECT_FALSE((*program)->engine().snapshot()->read_only);
  }
  ShopFolder shop;
};

TEST_F(RefusedStart, ADamagedLogIsLeftAsItIsAndAGoodCopyHasEverything) {
  const auto wanted = shop.entries();
  const std::string whole = test::whole_file(shop.file());
  const std::size_t index = (page_of(shop.path(), "entries_by_device") - 1) * 4096;
  const std::size_t middle = (page_of(shop.path(), "entries") - 1) * 4096;
  struct Case {
    const char* picture;
    std::string bytes;
  };
  for (const auto& [picture, bytes] :
       {Case{"damaged_header", with_random_bytes(whole, 0, 100)},
        Case{"damaged_middle", with_random_bytes(whole, middle, 4096)},
        Case{"damaged_index", with_random_bytes(whole, index, 4096)},
        Case{"cut_short", whole.substr(0, whole.size() / 2)}, Case{"empty_file", ""}}) {
    shop.put_log(bytes);
    expect_refused(shop.path(), Code::DatabaseDamaged, picture);
    EXPECT_EQ(test::whole_file(shop.file()), bytes) << picture;
    expect_whole(whole, wanted);
  }
}

TEST_F(RefusedStart, ASecondCopyOnOneFolderLeaves) {
  const auto first = app::Program::open(shop.path(), shop.clock, {});
  ASSERT_TRUE(first);
  expect_refused(shop.path(), Code::FolderInUse, "second_copy");
  EXPECT_TRUE(engine::act((*first)->engine(), acts::WriteNote{shop.shop.job, "on"}, shop.shop.ivo));
}

TEST_F(RefusedStart, AFolderThatMayNotBeRead) {
  const auto wanted = shop.entries();
  const std::string whole = test::whole_file(shop.file());
  fs::permissions(shop.file(), static_cast<fs::perms>(0));
  fs::permissions(shop.path(), static_cast<fs::perms>(0555));
  expect_refused(shop.path(), Code::ReadOnly, "not_readable", true);
  fs::permissions(shop.path(), fs::perms::owner_all);
  fs::permissions(shop.file(), static_cast<fs::perms>(0644));
  expect_whole(whole, wanted);
}

TEST_F(RefusedStart, ANewShopInAFolderThatMayNotBeWritten) {
  const log::TempFolder empty;
  fs::permissions(empty.path(), static_cast<fs::perms>(0555));
  expect_refused(empty.path(), Code::ReadOnly, "read_only_new_shop", true);
  EXPECT_TRUE(fs::is_empty(empty.path()));
}

TEST_F(RefusedStart, ANewShopOnAFullDiskIsNotHalfMade) {
  const log::TempFolder empty;
  FullDisk disk;
  disk.full(true);
  expect_refused(empty.path(), Code::DiskFull, "full_disk_new_shop");
  EXPECT_FALSE(fs::exists(empty.path() / "log.db"));
  disk.full(false);
  EXPECT_TRUE(app::Program::open(empty.path(), shop.clock, {}));
}

}  // namespace
}  // namespace jambline::bad_input
