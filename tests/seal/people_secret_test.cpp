#include "seal/people_secret.h"

#include <fstream>
#include <gtest/gtest.h>
#include <iterator>
#include <sys/stat.h>
#include <unistd.h>

#include "tests/log/log_folder.h"
#include "tests/whole_file.h"

namespace jambline::seal {
namespace {

class PeopleSecretTest : public testing::Test {
 protected:
  PeopleSecret open() {
    auto out = PeopleSecret::open(folder_.path());
    EXPECT_TRUE(out.has_value());
    return std::move(*out);
  }
  std::string file() const { return test::whole_file(folder_.path() / "people.secret"); }
  PinTry attempt(PeopleSecret& secret, std::string_view pin, std::int64_t at_ms) {
    const auto tried = secret.attempt(ivo_, pin, at_ms);
    EXPECT_TRUE(tried.has_value());
    return tried ? *tried : PinTry{};
  }

  log::TempFolder folder_;
  PersonId ivo_{{7}};
  static constexpr std::int64_t noon = 1'790'000'000'000;
};

TEST_F(PeopleSecretTest, WithoutAFileNobodyHasAPin) {
  auto secret = open();
  EXPECT_FALSE(secret.has(ivo_));
  EXPECT_EQ(attempt(secret, "1234", noon).answer, PinAnswer::NoPin);
}

TEST_F(PeopleSecretTest, RightAndWrongPinsAreToldApartAlsoAfterARestart) {
  {
    auto secret = open();
    ASSERT_TRUE(secret.set(ivo_, "2704"));
  }
  auto secret = open();
  EXPECT_TRUE(secret.has(ivo_));
  EXPECT_EQ(attempt(secret, "2704", noon).answer, PinAnswer::Right);
  EXPECT_EQ(attempt(secret, "2705", noon).answer, PinAnswer::Wrong);
  EXPECT_EQ(attempt(secret, "2704", noon).answer, PinAnswer::Right);
}

TEST_F(PeopleSecretTest, TheFileHoldsNoPinAndIsTheOwnersAlone) {
  auto secret = open();
  ASSERT_TRUE(secret.set(ivo_, "271828"));
  EXPECT_EQ(file().find("271828"), std::string::npos);
  EXPECT_NE(file().find("$argon2id$"), std::string::npos);
  struct stat info {};
  ASSERT_EQ(stat((folder_.path() / "people.secret").c_str(), &info), 0);
  EXPECT_EQ(info.st_mode & 0777, 0600u);
}

TEST_F(PeopleSecretTest, TheWaitGrowsAndOutlivesARestart) {
  {
    auto secret = open();
    ASSERT_TRUE(secret.set(ivo_, "2704"));
    EXPECT_EQ(attempt(secret, "0000", noon).wait_ms, 0);
    EXPECT_EQ(attempt(secret, "0000", noon).wait_ms, 0);
    EXPECT_EQ(attempt(secret, "0000", noon).wait_ms, 5'000);
  }
  auto secret = open();
  const PinTry early = attempt(secret, "2704", noon + 2'000);
  EXPECT_EQ(early.answer, PinAnswer::Wait);
  EXPECT_EQ(early.wait_ms, 3'000);
  EXPECT_EQ(attempt(secret, "0000", noon + 5'000).wait_ms, 10'000);
  EXPECT_EQ(attempt(secret, "2704", noon + 15'000).answer, PinAnswer::Right);
  EXPECT_EQ(attempt(secret, "0000", noon + 15'000).wait_ms, 0);
}

TEST_F(PeopleSecretTest, AClockTurnedBackDoesNotShortenTheWait) {
  auto secret = open();
  ASSERT_TRUE(secret.set(ivo_, "2704"));
  for (int i = 0; i < 3; ++i) attempt(secret, "0000", noon);
  const PinTry back = attempt(secret, "2704", noon - 86'400'000);
  EXPECT_EQ(back.answer, PinAnswer::Wait);
  EXPECT_EQ(back.wait_ms, 5'000);
  EXPECT_EQ(attempt(secret, "2704", noon - 86'400'000 + 5'000).answer, PinAnswer::Right);
}

TEST_F(PeopleSecretTest, APinIsFourToEightDigits) {
  auto secret = open();
  for (const char* bad : {"", "123", "123456789", "12a4", "12 4", "\xd9\xa1\xd9\xa2"}) {
    const auto set = secret.set(ivo_, bad);
    ASSERT_FALSE(set) << bad;
    EXPECT_EQ(set.error().code, Code::Malformed);
  }
  EXPECT_FALSE(secret.has(ivo_));
}

TEST_F(PeopleSecretTest, ARemovedPinIsGone) {
  auto secret = open();
  ASSERT_TRUE(secret.set(ivo_, "2704"));
  ASSERT_TRUE(secret.remove(ivo_));
  EXPECT_FALSE(open().has(ivo_));
  EXPECT_TRUE(secret.remove(ivo_));
}

TEST_F(PeopleSecretTest, AFileThatDoesNotReadIsSaidAndLeftAsItIs) {
  std::ofstream(folder_.path() / "people.secret") << "no list";
  const auto opened = PeopleSecret::open(folder_.path());
  ASSERT_FALSE(opened);
  EXPECT_EQ(opened.error().code, Code::Malformed);
  EXPECT_EQ(file(), "no list");
}

TEST_F(PeopleSecretTest, WhatCannotBeWrittenChangesNothing) {
  auto secret = open();
  ASSERT_TRUE(secret.set(ivo_, "2704"));
  std::filesystem::create_directory(folder_.path() /
                                    "people.secret.new");  // in the way of the write
  EXPECT_FALSE(secret.set(ivo_, "9999"));
  EXPECT_FALSE(secret.remove(ivo_));
  EXPECT_EQ(attempt(secret, "2704", noon).answer, PinAnswer::Right);
}

}  // namespace
}  // namespace jambline::seal
