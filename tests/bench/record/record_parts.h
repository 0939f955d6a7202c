// tests/bench/record/record_parts.h: what the parts of bench-record share.
#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "engine/engine.h"

namespace jambline::bench {

struct OpenShop {
  explicit OpenShop(const std::filesystem::path& folder);
  shelf::Found find(const shelf::FindAsked& asked) const;

  SystemClock clock;
  std::shared_ptr<const shelf::Names> kinds;
  std::unique_ptr<engine::Engine> engine;
};

// What a manager types, made from cars that are there: half plates, ends of VINs, colors, people,
// defects, words of notes, filters, and the beginnings of all these, as each letter is a question.
std::vector<shelf::FindAsked> realistic_questions(const OpenShop& shop, std::size_t count);

std::int64_t memory_kb(const char* line);  // of /proc/self/status

void bench_search(const std::filesystem::path& folder);
void bench_questions(const std::filesystem::path& folder);
void bench_start(const std::filesystem::path& folder, const char* program);
void bench_audit(const std::filesystem::path& folder);
void bench_pdf();                                     // of a car of its own; only where Qt is
int first_page(const std::filesystem::path& folder);  // the child of bench_start

}  // namespace jambline::bench
