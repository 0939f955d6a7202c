// The disk fills up, or refuses, at every single place.
#include <gtest/gtest.h>

#include "blobs/blob_store.h"
#include "tests/blobs/faulty_files.h"
#include "tests/blobs/sample_blobs.h"

namespace jambline::test {
namespace {

using blobs::BlobName;
using blobs::BlobStore;

Result<BlobName> put_in_pieces(BlobStore& store, std::uint64_t number) {
  const auto bytes = sample(number, 4000);
  JAMBLINE_ASSIGN(auto writer, store.begin());
  for (std::size_t at = 0; at < bytes.size(); at += 1000)
    JAMBLINE_TRY(writer.write(std::span(bytes).subspan(at, 1000)));
  return writer.finish();
}

TEST(DiskFull, AtEveryWriteNothingHalfWrittenIsLeftAndWorkGoesOnWithRoom) {
  for (std::uint64_t at = 1; at <= 12; ++at) {
    FaultyFiles files;
    const auto store = BlobStore::open(files, "/blobs").value();
    files.full_at_write(at);
    std::vector<BlobName> stored;
    for (std::uint64_t number = 0; number < 3; ++number) {
      const auto name = put_in_pieces(*store, number);
      if (name)
        stored.push_back(*name);
      else
        EXPECT_EQ(name.error().code, Code::DiskFull);
    }
    EXPECT_EQ(stored.size(), (at - 1) / 4);
    EXPECT_TRUE(files.list("/blobs/incoming")->empty());
    EXPECT_EQ(store->scrub({}, nullptr)->blobs, stored.size());
    EXPECT_TRUE(store->scrub({}, nullptr)->damaged.empty());
    files.room_again();
    for (std::uint64_t number = 0; number < 3; ++number) EXPECT_TRUE(put_in_pieces(*store, number));
    EXPECT_EQ(store->scrub({}, nullptr)->blobs, 3U);
  }
}

// Whatever call is refused, and why: the caller hears of it, or the blob is stored.
TEST(DiskRefuses, AtEveryOperationTheCallerHearsTheReason) {
  std::uint64_t operations = 0;
  {
    FaultyFiles files;
    const auto store = BlobStore::open(files, "/blobs").value();
    ASSERT_TRUE(put_in_pieces(*store, 1));
    operations = files.operations();
  }
  // Opening: two folders made, their parents synced. Storing: create, 4 writes, sync, close, two
  // folders made, their parents synced, rename, folder synced. One fewer is a step left out.
  EXPECT_EQ(operations, 4U + 13U);
  for (const Code code : {Code::DiskFull, Code::ReadOnly, Code::FileFailed}) {
    for (std::uint64_t at = 1; at <= operations; ++at) {
      FaultyFiles files;
      files.refuse_at(at, code);
      const auto store = BlobStore::open(files, "/blobs");
      if (!store) {
        EXPECT_EQ(store.error().code, code);
        continue;
      }
      const auto name = put_in_pieces(**store, 1);
      ASSERT_FALSE(name) << "operation " << at << " was refused and nobody heard of it";
      EXPECT_EQ(name.error().code, code);
      EXPECT_TRUE((*store)->scrub({}, nullptr)->damaged.empty());
      EXPECT_TRUE(files.list("/blobs/incoming")->empty());
      EXPECT_TRUE(put_in_pieces(**store, 1));
    }
  }
}

TEST(DiskFull, ACopyEndsWithTheTargetsReason) {
  FaultyFiles source, target;
  const auto from = BlobStore::open(source, "/from").value();
  const auto to = BlobStore::open(target, "/to").value();
  const std::vector<BlobName> names{from->put(sample(1, 4000)).value()};
  target.full_at_write(1);
  EXPECT_EQ(blobs::copy_blobs(*from, *to, names, {}, nullptr).error().code, Code::DiskFull);
  EXPECT_TRUE(to->list()->empty());
  EXPECT_TRUE(target.list("/to/incoming")->empty());
}

}  // namespace
}  // namespace jambline::test
