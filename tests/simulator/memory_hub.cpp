#include "tests/simulator/memory_hub.h"

#include <algorithm>
#include <cstring>

#include "seal/digest.h"

namespace jambline::test {

namespace {
Hash plain_hash(std::string_view bytes) {
  return seal::sha256(seal::bytes_of(bytes));
}

std::string wiped(const seal::SealedEntry& entry) {
  seal::SealedEntry out = entry;
  out.salt = {};
  out.payload.clear();
  out.erased = true;
  return seal::encode(out);
}

class MemorySource final : public sync::FileSource {
 public:
  MemorySource(MemoryShop::BlobBytes bytes, std::uint64_t offset)
      : bytes_(std::move(bytes)), at_(std::min<std::uint64_t>(offset, bytes_->size())) {}
  Result<std::size_t> read(std::span<std::uint8_t> bytes) override {
    const std::size_t count = std::min<std::size_t>(bytes.size(), bytes_->size() - at_);
    std::memcpy(bytes.data(), bytes_->data() + at_, count);
    at_ += count;
    return count;
  }

 private:
  MemoryShop::BlobBytes bytes_;
  std::size_t at_;
};

class MemorySink final : public sync::FileSink {
 public:
  MemorySink(std::shared_ptr<MemoryShop> shop, std::string name,
             std::shared_ptr<std::set<std::string>> writing)
      : shop_(std::move(shop)), name_(std::move(name)), writing_(std::move(writing)) {
    writing_->insert(name_);
  }
  ~MemorySink() override { writing_->erase(name_); }
  Status write(std::span<const std::uint8_t> bytes) override {
    if (shop_->full) return fail(Code::DiskFull, "write", name_);
    const auto part = shop_->parts.find(name_);
    if (part == shop_->parts.end()) return {};  // taken away meanwhile: nobody will see it
    part->second.append(reinterpret_cast<const char*>(bytes.data()), bytes.size());
    return {};
  }
  std::uint64_t size_bytes() const override {
    const auto part = shop_->parts.find(name_);
    return part == shop_->parts.end() ? 0 : part->second.size();
  }

 private:
  std::shared_ptr<MemoryShop> shop_;
  std::string name_;
  std::shared_ptr<std::set<std::string>> writing_;
};
}  // namespace

void MemoryShop::damage(const Hash& blob) {
  std::string bytes = *blobs.at(blob);
  bytes[bytes.size() / 2] ^= 1;
  blobs[blob] = std::make_shared<const std::string>(std::move(bytes));
}

void MemoryShop::lose(const Hash& blob) {
  blobs.erase(blob);
}

std::vector<Hash> MemoryShop::damaged() const {
  std::vector<Hash> out;
  for (const auto& [name, bytes] : blobs)
    if (plain_hash(*bytes) != name) out.push_back(name);
  return out;
}

MemoryShop restored(const MemoryShop& backup, const seal::Epoch& epoch, std::uint64_t blob_mark,
                    const seal::SigningKey& hub) {
  MemoryShop out = backup;
  out.epoch = epoch;
  out.blob_mark = blob_mark;
  out.parts.clear();
  for (auto& receipt : out.receipts) {
    receipt.epoch = epoch;
    seal::sign(receipt, hub);
  }
  return out;
}

Status MemoryHubStorage::room() const {
  if (at_->full) return fail(Code::DiskFull, "write", "shop");
  return {};
}

std::string MemoryHubStorage::kept_bytes(const seal::SealedEntry& entry) const {
  const bool gone = at_->erased.contains(entry.hash) && erasable_(entry.header.kind);
  return gone ? wiped(entry) : seal::encode(entry);
}

Result<std::vector<sync::Head>> MemoryHubStorage::heads() {
  std::vector<sync::Head> out;
  for (const auto& [device, places] : at_->places)
    out.push_back({device, places.size(), at_->entries[places.back()].hash});
  return out;
}

Result<std::optional<Hash>> MemoryHubStorage::hash_at(const DeviceId& device, std::uint64_t seq) {
  const auto found = at_->places.find(device);
  if (found == at_->places.end() || seq == 0 || seq > found->second.size())
    return std::optional<Hash>();
  return std::optional<Hash>(at_->entries[found->second[seq - 1]].hash);
}

Result<std::vector<seal::SealedEntry>> MemoryHubStorage::membership() {
  std::vector<seal::SealedEntry> out;
  for (const auto& kept : at_->entries) {
    if (!seal::is_membership(kept.kind)) continue;
    JAMBLINE_ASSIGN(out.emplace_back(), seal::decode_entry(seal::bytes_of(kept.bytes)));
  }
  return out;
}

Result<seal::Receipt> MemoryHubStorage::append(std::span<const seal::SealedEntry> entries,
                                               std::span<const Hash> erased,
                                               const sync::SignReceipt& sign) {
  const auto refuse = [](Code code) { return fail(code, "append", "shop"); };
  if (entries.empty()) return refuse(Code::Missing);
  const DeviceId device = entries.front().header.device;
  const auto known = at_->places.find(device);
  std::uint64_t seq = known == at_->places.end() ? 0 : known->second.size();
  for (const auto& entry : entries) {
    if (entry.header.device != device) return refuse(Code::ChainBroken);
    if (entry.header.seq <= seq) return refuse(Code::Fork);
    if (entry.header.seq != ++seq) return refuse(Code::ChainBroken);
  }
  JAMBLINE_TRY(room());

  const std::uint64_t first = at_->entries.size() + 1;
  const seal::Receipt receipt = sign(first, first + entries.size() - 1);
  at_->erased.insert(erased.begin(), erased.end());
  for (const auto& entry : entries) {
    at_->places[device].push_back(at_->entries.size());
    at_->by_hash[entry.hash] = at_->entries.size();
    at_->entries.push_back(
        {device, entry.header.seq, entry.header.kind, entry.hash, kept_bytes(entry)});
  }
  for (const Hash& target : erased) {
    if (const auto found = at_->by_hash.find(target); found != at_->by_hash.end()) {
      auto& kept = at_->entries[found->second];
      JAMBLINE_ASSIGN(const auto entry, seal::decode_entry(seal::bytes_of(kept.bytes)));
      kept.bytes = kept_bytes(entry);
    }
    for (auto& kept : at_->apart) {
      if (kept.hash != target) continue;
      JAMBLINE_ASSIGN(const auto entry, seal::decode_entry(seal::bytes_of(kept.bytes)));
      kept.bytes = kept_bytes(entry);
    }
  }
  at_->receipts.push_back(receipt);
  return receipt;
}

Result<std::optional<seal::Receipt>> MemoryHubStorage::last_receipt(const DeviceId& device) {
  std::optional<seal::Receipt> out;
  for (const auto& receipt : at_->receipts)
    if (receipt.device == device) out = receipt;
  return out;
}

Status MemoryHubStorage::read_after(std::uint64_t hub_seq, const Visit& visit) {
  for (std::uint64_t at = hub_seq; at < at_->entries.size(); ++at) {
    if (at_->most_read != 0 && at - hub_seq == at_->most_read) break;
    const auto& kept = at_->entries[at];
    if (!visit(at + 1, kept.device, kept.seq, kept.bytes)) break;
  }
  return {};
}

Result<std::vector<seal::Receipt>> MemoryHubStorage::receipts(std::uint64_t after,
                                                              std::uint64_t through,
                                                              std::size_t most) {
  std::vector<seal::Receipt> out;
  for (const auto& receipt : at_->receipts) {
    if (receipt.hub_seq_last <= after || receipt.hub_seq_last > through) continue;
    if (out.size() == most) break;
    out.push_back(receipt);
  }
  return out;
}

Status MemoryHubStorage::keep_apart(std::span<const seal::SealedEntry> entries,
                                    std::int64_t now_ms) {
  JAMBLINE_TRY(room());
  for (const auto& entry : entries) {
    const bool there = std::any_of(at_->apart.begin(), at_->apart.end(), [&](const auto& one) {
      return one.device == entry.header.device && one.seq == entry.header.seq &&
             one.hash == entry.hash;
    });
    if (there) continue;
    at_->apart.push_back({entry.header.device, entry.header.seq, entry.header.kind, entry.hash,
                          kept_bytes(entry), now_ms});
  }
  return {};
}

Result<std::vector<sync::Quarantined>> MemoryHubStorage::quarantine() {
  std::map<DeviceId, sync::Quarantined> all;
  for (const auto& one : at_->apart) {
    auto& row =
        all.try_emplace(one.device, sync::Quarantined{one.device, one.seq, 0, 0, 0}).first->second;
    row.first_seq = std::min(row.first_seq, one.seq);
    row.last_seq = std::max(row.last_seq, one.seq);
    row.received_ms = std::max(row.received_ms, one.received_ms);
  }
  std::vector<sync::Quarantined> out;
  for (auto& [device, row] : all) {
    if (const auto found = at_->settled.find(device); found != at_->settled.end())
      row.settled_through = found->second;
    out.push_back(row);
  }
  return out;
}

Status MemoryHubStorage::read_apart(const DeviceId& device, std::uint64_t from_seq,
                                    const std::function<bool(std::string_view)>& visit) {
  std::vector<const MemoryShop::Apart*> rows;
  for (const auto& one : at_->apart)
    if (one.device == device && one.seq >= from_seq) rows.push_back(&one);
  std::stable_sort(rows.begin(), rows.end(),
                   [](const auto* a, const auto* b) { return a->seq < b->seq; });
  for (const auto* one : rows)
    if (!visit(one->bytes)) break;
  return {};
}

Status MemoryHubStorage::settle(const DeviceId& device, std::uint64_t through) {
  JAMBLINE_TRY(room());
  auto& settled = at_->settled[device];
  settled = std::max(settled, through);
  return {};
}

Status MemoryHubStorage::put_invited(const sync::Invited& invited) {
  JAMBLINE_TRY(room());
  for (auto& one : at_->invited)
    if (one.code == invited.code) {
      one = invited;
      return {};
    }
  at_->invited.push_back(invited);
  return {};
}

Status MemoryHubStorage::drop_invited(const Hash& code) {
  JAMBLINE_TRY(room());
  std::erase_if(at_->invited, [&](const auto& one) { return one.code == code; });
  return {};
}

Status MemoryHubStorage::note_seen(const DeviceId& device, std::int64_t now_ms) {
  JAMBLINE_TRY(room());
  auto& row = at_->seen[device];
  row.device = device;
  row.seen_ms = now_ms;
  return {};
}

Status MemoryHubStorage::note_fork(const DeviceId& device, std::uint64_t seq, std::int64_t now_ms) {
  JAMBLINE_TRY(room());
  auto& row = at_->seen[device];
  row.device = device;
  row.seen_ms = std::max(row.seen_ms, now_ms);
  row.fork_seq = std::min(row.fork_seq.value_or(seq), seq);
  row.fork_ms = now_ms;
  return {};
}

Result<std::vector<sync::SeenDevice>> MemoryHubStorage::seen() {
  std::vector<sync::SeenDevice> out;
  for (const auto& [device, row] : at_->seen) out.push_back(row);
  return out;
}

Status MemoryHubStorage::blobs_lost() {
  JAMBLINE_TRY(room());
  ++at_->blob_mark;
  return {};
}

Result<bool> MemoryHubFiles::has(const Hash& blob) {
  return at_->blobs.contains(blob);
}

Result<std::uint64_t> MemoryHubFiles::size_bytes(const Hash& blob) {
  const auto found = at_->blobs.find(blob);
  if (found == at_->blobs.end()) return fail(Code::NoSuchFile, "size", blob.hex());
  return found->second->size();
}

Result<std::unique_ptr<sync::FileSource>> MemoryHubFiles::read(const Hash& blob,
                                                               std::uint64_t offset) {
  const auto found = at_->blobs.find(blob);
  if (found == at_->blobs.end()) return fail(Code::NoSuchFile, "read", blob.hex());
  return std::make_unique<MemorySource>(found->second, offset);
}

Status MemoryHubFiles::begin(const sync::UploadId& upload) {
  if (at_->full) return fail(Code::DiskFull, "begin", upload.text());
  at_->parts.try_emplace(upload.text());
  return {};
}

Result<std::uint64_t> MemoryHubFiles::offset(const sync::UploadId& upload) {
  const auto part = at_->parts.find(upload.text());
  if (part == at_->parts.end()) return fail(Code::NoSuchFile, "offset", upload.text());
  return part->second.size();
}

Result<std::unique_ptr<sync::FileSink>> MemoryHubFiles::append(const sync::UploadId& upload,
                                                               std::uint64_t offset) {
  const std::string name = upload.text();
  const auto part = at_->parts.find(name);
  if (part == at_->parts.end()) return fail(Code::NoSuchFile, "append", name);
  if (writing_->contains(name)) return fail(Code::Busy, "append", name);
  if (part->second.size() != offset)
    return fail(
        Error{Code::OutOfRange, "append", name, {{"value", std::to_string(part->second.size())}}});
  return std::make_unique<MemorySink>(at_, name, writing_);
}

Status MemoryHubFiles::finish(const sync::UploadId& upload) {
  const auto part = at_->parts.find(upload.text());
  if (part == at_->parts.end()) return fail(Code::NoSuchFile, "finish", upload.text());
  if (at_->full) return fail(Code::DiskFull, "finish", upload.text());
  std::string bytes = std::move(part->second);
  at_->parts.erase(part);
  if (plain_hash(bytes) != upload.blob) return fail(Code::BadHash, "finish", upload.text());
  at_->blobs[upload.blob] = std::make_shared<const std::string>(std::move(bytes));
  return {};
}

Status MemoryHubFiles::drop(const sync::UploadId& upload) {
  if (at_->parts.erase(upload.text()) == 0) return fail(Code::NoSuchFile, "drop", upload.text());
  return {};
}

}  // namespace jambline::test
