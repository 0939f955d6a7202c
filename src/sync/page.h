// sync/page.h: one answer to a pull: entries, receipts, and from where to go on.
//
// Shape:   format u8 (1) | epoch 16 | next u64 | head u64 | receipts u16 | that many receipts of
//          209 bytes | entries as a pack (seal/pack.h). Big-endian. `next` is the hub's count up to
//          which this page brings; `head` is the hub's count now: next < head means there is more.
// Errors:  Malformed, TooLarge. Signatures are not looked at here.
// Source:  PROTOCOL.md section 6.
#pragma once

#include <string>
#include <vector>

#include "seal/pack.h"
#include "seal/receipt.h"

namespace jambline::sync {

struct PullPage {
  seal::Epoch epoch;
  std::uint64_t next{};
  std::uint64_t head{};
  std::vector<seal::Receipt> receipts;
  std::vector<seal::SealedEntry> entries;
  bool more() const { return next < head; }
};

// `pack` is what seal::Packer put together.
std::string encode_page(const seal::Epoch& epoch, std::uint64_t next, std::uint64_t head,
                        const std::vector<seal::Receipt>& receipts, std::string_view pack);
Result<PullPage> decode_page(std::span<const std::uint8_t> bytes);

inline constexpr std::string_view page_media_type = "application/vnd.jambline.page";
inline constexpr std::string_view pack_media_type = "application/vnd.jambline.pack";
inline constexpr std::string_view receipt_media_type = "application/vnd.jambline.receipt";
inline constexpr std::string_view json_media_type = "application/json";

}  // namespace jambline::sync
