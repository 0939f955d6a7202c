// tests/simulator/sim_hub.h: the hub of a world: its disk, and the shop that is served from it.
//
// Shape:   entries lie in memory (MemoryShop) or, when asked for, in the real hub's database; files
//          are the real hub's on a disk in memory. start() opens from the disk, stop() is a kill.
// Threads: one.
#pragma once

#include "hub/shop_file.h"
#include "hub/shop_files.h"
#include "sync/hub_shop.h"
#include "tests/blobs/faulty_files.h"
#include "tests/simulator/genesis.h"
#include "tests/simulator/sim_clock.h"

namespace jambline::simulator {

class SimHub {
 public:
  SimHub(const TrueTime& time, std::uint64_t seed, std::optional<std::filesystem::path> folder);
  ~SimHub();

  void start();
  void stop();
  bool running() const { return shop != nullptr; }
  void lose_power(std::uint64_t seed);  // and stop
  void set_full(bool full);
  bool full() const { return disk_->full; }
  void read_most(std::uint64_t entries) { disk_->most_read = entries; }  // in one go; 0: all

  // A backup, and the hub put back to it: declared, as the restore tool does it, or not.
  struct Backup {
    test::MemoryShop memory;
    std::filesystem::path folder;
    std::shared_ptr<test::FaultyFiles> files;
    std::set<Hash> blobs;
  };
  Backup backup();
  void put_back(const Backup& backup, bool declared);
  // While it runs: its files.
  std::vector<Hash> blobs() const;
  bool has_blob(const Hash& blob) const;
  bool has_damaged_blobs() const;
  void damage(const Hash& blob);
  std::size_t forget_parts();  // of uploads; how many there were
  // Moves damaged files away, as the scrub does, and says so to the shop.
  void scrub();

  std::vector<seal::SealedEntry> entries() const;  // of the log
  std::vector<seal::SealedEntry> apart(const DeviceId& device) const;
  std::uint64_t held(const DeviceId& device) const;  // how many of it

  const seal::SigningKey key = sim_hub_key();
  SimClock clock;
  std::unique_ptr<sync::HubShop> shop;
  std::uint64_t life = 0;
  std::uint64_t events = 0;

 private:
  std::shared_ptr<test::MemoryShop> disk_;
  std::shared_ptr<test::FaultyFiles> file_disk_;
  std::optional<std::filesystem::path> folder_;
  SeededRandom random_;
  std::uint64_t backups_ = 0;
  std::uint8_t epochs_ = 1;
  std::unique_ptr<sync::HubStorage> storage_;
  std::unique_ptr<hub::ShopFiles> files_;
};

}  // namespace jambline::simulator
