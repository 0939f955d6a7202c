#include "blobs/blob_store.h"

#include <gtest/gtest.h>

#include "tests/blobs/faulty_files.h"
#include "tests/blobs/sample_blobs.h"

namespace jambline::test {
namespace {

using blobs::BlobName;
using blobs::BlobStore;

struct Store : ::testing::Test {
  FaultyFiles files;
  std::unique_ptr<BlobStore> store = BlobStore::open(files, "/blobs").value();
};

TEST_F(Store, WhatIsPutComesBack) {
  const auto bytes = sample(1, 700000);
  const BlobName name = store->put(bytes).value();
  EXPECT_EQ(store->get(name).value(), bytes);
  EXPECT_EQ(store->size_bytes(name).value(), bytes.size());
  EXPECT_TRUE(store->has(name).value());
  EXPECT_EQ(store->path_of(name).string(),
            "/blobs/" + name.hex().substr(0, 2) + "/" + name.hex().substr(2, 2) + "/" + name.hex());
}

TEST_F(Store, PiecesGiveTheSameNameAsTheWhole) {
  const auto bytes = sample(2, 10000);
  const BlobName whole = store->put(bytes).value();
  auto writer = store->begin().value();
  for (std::size_t at = 0; at < bytes.size(); at += 999)
    ASSERT_TRUE(writer.write(std::span(bytes).subspan(at, std::min<std::size_t>(999, 10000 - at))));
  EXPECT_EQ(writer.finish().value(), whole);
}

TEST_F(Store, PuttingTwiceKeepsOneBlob) {
  const auto name = store->put(sample(3, 100)).value();
  EXPECT_EQ(store->put(sample(3, 100)).value(), name);
  EXPECT_EQ(store->list().value(), std::vector<BlobName>{name});
  EXPECT_TRUE(files.list("/blobs/incoming")->empty());
}

TEST_F(Store, AnUnknownBlobIsNoSuchFile) {
  const BlobName unknown = BlobName::parse(std::string(64, 'a')).value();
  EXPECT_FALSE(store->has(unknown).value());
  EXPECT_EQ(store->get(unknown).error().code, Code::NoSuchFile);
  EXPECT_EQ(store->check(unknown).error().code, Code::NoSuchFile);
}

TEST_F(Store, ADamagedBlobIsNamedAndLeftWhereItIs) {
  const auto name = store->put(sample(4, 5000)).value();
  const auto whole = store->put(sample(5, 5000)).value();
  files.damage(store->path_of(name));
  const auto got = store->get(name);
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().code, Code::BadHash);
  EXPECT_EQ(got.error().subject, store->path_of(name).string());
  EXPECT_EQ(got.error().arg("found").size(), 64U);
  const auto report = store->scrub({}, nullptr).value();
  EXPECT_EQ(report.damaged, std::vector<BlobName>{name});
  EXPECT_EQ(report.blobs, 2U);
  EXPECT_TRUE(store->has(name).value());
  EXPECT_TRUE(store->check(whole));
}

TEST_F(Store, PuttingTheRightBytesAgainHealsADamagedBlob) {
  const auto name = store->put(sample(4, 5000)).value();
  files.damage(store->path_of(name));
  ASSERT_TRUE(store->put(sample(4, 5000)));
  EXPECT_TRUE(store->check(name));
}

TEST_F(Store, OtherBytesThanExpectedAreNotKept) {
  const auto wanted = store->put(sample(6, 100)).value();
  auto writer = store->begin().value();
  ASSERT_TRUE(writer.write(sample(7, 100)));
  EXPECT_EQ(writer.finish(wanted).error().code, Code::BadHash);
  EXPECT_EQ(writer.finish(wanted).error().code, Code::BadHash);
  EXPECT_EQ(store->list()->size(), 1U);
  EXPECT_TRUE(files.list("/blobs/incoming")->empty());
}

TEST_F(Store, AnAbandonedWriterLeavesNothing) {
  {
    auto writer = store->begin().value();
    ASSERT_TRUE(writer.write(sample(8, 100)));
    EXPECT_EQ(files.list("/blobs/incoming")->size(), 1U);
  }
  EXPECT_TRUE(files.list("/blobs/incoming")->empty());
  EXPECT_TRUE(store->list()->empty());
}

TEST_F(Store, AFinishedWriterTakesNoMore) {
  auto writer = store->begin().value();
  ASSERT_TRUE(writer.finish());
  EXPECT_EQ(writer.write(sample(1, 1)).error().code, Code::AlreadyDone);
  EXPECT_EQ(writer.finish().error().code, Code::AlreadyDone);
}

TEST_F(Store, LeftoversOfACrashAreRemovedAtOpen) {
  ASSERT_TRUE(files.create("/blobs/incoming/17"));
  const auto again = BlobStore::open(files, "/blobs");
  ASSERT_TRUE(again);
  EXPECT_TRUE(files.list("/blobs/incoming")->empty());
}

TEST_F(Store, ABlobOverTheLimitIsRefused) {
  const auto name = store->put(sample(9, 1000)).value();
  const auto got = store->get(name, 999);
  EXPECT_EQ(got.error().code, Code::TooLarge);
  EXPECT_EQ(got.error().arg("limit_bytes"), "999");
  EXPECT_TRUE(store->get(name, 1000));
}

TEST_F(Store, FilesThatAreNoBlobAreNamedByScrubAndListedNowhere) {
  const auto name = store->put(sample(10, 10)).value();
  for (const char* folder : {"/blobs/zz", "/blobs/AB", "/blobs/00", "/blobs/00/00"})
    ASSERT_TRUE(files.make_folder(folder));
  ASSERT_TRUE(files.create("/blobs/readme"));
  ASSERT_TRUE(files.create("/blobs/00/00/" + std::string(64, 'a')));
  EXPECT_EQ(store->list().value(), std::vector<BlobName>{name});
  EXPECT_EQ(store->scrub({}, nullptr)->strange,
            (std::vector<std::string>{"00/00/" + std::string(64, 'a'), "AB", "readme", "zz"}));
}

TEST_F(Store, ScrubStopsWhenAskedAndSaysSo) {
  for (std::uint64_t n = 0; n < 10; ++n) ASSERT_TRUE(store->put(sample(n, 10)));
  std::stop_source stop;
  double last = 0;
  const auto report = store->scrub(stop.get_token(), [&](double part) {
    EXPECT_GT(part, last);
    last = part;
    if (part >= 0.5) stop.request_stop();
  });
  EXPECT_TRUE(report->stopped);
  EXPECT_EQ(report->blobs, 5U);
}

TEST_F(Store, AReadOnlyStoreReadsAndRefusesToWrite) {
  const auto name = store->put(sample(11, 10)).value();
  ASSERT_TRUE(files.create("/blobs/incoming/9"));
  const auto before = files.operations();
  const auto reader = BlobStore::open_read_only(files, "/blobs").value();
  EXPECT_TRUE(reader->get(name));
  EXPECT_EQ(reader->put(sample(1, 1)).error().code, Code::ReadOnly);
  EXPECT_EQ(blobs::copy_blobs(*store, *reader, {}, {}, nullptr).error().code, Code::ReadOnly);
  EXPECT_EQ(files.operations(), before);
  EXPECT_EQ(BlobStore::open_read_only(files, "/nowhere").error().code, Code::NoSuchFile);
}

TEST_F(Store, CopyingTakesWholeBlobsAndNamesTheOthers) {
  FaultyFiles other;
  const auto target = BlobStore::open(other, "/copy").value();
  std::vector<BlobName> names;
  for (std::uint64_t n = 0; n < 4; ++n) names.push_back(store->put(sample(n, 3000)).value());
  names.push_back(BlobName::parse(std::string(64, 'e')).value());
  ASSERT_TRUE(target->put(sample(0, 3000)));
  files.damage(store->path_of(names[2]));
  const auto report = blobs::copy_blobs(*store, *target, names, {}, nullptr).value();
  EXPECT_EQ(report.copied, 2U);
  EXPECT_EQ(report.already_there, 1U);
  EXPECT_EQ(report.damaged, std::vector<BlobName>{names[2]});
  EXPECT_EQ(report.missing, std::vector<BlobName>{names[4]});
  EXPECT_EQ(target->list()->size(), 3U);
  EXPECT_TRUE(target->scrub({}, nullptr)->damaged.empty());
  EXPECT_TRUE(other.list("/copy/incoming")->empty());
}

TEST_F(Store, CopyingReplacesADamagedBlobOfTheTarget) {
  FaultyFiles other;
  const auto target = BlobStore::open(other, "/copy").value();
  const std::vector<BlobName> names{store->put(sample(1, 3000)).value()};
  ASSERT_TRUE(target->put(sample(1, 3000)));
  other.damage(target->path_of(names[0]));
  EXPECT_EQ(blobs::copy_blobs(*store, *target, names, {}, nullptr)->copied, 1U);
  EXPECT_TRUE(target->check(names[0]));
}

}  // namespace
}  // namespace jambline::test
