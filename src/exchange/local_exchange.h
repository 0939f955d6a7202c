// exchange/local_exchange.h: the Exchange of a real folder; for exchange/*.cpp only.
//
// Locks:   `ends_` guards both ends of the protocol and the stores; whoever holds it may wait for
//          the engine's work lane, so it is never taken there nor on the GUI thread. `small_`
//          guards what calls from outside leave behind and what they read.
#pragma once

#include <atomic>
#include <deque>
#include <mutex>
#include <set>
#include <thread>

#include "base/random.h"
#include "exchange/exchange.h"
#include "exchange/file_store.h"
#include "exchange/hub_note.h"
#include "exchange/lanes.h"
#include "exchange/log_store.h"

namespace jambline::exchange {

class LocalExchange final : public Exchange {
 public:
  LocalExchange(Parts parts, std::optional<HubNote> note);
  ~LocalExchange() override;

  void start() override;
  SyncState state() const override;
  std::string digits_of(const sync::Pending& pending) const override;
  void join(sync::Invitation invitation, Done done) override;
  void confirm_hub(PersonId by, Done done) override;
  void give_up_joining() override;
  void ask_for_new_key(Done done) override;
  void pause(bool pause) override;
  void send_now() override;
  void set_pictures_when(PicturesWhen when) override;
  void set_metered(bool metered) override;
  void set_addresses(std::vector<sync::Address> at) override;
  void entries_changed() override;
  void want(Hash file) override;
  Place place_of_entry(std::uint64_t own_seq) const override;
  Place place_of_picture(const Hash& file) const override;
  void invite(Got<sync::Invitation> done) override;
  void pending(Got<std::vector<sync::Pending>> done) override;
  void refuse(DeviceId device, Done done) override;
  void seen(Got<sync::SeenAnswer> done) override;
  void quarantine(Got<std::vector<sync::Quarantined>> done) override;
  void quarantined_entries(DeviceId device, Got<std::vector<seal::SealedEntry>> done) override;
  void settle_quarantine(DeviceId device, std::uint64_t through, Done done) override;

 private:
  // Everything that needs a hub and a key; made when there is a hub, gone when it is given up.
  struct Link {
    seal::SigningKey key;
    std::unique_ptr<LogStore> log;
    std::unique_ptr<PictureFiles> files;
    std::unique_ptr<sync::DeviceEnd> device;
    std::unique_ptr<sync::PictureEnd> pictures;
  };
  using Job = std::function<void(net::Client& client)>;

  void push_and_pull(sync::DeviceEnd::Lane lane);
  void carry_pictures(std::size_t lane);
  void control();
  void enrol(net::Client& client);
  bool ready_to_carry();
  Status make_link();
  void say_divergent_again();
  Status join_now(const sync::Invitation& invitation);
  void look_at_engine();
  void tell();
  Status keep_note(const HubNote& note);
  std::optional<HubNote> note() const;
  ShopId shop() const;
  std::int64_t forward_ms() const;
  std::unique_ptr<net::Client> new_client(net::Bodies* bodies);
  void forget_client(net::Client* client);
  void ask_as_manager(sync::Method method, sync::Target target,
                      std::function<void(Result<std::string>)> done);
  std::optional<sync::Token> token_soon();
  Result<sync::Response> send_as_manager(net::Client& client, sync::Method method,
                                         const sync::Target& target);
  void later(Job job);
  // On the control thread: what writes hub.json or reads a file, which no caller may wait for.
  void soon(std::function<void()> task);
  void wait(std::uint64_t heard, std::int64_t until_ms);

  Parts parts_;
  Bell bell_;
  std::atomic<bool> stop_ = false;
  std::atomic<bool> started_ = false;

  mutable std::mutex ends_;
  std::unique_ptr<Link> link_;
  SystemRandom random_;
  bool again_said_ = false;  // what a forked folder had is said again, or there is nothing

  mutable std::mutex small_;
  std::optional<HubNote> note_;
  SyncState told_;
  bool metered_ = false;
  bool local_changed_ = false;
  bool try_now_ = false;
  bool restart_wanted_ = false;
  std::vector<Hash> wanted_;
  std::deque<Job> jobs_;
  std::deque<std::function<void()>> tasks_;
  std::vector<net::Client*> clients_;
  std::uint64_t unsent_peak_ = 0;  // of the run of sending that is going on
  std::optional<std::int64_t> contact_ms_;
  std::optional<std::int64_t> all_sent_ms_;
  std::optional<Error> join_trouble_;

  std::vector<std::jthread> threads_;
};

}  // namespace jambline::exchange
