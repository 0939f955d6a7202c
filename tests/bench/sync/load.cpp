// 200 devices come back with a day's work, all at once, to one hub: 300 entries and 20 pictures
// each.
#include <barrier>
#include <iostream>
#include <mutex>

#include "tests/bench/sync/bench_device.h"
#include "tests/bench/sync/sync_parts.h"

namespace jambline::bench {

namespace {
constexpr std::size_t devices = 200;
constexpr std::size_t entries_each = 300;
constexpr std::size_t pictures_each = 20;
constexpr std::size_t picture_bytes = 100'000;
constexpr std::size_t pushed_at_once = 30;  // a day's acts go as they were done, some at a time
}  // namespace

void load_of_a_day() {
  const BenchFolder folder;
  BenchShop shop(folder.path() / "hub", devices);
  const ServerProcess hub("--serve-hub", folder.path() / "hub");
  std::vector<std::unique_ptr<FolderFiles>> files;
  std::vector<std::unique_ptr<BenchDevice>> all;
  for (std::size_t i = 0; i < devices; ++i) {
    const auto& key = shop.devices()[i];
    files.push_back(std::make_unique<FolderFiles>(folder.path() / "photos" / std::to_string(i),
                                                  pictures_each, picture_bytes, 1000 + i));
    all.push_back(std::make_unique<BenchDevice>(shop.shop(), key, hub.port(), files.back().get()));
    for (std::size_t done = 0; done < entries_each; done += pushed_at_once)
      all.back()->store.add(shop.run().many(key, pushed_at_once));
  }

  std::mutex mutex;
  std::vector<double> push_ms;
  std::barrier together(devices);
  const double took_s = seconds([&] {
    std::vector<std::jthread> threads;
    for (auto& device : all)
      threads.emplace_back([&, at = device.get()] {
        together.arrive_and_wait();
        std::vector<double> own_ms;
        while (at->state().receipted_seq < entries_each) {
          double ms = 0;
          if (at->push_once(&ms))
            own_ms.push_back(ms);
          else
            std::this_thread::sleep_for(std::chrono::milliseconds(5));
        }
        at->send_files(false);
        const std::lock_guard lock(mutex);
        push_ms.insert(push_ms.end(), own_ms.begin(), own_ms.end());
      });
  });
  std::uint64_t errors = 0;
  std::uint64_t waits = 0;
  for (const auto& device : all) {
    errors += device->asked.errors;
    waits += device->asked.waits;
  }
  BenchDevice reader(shop.shop(), shop.devices().front(), hub.port());
  reader.must_end = true;
  reader.pull_all(devices * entries_each + devices + 2);
  std::sort(push_ms.begin(), push_ms.end());
  std::printf("load: %zu devices, %zu entries and %zu pictures of %zu bytes each, %.1f s\n",
              devices, entries_each, pictures_each, picture_bytes, took_s);
  figure("load_push_p99_ms", push_ms[push_ms.size() * 99 / 100], "ms");
  figure("load_rss_mb", hub.most_memory_mb(), "MB");
  figure("load_errors", static_cast<double>(errors), "count");
  figure("load_asked_to_wait", static_cast<double>(waits), "count");
  figure("load_entries_lost",
         static_cast<double>(devices * entries_each + devices + 2) -
             static_cast<double>(reader.store.taken()),
         "count");
  figure("load_pictures_lost",
         static_cast<double>(devices * pictures_each) -
             static_cast<double>(files_in(folder.path() / "hub", picture_bytes)),
         "count");
}

}  // namespace jambline::bench
