#include "base/clock.h"

#include <ctime>
#include <fstream>
#include <string>

namespace jambline {

namespace {
std::uint64_t read_ms(clockid_t which) {
  timespec time{};
  clock_gettime(which, &time);
  return static_cast<std::uint64_t>(time.tv_sec) * 1000U +
         static_cast<std::uint64_t>(time.tv_nsec) / 1'000'000U;
}

BootId read_boot_id() {
  std::ifstream file("/proc/sys/kernel/random/boot_id");
  std::string text;
  std::getline(file, text);
  std::erase(text, '-');
  return BootId::parse(text).value_or(BootId{});
}
}  // namespace

SystemClock::SystemClock() : boot_(read_boot_id()) {}

Moment SystemClock::now() const {
  const auto wall_ms = static_cast<std::int64_t>(read_ms(CLOCK_REALTIME));
  const std::time_t seconds = wall_ms / 1000;
  std::tm local{};
  localtime_r(&seconds, &local);
  return {wall_ms, read_ms(CLOCK_BOOTTIME), boot_, static_cast<std::int16_t>(local.tm_gmtoff / 60)};
}

}  // namespace jambline
