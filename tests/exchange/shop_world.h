// tests/exchange/shop_world.h: a hub that serves on loopback and devices with real folders, engines
// and exchanges, all in this process.
#pragma once

#include <chrono>
#include <functional>
#include <thread>

#include "base/json.h"
#include "engine/read_entry.h"
#include "exchange/exchange.h"
#include "hub/hub.h"
#include "hub/operator_acts.h"
#include "net/server.h"
#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"

namespace jambline::exchange {

// Real threads and sockets take the time they take; what never comes true ends the test.
inline bool comes_true(const std::function<bool()>& wanted) {
  const auto most = std::chrono::steady_clock::now() + std::chrono::seconds(60);
  while (!wanted()) {
    if (std::chrono::steady_clock::now() > most) return false;
    std::this_thread::sleep_for(std::chrono::milliseconds(5));
  }
  return true;
}

class ServedHub {
 public:
  ServedHub() {
    folder_path_ = folder_.path() / "hub";
    log::must(hub::Hub::make(folder_path_, "shop hub", random_));
    serve();
  }
  ~ServedHub() { stop(); }

  void serve() {
    hub = log::must(hub::Hub::open(folder_path_, {clock_, random_, disk_, {}, {}}));
    net::ServerOptions options;
    options.host = "127.0.0.1";
    options.port = port_;
    server_ = log::must(
        net::Server::start(log::must(net::hub_context(hub->key(), clock_)), *hub, options, {}));
    port_ = server_->port();
    hub->set_served([this](const auto& place, const auto& work) { server_->run_at(place, work); });
    hub::HubConfig config = hub->config();
    config.addresses = {"127.0.0.1:" + std::to_string(port_)};
    log::must(hub->set_config(config));
  }
  void stop() {
    if (!hub) return;
    hub->set_served({});
    server_.reset();
    hub.reset();
  }
  const std::filesystem::path& path() const { return folder_path_; }

  std::unique_ptr<hub::Hub> hub;

 private:
  log::TempFolder folder_;
  std::filesystem::path folder_path_;
  SystemClock clock_;
  SystemRandom random_;
  blobs::PosixFiles disk_;
  std::unique_ptr<net::Server> server_;
  std::uint16_t port_ = 0;
};

class Tablet {
 public:
  explicit Tablet(std::string name) : name_(std::move(name)) { open(); }
  Tablet(std::string name, const std::filesystem::path& copy_of) : name_(std::move(name)) {
    std::filesystem::copy(copy_of, folder_.path(),
                          std::filesystem::copy_options::recursive |
                              std::filesystem::copy_options::overwrite_existing);
    open();
  }
  ~Tablet() { close(); }

  void open() {
    const bool awaits = log::must(Exchange::awaits_admission(folder_.path()));
    engine::Engine::Parts parts{folder_.path(),
                                clock_,
                                std::make_unique<SystemRandom>(),
                                name_,
                                [this](const auto&) {
                                  if (auto* told = told_.load()) told->entries_changed();
                                },
                                {},
                                awaits};
    engine = log::must(engine::Engine::open(std::move(parts)));
    exchange = log::must(Exchange::open({folder_.path(), *engine, clock_, name_, {}}));
    told_ = exchange.get();
    exchange->start();
  }
  void close() {
    if (!engine) return;
    told_ = nullptr;
    engine->drain();
    exchange.reset();
    engine.reset();
  }
  void open_again() {
    close();
    open();
  }

  SyncState state() const { return exchange->state(); }
  // Whether the hub has every entry that is here, the newest too: a state may be older than an act.
  bool all_on_hub() const {
    return exchange->place_of_entry(engine->snapshot()->own_entries) == Place::OnHub;
  }
  // Whether the exchange is told of what is written, as it is from another thread in time.
  void hears(bool it_does) { told_ = it_does ? exchange.get() : nullptr; }
  Status joined(const sync::Invitation& invitation) {
    return answered([&](Exchange::Done done) { exchange->join(invitation, std::move(done)); });
  }
  Status answered(const std::function<void(Exchange::Done)>& ask) {
    const auto got = asked<int>([&](std::function<void(Result<int>)> done) {
      ask([done = std::move(done)](const Status& status) {
        done(status ? Result<int>(0) : Result<int>(fail(status.error())));
      });
    });
    return got ? Status() : Status(fail(got.error()));
  }
  template <class T>
  Result<T> asked(const std::function<void(std::function<void(Result<T>)>)>& ask) {
    std::mutex mutex;
    std::optional<Result<T>> out;
    ask([&](Result<T> got) {
      const std::lock_guard lock(mutex);
      out = std::move(got);
    });
    if (!comes_true([&] {
          const std::lock_guard lock(mutex);
          return out.has_value();
        }))
      std::abort();
    return std::move(*out);
  }
  Result<engine::Wrote> act(acts::Command command, const PersonId& person) {
    return engine::act(*engine, std::move(command), person);
  }
  // Everything that a screen shows of the shop and of one car.
  std::string shown(const JobId& job) {
    engine->watch(job);
    engine->drain();
    const auto snapshot = engine->snapshot();
    std::string out = to_json(*snapshot->shop);
    for (const auto& row : *snapshot->floor) out += to_json(row);
    if (snapshot->car) out += to_json(*snapshot->car);
    return out;
  }
  std::size_t entries(const JobId& job) {
    engine->watch(job);
    engine->drain();
    return engine->snapshot()->timeline ? engine->snapshot()->timeline->size() : 0;
  }
  const std::filesystem::path& path() const { return folder_.path(); }

  std::unique_ptr<engine::Engine> engine;
  std::unique_ptr<Exchange> exchange;

 private:
  log::TempFolder folder_;
  std::string name_;
  SystemClock clock_;
  std::atomic<Exchange*> told_{nullptr};
};

}  // namespace jambline::exchange
