// The folder of every hub that was ever released opens and serves the same. The folder hub_1 was
// made by the first version, by make_old_hub.cpp; nothing of it is ever changed.
#include <fstream>

#include "hub/shop_audit.h"
#include "tests/hub/hub_world.h"

namespace jambline::test {
namespace {

namespace fs = std::filesystem;

class OldHub : public ::testing::Test {
 protected:
  OldHub() {
    clock.moment.wall_ms = hub_monday_ms + 86'400'000;
    clock.moment.since_boot_ms = 1000;
    fs::copy(fs::path(JAMBLINE_SOURCE_DIR) / "tests" / "old_versions" / "hub_1", path(),
             fs::copy_options::recursive);
    fs::permissions(path() / "hub.key", fs::perms::owner_read | fs::perms::owner_write);
    hub = get(hub::Hub::open(path(), {clock, random, disk, {{erasable_kind}, {}, 0}, {}}));
  }
  fs::path path() const { return folder.path() / "hub"; }
  std::map<std::string, std::string> facts() const {
    std::map<std::string, std::string> out;
    std::ifstream in(fs::path(JAMBLINE_SOURCE_DIR) / "tests" / "old_versions" / "hub_1.facts");
    for (std::string name, value; in >> name >> value;) out[name] = value;
    return out;
  }

  HubTempFolder folder;
  FakeClock clock;
  SeededRandom random{3};
  blobs::PosixFiles disk;
  std::unique_ptr<hub::Hub> hub;
};

TEST_F(OldHub, HubOneOpensAndServesTheSame) {
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

TEST_F(OldHub, HubOneGoesOn) {
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

}  // namespace
}  // namespace jambline::test
