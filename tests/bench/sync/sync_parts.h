// tests/bench/sync/sync_parts.h: what bench-sync measures, one call a part.
#pragma once

#include <cstddef>
#include <filesystem>

namespace jambline::bench {

void push_and_pull();
void photos_against_rsync();
void photos_cut_again_and_again();
void load_of_a_day();

// Whole files of that size, by their hash, below a hub's folder.
std::size_t files_in(const std::filesystem::path& hub, std::size_t size_bytes);

}  // namespace jambline::bench
