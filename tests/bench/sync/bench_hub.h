// tests/bench/sync/bench_hub.h: a hub's shop that is filled without any network, and the servers of
// the bench, each in a process of its own.
#pragma once

#include <sys/types.h>

#include "tests/bench/figures.h"
#include "tests/hub/sealed_run.h"

namespace jambline::bench {

// A hub's folder with one shop of so many devices, founded as a device would found it.
class BenchShop {
 public:
  BenchShop(const std::filesystem::path& folder, std::size_t devices);
  const ShopId& shop() const { return run_.shop(); }
  const std::vector<seal::SigningKey>& devices() const { return keys_; }
  test::SealedRun& run() { return run_; }

 private:
  test::SealedRun run_;
  std::vector<seal::SigningKey> keys_;
};

seal::SigningKey bench_hub_key();

// This program once more, serving until it is let go. `what` is --serve-hub or --serve-bare.
class ServerProcess {
 public:
  ServerProcess(const char* what, const std::filesystem::path& folder);
  ~ServerProcess();
  ServerProcess(const ServerProcess&) = delete;
  ServerProcess& operator=(const ServerProcess&) = delete;
  std::uint16_t port() const { return port_; }
  double most_memory_mb() const;  // VmHWM

 private:
  pid_t pid_ = -1;
  int in_ = -1;
  int out_ = -1;
  std::uint16_t port_ = 0;
};

// What a process that was started so does; ends with its input.
int serve_hub(const std::filesystem::path& folder);
int serve_bare(const std::filesystem::path& folder);

}  // namespace jambline::bench
