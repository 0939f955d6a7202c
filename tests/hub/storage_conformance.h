// tests/hub/storage_conformance.h: what every implementation of sync::HubStorage has to do.
//
// Use:     INSTANTIATE_TEST_SUITE_P(Name, HubStorageTest, ::testing::Values(make_home)), where a
//          home is a shop's place that can be opened again and again.
// Held against: the contract in src/sync/hub_storage.h.
#pragma once

#include <functional>
#include <gtest/gtest.h>
#include <memory>

#include "seal/digest.h"
#include "sync/hub_storage.h"
#include "tests/hub/hub_folder.h"
#include "tests/hub/sealed_run.h"

namespace jambline::test {

class HubStorageHome {
 public:
  virtual ~HubStorageHome() = default;
  // Whoever had it open before must be gone. Payloads of `erasable_kind` may be erased.
  virtual Result<std::unique_ptr<sync::HubStorage>> open() = 0;
  virtual void set_full(bool full) = 0;  // for the next open() too
};
using MakeHome = std::function<std::unique_ptr<HubStorageHome>(const ShopId&, const seal::Epoch&)>;

class HubStorageTest : public ::testing::TestWithParam<MakeHome> {
 protected:
  HubStorageTest() : home(GetParam()(run.shop(), epoch_number(9))) { reopen(); }

  void reopen() {
    store.reset();
    store = get(home->open());
  }
  sync::SignReceipt signing(const seal::SealedEntry& last) {
    return [this, last](std::uint64_t first, std::uint64_t end) {
      seal::Receipt out;
      out.shop = run.shop();
      out.epoch = store->epoch();
      out.device = last.header.device;
      out.seq = last.header.seq;
      out.hash = last.hash;
      out.hub_seq_first = first;
      out.hub_seq_last = end;
      out.received_ms = hub_monday_ms;
      seal::sign(out, hub);
      return out;
    };
  }
  Result<seal::Receipt> put(const std::vector<seal::SealedEntry>& entries,
                            std::vector<Hash> erased = {}) {
    return store->append(entries, erased, signing(entries.back()));
  }
  struct Row {
    std::uint64_t hub_seq;
    DeviceId device;
    std::uint64_t seq;
    std::string bytes;
    friend bool operator==(const Row&, const Row&) = default;
  };
  std::vector<Row> rows(std::uint64_t after = 0) {
    std::vector<Row> out;
    good(store->read_after(after, [&](std::uint64_t hub_seq, const DeviceId& device,
                                      std::uint64_t seq, std::string_view bytes) {
      out.push_back({hub_seq, device, seq, std::string(bytes)});
      return true;
    }));
    return out;
  }
  std::vector<std::string> apart(const DeviceId& device, std::uint64_t from = 0) {
    std::vector<std::string> out;
    good(store->read_apart(device, from, [&](std::string_view bytes) {
      out.emplace_back(bytes);
      return true;
    }));
    return out;
  }
  static seal::SealedEntry decoded(const std::string& bytes) {
    return get(seal::decode_entry(seal::bytes_of(bytes)));
  }
  static std::string without_payload(const seal::SealedEntry& entry) {
    seal::SealedEntry out = entry;
    out.salt = {};
    out.payload.clear();
    out.erased = true;
    return seal::encode(out);
  }

  SealedRun run;
  seal::SigningKey hub = hub_test_key(200);
  seal::SigningKey tablet = hub_test_key(2);
  std::unique_ptr<HubStorageHome> home;
  std::unique_ptr<sync::HubStorage> store;
};

TEST_P(HubStorageTest, AnEmptyShopIsEmptyAndSaysWhoseItIs) {
  EXPECT_EQ(store->shop(), run.shop());
  EXPECT_EQ(store->epoch(), epoch_number(9));
  EXPECT_EQ(store->hub_seq(), 0U);
  EXPECT_TRUE(get(store->heads()).empty());
  EXPECT_TRUE(get(store->membership()).empty());
  EXPECT_FALSE(get(store->hash_at(tablet.device(), 1)));
  EXPECT_FALSE(get(store->last_receipt(tablet.device())));
  EXPECT_TRUE(rows().empty());
  EXPECT_TRUE(get(store->quarantine()).empty());
  EXPECT_TRUE(get(store->invited()).empty());
  EXPECT_TRUE(get(store->seen()).empty());
}

TEST_P(HubStorageTest, EntriesAreCountedInTheOrderOfCommitWithoutGaps) {
  const std::vector first{run.founded(), run.admitted(tablet, "tablet")};
  const auto second = run.many(tablet, 3);
  const std::vector third{run.said(run.founder(), "late")};
  const auto receipt_one = get(put(first));
  const auto receipt_two = get(put(second));
  const auto receipt_three = get(put(third));
  EXPECT_EQ(receipt_one.hub_seq_first, 1U);
  EXPECT_EQ(receipt_one.hub_seq_last, 2U);
  EXPECT_EQ(receipt_two.hub_seq_first, 3U);
  EXPECT_EQ(receipt_two.hub_seq_last, 5U);
  EXPECT_EQ(receipt_three.hub_seq_first, 6U);
  EXPECT_EQ(receipt_three.hub_seq_last, 6U);
  std::vector<seal::SealedEntry> all(first);
  all.insert(all.end(), second.begin(), second.end());
  all.insert(all.end(), third.begin(), third.end());
  for (int life = 0; life < 2; ++life) {
    const auto found = rows();
    ASSERT_EQ(found.size(), 6U);
    for (std::size_t i = 0; i < all.size(); ++i) {
      EXPECT_EQ(found[i].hub_seq, i + 1);
      EXPECT_EQ(found[i].device, all[i].header.device);
      EXPECT_EQ(found[i].seq, all[i].header.seq);
      EXPECT_EQ(found[i].bytes, seal::encode(all[i])) << "bytes are kept as they came";
    }
    EXPECT_EQ(store->hub_seq(), 6U);
    EXPECT_EQ(rows(4).size(), 2U);
    EXPECT_EQ(rows(4).front().hub_seq, 5U);
    EXPECT_TRUE(rows(6).empty());
    EXPECT_TRUE(rows(UINT64_MAX).empty());
    reopen();
  }
}

TEST_P(HubStorageTest, AVisitorMayStop) {
  get(put({run.founded(), run.said(run.founder(), "a"), run.said(run.founder(), "b")}));
  int seen = 0;
  good(store->read_after(0, [&](auto, const auto&, auto, auto) { return ++seen < 2; }));
  EXPECT_EQ(seen, 2);
  EXPECT_EQ(rows().size(), 3U) << "and begin again";
}

TEST_P(HubStorageTest, HeadsAndHashesAreThoseOfTheEntries) {
  const std::vector first{run.founded(), run.admitted(tablet, "tablet")};
  const auto second = run.many(tablet, 3);
  get(put(first));
  get(put(second));
  for (int life = 0; life < 2; ++life) {
    std::map<DeviceId, sync::Head> heads;
    for (const auto& head : get(store->heads())) heads[head.device] = head;
    ASSERT_EQ(heads.size(), 2U);
    EXPECT_EQ(heads.at(tablet.device()), (sync::Head{tablet.device(), 3, second.back().hash}));
    EXPECT_EQ(heads.at(run.founder().device()),
              (sync::Head{run.founder().device(), 2, first.back().hash}));
    EXPECT_EQ(get(store->hash_at(tablet.device(), 2)), second[1].hash);
    EXPECT_FALSE(get(store->hash_at(tablet.device(), 4)));
    EXPECT_FALSE(get(store->hash_at(tablet.device(), 0)));
    EXPECT_FALSE(get(store->hash_at(tablet.device(), UINT64_MAX)));
    EXPECT_FALSE(get(store->hash_at(hub.device(), 1)));
    reopen();
  }
}

TEST_P(HubStorageTest, EveryHashIsFoundInWhateverTurnsDevicesCame) {
  get(put({run.founded(), run.admitted(tablet, "tablet")}));
  std::vector<seal::SealedEntry> all;
  for (const int count : {3, 1, 11, 2}) {
    for (const seal::SigningKey* device : {&std::as_const(tablet), &run.founder()}) {
      const auto run_of_one = run.many(*device, count);
      get(put(run_of_one));
      all.insert(all.end(), run_of_one.begin(), run_of_one.end());
    }
  }
  for (int life = 0; life < 2; ++life) {
    for (const auto& entry : all)
      EXPECT_EQ(get(store->hash_at(entry.header.device, entry.header.seq)), entry.hash);
    reopen();
  }
}

TEST_P(HubStorageTest, TheSamePlaceTwiceIsAForkAndNothingIsWritten) {
  get(put({run.founded(), run.said(run.founder(), "a")}));
  SealedRun twin;  // the same seeds: another entry at the same place
  (void)twin.founded();
  const auto other = twin.said(twin.founder(), "copied folder");
  const auto next = twin.said(twin.founder(), "and on");
  EXPECT_EQ(code_of(put({other, next})), Code::Fork);
  EXPECT_EQ(rows().size(), 2U);
  EXPECT_EQ(store->hub_seq(), 2U);
  reopen();
  EXPECT_EQ(rows().size(), 2U);
  EXPECT_EQ(get(put({run.said(run.founder(), "b")})).hub_seq_last, 3U);
}

TEST_P(HubStorageTest, AGapAndAMixtureOfDevicesAreRefusedAndNothingIsWritten) {
  get(put({run.founded(), run.admitted(tablet, "tablet")}));
  const auto one = run.said(tablet, "one");
  const auto two = run.said(tablet, "two");
  EXPECT_EQ(code_of(put({two})), Code::ChainBroken);
  EXPECT_EQ(code_of(put({one, run.said(run.founder(), "other")})), Code::ChainBroken);
  EXPECT_EQ(store->append({}, {}, signing(one)).error().code, Code::Missing);
  EXPECT_EQ(store->hub_seq(), 2U);
  EXPECT_EQ(get(put({one, two})).hub_seq_last, 4U);
}

TEST_P(HubStorageTest, MembershipComesWholeAndInItsOrder) {
  const auto founded = run.founded();
  const auto said = run.said(run.founder(), "a");
  const auto admitted = run.admitted(tablet, "tablet", true);
  const auto admitted_hub = run.hub_admitted(hub.key());
  const auto revoked = run.revoked(tablet.device(), 0, {});
  get(put({founded, said, admitted, admitted_hub, revoked}));
  reopen();
  const auto found = get(store->membership());
  ASSERT_EQ(found.size(), 4U);
  EXPECT_EQ(found[0].hash, founded.hash);
  EXPECT_EQ(found[1].hash, admitted.hash);
  EXPECT_EQ(found[2].hash, admitted_hub.hash);
  EXPECT_EQ(found[3].hash, revoked.hash);
  EXPECT_EQ(found[1].payload, admitted.payload);
}

TEST_P(HubStorageTest, ReceiptsAreThoseThatWereSigned) {
  const auto one = get(put({run.founded(), run.admitted(tablet, "tablet")}));
  const auto two = get(put(run.many(tablet, 3)));
  const auto three = get(put(run.many(tablet, 1)));
  for (int life = 0; life < 2; ++life) {
    EXPECT_EQ(get(store->last_receipt(tablet.device())), three);
    EXPECT_EQ(get(store->last_receipt(run.founder().device())), one);
    EXPECT_EQ(get(store->receipts(0, 6, 10)), (std::vector{one, two, three}));
    EXPECT_EQ(get(store->receipts(2, 6, 10)), (std::vector{two, three}));
    EXPECT_EQ(get(store->receipts(0, 5, 10)), (std::vector{one, two}));
    EXPECT_EQ(get(store->receipts(0, 6, 2)), (std::vector{one, two}));
    EXPECT_TRUE(get(store->receipts(6, UINT64_MAX, 10)).empty());
    EXPECT_TRUE(seal::verify(*get(store->last_receipt(tablet.device()))));
    reopen();
  }
}

TEST_P(HubStorageTest, AnErasureTakesThePayloadOfWhatIsHere) {
  const auto founded = run.founded();
  const auto name = run.said(run.founder(), "K. Meyer", erasable_kind);
  get(put({founded, name}));
  get(put({run.erasure(run.founder(), name.hash)}, {name.hash}));
  for (int life = 0; life < 2; ++life) {
    EXPECT_EQ(rows().at(1).bytes, without_payload(name));
    EXPECT_EQ(decoded(rows().at(1).bytes).hash, name.hash);
    EXPECT_EQ(get(store->hash_at(run.founder().device(), 2)), name.hash);
    reopen();
  }
}

TEST_P(HubStorageTest, AnErasureTakesThePayloadOfWhatComesLaterAndOfItsOwnPush) {
  get(put({run.founded(), run.admitted(tablet, "tablet")}));
  const auto name = run.said(tablet, "K. Meyer", erasable_kind);
  get(put({run.erasure(run.founder(), name.hash)}, {name.hash}));
  reopen();
  get(put({name}));
  EXPECT_EQ(rows().at(3).bytes, without_payload(name));
  const auto other = run.said(tablet, "L. Weber", erasable_kind);
  get(put({other, run.erasure(tablet, other.hash)}, {other.hash}));
  EXPECT_EQ(rows().at(4).bytes, without_payload(other));
}

TEST_P(HubStorageTest, WhatMayNotBeErasedStays) {
  const auto founded = run.founded();
  const auto said = run.said(run.founder(), "fact");
  get(put({founded, said}));
  const auto erasure = run.erasure(run.founder(), said.hash);
  get(put({erasure}, {said.hash, founded.hash, erasure.hash}));
  EXPECT_EQ(rows().at(0).bytes, seal::encode(founded));
  EXPECT_EQ(rows().at(1).bytes, seal::encode(said));
  EXPECT_EQ(rows().at(2).bytes, seal::encode(erasure));
  const auto later = run.said(run.founder(), "fact");
  get(put({later}, {later.hash}));
  EXPECT_EQ(rows().at(3).bytes, seal::encode(later));
}

TEST_P(HubStorageTest, AnEntryThatCameErasedIsKeptAsItCame) {
  const auto first = run.founded();
  auto second = run.said(run.founder(), "K. Meyer", erasable_kind);
  second.salt = {};
  second.payload.clear();
  second.erased = true;
  get(put({first, second}));
  get(put({run.erasure(run.founder(), second.hash)}, {second.hash}));
  EXPECT_EQ(rows().at(1).bytes, seal::encode(second));
}

TEST_P(HubStorageTest, QuarantineKeepsEachOnceAndApart) {
  get(put({run.founded(), run.admitted(tablet, "tablet")}));
  const auto late = run.many(tablet, 3);
  good(store->keep_apart(late, 1000));
  good(store->keep_apart(std::span(late).subspan(1), 2000));
  EXPECT_EQ(store->hub_seq(), 2U);
  EXPECT_EQ(rows().size(), 2U);
  for (int life = 0; life < 2; ++life) {
    const auto found = apart(tablet.device());
    ASSERT_EQ(found.size(), 3U);
    for (std::size_t i = 0; i < 3; ++i) EXPECT_EQ(found[i], seal::encode(late[i]));
    EXPECT_EQ(apart(tablet.device(), 3).size(), 1U);
    EXPECT_TRUE(apart(hub.device()).empty());
    EXPECT_EQ(get(store->quarantine()),
              (std::vector{sync::Quarantined{tablet.device(), 1, 3, 0, 1000}}));
    reopen();
  }
  good(store->settle(tablet.device(), 2));
  good(store->settle(tablet.device(), 1));  // what was settled stays so
  reopen();
  EXPECT_EQ(get(store->quarantine()).front().settled_through, 2U);
  EXPECT_EQ(apart(tablet.device()).size(), 3U) << "nothing is deleted";
}

TEST_P(HubStorageTest, QuarantineKeepsTwoEntriesOfOnePlaceAndStops) {
  SealedRun twin;
  const auto mine = run.said(tablet, "mine");
  const auto other = twin.said(tablet, "other");
  good(store->keep_apart(std::vector{mine}, 1000));
  good(store->keep_apart(std::vector{other}, 2000));
  EXPECT_EQ(apart(tablet.device()), (std::vector{seal::encode(mine), seal::encode(other)}));
  EXPECT_EQ(get(store->quarantine()).front().received_ms, 2000);
  int seen = 0;
  good(store->read_apart(tablet.device(), 0, [&](auto) { return ++seen, false; }));
  EXPECT_EQ(seen, 1);
}

TEST_P(HubStorageTest, AnErasureReachesWhatIsKeptApart) {
  get(put({run.founded(), run.admitted(tablet, "tablet")}));
  const auto here = run.said(tablet, "K. Meyer", erasable_kind);
  const auto later = run.said(tablet, "L. Weber", erasable_kind);
  good(store->keep_apart(std::vector{here}, 1000));
  get(put({run.erasure(run.founder(), here.hash), run.erasure(run.founder(), later.hash)},
          {here.hash, later.hash}));
  good(store->keep_apart(std::vector{later}, 1000));
  EXPECT_EQ(apart(tablet.device()), (std::vector{without_payload(here), without_payload(later)}));
}

TEST_P(HubStorageTest, InvitationsAreNewChangedAndDropped) {
  SeededRandom random(3);
  const Hash one = random.make<Hash>();
  const Hash two = random.make<Hash>();
  const auto same = [](const sync::Invited& a, const sync::Invited& b) {
    return a.code == b.code && a.until_ms == b.until_ms && a.for_a_shop == b.for_a_shop &&
           a.used_by == b.used_by && a.refused == b.refused;
  };
  sync::Invited first{one, 5000, false, {}, false};
  const sync::Invited second{two, 6000, true, {}, false};
  good(store->put_invited(first));
  good(store->put_invited(second));
  first.used_by = sync::Pending{tablet.key(), "name \"quoted\" \xC3\xBC",
                                random.make<sync::Nonce>(), 4000, true};
  first.refused = true;
  good(store->put_invited(first));
  reopen();
  auto found = get(store->invited());
  ASSERT_EQ(found.size(), 2U);
  EXPECT_TRUE(same(found[0], first)) << "its place stays, newest last";
  EXPECT_TRUE(same(found[1], second));
  good(store->drop_invited(one));
  good(store->drop_invited(one));
  reopen();
  found = get(store->invited());
  ASSERT_EQ(found.size(), 1U);
  EXPECT_TRUE(same(found[0], second));
}

TEST_P(HubStorageTest, WhoWasSeenAndWhereAForkWasFound) {
  good(store->note_seen(tablet.device(), 1000));
  good(store->note_seen(tablet.device(), 3000));
  good(store->note_fork(tablet.device(), 7, 4000));
  good(store->note_fork(tablet.device(), 9, 5000));
  good(store->note_fork(hub.device(), 2, 6000));
  reopen();
  std::map<DeviceId, sync::SeenDevice> found;
  for (const auto& one : get(store->seen())) found[one.device] = one;
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[tablet.device()], (sync::SeenDevice{tablet.device(), 5000, 7, 5000}))
      << "the first place of two, and when it was met last";
  EXPECT_EQ(found[hub.device()], (sync::SeenDevice{hub.device(), 6000, 2, 6000}));
  good(store->note_seen(tablet.device(), 9000));
  for (const auto& one : get(store->seen())) found[one.device] = one;
  EXPECT_EQ(found[tablet.device()], (sync::SeenDevice{tablet.device(), 9000, 7, 5000}));
}

TEST_P(HubStorageTest, TheBlobMarkGrows) {
  const std::uint64_t before = store->blob_mark();
  good(store->blobs_lost());
  EXPECT_EQ(store->blob_mark(), before + 1);
  reopen();
  EXPECT_EQ(store->blob_mark(), before + 1);
}

TEST_P(HubStorageTest, AFullDiskWritesNothingAndGoesOnWhenThereIsRoom) {
  get(put({run.founded(), run.admitted(tablet, "tablet")}));
  const auto before = rows();
  home->set_full(true);
  reopen();
  // Enough for no spare page to hold it.
  std::vector<seal::SealedEntry> large;
  for (int i = 0; i < 40; ++i) large.push_back(run.said(tablet, std::string(60'000, 'x')));
  EXPECT_EQ(code_of(put(large)), Code::DiskFull);
  EXPECT_EQ(rows(), before);
  EXPECT_EQ(store->hub_seq(), 2U);
  EXPECT_FALSE(get(store->last_receipt(tablet.device())));
  EXPECT_EQ(code_of(store->keep_apart(large, 1000)), Code::DiskFull);
  EXPECT_TRUE(get(store->quarantine()).empty());
  reopen();
  EXPECT_EQ(rows(), before);
  home->set_full(false);
  reopen();
  EXPECT_EQ(get(put(large)).hub_seq_last, 42U);
}

TEST_P(HubStorageTest, TenThousandEntriesComeBackByteForByte) {
  std::vector<std::string> wanted;
  std::vector<seal::SealedEntry> batch{run.founded()};
  for (std::size_t i = 0; i < 20; ++i) {
    while (batch.size() < 500) batch.push_back(run.said(run.founder(), std::to_string(i)));
    for (const auto& entry : batch) wanted.push_back(seal::encode(entry));
    get(put(batch));
    batch.clear();
  }
  reopen();
  const auto found = rows();
  ASSERT_EQ(found.size(), wanted.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) ASSERT_EQ(found[i].bytes, wanted[i]) << i;
}

}  // namespace jambline::test
