// What a log says of itself beside whether it is whole. Our own design.
#include "engine/integrity.h"

#include <gtest/gtest.h>

#include "base/json.h"
#include "engine/raw_entry.h"
#include "engine/shop_devices.h"
#include "entries/shop_kinds.h"
#include "seal/receipt.h"
#include "tests/log/log_folder.h"

namespace jambline::engine {
namespace {

using log::at;
using log::key_number;
using log::must;

class CheckIntegrity : public testing::Test {
 protected:
  void SetUp() override { log_ = log::small_log(folder_.path(), 3); }

  log::Stored write(const log::Draft& draft, const Moment& moment) {
    return must(log_->append(key_number(1), {}, {&draft, 1}, moment, random_)).front();
  }
  seal::SigningKey admit_hub() {
    const auto hub = key_number(9);
    write(draft_of(ShopHub{hub.key(), "office"}), at(4000));
    return hub;
  }
  void receive(const seal::SigningKey& hub, const seal::SealedEntry& last, std::int64_t when_ms,
               std::uint64_t hub_seq_first, std::uint64_t hub_seq_last) {
    seal::Receipt receipt;
    receipt.shop = log_->shop();
    receipt.device = last.header.device;
    receipt.seq = last.header.seq;
    receipt.hash = last.hash;
    receipt.hub_seq_first = hub_seq_first;
    receipt.hub_seq_last = hub_seq_last;
    receipt.received_ms = when_ms;
    seal::sign(receipt, hub);
    must(log_->add_page({{}, {&receipt, 1}, {}}));
  }
  Integrity check() {
    return must(check_integrity(folder_.path(), {}, [](double) {}));
  }
  static std::vector<Finding> of(const Integrity& found, FindingKind kind) {
    std::vector<Finding> out;
    for (const auto& one : found.findings)
      if (one.kind == kind) out.push_back(one);
    return out;
  }

  log::TempFolder folder_;
  SeededRandom random_{77};
  std::unique_ptr<log::EntryLog> log_;
};

TEST_F(CheckIntegrity, AGoodLogHasNothingToTellAndNoHubToProveIt) {
  const Integrity found = check();
  EXPECT_FALSE(found.audit.first_bad);
  EXPECT_TRUE(found.findings.empty());
  ASSERT_EQ(found.proven.size(), 1U);
  EXPECT_EQ(found.proven.front().seq, 4U);
  EXPECT_EQ(found.proven.front().name, "tablet one");
  EXPECT_FALSE(found.proven.front().hub);
}

TEST_F(CheckIntegrity, AReceiptProvesUpToItsEntryAndWhatCameAfterADayIsLate) {
  const auto hub = admit_hub();
  const auto entries = log::entries_of(*log_);
  receive(hub, entries[2], at(5000).wall_ms, 1, 3);
  receive(hub, entries[4], at(5000).wall_ms + 3 * day_ms, 4, 5);
  write(log::note("not sent"), at(6000));
  const Integrity found = check();
  ASSERT_EQ(found.proven.size(), 1U);
  EXPECT_EQ(found.proven.front().seq, 6U);
  ASSERT_TRUE(found.proven.front().hub);
  EXPECT_EQ(found.proven.front().hub->hub, "office");
  EXPECT_EQ(found.proven.front().hub->seq, 5U);
  const auto late = of(found, FindingKind::Late);
  ASSERT_EQ(late.size(), 1U) << "one run, one finding";
  EXPECT_EQ(late.front().seq_first, 4U);
  EXPECT_EQ(late.front().seq_last, 5U);
  EXPECT_EQ(late.front().received_ms, at(5000).wall_ms + 3 * day_ms);

  const RawEntry first = must(raw_entry(folder_.path(), entries[1].hash));
  EXPECT_TRUE(first.signature_good);
  EXPECT_TRUE(first.payload_good);
  EXPECT_EQ(first.device_name, "tablet one");
  ASSERT_EQ(first.received.size(), 1U) << "the first that covers it";
  EXPECT_EQ(first.received.front().receipt.seq, 3U);
  EXPECT_EQ(first.received.front().hub_seq, 2U);
  EXPECT_TRUE(first.received.front().signature_good);
  EXPECT_TRUE(must(raw_entry(folder_.path(), log::entries_of(*log_).back().hash)).received.empty());
  EXPECT_EQ(raw_entry(folder_.path(), Hash{}).error().code, Code::Unknown);
}

TEST_F(CheckIntegrity, ClocksThatWentBackAndJumpedAreTold) {
  write(log::note("before"), at(-3'600'000));
  write(log::note("after"), at(-3'599'000));
  Moment jumped = at(10'000);
  jumped.wall_ms += 5 * hour_ms;
  write(log::note("jumped"), jumped);
  const Integrity found = check();
  const auto back = of(found, FindingKind::ClockSteppedBack);
  ASSERT_EQ(back.size(), 1U);
  EXPECT_EQ(back.front().seq_first, 5U);
  EXPECT_EQ(back.front().job, log::job_number(1));
  const auto jumps = of(found, FindingKind::ClockJumped);
  ASSERT_FALSE(jumps.empty());
  EXPECT_EQ(jumps.back().seq_last, 7U);
  EXPECT_EQ(found.count(FindingKind::ClockJumped), jumps.size());
}

TEST_F(CheckIntegrity, ErasedTextAndWorkSaidAgainAreTold) {
  const auto entries = log::entries_of(*log_);
  const std::uint16_t kinds[] = {log::note_kind};
  must(log_->erase_payload(key_number(1), {}, entries[2].hash, "left", kinds, at(9000), random_));
  entries::WorkTakenOver taken{key_number(5).device(),
                               entries::TakenOverWhy::CopiedFolder,
                               {entries[1].hash, entries[2].hash}};
  write({{}, entries::WorkTakenOver::kind, 1, to_json(taken)}, at(10'000));
  const Integrity found = check();
  EXPECT_FALSE(found.audit.first_bad);
  const auto erased = of(found, FindingKind::Erased);
  ASSERT_EQ(erased.size(), 1U);
  EXPECT_EQ(erased.front().entry, entries[2].hash);
  const auto forked = of(found, FindingKind::Forked);
  ASSERT_EQ(forked.size(), 1U);
  EXPECT_EQ(forked.front().from, key_number(5).device());
  EXPECT_EQ(forked.front().entries(), 3U) << "the entry that names them, and two";
}

TEST_F(CheckIntegrity, ManyOfOneKindAreCountedAndNotAllKept) {
  for (int i = 0; i < 150; ++i)  // forth and back
    write(log::note("x"), at(i % 2 == 0 ? -hour_ms + i : 20'000 + i));
  const Integrity found = check();
  EXPECT_EQ(
      of(found, FindingKind::ClockJumped).size() + of(found, FindingKind::ClockSteppedBack).size(),
      found.findings.size());
  EXPECT_LE(of(found, FindingKind::ClockSteppedBack).size(), most_findings);
  EXPECT_GE(found.count(FindingKind::ClockSteppedBack), 75U);
}

TEST_F(CheckIntegrity, AStopIsHeard) {
  std::stop_source stop;
  stop.request_stop();
  EXPECT_EQ(check_integrity(folder_.path(), stop.get_token(), {}).error().code, Code::Stopped);
}

}  // namespace
}  // namespace jambline::engine
