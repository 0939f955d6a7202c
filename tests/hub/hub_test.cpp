// A hub's folder, its shops, who comes in and who goes. Held against our own design: hub/hub.h,
// hub/operator_acts.h, ENGINEERING.md finding 25.
#include <fstream>
#include <sys/stat.h>

#include "hub/shop_audit.h"
#include "tests/hub/hub_world.h"

namespace jambline::test {
namespace {

using hub::Hub;

class HubFolder : public HubWorld {};

TEST_F(HubFolder, ItsKeyIsItsOwnersAlone) {
  struct stat about {};
  ASSERT_EQ(::stat((path() / "hub.key").c_str(), &about), 0);
  EXPECT_EQ(about.st_mode & 0777, 0600U);
}

TEST_F(HubFolder, ASecondHubOnTheFolderIsRefused) {
  EXPECT_EQ(code_of(Hub::open(path(), parts())), Code::FolderInUse);
  hub.reset();
  EXPECT_TRUE(Hub::open(path(), parts()));
}

TEST_F(HubFolder, AFolderThatIsAHubIsNotMadeAgain) {
  const seal::Key before = hub_key();
  hub.reset();
  EXPECT_EQ(code_of(Hub::make(path(), "again", random)), Code::AlreadyDone);
  open();
  EXPECT_EQ(hub_key(), before);
  EXPECT_EQ(code_of(Hub::open(folder.path() / "none", parts())), Code::NoSuchFile);
  EXPECT_EQ(code_of(Hub::make(folder.path() / "other", "", random)), Code::OutOfRange);
}

TEST_F(HubFolder, WhoAsksIsToldWhoItIs) {
  const auto said = ask_site(*hub, {sync::Method::Get, "/v1", {}, {}});
  ASSERT_EQ(said.status, 200);
  const auto about = get(from_json<sync::About>(said.body));
  EXPECT_EQ(about.hub, hub_key());
  EXPECT_EQ(about.hub_name, "Shop hub");
  EXPECT_EQ(about.protocol, sync::protocol_version);
  EXPECT_EQ(problem_type(ask_site(*hub, {sync::Method::Post, "/v1", {}, {}})),
            "/problems/no-such-method");
  EXPECT_EQ(problem_type(ask_site(*hub, {sync::Method::Get, "/v1/../hub.key", {}, {}})),
            "/problems/not-here");
}

class FoundedShop : public HubWorld {};

TEST_F(FoundedShop, TheHubIsItsFirstDeviceAndAManager) {
  const ShopId shop = get(hub::found_shop(*hub));
  for (int life = 0; life < 2; ++life) {
    const auto place = hub->shops().at(0);
    EXPECT_EQ(place->id(), shop);
    const auto& members = place->shop().members();
    EXPECT_EQ(members.shop(), shop);
    ASSERT_TRUE(members.find(hub->key().device()));
    EXPECT_TRUE(members.find(hub->key().device())->manager);
    EXPECT_EQ(members.hubs().at(hub_key()), "Shop hub");
    hub::ShopAudit audit(place->folder(), shop, hub_key());
    good(audit.go_on({}, true));
    EXPECT_FALSE(audit.found().first_bad);
    EXPECT_EQ(audit.found().entries, 2U);
    EXPECT_EQ(audit.found().receipts, 1U);
    reopen();
  }
}

TEST_F(FoundedShop, WhenItCannotBeWrittenThereIsNone) {
  hub.reset();
  auto full = parts();
  full.storage.most_pages = 1;  // SQLite takes no more than the empty shop has
  hub = get(Hub::open(path(), full));
  // The hub's two entries fit into the pages that are there; a name of many signs does not.
  auto config = hub->config();
  config.name = std::string(60'000, 'n');
  good(hub->set_config(config));
  EXPECT_EQ(code_of(hub::found_shop(*hub)), Code::DiskFull);
  EXPECT_TRUE(hub->shops().empty());
  EXPECT_TRUE(std::filesystem::is_empty(path() / "shops"));
}

TEST_F(FoundedShop, ADeviceIsAdmittedByItsSixDigits) {
  const ShopId shop = get(hub::found_shop(*hub));
  const auto invitation = get(hub::invite_device(*hub, std::nullopt, 600'000));
  EXPECT_EQ(invitation.shop, shop);
  EXPECT_EQ(invitation.hub, hub_key());
  EXPECT_FALSE(invitation.at.empty());
  const auto tablet = device(2, shop);
  const auto asked = tablet.enrol(invitation.code);
  ASSERT_EQ(asked.status, 200) << asked.body;
  const auto waiting = get(hub::waiting_devices(*hub, shop));
  ASSERT_EQ(waiting.size(), 1U);
  EXPECT_EQ(waiting[0].digits, tablet.digits(asked)) << "both sides show the same";
  EXPECT_TRUE(waiting[0].hub_may_admit);
  std::string wrong = waiting[0].digits;
  wrong[0] = wrong[0] == '9' ? '0' : static_cast<char>(wrong[0] + 1);
  EXPECT_EQ(code_of(hub::admit_device(*hub, shop, wrong, false)), Code::Unknown);
  EXPECT_EQ(code_of(hub::admit_device(*hub, shop, "", false)), Code::Unknown);
  EXPECT_FALSE(hub->shops()[0]->shop().members().find(tablet.key().device()));
  get(hub::admit_device(*hub, shop, " " + waiting[0].digits + " ", true));
  ASSERT_TRUE(hub->shops()[0]->shop().members().find(tablet.key().device()));
  EXPECT_TRUE(hub->shops()[0]->shop().members().find(tablet.key().device())->manager);
  EXPECT_TRUE(get(hub::waiting_devices(*hub, shop)).empty());
}

TEST_F(FoundedShop, AnAdmittedDeviceWritesAndAllChecksHold) {
  const ShopId shop = get(hub::found_shop(*hub));
  const auto tablet = admitted(2, shop);
  DeviceChain chain(tablet, shop);
  ASSERT_EQ(tablet.push(chain.many(20)).status, 200);
  const auto other = admitted(3, shop);
  EXPECT_EQ(other.pulled().entries.size(), 24U);
  const auto audited = get(hub::audit_shops(*hub, std::nullopt, {}));
  ASSERT_EQ(audited.size(), 1U);
  EXPECT_EQ(audited[0].first_bad, "");
  EXPECT_EQ(audited[0].entries, 24U);
}

TEST_F(FoundedShop, TheAuditFindsASignatureThatAPushDidNotLookAt) {
  const ShopId shop = get(hub::found_shop(*hub));
  const auto tablet = admitted(2, shop);
  DeviceChain chain(tablet, shop);
  auto entries = chain.many(5);
  entries[2].signature.bytes[7] ^= 1;
  ASSERT_EQ(tablet.push(entries).status, 200) << "only the last signature is looked at";
  const auto audited = get(hub::audit_shops(*hub, shop, {}));
  EXPECT_NE(audited[0].first_bad.find("BadSignature"), std::string::npos) << audited[0].first_bad;
  EXPECT_NE(audited[0].first_bad.find("seq 3"), std::string::npos) << audited[0].first_bad;
}

TEST_F(FoundedShop, UpkeepAuditsWhatComes) {
  const ShopId shop = get(hub::found_shop(*hub));
  const auto tablet = admitted(2, shop);
  DeviceChain chain(tablet, shop);
  auto entries = chain.many(3);
  entries[1].signature.bytes[0] ^= 1;
  const hub::Upkeep upkeep(*hub, parts().note, 10);
  const auto wait_until = [&](auto holds) {
    for (int i = 0; i < 1000 && !holds(); ++i)
      std::this_thread::sleep_for(std::chrono::milliseconds(10));
    EXPECT_TRUE(holds());
  };
  wait_until([&] { return upkeep.found()[shop].entries == 3; });
  EXPECT_FALSE(upkeep.found()[shop].first_bad);
  ASSERT_EQ(tablet.push(entries).status, 200);
  wait_until([&] { return upkeep.found()[shop].first_bad.has_value(); });
  EXPECT_EQ(get(hub::status_of(*hub, &upkeep)).shops.at(0).first_bad.substr(0, 12), "BadSignature");
  wait_until([&] {
    const std::lock_guard lock(events_mutex);
    return std::any_of(events.begin(), events.end(), [](const auto& event) {
      return event.event == "audit" && event.cause == "BadSignature";
    });
  });
}

TEST_F(FoundedShop, ARevokedDeviceReadsNothingAndWhatTheHubHadStands) {
  const ShopId shop = get(hub::found_shop(*hub));
  const auto lost = admitted(2, shop);
  DeviceChain chain(lost, shop);
  ASSERT_EQ(lost.push(chain.many(5)).status, 200);
  const std::string id = lost.key().device().hex();
  EXPECT_EQ(code_of(hub::revoke_device(*hub, shop, "")), Code::Unknown);
  EXPECT_EQ(code_of(hub::revoke_device(*hub, shop, hub->key().device().hex())), Code::NotAllowed);
  const auto revoked = get(hub::revoke_device(*hub, shop, id.substr(0, 12)));
  EXPECT_EQ(revoked.cut_seq, 5U);
  EXPECT_EQ(code_of(hub::revoke_device(*hub, shop, id)), Code::AlreadyDone);
  EXPECT_EQ(problem_type(lost.pull()), "/problems/revoked");
  const auto late = chain.many(3);
  EXPECT_EQ(lost.push(late).status, 202) << "kept apart";
  const auto status = get(hub::status_of(*hub, nullptr)).shops.at(0);
  EXPECT_EQ(status.revoked, 1U);
  EXPECT_EQ(status.quarantined, 1U);
  EXPECT_EQ(status.entries, 9U);
}

TEST_F(FoundedShop, WhoIsTurnedAwayIsTold) {
  const ShopId shop = get(hub::found_shop(*hub));
  const auto invitation = get(hub::invite_device(*hub, shop, 600'000));
  const auto stranger = device(9, shop);
  const auto asked = stranger.enrol(invitation.code);
  get(hub::turn_away(*hub, shop, stranger.digits(asked)));
  EXPECT_TRUE(get(hub::waiting_devices(*hub, shop)).empty());
  const auto state = stranger.send(stranger.request(sync::Path::EnrolState, sync::Method::Get));
  EXPECT_EQ(get(from_json<sync::EnrolAnswer>(state.body)).state, sync::EnrolState::Refused);
}

class BroughtShop : public HubWorld {
 protected:
  SealedRun run{21};
};

TEST_F(BroughtShop, NothingIsMadeWithoutACodeThatWasGivenOut) {
  const TestDevice manager(*hub, run.founder(), run.shop(), hub_key());
  sync::InviteCode guessed;
  guessed.bytes.fill(7);
  EXPECT_EQ(problem_type(manager.enrol(guessed, true)), "/problems/bad-code");
  EXPECT_EQ(problem_type(manager.enrol({}, true)), "/problems/bad-code");
  const auto invitation = get(hub::expect_shop(*hub, 600'000));
  EXPECT_EQ(invitation.shop, ShopId{});
  EXPECT_EQ(problem_type(manager.enrol(invitation.code, false)), "/problems/bad-code");
  sync::EnrolAsk unsigned_ask{invitation.code, run.founder().key(), "tablet", true, {}};
  EXPECT_EQ(problem_type(manager.send(
                manager.request(sync::Path::Enrol, sync::Method::Post, to_json(unsigned_ask)))),
            "/problems/bad-request");
  clock.advance_ms(600'001);
  EXPECT_EQ(problem_type(manager.enrol(invitation.code, true)), "/problems/bad-code");
  EXPECT_TRUE(hub->shops().empty());
  EXPECT_TRUE(std::filesystem::is_empty(path() / "shops"));
  for (const auto path : {sync::Path::AskChallenge, sync::Path::Pull, sync::Path::Have})
    EXPECT_EQ(problem_type(manager.send(manager.request(path, sync::Method::Post, "{}"))),
              "/problems/not-here");
}

TEST_F(BroughtShop, ItComesWithItsHistoryAndTheCodeIsUsedUp) {
  const auto invitation = get(hub::expect_shop(*hub, 600'000));
  EXPECT_EQ(get(hub::status_of(*hub, nullptr)).expected, 1U);
  TestDevice manager(*hub, run.founder(), run.shop(), hub_key());
  const auto asked = manager.enrol(invitation.code, true);
  ASSERT_EQ(asked.status, 200) << asked.body;
  EXPECT_EQ(get(hub::status_of(*hub, nullptr)).expected, 0U);
  const auto again = manager.enrol(invitation.code, true);
  EXPECT_EQ(again.body, asked.body) << "the answer was lost: the same one";
  const auto waiting = get(hub::waiting_devices(*hub, std::nullopt));
  ASSERT_EQ(waiting.size(), 1U);
  EXPECT_TRUE(waiting[0].brings_shop);
  EXPECT_EQ(waiting[0].digits, manager.digits(asked));
  EXPECT_EQ(code_of(hub::admit_device(*hub, std::nullopt, waiting[0].digits, true)),
            Code::NotAllowed)
      << "its own manager takes the hub in";

  SealedRun other(22);
  const TestDevice second(*hub, other.founder(), other.shop(), hub_key());
  EXPECT_EQ(problem_type(second.enrol(invitation.code, true)), "/problems/bad-code");

  manager.sign_in();
  ASSERT_EQ(manager.push({run.founded(), run.hub_admitted(hub_key())}).status, 200);
  EXPECT_TRUE(get(hub::waiting_devices(*hub, std::nullopt)).empty());
  EXPECT_EQ(hub->shops().at(0)->shop().members().hubs().size(), 1U);
  reopen();
  EXPECT_EQ(hub->shops().at(0)->shop().members().shop(), run.shop());
}

TEST_F(BroughtShop, ACodeIsUsedUpAlsoWhenThePowerWentJustThen) {
  const auto invitation = get(hub::expect_shop(*hub, 600'000));
  std::filesystem::copy_file(path() / "expected.json", folder.path() / "before");
  const TestDevice manager(*hub, run.founder(), run.shop(), hub_key());
  ASSERT_EQ(manager.enrol(invitation.code, true).status, 200);
  hub.reset();
  std::filesystem::rename(folder.path() / "before", path() / "expected.json");
  open();
  SealedRun other(22);
  const TestDevice second(*hub, other.founder(), other.shop(), hub_key());
  EXPECT_EQ(problem_type(second.enrol(invitation.code, true)), "/problems/bad-code");
}

TEST_F(BroughtShop, AShopThatWasHalfMadeIsMadeAnew) {
  const auto invitation = get(hub::expect_shop(*hub, 600'000));
  std::filesystem::create_directory(shop_folder(run.shop()).string() + ".new");
  std::ofstream(shop_folder(run.shop()).string() + ".new/shop.db.new") << "half";
  reopen();
  EXPECT_TRUE(std::filesystem::is_empty(path() / "shops"));
  const TestDevice manager(*hub, run.founder(), run.shop(), hub_key());
  EXPECT_EQ(manager.enrol(invitation.code, true).status, 200);
}

TEST_F(BroughtShop, AShopThatWasMadeAndNotOpenedComesWithTheNextTry) {
  const auto invitation = get(hub::expect_shop(*hub, 600'000));
  get(hub->make_shop(run.shop(), std::nullopt));  // and then the disk was full
  EXPECT_TRUE(hub->shops().empty());
  const TestDevice manager(*hub, run.founder(), run.shop(), hub_key());
  EXPECT_EQ(manager.enrol(invitation.code, true).status, 200);
  EXPECT_EQ(hub->shops().size(), 1U);
}

TEST_F(BroughtShop, TheHubAdmitsNobodyWhereItIsNoManager) {
  auto manager = brought(run);
  const auto invite = manager.send(manager.request(sync::Path::Invite, sync::Method::Post));
  ASSERT_EQ(invite.status, 200) << invite.body;
  const auto code = get(from_json<sync::InviteAnswer>(invite.body)).code;
  const auto tablet = device(2, run.shop());
  const auto asked = tablet.enrol(code);
  ASSERT_EQ(asked.status, 200);
  EXPECT_FALSE(get(hub::waiting_devices(*hub, run.shop())).at(0).hub_may_admit);
  const auto refused = hub::admit_device(*hub, run.shop(), tablet.digits(asked), false);
  ASSERT_EQ(code_of(refused), Code::NotAllowed);
  EXPECT_EQ(refused.error().arg("what"), "a manager's device of this shop has to do it");
  EXPECT_EQ(code_of(hub::revoke_device(*hub, run.shop(), run.founder().device().hex())),
            Code::NotAllowed);
  ASSERT_EQ(manager.push({run.admitted(tablet.key(), "tablet")}).status, 200);
  const auto state = tablet.send(tablet.request(sync::Path::EnrolState, sync::Method::Get));
  EXPECT_EQ(get(from_json<sync::EnrolAnswer>(state.body)).state, sync::EnrolState::Admitted);
}

class ShutShop : public HubWorld {};

TEST_F(ShutShop, AShopThatCannotBeOpenedAnswersNothingAndStandsInNobodysWay) {
  const ShopId one = get(hub::found_shop(*hub));
  const ShopId two = get(hub::found_shop(*hub));
  auto tablet = admitted(2, two);
  hub.reset();
  seal::Epoch other;
  other.bytes.fill(1);
  good(hub::write_epoch(shop_folder(one), {other, 0}));
  open();
  EXPECT_EQ(hub->shut().at(one).code, Code::NotYet);
  const auto in_one = device(2, one);
  const auto refused =
      in_one.send(in_one.request(sync::Path::AskChallenge, sync::Method::Post, "{}"));
  EXPECT_EQ(problem_type(refused), "/problems/failed");
  tablet = device(2, two);
  tablet.sign_in();
  EXPECT_EQ(tablet.pull().status, 200);
  const auto status = get(hub::status_of(*hub, nullptr));
  ASSERT_EQ(status.shops.size(), 2U);
  EXPECT_EQ(status.shops[1].shop, one);
  EXPECT_NE(status.shops[1].shut.find("restore"), std::string::npos);
  EXPECT_EQ(code_of(hub::invite_device(*hub, one, 1000)), Code::NotYet);
}

class Scrubbing : public HubWorld {};

TEST_F(Scrubbing, ADamagedFileIsSetAsideAndAskedForAgain) {
  const ShopId shop = get(hub::found_shop(*hub));
  auto tablet = admitted(2, shop);
  const std::string bytes(5000, 'p');
  const Hash blob = tablet.upload(bytes);
  const Hash whole = tablet.upload("another picture");
  const std::uint64_t mark = tablet.sign_in().blob_mark;
  {
    std::fstream file(hub->shops()[0]->files().blobs().path_of(blob),
                      std::ios::in | std::ios::out | std::ios::binary);
    file.seekp(2500);
    file.put('q');  // one byte on the disk turned over
  }
  const auto found = get(hub::scrub_shops(*hub, std::nullopt, {}));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].files, 2U);
  EXPECT_EQ(found[0].damaged, std::vector{blob});
  EXPECT_GT(tablet.sign_in().blob_mark, mark) << "devices ask for all files again";
  EXPECT_EQ(problem_type(tablet.download(blob)), "/problems/not-here");
  EXPECT_EQ(tablet.download(whole).body, "another picture");
  tablet.upload(bytes);
  EXPECT_EQ(tablet.download(blob).body, bytes);
  EXPECT_TRUE(std::filesystem::exists(shop_folder(shop) / "damaged" / blob.hex()));
}

class HubStatusWords : public HubWorld {};

TEST_F(HubStatusWords, CountsAndNothingElse) {
  const ShopId shop = get(hub::found_shop(*hub));
  auto tablet = admitted(2, shop);
  DeviceChain chain(tablet, shop);
  ASSERT_EQ(tablet.push({chain.said("Erika Mustermann", erasable_kind)}).status, 200);
  tablet.upload("0123456789");
  const auto status = get(hub::status_of(*hub, nullptr));
  ASSERT_EQ(status.shops.size(), 1U);
  const auto& row = status.shops[0];
  EXPECT_EQ(row.entries, 4U);
  EXPECT_EQ(row.devices.size(), 2U);
  EXPECT_EQ(row.files, 1U);
  EXPECT_EQ(row.file_bytes, 10U);
  EXPECT_EQ(row.last_seen_ms, hub_monday_ms);
  EXPECT_TRUE(row.hub_manages);
  EXPECT_FALSE(status.serving);
  EXPECT_GT(status.free_bytes, 0U);
  EXPECT_EQ(to_json(status).find("Mustermann"), std::string::npos);
  for (const auto& event : events)
    EXPECT_EQ(to_json(event).find("Mustermann"), std::string::npos) << to_json(event);
  EXPECT_EQ(to_json(events).find(tablet.token), std::string::npos) << "no token in the log";
}

}  // namespace
}  // namespace jambline::test
