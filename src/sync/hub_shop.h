// sync/hub_shop.h: the hub's end of the protocol, for one shop. No sockets.
//
// Shape:   begin() looks at a request's head and gives a Handling that takes the body in pieces and
//          then answers. A long poll answers Waiting and is asked again when the shop has changed
//          or its time is over. What a request may do is decided in begin(), before any body.
// Promise: entries are refused for their form, chain, signature and membership, never for what they
//          say. A receipt is signed only for what HubStorage has committed.
// Threads: one owner at a time: all calls, also those of a Handling, are made there.
// Errors:  none come out: every refusal is an answer (sync/problem.h).
// Source:  PROTOCOL.md.
#pragma once

#include <atomic>
#include <map>
#include <memory>
#include <unordered_map>
#include <variant>

#include "base/clock.h"
#include "base/random.h"
#include "seal/sign.h"
#include "sync/hub_events.h"
#include "sync/hub_files.h"
#include "sync/hub_storage.h"
#include "sync/invitation.h"
#include "sync/problem.h"
#include "sync/rate.h"

namespace jambline::sync {

struct FileReply {
  Response head;
  std::unique_ptr<FileSource> file;
  std::uint64_t size_bytes{};
};
struct Waiting {
  std::int64_t for_ms{};  // at most; from now
};
using Outcome = std::variant<Response, FileReply, Waiting>;

class Handling {
 public:
  virtual ~Handling() = default;
  virtual std::uint64_t most_body_bytes() const = 0;
  // True: finish() touches files only and may be called on any thread, so that nobody of the shop
  // waits for a disk.
  virtual bool beside_the_shop() const { return false; }
  // A piece of the body, on any one thread at a time; nothing of the shop is touched. An answer
  // ends the request; the rest of the body is not read.
  virtual std::optional<Response> take(std::span<const std::uint8_t> piece) = 0;
  virtual Outcome finish() = 0;  // the body is whole
};

class HubShop {
 public:
  struct Parts {
    HubStorage& storage;
    HubFiles& files;
    const seal::SigningKey& key;
    const Clock& clock;
    Random& random;
    std::string hub_name;
    NoteEvent note;  // any thread
  };
  static Result<std::unique_ptr<HubShop>> open(Parts parts);
  ~HubShop();
  HubShop(const HubShop&) = delete;
  HubShop& operator=(const HubShop&) = delete;

  // `body_bytes` when the request says so. `peer` is where it comes from, for rates only.
  std::unique_ptr<Handling> begin(const Request& head, const Target& target,
                                  std::optional<std::uint64_t> body_bytes, const std::string& peer);

  // What the hub itself does for its operator.
  Result<InviteCode> invite(bool for_a_shop, std::int64_t lives_ms);
  Result<std::vector<Pending>> pending();
  Status refuse(const DeviceId& device);
  // Entries that the hub's own key wrote: only where it is a device of the shop.
  Status append_own(std::span<const seal::SealedEntry> entries);
  Status blobs_lost() { return parts_.storage.blobs_lost(); }
  const seal::Members& members() const { return members_; }
  HubStorage& storage() { return parts_.storage; }

  // Grows with every change that a long poll waits for.
  std::uint64_t changes() const { return changes_; }

 private:
  struct Session {
    DeviceId device;
    std::int64_t until_ms{};
    bool revoked = false;
    bool manager = false;
  };

  explicit HubShop(Parts parts);
  Status load();
  std::int64_t forward_ms() const;
  std::int64_t wall_ms() const { return parts_.clock.now().wall_ms; }
  const seal::Key* key_of(const DeviceId& device) const;
  SignReceipt receipt_for(const seal::SealedEntry& last);
  Session* session_of(const Request& head);
  void note(std::string event, const DeviceId& device, const Response& response,
            std::uint64_t entries = 0, std::uint64_t bytes = 0);

  Response challenge(const std::string& body);
  Response session(const std::string& body);
  Response enrol(const std::string& body, const Session* member);
  Response enrol_state(const DeviceId& device);
  Response invite_answer();
  Response pending_answer();
  Response refuse_answer(const DeviceId& device);
  Response devices_answer();
  Response quarantine_answer();
  Response kept_answer(const DeviceId& device, std::uint64_t from);
  Response settle_answer(const DeviceId& device, std::uint64_t through);
  Response have_answer(const std::string& body);
  Response push(const Session& session, const DeviceId& device, std::uint64_t from,
                const std::string& body);
  std::optional<Response> pull(const Session& session, const PullAsk& ask, bool last_call);
  Response create(const Request& head);
  std::unique_ptr<Handling> begin_upload_head(const UploadId& upload);
  Response upload_head(const UploadId& upload);
  Response drop_upload(const UploadId& upload);
  std::unique_ptr<Handling> begin_upload(const Request& head, const UploadId& upload);
  Outcome blob(const Request& head, const Hash& blob);
  std::unique_ptr<Handling> begin_files(const Request& head, const Target& target);
  std::unique_ptr<Handling> begin_known(const Request& head, const Target& target,
                                        std::optional<std::uint64_t> body_bytes,
                                        const std::string& peer);

  Parts parts_;
  seal::Members members_;
  std::map<DeviceId, Head> heads_;
  std::vector<Invited> invited_;
  std::unordered_map<Token, Session> sessions_;
  std::unordered_map<Challenge, std::pair<DeviceId, std::int64_t>> challenges_;
  LookThrough look_through_challenges_;
  Buckets<DeviceId> device_rates_{requests_a_second, requests_saved_up};
  Buckets<std::string> stranger_rates_{strangers_a_second, strangers_saved_up};
  std::map<std::string, std::weak_ptr<std::atomic<bool>>> uploading_;  // set: another took over
  std::uint64_t changes_ = 0;
};

}  // namespace jambline::sync
