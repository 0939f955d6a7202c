#include "net/server.h"

#include <array>
#include <boost/asio/executor_work_guard.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/steady_timer.hpp>
#include <future>
#include <list>
#include <map>
#include <mutex>
#include <thread>
#include <vector>

#include "net/server_connection.h"
#include "net/server_places.h"
#include "net/tls_context.h"

namespace jambline::net {

namespace asio = boost::asio;
using boost::system::error_code;

struct Server::Core : ConnectionOwner {
  Core(std::shared_ptr<TlsContext> context, Site& served, ServerOptions wanted,
       sync::NoteEvent note)
      : tls(std::move(context)),
        site(served),
        options(std::move(wanted)),
        note_event(std::move(note)),
        acceptor(sockets.back()),
        ticker(sockets.back()),
        breather(sockets.back()),
        places(work) {}

  // ConnectionOwner
  const ServerOptions& limits() const override { return options; }
  Site& served() override { return site; }
  Places& lanes() override { return places; }
  void greeted(Connection& connection) override {
    const std::lock_guard lock(mutex);
    unfinished.remove(&connection);
  }
  void refused_unasked(int status) override {
    const std::lock_guard lock(mutex);
    ++refused[status];
  }
  void closed(Connection& connection, bool greeted_before) override {
    const std::lock_guard lock(mutex);
    unfinished.remove(&connection);
    all.erase(&connection);
    if (!greeted_before) ++failed_handshakes;
  }

  Status listen() {
    error_code ec;
    const auto host = asio::ip::make_address(options.host, ec);
    const auto refuse = [&](const error_code& why) {
      return fail(Error{Code::NoContact,
                        "listen",
                        "hub",
                        {{"address", sync::Address{options.host, options.port}.text()},
                         {"cause", why.message()}}});
    };
    if (ec) return refuse(ec);
    const asio::ip::tcp::endpoint at(host, options.port);
    acceptor.open(at.protocol(), ec);
    if (!ec) acceptor.set_option(asio::socket_base::reuse_address(true), ec);
    if (!ec) acceptor.bind(at, ec);
    if (!ec) acceptor.listen(1024, ec);
    if (ec) return refuse(ec);
    return {};
  }

  void accept() {
    next = (next + 1) % sockets.size();
    acceptor.async_accept(sockets[next],
                          [this](const error_code& ec, asio::ip::tcp::socket socket) {
                            if (ec == asio::error::operation_aborted) return;
                            if (ec) return breathe();  // no more sockets to be had, for one
                            take(std::move(socket));
                            accept();
                          });
  }

  void breathe() {
    breather.expires_after(std::chrono::milliseconds(100));
    breather.async_wait([this](const error_code& ec) {
      if (!ec) accept();
    });
  }

  void take(asio::ip::tcp::socket socket) {
    std::shared_ptr<Connection> too_slow;
    auto connection = std::make_shared<Connection>(*this, std::move(socket), *tls);
    {
      const std::lock_guard lock(mutex);
      if (all.size() >= options.most_connections) {
        ++turned_away;
        return;  // the socket closes
      }
      if (unfinished.size() >= options.most_handshakes) {
        if (const auto oldest = all.find(unfinished.front()); oldest != all.end())
          too_slow = oldest->second.lock();
        unfinished.pop_front();
        ++cut_for_new;
      }
      all[connection.get()] = connection;
      unfinished.push_back(connection.get());
    }
    if (too_slow) too_slow->cut();
    connection->start();
  }

  // What was turned away before it came to a place is noted once a second, however much it was.
  void tick() {
    ticker.expires_after(std::chrono::seconds(1));
    ticker.async_wait([this](const error_code& ec) {
      if (ec) return;
      note_counts();
      tick();
    });
  }

  void note_counts() {
    std::map<std::pair<std::string, int>, std::uint64_t> counts;
    {
      const std::lock_guard lock(mutex);
      counts[{"handshakes failed", 0}] = std::exchange(failed_handshakes, 0);
      counts[{"connections refused", 0}] = std::exchange(turned_away, 0);
      counts[{"handshakes cut", 0}] = std::exchange(cut_for_new, 0);
      for (const auto& [status, count] : std::exchange(refused, {}))
        counts[{"requests refused", status}] = count;
    }
    if (!note_event) return;
    for (const auto& [what, count] : counts)
      if (count > 0) note_event({0, what.first, {}, {}, what.second, count, 0, {}});
  }

  std::shared_ptr<TlsContext> tls;
  Site& site;
  ServerOptions options;
  sync::NoteEvent note_event;
  // Connections that the queues still hold at the end come here once more: this goes last.
  std::mutex mutex;  // guards the six below
  std::map<Connection*, std::weak_ptr<Connection>> all;
  std::list<Connection*> unfinished;
  std::uint64_t failed_handshakes = 0;
  std::uint64_t turned_away = 0;
  std::uint64_t cut_for_new = 0;
  std::map<int, std::uint64_t> refused;  // by status
  // A connection stays on one thread: handing each piece of a file to the next idle one of many
  // cost more than the piece.
  std::array<asio::io_context, 2> sockets{asio::io_context(1), asio::io_context(1)};
  std::size_t next = 0;  // of `sockets`
  asio::io_context work;
  asio::ip::tcp::acceptor acceptor;
  asio::steady_timer ticker;
  asio::steady_timer breather;
  Places places;
  std::vector<std::jthread> threads;
};

Server::Server(std::unique_ptr<Core> core) : core_(std::move(core)) {}

Result<std::unique_ptr<Server>> Server::start(std::shared_ptr<TlsContext> tls, Site& site,
                                              ServerOptions options, sync::NoteEvent note) {
  auto core = std::make_unique<Core>(std::move(tls), site, std::move(options), std::move(note));
  JAMBLINE_TRY(core->listen());
  core->accept();
  core->tick();
  const auto run = [&](asio::io_context& io) {
    core->threads.emplace_back([&io] {
      const auto until_stopped = asio::make_work_guard(io);
      io.run();
    });
  };
  for (auto& io : core->sockets) run(io);
  for (int i = 0; i < core->options.threads; ++i) run(core->work);
  return std::unique_ptr<Server>(new Server(std::move(core)));
}

Server::~Server() {
  for (auto& io : core_->sockets) io.stop();
  core_->work.stop();
  core_->threads.clear();
  core_->note_counts();
}

std::uint16_t Server::port() const {
  error_code ignored;
  return core_->acceptor.local_endpoint(ignored).port();
}

std::size_t Server::connections() const {
  const std::lock_guard lock(core_->mutex);
  return core_->all.size();
}

void Server::run_at(const std::shared_ptr<Place>& place, const std::function<void()>& work) {
  std::promise<void> done;
  core_->places.run(place, [&] {
    work();
    done.set_value();
  });
  done.get_future().wait();
}

}  // namespace jambline::net
