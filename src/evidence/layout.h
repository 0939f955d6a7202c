// evidence/layout.h: what lies where in a bundle, and the records of a device's chain.
//
// Shape:   one ZIP, nothing in it compressed: report.txt, FORMAT.md, BUNDLE.md, verify_bundle.py
// (no
//          evidence), receipts, chain/<device>, pictures/<hash>[.jpg]. A chain is, record after
//          record, a length (u32) and that many bytes: 206 a bare header, 270 a header and its
//          signature, 287 or more an entry as in FORMAT.md section 3.
// Errors:  Malformed, TooLarge; those of seal/header.h.
// Source:  BUNDLE.md.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "seal/header.h"

namespace jambline::evidence {

inline constexpr std::string_view report_name = "report.txt";
inline constexpr std::string_view receipts_name = "receipts";
inline constexpr std::string_view chain_folder = "chain/";
inline constexpr std::string_view pictures_folder = "pictures/";

inline constexpr std::size_t most_members = 20'000;
inline constexpr std::uint64_t most_text_bytes = 16U << 20U;
inline constexpr std::uint64_t most_receipts_bytes = 64U << 20U;
inline constexpr std::uint64_t most_picture_bytes = 64U << 20U;
inline constexpr std::uint64_t most_chain_bytes = 4ULL << 30U;

inline constexpr std::uint16_t picture_kind = 200;  // the payload's facts.file names a picture

enum class MemberKind : std::uint8_t { NoEvidence, Receipts, Chain, Picture, Unknown };

struct MemberName {
  MemberKind kind = MemberKind::Unknown;
  DeviceId device;  // of a chain
  Hash picture;
};
MemberName read_member_name(std::string_view name);
std::uint64_t most_bytes_of(MemberKind kind);

std::string chain_name(const DeviceId& device);
// With the ending that its first bytes call for.
std::string picture_name(const Hash& picture, std::span<const std::uint8_t> first_bytes);

enum class Form : std::uint8_t { Bare, Signed, Whole };

struct Record {
  Form form{};
  seal::SealedEntry entry;  // signature, salt and payload only as the form says
  bool is_signed() const { return form != Form::Bare; }
};

inline constexpr std::size_t signed_header_bytes = seal::header_bytes + seal::Signature::size;
inline constexpr std::size_t most_record_bytes = seal::most_entry_bytes;

std::string encode_record(Form form, const seal::SealedEntry& entry);  // with its length
Result<Record> decode_record(std::span<const std::uint8_t> bytes);     // without

// The hash that an entry of picture_kind names, whatever its schema; none when it says nothing.
std::optional<Hash> named_picture(std::string_view payload);

}  // namespace jambline::evidence
