// tests/bench/no_ballast.h: a log without the ballast for a full disk, which only costs space here.
#pragma once

#include "log/entry_log.h"

namespace jambline::bench {

inline log::OpenOptions no_ballast() {
  log::OpenOptions options;
  options.ballast_bytes = 0;
  return options;
}

}  // namespace jambline::bench
