#include "engine/read_entry.h"

namespace jambline::engine {

entries::Entry read_entry(const seal::SealedEntry& sealed) {
  const auto& header = sealed.header;
  entries::Entry out;
  out.hash = sealed.hash;
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
  out.payload = entries::read(header.kind, header.schema, sealed.payload, sealed.erased);
  return out;
}

}  // namespace jambline::engine
