// src/seal/read_jambline.py against logs that the program wrote: two implementations of FORMAT.md.
#include <array>
#include <cstdio>
#include <fstream>
#include <gtest/gtest.h>
#include <sqlite3.h>

#include "base/json.h"
#include "log/shop_folder.h"
#include "seal/fingerprint.h"
#include "tests/log/log_folder.h"

namespace jambline::log {
namespace {

namespace fs = std::filesystem;

struct Said {
  int code{};
  std::string words;
};

Said read_by_python(const fs::path& folder, const std::string& options = {}) {
  const std::string command = "python3 " JAMBLINE_SOURCE_DIR "/src/seal/read_jambline.py " +
                              options + " '" + folder.string() + "' 2>&1";
  Said said;
  FILE* pipe = popen(command.c_str(), "r");
  std::array<char, 4096> buffer;
  while (const std::size_t count = fread(buffer.data(), 1, buffer.size(), pipe))
    said.words.append(buffer.data(), count);
  said.code = WEXITSTATUS(pclose(pipe));
  return said;
}

// Two devices, a hub and its receipt, an erasure, a revocation.
struct ReadShop {
  TempFolder folder;
  ShopId id;
  fs::path exported = folder.path() / "exported";

  ReadShop() {
    SeededRandom random(2);
    auto log = small_log(folder.path(), 3);
    id = log->shop();
    const auto hub = key_number(9);
    const Draft admit{{},
                      seal::kind::device_admitted,
                      1,
                      to_json(seal::DeviceAdmitted{key_number(2).key(), "two", true})};
    const Draft admit_hub{
        {}, seal::kind::hub_admitted, 1, to_json(seal::HubAdmitted{hub.key(), "hub"})};
    must(log->append(key_number(1), {}, std::array{admit, admit_hub}, at(5000), random));
    const std::uint16_t kinds[] = {note_kind};
    must(log->erase_payload(key_number(1), {}, entries_of(*log)[2].hash, "gone", kinds, at(6000),
                            random));
    const TempFolder other;
    auto two = open_log(other.path());
    must(two->add(entries_of(*log)));
    const std::array drafts{note("a"), note("b")};
    const auto theirs = must(two->append(key_number(2), {}, drafts, at(7000), random));
    seal::Receipt receipt;
    receipt.shop = id;
    receipt.device = key_number(2).device();
    receipt.seq = 2;
    receipt.hash = theirs[1].entry.hash;
    seal::sign(receipt, hub);
    const std::array entries{theirs[0].entry, theirs[1].entry};
    must(log->add_page({entries, {&receipt, 1}, std::nullopt}));
    const Draft revoke{{},
                       seal::kind::device_revoked,
                       1,
                       to_json(seal::DeviceRevoked{receipt.device, 2, receipt.hash})};
    must(log->append(key_number(1), {}, {&revoke, 1}, at(8000), random));
    must(export_shop(*log, exported, {}, {}));
  }
};

void tamper(const fs::path& folder, const std::string& text) {
  sqlite3* raw = nullptr;
  ASSERT_EQ(sqlite3_open((folder / "log.db").c_str(), &raw), SQLITE_OK);
  ASSERT_EQ(
      sqlite3_exec(raw,
                   ("DROP TRIGGER entries_stay; DROP TRIGGER entries_never_change;" + text).c_str(),
                   nullptr, nullptr, nullptr),
      SQLITE_OK)
      << sqlite3_errmsg(raw);
  sqlite3_close(raw);
}

TEST(PythonReader, ReadsAndVerifiesAFolderAndAnExportedShop) {
  const ReadShop shop;
  for (const auto& folder : {shop.folder.path(), shop.exported}) {
    const Said said = read_by_python(folder, "--shop " + seal::fingerprint(shop.id));
    EXPECT_EQ(said.code, 0) << said.words;
    EXPECT_NE(said.words.find(seal::fingerprint(shop.id)), std::string::npos);
    EXPECT_NE(said.words.find("good: 10 entries, 1 receipts"), std::string::npos) << said.words;
  }
  EXPECT_EQ(read_by_python(shop.folder.path(), "--shop 0123-4567").code, 1);
  EXPECT_EQ(read_by_python(shop.folder.path() / "none").code, 2);
}

TEST(PythonReader, NamesTheFirstBadEntryLikeTheProgramDoes) {
  const std::pair<const char*, const char*> cases[] = {
      {"UPDATE entries SET payload=CAST('{\"words\":\"numb3r 0\"}' AS BLOB) WHERE arrival=2", "2"},
      {"UPDATE entries SET signature=zeroblob(64) WHERE arrival=4", "4"},
      {"UPDATE entries SET erased=1, payload=x'', salt=zeroblob(16) WHERE arrival=4", "4"},
      {"UPDATE entries SET header=(SELECT header FROM entries WHERE arrival=2) WHERE arrival=4",
       "2"},
      {"DELETE FROM entries WHERE arrival=3", "4"},
  };
  for (const auto& [sql, seq] : cases) {
    const ReadShop shop;
    tamper(shop.folder.path(), sql);
    const Said said = read_by_python(shop.folder.path());
    EXPECT_EQ(said.code, 1) << sql << said.words;
    EXPECT_NE(said.words.find("BAD device"), std::string::npos) << said.words;
    EXPECT_NE(said.words.find(std::string(" seq ") + seq + ":"), std::string::npos) << said.words;
  }
}

TEST(PythonReader, ChainOnlyMissesSignaturesAndNothingElse) {
  const ReadShop shop;
  EXPECT_EQ(read_by_python(shop.folder.path(), "--chain-only").code, 0);
  tamper(shop.folder.path(), "UPDATE entries SET signature=zeroblob(64) WHERE arrival=4");
  EXPECT_EQ(read_by_python(shop.folder.path(), "--chain-only").code, 0);
  EXPECT_EQ(read_by_python(shop.folder.path()).code, 1);
}

TEST(PythonReader, DamagedFilesEndWithAWordNotATrace) {
  const ReadShop shop;
  SeededRandom random(4);
  std::vector<fs::path> files;
  for (const auto& file : fs::directory_iterator(shop.exported / "entries"))
    files.push_back(file.path());
  for (int round = 0; round < 12; ++round) {
    const auto& file = files[random.below(files.size())];
    const auto size = fs::file_size(file);
    const auto place = static_cast<std::streamoff>(random.below(size));
    std::fstream change(file, std::ios::binary | std::ios::in | std::ios::out);
    change.seekg(place);
    const char old = static_cast<char>(change.get());
    change.seekp(place);
    change.put(static_cast<char>(old ^ 0x20));
    change.close();
    const Said said = read_by_python(shop.exported);
    EXPECT_EQ(said.code, 1) << place << said.words;
    EXPECT_EQ(said.words.find("Traceback"), std::string::npos) << said.words;
    std::fstream back(file, std::ios::binary | std::ios::in | std::ios::out);
    back.seekp(place);
    back.put(old);
  }
  EXPECT_EQ(read_by_python(shop.exported).code, 0);
}

}  // namespace
}  // namespace jambline::log
