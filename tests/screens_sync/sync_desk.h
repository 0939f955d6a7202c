// tests/screens_sync/sync_desk.h: a shop of a manager and a painter on one device, with an exchange
// that the test moves; and a second device of the same shop, whose entries come over as a hub
// brings them.
#pragma once

#include "fake_exchange.h"
#include "log/entry_log.h"
#include "screens/sync_view_model.h"
#include "seal/sign.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {

// Its own folder, engine and key; it is let in when it is made.
class SecondDevice {
 public:
  SecondDevice(engine::Engine& first, std::filesystem::path first_folder, const Clock& clock,
               const PersonId& by)
      : first_(first), first_folder_(std::move(first_folder)) {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "jambline-second-XXXXXX").string();
    folder_ = mkdtemp(pattern.data());
    engine::Engine::Parts parts{folder_, clock, std::make_unique<SeededRandom>(77), "tablet 2", {}};
    parts.awaits_admission = true;
    auto opened = engine::Engine::open(std::move(parts));
    if (!opened) std::abort();
    engine_ = std::move(*opened);
    const auto key = seal::SigningKey::load(folder_ / "device.key");
    if (!key) std::abort();
    key_ = key->key();
    first_.admit_device({key_, "tablet 2", false}, by, {});
    first_.drain();
    from_first();
  }
  ~SecondDevice() {
    engine_.reset();
    std::filesystem::remove_all(folder_);
  }

  DeviceId device() const { return seal::device_of(key_); }
  engine::Engine& engine() { return *engine_; }
  void act(acts::Command command, const PersonId& by) {
    std::optional<Error> refused;
    engine_->post(std::move(command), by, [&](const Result<engine::Wrote>& wrote) {
      if (!wrote) refused = wrote.error();
    });
    engine_->drain();
    EXPECT_FALSE(refused) << refused->operation << ": " << refused->subject;
  }
  void from_first() { bring(first_folder_, first_, *engine_); }
  void to_first() { bring(folder_, *engine_, first_); }
  // What it wrote itself from `seq` on.
  std::vector<seal::SealedEntry> own_entries(std::uint64_t seq = 1) {
    engine_->drain();
    std::vector<seal::SealedEntry> out;
    const auto log = log::EntryLog::open(folder_, log::OpenMode::ReadOnly);
    if (!log) std::abort();
    EXPECT_TRUE((*log)->read_device(device(), seq, [&](const log::Stored& one) {
      out.push_back(one.entry);
      return true;
    }));
    return out;
  }

 private:
  static void bring(const std::filesystem::path& folder, engine::Engine& from, engine::Engine& to) {
    from.drain();
    auto page = std::make_shared<engine::ArrivedPage>();
    const auto log = log::EntryLog::open(folder, log::OpenMode::ReadOnly);
    if (!log) std::abort();
    EXPECT_TRUE((*log)->read_after(0, [&](const log::Stored& one) {
      page->entries.push_back(one.entry);
      return true;
    }));
    Status taken;
    to.take_page(page, [&](Status done) { taken = std::move(done); });
    for (int i = 0; i < 3; ++i) to.drain();
    EXPECT_TRUE(taken) << taken.error().operation << ": " << taken.error().subject;
  }

  engine::Engine& first_;
  std::filesystem::path first_folder_;
  std::filesystem::path folder_;
  std::unique_ptr<engine::Engine> engine_;
  seal::Key key_;
};

class SyncDesk : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    act(acts::NameShop{"Test shop", "Etc/UTC"});
    mara_ = add("Mara", job::Role::Manager);
    be(mara_);
    ivo_ = add("Ivo", job::Role::Painter);
    open_car();
    sync_.emplace(*session_);
    exchange_.emplace([this](exchange::SyncState state) { sync_->publish(std::move(state)); });
    sync_->use(&*exchange_);
  }
  void TearDown() override {
    second_.reset();
    sync_.reset();
    ShopDesk::TearDown();
  }
  void let_second_in() { second_.emplace(*engine_, folder_, clock_, mara_); }
  void say(exchange::SyncState state) {
    exchange_->say(std::move(state));
    settle();
  }
  static exchange::SyncState good() {
    exchange::SyncState out;
    out.contact = exchange::Contact::Good;
    out.hub_name = "hub in the office";
    return out;
  }
  void later(double minutes) {
    clock_.advance_ms(static_cast<std::int64_t>(minutes * 60'000));
    emit session_->secondPassed();
    settle();
  }

  PersonId mara_, ivo_;
  std::optional<SyncViewModel> sync_;
  std::optional<exchange::FakeExchange> exchange_;
  std::optional<SecondDevice> second_;
};

}  // namespace jambline::screens
