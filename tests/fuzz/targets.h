// tests/fuzz/targets.h: what is thrown at every decoder, by libFuzzer (preset fuzz) and, in every
// build, by fuzz_test over the seeds and 2,000 seeded mutations of them.
//
// Each target takes any bytes and ends the program when a promise is broken: that whatever decodes
// encodes to the same bytes again, that limits hold, that nothing reads outside its input.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace jambline::fuzz {

using Input = std::span<const std::uint8_t>;

struct Target {
  const char* name;
  void (*run)(Input);
  std::vector<std::string> (*seeds)();
};

void run_entry(Input input);
void run_receipt(Input input);
void run_pack(Input input);
void run_membership(Input input);
void run_json(Input input);
void run_payload(Input input);
void run_estimates(Input input);

const std::vector<Target>& targets();

}  // namespace jambline::fuzz
