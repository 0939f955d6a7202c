// tests/log/refusing_log.h: a log that can be told to refuse every write, for tests of what a
// screen or an act does when nothing can be saved. Reading goes through to the real log.
#pragma once

#include "log/entry_log.h"

namespace jambline::log {

class RefusingLog final : public EntryLog {
 public:
  explicit RefusingLog(std::unique_ptr<EntryLog> real) : real_(std::move(real)) {}
  std::optional<Code> refuse;         // set = every write fails with it
  std::function<void()> on_add_page;  // before each page is written

  Result<Stored> found_shop(const seal::SigningKey& key, const std::string& name,
                            const Moment& moment, Random& random) override {
    if (refuse) return fail(*refuse, "found shop", "log.db");
    return real_->found_shop(key, name, moment, random);
  }
  Result<std::vector<Stored>> append(const seal::SigningKey& key, const PersonId& person,
                                     std::span<const Draft> drafts, const Moment& moment,
                                     Random& random) override {
    if (refuse) return fail(*refuse, "append", "log.db");
    return real_->append(key, person, drafts, moment, random);
  }
  Result<std::vector<Stored>> add(std::span<const seal::SealedEntry> entries) override {
    if (refuse) return fail(*refuse, "add", "log.db");
    return real_->add(entries);
  }
  Result<std::vector<Stored>> add_page(const Page& page) override {
    if (refuse) return fail(*refuse, "add", "log.db");
    if (on_add_page) on_add_page();
    return real_->add_page(page);
  }
  Result<Stored> erase_payload(const seal::SigningKey& key, const PersonId& person,
                               const Hash& target, const std::string& reason,
                               std::span<const std::uint16_t> erasable, const Moment& moment,
                               Random& random) override {
    if (refuse) return fail(*refuse, "erase", "log.db");
    return real_->erase_payload(key, person, target, reason, erasable, moment, random);
  }
  Result<std::vector<Stored>> say_again(const seal::SigningKey& key, const PersonId& person,
                                        const Draft& first,
                                        std::span<const seal::SealedEntry> origins,
                                        Renamed& renamed, const Moment& moment,
                                        Random& random) override {
    if (refuse) return fail(*refuse, "say again", "log.db");
    return real_->say_again(key, person, first, origins, renamed, moment, random);
  }
  bool newer_schema() const override { return real_->newer_schema(); }
  bool writable() const override { return real_->writable(); }
  bool disk_low() const override { return real_->disk_low(); }
  ShopId shop() const override { return real_->shop(); }
  DeviceId device() const override { return real_->device(); }
  const seal::Members& members() const override { return real_->members(); }
  std::vector<Head> heads() const override { return real_->heads(); }
  Arrival last_arrival() const override { return real_->last_arrival(); }
  Status read_after(Arrival arrival, const Visit& visit) override {
    return real_->read_after(arrival, visit);
  }
  Status said_after(Arrival arrival, const VisitSaid& visit) override {
    return real_->said_after(arrival, visit);
  }
  Status said_of(const JobId& job, const VisitSaid& visit) override {
    return real_->said_of(job, visit);
  }
  Status read_device(const DeviceId& device, std::uint64_t from, const Visit& visit) override {
    return real_->read_device(device, from, visit);
  }
  Result<std::optional<Stored>> find(const Hash& hash) override { return real_->find(hash); }
  Result<std::vector<seal::Receipt>> receipts() override { return real_->receipts(); }
  Result<std::optional<seal::Receipt>> last_receipt(const DeviceId& device, const seal::Key& hub,
                                                    const seal::Epoch& epoch) override {
    return real_->last_receipt(device, hub, epoch);
  }
  Result<std::optional<std::string>> cursor(const std::string& peer) override {
    return real_->cursor(peer);
  }

 private:
  std::unique_ptr<EntryLog> real_;
};

}  // namespace jambline::log
