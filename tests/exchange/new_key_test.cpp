// A folder that was copied and used twice, put in order for a new key: nothing of it is lost, and
// what is left stands by itself. Found by tests/simulator. Source: FAULTS.md, 14.
#include "exchange/new_key.h"

#include <gtest/gtest.h>

#include "engine/shop_devices.h"
#include "tests/log/log_folder.h"

namespace jambline::exchange {
namespace {

// Founded by key 1, two notes (2, 3), then as a test goes on.
class NewKey : public testing::Test {
 protected:
  void SetUp() override {
    log::must(log::key_number(1).save(folder_.path() / "device.key"));
    log_ = log::small_log(folder_.path(), 2);
  }
  std::vector<seal::SealedEntry> moved(std::uint64_t common_seq) {
    log_.reset();
    const auto key = log::must(asking_key(folder_.path(), random_));
    log::must(note_new_key(folder_.path(), common_seq));
    const Status done = move_to_new_key(folder_.path(), log::no_ballast());
    EXPECT_TRUE(done) << code_name(done.error().code);
    if (!done) return {};
    EXPECT_EQ(log::must(seal::SigningKey::load(folder_.path() / "device.key")).key(), key.key());
    EXPECT_FALSE(log::audit(folder_.path()).first_bad);
    log_ = log::open_log(folder_.path());
    return log::entries_of(*log_);
  }
  std::vector<std::uint64_t> divergent() const {
    std::vector<std::uint64_t> out;
    for (const auto& entry : log::must(divergent_entries(folder_.path())))
      out.push_back(entry.header.seq);
    return out;
  }

  log::TempFolder folder_;
  SeededRandom random_{9};
  std::unique_ptr<log::EntryLog> log_;
};

TEST_F(NewKey, GoesOnWithoutWhatCameSince) {
  EXPECT_EQ(moved(2).size(), 2U);
  EXPECT_EQ(divergent(), std::vector<std::uint64_t>{3});
  EXPECT_FALSE(new_key_noted(folder_.path()));
}

TEST_F(NewKey, WhoWasLetInSinceComesAgainFromTheHub) {
  const auto second = log::key_number(2);
  const auto admission = engine::draft_of(engine::Admission{second.key(), "tablet two", false});
  log::must(log_->append(log::key_number(1), {}, {&admission, 1}, log::at(5000), random_));
  const log::TempFolder of_second;
  auto its_log = log::open_log(of_second.path());
  log::must(its_log->add(log::entries_of(*log_)));
  const auto draft = log::note("of the second");
  log::must(its_log->append(second, {}, {&draft, 1}, log::at(6000), random_));
  log::must(log_->add(log::entries_of(*its_log)));

  EXPECT_EQ(moved(3).size(), 3U);
  EXPECT_EQ(divergent(), std::vector<std::uint64_t>{4});
  log::must(log_->add(log::entries_of(*its_log)));  // the other copy had said it, too
  EXPECT_EQ(log::entries_of(*log_).size(), 5U);
  EXPECT_FALSE(log::audit(folder_.path()).first_bad);
}

TEST_F(NewKey, WhatWasErasedSinceComesAgainWithItsPayload) {
  const auto before = log::entries_of(*log_);
  const std::uint16_t list[] = {log::note_kind};
  log::must(log_->erase_payload(log::key_number(1), {}, before[1].hash, "asked", list,
                                log::at(5000), random_));
  EXPECT_EQ(moved(3).size(), 1U);
  EXPECT_EQ(divergent(), std::vector<std::uint64_t>{4});
  log::must(log_->add(before));
  EXPECT_EQ(log::must(log_->find(before[1].hash))->entry.payload, before[1].payload);
}

}  // namespace
}  // namespace jambline::exchange
