// tests/fault/real_shop.h: the shop of the simulator's first day in real folders: a hub's, and
// those of devices that have joined it; and the oracle of FAULTS.md over them.
#pragma once

#include <gtest/gtest.h>

#include "tests/fault/processes.h"
#include "tests/simulator/genesis.h"

namespace jambline::fault {

namespace fs = std::filesystem;

class RealShop : public testing::Test {
 protected:
  RealShop();

  // A device's folder; it has joined the shop and looks for the hub at that port.
  fs::path make_device(std::uint8_t number, std::uint16_t hub_port);
  void set_hub_port(const fs::path& device, std::uint16_t port);
  static std::vector<seal::SealedEntry> entries_of(const fs::path& device);
  static std::vector<seal::SealedEntry> entries_of_hub(const fs::path& hub);

  // Until each has all of the others and the hub has all of each.
  static void sync_all(const std::vector<DeviceProcess*>& devices);
  // Nobody runs any more. Folds of all are equal byte for byte, all chains verify, `said` entries
  // were written since the first day and `unheard` more at most, and no picture is missing.
  void expect_equal(const std::vector<fs::path>& devices, std::uint64_t said,
                    std::uint64_t unheard = 0);
  static std::size_t first_day_entries() { return simulator::genesis().entries.size(); }

  simulator::FastFolder folder;
  fs::path hub_folder = folder.path() / "hub";
};

}  // namespace jambline::fault
