// jambline-record report over a shop that the engine wrote, read back by Debian's pdftotext.
#include "seal/fingerprint.h"
#include "tests/record/run.h"
#include "tests/record/shop_with_pictures.h"

namespace jambline {
namespace {

// A picture of one plain color, of a kind that Qt reads.
std::string plain_picture(char color) {
  return "P6\n64 48\n255\n" + std::string(std::size_t{64} * 48 * 3, color);
}

class RecordReport : public testing::Test {
 protected:
  RecordReport() {
    shop.act(acts::WriteNote{shop.green, "Mara says it was wet"}, shop.mara);
    picture = shop.keep(plain_picture('p'), shop.corner());
    shop.keep(plain_picture('q'), shop.hood());
    const auto log = log::EntryLog::open(shop.folder, log::OpenMode::ReadOnly);
    fingerprint = seal::fingerprint((*log)->shop());
    std::filesystem::create_directory(out);
  }
  Said report(const std::string& to, const std::string& more = {}) {
    return run("report 'K 41-206' --quiet --to " + to + shop.at() + more);
  }
  static Said text_of(const std::string& pdf) { return shell("pdftotext -layout " + pdf + " -"); }
  std::size_t files_there() const {
    std::size_t count = 0;
    for (const auto& one : std::filesystem::directory_iterator(out)) count += one.exists() ? 1 : 0;
    return count;
  }
  static void expect_nowhere(const Said& said, const std::string& words) {
    EXPECT_EQ(said.words.find(words), std::string::npos) << words << " in\n" << said.words;
  }

  ShopWithPictures shop;
  Hash picture;
  std::string fingerprint;
  std::filesystem::path out = shop.folder / "out";
  std::string file = (out / "car.pdf").string();
};

TEST_F(RecordReport, SaysWhatStandsWhoMadeItAndHowFarItIsProven) {
  const Said made = report(file);
  ASSERT_EQ(made.code, 0) << made.words;
  expect_words(made, "wrote  " + file);
  const Said said = text_of(file);
  for (const char* words :
       {"Test shop", "Job report", "K 41-206", "deep green, code G7", "America/New_York", "Made by",
        "Nib, size 2", "Ivo", "Mara", "door open", "0:06:00", "Clean", "edges and back looked at",
        "proven up to entry", "1 of "})
    expect_words(said, words);
  expect_words(said, fingerprint);
  expect_words(said, "file " + picture.hex().substr(0, 16));
  expect_words(shell("pdfinfo " + file), "612 x 792");
  // Both pictures are in it, at the size at which they came.
  const Said images = shell("pdfimages -list " + file);
  expect_words(images, "64    48");
}

TEST_F(RecordReport, A4HasMetricUnitsUnlessOthersAreAskedFor) {
  ASSERT_EQ(report(file, " --a4").code, 0);
  expect_words(shell("pdfinfo " + file), "A4");
  const std::string other = (out / "us.pdf").string();
  ASSERT_EQ(report(other, " --a4 --us").code, 0);
  EXPECT_EQ(report((out / "no.pdf").string(), " --a4 --letter").code, 2);
  EXPECT_EQ(files_there(), 2U);
}

TEST_F(RecordReport, WithoutNamesNoNameAndNoOwnWordStandsAnywhereInIt) {
  ASSERT_EQ(report(file, " --no-names").code, 0);
  const Said said = text_of(file);
  for (const char* own : {"Ivo", "Mara", "door open", "wet"}) expect_nowhere(said, own);
  expect_nowhere({0, test::whole_file(file)}, "Ivo");
  expect_words(said, "Without names");
  expect_words(said, "painter 1");
  expect_words(said, "0:06:00");
}

TEST_F(RecordReport, TheCustomersHasNeitherHoursNorNames) {
  ASSERT_EQ(report(file, " --customer --no-pictures").code, 0);
  const Said said = text_of(file);
  for (const char* own : {"Ivo", "Mara", "0:06:00", "Estimate", "Clocked", "file "})
    expect_nowhere(said, own);
  for (const char* words : {"Without hours", "Without names", "Without pictures", "K 41-206"})
    expect_words(said, words);
}

TEST_F(RecordReport, APictureThatWasChangedIsNotPrintedAndItSaysSo) {
  std::filesystem::permissions(shop.file_of(picture), std::filesystem::perms::owner_all);
  std::ofstream(shop.file_of(picture), std::ios::binary) << plain_picture('x');
  const Said made = report(file);
  EXPECT_EQ(made.code, 0) << made.words;
  expect_words(made, "1 pictures are missing or damaged here");
  expect_words(text_of(file), "is damaged here");
}

TEST_F(RecordReport, WhatCannotBeMadeIsSaidAndLeavesNothing) {
  Said said = run("report nothing --quiet --to " + file + shop.at());
  EXPECT_EQ(said.code, 2);
  expect_words(said, "nothing: this names something that does not exist");
  said = report((out / "no" / "car.pdf").string());
  EXPECT_EQ(said.code, 2);
  expect_words(said, "there is no such file or folder");
  said = report("/proc/car.pdf");
  EXPECT_EQ(said.code, 2) << said.words;
  expect_words(said, "to do: ");
  EXPECT_EQ(files_there(), 0U);
  ASSERT_EQ(report(file).code, 0);
  said = report(file);
  EXPECT_EQ(said.code, 2);
  expect_words(said, "kept");
  EXPECT_EQ(files_there(), 1U);
}

// The limit of a file's size stands for the disk that ends in the middle.
TEST_F(RecordReport, AFileThatCannotGrowLeavesNothingHalf) {
  for (const char* command : {"report", "bundle"}) {
    const Said said = shell(std::string("trap '' XFSZ; ulimit -f 4; " JAMBLINE_RECORD " ") +
                            command + " 'K 41-206' --to " + file + shop.at());
    EXPECT_EQ(said.code, 2) << command << said.words;
    expect_words(said, "to do: ");
    EXPECT_EQ(files_there(), 0U) << command;
  }
}

}  // namespace
}  // namespace jambline
