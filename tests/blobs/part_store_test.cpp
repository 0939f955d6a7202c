// Files that come in parts, over cut connections, restarts, lost power and full disks. Our own
// design.
#include "blobs/part_store.h"

#include <gtest/gtest.h>

#include "tests/blobs/faulty_files.h"
#include "tests/blobs/sample_blobs.h"

namespace jambline::test {
namespace {

using blobs::BlobName;
using blobs::BlobStore;
using blobs::PartStore;

struct Parts {
  explicit Parts(FaultyFiles& files)
      : whole(BlobStore::open(files, "/blobs").value()),
        parts(PartStore::open(files, "/parts", *whole).value()) {}
  std::unique_ptr<BlobStore> whole;
  std::unique_ptr<PartStore> parts;
};

BlobName name_of(const std::vector<std::uint8_t>& bytes) {
  blobs::Hasher hasher;
  hasher.update(bytes);
  return *hasher.finish();
}

Status add(PartStore& parts, const std::string& name, std::span<const std::uint8_t> bytes) {
  JAMBLINE_ASSIGN(const auto at, parts.size_bytes(name));
  JAMBLINE_ASSIGN(auto writer, parts.append(name, at));
  return writer.write(bytes);
}

TEST(PartStore, APartGrowsOverCutConnectionsAndBecomesABlob) {
  FaultyFiles files;
  Parts disk(files);
  const auto bytes = sample(1, 5000);
  ASSERT_TRUE(disk.parts->begin("up-1"));
  EXPECT_EQ(*disk.parts->size_bytes("up-1"), 0U);
  for (const std::size_t at : {0U, 2000U, 4000U}) {
    auto writer = disk.parts->append("up-1", at);
    ASSERT_TRUE(writer);
    const auto piece = std::span(bytes).subspan(at, std::min<std::size_t>(2000, bytes.size() - at));
    ASSERT_TRUE(writer->write(piece));
    EXPECT_EQ(writer->size_bytes(), at + piece.size());
  }
  ASSERT_TRUE(disk.parts->finish("up-1", name_of(bytes)));
  EXPECT_EQ(*disk.whole->get(name_of(bytes)), bytes);
  EXPECT_TRUE(disk.parts->list()->empty());
  EXPECT_EQ(disk.parts->size_bytes("up-1").error().code, Code::NoSuchFile);
}

TEST(PartStore, GoesOnAfterARestartWhereItWas) {
  FaultyFiles files;
  const auto bytes = sample(2, 5000);
  {
    Parts disk(files);
    ASSERT_TRUE(disk.parts->begin("up-2"));
    ASSERT_TRUE(add(*disk.parts, "up-2", std::span(bytes).first(1234)));
  }
  Parts disk(files);
  EXPECT_EQ(*disk.parts->size_bytes("up-2"), 1234U);
  ASSERT_EQ(disk.parts->list()->size(), 1U);
  ASSERT_TRUE(add(*disk.parts, "up-2", std::span(bytes).subspan(1234)));
  ASSERT_TRUE(disk.parts->finish("up-2", name_of(bytes)));
  EXPECT_TRUE(disk.whole->check(name_of(bytes)));
}

TEST(PartStore, HasOneWriterAtATimeAndOneOffset) {
  FaultyFiles files;
  Parts disk(files);
  const auto bytes = sample(3, 100);
  ASSERT_TRUE(disk.parts->begin("up-3"));
  EXPECT_EQ(disk.parts->begin("up-3").error().code, Code::AlreadyDone);
  {
    auto first = disk.parts->append("up-3", 0);
    ASSERT_TRUE(first);
    EXPECT_EQ(disk.parts->append("up-3", 0).error().code, Code::Busy);
    ASSERT_TRUE(first->write(bytes));
    EXPECT_EQ(disk.parts->append("up-3", 100).error().code, Code::Busy);
  }
  for (const std::uint64_t offset : {0U, 99U, 101U}) {
    const auto wrong = disk.parts->append("up-3", offset);
    ASSERT_FALSE(wrong);
    EXPECT_EQ(wrong.error().code, Code::OutOfRange);
    EXPECT_EQ(wrong.error().arg("value"), "100");
  }
  EXPECT_TRUE(disk.parts->append("up-3", 100));
  EXPECT_EQ(disk.parts->append("nobody", 0).error().code, Code::NoSuchFile);
}

TEST(PartStore, OfOtherBytesThanItsHashIsGone) {
  for (const bool restarted : {false, true}) {
    FaultyFiles files;
    auto disk = std::make_unique<Parts>(files);
    ASSERT_TRUE(disk->parts->begin("up-4"));
    ASSERT_TRUE(add(*disk->parts, "up-4", sample(4, 100)));
    if (restarted) disk = std::make_unique<Parts>(files);
    const auto wrong = disk->parts->finish("up-4", name_of(sample(5, 100)));
    ASSERT_FALSE(wrong);
    EXPECT_EQ(wrong.error().code, Code::BadHash);
    EXPECT_TRUE(disk->parts->list()->empty());
    EXPECT_TRUE(disk->whole->list()->empty());
    // The same name may begin again, and its old bytes do not count.
    ASSERT_TRUE(disk->parts->begin("up-4"));
    ASSERT_TRUE(add(*disk->parts, "up-4", sample(5, 100)));
    EXPECT_TRUE(disk->parts->finish("up-4", name_of(sample(5, 100))));
  }
}

TEST(PartStore, RefusesNamesThatAreWays) {
  FaultyFiles files;
  Parts disk(files);
  for (const char* name :
       {"", "..", ".", "../up", "a/b", "/etc", "a\\b", ".hidden", "Up", "a b", "\xc3\xa4"}) {
    EXPECT_EQ(disk.parts->begin(name).error().code, Code::Malformed) << name;
    EXPECT_EQ(disk.parts->size_bytes(name).error().code, Code::Malformed) << name;
    EXPECT_EQ(disk.parts->append(name, 0).error().code, Code::Malformed) << name;
    EXPECT_EQ(disk.parts->finish(name, {}).error().code, Code::Malformed) << name;
    EXPECT_EQ(disk.parts->remove(name).error().code, Code::Malformed) << name;
  }
  EXPECT_FALSE(disk.parts->begin(std::string(161, 'a')));
  EXPECT_TRUE(disk.parts->begin(std::string(160, 'a')));
  EXPECT_TRUE(disk.parts->begin("0a-9..z"));
}

TEST(PartStore, APartThatIsTakenAwayIsGone) {
  FaultyFiles files;
  Parts disk(files);
  ASSERT_TRUE(disk.parts->begin("up-6"));
  ASSERT_TRUE(add(*disk.parts, "up-6", sample(6, 100)));
  ASSERT_TRUE(disk.parts->remove("up-6"));
  EXPECT_EQ(disk.parts->size_bytes("up-6").error().code, Code::NoSuchFile);
  EXPECT_EQ(disk.parts->remove("up-6").error().code, Code::NoSuchFile);
}

TEST(PartStore, OnAFullDiskItKeepsWhatItHasAndGoesOnWithRoom) {
  const auto bytes = sample(7, 4000);
  for (std::uint64_t at = 1; at <= 4; ++at) {
    FaultyFiles files;
    Parts disk(files);
    ASSERT_TRUE(disk.parts->begin("up-7"));
    files.full_at_write(at);
    Status written;
    for (std::size_t from = 0; from < bytes.size() && written; from += 1000)
      written = add(*disk.parts, "up-7", std::span(bytes).subspan(from, 1000));
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, Code::DiskFull);
    files.room_again();
    const auto here = disk.parts->size_bytes("up-7").value();
    EXPECT_EQ(here, (at - 1) * 1000 + 500);  // half of the write that was refused
    ASSERT_TRUE(add(*disk.parts, "up-7", std::span(bytes).subspan(here)));
    ASSERT_TRUE(disk.parts->finish("up-7", name_of(bytes)));
    EXPECT_EQ(*disk.whole->get(name_of(bytes)), bytes);
  }
}

// One file in three pieces; what was said to be whole.
std::optional<BlobName> come_in(FaultyFiles& files, const std::vector<std::uint8_t>& bytes) {
  auto whole = BlobStore::open(files, "/blobs");
  if (!whole) return std::nullopt;
  auto parts = PartStore::open(files, "/parts", **whole);
  if (!parts) return std::nullopt;
  if (auto begun = (*parts)->begin("up"); !begun && begun.error().code != Code::AlreadyDone)
    return std::nullopt;
  while (true) {
    const auto here = (*parts)->size_bytes("up");
    if (!here) return std::nullopt;
    if (*here >= bytes.size()) break;
    const std::size_t count = std::min<std::size_t>(1500, bytes.size() - *here);
    if (!add(**parts, "up", std::span(bytes).subspan(*here, count))) return std::nullopt;
  }
  if (!(*parts)->finish("up", name_of(bytes))) return std::nullopt;
  return name_of(bytes);
}

TEST(PartStorePowerLoss, WhatWasSaidToBeWholeIsWholeAndTheRestComesAgain) {
  const auto bytes = sample(8, 4096);
  std::uint64_t operations = 0;
  {
    FaultyFiles files;
    ASSERT_TRUE(come_in(files, bytes));
    operations = files.operations();
  }
  ASSERT_GT(operations, 15U);
  for (const Loss loss : {Loss::Dropped, Loss::NamesKept, Loss::BytesKept, Loss::Torn}) {
    for (std::uint64_t at = 1; at <= operations + 1; ++at) {
      FaultyFiles files;
      files.power_off_at(at);
      const auto said = come_in(files, bytes);
      for (std::uint64_t seed = 0; seed < (loss == Loss::Torn ? 20U : 1U); ++seed) {
        const auto disk = files.after_power_loss(loss, at * 1000 + seed);
        const std::string when = "loss " + std::to_string(static_cast<int>(loss)) + " operation " +
                                 std::to_string(at) + " seed " + std::to_string(seed);
        if (said) {
          const auto whole = BlobStore::open(*disk, "/blobs");
          ASSERT_TRUE(whole) << when;
          EXPECT_TRUE((*whole)->check(*said)) << when;
        }
        // Torn bytes are found by the hash, which takes the part away; the next time it comes
        // whole.
        bool came = false;
        for (int again = 0; again < 2 && !came; ++again) came = come_in(*disk, bytes).has_value();
        ASSERT_TRUE(came) << when;
        const auto whole = BlobStore::open(*disk, "/blobs").value();
        EXPECT_TRUE(whole->scrub({}, nullptr)->damaged.empty()) << when;
        EXPECT_EQ(*whole->get(name_of(bytes)), bytes) << when;
      }
    }
  }
}

}  // namespace
}  // namespace jambline::test
