// The two of wrong_servers.h that take a hub's true answers apart.
#include "entries/entry.h"
#include "hub/hub.h"
#include "net/client.h"
#include "seal/digest.h"
#include "sync/page.h"
#include "tests/fault/wrong_servers.h"
#include "tests/simulator/sim_device.h"

namespace jambline::fault {

using simulator::need;

namespace {
// Cuts the body of each answer of the hub as if that were all of it.
struct Cut {
  std::atomic<std::uint64_t> at_bytes{UINT64_MAX};
  std::string whole;  // of the last answer; read when it has come
};

class CutHandling final : public sync::Handling {
 public:
  CutHandling(std::unique_ptr<sync::Handling> whole, Cut& cut)
      : whole_(std::move(whole)), cut_(cut) {}
  std::uint64_t most_body_bytes() const override { return whole_->most_body_bytes(); }
  std::optional<sync::Response> take(std::span<const std::uint8_t> piece) override {
    return whole_->take(piece);
  }
  sync::Outcome finish() override {
    auto outcome = whole_->finish();
    if (auto* response = std::get_if<sync::Response>(&outcome)) {
      cut_.whole = response->body;
      response->body.resize(std::min<std::uint64_t>(response->body.size(), cut_.at_bytes));
    }
    return outcome;
  }

 private:
  std::unique_ptr<sync::Handling> whole_;
  Cut& cut_;
};

class CutPlace final : public net::Place {
 public:
  CutPlace(std::shared_ptr<net::Place> whole, Cut& cut) : whole_(std::move(whole)), cut_(cut) {}
  std::unique_ptr<sync::Handling> begin(const sync::Request& head,
                                        std::optional<std::uint64_t> body_bytes,
                                        const std::string& peer) override {
    return std::make_unique<CutHandling>(whole_->begin(head, body_bytes, peer), cut_);
  }
  std::uint64_t changes() const override { return whole_->changes(); }

 private:
  std::shared_ptr<net::Place> whole_;
  Cut& cut_;
};

// The hub of a folder, served in this process by the test's clock.
class CutHub final : public net::Site {
 public:
  CutHub(const fs::path& folder, const simulator::TrueTime& time) : clock_(time) {
    hub_ = need(
        hub::Hub::open(folder, {clock_, random_, disk_, {entries::erasable_kinds(), {}, 0}, {}}),
        "open hub");
    place_ = std::make_shared<CutPlace>(hub_->shops().front(), cut);
    net::ServerOptions options;
    options.host = "127.0.0.1";
    options.port = 0;
    options.threads = 2;
    server_ = need(
        net::Server::start(need(net::hub_context(hub_->key(), clock_), "tls"), *this, options, {}),
        "serve");
  }
  ~CutHub() override { server_.reset(); }
  std::uint16_t port() const { return server_->port(); }
  std::uint64_t held(const DeviceId& device) {
    std::uint64_t out = 0;
    server_->run_at(place_, [&] {
      for (const auto& head :
           need(hub_->shops().front()->shop().storage().heads(), "heads of the hub"))
        if (head.device == device) out = head.seq;
    });
    return out;
  }
  Cut cut;

 private:
  std::shared_ptr<net::Place> place_of(const sync::Request&, sync::Response&) override {
    return place_;
  }
  simulator::SimClock clock_;
  SystemRandom random_;
  blobs::PosixFiles disk_;
  std::unique_ptr<hub::Hub> hub_;
  std::shared_ptr<CutPlace> place_;
  std::unique_ptr<net::Server> server_;
};

// A device of the simulator over a real connection.
class Lines {
 public:
  static constexpr auto push = sync::DeviceEnd::Lane::Push, pull = sync::DeviceEnd::Lane::Pull;

  Lines(std::uint8_t number, const fs::path& folder, simulator::TrueTime& time, std::uint16_t port)
      : device("tablet", simulator::sim_key(number), folder, time), time_(time) {
    device.start(number);
    connect(port);
  }
  void connect(std::uint16_t port) {
    client_ = std::make_unique<net::Client>(net::device_context(simulator::sim_hub_key().key()),
                                            std::vector<sync::Address>{{"127.0.0.1", port}});
  }
  bool note(const std::string& words) {
    const auto written = entries::write(entries::NoteWritten{words});
    const log::Draft draft{car(), written.kind, written.schema, written.payload};
    return device.append({draft}, simulator::genesis().rosa, random_).has_value();
  }
  // One request there and back; false: there is none, or one that would wait for something new.
  bool request(sync::DeviceEnd::Lane lane) {
    if (lane == pull && device.end->state().caught_up) return false;
    time_.ms += 1000;
    device.end->try_now();
    auto next = device.end->next(lane, time_.forward_ms());
    if (!next.ask) return false;
    const auto answer = client_->send(next.ask->request, next.ask->extra_wait_ms);
    error = answer ? std::nullopt : std::optional(answer.error().code);
    device.end->answered(lane, answer, time_.forward_ms());
    return true;
  }
  void sync() {
    for (int i = 0; i < 500; ++i) {
      const bool pushed = request(push), pulled = request(pull);
      if (!pushed && !pulled) return;
    }
    ADD_FAILURE() << "it asks for ever";
  }
  std::uint64_t receipted() const { return device.end->state().receipted_seq; }

  simulator::SimDevice device;
  std::optional<Code> error;

 private:
  static JobId car() {
    for (const auto& entry : simulator::genesis().entries)
      if (entry.header.subject) return entry.header.subject;
    return {};
  }
  simulator::TrueTime& time_;
  SystemRandom random_;
  std::unique_ptr<net::Client> client_;
};
}  // namespace

void WrongServers::cut_every_answer() {
  const auto one_folder = make_device(1, 0), two_folder = make_device(2, 0);
  std::uint64_t cuts = 0;
  std::vector<std::uint64_t> shorter_pages;
  {
    simulator::TrueTime time;
    CutHub hub(hub_folder, time);
    Lines one(1, one_folder, time, hub.port()), two(2, two_folder, time, hub.port());
    ASSERT_TRUE(one.note("one") && two.note("two") && two.note("and another"));
    two.sync();
    struct Step {
      sync::DeviceEnd::Lane lane;
      const char* name;
    };
    for (const Step step : {Step{Lines::push, "challenge"}, Step{Lines::push, "session"},
                            Step{Lines::push, "receipt"}, Step{Lines::pull, "page"}}) {
      const std::string name = step.name;
      const auto entries = one.device.log_size();
      const auto receipted = one.receipted();
      std::string whole(1, ' ');
      for (std::uint64_t at = 0; at < whole.size(); ++at, ++cuts) {
        // A page that ends with one of its entries is a page: taken below.
        if (name == "page" && sync::decode_page(seal::bytes_of(whole).first(at))) {
          shorter_pages.push_back(at);
          continue;
        }
        hub.cut.at_bytes = at;
        ASSERT_TRUE(one.request(step.lane)) << name;
        whole = hub.cut.whole;
        const auto& state = one.device.end->state();
        ASSERT_TRUE(state.trouble) << name << " at " << at;
        EXPECT_EQ(state.trouble->code, Code::WrongServer) << name << " at " << at;
        EXPECT_EQ(one.device.log_size(), entries) << name << " at " << at;
        EXPECT_EQ(one.receipted(), receipted) << name << " at " << at;
        hub.cut.at_bytes = UINT64_MAX;
        if (name == "session") {
          ASSERT_TRUE(one.request(Lines::push));  // a challenge is good for one answer
        }
      }
      if (!shorter_pages.empty()) hub.cut.at_bytes = shorter_pages.back();
      ASSERT_TRUE(one.request(step.lane)) << name;
      hub.cut.at_bytes = UINT64_MAX;
    }
    EXPECT_EQ(one.receipted(), 1U);
    // What the shorter page left out is missed, and asked for.
    EXPECT_LT(one.device.log_size(), first_day_entries() + 3);
    for (auto* device : {&one, &two}) {
      time.ms += 3'700'000;
      device->sync();
    }
  }
  EXPECT_GT(cuts, 1'000U);
  expect_equal({one_folder, two_folder}, 3);
}

void WrongServers::cut_the_line() {
  const auto folder_of_one = make_device(1, 0);
  std::uint64_t said = 1;
  {
    simulator::TrueTime time;
    CutHub hub(hub_folder, time);
    CutProxy proxy(hub.port());
    Lines one(1, folder_of_one, time, proxy.port());
    ASSERT_TRUE(one.note("measured"));
    one.sync();
    const std::uint64_t whole = proxy.most_passed_bytes();
    ASSERT_GT(whole, 1000U);
    // The handshake's bytes are the same each time; fewer cuts do there.
    for (std::uint64_t at = 0; at < whole; at += at < 1200 ? 41 : 9) {
      proxy.cut_after_bytes(at);
      time.ms += 3'700'000;  // so that it says anew who it is
      one.connect(proxy.port());
      ASSERT_TRUE(one.note("cut at " + std::to_string(at)));
      ++said;
      for (int turn = 0; turn < 4; ++turn) {
        (void)one.request(Lines::push);
        if (!one.error) continue;
        EXPECT_TRUE(*one.error == Code::NoContact || *one.error == Code::WrongServer)
            << code_name(*one.error) << " at " << at;
        break;
      }
      ASSERT_LE(one.receipted(), hub.held(one.device.key.device())) << at;
    }
    proxy.cut_after_bytes(UINT64_MAX);
    one.connect(proxy.port());
    one.sync();
    EXPECT_EQ(one.receipted(), said);
  }
  expect_equal({folder_of_one}, said);
}

}  // namespace jambline::fault
