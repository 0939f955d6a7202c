// Backup while serving, restore with a new epoch, and what is refused (FAULTS.md 12). Held against
// our own design: hub/backup.h.
#include "hub/backup.h"

#include <atomic>
#include <fstream>
#include <sys/stat.h>

#include "hub/manifest.h"
#include "sqlite/sqlite.h"
#include "tests/hub/hub_world.h"
#include "tests/whole_file.h"

namespace jambline::test {
namespace {

namespace fs = std::filesystem;

class Backups : public HubWorld {
 protected:
  Backups() {
    shop = get(hub::found_shop(*hub));
    tablet = std::make_unique<TestDevice>(admitted(2, shop));
    chain = std::make_unique<DeviceChain>(*tablet, shop);
  }
  fs::path backup() const { return folder.path() / "backup"; }
  fs::path again() const { return folder.path() / "again"; }
  std::vector<hub::BackedUpShop> back_up() { return get(hub::back_up(*hub, backup(), {})); }
  auto restore() { return hub::restore(backup(), again(), random); }
  // The hub of the restored folder; the one before is gone.
  void serve_restored() {
    hub.reset();
    hub = get(hub::Hub::open(again(), parts()));
    tablet = std::make_unique<TestDevice>(device(2, shop));
  }
  static std::size_t files_below(const fs::path& below) {
    std::size_t count = 0;
    for (const auto& item : fs::recursive_directory_iterator(below))
      count += item.is_regular_file();
    return count;
  }
  fs::path only(const fs::path& below, const std::string& ending) const {
    for (const auto& item : fs::directory_iterator(below))
      if (item.path().extension() == ending) return item.path();
    ADD_FAILURE() << "no " << ending << " in " << below;
    return {};
  }
  fs::path shop_backup() const { return backup() / "shops" / shop.hex(); }

  ShopId shop;
  std::unique_ptr<TestDevice> tablet;
  std::unique_ptr<DeviceChain> chain;
};

TEST_F(Backups, ARestoredHubHasEverythingANewEpochAndTheSameIdentity) {
  const auto pushed = tablet->push(chain->many(30));
  ASSERT_EQ(pushed.status, 200);
  const Hash picture = tablet->upload(std::string(100'000, 'p'));
  const auto before = tablet->sign_in();
  const auto pulled = tablet->pulled();
  const seal::Key identity = hub_key();
  const auto made = back_up();
  ASSERT_EQ(made.size(), 1U);
  EXPECT_EQ(made[0].entries, 33U);
  EXPECT_EQ(made[0].files, 1U);

  const auto restored = get(restore());
  ASSERT_EQ(restored.size(), 1U);
  EXPECT_EQ(restored[0].entries, 33U);
  EXPECT_EQ(restored[0].files, 1U);
  EXPECT_TRUE(restored[0].not_there.empty());
  serve_restored();
  EXPECT_EQ(hub_key(), identity);
  EXPECT_TRUE(hub->shut().empty());
  const auto after = tablet->sign_in();
  EXPECT_NE(after.epoch, before.epoch);
  EXPECT_EQ(after.epoch, restored[0].epoch);
  EXPECT_EQ(get(hub::read_epoch(hub->shops()[0]->folder())).epoch, after.epoch);
  EXPECT_GT(after.blob_mark, before.blob_mark);
  EXPECT_EQ(after.hub_seq, before.hub_seq);
  const auto page = tablet->pulled();
  ASSERT_EQ(page.entries.size(), pulled.entries.size());
  for (std::size_t i = 0; i < page.entries.size(); ++i)
    EXPECT_EQ(page.entries[i].hash, pulled.entries[i].hash);
  ASSERT_EQ(page.receipts.size(), pulled.receipts.size());
  for (const auto& receipt : page.receipts) {
    EXPECT_EQ(receipt.epoch, after.epoch);
    EXPECT_TRUE(seal::verify(receipt));
  }
  EXPECT_EQ(tablet->download(picture).body.size(), 100'000U);
  EXPECT_EQ(get(hub::audit_shops(*hub, shop, {}))[0].first_bad, "");
}

TEST_F(Backups, WhatCameAfterTheBackupCanBePushedAgain) {
  ASSERT_EQ(tablet->push(chain->many(5)).status, 200);
  back_up();
  const auto later = chain->many(5);
  ASSERT_EQ(tablet->push(later).status, 200);
  get(restore());
  serve_restored();
  const auto session = tablet->sign_in();
  EXPECT_EQ(session.hub_seq, 8U);
  EXPECT_EQ(tablet->push(later).status, 200);
  EXPECT_EQ(tablet->pulled().entries.size(), 13U);
}

TEST_F(Backups, IntoTheSameFolderAgainOnlyNewFilesAreCopied) {
  tablet->upload("first picture");
  EXPECT_EQ(back_up()[0].files_copied, 1U);
  tablet->upload("second picture");
  ASSERT_EQ(tablet->push(chain->many(3)).status, 200);
  const auto second = back_up();
  EXPECT_EQ(second[0].files, 2U);
  EXPECT_EQ(second[0].files_copied, 1U);
  const std::size_t files = files_below(backup());
  EXPECT_EQ(back_up()[0].files_copied, 0U);
  EXPECT_EQ(files_below(backup()), files) << "older databases are taken away";
  EXPECT_EQ(get(restore())[0].files, 2U);
}

TEST_F(Backups, ABackupThatIsStoppedLeavesTheOneBeforeWhole) {
  ASSERT_EQ(tablet->push(chain->many(5)).status, 200);
  tablet->upload("first picture");
  back_up();
  ASSERT_EQ(tablet->push(chain->many(5)).status, 200);
  tablet->upload("second picture");
  std::stop_source stop;
  stop.request_stop();
  EXPECT_EQ(code_of(hub::back_up(*hub, backup(), stop.get_token())), Code::Stopped);
  const auto restored = get(restore());
  EXPECT_EQ(restored[0].entries, 8U);
  EXPECT_EQ(restored[0].files, 1U);
}

TEST_F(Backups, ItHoldsTheKeyForItsOwnerAloneAndSaysSo) {
  back_up();
  struct stat about {};
  ASSERT_EQ(::stat((backup() / "identity.key").c_str(), &about), 0);
  EXPECT_EQ(about.st_mode & 0777, 0600U);
  EXPECT_NE(whole_file(backup() / "README.txt").find("secret key"), std::string::npos);
  EXPECT_EQ(code_of(hub::Hub::open(backup(), parts())), Code::NoSuchFile)
      << "a backup cannot be served by mistake";
}

TEST_F(Backups, IntoAHubsFolderOrAnotherHubsBackupIsRefused) {
  EXPECT_EQ(code_of(hub::back_up(*hub, path(), {})), Code::NotAllowed);
  back_up();
  good(hub::Hub::make(folder.path() / "other", "other", random));
  const auto other = get(hub::Hub::open(folder.path() / "other", parts()));
  EXPECT_EQ(code_of(hub::back_up(*other, backup(), {})), Code::WrongKey);
}

TEST_F(Backups, ACopyOfALiveFolderWithoutItsWalIsRefused) {
  ASSERT_EQ(tablet->push(chain->many(5)).status, 200);
  fs::copy(path(), backup(), fs::copy_options::recursive);  // while it is open
  for (const auto& item : fs::recursive_directory_iterator(backup()))
    if (item.path().string().ends_with("-wal") || item.path().string().ends_with("-shm"))
      fs::remove(item.path());
  const auto refused = restore();
  ASSERT_EQ(code_of(refused), Code::Malformed);
  EXPECT_EQ(refused.error().arg("cause"),
            "a copied hub folder, without the -wal file that belongs to it");
  EXPECT_EQ(refused.error().arg("file"), "shops/" + shop.hex() + "/shop.db");
  EXPECT_FALSE(fs::exists(again()));
}

TEST_F(Backups, AnyCopyOfAHubsFolderAndAnEmptyOneAreRefused) {
  fs::copy(path(), backup(), fs::copy_options::recursive);
  const auto refused = restore();
  ASSERT_EQ(code_of(refused), Code::Malformed);
  EXPECT_EQ(refused.error().arg("cause"), "a copied hub folder, made by no backup");
  fs::remove_all(backup());
  fs::create_directory(backup());
  EXPECT_EQ(code_of(restore()), Code::NoSuchFile);
}

TEST_F(Backups, AFileThatTheManifestDoesNotNameToTheByteIsRefusedAndNamed) {
  ASSERT_EQ(tablet->push(chain->many(5)).status, 200);
  tablet->upload("first picture");
  back_up();
  const fs::path database = only(shop_backup(), ".db");
  // Somebody put today's file in the place of the copy.
  fs::copy_file(shop_folder(shop) / "shop.db", database, fs::copy_options::overwrite_existing);
  auto refused = restore();
  ASSERT_EQ(code_of(refused), Code::BadHash);
  EXPECT_EQ(refused.error().subject, database.string());
  EXPECT_FALSE(fs::exists(again())) << "nothing was made";
  back_up();
  const fs::path list = only(shop_backup(), ".txt");
  std::ofstream(list, std::ios::app) << std::string(64, '0') << "\n";
  refused = restore();
  ASSERT_EQ(code_of(refused), Code::BadHash);
  EXPECT_EQ(refused.error().subject, list.string());
}

TEST_F(Backups, AForeignIdentityANewerManifestAndAFullPlaceAreRefused) {
  back_up();
  fs::create_directory(again());
  std::ofstream(again() / "something") << "there";
  EXPECT_EQ(code_of(restore()), Code::AlreadyDone);
  fs::remove_all(again());
  fs::rename(backup() / "identity.key", folder.path() / "key");
  good(hub_test_key(77).save(backup() / "identity.key"));
  EXPECT_EQ(code_of(restore()), Code::WrongKey);
  fs::rename(folder.path() / "key", backup() / "identity.key");
  auto manifest = get(hub::read_manifest(backup()));
  manifest.format = 2;
  good(hub::write_manifest(backup(), manifest));
  EXPECT_EQ(code_of(restore()), Code::NewerSchema);
  manifest.format = 1;
  manifest.shops[0].database = "../../../hub/shops/x";
  good(hub::write_manifest(backup(), manifest));
  EXPECT_EQ(code_of(restore()), Code::Malformed);
}

TEST_F(Backups, AFileThatIsDamagedInTheBackupIsNamedAndComesAgain) {
  const std::string bytes = "first picture";
  const Hash picture = tablet->upload(bytes);
  back_up();
  const std::string name = picture.hex();
  std::ofstream(shop_backup() / "blobs" / name.substr(0, 2) / name.substr(2, 2) / name,
                std::ios::trunc)
      << "fjrst picture";
  const auto restored = get(restore());
  EXPECT_EQ(restored[0].not_there, std::vector{picture});
  serve_restored();
  tablet->sign_in();
  EXPECT_EQ(problem_type(tablet->download(picture)), "/problems/not-here");
  tablet->upload(bytes);
  EXPECT_EQ(tablet->download(picture).body, bytes);
}

TEST_F(Backups, TakenUnderLoadItIsOneMomentOfTheShop) {
  const auto place = hub->shops().at(0);
  std::vector<std::vector<seal::SealedEntry>> batches;
  for (int i = 0; i < 60; ++i) batches.push_back(chain->many(50));
  std::atomic<std::size_t> pushed = 0;
  std::jthread pushing([&] {
    for (const auto& batch : batches) {
      hub->at_shop(place, [&](sync::HubShop&) {
        EXPECT_EQ(tablet->push(batch).status, 200);
        tablet->upload("picture " + std::to_string(pushed));
        return true;
      });
      ++pushed;
    }
  });
  while (pushed < 5) std::this_thread::yield();
  int copies = 0;
  std::uint64_t last = 0;
  while (pushed < batches.size() || copies == 0) {
    last = back_up()[0].entries;
    ++copies;
    EXPECT_EQ((last - 3) % 50, 0U) << "whole pushes only";
  }
  pushing.join();
  EXPECT_GE(copies, 2) << "several while it was written to";
  const auto restored = get(restore());
  EXPECT_EQ(restored[0].entries, last);
  EXPECT_TRUE(restored[0].not_there.empty());
  serve_restored();
  EXPECT_EQ(get(hub::audit_shops(*hub, shop, {}))[0].first_bad, "");
  EXPECT_EQ(get(hub::audit_shops(*hub, shop, {}))[0].entries, last);
}

}  // namespace
}  // namespace jambline::test
