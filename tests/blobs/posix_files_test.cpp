#include <cerrno>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include "blobs/blob_store.h"
#include "tests/blobs/sample_blobs.h"

namespace jambline::test {
namespace {

using blobs::FolderItem;
using blobs::PosixFiles;
using blobs::system_error;

struct Disk : ::testing::Test {
  std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("jambline-files-" + std::to_string(::getpid()));
  PosixFiles files;
  void SetUp() override { ASSERT_TRUE(files.make_folder(folder)); }
  void TearDown() override { std::filesystem::remove_all(folder); }
  void make(const std::string& name, std::size_t size) {
    auto writer = files.create(folder / name).value();
    ASSERT_TRUE(writer->write(sample(1, size)));
    ASSERT_TRUE(writer->sync());
    ASSERT_TRUE(writer->close());
  }
};

TEST_F(Disk, ABlobStoreWorksOnTheRealDisk) {
  const auto store = blobs::BlobStore::open(files, folder / "blobs").value();
  const auto bytes = sample(2, 600000);
  const auto name = store->put(bytes).value();
  EXPECT_EQ(store->get(name).value(), bytes);
  EXPECT_EQ(store->scrub({}, nullptr)->blobs, 1U);
  EXPECT_GT(store->free_bytes().value(), 0U);
}

TEST_F(Disk, NewFilesAreForTheirOwnerOnly) {
  make("a", 10);
  struct stat info {};
  ASSERT_EQ(::stat((folder / "a").c_str(), &info), 0);
  EXPECT_EQ(info.st_mode & 0777U, 0600U);
  ASSERT_EQ(::stat(folder.c_str(), &info), 0);
  EXPECT_EQ(info.st_mode & 0777U, 0700U);
}

TEST_F(Disk, ListTellsFilesFoldersAndLinksApart) {
  make("b", 10);
  ASSERT_TRUE(files.make_folder(folder / "c"));
  ASSERT_EQ(::symlink("b", (folder / "a").c_str()), 0);
  EXPECT_EQ(files.list(folder).value(),
            (std::vector<FolderItem>{{"a", FolderItem::Kind::Other, 0},
                                     {"b", FolderItem::Kind::File, 10},
                                     {"c", FolderItem::Kind::Folder, 0}}));
}

TEST_F(Disk, LinksAndFoldersAreNotReadAsFiles) {
  make("b", 10);
  ASSERT_EQ(::symlink("b", (folder / "a").c_str()), 0);
  EXPECT_FALSE(files.open(folder / "a"));
  EXPECT_FALSE(files.open(folder));
  EXPECT_FALSE(files.size_bytes(folder / "a"));
}

TEST_F(Disk, AFileIsNeverMadeOverAnother) {
  make("a", 10);
  const auto again = files.create(folder / "a");
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().code, Code::FileFailed);
  EXPECT_EQ(again.error().arg("cause"), "EEXIST");
  EXPECT_FALSE(files.make_folder(folder / "a"));
}

TEST_F(Disk, MissingFilesAreNamed) {
  const auto gone = folder / "gone";
  EXPECT_EQ(files.open(gone).error().code, Code::NoSuchFile);
  EXPECT_EQ(files.remove(gone).error().code, Code::NoSuchFile);
  EXPECT_EQ(files.rename(gone, folder / "b").error().subject, gone.string());
  EXPECT_EQ(files.list(gone).error().code, Code::NoSuchFile);
  EXPECT_EQ(files.sync_folder(gone).error().code, Code::NoSuchFile);
  EXPECT_EQ(files.free_bytes(gone).error().code, Code::NoSuchFile);
  EXPECT_EQ(files.create(gone / "b").error().code, Code::NoSuchFile);
  EXPECT_EQ(files.make_folder(gone / "b").error().code, Code::NoSuchFile);
}

TEST_F(Disk, AFolderWithoutWriteRightIsReadOnly) {
  ASSERT_EQ(::chmod(folder.c_str(), 0555), 0);
  const uid_t self = ::geteuid();
  // Root may write everywhere: be nobody for this.
  if (self == 0) {
    ASSERT_EQ(::seteuid(65534), 0);
  }
  const auto refused = files.create(folder / "a");
  const auto store = blobs::BlobStore::open(files, folder / "blobs");
  if (self == 0) {
    ASSERT_EQ(::seteuid(0), 0);
  }
  ASSERT_EQ(::chmod(folder.c_str(), 0700), 0);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::ReadOnly);
  ASSERT_FALSE(store);
  EXPECT_EQ(store.error().code, Code::ReadOnly);
}

TEST(SystemError, NamesTheCauseAndSortsItByWhatAPersonCanDo) {
  EXPECT_EQ(system_error("write", "f", ENOSPC),
            (Error{Code::DiskFull, "write", "f", {{"cause", "ENOSPC"}}}));
  EXPECT_EQ(system_error("write", "f", EDQUOT).code, Code::DiskFull);
  EXPECT_EQ(system_error("create", "f", EROFS).code, Code::ReadOnly);
  EXPECT_EQ(system_error("create", "f", EACCES).code, Code::ReadOnly);
  EXPECT_EQ(system_error("create", "f", EPERM).code, Code::ReadOnly);
  EXPECT_EQ(system_error("open", "f", ENOENT).code, Code::NoSuchFile);
  EXPECT_EQ(system_error("sync", "f", EIO),
            (Error{Code::FileFailed, "sync", "f", {{"cause", "EIO"}}}));
  EXPECT_EQ(system_error("sync", "f", 4095).arg("cause"), "unknown");
}

}  // namespace
}  // namespace jambline::test
