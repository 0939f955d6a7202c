#include <algorithm>
#include <gtest/gtest.h>

#include "base/json.h"
#include "seal/hlc.h"
#include "tests/log/log_folder.h"

namespace jambline::log {
namespace {

// Device one founds and admits device two; both write.
struct TwoDevices {
  TempFolder one_folder, two_folder;
  std::unique_ptr<EntryLog> one = small_log(one_folder.path(), 3);
  std::unique_ptr<EntryLog> two = open_log(two_folder.path());
  SeededRandom random{77};

  TwoDevices() {
    const Draft admit{{},
                      seal::kind::device_admitted,
                      1,
                      to_json(seal::DeviceAdmitted{key_number(2).key(), "tablet two", false})};
    must(one->append(key_number(1), {}, {&admit, 1}, at(9000), random));
    must(two->add(entries_of(*one)));
  }
  seal::SealedEntry write(EntryLog& log, std::uint8_t key, const std::string& words,
                          std::int64_t after_ms = 10000) {
    const Draft draft = note(words);
    return must(log.append(key_number(key), {}, {&draft, 1}, at(after_ms), random)).front().entry;
  }
};

template <class T>
Code code_of(const Result<T>& result) {
  return result ? Code::Missing : result.error().code;
}

TEST(Add, AJoiningDevicesFirstEntryHangsOnItsAdmission) {
  TwoDevices shop;
  const auto admission = entries_of(*shop.one).back();
  const auto first = shop.write(*shop.two, 2, "hello");
  EXPECT_EQ(first.header.seq, 1U);
  EXPECT_EQ(first.header.prev_hash, admission.hash);
  EXPECT_EQ(must(shop.one->add({&first, 1})).size(), 1U);
  EXPECT_EQ(shop.one->heads().size(), 2U);
  EXPECT_FALSE(audit(shop.one_folder.path()).first_bad);
  EXPECT_FALSE(audit(shop.two_folder.path()).first_bad);
}

TEST(Add, WhatIsThereAlreadyIsSkippedAndAnyOrderWithinACallWorks) {
  TwoDevices shop;
  shop.write(*shop.two, 2, "a");
  shop.write(*shop.two, 2, "b");
  auto entries = entries_of(*shop.two);
  std::reverse(entries.begin(), entries.end());
  EXPECT_EQ(must(shop.one->add(entries)).size(), 2U);
  EXPECT_EQ(must(shop.one->add(entries)).size(), 0U);
  const TempFolder third;
  auto log = open_log(third.path());
  EXPECT_EQ(must(log->add(entries)).size(), entries.size());
  EXPECT_EQ(log->shop(), shop.one->shop());
}

TEST(Add, OneBadEntryKeepsTheWholeCallOut) {
  TwoDevices shop;
  std::vector<seal::SealedEntry> entries{shop.write(*shop.two, 2, "a"),
                                         shop.write(*shop.two, 2, "b")};
  const auto before = shop.one->last_arrival();
  const auto refused = [&](auto change) {
    auto changed = entries;
    change(changed[1]);
    const Code code = code_of(shop.one->add(changed));
    EXPECT_EQ(shop.one->last_arrival(), before);
    EXPECT_EQ(all_of(*shop.one).size(), static_cast<std::size_t>(before));
    return code;
  };
  using Entry = seal::SealedEntry;
  const auto resealed = [](Entry& entry) {
    entry.hash = seal::entry_hash(seal::encode(entry.header));
    entry.signature = key_number(2).sign(entry.hash);
  };
  EXPECT_EQ(refused([](Entry& e) { e.payload[3] ^= 1; }), Code::BadHash);
  EXPECT_EQ(refused([](Entry& e) { e.hash.bytes[0] ^= 1U; }), Code::BadHash);
  EXPECT_EQ(refused([](Entry& e) { e.signature.bytes[9] ^= 1U; }), Code::BadSignature);
  EXPECT_EQ(refused([&](Entry& e) { e.header.seq = 3, resealed(e); }), Code::ChainBroken);
  EXPECT_EQ(refused([&](Entry& e) { e.header.prev_hash = {}, resealed(e); }), Code::ChainBroken);
  EXPECT_EQ(refused([&](Entry& e) { e.header.seq = 1, resealed(e); }), Code::Fork);
  EXPECT_EQ(refused([&](Entry& e) { e.header.shop.bytes[0] ^= 1U, resealed(e); }), Code::WrongShop);
  EXPECT_EQ(refused([&](Entry& e) { e.header.device = key_number(3).device(), resealed(e); }),
            Code::NotAdmitted);
  EXPECT_EQ(refused([&](Entry& e) { e.header.payload_bytes = 1U << 20U, resealed(e); }),
            Code::TooLarge);
  EXPECT_EQ(refused([&](Entry& e) { e.header.part = 0, resealed(e); }), Code::Malformed);
  EXPECT_TRUE(shop.one->add(entries));
}

TEST(Add, AnotherEntryOfTheSameNumberIsAFork) {
  TwoDevices shop;
  const TempFolder clone;
  shop.two.reset();
  std::filesystem::copy(
      shop.two_folder.path(), clone.path(),
      std::filesystem::copy_options::recursive | std::filesystem::copy_options::overwrite_existing);
  auto original = open_log(shop.two_folder.path());
  auto copy = open_log(clone.path());
  const auto a = shop.write(*original, 2, "a");
  const auto b = shop.write(*copy, 2, "b");
  EXPECT_TRUE(shop.one->add({&a, 1}));
  EXPECT_EQ(code_of(shop.one->add({&b, 1})), Code::Fork);
  EXPECT_EQ(code_of(copy->add({&a, 1})), Code::Fork);
}

TEST(Add, UnknownKindsSchemasAndSpoiltTextAreKeptAsTheyCame) {
  TwoDevices shop;
  Draft draft{job_number(4), 65000, 999, "\xff\xfe not JSON \x01"};
  const auto stored = must(shop.two->append(key_number(2), {}, {&draft, 1}, at(1), shop.random));
  must(shop.one->add({&stored.front().entry, 1}));
  EXPECT_EQ(seal::encode(entries_of(*shop.one).back()), seal::encode(stored.front().entry));
  draft.payload.assign(seal::most_payload_bytes + 1, 'x');
  EXPECT_EQ(code_of(shop.two->append(key_number(2), {}, {&draft, 1}, at(1), shop.random)),
            Code::TooLarge);
}

TEST(Add, ARevokedDevicesLaterEntriesAreRefusedThereAndHere) {
  TwoDevices shop;
  const auto kept = shop.write(*shop.two, 2, "kept");
  must(shop.one->add({&kept, 1}));
  const Draft revoke{{},
                     seal::kind::device_revoked,
                     1,
                     to_json(seal::DeviceRevoked{key_number(2).device(), 1, kept.hash})};
  const auto revocation =
      must(shop.one->append(key_number(1), {}, {&revoke, 1}, at(20000), shop.random));
  const auto late = shop.write(*shop.two, 2, "late");
  EXPECT_EQ(code_of(shop.one->add({&late, 1})), Code::Revoked);
  must(shop.two->add({&revocation.front().entry, 1}));
  const Draft draft = note("too late");
  EXPECT_EQ(code_of(shop.two->append(key_number(2), {}, {&draft, 1}, at(30000), shop.random)),
            Code::Revoked);
  const Audit found = audit(shop.two_folder.path());
  EXPECT_FALSE(found.first_bad);
  EXPECT_EQ(found.after_cut, 1U);
}

// The hub had it before it knew of the revocation: it comes to the manager who revoked, too.
TEST(Add, WhereThereIsAHubALaterEntryOfARevokedDeviceIsKeptAndDoesNotCount) {
  TwoDevices shop;
  const auto kept = shop.write(*shop.two, 2, "kept");
  must(shop.one->add({&kept, 1}));
  const Draft hub{
      {}, seal::kind::hub_admitted, 1, to_json(seal::HubAdmitted{key_number(9).key(), "hub"})};
  const Draft revoke{{},
                     seal::kind::device_revoked,
                     1,
                     to_json(seal::DeviceRevoked{key_number(2).device(), 1, kept.hash})};
  must(shop.one->append(key_number(1), {}, {&hub, 1}, at(19000), shop.random));
  must(shop.one->append(key_number(1), {}, {&revoke, 1}, at(20000), shop.random));
  const auto late = shop.write(*shop.two, 2, "late");
  EXPECT_EQ(must(shop.one->add({&late, 1})).size(), 1U);
  const Audit found = audit(shop.one_folder.path());
  EXPECT_FALSE(found.first_bad);
  EXPECT_EQ(found.after_cut, 1U);
}

TEST(Add, OnlyAManagerAdmits) {
  TwoDevices shop;
  const Draft admit{{},
                    seal::kind::device_admitted,
                    1,
                    to_json(seal::DeviceAdmitted{key_number(3).key(), "tablet three", true})};
  EXPECT_EQ(code_of(shop.two->append(key_number(2), {}, {&admit, 1}, at(), shop.random)),
            Code::NotAllowed);
  const Draft draft = note("uninvited");
  EXPECT_EQ(code_of(shop.two->append(key_number(3), {}, {&draft, 1}, at(), shop.random)),
            Code::NotAdmitted);
}

TEST(Add, AClockFarAheadIsKeptAndPushesNoOther) {
  TwoDevices shop;
  const std::int64_t days_ms = 3LL * 24 * 3600 * 1000;
  const auto ahead = shop.write(*shop.two, 2, "three days ahead", days_ms);
  must(shop.one->add({&ahead, 1}));
  const auto mine = shop.write(*shop.one, 1, "on time", 11000);
  EXPECT_LT(seal::Hlc::unpack(mine.header.hlc).ms, static_cast<std::uint64_t>(monday_ms + 60000));
  const auto near = shop.write(*shop.two, 2, "still ahead", days_ms + 1);
  must(shop.one->add({&near, 1}));
  const auto then = shop.write(*shop.one, 1, "three days later", days_ms);
  EXPECT_GT(then.header.hlc, near.header.hlc) << "one minute ahead is taken over";
}

TEST(Add, ReceiptsAndCursorCommitWithTheirPage) {
  TwoDevices shop;
  const auto entry = shop.write(*shop.two, 2, "a");
  const auto hub = key_number(9);
  seal::Receipt receipt;
  receipt.shop = shop.one->shop();
  receipt.device = entry.header.device;
  receipt.seq = 1;
  receipt.hash = entry.hash;
  seal::sign(receipt, hub);
  const Page page{{&entry, 1}, {&receipt, 1}, Cursor{"hub", "17"}};
  EXPECT_EQ(code_of(shop.one->add_page(page)), Code::NotAdmitted) << "the hub is not admitted";
  EXPECT_FALSE(must(shop.one->cursor("hub")));
  EXPECT_EQ(shop.one->heads().size(), 1U);
  const Draft admit{{}, seal::kind::hub_admitted, 1, to_json(seal::HubAdmitted{hub.key(), "hub"})};
  must(shop.one->append(key_number(1), {}, {&admit, 1}, at(12000), shop.random));
  must(shop.one->add_page(page));
  EXPECT_EQ(must(shop.one->cursor("hub")), "17");
  ASSERT_EQ(must(shop.one->receipts()).size(), 1U);
  EXPECT_EQ(audit(shop.one_folder.path()).receipts, 1U);
  seal::Receipt beyond = receipt;
  beyond.seq = 40;
  seal::sign(beyond, hub);
  must(shop.one->add_page({{}, {&beyond, 1}, std::nullopt}));
  const Audit cut = audit(shop.one_folder.path());
  ASSERT_TRUE(cut.first_bad) << "the receipt names an entry that is not here";
  EXPECT_EQ(cut.first_bad->arg("seq"), "40");
}

}  // namespace
}  // namespace jambline::log
