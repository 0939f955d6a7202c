#include <gtest/gtest.h>
#include <set>

#include "tests/log/log_folder.h"

namespace jambline::log {
namespace {

TEST(Append, WhatWasAppendedIsReadBackByArrivalJobDeviceAndHash) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 9);
  const auto all = all_of(*log);
  ASSERT_EQ(all.size(), 10U);
  EXPECT_EQ(log->last_arrival(), 10);
  for (std::size_t i = 0; i < all.size(); ++i) {
    EXPECT_EQ(all[i].arrival, static_cast<Arrival>(i + 1));
    EXPECT_EQ(all[i].entry.header.seq, i + 1);
    EXPECT_EQ(all[i].entry.header.prev_hash, i > 0 ? all[i - 1].entry.hash : Hash{});
    EXPECT_EQ(all[i].entry.hash, seal::entry_hash(seal::encode(all[i].entry.header)));
  }
  int of_job_two = 0;
  must(log->said_of(job_number(2), [&](const Said& said) {
    EXPECT_EQ(said.header.subject, job_number(2));
    const auto whole = must(log->find(said.hash));
    EXPECT_EQ(whole->arrival, said.arrival);
    EXPECT_EQ(whole->entry.payload, said.payload);
    return ++of_job_two, true;
  }));
  EXPECT_EQ(of_job_two, 3);
  const auto found = must(log->find(all[4].entry.hash));
  ASSERT_TRUE(found);
  EXPECT_EQ(found->entry.payload, R"({"words":"number 3"})");
  int from_eight = 0;
  must(log->read_device(log->device(), 8, [&](const Stored&) { return ++from_eight, true; }));
  EXPECT_EQ(from_eight, 3);
  EXPECT_FALSE(audit(folder.path()).first_bad);
}

TEST(Append, AnActionOfThreePartsSharesItsNameAndStandsTogether) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 0);
  SeededRandom random(5);
  const std::vector<Draft> drafts{note("a"), note("b"), note("c")};
  const auto stored = must(log->append(key_number(1), {}, drafts, at(5), random));
  ASSERT_EQ(stored.size(), 3U);
  std::set<std::uint64_t> clocks;
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(stored[i].entry.header.part, i + 1);
    EXPECT_EQ(stored[i].entry.header.parts, 3);
    EXPECT_EQ(stored[i].entry.header.action, stored[0].entry.header.action);
    clocks.insert(stored[i].entry.header.hlc);
  }
  EXPECT_EQ(clocks.size(), 3U);
}

TEST(Append, AReopenedLogGoesOnWhereItEnded) {
  const TempFolder folder;
  const auto before = entries_of(*small_log(folder.path(), 4));
  auto log = open_log(folder.path());
  SeededRandom random(9);
  const Draft draft = note("later");
  const auto stored = must(log->append(key_number(1), {}, {&draft, 1}, at(99000), random));
  EXPECT_EQ(stored.front().entry.header.seq, 6U);
  EXPECT_EQ(stored.front().entry.header.prev_hash, before.back().hash);
}

}  // namespace
}  // namespace jambline::log
