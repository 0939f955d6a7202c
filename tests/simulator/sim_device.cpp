#include "tests/simulator/sim_device.h"

#include <algorithm>

#include "engine/read_entry.h"
#include "entries/entry.h"
#include "exchange/new_key.h"
#include "seal/digest.h"
#include "seal/pack.h"
#include "tests/simulator/full_vfs.h"

namespace jambline::simulator {

namespace fs = std::filesystem;

namespace {
constexpr std::size_t entries_a_slice = 50;  // as engine_arrivals.cpp has it
const fs::path pictures_folder = "/pictures";
const fs::path parts_folder = "/coming";

log::OpenOptions device_options() {
  log::OpenOptions out;
  out.ballast_bytes = 0;
  out.erasable = engine::may_be_erased;
  out.vfs = FullVfs::name;
  return out;
}
}  // namespace

SimDevice::SimDevice(std::string called, seal::SigningKey its_key, fs::path its_folder,
                     const TrueTime& time)
    : name(std::move(called)),
      key(std::move(its_key)),
      folder(std::move(its_folder)),
      clock(time),
      disk_(std::make_shared<test::FaultyFiles>()) {}
SimDevice::~SimDevice() {
  stop();
}

void SimDevice::stop() {
  pictures.reset();
  end.reset();
  parts_.reset();
  blobs_.reset();
  log_.reset();
  FullVfs::registered().set_full(folder, false);
  FullVfs::registered().revive(folder);
  disk_->room_again();
  full_ = false;
}

void SimDevice::start(std::uint64_t seed) {
  ++life;
  FullVfs::registered();
  log_ = need(log::EntryLog::open(folder, log::OpenMode::Write, device_options()), "open log");
  blobs_ = need(blobs::BlobStore::open(*disk_, pictures_folder), "open pictures");
  parts_ = need(blobs::PartStore::open(*disk_, parts_folder, *blobs_), "open parts");
  shadow = std::make_unique<Shadow>();
  need(log_->read_after(0,
                        [this](const log::Stored& stored) {
                          shadow->take(stored.entry);
                          return true;
                        }),
       "read log");
  end = std::make_unique<sync::DeviceEnd>(
      sync::DeviceEnd::Parts{genesis().shop, sim_hub_key().key(), key, *this, seed});
  pictures = std::make_unique<sync::PictureEnd>(genesis().shop, *end, *this, seed + 1);
}

void SimDevice::lose_power(std::uint64_t seed) {
  const auto loss = static_cast<test::Loss>(seed % 4);
  stop();
  disk_ = std::shared_ptr<test::FaultyFiles>(disk_->after_power_loss(loss, seed));
}

void SimDevice::kill_after(std::uint64_t writes) {
  FullVfs::registered().kill_after(folder, writes);
}

std::vector<seal::SealedEntry> SimDevice::move_to_new_key(std::uint64_t common_seq,
                                                          std::uint64_t seed) {
  stop();
  if (!fs::exists(folder / "device.key")) need(key.save(folder / "device.key"), "save key");
  need(exchange::note_new_key(folder, common_seq), "note new key");
  need(exchange::move_to_new_key(folder, device_options()), "move to new key");
  key = need(seal::SigningKey::load(folder / "device.key"), "load key");
  forked = false;
  auto left = need(exchange::divergent_entries(folder), "divergent");
  start(seed);
  return left;
}

void SimDevice::copy_to(DeviceCopy& copy) {
  copy.key = key;
  for (const auto& entry : entries()) copy.entries.insert(entry.hash);
  stop();
  copy_log(folder, copy.log);
  copy.disk = std::shared_ptr<test::FaultyFiles>(disk_->after_power_loss(test::Loss::Dropped, 1));
}

void SimDevice::put_back(const DeviceCopy& copy, std::uint64_t seed) {
  stop();
  copy_log(copy.log, folder);
  key = copy.key;
  forked = false;
  disk_ =
      std::shared_ptr<test::FaultyFiles>(copy.disk->after_power_loss(test::Loss::Dropped, seed));
}

void SimDevice::set_full(bool full) {
  full_ = full;
  FullVfs::registered().set_full(folder, full);
  if (full)
    disk_->full_at_write(disk_->writes() + 1);
  else
    disk_->room_again();
}

void SimDevice::note(const std::vector<log::Stored>& stored) {
  for (const auto& one : stored) shadow->take(one.entry);
  end->local_changed();
  pictures->local_changed();
}

bool SimDevice::may_write() const {
  return running() && log_->members().find(key.device()) && !forked && !end->state().tail_missing &&
         !end->state().revoked && !end->state().fork_common_seq;
}

std::uint64_t SimDevice::own_seq() const {
  for (const auto& head : log_->heads())
    if (head.device == key.device()) return head.seq;
  return 0;
}

std::vector<seal::SealedEntry> SimDevice::entries() const {
  std::vector<seal::SealedEntry> out;
  need(log_->read_after(0,
                        [&](const log::Stored& stored) {
                          out.push_back(stored.entry);
                          return true;
                        }),
       "read log");
  return out;
}

SimDevice::Wrote SimDevice::append(std::vector<log::Draft> drafts, const PersonId& person,
                                   Random& random) {
  auto stored = log_->append(key, person, drafts, clock.now(), random);
  if (stored) note(*stored);
  return stored;
}

SimDevice::Wrote SimDevice::erase(const Hash& target, const PersonId& person, Random& random) {
  const auto kinds = entries::erasable_kinds();
  JAMBLINE_ASSIGN(auto stored,
                  log_->erase_payload(key, person, target, "asked", kinds, clock.now(), random));
  std::vector<log::Stored> out{std::move(stored)};
  note(out);
  return out;
}

Result<std::unique_ptr<blobs::FileReader>> SimDevice::read_blob(const sync::BlobPart& part) {
  return blobs_->open_at(part.blob, part.offset);
}

Status SimDevice::write_part(const sync::BlobPart& part, std::uint64_t at, std::string_view bytes) {
  const std::string name_of_part = part.blob.hex();
  const auto there = parts_->size_bytes(name_of_part);
  if (!there && there.error().code == Code::NoSuchFile) JAMBLINE_TRY(parts_->begin(name_of_part));
  JAMBLINE_ASSIGN(auto writer, parts_->append(name_of_part, at));
  return writer.write(seal::bytes_of(bytes));
}

Result<std::vector<sync::Head>> SimDevice::heads() {
  std::vector<sync::Head> out;
  for (const auto& head : log_->heads()) out.push_back({head.device, head.seq, head.hash});
  return out;
}

Result<std::optional<Hash>> SimDevice::hash_at(const DeviceId& device, std::uint64_t seq) {
  std::optional<Hash> out;
  JAMBLINE_TRY(log_->read_device(device, seq, [&](const log::Stored& stored) {
    if (stored.entry.header.seq == seq) out = stored.entry.hash;
    return false;
  }));
  return out;
}

Result<sync::DeviceStore::Run> SimDevice::run_from(const DeviceId& device, std::uint64_t seq) {
  seal::Packer packer;
  Run out;
  JAMBLINE_TRY(log_->read_device(device, seq, [&](const log::Stored& stored) {
    if (packer.count() >= most_run_entries || !packer.add(stored.entry)) return false;
    out.last_seq = stored.entry.header.seq;
    return true;
  }));
  out.pack = packer.bytes();
  return out;
}

Result<std::optional<seal::Receipt>> SimDevice::last_receipt(const seal::Epoch& epoch) {
  return log_->last_receipt(key.device(), sim_hub_key().key(), epoch);
}

Status SimDevice::take(const sync::PullPage& page, const std::optional<std::string>& cursor) {
  const std::span entries(page.entries);
  if (!log_->shop())
    for (const auto& entry : entries)
      if (entry.header.shop != genesis().shop) return fail(Code::WrongShop, "take", "page");
  std::size_t from = 0;
  do {
    const std::size_t count = std::min(entries_a_slice, entries.size() - from);
    log::Page slice{entries.subspan(from, count), {}, {}};
    if (from + count == entries.size()) {
      slice.receipts = page.receipts;
      if (cursor) slice.cursor = log::Cursor{sim_hub_key().key().hex(), *cursor};
    }
    JAMBLINE_ASSIGN(const auto stored, log_->add_page(slice));
    for (const auto& one : stored) shadow->take(one.entry);
    from += count;
  } while (from < entries.size());
  if (pictures && !page.entries.empty()) pictures->local_changed();
  return {};
}

Result<std::optional<std::string>> SimDevice::cursor() {
  return log_->cursor(sim_hub_key().key().hex());
}

std::vector<sync::FileItem> SimDevice::named_files(bool wanted_here) const {
  std::vector<sync::FileItem> out;
  for (const auto& item : named()) {
    const auto has = blobs_->has(item.blob);
    if (!has || *has != wanted_here) continue;
    out.push_back(item);
    if (wanted_here) out.back().size_bytes = need(blobs_->size_bytes(item.blob), "size");
  }
  return out;
}
std::vector<sync::FileItem> SimDevice::here() {
  return named_files(true);
}
std::vector<sync::FileItem> SimDevice::missing() {
  return named_files(false);
}

Result<std::uint64_t> SimDevice::part_bytes(const Hash& blob) {
  const auto size = parts_->size_bytes(blob.hex());
  if (!size && size.error().code == Code::NoSuchFile) return std::uint64_t{0};
  return size;
}
Status SimDevice::came(const Hash& blob) {
  return parts_->finish(blob.hex(), blob);
}
Status SimDevice::check(const Hash& blob) {
  return blobs_->check(blob);
}

}  // namespace jambline::simulator
