#include "tests/simulator/sim_hub.h"

#include "engine/read_entry.h"
#include "entries/entry.h"
#include "seal/digest.h"
#include "tests/simulator/full_vfs.h"

namespace jambline::simulator {

namespace fs = std::filesystem;

namespace {
const fs::path shop_folder = "/shop";

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
      file_disk_(std::make_shared<test::FaultyFiles>()),
      folder_(std::move(folder)),
      random_(seed) {
  FullVfs::registered();
  need(file_disk_->make_folder(shop_folder), "make hub");
  need(file_disk_->sync_folder("/"), "make hub");
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
  files_ = need(hub::ShopFiles::open(*file_disk_, shop_folder, clock.now().wall_ms), "open files");
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
  if (full)
    file_disk_->full_at_write(file_disk_->writes() + 1);
  else
    file_disk_->room_again();
  if (folder_) FullVfs::registered().set_full(*folder_, full);
}

void SimHub::lose_power(std::uint64_t seed) {
  stop();
  const auto loss = static_cast<test::Loss>(seed % 4);
  file_disk_ = std::shared_ptr<test::FaultyFiles>(file_disk_->after_power_loss(loss, seed));
}

SimHub::Backup SimHub::backup() {
  const bool was_running = running();
  const bool was_full = disk_->full;
  if (!was_running) start();
  Backup out;
  for (const Hash& blob : blobs()) out.blobs.insert(blob);
  stop();
  out.memory = *disk_;
  out.files =
      std::shared_ptr<test::FaultyFiles>(file_disk_->after_power_loss(test::Loss::Dropped, 1));
  if (!folder_) {
    if (was_running) start();
    set_full(was_full);
    return out;
  }
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
  file_disk_ =
      std::shared_ptr<test::FaultyFiles>(backup.files->after_power_loss(test::Loss::Dropped, 1));
  if (!folder_) return;
  copy_log(backup.folder, *folder_);
  if (declared) need(hub::begin_new_epoch(*folder_, epoch, 1, key), "new epoch");
}

std::vector<Hash> SimHub::blobs() const {
  return need(files_->blobs().list(), "list blobs");
}
bool SimHub::has_blob(const Hash& blob) const {
  return need(files_->has(blob), "has blob");
}
bool SimHub::has_damaged_blobs() const {
  return !need(files_->blobs().scrub({}, {}), "look at blobs").damaged.empty();
}
void SimHub::damage(const Hash& blob) {
  file_disk_->damage(files_->blobs().path_of(blob));
}

std::size_t SimHub::forget_parts() {
  std::size_t out = 0;
  for (const auto& part : need(file_disk_->list(shop_folder / "parts"), "list parts")) {
    const auto upload = sync::parse_upload(part.name);
    if (upload && files_->drop(*upload)) ++out;
  }
  return out;
}

void SimHub::scrub() {
  const auto found = need(files_->set_damaged_aside({}), "scrub");
  if (!found.damaged.empty()) need(shop->blobs_lost(), "scrub");
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
