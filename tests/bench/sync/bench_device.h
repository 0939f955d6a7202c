// tests/bench/sync/bench_device.h: a device that has sealed its entries and its files beforehand,
// so that what is measured is sync: both ends of the protocol over our client.
#pragma once

#include <atomic>
#include <mutex>
#include <thread>

#include "net/client.h"
#include "sync/picture_end.h"
#include "tests/bench/sync/bench_hub.h"

namespace jambline::bench {

// Entries by pack, each of them whole; what comes is decoded and counted.
class PackedStore final : public sync::DeviceStore {
 public:
  void add(std::span<const seal::SealedEntry> entries);
  Result<std::vector<sync::Head>> heads() override;
  Result<std::optional<Hash>> hash_at(const DeviceId& device, std::uint64_t seq) override;
  Result<Run> run_from(const DeviceId& device, std::uint64_t seq) override;
  Result<std::optional<seal::Receipt>> last_receipt(const seal::Epoch&) override {
    return std::optional<seal::Receipt>();
  }
  Status take(const sync::PullPage& page, const std::optional<std::string>& cursor) override;
  Result<std::optional<std::string>> cursor() override { return cursor_; }
  bool hub_is_admitted() override { return true; }

  const std::vector<std::string>& packs() const { return packs_; }
  std::uint64_t taken() const { return taken_; }

 private:
  DeviceId device_;
  std::vector<Hash> hashes_;
  std::vector<std::string> packs_;
  std::vector<std::uint64_t> first_seqs_;
  std::optional<std::string> cursor_;
  std::uint64_t taken_ = 0;
};

// Files of a folder, each named by its hash.
class FolderFiles final : public sync::FileStore, public net::Bodies {
 public:
  // Makes so many of this size.
  FolderFiles(const std::filesystem::path& folder, std::size_t count, std::size_t size_bytes,
              std::uint64_t seed);
  std::vector<sync::FileItem> here() override { return items_; }
  std::vector<sync::FileItem> missing() override { return {}; }
  Result<std::uint64_t> part_bytes(const Hash&) override { return std::uint64_t{0}; }
  Status came(const Hash&) override { return {}; }
  Status check(const Hash&) override { return {}; }
  Result<Read> read(const sync::BlobPart& part) override;
  Result<Write> write(const sync::BlobPart&) override;

 private:
  std::filesystem::path folder_;
  std::vector<sync::FileItem> items_;
};

struct Asked {
  std::atomic<std::uint64_t> requests = 0;
  std::atomic<std::uint64_t> errors = 0;  // an answer of 400 and more, or none
  std::atomic<std::uint64_t> waits = 0;   // "too many, come back"
};

inline std::int64_t forward_ms() {
  return std::chrono::duration_cast<std::chrono::milliseconds>(
             std::chrono::steady_clock::now().time_since_epoch())
      .count();
}

class BenchDevice {
 public:
  BenchDevice(const ShopId& shop, const seal::SigningKey& key, std::uint16_t port,
              FolderFiles* files = nullptr);
  // One request, when there is one to make now; false: nothing to do now. `ms` is how long it took.
  bool push_once(double* ms = nullptr) { return once(sync::DeviceEnd::Lane::Push, ms); }
  void push_all(std::uint64_t through);
  void pull_all(std::uint64_t entries);
  // With as many connections as there are lanes, or one after the other over one.
  void send_files(bool beside_each_other);

  PackedStore store;
  Asked asked;
  std::uint64_t sent_bytes() const;
  const sync::DeviceState& state() const { return end_->state(); }
  bool must_end = false;  // an error ends the program

 private:
  bool once(sync::DeviceEnd::Lane lane, double* ms);
  bool file_once(std::size_t lane);
  void count(const Result<sync::Response>& answer);

  ShopId shop_;
  seal::SigningKey key_;
  std::unique_ptr<sync::DeviceEnd> end_;
  std::unique_ptr<sync::PictureEnd> pictures_;
  std::vector<std::unique_ptr<net::Client>> clients_;
  std::mutex mutex_;  // the ends', when there are several lanes
};

}  // namespace jambline::bench
