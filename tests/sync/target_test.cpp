// Paths are read to the letter or not at all. Held against our own design, PROTOCOL.md section 2.
#include "sync/target.h"

#include <gtest/gtest.h>

namespace jambline::sync {
namespace {

const std::string shop_hex(32, 'a');
const std::string device_hex(32, 'b');
const std::string blob(64, 'c');
const std::string upload = blob + "-1500000-0123456789abcdef";

std::vector<std::string> good_paths() {
  const std::string at = "/v1/" + shop_hex + "/";
  return {"/v1",
          at + "challenge",
          at + "session",
          at + "enrol",
          at + "enrol/" + device_hex,
          at + "invite",
          at + "pending",
          at + "refuse/" + device_hex,
          at + "log/" + device_hex + "?from=1",
          at + "pull",
          at + "quarantine",
          at + "quarantine/" + device_hex + "?from=12",
          at + "quarantine/" + device_hex + "/settled?through=12",
          at + "devices",
          at + "have",
          at + "files",
          at + "files/" + upload,
          at + "blobs/" + blob};
}

TEST(Target, EveryPathReadsAndIsWrittenTheSame) {
  for (const std::string& path : good_paths()) {
    const auto target = parse_target(path);
    ASSERT_TRUE(target) << path;
    EXPECT_EQ(target_of(*target), path);
  }
}

TEST(Target, OneSignMoreLessOrOtherIsAnotherPathOrNone) {
  for (const std::string& path : good_paths())
    for (std::size_t at = 0; at <= path.size(); ++at)
      for (const char sign : std::string("/.%?&=A\0 -0x", 12)) {
        std::string more = path;
        more.insert(at, 1, sign);
        if (const auto target = parse_target(more)) {
          EXPECT_EQ(target_of(*target), more);
        }
        if (at == path.size()) continue;
        std::string other = path;
        other[at] = sign;
        if (const auto target = parse_target(other)) {
          EXPECT_EQ(target_of(*target), other);
        }
        std::string less = path;
        less.erase(at, 1);
        if (const auto target = parse_target(less)) {
          EXPECT_EQ(target_of(*target), less);
        }
      }
}

TEST(Target, NoTrickOfAPathGetsThrough) {
  const std::string at = "/v1/" + shop_hex + "/blobs/";
  for (const std::string& bad :
       {std::string(),
        std::string("/"),
        std::string("v1"),
        std::string("/v1/"),
        std::string("/V1"),
        std::string("/v2"),
        "/v1/" + shop_hex,
        "//v1/" + shop_hex + "/pull",
        at + "..",
        at + "../" + blob,
        at + "%2e%2e",
        at + "%2E%2E%2F" + blob.substr(9),
        at + blob + "/",
        at + blob + "/..",
        at + blob + "?",
        at + blob + "?from=1",
        at + blob.substr(1),
        at + blob + "c",
        at + std::string(64, 'C'),
        at + std::string(64, 'g'),
        at + std::string(63, 'c') + std::string(1, '\0'),
        at + std::string(100'000, 'c'),
        "/v1/" + std::string(32, 'A') + "/pull",
        "/v1/" + shop_hex + "/pull#x",
        "http://hub/v1/" + shop_hex + "/pull",
        "/v1/" + shop_hex + "/log/" + device_hex,
        "/v1/" + shop_hex + "/log/" + device_hex + "?from=",
        "/v1/" + shop_hex + "/log/" + device_hex + "?from=01",
        "/v1/" + shop_hex + "/log/" + device_hex + "?from=-1",
        "/v1/" + shop_hex + "/log/" + device_hex + "?from=1&",
        "/v1/" + shop_hex + "/log/" + device_hex + "?from=9223372036854775808",
        "/v1/" + shop_hex + "/log/" + device_hex + "?from=1%20",
        "/v1/" + shop_hex + "/log/" + device_hex + "?to=1",
        "/v1/" + shop_hex + "/files/" + blob,
        "/v1/" + shop_hex + "/files/" + blob + "--0123456789abcdef",
        "/v1/" + shop_hex + "/files/" + blob + "-01-0123456789abcdef",
        "/v1/" + shop_hex + "/files/" + blob + "-99999999999999999999-0123456789abcdef",
        "/v1/" + shop_hex + "/files/../" + upload,
        "/v1/" + shop_hex + "/files/" + upload + ".part"})
    EXPECT_FALSE(parse_target(bad)) << bad.substr(0, 200);
}

}  // namespace
}  // namespace jambline::sync
