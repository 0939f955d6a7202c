#include <csignal>
#include <iostream>
#include <mutex>
#include <pthread.h>

#include "app/command_line_words.h"
#include "app/hub/commands.h"
#include "app/hub/local_hub.h"
#include "base/json.h"
#include "hub/control.h"
#include "hub/orders.h"
#include "net/server.h"

namespace jambline::app {

namespace {
// One event a line on stderr, where the system's journal takes it.
class EventLines {
 public:
  explicit EventLines(const Clock& clock) : clock_(clock) {}
  void operator()(sync::HubEvent event) {
    if (event.at_ms == 0) event.at_ms = clock_.now().wall_ms;
    const std::string line = to_json(event) + "\n";
    const std::lock_guard lock(mutex_);
    std::cerr << line << std::flush;
  }

 private:
  const Clock& clock_;
  std::mutex mutex_;
};

// Blocked in every thread that starts after it; one waits for them.
sigset_t hold_end_signals() {
  sigset_t ends;
  sigemptyset(&ends);
  sigaddset(&ends, SIGTERM);
  sigaddset(&ends, SIGINT);
  pthread_sigmask(SIG_BLOCK, &ends, nullptr);
  return ends;
}

int refused(const Error& error) {
  std::cerr << said(error);
  return 2;
}
}  // namespace

int hub_serve(const ServeAsked& asked) {
  const sigset_t ends = hold_end_signals();
  const SystemClock clock;
  EventLines lines(clock);
  const sync::NoteEvent note = [&lines](const sync::HubEvent& event) { lines(event); };
  const auto local = open_local_hub(asked.folder, note);
  if (!local) return refused(local.error());
  hub::Hub& hub = *(*local)->hub;

  const auto tls = net::hub_context(hub.key(), clock);
  if (!tls) return refused(tls.error());
  net::ServerOptions options;
  options.host = asked.host;
  options.port = static_cast<std::uint16_t>(asked.port);
  auto server = net::Server::start(*tls, hub, options, note);
  if (!server) return refused(server.error());

  hub::HubConfig config = hub.config();
  config.port = (*server)->port();
  if (!asked.addresses.empty()) config.addresses = asked.addresses;
  if (const Status kept = hub.set_config(config); !kept) return refused(kept.error());

  hub.set_served([&server](const std::shared_ptr<net::Place>& place,
                           const std::function<void()>& work) { (*server)->run_at(place, work); });
  {
    const hub::Upkeep upkeep(hub, note);
    const auto control =
        hub::Control::open(asked.folder, [&](const std::string& line, const std::stop_token& stop) {
          const auto order = from_json<hub::Order>(line);
          if (!order) {
            hub::Report report;
            report.error = hub::said_error(order.error());
            return to_json(report);
          }
          return to_json(hub::carry_out(hub, *order, &upkeep, stop));
        });
    if (!control) {
      hub.set_served({});
      return refused(control.error());
    }
    note({0, "serving", {}, {}, (*server)->port(), hub.shops().size(), 0, {}});
    int signal = 0;
    sigwait(&ends, &signal);
    note({0, "stopping", {}, {}, 0, 0, 0, signal == SIGTERM ? "SIGTERM" : "SIGINT"});
  }
  server->reset();  // nobody asks any more
  hub.set_served({});
  return 0;
}

}  // namespace jambline::app
