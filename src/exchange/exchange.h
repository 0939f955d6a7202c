// exchange/exchange.h: this device's side of sync at work: what is here goes to the shop's hub,
// what others wrote comes here, and nobody waits for it.
//
// Shape:   four lanes of its own (push, pull, two for pictures), each one connection (net/) that
//          speaks what sync/device_end.h says. It reads the log through a reader of its own; what
//          comes goes in by Engine::take_page. Entries first, then previews, then originals.
//          What it knows of its hub stands in hub.json beside the log (exchange/hub_note.h).
// Promise: nothing is lost or thrown away by any answer of a hub; what counts as sent is what a
//          receipt of the admitted hub names. Taps never wait. No socket before start().
// Threads: all calls from any thread and return at once; `changed` and `done` are called on a
//          thread of the exchange. The destructor cuts what runs and waits for its threads.
// Errors:  in SyncState::trouble and in `done`: NoContact, WrongServer, Busy, NotAllowed, NotYet,
//          Revoked, Fork, DiskFull, and those of the engine.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/clock.h"
#include "base/error.h"
#include "engine/engine.h"
#include "sync/invitation.h"
#include "sync/messages.h"

namespace jambline::exchange {

enum class Contact : std::uint8_t {
  NoHub,       // this device only
  Joining,     // asked to be let in: six digits are shown, a manager compares
  TurnedAway,  // a manager said no, or the code is used or over
  Trying,      // there is a hub and it does not answer now
  Good,
  Revoked,  // a manager ended this device's membership; what is here stays here
  Forked,   // another copy of this folder wrote under the same name
};

enum class PicturesWhen : std::uint8_t { Always, NotMetered, Never };

struct Fork {
  std::uint64_t common_seq{};   // the last entry that both copies have
  std::uint64_t own_entries{};  // written here since, and not by the other
  friend bool operator==(const Fork&, const Fork&) = default;
};

struct SyncState {
  Contact contact = Contact::NoHub;
  std::string hub_name;
  seal::Key hub;
  std::vector<sync::Address> at;
  std::string digits;        // while joining: "042 917"
  bool brings_shop = false;  // while joining: the shop comes to the hub, and confirm_hub() is next
  bool paused = false;
  bool metered = false;  // the network that is used now, as far as the system says
  PicturesWhen pictures_when = PicturesWhen::NotMetered;
  std::uint64_t own_entries = 0;       // of this device, when this was put together
  std::uint64_t entries_to_send = 0;   // of these, without a receipt
  std::uint64_t entries_refused = 0;   // of this device, kept apart by the hub after its revocation
  std::uint64_t entries_sent_now = 0;  // since it last was all sent: "sending 4 of 12"
  std::uint64_t pictures_to_send = 0;
  std::uint64_t pictures_to_fetch = 0;
  std::uint64_t bytes_to_send = 0;
  std::uint64_t pictures_came = 0;          // grows with each file that arrived
  std::optional<std::int64_t> contact_ms;   // last answer, wall clock
  std::optional<std::int64_t> all_sent_ms;  // when all was sent, wall clock; none: it is not
  std::optional<std::int64_t> again_ms;     // when it tries again, wall clock
  std::optional<Error> trouble;
  std::optional<Fork> fork;
  bool hub_was_restored = false;  // from a backup, since this program started
  friend bool operator==(const SyncState&, const SyncState&) = default;
};

// Of an entry or a picture of this device: where it is.
enum class Place : std::uint8_t { Here, OnHub, Refused };

class Exchange {
 public:
  struct Parts {
    std::filesystem::path folder;
    engine::Engine& engine;
    const Clock& clock;
    std::string device_name;
    std::function<void(SyncState)> changed;
  };
  // Reads hub.json. Malformed when it cannot be read: then there is no exchange until join().
  static Result<std::unique_ptr<Exchange>> open(Parts parts);
  virtual ~Exchange() = default;

  // Whether this folder is to join a shop and has none of its own: asked before the engine opens
  // (Engine::Parts::awaits_admission). Puts an own shop that holds nothing but its founding aside.
  static Result<bool> awaits_admission(const std::filesystem::path& folder);

  virtual void start() = 0;  // threads and sockets; before it nothing happens
  virtual SyncState state() const = 0;

  // A square code was read or typed. Of another shop than this folder's: WrongShop, unless the
  // folder's shop holds nothing but its founding (then it is put aside, and the program has to open
  // the folder again: `done` gives NotYet, subject "restart"). `done` when the question is out.
  using Done = std::function<void(Status)>;
  virtual void join(sync::Invitation invitation, Done done) = 0;
  // Of a shop that comes to the hub, after the digits were compared: takes the hub in.
  virtual void confirm_hub(PersonId by, Done done) = 0;
  virtual void give_up_joining() = 0;
  // Of a forked device: a new key asks to be admitted; then the work since goes on under it. `done`
  // gives NotYet, subject "restart", when the folder has to be opened again.
  virtual void ask_for_new_key(Done done) = 0;

  virtual void pause(bool pause) = 0;
  virtual void send_now() = 0;  // no more waiting
  virtual void set_pictures_when(PicturesWhen when) = 0;
  virtual void set_metered(bool metered) = 0;
  virtual void set_addresses(std::vector<sync::Address> at) = 0;
  virtual void entries_changed() = 0;  // the engine published: there may be something to send
  virtual void want(Hash file) = 0;    // somebody looks at it: before the others
  virtual Place place_of_entry(std::uint64_t own_seq) const = 0;
  virtual Place place_of_picture(const Hash& file) const = 0;

  // For a manager's device; asked of the hub (NotAllowed, NoContact).
  template <class T>
  using Got = std::function<void(Result<T>)>;
  virtual void invite(Got<sync::Invitation> done) = 0;
  virtual void pending(Got<std::vector<sync::Pending>> done) = 0;
  virtual void refuse(DeviceId device, Done done) = 0;
  virtual void seen(Got<sync::SeenAnswer> done) = 0;
  virtual void quarantine(Got<std::vector<sync::Quarantined>> done) = 0;
  virtual void quarantined_entries(DeviceId device, Got<std::vector<seal::SealedEntry>> done) = 0;
  // A manager has looked: said again before (Engine::take_over) or left where it is.
  virtual void settle_quarantine(DeviceId device, std::uint64_t through, Done done) = 0;

  // The six digits of a device that waits.
  virtual std::string digits_of(const sync::Pending& pending) const = 0;
};

}  // namespace jambline::exchange
