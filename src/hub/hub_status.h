// hub/hub_status.h: how a hub is, in numbers; nothing of a payload, no name of a person.
//
// Threads: any; each shop is asked in its turn.
#pragma once

#include "hub/hub.h"
#include "hub/upkeep.h"

namespace jambline::hub {

struct DeviceStatus {
  DeviceId device;
  std::string name;
  bool manager{};
  std::uint64_t entries{};
  std::optional<std::uint64_t> cut_seq;  // revoked: entries up to here stand
  std::optional<std::int64_t> seen_ms;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "manager"}, self.manager);
    visit(Field{.name = "entries"}, self.entries);
    visit(Field{.name = "cut_seq"}, self.cut_seq);
    visit(Field{.name = "seen_ms", .unit = "ms"}, self.seen_ms);
  }
};

struct ShopStatus {
  ShopId shop;
  std::string shut;  // why it cannot be opened: the code, then what it says; else empty
  seal::Epoch epoch;
  std::uint64_t entries{};
  std::vector<DeviceStatus> devices;  // the hub's own included
  std::uint64_t revoked{};
  std::uint64_t waiting{};
  bool hub_manages{};
  std::uint64_t quarantined{};  // devices of which something waits for a manager
  std::uint64_t forked{};
  std::optional<std::int64_t> last_seen_ms;
  std::uint64_t database_bytes{};
  std::uint64_t files{};
  std::uint64_t file_bytes{};
  std::uint64_t parts{};
  std::uint64_t blob_mark{};
  std::uint64_t audited{};  // entries looked at again since the start
  std::string first_bad;    // what the audit found, or empty
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shop"}, self.shop);
    visit(Field{.name = "shut", .doc = "why it is not served"}, self.shut);
    visit(Field{.name = "epoch"}, self.epoch);
    visit(Field{.name = "entries"}, self.entries);
    visit(Field{.name = "devices"}, self.devices);
    visit(Field{.name = "revoked"}, self.revoked);
    visit(Field{.name = "waiting", .doc = "for somebody to compare six digits"}, self.waiting);
    visit(Field{.name = "hub_manages"}, self.hub_manages);
    visit(Field{.name = "quarantined", .doc = "devices with entries after their cut"},
          self.quarantined);
    visit(Field{.name = "forked", .doc = "devices found with two entries at one place"},
          self.forked);
    visit(Field{.name = "last_seen_ms", .unit = "ms"}, self.last_seen_ms);
    visit(Field{.name = "database_bytes", .unit = "byte"}, self.database_bytes);
    visit(Field{.name = "files"}, self.files);
    visit(Field{.name = "file_bytes", .unit = "byte"}, self.file_bytes);
    visit(Field{.name = "parts", .doc = "files on their way"}, self.parts);
    visit(Field{.name = "blob_mark"}, self.blob_mark);
    visit(Field{.name = "audited", .doc = "entries looked at again since the start"}, self.audited);
    visit(Field{.name = "first_bad"}, self.first_bad);
  }
};

struct HubStatus {
  std::string name;
  seal::Key hub;
  int protocol = sync::protocol_version;
  bool serving{};
  std::vector<std::string> addresses;
  std::uint64_t expected{};  // shops that may still come with a code
  std::uint64_t free_bytes{};
  std::vector<ShopStatus> shops;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "hub", .doc = "identity key"}, self.hub);
    visit(Field{.name = "protocol"}, self.protocol);
    visit(Field{.name = "serving"}, self.serving);
    visit(Field{.name = "addresses", .doc = "as invitations say"}, self.addresses);
    visit(Field{.name = "expected", .doc = "codes for shops that may come"}, self.expected);
    visit(Field{.name = "free_bytes", .unit = "byte"}, self.free_bytes);
    visit(Field{.name = "shops"}, self.shops);
  }
};

Result<HubStatus> status_of(Hub& hub, const Upkeep* upkeep);

}  // namespace jambline::hub
