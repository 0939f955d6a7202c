// sync/picture_end.h: a device's files and the hub's: what is missing where, sent and fetched in
// parts, resumed where it broke off.
//
// Shape:   as sync/device_end.h: next() for a lane, answered() when the answer is there. The hub is
//          asked which files it lacks before any byte goes. Previews first, then what somebody
//          looks at, then the rest; sending before fetching.
// Promise: a file counts as at the hub when the hub says so after it has hashed it. A file that
//          came is used when its own hash was checked here. What is at the hub is not sent again.
// Units:   now_ms of a clock that only goes forward.
// Threads: one owner at a time.
// Source:  tus 1.0.0; PROTOCOL.md section 7.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <unordered_map>
#include <vector>

#include "sync/device_end.h"
#include "sync/target.h"

namespace jambline::sync {

struct FileItem {
  Hash blob;
  std::uint64_t size_bytes{};
  bool preview = false;
};

class FileStore {
 public:
  virtual ~FileStore() = default;
  // Named by entries and here; named and not here. In the order in which they are wanted.
  virtual std::vector<FileItem> here() = 0;
  virtual std::vector<FileItem> missing() = 0;
  virtual Result<std::uint64_t> part_bytes(const Hash& blob) = 0;  // of what is coming; 0: nothing
  virtual Status came(const Hash& blob) = 0;   // all bytes are there: BadHash when they are others
  virtual Status check(const Hash& blob) = 0;  // hashes the file that is here
};

struct FileState {
  std::uint64_t to_send = 0;
  std::uint64_t to_send_bytes = 0;
  std::uint64_t to_fetch = 0;
  std::uint64_t came = 0;          // grows with each file that arrived
  std::vector<Hash> damaged_here;  // other bytes than their name says; not sent
  std::optional<Error> trouble;
};

class PictureEnd {
 public:
  static constexpr std::size_t lanes = 2;
  PictureEnd(ShopId shop, DeviceEnd& device, FileStore& store, std::uint64_t seed);

  DeviceEnd::Next next(std::size_t lane, std::int64_t now_ms);
  void answered(std::size_t lane, const Result<Response>& answer, std::int64_t now_ms);

  void set_allowed(bool originals, bool previews);
  void local_changed() { changed_ = true; }  // entries or files came or went
  void try_now();
  const FileState& state() const { return state_; }
  bool at_hub(const Hash& blob) const { return at_hub_.count(blob) != 0; }

 private:
  enum class Asked : std::uint8_t { Nothing, Have, Create, Head, Patch, Get };
  struct Upload {
    FileItem item;
    std::string location;
    std::uint64_t offset = 0;
    bool offset_known = false;
  };
  struct Lane {
    Asked asked = Asked::Nothing;
    std::vector<Hash> have_asked;
    std::optional<Upload> upload;
    std::optional<FileItem> fetch;
    std::int64_t not_before_ms = 0;
    BackOff back_off;
  };

  void look_again(std::int64_t now_ms);
  bool allowed(const FileItem& item) const;
  bool in_work(const Hash& blob) const;
  std::optional<FileItem> next_to_send() const;
  std::optional<FileItem> next_to_fetch() const;
  Request request(Method method, std::string target, const Token& token) const;
  DeviceEnd::Next ask_have(Lane& lane, std::vector<Hash> hashes, const Token& token);
  DeviceEnd::Next ask_upload(Lane& lane, const Token& token);
  DeviceEnd::Next ask_fetch(Lane& lane, const Token& token, std::int64_t now_ms);
  void have_answered(Lane& lane, const Response& response, std::int64_t now_ms);
  void upload_answered(Lane& lane, Asked asked, const Response& response, std::int64_t now_ms);
  void upload_refused(Lane& lane, const Response& response, std::int64_t now_ms);
  void fetched(Lane& lane, const Response& response, std::int64_t now_ms);
  void failed(Lane& lane, Error error, std::int64_t now_ms, std::int64_t at_least_ms = 0);
  void went_well(Lane& lane);
  void sent(Lane& lane);
  void count();

  ShopId shop_;
  DeviceEnd& device_;
  FileStore& store_;
  SeededRandom random_;
  FileState state_;
  bool originals_ = true;
  bool previews_ = true;
  bool changed_ = true;
  std::uint64_t blob_mark_ = 0;
  std::uint64_t sessions_ = 0;
  std::vector<FileItem> here_;
  std::vector<FileItem> missing_;
  std::set<Hash> at_hub_;
  std::set<Hash> not_at_hub_;
  std::set<Hash> doubted_;  // of at_hub_: the hub said so in an earlier session; asked again
  std::set<Hash> damaged_;
  std::int64_t ask_again_ms_ = 0;  // for what nobody has sent to the hub yet
  std::map<Hash, std::int64_t> fetch_later_ms_;
  Lane lane_[lanes];
};

}  // namespace jambline::sync
