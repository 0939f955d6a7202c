#include "log/shop_folder.h"

#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

#include "base/json.h"
#include "seal/fingerprint.h"
#include "tests/log/log_folder.h"

namespace jambline::log {
namespace {

namespace fs = std::filesystem;

// A shop of two devices, the second one's entries over one pack long, exported.
struct ExportedShop {
  TempFolder one_folder, two_folder, out;
  std::unique_ptr<EntryLog> one = small_log(one_folder.path(), 3);
  fs::path folder = out.path() / "shop";

  explicit ExportedShop(int notes = 5) {
    SeededRandom random(3);
    const Draft admit{{},
                      seal::kind::device_admitted,
                      1,
                      to_json(seal::DeviceAdmitted{key_number(2).key(), "tablet two", false})};
    must(one->append(key_number(1), {}, {&admit, 1}, at(9000), random));
    auto two = open_log(two_folder.path());
    must(two->add(entries_of(*one)));
    for (int i = 0; i < notes; i += 100) {
      std::vector<Draft> drafts(static_cast<std::size_t>(std::min(100, notes - i)), note("more"));
      must(two->append(key_number(2), {}, drafts, at(10000 + i), random));
    }
    must(one->add(entries_of(*two)));
    must(export_shop(*one, folder, {}, {}));
  }
};

std::vector<std::string> frozen(EntryLog& log) {
  std::vector<std::string> out;
  for (const auto& entry : entries_of(log)) out.push_back(seal::encode(entry));
  std::sort(out.begin(), out.end());
  return out;
}

TEST(ShopFolder, WhatWasExportedComesBackByteForByte) {
  ExportedShop shop(1203);
  int files = 0;
  for (const auto& file : fs::directory_iterator(shop.folder / "entries")) {
    ++files;
    EXPECT_LE(file.file_size(), 1U << 20U);
  }
  EXPECT_EQ(files, 4);
  EXPECT_NE(test::whole_file(shop.folder / "README.txt").find(seal::fingerprint(shop.one->shop())),
            std::string::npos);
  const TempFolder back;
  auto log = open_log(back.path());
  double last = 0;
  const auto imported = must(import_shop(*log, shop.folder, {}, [&last](double part) {
    EXPECT_GE(part, last);
    last = part;
  }));
  EXPECT_EQ(last, 1.0);
  EXPECT_TRUE(imported.refused.empty());
  EXPECT_EQ(imported.entries, 1208U);
  EXPECT_EQ(frozen(*log), frozen(*shop.one));
  EXPECT_FALSE(audit(back.path()).first_bad);
  EXPECT_EQ(must(import_shop(*log, shop.folder, {}, {})).entries, 0U);
}

TEST(ShopFolder, NothingIsWrittenOver) {
  ExportedShop shop;
  EXPECT_EQ(export_shop(*shop.one, shop.folder, {}, {}).error().code, Code::AlreadyDone);
}

TEST(ShopFolder, ABadFileStopsOnlyWhatDependsOnIt) {
  ExportedShop shop;
  const std::string second = key_number(2).device().hex();
  for (const auto& file : fs::directory_iterator(shop.folder / "entries")) {
    if (!file.path().filename().string().starts_with(second)) continue;
    std::string bytes = test::whole_file(file.path());
    bytes[bytes.size() - 3] ^= 1;
    std::ofstream(file.path(), std::ios::binary) << bytes;
  }
  std::ofstream(shop.folder / "entries" / "zz-1-2.jle") << "no entries";
  std::ofstream(shop.folder / "entries" / "notes.txt") << "left alone";
  const TempFolder back;
  auto log = open_log(back.path());
  const auto imported = must(import_shop(*log, shop.folder, {}, {}));
  EXPECT_EQ(imported.entries, 5U) << "the founder's";
  ASSERT_EQ(imported.refused.size(), 2U);
  EXPECT_FALSE(audit(back.path()).first_bad);
}

TEST(ShopFolder, AnotherFingerprintIsRefused) {
  ExportedShop shop;
  const TempFolder back;
  auto log = open_log(back.path());
  ShopId other = shop.one->shop();
  other.bytes[0] ^= 1U;
  const auto imported = must(import_shop(*log, shop.folder, {}, {}, other));
  EXPECT_EQ(imported.entries, 0U);
  ASSERT_FALSE(imported.refused.empty());
  EXPECT_EQ(imported.refused.front().second.code, Code::WrongShop);
  EXPECT_EQ(log->shop(), ShopId{});
}

TEST(ShopFolder, AMissingPackLeavesAGapAndNothingAfterIt) {
  ExportedShop shop(1203);
  const std::string second = key_number(2).device().hex();
  fs::remove(shop.folder / "entries" / (second + "-501-1000.jle"));
  const TempFolder back;
  auto log = open_log(back.path());
  const auto imported = must(import_shop(*log, shop.folder, {}, {}));
  EXPECT_EQ(imported.entries, 505U);
  ASSERT_EQ(imported.refused.size(), 1U);
  EXPECT_EQ(imported.refused.front().second.code, Code::ChainBroken);
}

TEST(ShopFolder, NoFolderAndAStopAreSaidSo) {
  ExportedShop shop;
  const TempFolder back;
  auto log = open_log(back.path());
  EXPECT_EQ(import_shop(*log, back.path() / "none", {}, {}).error().code, Code::NoSuchFile);
  std::stop_source stop;
  stop.request_stop();
  EXPECT_EQ(import_shop(*log, shop.folder, stop.get_token(), {}).error().code, Code::Stopped);
}

}  // namespace
}  // namespace jambline::log
