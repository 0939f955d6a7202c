// The whole check looks at signatures on a second thread; what it finds is what one after the other
// would find.
#include <gtest/gtest.h>

#include "log/signature_checks.h"
#include "tests/log/behind_guards.h"
#include "tests/log/log_folder.h"

namespace jambline::log {
namespace {

constexpr int entries_of_three_batches = 5000;
constexpr int entries_an_action = 100;

class AuditOfMany : public testing::Test {
 protected:
  AuditOfMany() {
    SeededRandom random(1);
    auto log = open_log(folder_.path());
    must(log->found_shop(key_number(1), "tablet one", at(), random));
    const std::vector<Draft> drafts(entries_an_action, note("same"));
    for (int i = 0; i < entries_of_three_batches / entries_an_action; ++i)
      must(log->append(key_number(1), {}, drafts, at(1000 * (i + 1)), random));
  }
  static std::string bad_signature(int arrival) {
    return "UPDATE entries SET signature = zeroblob(64) WHERE arrival = " + std::to_string(arrival);
  }
  static std::string bad_payload(int arrival) {
    return "UPDATE entries SET payload = CAST('{\"words\":\"other\"}' AS BLOB) WHERE arrival = " +
           std::to_string(arrival);
  }
  void expect_first_bad(int arrival, Code code) {
    const Audit found = audit(folder_.path());
    ASSERT_TRUE(found.first_bad) << arrival;
    EXPECT_EQ(found.first_bad->code, code) << arrival;
    EXPECT_EQ(found.first_bad->arg("seq"), std::to_string(arrival));
    EXPECT_EQ(found.entries, static_cast<std::uint64_t>(arrival - 1));
  }
  TempFolder folder_;
};

TEST_F(AuditOfMany, AllIsWell) {
  const Audit found = audit(folder_.path());
  EXPECT_FALSE(found.first_bad);
  EXPECT_EQ(found.entries, 1U + entries_of_three_batches);
}

TEST_F(AuditOfMany, TheFirstBadSignatureIsNamedWhereverItStands) {
  for (const int arrival : {5001, 4097, 4096, 2049, 2048, 700, 2}) {
    change_behind_guards(folder_.path(), bad_signature(arrival));
    expect_first_bad(arrival, Code::BadSignature);
  }
}

TEST_F(AuditOfMany, OfSeveralWrongsTheFirstIsNamed) {
  change_behind_guards(folder_.path(), bad_signature(4900));
  change_behind_guards(folder_.path(), bad_payload(4890));
  expect_first_bad(4890, Code::BadHash);
  change_behind_guards(folder_.path(), bad_signature(4880));
  expect_first_bad(4880, Code::BadSignature);
  change_behind_guards(folder_.path(), bad_payload(4880));
  expect_first_bad(4880, Code::BadSignature);
  change_behind_guards(folder_.path(), bad_payload(30));
  expect_first_bad(30, Code::BadHash);
}

TEST_F(AuditOfMany, CanBeStopped) {
  std::stop_source stop;
  const auto found =
      EntryLog::audit(folder_.path(), stop.get_token(), [&](double) { stop.request_stop(); });
  ASSERT_FALSE(found);
  EXPECT_EQ(found.error().code, Code::Stopped);
}

TEST(SignatureChecks, NameTheEarliestBadOneOfAllSizesOfWork) {
  const auto key = key_number(3);
  Hash hash;
  hash.bytes[0] = 1;
  const auto good = key.sign(hash);
  for (const int count : {0, 1, 7, 2047, 2048, 2049, 4500}) {
    SignatureChecks checks;
    for (int i = 1; i <= count; ++i) {
      auto signature = good;
      if (i == 5 || i == 2048 || i == 4499) signature.bytes[3] ^= 1U;
      checks.add(i, key.key(), hash, signature);
    }
    checks.finish();
    EXPECT_EQ(checks.first_bad(), count >= 5 ? std::optional<std::int64_t>(5) : std::nullopt);
  }
}

}  // namespace
}  // namespace jambline::log
