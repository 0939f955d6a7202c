// One SQLite file a shop: what a file adds to the contract of sync/hub_storage.h.
#include "hub/shop_file.h"

#include <fstream>

#include "tests/hub/hub_folder.h"
#include "tests/hub/sealed_run.h"
#include "tests/whole_file.h"

namespace jambline::test {
namespace {

using hub::SqliteHubStorage;
using sqlite::Database;

hub::ShopFileOptions usual() {
  hub::ShopFileOptions options;
  options.erasable_kinds = {erasable_kind};
  return options;
}

class ShopFile : public ::testing::Test {
 protected:
  ShopFile() { good(SqliteHubStorage::make(folder.path(), run.shop(), epoch_number(9))); }

  std::unique_ptr<SqliteHubStorage> open() {
    return get(SqliteHubStorage::open(folder.path(), usual()));
  }
  void put(SqliteHubStorage& store, const std::vector<seal::SealedEntry>& entries,
           std::vector<Hash> erased = {}) {
    get(store.append(entries, erased, [&](std::uint64_t first, std::uint64_t last) {
      seal::Receipt out;
      out.shop = run.shop();
      out.epoch = store.epoch();
      out.device = entries.back().header.device;
      out.seq = entries.back().header.seq;
      out.hash = entries.back().hash;
      out.hub_seq_first = first;
      out.hub_seq_last = last;
      seal::sign(out, hub_key);
      return out;
    }));
  }
  Database raw(Database::Mode mode = Database::Mode::Write) {
    return get(Database::open(folder.path() / "shop.db", mode, {}));
  }
  std::string bytes_of_file(const char* name) { return whole_file(folder.path() / name); }

  HubTempFolder folder;
  SealedRun run;
  seal::SigningKey hub_key = hub_test_key(200);
};

TEST_F(ShopFile, EntriesCannotBeChangedOrDeletedByAnybody) {
  {
    const auto store = open();
    put(*store, {run.founded(), run.said(run.founder(), "K. Meyer", erasable_kind)});
  }
  Database database = raw();
  EXPECT_FALSE(database.run("DELETE FROM entries"));
  EXPECT_FALSE(database.run("UPDATE entries SET hub_seq = hub_seq + 10"));
  EXPECT_FALSE(database.run("UPDATE entries SET bytes = x'00' WHERE hub_seq = 2"));
  EXPECT_FALSE(database.run(
      "UPDATE entries SET bytes = CAST(substr(bytes, 1, 270) || x'01' AS BLOB) WHERE hub_seq = 2"));
  EXPECT_FALSE(database.run(
      "PRAGMA recursive_triggers=ON; INSERT OR REPLACE INTO entries SELECT * FROM entries"));
  EXPECT_EQ(get(database.number("SELECT count(*) FROM entries")), 2);
}

TEST_F(ShopFile, AnErasedPayloadIsInNoByteOfTheFolder) {
  const std::string secret = "Erika Mustermann";
  {
    const auto store = open();
    put(*store, {run.founded()});
    const auto name = run.said(run.founder(), secret, erasable_kind);
    put(*store, {name});
    put(*store, {run.erasure(run.founder(), name.hash)}, {name.hash});
    // The old bytes leave the write-ahead log with the next append at the latest.
    put(*store, {run.said(run.founder(), "next")});
    EXPECT_EQ(bytes_of_file("shop.db").find(secret), std::string::npos);
    EXPECT_EQ(bytes_of_file("shop.db-wal").find(secret), std::string::npos);
  }
  EXPECT_EQ(bytes_of_file("shop.db").find(secret), std::string::npos);
}

TEST_F(ShopFile, AKindThatANewerHubKnowsToBeErasableIsWipedToo) {
  const auto founded = run.founded();
  const auto name = run.said(run.founder(), "K. Meyer", 702);
  {
    const auto store = open();
    put(*store, {founded, name});
    put(*store, {run.erasure(run.founder(), name.hash)}, {name.hash});
  }
  auto options = usual();
  options.erasable_kinds.push_back(702);
  const auto store = get(SqliteHubStorage::open(folder.path(), options));
  bool wiped = false;
  good(store->read_after(1, [&](auto, const auto&, auto, std::string_view bytes) {
    wiped = bytes.size() == seal::entry_fixed_bytes;
    return false;
  }));
  EXPECT_TRUE(wiped);
}

TEST_F(ShopFile, AnotherEpochBesideItIsRefusedAndSaysRestore) {
  good(hub::write_epoch(folder.path(), {epoch_number(8), 0}));
  const auto refused = SqliteHubStorage::open(folder.path(), usual());
  ASSERT_EQ(code_of(refused), Code::NotYet);
  EXPECT_EQ(refused.error().arg("what"), "restore");
}

TEST_F(ShopFile, AMissingEpochFileIsRefused) {
  std::filesystem::remove(folder.path() / "epoch");
  EXPECT_EQ(code_of(SqliteHubStorage::open(folder.path(), usual())), Code::NotYet);
}

TEST_F(ShopFile, AnOlderDatabaseInItsPlaceIsRefused) {
  {
    const auto store = open();
    put(*store, {run.founded()});
  }
  std::filesystem::copy_file(folder.path() / "shop.db", folder.path() / "yesterday");
  {
    const auto store = open();
    put(*store, {run.said(run.founder(), "today")});
  }
  std::filesystem::rename(folder.path() / "yesterday", folder.path() / "shop.db");
  const auto refused = SqliteHubStorage::open(folder.path(), usual());
  ASSERT_EQ(code_of(refused), Code::NotYet);
  EXPECT_EQ(refused.error().arg("cause"), "the database has 1 entries and had 2");
}

TEST_F(ShopFile, ANewerSchemaAndOtherFilesAreRefusedAndLeftAsTheyAre) {
  good(raw().run("PRAGMA user_version=3"));
  EXPECT_EQ(code_of(SqliteHubStorage::open(folder.path(), usual())), Code::NewerSchema);
  good(raw().run("PRAGMA user_version=2; PRAGMA application_id=7"));
  EXPECT_EQ(code_of(SqliteHubStorage::open(folder.path(), usual())), Code::DatabaseDamaged);
  good(raw().run(("PRAGMA application_id=" + std::to_string(0x4A424C48)).c_str()));
  EXPECT_TRUE(SqliteHubStorage::open(folder.path(), usual()));
  good(raw().run("DROP TRIGGER entries_stay"));
  EXPECT_EQ(code_of(SqliteHubStorage::open(folder.path(), usual())), Code::DatabaseDamaged);
  std::ofstream(folder.path() / "shop.db", std::ios::trunc) << "no database at all, really not one";
  EXPECT_EQ(code_of(SqliteHubStorage::open(folder.path(), usual())), Code::DatabaseDamaged);
}

TEST_F(ShopFile, ANewEpochStandsInBothPlacesAndInEveryReceipt) {
  {
    const auto store = open();
    put(*store, {run.founded()});
    put(*store, {run.said(run.founder(), "a")});
  }
  good(hub::begin_new_epoch(folder.path(), epoch_number(3), 1000, hub_key));
  const auto store = open();
  EXPECT_EQ(store->epoch(), epoch_number(3));
  EXPECT_EQ(store->blob_mark(), 1001U);
  const auto receipts = get(store->receipts(0, 2, 10));
  ASSERT_EQ(receipts.size(), 2U);
  for (const auto& receipt : receipts) {
    EXPECT_EQ(receipt.epoch, epoch_number(3));
    EXPECT_TRUE(seal::verify(receipt));
  }
  EXPECT_EQ(receipts[0].hub_seq_last, 1U);
  EXPECT_EQ(receipts[1].seq, 2U);
}

TEST_F(ShopFile, WritesAreInWalWithFullSyncing) {
  const auto store = open();
  put(*store, {run.founded()});
  EXPECT_TRUE(std::filesystem::exists(folder.path() / "shop.db-wal"));
  EXPECT_EQ(get(raw(Database::Mode::ReadOnly).text("PRAGMA journal_mode")), "wal");
}

}  // namespace
}  // namespace jambline::test
