// Vectors of FIPS 180-4 and RFC 8032 through the functions that the log itself calls.
#include <gtest/gtest.h>

#include "base/json.h"
#include "seal/digest.h"
#include "seal/sign.h"
#include "tests/whole_file.h"

namespace jambline::seal {
namespace {

struct DigestCase {
  std::string text;
  int repeat{};
  Hash sha256;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "text"}, self.text);
    visit(Field{.name = "repeat"}, self.repeat);
    visit(Field{.name = "sha256"}, self.sha256);
  }
};

struct SignatureCase {
  std::string seed;
  Key public_key;
  std::string message;
  Signature signature;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "seed"}, self.seed);
    visit(Field{.name = "public_key"}, self.public_key);
    visit(Field{.name = "message"}, self.message);
    visit(Field{.name = "signature"}, self.signature);
  }
};

template <class Case>
struct Cases {
  std::string source;
  std::vector<Case> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "source"}, self.source);
    visit(Field{.name = "cases"}, self.cases);
  }
};

template <class Case>
std::vector<Case> cases_of(const std::string& name) {
  auto read = from_json<Cases<Case>>(
      test::whole_file(std::string(JAMBLINE_SOURCE_DIR "/tests/seal/outside/") + name),
      Strict::Yes);
  return read ? read->cases : std::vector<Case>{};
}

TEST(OutsideVectors, Sha256GivesTheDigestsOfFips180) {
  const auto cases = cases_of<DigestCase>("fips_180_4.json");
  ASSERT_EQ(cases.size(), 4U);
  for (const auto& one : cases) {
    std::string message;
    Sha256 in_pieces;
    for (int i = 0; i < one.repeat; ++i) {
      message += one.text;
      in_pieces.add(one.text);
    }
    EXPECT_EQ(sha256(bytes_of(message)), one.sha256) << one.text << " x " << one.repeat;
    EXPECT_EQ(in_pieces.finish(), one.sha256) << one.text << " x " << one.repeat;
  }
}

TEST(OutsideVectors, Ed25519GivesTheKeysAndSignaturesOfRfc8032) {
  const auto cases = cases_of<SignatureCase>("rfc_8032.json");
  ASSERT_EQ(cases.size(), 3U);
  for (const auto& one : cases) {
    std::array<std::uint8_t, 32> seed;
    ASSERT_TRUE(from_hex(one.seed, seed));
    std::vector<std::uint8_t> message(one.message.size() / 2);
    ASSERT_TRUE(from_hex(one.message, message));
    const SigningKey key = SigningKey::from_seed(seed);
    EXPECT_EQ(key.key(), one.public_key);
    EXPECT_EQ(key.sign(message), one.signature);
    EXPECT_TRUE(verify(one.public_key, message, one.signature));
    message.push_back(0);
    EXPECT_FALSE(verify(one.public_key, message, one.signature));
  }
}

}  // namespace
}  // namespace jambline::seal
