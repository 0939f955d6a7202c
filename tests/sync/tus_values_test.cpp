// Header values of tus. base64 is held against RFC 4648 section 10.
#include <gtest/gtest.h>

#include "sync/tus.h"

namespace jambline::sync {
namespace {

TEST(TusValues, Base64IsThatOfRfc4648) {
  const std::pair<const char*, const char*> vectors[] = {
      {"f", "Zg=="},        {"fo", "Zm8="},        {"foo", "Zm9v"},
      {"foob", "Zm9vYg=="}, {"fooba", "Zm9vYmE="}, {"foobar", "Zm9vYmFy"}};
  for (const auto& [plain, coded] : vectors) {
    EXPECT_EQ(metadata_of("k", plain), std::string("k ") + coded);
    EXPECT_EQ(metadata_value(std::string("k ") + coded, "k"), plain);
  }
}

TEST(TusValues, OneOfManyKeysIsFoundByItsWholeName) {
  const std::string header = "name Zg==,empty, sha256 Zm8=,sha25 Zm9v";
  EXPECT_EQ(metadata_value(header, "sha256"), "fo");
  EXPECT_EQ(metadata_value(header, "sha25"), "foo");
  EXPECT_EQ(metadata_value(header, "empty"), "");
  EXPECT_EQ(metadata_value(header, "sha2"), std::nullopt);
  EXPECT_EQ(metadata_value("", "sha256"), std::nullopt);
}

TEST(TusValues, WhatIsNoBase64IsNothing) {
  for (const char* bad : {"k Z", "k Zg=", "k Zg", "k Z===", "k ====", "k Zg==Zg==", "k Z\x80==",
                          "k Zg== ", "k -_-_", "k  Zg=="})
    EXPECT_EQ(metadata_value(bad, "k"), std::nullopt) << bad;
}

TEST(TusValues, ANumberIsDigitsAndNothingElse) {
  EXPECT_EQ(decimal("0"), 0U);
  EXPECT_EQ(decimal("9223372036854775807"), 9223372036854775807U);
  for (const char* bad : {"", "-1", "+1", " 1", "1 ", "1.0", "0x1", "1e3", "99999999999999999999"})
    EXPECT_EQ(decimal(bad), std::nullopt) << bad;
}

TEST(TusValues, OnlyARangeToTheEndIsOne) {
  EXPECT_EQ(range_start("bytes=100-"), 100U);
  EXPECT_EQ(range_start("bytes=0-"), 0U);
  for (const char* bad : {"", "bytes=", "bytes=-", "bytes=-5", "bytes=1-5", "bytes=1-,2-",
                          "bits=1-", "bytes 1-", "bytes=99999999999999999999-"})
    EXPECT_EQ(range_start(bad), std::nullopt) << bad;
}

}  // namespace
}  // namespace jambline::sync
