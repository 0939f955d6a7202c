// bench-record: what a record of ten years costs to search, to open and to check.
//
//   bench-record --folder F [--cars 20000] [--only search|questions|start|audit|pdf]
//
// F keeps the shop and is used again; without --folder a throw-away one is made each time.
#include <cstdlib>
#include <cstring>
#include <optional>
#include <string>

#include "tests/bench/figures.h"
#include "tests/bench/log_rows.h"
#include "tests/bench/record/record_parts.h"
#include "tests/bench/record/ten_years.h"

using namespace jambline::bench;

int main(int argc, char** argv) {
  std::filesystem::path folder;
  std::string only;
  bool child = false;
  int cars = ten_years_cars;
  for (int i = 1; i < argc; ++i) {
    if (std::strcmp(argv[i], "--first-page") == 0) child = true;
    if (std::strcmp(argv[i], "--folder") == 0 && i + 1 < argc) folder = argv[++i];
    if (std::strcmp(argv[i], "--cars") == 0 && i + 1 < argc) cars = std::atoi(argv[++i]);
    if (std::strcmp(argv[i], "--only") == 0 && i + 1 < argc) only = argv[++i];
  }
  if (child) return first_page(folder);
#ifdef JAMBLINE_PAPERS
  if (only.empty() || only == "pdf") bench_pdf();
  if (only == "pdf") return 0;
#endif
  std::optional<BenchFolder> throw_away;
  if (folder.empty()) folder = throw_away.emplace().path();
  std::int64_t made = 0;
  const double made_s = seconds([&] { made = make_ten_years(folder, cars); });
  if (made > 0) {
    figure("record_made_s", made_s, "s");
    figure("record_entries", static_cast<double>(made), "entries");
  }
  if (!std::filesystem::exists(folder / "shelf.db")) {
    figure("shelf_made_s", seconds([&] { const OpenShop shop(folder); }), "s");
    figure("shelf_mb",
           static_cast<double>(std::filesystem::file_size(folder / "shelf.db")) / 1'048'576, "MB");
  }
  if (only.empty() || only == "search") bench_search(folder);
  if (only.empty() || only == "questions") bench_questions(folder);
  if (only.empty() || only == "start") bench_start(folder, argv[0]);
  if (only.empty() || only == "audit") bench_audit(folder);
  return 0;
}
