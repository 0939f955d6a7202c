// sync/limits.h: what is too much, on both ends. PROTOCOL.md section 9.
#pragma once

#include <cstdint>

#include "seal/pack.h"

namespace jambline::sync {

inline constexpr std::size_t most_json_bytes = 64U << 10U;
inline constexpr std::size_t most_have_hashes = 1000;
inline constexpr std::size_t most_have_bytes = most_have_hashes * 67 + 64;
inline constexpr std::size_t most_heads = 512;  // devices of a shop
inline constexpr std::uint64_t most_blob_bytes = 64U << 20U;
inline constexpr std::size_t most_page_receipts = 500;
inline constexpr std::size_t most_page_bytes =
    seal::most_pack_bytes + most_page_receipts * 209 + 64;
inline constexpr std::size_t most_header_bytes = 8U << 10U;
inline constexpr std::size_t most_name_bytes = 80;

inline constexpr std::int64_t code_lives_ms = 600'000;
inline constexpr std::int64_t challenge_lives_ms = 120'000;
inline constexpr std::int64_t token_lives_ms = 3'600'000;
inline constexpr int longest_poll_s = 25;
inline constexpr std::size_t most_challenges = 4096;
inline constexpr std::size_t most_pending = 64;

// Requests of one device: so many a second, with so many saved up. A small file takes two.
inline constexpr double requests_a_second = 400;
inline constexpr double requests_saved_up = 800;
// Of one address that has not said who it is.
inline constexpr double strangers_a_second = 20;
inline constexpr double strangers_saved_up = 100;

inline constexpr std::int64_t first_back_off_ms = 1'000;
inline constexpr std::int64_t longest_back_off_ms = 300'000;

}  // namespace jambline::sync
