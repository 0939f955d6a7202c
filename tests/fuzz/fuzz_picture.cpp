#include "tests/fuzz/picture_target.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  jambline::fuzz::run_picture({data, size});
  return 0;
}
