// tests/screens_sync/fake_exchange.h: an exchange without a network: the test sets its state and
// its answers, and sees what was asked. `say()` publishes as a thread of the exchange does.
#pragma once

#include <map>
#include <thread>
#include <utility>

#include "exchange/exchange.h"

namespace jambline::exchange {

class FakeExchange final : public Exchange {
 public:
  explicit FakeExchange(std::function<void(SyncState)> changed = {})
      : changed_(std::move(changed)) {}

  SyncState now;
  std::map<std::uint64_t, Place> places;  // of own entries; else Here
  Status answer;                          // of every act that is only done or not
  std::vector<sync::Pending> waiting;
  std::vector<sync::Quarantined> kept;
  std::vector<seal::SealedEntry> kept_entries;
  sync::SeenAnswer last_seen;
  std::optional<Error> refuses;  // every question
  sync::Invitation invitation;

  int starts = 0, sends = 0, asked_anew = 0, gave_up = 0, questions = 0;
  std::optional<sync::Invitation> joined;
  std::optional<PersonId> confirmed;
  std::optional<DeviceId> refused;
  std::optional<std::pair<DeviceId, std::uint64_t>> settled;
  std::vector<Hash> wanted;

  void say(SyncState state) {
    now = std::move(state);
    std::thread([this] {
      if (changed_) changed_(now);
    }).join();
  }

  void start() override { ++starts; }
  SyncState state() const override { return now; }
  void join(sync::Invitation code, Done done) override {
    joined = std::move(code);
    tell(done);
  }
  void confirm_hub(PersonId by, Done done) override {
    confirmed = by;
    tell(done);
  }
  void give_up_joining() override { ++gave_up; }
  void ask_for_new_key(Done done) override {
    ++asked_anew;
    tell(done);
  }
  void pause(bool pause) override {
    now.paused = pause;
    say(now);
  }
  void send_now() override { ++sends; }
  void set_pictures_when(PicturesWhen when) override {
    now.pictures_when = when;
    say(now);
  }
  void set_metered(bool metered) override { now.metered = metered; }
  void set_addresses(std::vector<sync::Address> at) override {
    now.at = std::move(at);
    say(now);
  }
  void entries_changed() override {}
  void want(Hash file) override { wanted.push_back(file); }
  Place place_of_entry(std::uint64_t own_seq) const override {
    const auto known = places.find(own_seq);
    return known == places.end() ? Place::Here : known->second;
  }
  Place place_of_picture(const Hash&) const override { return Place::Here; }

  void invite(Got<sync::Invitation> done) override { give(done, invitation); }
  void pending(Got<std::vector<sync::Pending>> done) override { give(done, waiting); }
  void refuse(DeviceId device, Done done) override {
    refused = device;
    tell(done);
  }
  void seen(Got<sync::SeenAnswer> done) override { give(done, last_seen); }
  void quarantine(Got<std::vector<sync::Quarantined>> done) override { give(done, kept); }
  void quarantined_entries(DeviceId, Got<std::vector<seal::SealedEntry>> done) override {
    give(done, kept_entries);
  }
  void settle_quarantine(DeviceId device, std::uint64_t through, Done done) override {
    settled = {device, through};
    for (auto& one : kept)
      if (answer && one.device == device) one.settled_through = through;
    tell(done);
  }
  std::string digits_of(const sync::Pending& one) const override {
    return sync::six_digits(ShopId{{1}}, one.device_key, now.hub, one.nonce);
  }

 private:
  void tell(const Done& done) {
    std::thread([&] { done(answer); }).join();
  }
  template <class T>
  void give(const Got<T>& done, const T& value) {
    ++questions;
    std::thread([&] {
      if (refuses)
        done(fail(*refuses));
      else
        done(value);
    }).join();
  }

  std::function<void(SyncState)> changed_;
};

}  // namespace jambline::exchange
