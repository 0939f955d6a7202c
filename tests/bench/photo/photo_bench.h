// tests/bench/photo/photo_bench.h: the parts of bench-photo. Each is a process of its own with no
// other Qt application; gives its exit code.
#pragma once

#include <QByteArray>
#include <cstdint>
#include <filesystem>
#include <vector>

#include "job/car.h"

namespace jambline::bench {

int wall(int argc, char** argv);     // wall_p95_ms, wall_rss_mb, shutter_to_word_ms
int store(int argc, char** argv);    // store_ratio, store_ratio_with_fsync, fsync_ms and more
int judge(int argc, char** argv);    // judge_false_alarm_pct, judge_miss_pct
int barcode(int argc, char** argv);  // barcode_read_pct, barcode_wrong

// 6000 x 4000 px with grain, as a camera writes it; the comment makes each another file.
QByteArray big_jpeg(int number);

// A car with so many small different JPEGs, all in the record; laid there without waiting for the
// disk. `folder` holds a demo shop.
JobId add_pictures(const std::filesystem::path& folder, int count);

}  // namespace jambline::bench
