// The files of a shop at the hub: the contract of sync/hub_files.h on disk and in memory, old
// parts, and damaged files set aside.
#include "hub/shop_files.h"

#include <fstream>
#include <sys/stat.h>

#include "tests/hub/files_conformance.h"
#include "tests/simulator/memory_hub.h"

namespace jambline::test {
namespace {

std::int64_t now_ms() {
  return std::int64_t{time(nullptr)} * 1000;
}

class DiskFilesHome final : public HubFilesHome {
 public:
  std::unique_ptr<sync::HubFiles> open() override {
    return get(hub::ShopFiles::open(disk_, folder_.path(), now_ms()));
  }

 private:
  HubTempFolder folder_;
  blobs::PosixFiles disk_;
};

class MemoryFilesHome final : public HubFilesHome {
 public:
  std::unique_ptr<sync::HubFiles> open() override {
    return std::make_unique<MemoryHubFiles>(shop_);
  }

 private:
  std::shared_ptr<MemoryShop> shop_ = std::make_shared<MemoryShop>();
};

INSTANTIATE_TEST_SUITE_P(OnDisk, HubFilesTest,
                         ::testing::Values([] { return std::make_unique<DiskFilesHome>(); }));
INSTANTIATE_TEST_SUITE_P(InMemory, HubFilesTest,
                         ::testing::Values([] { return std::make_unique<MemoryFilesHome>(); }));

class ShopFilesOnDisk : public ::testing::Test {
 protected:
  std::unique_ptr<hub::ShopFiles> open(std::int64_t later_ms = 0) {
    return get(hub::ShopFiles::open(disk, folder.path(), now_ms() + later_ms));
  }
  static sync::UploadId upload_of(std::string_view bytes) {
    sync::UploadId out;
    out.blob = seal::sha256(seal::bytes_of(bytes));
    out.size_bytes = bytes.size();
    return out;
  }
  static void keep(hub::ShopFiles& files, std::string_view bytes) {
    const auto upload = upload_of(bytes);
    good(files.begin(upload));
    {
      const auto sink = get(files.append(upload, 0));
      good(sink->write(seal::bytes_of(bytes)));
    }
    good(files.finish(upload));
  }

  HubTempFolder folder;
  blobs::PosixFiles disk;
};

TEST_F(ShopFilesOnDisk, PartsOfSevenDaysGoAndYoungerOnesStay) {
  const auto upload = upload_of("0123456789");
  good(open()->begin(upload));
  constexpr std::int64_t day_ms = 24 * 3'600'000;
  EXPECT_EQ(get(open(6 * day_ms)->parts()), 1U);
  EXPECT_EQ(get(open(-6 * day_ms)->parts()), 1U);
  EXPECT_EQ(get(open(8 * day_ms)->parts()), 0U);
}

TEST_F(ShopFilesOnDisk, ADamagedFileIsSetAsideAndMayComeAgain) {
  const auto files = open();
  keep(*files, "first picture");
  keep(*files, "second picture");
  const Hash hurt = upload_of("first picture").blob;
  for (int turn = 0; turn < 2; ++turn) {
    std::ofstream(files->blobs().path_of(hurt), std::ios::trunc) << "fjrst picture";
    const auto found = get(files->set_damaged_aside({}));
    EXPECT_EQ(found.blobs, 2U);
    EXPECT_EQ(found.damaged, std::vector{hurt});
    EXPECT_FALSE(get(files->has(hurt)));
    EXPECT_TRUE(get(files->has(upload_of("second picture").blob)));
    keep(*files, "first picture");
    EXPECT_TRUE(get(files->set_damaged_aside({})).damaged.empty());
  }
  std::size_t aside = 0;
  for (const auto& item : std::filesystem::directory_iterator(folder.path() / "damaged"))
    aside += item.is_regular_file();
  EXPECT_EQ(aside, 2U) << "nothing that was set aside is written over";
}

}  // namespace
}  // namespace jambline::test
