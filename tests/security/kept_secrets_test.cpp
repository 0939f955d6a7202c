// What a hub writes down: no token, no code, nothing of a payload, neither in its database nor in
// its log. Receipts of others. Bodies that are too large, coded, or under tricky names.
#include <filesystem>

#include "hub/shop_file.h"
#include "seal/digest.h"
#include "sync/limits.h"
#include "tests/hub/hub_folder.h"
#include "tests/sync/small_hub.h"
#include "tests/whole_file.h"

namespace jambline::test {
namespace {

template <class Secret>
void not_in(const std::string& kept, const Secret& secret) {
  EXPECT_EQ(kept.find(secret.hex()), std::string::npos);
  EXPECT_EQ(kept.find(std::string(secret.bytes.begin(), secret.bytes.end())), std::string::npos);
}

TEST(SecurityKept, TheDatabaseAndTheLogHoldNoCodeNoTokenAndNoWordOfAPayload) {
  const HubTempFolder folder;
  SmallHub hub;
  good(hub::SqliteHubStorage::make(folder.path(), hub.run.shop(), epoch_number(7)));
  const auto storage = get(hub::SqliteHubStorage::open(folder.path(), {}));
  auto shop = get(sync::HubShop::open({*storage, *hub.files, hub.key, hub.clock, hub.random, "hub",
                                       [&](const auto& event) { hub.events.push_back(event); }}));
  hub.shop.swap(shop);
  SealedRun run;
  const std::vector<seal::SealedEntry> start{run.founded(), run.hub_admitted(hub.key.key()),
                                             run.admitted(hub.tablet, "tablet"),
                                             run.admitted(hub.desk, "desk", true)};
  good(hub.shop->append_own(start));
  const auto code = get(hub.shop->invite(false, sync::code_lives_ms));
  const auto key = hub_test_key(50);
  sync::EnrolAsk ask{code, key.key(), "Nameofatablet", false, {}};
  ask.proof = key.sign(sync::enrol_words(run.shop(), hub.key.key(), ask));
  EXPECT_EQ(hub.ask(hub.post("enrol", to_json(ask))).status, 200);
  const std::string token = hub.token(hub.tablet);
  ASSERT_FALSE(token.empty());
  seal::Packer packer;
  packer.add(run.said(hub.tablet, "secretwords"));
  EXPECT_EQ(hub.ask(hub.post("log/" + hub.tablet.device().hex() + "?from=1", packer.bytes(), token))
                .status,
            200);
  const std::string kept = whole_folder(folder.path());
  EXPECT_NE(kept.find("secretwords"), std::string::npos);  // the entry itself is kept
  const std::string events = hub.said_events();
  EXPECT_NE(events.find("\"push\""), std::string::npos);
  for (const std::string& text : {kept, events}) {
    not_in(text, code);
    not_in(text, *sync::Token::parse(token));
  }
  EXPECT_EQ(events.find("secretwords"), std::string::npos);
  EXPECT_EQ(events.find("Nameofatablet"), std::string::npos);
  hub.shop.swap(shop);
}

TEST(SecurityReceipts, OneOfAnotherShopEpochDeviceOrHubIsNone) {
  SealedRun run;
  const auto entry = run.founded();
  const auto hub = hub_test_key(200);
  seal::Receipt good_one;
  good_one.shop = run.shop();
  good_one.epoch = epoch_number(1);
  good_one.device = entry.header.device;
  good_one.seq = 1;
  good_one.hash = entry.hash;
  seal::sign(good_one, hub);
  const seal::ReceiptWanted wanted{run.shop(), hub.key(), epoch_number(1), entry.header.device};
  EXPECT_TRUE(seal::check(good_one, wanted));
  const auto bad = [&](auto change, const seal::SigningKey& key) {
    seal::Receipt one = good_one;
    change(one);
    seal::sign(one, key);
    return !seal::check(one, wanted);
  };
  EXPECT_TRUE(bad([](auto& one) { one.shop.bytes[0] ^= 1; }, hub));
  EXPECT_TRUE(bad([](auto& one) { one.epoch.bytes[0] ^= 1; }, hub));
  EXPECT_TRUE(bad([](auto& one) { one.device.bytes[0] ^= 1; }, hub));
  EXPECT_TRUE(bad([](auto&) {}, hub_test_key(201)));
  seal::Receipt changed = good_one;
  changed.seq = 2;  // under the old signature
  EXPECT_FALSE(seal::check(changed, wanted));
}

TEST(SecurityBodies, WhatIsTooLargeOrCodedIsRefusedByItsHead) {
  SmallHub hub;
  const std::string token = hub.token(hub.tablet);
  const auto status = [&](sync::Request request, std::uint64_t body_bytes) {
    const auto target = sync::parse_target(request.target);
    const auto handling = hub.shop->begin(request, *target, body_bytes, "10.0.0.1");
    const auto early = handling->take({});
    return early ? early->status : 0;
  };
  const std::uint64_t ten_gigabytes = std::uint64_t{10} << 30U;
  for (const std::string& path :
       {std::string("session"), std::string("enrol"), std::string("pull"), std::string("have"),
        "log/" + hub.tablet.device().hex() + "?from=1"})
    EXPECT_EQ(status(hub.post(path, "", token), ten_gigabytes), 413) << path;
  auto coded = hub.post("pull", "", token);
  for (const char* coding : {"gzip", "br", "deflate, gzip", "x"}) {
    coded.headers.push_back({"Content-Encoding", coding});
    EXPECT_EQ(status(coded, 10), 415) << coding;
    coded.headers.pop_back();
  }
  auto upload = hub.post("files", "", token);
  upload.headers.push_back({"Tus-Resumable", "1.0.0"});
  upload.headers.push_back({"Upload-Length", std::to_string(ten_gigabytes)});
  upload.headers.push_back({"Upload-Metadata", sync::metadata_of("sha256", std::string(64, 'a'))});
  EXPECT_EQ(hub.ask(upload).status, 413);
  EXPECT_TRUE(hub.disk->parts.empty());
}

TEST(SecurityNames, AHashThatIsAPathIsNoHash) {
  SmallHub hub;
  const std::string token = hub.token(hub.tablet);
  for (const std::string& name :
       {std::string("../../hub.key"), std::string(64, 'A'), std::string(64, '.'),
        std::string(63, 'a') + "/", std::string(63, 'a') + std::string(1, '\0'),
        std::string(4'000, 'a'), std::string()}) {
    auto upload = hub.post("files", "", token);
    upload.headers.push_back({"Tus-Resumable", "1.0.0"});
    upload.headers.push_back({"Upload-Length", "3"});
    upload.headers.push_back({"Upload-Metadata", sync::metadata_of("sha256", name)});
    const int status = hub.ask(upload).status;
    const bool upper = name == std::string(64, 'A');  // reads as a hash like any other, if at all
    EXPECT_TRUE(status == 400 || (upper && status == 201)) << name.substr(0, 80) << " " << status;
  }
  for (const auto& [name, bytes] : hub.disk->parts) EXPECT_TRUE(sync::parse_upload(name)) << name;
}

}  // namespace
}  // namespace jambline::test
