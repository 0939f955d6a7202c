// A hub's database when the power goes or the disk is full at any write (FAULTS.md 3 and 4). Held
// against the promise of sync/hub_storage.h: what a call has returned survives; whole or not at
// all.
#include "hub/shop_file.h"
#include "tests/crash/power_loss_vfs.h"
#include "tests/hub/hub_folder.h"
#include "tests/hub/sealed_run.h"

namespace jambline::test {
namespace {

namespace fs = std::filesystem;
using hub::SqliteHubStorage;
using log::PowerLossVfs;

hub::ShopFileOptions on_test_disk() {
  hub::ShopFileOptions options;
  options.erasable_kinds = {erasable_kind};
  options.vfs = PowerLossVfs::name;
  return options;
}
hub::ShopFileOptions on_real_disk() {
  hub::ShopFileOptions options = on_test_disk();
  options.vfs.clear();
  return options;
}

class HubPowerLoss : public ::testing::Test {
 protected:
  Result<seal::Receipt> put(SqliteHubStorage& store, const std::vector<seal::SealedEntry>& entries,
                            std::vector<Hash> erased = {}) {
    return store.append(entries, erased, [&](std::uint64_t first, std::uint64_t last) {
      seal::Receipt out;
      out.shop = run.shop();
      out.epoch = store.epoch();
      out.device = entries.back().header.device;
      out.seq = entries.back().header.seq;
      out.hash = entries.back().hash;
      out.hub_seq_first = first;
      out.hub_seq_last = last;
      seal::sign(out, key);
      return out;
    });
  }
  // Everything there is, in one text.
  static std::string all_of(SqliteHubStorage& store) {
    std::string out;
    good(store.read_after(0, [&](std::uint64_t hub_seq, const auto&, auto, auto bytes) {
      out += std::to_string(hub_seq) + ":" + std::string(bytes) + "\n";
      return true;
    }));
    for (const auto& receipt : get(store.receipts(0, UINT64_MAX, 10'000)))
      out += seal::encode(receipt);
    return out;
  }

  SealedRun run;
  seal::SigningKey key = hub_test_key(200);
};

TEST_F(HubPowerLoss, WhateverHasAReceiptIsThereWheneverThePowerGoes) {
  const HubTempFolder folder;
  good(SqliteHubStorage::make(folder.path(), run.shop(), epoch_number(1)));
  std::vector<std::string> states;  // after each push
  PowerLossVfs disk;
  {
    auto store = get(SqliteHubStorage::open(folder.path(), on_test_disk()));
    states.push_back(all_of(*store));
    const auto founded = run.founded();
    get(put(*store, {founded}));
    states.push_back(all_of(*store));
    disk.said(1);
    for (int push = 2; push < 7; ++push) {
      std::vector<seal::SealedEntry> entries;
      for (int i = 0; i < push; ++i)
        entries.push_back(run.said(run.founder(), std::string(300, 'a'), erasable_kind));
      std::vector<Hash> erased;
      if (push % 3 == 0) {
        erased.push_back(entries[1].hash);
        entries.push_back(run.erasure(run.founder(), erased.front()));
      }
      get(put(*store, entries, erased));
      states.push_back(all_of(*store));
      disk.said(push);
    }
  }
  SeededRandom random(4);
  std::size_t said = 0;
  int images = 0;
  for (std::size_t count = 1; count <= disk.events.size(); ++count) {
    const auto& event = disk.events[count - 1];
    if (event.what == PowerLossVfs::Event::What::Said)
      said = static_cast<std::size_t>(event.offset);
    for (const auto loss : {PowerLossVfs::Loss::Nothing, PowerLossVfs::Loss::Unsynced,
                            PowerLossVfs::Loss::Some, PowerLossVfs::Loss::Torn}) {
      const HubTempFolder image;
      disk.build(count, loss, random, image.path());
      if (!fs::exists(image.path() / "shop.db")) continue;
      good(hub::write_epoch(image.path(), {epoch_number(1), 0}));
      ++images;
      const std::string where = "after event " + std::to_string(count) + ", loss " +
                                std::to_string(static_cast<int>(loss));
      auto store = SqliteHubStorage::open(image.path(), on_real_disk());
      ASSERT_TRUE(store) << where << " " << error_words(store.error());
      const std::string found = all_of(**store);
      const auto state = std::find(states.begin(), states.end(), found);
      ASSERT_NE(state, states.end()) << "half a push " << where;
      ASSERT_GE(static_cast<std::size_t>(state - states.begin()), said) << where;
    }
  }
  EXPECT_GT(images, 100);
}

TEST_F(HubPowerLoss, AFullDiskAtAnyWriteRefusesWholePushesAndGoesOn) {
  const HubTempFolder base;
  good(SqliteHubStorage::make(base.path(), run.shop(), epoch_number(1)));
  std::vector<std::vector<seal::SealedEntry>> pushes{{run.founded()}};
  for (int push = 0; push < 4; ++push) {
    pushes.emplace_back();
    for (int i = 0; i < 6; ++i)
      pushes.back().push_back(run.said(run.founder(), std::string(3000, 'b')));
  }
  bool met = true;
  std::uint64_t refusals = 0;
  for (std::uint64_t at_write = 0; met; ++at_write) {
    const HubTempFolder folder;
    fs::copy(base.path(), folder.path(), fs::copy_options::recursive);
    PowerLossVfs disk;
    met = false;
    disk.full = [&](std::uint64_t number) {
      const bool none = number >= at_write;
      met = met || none;
      return none;
    };
    auto store = SqliteHubStorage::open(folder.path(), on_test_disk());
    if (!store) {
      EXPECT_EQ(store.error().code, Code::DiskFull) << at_write;
      disk.full = nullptr;
      store = SqliteHubStorage::open(folder.path(), on_test_disk());
      ASSERT_TRUE(store) << at_write << " " << error_words(store.error());
    }
    for (const auto& push : pushes) {
      const std::string before = all_of(**store);
      auto receipt = put(**store, push);
      if (!receipt) {
        ++refusals;
        EXPECT_EQ(receipt.error().code, Code::DiskFull) << at_write;
        EXPECT_EQ(all_of(**store), before) << "something half " << at_write;
        disk.full = nullptr;  // somebody made room
        receipt = put(**store, push);
      }
      ASSERT_TRUE(receipt) << at_write << " " << error_words(receipt.error());
    }
    EXPECT_EQ((*store)->hub_seq(), 25U);
    store->reset();
    EXPECT_EQ(get(SqliteHubStorage::open(folder.path(), on_real_disk()))->hub_seq(), 25U);
  }
  EXPECT_GT(refusals, 10U);
}

}  // namespace
}  // namespace jambline::test
