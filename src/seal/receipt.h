// seal/receipt.h: a hub's word that it holds a device's entries up to one of them.
//
// Shape:  145 bytes, big-endian (FORMAT.md section 6), then 64 bytes of Ed25519 signature by the
//         hub's identity key over SHA-256("jambline receipt 1" || those 145 bytes).
// Units:  received_ms UTC since 1970 by the hub's clock.
// Errors: Malformed; BadSignature; WrongShop; Unknown with field "epoch", "hub" or "device" for a
//         receipt that is genuine but of another epoch, hub or device.
// Source: FORMAT.md section 6.
#pragma once

#include <string>

#include "seal/header.h"
#include "seal/sign.h"

namespace jambline::seal {

using Epoch = Bytes<16, struct EpochTag>;  // drawn anew when a hub is restored from a backup

struct Receipt {
  ShopId shop;
  Key hub;
  Epoch epoch;
  DeviceId device;
  std::uint64_t seq{};            // the hub holds this device's entries 1 .. seq
  Hash hash;                      // entry_hash at seq
  std::uint64_t hub_seq_first{};  // the hub's own count of this request's entries
  std::uint64_t hub_seq_last{};
  std::int64_t received_ms{};
  Signature signature;
  friend bool operator==(const Receipt&, const Receipt&) = default;
};

inline constexpr std::size_t receipt_signed_bytes = 145;
inline constexpr std::size_t receipt_bytes = receipt_signed_bytes + 64;

// Fills in hub and signature.
void sign(Receipt& receipt, const SigningKey& hub);
std::string encode(const Receipt& receipt);
Result<Receipt> decode_receipt(std::span<const std::uint8_t> bytes);

// What the reader of a receipt already knows; all of it has to agree.
struct ReceiptWanted {
  ShopId shop;
  Key hub;
  Epoch epoch;
  DeviceId device;
};
Status check(const Receipt& receipt, const ReceiptWanted& wanted);
// The signature alone.
bool verify(const Receipt& receipt);

}  // namespace jambline::seal
