// tests/bench/sync/sync_parts.h: what bench-sync measures, one call a part.
#pragma once

namespace jambline::bench {

void push_and_pull();
void photos_against_rsync();
void photos_cut_again_and_again();
void load_of_a_day();

}  // namespace jambline::bench
