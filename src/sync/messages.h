// sync/messages.h: what is said as JSON. PROTOCOL.md has an example of each, which the tests parse.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "seal/receipt.h"

namespace jambline::sync {

inline constexpr int protocol_version = 1;

using Challenge = Bytes<32, struct ChallengeTag>;
using Token = Bytes<32, struct TokenTag>;
using InviteCode = Bytes<16, struct InviteCodeTag>;
using Nonce = Bytes<16, struct NonceTag>;

// The last entry of a device that somebody has.
struct Head {
  DeviceId device;
  std::uint64_t seq{};
  Hash hash;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "seq", .min = 0, .max = 9.2e18}, self.seq);
    visit(Field{.name = "hash", .doc = "entry hash at seq"}, self.hash);
  }
  friend bool operator==(const Head&, const Head&) = default;
};

struct About {
  int protocol{};
  seal::Key hub;
  std::string hub_name;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "protocol", .min = 1, .max = 1000}, self.protocol);
    visit(Field{.name = "hub", .doc = "identity key"}, self.hub);
    visit(Field{.name = "hub_name"}, self.hub_name);
  }
};

struct ChallengeAsk {
  DeviceId device;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device"}, self.device);
  }
};

struct ChallengeAnswer {
  Challenge challenge;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "challenge"}, self.challenge);
  }
};

struct SessionAsk {
  DeviceId device;
  Challenge challenge;
  seal::Signature proof;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "challenge"}, self.challenge);
    visit(Field{.name = "proof", .doc = "Ed25519, PROTOCOL.md section 3"}, self.proof);
  }
};

struct SessionAnswer {
  Token token;
  seal::Epoch epoch;
  std::uint64_t hub_seq{};
  std::int64_t hub_ms{};
  bool revoked{};
  std::uint64_t blob_mark{};  // grows when the hub has lost a file
  std::vector<Head> heads;    // what the hub has
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "token"}, self.token);
    visit(Field{.name = "epoch"}, self.epoch);
    visit(Field{.name = "hub_seq", .min = 0, .max = 9.2e18}, self.hub_seq);
    visit(Field{.name = "hub_ms", .unit = "ms", .doc = "the hub's clock, UTC since 1970"},
          self.hub_ms);
    visit(Field{.name = "revoked"}, self.revoked);
    visit(Field{.name = "blob_mark",
                .doc = "another than last time: ask for all files again",
                .min = 0,
                .max = 9.2e18},
          self.blob_mark);
    visit(Field{.name = "heads"}, self.heads);
  }
};

struct EnrolAsk {
  InviteCode code;  // zero: a member asks for a new key of its own, with its token
  seal::Key device_key;
  std::string device_name;
  bool brings_shop{};  // the shop comes to the hub, not the device to the shop
  seal::Signature proof;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "code"}, self.code);
    visit(Field{.name = "device_key"}, self.device_key);
    visit(Field{.name = "device_name"}, self.device_name);
    visit(Field{.name = "brings_shop"}, self.brings_shop);
    visit(Field{.name = "proof", .doc = "Ed25519, PROTOCOL.md section 4"}, self.proof);
  }
};

enum class EnrolState : std::uint8_t { Waiting, Admitted, Refused, Unknown };

struct EnrolAnswer {
  EnrolState state{};
  Nonce nonce;
  std::string hub_name;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "state"}, self.state);
    visit(Field{.name = "nonce", .doc = "makes the six digits"}, self.nonce);
    visit(Field{.name = "hub_name"}, self.hub_name);
  }
};

// A device that waits for a manager to compare six digits.
struct Pending {
  seal::Key device_key;
  std::string device_name;
  Nonce nonce;
  std::int64_t asked_ms{};
  bool brings_shop{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device_key"}, self.device_key);
    visit(Field{.name = "device_name"}, self.device_name);
    visit(Field{.name = "nonce"}, self.nonce);
    visit(Field{.name = "asked_ms", .unit = "ms", .doc = "by the hub's clock"}, self.asked_ms);
    visit(Field{.name = "brings_shop"}, self.brings_shop);
  }
  friend bool operator==(const Pending&, const Pending&) = default;
};
struct PendingAnswer {
  std::vector<Pending> pending;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "pending"}, self.pending);
  }
};

struct InviteAnswer {
  InviteCode code;
  std::int64_t until_ms{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "code"}, self.code);
    visit(Field{.name = "until_ms", .unit = "ms", .doc = "by the hub's clock"}, self.until_ms);
  }
};

// Entries after a place in the hub's count.
struct PullAsk {
  std::optional<seal::Epoch> epoch;  // absent: whatever it is now
  std::uint64_t after{};             // by the hub's count
  std::vector<Head> heads;  // what the device has and does not want again; hashes count not
  int wait_s{};             // when there is nothing new
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "epoch"}, self.epoch);
    visit(Field{.name = "after", .min = 0, .max = 9.2e18}, self.after);
    visit(Field{.name = "heads", .doc = "what need not come again"}, self.heads);
    visit(Field{.name = "wait_s", .unit = "s", .min = 0, .max = 25}, self.wait_s);
  }
};

// Entries after a revocation: kept by the hub, part of no log, until a manager looks at them.
struct Quarantined {
  DeviceId device;
  std::uint64_t first_seq{};
  std::uint64_t last_seq{};
  std::uint64_t settled_through{};  // a manager has dealt with those up to here
  std::int64_t received_ms{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "first_seq", .min = 0, .max = 9.2e18}, self.first_seq);
    visit(Field{.name = "last_seq", .min = 0, .max = 9.2e18}, self.last_seq);
    visit(Field{.name = "settled_through", .min = 0, .max = 9.2e18}, self.settled_through);
    visit(Field{.name = "received_ms", .unit = "ms"}, self.received_ms);
  }
  friend bool operator==(const Quarantined&, const Quarantined&) = default;
};
struct QuarantineAnswer {
  std::vector<Quarantined> quarantine;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "quarantine"}, self.quarantine);
  }
};

// Answer to a push after the cut: it is kept, and no receipt will come.
struct QuarantinedAnswer {
  std::uint64_t through{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "through",
                .doc = "seq up to which the hub keeps them apart",
                .min = 0,
                .max = 9.2e18},
          self.through);
  }
};

// When a device was last there, and where its chain was found forked.
struct SeenDevice {
  DeviceId device;
  std::int64_t seen_ms{};
  std::optional<std::uint64_t> fork_seq;
  std::optional<std::int64_t> fork_ms;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "seen_ms", .unit = "ms", .doc = "by the hub's clock"}, self.seen_ms);
    visit(Field{.name = "fork_seq", .doc = "two entries at this seq", .min = 0, .max = 9.2e18},
          self.fork_seq);
    visit(Field{.name = "fork_ms", .unit = "ms"}, self.fork_ms);
  }
  friend bool operator==(const SeenDevice&, const SeenDevice&) = default;
};
struct SeenAnswer {
  std::int64_t hub_ms{};
  std::vector<SeenDevice> seen;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "hub_ms", .unit = "ms"}, self.hub_ms);
    visit(Field{.name = "seen"}, self.seen);
  }
};

struct HaveAsk {
  std::vector<Hash> hashes;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "hashes", .doc = "at most 1000"}, self.hashes);
  }
};
struct HaveAnswer {
  std::vector<Hash> missing;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "missing"}, self.missing);
  }
};

}  // namespace jambline::sync

template <>
inline constexpr auto jambline::enum_words<jambline::sync::EnrolState> =
    std::to_array<std::string_view>({"waiting", "admitted", "refused", "unknown"});
