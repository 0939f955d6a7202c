// The folder of a hub of every version of shop.db opens and serves the same. Each was made by its
// version, by make_old_hub.cpp; nothing of it is ever changed.
#include <fstream>

#include "hub/shop_audit.h"
#include "hub/shop_file.h"
#include "hub/shop_schema.h"
#include "tests/hub/hub_world.h"

namespace jambline::test {
namespace {

namespace fs = std::filesystem;

class OldHub : public ::testing::TestWithParam<const char*> {
 protected:
  OldHub() {
    clock.moment.wall_ms = hub_monday_ms + 86'400'000;
    clock.moment.since_boot_ms = 1000;
    fs::copy(fs::path(JAMBLINE_SOURCE_DIR) / "tests" / "old_versions" / GetParam(), path(),
             fs::copy_options::recursive);
    fs::permissions(path() / "hub.key", fs::perms::owner_read | fs::perms::owner_write);
    hub = get(hub::Hub::open(path(), {clock, random, disk, {{erasable_kind}, {}, 0}, {}}));
  }
  fs::path path() const { return folder.path() / "hub"; }
  std::map<std::string, std::string> facts() const {
    std::map<std::string, std::string> out;
    std::ifstream in(fs::path(JAMBLINE_SOURCE_DIR) / "tests" / "old_versions" /
                     (std::string(GetParam()) + ".facts"));
    for (std::string name, value; in >> name >> value;) out[name] = value;
    return out;
  }

  HubTempFolder folder;
  FakeClock clock;
  SeededRandom random{3};
  blobs::PosixFiles disk;
  std::unique_ptr<hub::Hub> hub;
};

TEST_P(OldHub, OpensAndServesTheSame) {
  const auto wanted = facts();
  EXPECT_TRUE(hub->shut().empty());
  EXPECT_EQ(hub->key().key().hex(), wanted.at("hub"));
  ASSERT_EQ(hub->shops().size(), 1U);
  const ShopId shop = hub->shops()[0]->id();
  EXPECT_EQ(shop.hex(), wanted.at("shop"));
  TestDevice tablet(*hub, hub_test_key(2), shop, hub->key().key());
  const auto session = tablet.sign_in();
  EXPECT_EQ(session.epoch.hex(), wanted.at("epoch"));
  const auto page = tablet.pulled();
  std::string hashes;
  for (const auto& entry : page.entries) hashes += seal::encode(entry);
  for (const auto& receipt : page.receipts) hashes += seal::encode(receipt);
  EXPECT_EQ(std::to_string(page.entries.size()), wanted.at("entries"));
  EXPECT_EQ(seal::sha256(seal::bytes_of(hashes)).hex(), wanted.at("pulled"));
  const Hash picture =
      get(from_json<sync::HaveAnswer>(R"({"missing":[")" + wanted.at("picture") + R"("]})"))
          .missing.at(0);
  EXPECT_EQ(tablet.download(picture).body, "a picture of the first version");
  const auto status = get(hub::status_of(*hub, nullptr)).shops.at(0);
  EXPECT_EQ(status.quarantined, 1U);
  EXPECT_EQ(status.forked, 1U);
  EXPECT_EQ(status.waiting, 1U);
  EXPECT_EQ(status.revoked, 1U);
  EXPECT_EQ(get(hub::audit_shops(*hub, shop, {}))[0].first_bad, "");
}

TEST_P(OldHub, GoesOn) {
  const ShopId shop = hub->shops()[0]->id();
  TestDevice tablet(*hub, hub_test_key(2), shop, hub->key().key());
  tablet.sign_in();
  const auto before = tablet.pulled();
  const auto invitation = get(hub::invite_device(*hub, shop, 600'000));
  TestDevice fresh(*hub, hub_test_key(60), shop, hub->key().key());
  const auto asked = fresh.enrol(invitation.code, false, "new tablet");
  get(hub::admit_device(*hub, shop, fresh.digits(asked), false));
  fresh.sign_in();
  DeviceChain chain(fresh, shop);
  EXPECT_EQ(fresh.push(chain.many(4)).status, 200);
  EXPECT_EQ(tablet.pulled().entries.size(), before.entries.size() + 5);
  EXPECT_EQ(get(hub::audit_shops(*hub, shop, {}))[0].first_bad, "");
}

TEST_P(OldHub, IsOfThisVersionOnceItWasOpened) {
  const fs::path file = hub->shops()[0]->folder() / hub::shop_file_name;
  hub.reset();
  auto database = get(sqlite::Database::open(file, sqlite::Database::Mode::ReadOnly, {}));
  EXPECT_EQ(get(database.number("PRAGMA user_version")), hub::shop_schema_version);
  good(hub::check_shop_schema(database));
  EXPECT_EQ(get(database.text("PRAGMA integrity_check")), "ok");
}

TEST_P(OldHub, ABackupOfItGetsANewLife) {
  const ShopId shop = hub->shops()[0]->id();
  const fs::path backup = folder.path() / "backup";
  fs::copy(
      fs::path(JAMBLINE_SOURCE_DIR) / "tests" / "old_versions" / GetParam() / "shops" / shop.hex(),
      backup, fs::copy_options::recursive);
  const auto epoch = random.make<seal::Epoch>();
  good(hub::begin_new_epoch(backup, epoch, 1, hub->key()));
  const auto store = get(hub::SqliteHubStorage::open(backup, {{erasable_kind}, {}, 0}));
  EXPECT_EQ(store->epoch(), epoch);
  const auto heads = get(store->heads());
  ASSERT_FALSE(heads.empty());
  for (const auto& head : heads) {
    EXPECT_EQ(get(store->hash_at(head.device, head.seq)), head.hash);
    EXPECT_EQ(get(store->hash_at(head.device, head.seq + 1)), std::nullopt);
    EXPECT_EQ(get(store->last_receipt(head.device))->epoch, epoch);
  }
}

INSTANTIATE_TEST_SUITE_P(EveryVersion, OldHub, ::testing::Values("hub_1", "hub_2"),
                         [](const auto& version) { return std::string(version.param); });

}  // namespace
}  // namespace jambline::test
