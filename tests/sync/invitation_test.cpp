// What the square code says. Held against sync/invitation.h.
#include "sync/invitation.h"

#include <gtest/gtest.h>

namespace jambline::sync {
namespace {

const std::string good = "jambline:1?hub=" + std::string(64, '1') +
                         "&shop=" + std::string(32, '2') + "&code=" + std::string(32, '3') +
                         "&at=192.168.1.20:8740&at=[fe80::1]:9000&at=hub.local";

TEST(Invitation, ReadsBackAndIsWrittenWithItsPorts) {
  const auto read = decode_invitation(" " + good + "\r\n");
  ASSERT_TRUE(read);
  EXPECT_EQ(encode(*read), good + ":8740");
  EXPECT_EQ(*decode_invitation(encode(*read)), *read);
}

TEST(Invitation, WhateverIsMissingTwiceUnknownOrTooLongIsNamed) {
  const auto field = [](const std::string& text) {
    const auto read = decode_invitation(text);
    EXPECT_FALSE(read) << text;
    return read ? std::string() : std::string(read.error().arg("field"));
  };
  EXPECT_EQ(field(""), "start");
  EXPECT_EQ(field("jambline:2" + good.substr(10)), "start");
  EXPECT_EQ(field("http://hub/"), "start");
  EXPECT_EQ(field("jambline:1?shop=" + std::string(32, '2')), "hub");
  EXPECT_EQ(field(good + "&hub=" + std::string(64, '1')), "hub");
  EXPECT_EQ(field(good + "&code="), "code");
  EXPECT_EQ(field(good + "&more=1"), "part");
  EXPECT_EQ(field(good + "&at"), "part");
  for (const char* bad : {"", ":1", "a:0", "a:65536", "a:-1", "a:1x", "a b:1", "a/b:1", "[fe80::1",
                          "[fe80::1]1", "user@a:1", "[x/y]:1"})
    EXPECT_EQ(field(good + "&at=" + bad), "at") << bad;
  EXPECT_EQ(field(good + std::string(400, ' ') + "x"), "length");
  std::string many = good;
  for (int i = 0; i < 6; ++i) many += "&at=h" + std::to_string(i);
  EXPECT_EQ(field(many), "at");
}

// Found by fuzzing (fuzz-invitation): [8z1%eth%%eth%]:8740 was taken and written so that nobody
// could read it.
TEST(Invitation, WhatIsTakenAsAnAddressIsWrittenSoThatItIsReadAgain) {
  for (const char* bad : {"[8z1%eth%%eth%]:8740", "[localhost]:1", "[192.168.1.20]"})
    EXPECT_FALSE(parse_address(bad)) << bad;
  for (const char* taken : {"[fe80::1%eth0]:8740", "[::]:1", "hub.local"}) {
    const auto address = parse_address(taken);
    ASSERT_TRUE(address) << taken;
    EXPECT_EQ(parse_address(address->text()).value(), *address) << taken;
  }
}

TEST(Invitation, TheDigitsAreOtherForAnotherKeyHubShopOrNonce) {
  ShopId shop;
  seal::Key device, hub;
  Nonce nonce;
  const std::string digits = six_digits(shop, device, hub, nonce);
  ASSERT_EQ(digits.size(), 7U);
  EXPECT_EQ(digits[3], ' ');
  std::vector<std::string> others;
  shop.bytes[0] = 1;
  others.push_back(six_digits(shop, device, hub, nonce));
  shop.bytes[0] = 0;
  device.bytes[0] = 1;
  others.push_back(six_digits(shop, device, hub, nonce));
  device.bytes[0] = 0;
  hub.bytes[0] = 1;
  others.push_back(six_digits(shop, device, hub, nonce));
  hub.bytes[0] = 0;
  nonce.bytes[0] = 1;
  others.push_back(six_digits(shop, device, hub, nonce));
  for (const auto& other : others) EXPECT_NE(other, digits);
}

}  // namespace
}  // namespace jambline::sync
