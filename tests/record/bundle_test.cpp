// jambline-record bundle and verify, over a shop that the engine wrote, and verify_bundle.py
// beside.
#include "seal/fingerprint.h"
#include "tests/record/run.h"
#include "tests/record/shop_with_pictures.h"

namespace jambline {
namespace {

class RecordBundle : public testing::Test {
 protected:
  RecordBundle() {
    picture = shop.keep(std::string(5000, 'p'), shop.corner());
    shop.keep(std::string(3000, 'q'), shop.hood());
    const auto log = log::EntryLog::open(shop.folder, log::OpenMode::ReadOnly);
    fingerprint = seal::fingerprint((*log)->shop());
    std::filesystem::create_directory(out);
  }
  Said bundle(const std::string& to, const std::string& more = {}) {
    return run("bundle 'K 41-206' --to " + to + shop.at() + more);
  }
  std::size_t files_there() const {
    std::size_t count = 0;
    for (const auto& one : std::filesystem::directory_iterator(out)) count += one.exists() ? 1 : 0;
    return count;
  }

  ShopWithPictures shop;
  Hash picture;
  std::string fingerprint;
  std::filesystem::path out = shop.folder / "out";
  std::string file = (out / "car.zip").string();
};

TEST_F(RecordBundle, IsMadeAndCheckedByProgramAndPython) {
  const Said made = bundle(file);
  EXPECT_EQ(made.code, 0) << made.words;
  expect_words(made, "wrote  " + file);
  expect_words(made, "2 pictures");
  const Said said = run("verify --quiet " + file + " --shop " + fingerprint);
  EXPECT_EQ(said.code, 0) << said.words;
  expect_words(said, fingerprint);
  expect_words(said, "job    " + shop.green.hex());
  expect_words(said, "proven up to entry");
  const Said python =
      shell("python3 -B " JAMBLINE_SOURCE_DIR "/src/evidence/verify_bundle.py --shop " +
            fingerprint + " " + file);
  EXPECT_EQ(python.code, 0) << python.words;
  EXPECT_EQ(python.words, said.words);
  EXPECT_EQ(
      shell("python3 -B " JAMBLINE_SOURCE_DIR "/src/evidence/verify_bundle.py --shop 0123 " + file)
          .code,
      1);
  EXPECT_EQ(run("verify --quiet " + file + " --shop 0000-0000-0000-0000-0000-0000-0000-0001").code,
            1);
}

// As somebody does who has nothing but the ZIP.
TEST_F(RecordBundle, TheVerifierInItChecksItAndItsReportHasTheWordsOfShow) {
  ASSERT_EQ(bundle(file).code, 0);
  const std::string inside = (out / "inside").string();
  ASSERT_EQ(shell("python3 -m zipfile -e " + file + " " + inside).code, 0);
  const Said python = shell("python3 -B " + inside + "/verify_bundle.py " + file);
  EXPECT_EQ(python.code, 0) << python.words;
  const Said report{0, test::whole_file(inside + "/report.txt")};
  expect_words(report, run("show 'K 41-206'" + shop.at()).words);
  expect_words(report, fingerprint);
  EXPECT_EQ(test::whole_file(inside + "/pictures/" + picture.hex()), std::string(5000, 'p'));
}

TEST_F(RecordBundle, AChangedPictureIsNamed) {
  ASSERT_EQ(bundle(file).code, 0);
  std::string bytes = test::whole_file(file);
  bytes[bytes.find(std::string(100, 'p')) + 50] = 'x';
  std::ofstream(file, std::ios::binary) << bytes;
  const Said said = run("verify --quiet " + file);
  EXPECT_EQ(said.code, 1) << said.words;
  expect_words(said, "BAD    first bad: picture, picture " + picture.hex());
  expect_words(said, "to do: ");
}

TEST_F(RecordBundle, WhatCannotBeMadeIsSaidAndLeavesNothing) {
  Said said = run("bundle nothing --to " + file + shop.at());
  EXPECT_EQ(said.code, 2);
  expect_words(said, "nothing: this names something that does not exist");
  said = bundle((out / "no" / "car.zip").string());
  EXPECT_EQ(said.code, 2);
  expect_words(said, "there is no such file or folder");
  said = bundle("/proc/car.zip");
  EXPECT_EQ(said.code, 2) << said.words;
  expect_words(said, "to do: ");
  std::filesystem::remove(shop.file_of(picture));
  said = bundle(file);
  EXPECT_EQ(said.code, 2);
  expect_words(said, "picture " + picture.hex());
  expect_words(said, "--without-missing");
  EXPECT_EQ(files_there(), 0U);
  said = bundle(file, " --without-missing");
  EXPECT_EQ(said.code, 1) << said.words;
  expect_words(said, "missing picture: " + picture.hex());
  expect_words(said, "BAD    first bad: picture");
  EXPECT_EQ(bundle(file, " --without-missing").code, 2);  // it is there
  EXPECT_EQ(files_there(), 1U);
}

// On a disk of its own, with less room than the pictures take; where none may be mounted the limit
// of a file's size stands in for it.
TEST_F(RecordBundle, ADiskThatFillsOnTheWayLeavesNoHalfFile) {
  shop.keep(std::string(400'000, 'r'), shop.hood());
  const std::string record = JAMBLINE_RECORD " bundle K41-206 --to " + file + shop.at() +
                             "; echo code $?; ls -A " + out.string() + "; echo end'";
  const std::string mount = "unshare -rm sh -c 'mount -t tmpfs -o size=128k none " + out.string();
  const bool may_mount = shell(mount + "'").code == 0;
  const Said said = may_mount ? shell(mount + " && " + record)
                              : shell("sh -c 'trap \"\" XFSZ; ulimit -f 128; " + record);
  RecordProperty("small_disk", may_mount ? "tmpfs" : "RLIMIT_FSIZE");
  expect_words(said, "code 2\nend\n");
  if (may_mount) expect_words(said, "the disk is full");
  EXPECT_EQ(bundle(file).code, 0);
}

TEST_F(RecordBundle, AFolderThatMayNotBeWrittenIsSaidSo) {
  std::filesystem::permissions(
      out, std::filesystem::perms::owner_read | std::filesystem::perms::owner_exec);
  const std::string record = JAMBLINE_RECORD " bundle 'K 41-206' --to " + file + shop.at();
  const Said said = geteuid() != 0 ? shell(record)
                                   : shell(
                                         "setpriv --bounding-set=-all --inh-caps=-all "
                                         "--ambient-caps=-all --securebits=+noroot " +
                                         record);
  std::filesystem::permissions(out, std::filesystem::perms::owner_all);
  EXPECT_EQ(said.code, 2) << said.words;
  expect_words(said, "this may not be written");
  EXPECT_EQ(files_there(), 0U);
}

TEST_F(RecordBundle, HelpNamesWhatItTakes) {
  const Said said = run("bundle --help");
  EXPECT_EQ(said.code, 0);
  for (const char* word : {"car", "--to", "--folder", "--without-missing"})
    expect_words(said, word);
  EXPECT_EQ(run("bundle 'K 41-206'").code, 2);
  std::ofstream(file) << "no zip";
  const Said none = run("verify --quiet " + file);
  EXPECT_EQ(none.code, 2);
  expect_words(none, "do not fit the format");
}

}  // namespace
}  // namespace jambline
