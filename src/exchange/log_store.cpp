#include "exchange/log_store.h"

#include <future>

#include "seal/pack.h"

namespace jambline::exchange {

LogStore::LogStore(std::unique_ptr<log::EntryLog> log, engine::Engine& engine, const DeviceId& own,
                   const seal::Key& hub)
    : log_(std::move(log)), engine_(engine), own_(own), hub_(hub) {}

Result<std::unique_ptr<LogStore>> LogStore::open(const std::filesystem::path& folder,
                                                 engine::Engine& engine, const DeviceId& own,
                                                 const seal::Key& hub) {
  JAMBLINE_ASSIGN(auto log, log::EntryLog::open(folder, log::OpenMode::ReadOnly));
  return std::unique_ptr<LogStore>(new LogStore(std::move(log), engine, own, hub));
}

Result<std::vector<sync::Head>> LogStore::heads() {
  std::vector<sync::Head> out;
  for (const auto& head : log_->heads()) out.push_back({head.device, head.seq, head.hash});
  return out;
}

Result<std::optional<Hash>> LogStore::hash_at(const DeviceId& device, std::uint64_t seq) {
  std::optional<Hash> out;
  JAMBLINE_TRY(log_->read_device(device, seq, [&](const log::Stored& stored) {
    if (stored.entry.header.seq == seq) out = stored.entry.hash;
    return false;
  }));
  return out;
}

Result<LogStore::Run> LogStore::run_from(const DeviceId& device, std::uint64_t seq) {
  seal::Packer packer;
  Run out;
  JAMBLINE_TRY(log_->read_device(device, seq, [&](const log::Stored& stored) {
    if (!packer.add(stored.entry)) return false;
    out.last_seq = stored.entry.header.seq;
    return true;
  }));
  out.pack = packer.bytes();
  return out;
}

Result<std::optional<seal::Receipt>> LogStore::last_receipt(const seal::Epoch& epoch) {
  return log_->last_receipt(own_, hub_, epoch);
}

Status LogStore::take(const sync::PullPage& page, const std::optional<std::string>& cursor) {
  auto arrived = std::make_shared<engine::ArrivedPage>();
  arrived->entries = page.entries;
  arrived->receipts = page.receipts;
  if (cursor) arrived->cursor = log::Cursor{peer(), *cursor};
  std::promise<Status> taken;
  engine_.take_page(std::move(arrived),
                    [&taken](Status status) { taken.set_value(std::move(status)); });
  return taken.get_future().get();
}

Result<std::optional<std::string>> LogStore::cursor() {
  return log_->cursor(peer());
}

bool LogStore::hub_is_admitted() {
  (void)log_->heads();  // with them it reads what was committed since
  return log_->members().hubs().contains(hub_);
}

}  // namespace jambline::exchange
