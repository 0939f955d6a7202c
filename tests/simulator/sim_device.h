// tests/simulator/sim_device.h: one device: its log on a fast disk, its pictures on a disk that may
// break, both ends of sync, and what it shows.
//
// Shape:   start() opens everything from what is on its disks, stop() is a kill. Everything that a
//          person was told was done goes through act() and its kin, which answer what was written.
// Threads: one.
#pragma once

#include <optional>

#include "blobs/part_store.h"
#include "log/entry_log.h"
#include "sync/device_end.h"
#include "sync/picture_end.h"
#include "tests/blobs/faulty_files.h"
#include "tests/simulator/genesis.h"
#include "tests/simulator/shadow.h"
#include "tests/simulator/sim_clock.h"

namespace jambline::acts {
struct Command;
struct TakePicture;
}  // namespace jambline::acts

namespace jambline::simulator {

// A device's disks at one time, and what its log had.
struct DeviceCopy {
  seal::SigningKey key;
  std::set<Hash> entries;
  std::filesystem::path log;
  std::shared_ptr<test::FaultyFiles> disk;
};

class SimDevice final : public sync::DeviceStore, public sync::FileStore {
 public:
  SimDevice(std::string name, seal::SigningKey key, std::filesystem::path folder,
            const TrueTime& time);
  ~SimDevice() override;

  void start(std::uint64_t seed);
  void stop();
  bool running() const { return log_ != nullptr; }
  void lose_power(std::uint64_t seed);  // and stop
  void copy_to(DeviceCopy& copy);       // stopped and started again
  void put_back(const DeviceCopy& copy, std::uint64_t seed);
  // Only so many more writes reach the log; stop() is the kill.
  void kill_after(std::uint64_t writes);
  // A forked folder goes on under the key in device.key.new (exchange/new_key.h). What lies in
  // divergent/ then is given back.
  std::vector<seal::SealedEntry> move_to_new_key(std::uint64_t common_seq, std::uint64_t seed);
  void set_full(bool full);
  bool full() const { return full_; }

  // What was written, or why nothing was.
  using Wrote = Result<std::vector<log::Stored>>;
  Wrote act(const acts::Command& command, const PersonId& person, Random& random);
  Wrote append(std::vector<log::Draft> drafts, const PersonId& person, Random& random);
  Wrote erase(const Hash& target, const PersonId& person, Random& random);
  // Stores the picture first, then says it.
  Wrote take_picture(const acts::TakePicture& command, const std::string& bytes,
                     const std::string& preview, const PersonId& person, Random& random);
  void note(const std::vector<log::Stored>& stored);  // something was written beside

  bool may_write() const;  // as the app: not after a cut, a fork, or without its tail
  std::uint64_t own_seq() const;
  std::size_t log_size() const { return shadow->entries(); }
  bool knows(const Hash& entry) const { return shadow->knows(entry); }
  std::vector<seal::SealedEntry> entries() const;
  std::string why() const { return name + " " + folder.filename().string(); }

  Result<std::unique_ptr<blobs::FileReader>> read_blob(const sync::BlobPart& part);
  Status write_part(const sync::BlobPart& part, std::uint64_t at, std::string_view bytes);

  // sync::DeviceStore
  Result<std::vector<sync::Head>> heads() override;
  Result<std::optional<Hash>> hash_at(const DeviceId& device, std::uint64_t seq) override;
  Result<Run> run_from(const DeviceId& device, std::uint64_t seq) override;
  Result<std::optional<seal::Receipt>> last_receipt(const seal::Epoch& epoch) override;
  Status take(const sync::PullPage& page, const std::optional<std::string>& cursor) override;
  Result<std::optional<std::string>> cursor() override;
  bool hub_is_admitted() override { return !log_->members().hubs().empty(); }
  // sync::FileStore
  std::vector<sync::FileItem> here() override;
  std::vector<sync::FileItem> missing() override;
  Result<std::uint64_t> part_bytes(const Hash& blob) override;
  Status came(const Hash& blob) override;
  Status check(const Hash& blob) override;

  const std::string name;
  seal::SigningKey key;
  const std::filesystem::path folder;
  SimClock clock;
  std::size_t most_run_entries = seal::most_pack_entries;
  std::uint64_t life = 0;  // grows with each start
  bool member = true;
  bool stale = false;                    // the hub lost something since it last told us what it has
  std::optional<std::uint64_t> cut_seq;  // set: revoked there
  bool forked = false;
  std::unique_ptr<sync::DeviceEnd> end;
  std::unique_ptr<sync::PictureEnd> pictures;
  std::unique_ptr<Shadow> shadow = std::make_unique<Shadow>();

  log::EntryLog& log() { return *log_; }
  const blobs::BlobStore& blobs() const { return *blobs_; }
  test::FaultyFiles& disk() { return *disk_; }
  const std::vector<sync::FileItem>& named() const { return shadow->named(); }

 private:
  std::vector<sync::FileItem> named_files(bool here) const;

  std::shared_ptr<test::FaultyFiles> disk_;
  std::unique_ptr<log::EntryLog> log_;
  std::unique_ptr<blobs::BlobStore> blobs_;
  std::unique_ptr<blobs::PartStore> parts_;
  bool full_ = false;
};

}  // namespace jambline::simulator
