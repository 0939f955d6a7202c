// evidence/check_bundle.h: whether a bundle says what its shop's devices wrote, and how far.
//
// Shape:   what is proven comes from hashes, links and signatures alone (BUNDLE.md, "What is
//          checked"); the first thing that fails is named and ends the check.
// Trust:   the file is foreign input: fixed limits, no names but those of BUNDLE.md, nothing is
//          unpacked, duplicates and unknown members are named and refused.
// Errors:  only when nothing could be read at all: NoSuchFile, ReadOnly, FileFailed, Malformed (no
//          ZIP, or cut short), TooLarge, Stopped. What is wrong with a bundle that can be read
//          stands in BundleFound::first_bad: args device and seq, or picture, or member; cause; for
//          a receipt also place (which one, from 1).
// Threads: any; reads the file piece by piece, 64 KiB of it and what belongs to the job in memory.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <span>
#include <stop_token>
#include <string>
#include <vector>

#include "base/error.h"
#include "base/ids.h"

namespace jambline::evidence {

struct BundleHead {
  DeviceId device;
  std::uint64_t seq = 0;  // proven up to here; 0: no entry of it is here
  friend bool operator==(const BundleHead&, const BundleHead&) = default;
};

struct BundleFound {
  ShopId shop;
  JobId job;
  std::vector<BundleHead> heads;  // of every device that was looked at, in the order of admission
  std::uint64_t entries = 0;      // of the job, whole
  std::uint64_t others = 0;       // of the shop, whole: membership and erasures
  std::uint64_t bare = 0;         // headers without what was said
  std::uint64_t erased = 0;       // of the job's, by an entry that says so
  std::uint64_t after_cut = 0;    // of the job's; came after their device's cut and do not count
  std::uint64_t receipts = 0;
  std::uint64_t pictures = 0;
  std::uint64_t picture_bytes = 0;
  std::optional<Error> first_bad;
};

using CheckProgress = std::function<void(double part_done)>;

// `wanted` is the fingerprint that the shop has to have; none = whatever shop it is.
Result<BundleFound> check_bundle(const std::filesystem::path& file,
                                 const std::optional<ShopId>& wanted = {},
                                 const std::stop_token& stop = {},
                                 const CheckProgress& progress = {});
Result<BundleFound> check_bundle(std::span<const std::uint8_t> bytes,
                                 const std::optional<ShopId>& wanted = {});

// The findings in lines, without BAD or good: those that verify_bundle.py prints too.
std::string lines_of(const BundleFound& found);

}  // namespace jambline::evidence
