// One libFuzzer program a target; FUZZ_TARGET is its function.
#include "tests/fuzz/targets.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  jambline::fuzz::FUZZ_TARGET({data, size});
  return 0;
}
