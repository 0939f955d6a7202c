// Power goes at every single operation, in every way the disk may then look: what was reported as
// stored is whole, and nothing under a blob's name is anything but whole.
#include <gtest/gtest.h>

#include "blobs/blob_store.h"
#include "tests/blobs/faulty_files.h"
#include "tests/blobs/sample_blobs.h"

namespace jambline::test {
namespace {

using blobs::BlobName;
using blobs::BlobStore;

constexpr std::uint64_t blob_count = 6;

// Opens, stores blob_count blobs of which one comes twice; what was reported as stored.
std::vector<BlobName> work(FaultyFiles& files) {
  std::vector<BlobName> stored;
  const auto store = BlobStore::open(files, "/blobs");
  if (!store) return stored;
  for (const std::uint64_t number : {0, 1, 2, 1, 3, 4, 5}) {
    auto writer = (*store)->begin();
    if (!writer) continue;
    const auto bytes = sample(number, 1500 + 700 * number);
    if (!writer->write(std::span(bytes).first(1000))) continue;
    if (!writer->write(std::span(bytes).subspan(1000))) continue;
    if (const auto name = writer->finish()) stored.push_back(*name);
  }
  return stored;
}

void expect_whole(FaultyFiles& disk, const std::vector<BlobName>& stored, const char* when) {
  if (!disk.list("/blobs")) {
    EXPECT_TRUE(stored.empty()) << when;
    return;
  }
  const auto store = BlobStore::open(disk, "/blobs");
  ASSERT_TRUE(store) << when;
  for (const BlobName& name : stored) {
    const auto whole = (*store)->check(name);
    EXPECT_TRUE(whole) << when << ": " << name.hex() << " was stored, now "
                       << code_name(whole.error().code);
  }
  const auto report = (*store)->scrub({}, nullptr).value();
  EXPECT_TRUE(report.damaged.empty()) << when;
  EXPECT_TRUE(report.unreadable.empty()) << when;
  EXPECT_TRUE(report.strange.empty()) << when;
  EXPECT_TRUE(disk.list("/blobs/incoming")->empty()) << when;
}

std::uint64_t operations_of_the_work() {
  FaultyFiles files;
  EXPECT_EQ(work(files).size(), blob_count + 1);
  return files.operations();
}

void lose_power_everywhere(Loss loss, std::uint64_t seeds) {
  const std::uint64_t operations = operations_of_the_work();
  ASSERT_GT(operations, 40U);
  for (std::uint64_t at = 1; at <= operations + 1; ++at) {
    FaultyFiles files;
    files.power_off_at(at);
    const auto stored = work(files);
    for (std::uint64_t seed = 0; seed < seeds; ++seed) {
      const std::string when = "operation " + std::to_string(at) + " seed " + std::to_string(seed);
      const auto disk = files.after_power_loss(loss, at * 1000 + seed);
      expect_whole(*disk, stored, when.c_str());
      EXPECT_EQ(work(*disk).size(), blob_count + 1) << when;  // and the work can be done again
      if (::testing::Test::HasFailure()) return;
    }
  }
}

TEST(PowerLoss, StoredBlobsSurviveWhenNothingUnsyncedIsLeft) {
  lose_power_everywhere(Loss::Dropped, 1);
}
TEST(PowerLoss, StoredBlobsSurviveWhenOnlyNamesAreLeft) {
  lose_power_everywhere(Loss::NamesKept, 1);
}
TEST(PowerLoss, StoredBlobsSurviveWhenOnlyBytesAreLeft) {
  lose_power_everywhere(Loss::BytesKept, 1);
}
TEST(PowerLoss, StoredBlobsSurviveTornWrites) {
  lose_power_everywhere(Loss::Torn, 40);
}

// Two losses in a row: the second start must not trust names that the first one left unsynced.
TEST(PowerLoss, StoredBlobsSurviveASecondLoss) {
  const std::uint64_t operations = operations_of_the_work();
  for (std::uint64_t first = 1; first <= operations; first += 3) {
    for (std::uint64_t second = 1; second <= operations; second += 5) {
      FaultyFiles files;
      files.power_off_at(first);
      auto stored = work(files);
      const auto disk = files.after_power_loss(Loss::Torn, first);
      disk->power_off_at(second);
      for (const BlobName& name : work(*disk)) stored.push_back(name);
      const auto last = disk->after_power_loss(Loss::Torn, second);
      expect_whole(*last, stored, "second loss");
      if (::testing::Test::HasFailure()) return;
    }
  }
}

// A process that is killed and started again finds names that live in memory only.
TEST(PowerLoss, StoredBlobsSurviveARestartWithoutALossBefore) {
  const std::uint64_t operations = operations_of_the_work();
  for (std::uint64_t at = 1; at <= operations; ++at) {
    FaultyFiles files;
    files.refuse_at(at, Code::FileFailed);
    work(files);
    const auto stored = work(files);
    EXPECT_EQ(stored.size(), blob_count + 1);
    expect_whole(*files.after_power_loss(Loss::Dropped, at), stored, "restart");
    if (::testing::Test::HasFailure()) return;
  }
}

TEST(PowerLoss, ACopyThatFindsABlobAlreadyThereMakesItDurable) {
  FaultyFiles source;
  const auto from = BlobStore::open(source, "/from").value();
  const std::vector<BlobName> names{from->put(sample(1, 4000)).value()};
  FaultyFiles target;
  std::uint64_t last = 0;
  {
    FaultyFiles probe;
    ASSERT_TRUE(BlobStore::open(probe, "/blobs").value()->put(sample(1, 4000)));
    last = probe.operations();
  }
  target.refuse_at(last, Code::FileFailed);  // the sync of the folder, after the rename
  ASSERT_FALSE(BlobStore::open(target, "/blobs").value()->put(sample(1, 4000)));
  const auto to = BlobStore::open(target, "/blobs").value();
  EXPECT_EQ(blobs::copy_blobs(*from, *to, names, {}, nullptr)->already_there, 1U);
  expect_whole(*target.after_power_loss(Loss::Dropped, 1), names, "after the copy");
}

}  // namespace
}  // namespace jambline::test
