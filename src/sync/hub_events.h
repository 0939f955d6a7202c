// sync/hub_events.h: what a hub writes down of its own doing. Nothing of a payload, no name of a
// person, no token, no code: ids, counts, status.
#pragma once

#include <cstdint>
#include <functional>
#include <string>

#include "base/describe.h"

namespace jambline::sync {

struct HubEvent {
  std::int64_t at_ms{};
  std::string event;  // "push", "pull", "refused", "enrol", "upload", "scrub" ...
  std::string shop;   // hex, or empty
  std::string device;
  int status{};
  std::uint64_t entries{};
  std::uint64_t bytes{};
  std::string cause;  // the problem's type
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "at_ms", .unit = "ms"}, self.at_ms);
    visit(Field{.name = "event"}, self.event);
    visit(Field{.name = "shop"}, self.shop);
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "status"}, self.status);
    visit(Field{.name = "entries"}, self.entries);
    visit(Field{.name = "bytes", .unit = "byte"}, self.bytes);
    visit(Field{.name = "cause"}, self.cause);
  }
};

using NoteEvent = std::function<void(const HubEvent&)>;

}  // namespace jambline::sync
