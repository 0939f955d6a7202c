// tests/simulator/shadow.h: what a device shows of its log: the folds, and the pictures it names.
//
// Why:     the folds' headers are dear to compile; only who draws acts or compares text needs them.
// Threads: one.
#pragma once

#include <memory>
#include <set>
#include <vector>

#include "seal/header.h"
#include "sync/picture_end.h"

namespace jambline::property {
class Device;
}

namespace jambline::simulator {

class Shadow {
 public:
  Shadow();
  ~Shadow();
  void take(const seal::SealedEntry& entry);
  property::Device& device() { return *device_; }
  bool knows(const Hash& entry) const { return known_.count(entry) != 0; }
  std::size_t entries() const { return known_.size(); }
  const std::vector<sync::FileItem>& named() const { return named_; }

 private:
  std::unique_ptr<property::Device> device_;
  std::set<Hash> known_;
  std::vector<sync::FileItem> named_;
  std::set<Hash> named_once_;
};

}  // namespace jambline::simulator
