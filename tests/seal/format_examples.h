// tests/seal/format_examples.h: the entries whose bytes FORMAT.md prints, made by our own code from
// the seeds of RFC 8032 section 7.1, tests 1 to 3.
#pragma once

#include <cstdlib>
#include <map>
#include <string>

#include "base/json.h"
#include "seal/digest.h"
#include "seal/membership.h"
#include "seal/receipt.h"
#include "seal/sign.h"

namespace jambline::seal {

inline SigningKey rfc_key(const char* seed_hex) {
  std::array<std::uint8_t, 32> seed;
  if (!from_hex(seed_hex, seed)) std::abort();
  return SigningKey::from_seed(seed);
}
inline SigningKey founder() {
  return rfc_key("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60");
}
inline SigningKey second() {
  return rfc_key("4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb");
}
inline SigningKey hub() {
  return rfc_key("c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7");
}

template <class Name>
Name filled(std::uint8_t first) {
  Name out;
  for (std::size_t i = 0; i < Name::size; ++i) out.bytes[i] = static_cast<std::uint8_t>(first + i);
  return out;
}

inline Header example_header() {
  Header header;
  header.shop = shop_id(founder().key(), filled<Salt>(0x00));
  header.seq = 1;
  header.wall_ms = 1772438400000;
  header.hlc = static_cast<std::uint64_t>(header.wall_ms) << 16U;
  header.offset_min = -300;
  header.boot = filled<BootId>(0xb0);
  header.boottime_ms = 60000;
  header.action = filled<ActionId>(0xa0);
  header.part = 1;
  header.parts = 1;
  header.schema = 1;
  return header;
}

inline SealedEntry seal_example(const SigningKey& key, Header header, std::string payload,
                                std::uint8_t salt) {
  SealedEntry entry;
  entry.salt = filled<Salt>(salt);
  entry.payload = std::move(payload);
  header.device = key.device();
  header.payload_bytes = static_cast<std::uint32_t>(entry.payload.size());
  header.payload_hash = payload_hash(entry.salt, entry.payload);
  entry.header = header;
  entry.hash = entry_hash(encode(header));
  entry.signature = key.sign(entry.hash);
  return entry;
}

inline SealedEntry founded_example() {
  Header header = example_header();
  header.kind = kind::shop_founded;
  return seal_example(founder(), header,
                      to_json(ShopFounded{founder().key(), filled<Salt>(0x00), "first tablet"}),
                      0x10);
}

inline SealedEntry admitted_example() {
  Header header = example_header();
  header.seq = 2;
  header.prev_hash = founded_example().hash;
  header.kind = kind::device_admitted;
  header.hlc += 1;
  header.action = filled<ActionId>(0xc0);
  return seal_example(founder(), header,
                      to_json(DeviceAdmitted{second().key(), "second tablet", false}), 0x20);
}

inline SealedEntry note_example() {
  Header header = example_header();
  header.prev_hash = admitted_example().hash;
  header.subject = filled<JobId>(0x50);
  header.person = filled<PersonId>(0x70);
  header.action = filled<ActionId>(0xd0);
  header.kind = 700;
  header.hlc += 2;
  return seal_example(second(), header, R"({"words":"left door"})", 0x30);
}

inline SealedEntry erased_example() {
  SealedEntry entry = note_example();
  entry.erased = true;
  entry.salt = {};
  entry.payload.clear();
  return entry;
}

inline Receipt receipt_example() {
  Receipt receipt;
  const SealedEntry note = note_example();
  receipt.shop = note.header.shop;
  receipt.epoch = filled<Epoch>(0xe0);
  receipt.device = note.header.device;
  receipt.seq = 1;
  receipt.hash = note.hash;
  receipt.hub_seq_first = 3;
  receipt.hub_seq_last = 3;
  receipt.received_ms = 1772438460000;
  sign(receipt, hub());
  return receipt;
}

inline std::map<std::string, std::string> format_examples() {
  std::map<std::string, std::string> out;
  const auto put = [&out](const std::string& name, const std::string& bytes) {
    out[name] = to_hex(bytes_of(bytes));
  };
  out["founder.key"] = founder().key().hex();
  out["founder.device"] = founder().device().hex();
  out["second.key"] = second().key().hex();
  out["second.device"] = second().device().hex();
  out["hub.key"] = hub().key().hex();
  out["shop"] = example_header().shop.hex();
  const std::pair<const char*, SealedEntry> entries[] = {
      {"founded", founded_example()}, {"admitted", admitted_example()}, {"note", note_example()}};
  for (const auto& [name, entry] : entries) {
    put(std::string(name) + ".entry", encode(entry));
    out[std::string(name) + ".payload_hash"] = entry.header.payload_hash.hex();
    out[std::string(name) + ".hash"] = entry.hash.hex();
  }
  put("erased.entry", encode(erased_example()));
  put("receipt", encode(receipt_example()));
  return out;
}

}  // namespace jambline::seal
