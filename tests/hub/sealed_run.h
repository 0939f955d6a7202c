// tests/hub/sealed_run.h: sealed entries of a small shop, made without a log.
//
// Shape:   one chain a device, written as a device would; all from seeds, so every run is the same.
#pragma once

#include <array>
#include <map>
#include <string>
#include <vector>

#include "base/json.h"
#include "base/random.h"
#include "seal/membership.h"
#include "seal/receipt.h"
#include "seal/sign.h"

namespace jambline::test {

inline constexpr std::int64_t hub_monday_ms = 1772438400000;  // 2026-03-02 08:00 UTC
inline constexpr std::uint16_t plain_kind = 700;
inline constexpr std::uint16_t erasable_kind = 701;  // the suites say so

inline seal::SigningKey hub_test_key(std::uint8_t number) {
  std::array<std::uint8_t, 32> seed{};
  seed[0] = number;
  seed[31] = 0x77;
  return seal::SigningKey::from_seed(seed);
}

inline seal::Epoch epoch_number(std::uint8_t number) {
  seal::Epoch epoch;
  epoch.bytes.fill(number);
  return epoch;
}

// Writes entries of one shop's devices.
class SealedRun {
 public:
  explicit SealedRun(std::uint64_t seed = 1) : random_(seed), founder_(hub_test_key(1)) {
    nonce_ = random_.make<seal::Salt>();
    shop_ = seal::shop_id(founder_.key(), nonce_);
  }
  const ShopId& shop() const { return shop_; }
  const seal::SigningKey& founder() const { return founder_; }

  seal::SealedEntry founded() {
    return next(founder_, seal::kind::shop_founded,
                to_json(seal::ShopFounded{founder_.key(), nonce_, "founder"}));
  }
  seal::SealedEntry admitted(const seal::SigningKey& key, std::string name, bool manager = false) {
    auto entry = next(founder_, seal::kind::device_admitted,
                      to_json(seal::DeviceAdmitted{key.key(), std::move(name), manager}));
    heads_[key.device()] = {0, entry.hash};
    return entry;
  }
  seal::SealedEntry hub_admitted(const seal::Key& hub) {
    return next(founder_, seal::kind::hub_admitted, to_json(seal::HubAdmitted{hub, "hub"}));
  }
  seal::SealedEntry revoked(const DeviceId& device, std::uint64_t cut_seq, const Hash& cut) {
    return next(founder_, seal::kind::device_revoked,
                to_json(seal::DeviceRevoked{device, cut_seq, cut}));
  }
  seal::SealedEntry erasure(const seal::SigningKey& key, const Hash& target) {
    return next(key, seal::kind::payload_erased, to_json(seal::PayloadErased{target, "asked"}));
  }
  seal::SealedEntry said(const seal::SigningKey& key, std::string words,
                         std::uint16_t kind = plain_kind) {
    return next(key, kind, R"({"words":")" + std::move(words) + R"("})");
  }
  std::vector<seal::SealedEntry> many(const seal::SigningKey& key, std::size_t count) {
    std::vector<seal::SealedEntry> out;
    for (std::size_t i = 0; i < count; ++i) out.push_back(said(key, "n" + std::to_string(i)));
    return out;
  }

 private:
  struct Link {
    std::uint64_t seq = 0;
    Hash hash;
  };
  seal::SealedEntry next(const seal::SigningKey& key, std::uint16_t kind, std::string payload) {
    Link& link = heads_[key.device()];
    seal::SealedEntry entry;
    entry.payload = std::move(payload);
    entry.salt = random_.make<seal::Salt>();
    auto& header = entry.header;
    header.shop = shop_;
    header.device = key.device();
    header.seq = link.seq + 1;
    header.prev_hash = link.hash;
    header.wall_ms = hub_monday_ms + static_cast<std::int64_t>(1000 * ++clock_);
    header.hlc = static_cast<std::uint64_t>(header.wall_ms) << 16U;
    header.action = random_.make<ActionId>();
    header.part = header.parts = 1;
    header.kind = kind;
    header.schema = 1;
    header.payload_bytes = static_cast<std::uint32_t>(entry.payload.size());
    header.payload_hash = seal::payload_hash(entry.salt, entry.payload);
    entry.hash = seal::entry_hash(seal::encode(header));
    entry.signature = key.sign(entry.hash);
    link = {header.seq, entry.hash};
    return entry;
  }

  SeededRandom random_;
  seal::SigningKey founder_;
  seal::Salt nonce_;
  ShopId shop_;
  std::map<DeviceId, Link> heads_;
  std::uint64_t clock_ = 0;
};

}  // namespace jambline::test
