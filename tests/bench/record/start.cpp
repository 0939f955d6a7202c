// first_page_ms   from the start of a process to the first page of 50 cars.
// record_rss_mb   of that process after that page and 300 questions; with the list of all cars as
//                 the record's screen holds it today: record_rss_with_list_mb.
// shelf_made_s    a start without a shelf: every entry folded, every car indexed.
#include <cstdio>
#include <cstring>
#include <fstream>
#include <string>

#include "tests/bench/figures.h"
#include "tests/bench/log_rows.h"
#include "tests/bench/record/record_parts.h"

namespace jambline::bench {

std::int64_t memory_kb(const char* line) {
  std::ifstream status("/proc/self/status");
  std::string word;
  while (status >> word) {
    std::int64_t kb = 0;
    if (word == line && status >> kb) return kb;
  }
  return 0;
}

int first_page(const std::filesystem::path& folder) {
  const OpenShop shop(folder);
  const auto page = shop.find({});
  std::printf("page %zu\n", page.cars.size());
  std::fflush(stdout);
  for (const auto& asked : realistic_questions(shop, 300)) (void)shop.find(asked);
  std::printf("rss %lld\n", static_cast<long long>(memory_kb("VmRSS:")));
  std::printf("peak %lld\n", static_cast<long long>(memory_kb("VmHWM:")));
  shop.engine->want_record();
  shop.engine->drain();
  std::printf("list %lld\n", static_cast<long long>(memory_kb("VmRSS:")));
  return 0;
}

void bench_start(const std::filesystem::path& folder, const char* program) {
  std::vector<double> pages, rss, peak, list;
  for (int round = 0; round < 5; ++round) {
    const std::string command =
        std::string(program) + " --first-page --folder '" + folder.string() + "'";
    const auto start = std::chrono::steady_clock::now();
    FILE* pipe = popen(command.c_str(), "r");
    char what[16] = {};
    long long value = 0;
    while (fscanf(pipe, "%15s %lld", what, &value) == 2) {
      if (std::strcmp(what, "page") == 0) {
        must_be(value == 50, "no page of 50");
        pages.push_back(
            std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start)
                .count());
      }
      const auto mb = static_cast<double>(value) / 1024;
      if (std::strcmp(what, "rss") == 0) rss.push_back(mb);
      if (std::strcmp(what, "peak") == 0) peak.push_back(mb);
      if (std::strcmp(what, "list") == 0) list.push_back(mb);
    }
    must_be(pclose(pipe) == 0 && pages.size() == rss.size(), "the child failed");
  }
  figure("first_page_ms", median(pages), "ms");
  figure("record_rss_mb", median(rss), "MB");
  figure("record_rss_peak_mb", median(peak), "MB");
  figure("record_rss_with_list_mb", median(list), "MB");
}

}  // namespace jambline::bench
