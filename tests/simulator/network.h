// tests/simulator/network.h: what lies between devices and the hub, and what may go wrong there.
//
// Shape:   a flight is one request of one lane: sent, handled at the hub, and its answer on the
//          way, each at its own time, so that lanes overtake each other. Bodies go in pieces. A
//          connection may be dead for the device and still open for the hub: such a ghost may bring
//          late bytes.
// Model:   TLS makes whatever is flipped or cut a dead connection. Portal, BadGateway,
// OtherReceipt,
//          Truncated and Flipped are worse than what TLS lets through, and have to do no harm
//          either.
// Threads: one.
#pragma once

#include <functional>
#include <list>

#include "tests/simulator/met.h"
#include "tests/simulator/sim_device.h"
#include "tests/simulator/sim_hub.h"

namespace jambline::simulator {

enum class Mishap : std::uint8_t {
  None,
  LostBefore,    // the hub never hears of it
  LostAfter,     // the hub has done it, the device never hears of that
  CutUp,         // within the body on its way to the hub
  GhostUp,       // the same, and the hub does not notice
  CutDown,       // within the answer's body
  Portal,        // 200 and a page in HTML
  BadGateway,    // 502 and a page in HTML
  OtherReceipt,  // a receipt of another hub, shop, device, epoch or entry
  OldReceipt,    // one that this device has had before
  Truncated,     // an answer that ends early, and says it is whole
  Flipped,       // a bit of a file's bytes, either way; of anything else it kills the connection
};
inline constexpr std::uint64_t mishaps = 12;
std::string_view mishap_name(Mishap mishap);

constexpr std::size_t lanes_of_device = 4;  // push, pull, two of pictures

struct Flight {
  SimDevice* device{};
  std::size_t lane{};
  std::uint64_t life{};  // of the device
  sync::Request request;
  std::unique_ptr<sync::Handling> waiting;  // a long poll, at the hub
  std::uint64_t hub_life{};
  std::uint64_t hub_changes{};
  std::int64_t until_ms{};
  std::optional<Result<sync::Response>> answer;
};

class Network {
 public:
  Network(SimHub& hub, SeededRandom& random, const TrueTime& time)
      : hub_(hub), random_(random), time_(time) {}

  // The lane's next request, if it has one now.
  std::optional<Flight> ask(SimDevice& device, std::size_t lane);
  void to_hub(Flight& flight, Mishap mishap);  // gives it an answer, or lets it wait
  // Asks a waiting one again; `over` = its time is.
  void ask_again(Flight& flight, bool over);
  // To the device, if it still lives the life in which it asked.
  void deliver(Flight& flight);

  // A request of no lane; nothing when it got lost.
  std::optional<sync::Response> once(const sync::Request& request, const std::string& peer,
                                     Mishap mishap = Mishap::None);
  void move_ghosts();
  void drop_ghosts() { ghosts_.clear(); }

  std::function<void(const std::string&)> say = [](const std::string&) {};
  std::uint64_t mishaps_done = 0;
  MetFaults met{};

 private:
  void meet(Met what) { met[static_cast<std::size_t>(what)] = true; }
  void meet_answer(const Flight& flight, const sync::Response& response, Mishap mishap);
  struct Ghost {
    std::unique_ptr<sync::Handling> handling;
    std::string rest;
    std::uint64_t hub_life{};
  };
  Result<std::string> body_of(Flight& flight);
  // Empty: the handling took all of it.
  std::optional<sync::Response> feed(sync::Handling& handling, std::string_view body);
  void answer_with(Flight& flight, sync::Outcome outcome, Mishap mishap);
  void answer_file(Flight& flight, sync::FileReply reply, Mishap mishap);
  void page_instead(Flight& flight, int status);
  sync::Response mistreated(const Flight& flight, sync::Response response, Mishap mishap);

  SimHub& hub_;
  SeededRandom& random_;
  const TrueTime& time_;
  std::list<Ghost> ghosts_;
  std::map<DeviceId, std::vector<std::string>> receipts_;
};

}  // namespace jambline::simulator
