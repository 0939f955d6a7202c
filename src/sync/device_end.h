// sync/device_end.h: a device's end of the protocol: who it is, what goes to the hub, what comes.
//
// Shape:   no sockets and no threads: a carrier asks next() for a lane, sends what it is given, and
//          says what came of it by answered(). Push and pull run beside each other; the first one
//          that needs a session makes it, the others wait.
// Promise: only a receipt of the wanted hub, shop, epoch and device, whose hash is that of the
//          entry here, counts as sent; one for more than was pushed only once a session has said
//          that the hub has it. No answer of anybody makes an entry go away. Entries of
//          other devices that the hub has lost are sent too.
// Units:   now_ms is of a clock that only goes forward.
// Threads: one owner at a time.
// Source:  PROTOCOL.md.
#pragma once

#include <map>
#include <memory>
#include <optional>

#include "seal/sign.h"
#include "sync/invitation.h"
#include "sync/page.h"
#include "sync/problem.h"
#include "sync/rate.h"
#include "sync/target.h"

namespace jambline::sync {

// What sync asks of this device's log. take() returns when all of it is on disk.
class DeviceStore {
 public:
  struct Run {
    std::string pack;
    std::uint64_t last_seq{};
  };
  virtual ~DeviceStore() = default;
  virtual Result<std::vector<Head>> heads() = 0;
  virtual Result<std::optional<Hash>> hash_at(const DeviceId& device, std::uint64_t seq) = 0;
  virtual Result<Run> run_from(const DeviceId& device, std::uint64_t seq) = 0;
  virtual Result<std::optional<seal::Receipt>> last_receipt(const seal::Epoch& epoch) = 0;  // own
  virtual Status take(const PullPage& page, const std::optional<std::string>& cursor) = 0;
  virtual Result<std::optional<std::string>> cursor() = 0;
  virtual bool hub_is_admitted() = 0;  // by an entry that is here: only then its receipts are taken
};

struct DeviceState {
  bool in_contact = false;    // the last request was answered by the hub
  bool not_admitted = false;  // the hub knows no such member (yet)
  bool revoked = false;
  bool tail_missing = false;  // the hub has own entries that are not here: nothing may be written
  bool caught_up = false;     // everything the hub had was here a moment ago
  std::optional<std::uint64_t> fork_common_seq;  // set: the own chain was written twice since
  std::uint64_t receipted_seq = 0;               // of own entries, by this hub in this epoch
  std::uint64_t apart_through = 0;  // own ones after the cut, kept apart; each session anew
  bool hub_was_restored = false;    // its epoch is another than last time
  std::uint64_t blob_mark = 0;
  std::uint64_t sessions = 0;    // so many were opened: what the hub has may be another than before
  std::optional<Error> trouble;  // of the last try; none when it went well
  std::int64_t again_ms = 0;     // not before
};

class DeviceEnd {
 public:
  struct Parts {
    ShopId shop;
    seal::Key hub;
    const seal::SigningKey& key;
    DeviceStore& store;
    std::uint64_t seed = 1;  // of how long it waits after a failure
  };
  enum class Lane : std::uint8_t { Push, Pull };
  struct Ask {
    Request request;
    std::int64_t extra_wait_ms = 0;
  };
  // No ask: look again at `again_ms`, or when something has changed.
  struct Next {
    std::optional<Ask> ask;
    std::int64_t again_ms = 0;
  };

  explicit DeviceEnd(const Parts& parts);
  ~DeviceEnd();
  DeviceEnd(const DeviceEnd&) = delete;
  DeviceEnd& operator=(const DeviceEnd&) = delete;

  Next next(Lane lane, std::int64_t now_ms);
  void answered(Lane lane, const Result<Response>& answer, std::int64_t now_ms);

  void local_changed();  // there may be something to push
  void try_now();        // no more waiting
  const DeviceState& state() const { return state_; }

  // For requests of others: the token while there is one. `trouble` is theirs to report.
  std::optional<Token> token(std::int64_t now_ms);
  void token_refused() { session_.reset(); }
  // A request of theirs failed before any answer.
  void no_contact(const Error& error, std::int64_t now_ms);
  // One of theirs was answered by the hub: nobody waits any more because it was out of reach.
  void contact();

 private:
  enum class Asked : std::uint8_t { Nothing, ForChallenge, ForSession, Push, Pull };
  struct LaneState {
    Asked asked = Asked::Nothing;
    DeviceId pushed;  // whose run
    std::uint64_t pushed_through = 0;
    std::int64_t not_before_ms = 0;
    BackOff back_off;
  };
  struct Session {
    Token token;
    seal::Epoch epoch;
    std::uint64_t hub_seq{};
    std::int64_t until_ms{};
    std::map<DeviceId, Head> heads;  // what the hub has, as far as is known here
  };
  struct Cursor {
    seal::Epoch epoch;
    std::uint64_t after = 0;
  };

  LaneState& of(Lane lane) { return lanes_[static_cast<std::size_t>(lane)]; }
  Request request(Path path, Method method, std::string body, std::string_view media_type) const;
  Next ask_for_session(Lane lane, std::int64_t now_ms);
  Next ask_push(std::int64_t now_ms);
  Next ask_pull(std::int64_t now_ms);
  void challenged(LaneState& lane, const Response& response, std::int64_t now_ms);
  void session_opened(const SessionAnswer& answer, std::int64_t now_ms);
  void look_at_own_chain();
  void look_at_receipts();
  void pushed(LaneState& lane, const Response& response, std::int64_t now_ms);
  void pulled(LaneState& lane, const Response& response, std::int64_t now_ms);
  void refused(LaneState& lane, const Response& response, std::int64_t now_ms);
  void failed(LaneState& lane, Error error, std::int64_t now_ms, std::int64_t at_least_ms = 0);
  void went_well(LaneState& lane);
  void forked();
  Result<bool> tells_of_another_chain(const PullPage& page);
  Status take_receipt(const seal::Receipt& receipt);
  std::optional<Cursor> read_cursor();

  Parts parts_;
  DeviceId own_;
  DeviceState state_;
  SeededRandom random_;
  LaneState lanes_[2];
  std::optional<Lane> making_session_;
  std::optional<Challenge> challenge_;
  std::optional<Session> session_;
  std::optional<Cursor> cursor_;
  bool cursor_read_ = false;
  bool fork_told_ = false;           // the hub was shown the other chain
  bool by_heads_ = false;            // what is here need not come again: after a restore
  bool looked_by_heads_ = false;     // in this session, because something was missed
  std::map<DeviceId, bool> barred_;  // runs that the hub does not take as it is now
};

}  // namespace jambline::sync
