#include "engine/read_entry.h"

#include <algorithm>

namespace jambline::engine {

entries::Entry read_entry(const log::Said& said) {
  const auto& header = said.header;
  entries::Entry out;
  out.hash = said.hash;
  out.order = {header.hlc, header.device, header.seq};
  out.subject = header.subject;
  out.wall_ms = header.wall_ms;
  out.offset_min = header.offset_min;
  out.clock_flags = header.clock_flags;
  out.boot = header.boot;
  out.boottime_ms = header.boottime_ms;
  out.person = header.person;
  out.action = header.action;
  out.part = header.part;
  out.parts = header.parts;
  out.kind = header.kind;
  out.schema = header.schema;
  out.payload = entries::read(header.kind, header.schema, said.payload, said.erased);
  return out;
}

entries::Entry read_entry(const seal::SealedEntry& sealed) {
  return read_entry(log::Said{0, sealed.hash, sealed.header, sealed.payload, sealed.erased});
}

bool may_be_erased(std::uint16_t kind) {
  static const std::vector<std::uint16_t> kinds = entries::erasable_kinds();
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

}  // namespace jambline::engine
