// A hub whose disk is full says 507, keeps nothing half, and goes on when there is room (FAULTS.md
// 4); a picture that was cut is kept as far as it came. Held against SYNC.md C13 and FAULTS.md.
#include "tests/blobs/faulty_files.h"
#include "tests/hub/hub_world.h"

namespace jambline::test {
namespace {

class FullHub : public HubWorld {
 protected:
  void reopen_with(std::int64_t most_pages) {
    hub.reset();
    auto with = parts();
    with.storage.most_pages = most_pages;  // SQLite takes no more than the file has by then
    hub = get(hub::Hub::open(path(), with));
  }
};

TEST_F(FullHub, APushIsAnsweredWith507AndTakenWhenThereIsRoom) {
  const ShopId shop = get(hub::found_shop(*hub));
  auto tablet = admitted(2, shop);
  DeviceChain chain(tablet, shop);
  std::vector<seal::SealedEntry> large;
  for (int i = 0; i < 15; ++i) large.push_back(chain.said(std::string(60'000, 'x')));
  reopen_with(1);
  auto full = device(2, shop);
  full.token = tablet.token;
  // Also who signs in is not written down; that is said in the same way.
  const auto challenge = full.send(full.request(sync::Path::AskChallenge, sync::Method::Post,
                                                to_json(sync::ChallengeAsk{full.key().device()})));
  ASSERT_EQ(challenge.status, 200);
  full.sign_in();
  const auto refused = full.push(large);
  EXPECT_EQ(refused.status, 507) << refused.body;
  EXPECT_EQ(problem_type(refused), "/problems/full");
  EXPECT_EQ(full.pulled().entries.size(), 3U);
  reopen_with(0);
  auto again = device(2, shop);
  again.sign_in();
  EXPECT_EQ(again.push(large).status, 200);
  EXPECT_EQ(get(hub::audit_shops(*hub, shop, {}))[0].first_bad, "");
}

TEST(FullFiles, APictureIsAnsweredWithDiskFullAndGoesOnWhereItWas) {
  FaultyFiles disk;
  good(disk.make_folder("/shop"));
  const auto files = get(hub::ShopFiles::open(disk, "/shop", 0));
  const std::string bytes(10'000, 'p');
  sync::UploadId upload;
  upload.blob = seal::sha256(seal::bytes_of(bytes));
  upload.size_bytes = bytes.size();
  good(files->begin(upload));
  {
    const auto sink = get(files->append(upload, 0));
    good(sink->write(seal::bytes_of(bytes.substr(0, 4000))));
    disk.full_at_write(disk.writes() + 1);
    EXPECT_EQ(code_of(sink->write(seal::bytes_of(bytes.substr(4000)))), Code::DiskFull);
  }
  EXPECT_FALSE(get(files->has(upload.blob)));
  disk.room_again();
  const std::uint64_t offset = get(files->offset(upload));
  EXPECT_GE(offset, 4000U);
  {
    const auto sink = get(files->append(upload, offset));
    good(sink->write(seal::bytes_of(bytes.substr(offset))));
  }
  good(files->finish(upload));
  EXPECT_TRUE(get(files->has(upload.blob)));
}

TEST(FullFiles, APowerLossLeavesAWholeFileOrNone) {
  const std::string bytes(3000, 'p');
  sync::UploadId upload;
  upload.blob = seal::sha256(seal::bytes_of(bytes));
  upload.size_bytes = bytes.size();
  std::uint64_t operations = 0;
  for (std::uint64_t off_at = 1; off_at == 1 || off_at <= operations; ++off_at) {
    FaultyFiles disk;
    good(disk.make_folder("/shop"));
    good(disk.sync_folder("/"));
    disk.power_off_at(disk.operations() + off_at);
    bool said = false;
    if (const auto files = hub::ShopFiles::open(disk, "/shop", 0); files) {
      if ((*files)->begin(upload)) {
        if (auto sink = (*files)->append(upload, 0))
          if ((*sink)->write(seal::bytes_of(bytes))) {
            sink->reset();
            said = static_cast<bool>((*files)->finish(upload));
          }
      }
    }
    operations = std::max(operations, disk.operations());
    for (const auto loss : {Loss::Dropped, Loss::NamesKept, Loss::BytesKept, Loss::Torn}) {
      const auto after = disk.after_power_loss(loss, off_at);
      const auto files = hub::ShopFiles::open(*after, "/shop", 0);
      if (!files) {
        EXPECT_FALSE(said) << off_at;
        continue;
      }
      if (said) {
        EXPECT_TRUE(get((*files)->has(upload.blob))) << off_at;
      }
      if (get((*files)->has(upload.blob))) {
        good((*files)->blobs().check(upload.blob));
      }
    }
  }
  EXPECT_GT(operations, 10U);
}

}  // namespace
}  // namespace jambline::test
