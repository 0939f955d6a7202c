#include <algorithm>
#include <gtest/gtest.h>

#include "seal/chain.h"
#include "tests/seal/format_examples.h"

namespace jambline::seal {
namespace {

SigningKey key_of(std::uint8_t number) {
  std::array<std::uint8_t, 32> seed{};
  seed[5] = number;
  return SigningKey::from_seed(seed);
}

// Writes membership entries of several devices with right chains.
class Shop {
 public:
  std::vector<SealedEntry> entries{founded_example()};
  std::map<DeviceId, std::pair<std::uint64_t, Hash>> tails{
      {founder().device(), {1, founded_example().hash}}};

  template <class Payload>
  SealedEntry write(const SigningKey& key, std::uint16_t kind, const Payload& payload) {
    auto& [seq, hash] = tails[key.device()];
    Header header = example_header();
    header.seq = ++seq;
    header.prev_hash = hash;
    header.kind = kind;
    const SealedEntry entry = seal_example(key, header, to_json(payload), 0x40);
    hash = entry.hash;
    entries.push_back(entry);
    return entry;
  }
  SealedEntry admit(const SigningKey& by, const SigningKey& device, bool manager) {
    const auto entry =
        write(by, kind::device_admitted, DeviceAdmitted{device.key(), "tablet", manager});
    tails.try_emplace(device.device(), 0, entry.hash);
    return entry;
  }
  SealedEntry revoke(const SigningKey& by, const SigningKey& device, std::uint64_t cut_seq,
                     const Hash& cut_hash = {}) {
    return write(by, kind::device_revoked, DeviceRevoked{device.device(), cut_seq, cut_hash});
  }
};

Members fold(const std::vector<SealedEntry>& entries) {
  Members members;
  for (const auto& entry : entries) EXPECT_TRUE(members.apply(entry));
  return members;
}

TEST(Membership, TheFounderIsAManagerAndTheShopIsItsKeys) {
  const Members members = fold({founded_example(), admitted_example()});
  EXPECT_EQ(members.shop(), example_header().shop);
  ASSERT_TRUE(members.find(founder().device()));
  EXPECT_TRUE(members.find(founder().device())->manager);
  ASSERT_TRUE(members.find(second().device()));
  EXPECT_FALSE(members.find(second().device())->manager);
  EXPECT_TRUE(members.first_link(founder().device(), {}));
  EXPECT_TRUE(members.first_link(second().device(), admitted_example().hash));
  EXPECT_FALSE(members.first_link(second().device(), {}));
  EXPECT_FALSE(members.first_link(second().device(), founded_example().hash));
  EXPECT_EQ(members.may(hub().device(), 1, {}).error().code, Code::NotAdmitted);
}

TEST(Membership, OneWhoIsNoManagerAdmitsAndRevokesNobody) {
  Shop shop;
  shop.admit(founder(), second(), false);
  shop.admit(second(), hub(), true);
  shop.revoke(second(), founder(), 1, founded_example().hash);
  const Members members = fold(shop.entries);
  EXPECT_FALSE(members.find(hub().device()));
  EXPECT_FALSE(members.find(founder().device())->cut);
}

TEST(Membership, ACircleOfAdmissionsThatTheFounderDidNotStartIsNoMembership) {
  Shop shop;
  shop.admit(key_of(1), key_of(2), true);
  shop.admit(key_of(2), key_of(1), true);
  EXPECT_EQ(fold(shop.entries).devices().size(), 1U);
}

TEST(Membership, ARevokedDevicesEntriesEndAtTheCut) {
  Shop shop;
  shop.admit(founder(), second(), true);
  const auto early = shop.admit(second(), key_of(1), false);
  shop.admit(second(), key_of(2), false);
  shop.revoke(founder(), second(), 1, early.hash);
  const Members members = fold(shop.entries);
  EXPECT_TRUE(members.may(second().device(), 1, early.hash));
  EXPECT_EQ(members.may(second().device(), 1, Hash{}).error().code, Code::Fork);
  EXPECT_EQ(members.may(second().device(), 2, Hash{}).error().code, Code::Revoked);
  EXPECT_TRUE(members.find(key_of(1).device()));
  EXPECT_FALSE(members.find(key_of(2).device())) << "admitted after the cut";
}

TEST(Membership, AForkBelowTheCutDoesNotStand) {
  Shop shop;
  shop.admit(founder(), second(), true);
  const auto theirs = shop.admit(second(), key_of(1), false);
  shop.revoke(founder(), second(), 1, filled<Hash>(9));
  EXPECT_FALSE(fold(shop.entries).find(key_of(1).device()));
  EXPECT_EQ(fold(shop.entries).may(second().device(), 1, theirs.hash).error().code, Code::Fork);
}

TEST(Membership, TwoManagersWhoRevokeEachOtherAreBothRevoked) {
  Shop shop;
  shop.admit(founder(), second(), true);
  shop.revoke(second(), founder(), 2, shop.entries[1].hash);
  shop.revoke(founder(), second(), 0);
  const Members members = fold(shop.entries);
  EXPECT_TRUE(members.find(founder().device())->cut);
  EXPECT_TRUE(members.find(second().device())->cut);
}

TEST(Membership, AStandingRevocationEndsTheRevocationsAfterIt) {
  Shop shop;
  shop.admit(founder(), second(), true);
  shop.admit(founder(), key_of(1), true);
  shop.revoke(founder(), second(), 0);
  shop.revoke(second(), key_of(1), 0);  // written after the cut
  EXPECT_FALSE(fold(shop.entries).find(key_of(1).device())->cut);
}

TEST(Membership, AnotherShopAForgedPayloadAndAForgedSignatureChangeNothing) {
  Members members = fold({founded_example()});
  const Members before = members;
  SealedEntry other = admitted_example();
  other.header.shop.bytes[0] ^= 1U;
  other.hash = entry_hash(encode(other.header));
  EXPECT_EQ(members.apply(other).error().code, Code::WrongShop);
  SealedEntry swapped = admitted_example();
  swapped.payload.replace(swapped.payload.find("false"), 5, "true ");
  EXPECT_EQ(members.apply(swapped).error().code, Code::BadHash);
  SealedEntry unsigned_one = admitted_example();
  unsigned_one.signature = {};
  EXPECT_TRUE(members.apply(unsigned_one));
  EXPECT_EQ(members, before);
}

TEST(Membership, AnyOrderAndAnyRepetitionGivesTheSameMembers) {
  SeededRandom random(2024);
  for (int round = 0; round < 60; ++round) {
    Shop shop;
    std::vector<SigningKey> keys{founder()};
    for (std::uint8_t i = 1; i <= 6; ++i) keys.push_back(key_of(i));
    for (int i = 0; i < 14; ++i) {
      const auto& by = keys[random.below(keys.size())];
      const auto& whom = keys[random.below(keys.size())];
      const auto act = random.below(5);
      if (act < 3)
        shop.admit(by, whom, random.below(2) == 0);
      else if (act == 3)
        shop.revoke(by, whom, random.below(3),
                    random.below(2) ? shop.tails[whom.device()].second : Hash{});
      else
        shop.write(by, kind::hub_admitted, HubAdmitted{whom.key(), "hub"});
    }
    const Members wanted = fold(shop.entries);
    for (int shuffle = 0; shuffle < 4; ++shuffle) {
      auto entries = shop.entries;
      std::shuffle(entries.begin(), entries.end(), random.engine());
      entries.push_back(entries.front());
      ASSERT_EQ(fold(entries), wanted) << "round " << round;
    }
  }
}

TEST(Chain, AGapARepetitionAWrongLinkAndAForeignShopAreNamed) {
  const Members members = fold({founded_example(), admitted_example()});
  const auto walk_over = [&](std::vector<SealedEntry> entries) {
    ChainWalk walk(&members);
    for (const auto& entry : entries)
      if (auto status = walk.next(entry.header, entry.hash); !status)
        return std::pair(status.error().code, std::string(status.error().arg("seq")));
    return std::pair(Code::Missing, std::string());
  };
  const auto good = std::pair(Code::Missing, std::string());
  EXPECT_EQ(walk_over({founded_example(), note_example(), admitted_example()}), good);
  EXPECT_EQ(walk_over({admitted_example()}), std::pair(Code::ChainBroken, std::string("2")));
  EXPECT_EQ(walk_over({founded_example(), founded_example()}),
            std::pair(Code::ChainBroken, std::string("1")));
  SealedEntry unlinked = admitted_example();
  unlinked.header.prev_hash = note_example().hash;
  EXPECT_EQ(walk_over({founded_example(), unlinked}),
            std::pair(Code::ChainBroken, std::string("2")));
  SealedEntry uninvited = note_example();
  uninvited.header.prev_hash = founded_example().hash;
  EXPECT_EQ(walk_over({founded_example(), uninvited}),
            std::pair(Code::ChainBroken, std::string("1")));
  SealedEntry foreign = admitted_example();
  foreign.header.shop.bytes[1] ^= 1U;
  EXPECT_EQ(walk_over({founded_example(), foreign}), std::pair(Code::WrongShop, std::string("2")));
}

}  // namespace
}  // namespace jambline::seal
