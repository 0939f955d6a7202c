// tests/simulator/genesis.h: the shop with which every schedule begins, made once a process.
//
// Shape:   device 0 has founded it and admitted the hub and the devices 1 to 3 (1 is a manager's,
//          too); device 4 belongs to it only after it has enrolled. One manager, Rosa, and one car.
#pragma once

#include <filesystem>
#include <memory>

#include "seal/sign.h"
#include "tests/simulator/memory_hub.h"

namespace jambline::simulator {

inline constexpr std::size_t devices_of_shop = 5;
inline constexpr std::size_t late_device = 4;

// A folder in memory where the machine has one, gone with its owner.
class FastFolder {
 public:
  FastFolder();
  ~FastFolder();
  FastFolder(const FastFolder&) = delete;
  FastFolder& operator=(const FastFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

seal::SigningKey sim_key(std::uint8_t number);
seal::SigningKey sim_hub_key();

struct Genesis {
  FastFolder folder;  // 0/log.db is the founder's, 1/log.db that of the admitted
  ShopId shop;
  PersonId rosa;
  std::vector<seal::SealedEntry> entries;
  test::MemoryShop hub;  // has all of it
};
const Genesis& genesis();

// Copies what is a log's from one folder to another; nobody may have it open.
void copy_log(const std::filesystem::path& from, const std::filesystem::path& to);

[[noreturn]] void die(const Error& error, const char* where);
template <class T>
T need(Result<T> result, const char* where) {
  if (!result) die(result.error(), where);
  return std::move(*result);
}
inline void need(const Status& status, const char* where) {
  if (!status) die(status.error(), where);
}

}  // namespace jambline::simulator
