// exchange/log_store.h: the log of this device as sync sees it: read by a reader of its own, filled
// through the engine.
//
// Threads: one owner at a time. take() waits for the engine's work lane: never call it there.
#pragma once

#include "engine/engine.h"
#include "sync/device_end.h"

namespace jambline::exchange {

class LogStore final : public sync::DeviceStore {
 public:
  static Result<std::unique_ptr<LogStore>> open(const std::filesystem::path& folder,
                                                engine::Engine& engine, const DeviceId& own,
                                                const seal::Key& hub);
  Result<std::vector<sync::Head>> heads() override;
  Result<std::optional<Hash>> hash_at(const DeviceId& device, std::uint64_t seq) override;
  Result<Run> run_from(const DeviceId& device, std::uint64_t seq) override;
  Result<std::optional<seal::Receipt>> last_receipt(const seal::Epoch& epoch) override;
  Status take(const sync::PullPage& page, const std::optional<std::string>& cursor) override;
  Result<std::optional<std::string>> cursor() override;
  bool hub_is_admitted() override;
  log::EntryLog& log() { return *log_; }

 private:
  LogStore(std::unique_ptr<log::EntryLog> log, engine::Engine& engine, const DeviceId& own,
           const seal::Key& hub);
  std::string peer() const { return "hub:" + hub_.hex(); }

  std::unique_ptr<log::EntryLog> log_;
  engine::Engine& engine_;
  DeviceId own_;
  seal::Key hub_;
};

}  // namespace jambline::exchange
