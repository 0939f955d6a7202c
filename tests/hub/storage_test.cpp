// Every storage of a hub is held to one page: the file of a shop, and the memory of the simulator.
#include "hub/shop_file.h"
#include "tests/hub/storage_conformance.h"
#include "tests/simulator/memory_hub.h"

namespace jambline::test {
namespace {

class MemoryHome final : public HubStorageHome {
 public:
  MemoryHome(const ShopId& shop, const seal::Epoch& epoch) {
    disk_->shop = shop;
    disk_->epoch = epoch;
  }
  Result<std::unique_ptr<sync::HubStorage>> open() override {
    return std::make_unique<MemoryHubStorage>(
        disk_, [](std::uint16_t kind) { return kind == erasable_kind; });
  }
  void set_full(bool full) override { disk_->full = full; }

 private:
  std::shared_ptr<MemoryShop> disk_ = std::make_shared<MemoryShop>();
};

INSTANTIATE_TEST_SUITE_P(InMemory, HubStorageTest,
                         ::testing::Values([](const ShopId& shop, const seal::Epoch& epoch) {
                           return std::make_unique<MemoryHome>(shop, epoch);
                         }));

class FileHome final : public HubStorageHome {
 public:
  FileHome(const ShopId& shop, const seal::Epoch& epoch) {
    good(hub::SqliteHubStorage::make(folder_.path(), shop, epoch));
  }
  Result<std::unique_ptr<sync::HubStorage>> open() override {
    hub::ShopFileOptions options;
    options.erasable_kinds = {erasable_kind};
    if (full_) options.most_pages = 1;  // SQLite takes the size that the file has
    JAMBLINE_ASSIGN(auto out, hub::SqliteHubStorage::open(folder_.path(), options));
    return out;
  }
  void set_full(bool full) override { full_ = full; }

 private:
  HubTempFolder folder_;
  bool full_ = false;
};

INSTANTIATE_TEST_SUITE_P(OnDisk, HubStorageTest,
                         ::testing::Values([](const ShopId& shop, const seal::Epoch& epoch) {
                           return std::make_unique<FileHome>(shop, epoch);
                         }));

TEST(MemoryHub, ARestoredCopyHasANewEpochAndReceiptsOfIt) {
  SealedRun run;
  auto disk = std::make_shared<MemoryShop>();
  disk->shop = run.shop();
  disk->epoch = epoch_number(1);
  const auto hub = hub_test_key(200);
  MemoryHubStorage store(disk, [](std::uint16_t) { return false; });
  const auto founded = run.founded();
  get(store.append(std::vector{founded}, {}, [&](std::uint64_t first, std::uint64_t last) {
    seal::Receipt out;
    out.shop = run.shop();
    out.epoch = disk->epoch;
    out.hub_seq_first = first;
    out.hub_seq_last = last;
    seal::sign(out, hub);
    return out;
  }));
  const MemoryShop again = restored(*disk, epoch_number(2), 77, hub);
  EXPECT_EQ(again.epoch, epoch_number(2));
  EXPECT_EQ(again.blob_mark, 77U);
  ASSERT_EQ(again.receipts.size(), 1U);
  EXPECT_EQ(again.receipts.front().epoch, epoch_number(2));
  EXPECT_TRUE(seal::verify(again.receipts.front()));
  EXPECT_EQ(disk->receipts.front().epoch, epoch_number(1));
}

}  // namespace
}  // namespace jambline::test
