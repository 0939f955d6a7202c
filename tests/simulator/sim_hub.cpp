#include "tests/simulator/sim_hub.h"

#include "engine/read_entry.h"
#include "entries/entry.h"
#include "seal/digest.h"
#include "tests/simulator/full_vfs.h"

namespace jambline::simulator {

namespace fs = std::filesystem;

namespace {
hub::ShopFileOptions hub_options() {
  hub::ShopFileOptions out;
  out.erasable_kinds = entries::erasable_kinds();
  out.vfs = FullVfs::name;
  return out;
}
}  // namespace

SimHub::SimHub(const TrueTime& time, std::uint64_t seed, std::optional<fs::path> folder)
    : clock(time),
      disk_(std::make_shared<test::MemoryShop>(genesis().hub)),
      folder_(std::move(folder)),
      random_(seed) {
  FullVfs::registered();
  if (folder_) {
    fs::create_directories(*folder_);
    need(hub::SqliteHubStorage::make(*folder_, disk_->shop, disk_->epoch), "make hub");
    auto made = need(hub::SqliteHubStorage::open(*folder_, hub_options()), "open hub");
    const auto receipt = genesis().hub.receipts.front();
    need(made->append(genesis().entries, {}, [&](std::uint64_t, std::uint64_t) { return receipt; }),
         "fill hub");
  }
}
SimHub::~SimHub() {
  stop();
}

void SimHub::start() {
  ++life;
  if (folder_)
    storage_ = need(hub::SqliteHubStorage::open(*folder_, hub_options()), "open hub");
  else
    storage_ = std::make_unique<test::MemoryHubStorage>(disk_, engine::may_be_erased);
  files_ = std::make_unique<test::MemoryHubFiles>(disk_);
  shop = need(sync::HubShop::open({*storage_, *files_, key, clock, random_, "hub",
                                   [this](const sync::HubEvent&) { ++events; }}),
              "open shop");
}

void SimHub::stop() {
  set_full(false);
  shop.reset();
  files_.reset();
  storage_.reset();
}

void SimHub::set_full(bool full) {
  disk_->full = full;
  if (folder_) FullVfs::registered().set_full(*folder_, full);
}

SimHub::Backup SimHub::backup() {
  Backup out{*disk_, {}};
  out.memory.full = false;
  if (!folder_) return out;
  const bool was_running = running();
  const bool was_full = disk_->full;
  stop();
  out.folder = folder_->parent_path() / ("hub backup " + std::to_string(++backups_));
  copy_log(*folder_, out.folder);
  if (was_running) start();
  set_full(was_full);
  return out;
}

void SimHub::put_back(const Backup& backup, bool declared) {
  stop();
  const std::uint64_t mark = std::max(disk_->blob_mark, backup.memory.blob_mark) + 1;
  seal::Epoch epoch;
  epoch.bytes.fill(++epochs_);
  *disk_ = declared ? test::restored(backup.memory, epoch, mark, key) : backup.memory;
  if (!folder_) return;
  copy_log(backup.folder, *folder_);
  if (declared) need(hub::begin_new_epoch(*folder_, epoch, 1, key), "new epoch");
}

void SimHub::scrub() {
  const auto damaged = disk_->damaged();
  for (const Hash& blob : damaged) disk_->lose(blob);
  if (!damaged.empty()) need(shop->blobs_lost(), "scrub");
}

std::vector<seal::SealedEntry> SimHub::entries() const {
  std::vector<seal::SealedEntry> out;
  const std::size_t most_read = std::exchange(disk_->most_read, 0);
  need(storage_->read_after(
           0,
           [&](std::uint64_t, const DeviceId&, std::uint64_t, std::string_view bytes) {
             out.push_back(need(seal::decode_entry(seal::bytes_of(bytes)), "hub entry"));
             return true;
           }),
       "hub entries");
  disk_->most_read = most_read;
  return out;
}

std::vector<seal::SealedEntry> SimHub::apart(const DeviceId& device) const {
  std::vector<seal::SealedEntry> out;
  need(storage_->read_apart(device, 1,
                            [&](std::string_view bytes) {
                              out.push_back(
                                  need(seal::decode_entry(seal::bytes_of(bytes)), "apart"));
                              return true;
                            }),
       "apart");
  return out;
}

std::uint64_t SimHub::held(const DeviceId& device) const {
  for (const auto& head : need(storage_->heads(), "hub heads"))
    if (head.device == device) return head.seq;
  return 0;
}

}  // namespace jambline::simulator
