// app/demo/demo_shop.h: a shop of our own invention, made through the same acts as everybody's.
//
// Shape:   six people, four rack places, two booths, cars delivered over two years and cars in work
// at all
//          stages, seen from one evening. Every entry is decided by acts/decide and written by
//          log/entry_log under a turned clock: nothing is put there by hand.
// Seed:    one random stream a subject (seeded by SHA-256 of the seed and the subject's name), so
//          one car more changes nothing of the others but the hashes they name.
// Size:    more than four delivered cars a week are painted by further crews of six in the same
//          time.
// Camera:  what is photographed is drawn by whoever hands in a Camera, which keeps the files too.
// Hidden:  what the dirt comes from is in dirt.h and nowhere in the entries.
// Errors:  those of acts/decide.h and log/entry_log.h. The folder must hold no log yet:
// AlreadyDone. Durable: the log is made in memory where the machine offers a folder there, and
// copied to `folder`
//          and synced when it is whole. A crash before leaves no log.db.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <vector>

#include "acts/decide.h"
#include "app/demo/camera.h"
#include "base/clock.h"
#include "base/error.h"
#include "entries/entry.h"
#include "log/entry_log.h"

namespace jambline::demo {

inline constexpr std::int64_t invented_evening_ms =
    1804804800000;  // Thursday 2027-03-11 17:40, New York

struct DemoOptions {
  std::uint64_t seed = 41;
  int delivered = 400;
  int in_work = 15;    // at most 15
  int weeks = 104;     // how far back it goes; never less
  Camera camera = {};  // empty: nobody takes pictures
  bool causes = true;  // false: the dirt has none of the causes of dirt.h; the events are logged
  // When the shop is looked at. With a boot given, the clocks of the last hours are of that boot.
  Moment now{
      .wall_ms = invented_evening_ms, .since_boot_ms = 36'000'000, .boot = {}, .offset_min = -300};
};

// Makes log.db and device.key in `folder`.
Status make_shop(const std::filesystem::path& folder, const DemoOptions& options = {});

// One action; gives back the entries as they came to stand in a log.
using Sink = std::function<Result<std::vector<entries::Entry>>(
    const PersonId& person, const std::vector<acts::Draft>& drafts, const Moment& moment)>;
// The same for an entry of another device that stands beside the first one's.
struct Sinks {
  Sink here;
  Sink other_device;  // empty: the one disagreement of the shop is left out
};
Status make_entries(const DemoOptions& options, const Sinks& sinks);

}  // namespace jambline::demo
