#include "seal/header.h"

#include "seal/wire.h"

namespace jambline::seal {

namespace {
Error bad(std::string field, std::string cause) {
  return Error{Code::Malformed, "decode", "entry", {}}
      .with("field", std::move(field))
      .with("cause", std::move(cause));
}

template <class Self, class Visit>
void header_fields(Self& self, Visit& visit) {
  visit.bytes(self.shop);
  visit.bytes(self.device);
  visit.number(self.seq);
  visit.bytes(self.prev_hash);
  visit.bytes(self.subject);
  visit.number(self.hlc);
  visit.number(self.wall_ms);
  visit.number(self.offset_min);
  visit.number(self.clock_flags);
  visit.bytes(self.boot);
  visit.number(self.boottime_ms);
  visit.bytes(self.person);
  visit.bytes(self.action);
  visit.number(self.part);
  visit.number(self.parts);
  visit.number(self.kind);
  visit.number(self.schema);
  visit.number(self.payload_bytes);
  visit.bytes(self.payload_hash);
}
}  // namespace

HeaderBytes encode(const Header& header) {
  HeaderBytes out;
  ByteWriter writer(out.data());
  writer.number(header_format);
  header_fields(header, writer);
  return out;
}

Result<Header> decode_header(std::span<const std::uint8_t> bytes) {
  if (bytes.size() != header_bytes)
    return fail(bad("header", std::to_string(bytes.size()) + " bytes instead of 206"));
  ByteReader reader(bytes);
  std::uint8_t format = 0;
  reader.number(format);
  if (format != header_format) return fail(bad("format", std::to_string(format)));
  Header header;
  header_fields(header, reader);
  if (header.seq < 1 || header.seq > last_seq) return fail(bad("seq", std::to_string(header.seq)));
  if (header.part < 1 || header.part > header.parts)
    return fail(bad("part", std::to_string(header.part) + " of " + std::to_string(header.parts)));
  if (header.payload_bytes > most_payload_bytes)
    return fail(Error{Code::TooLarge, "decode", "entry", {}}
                    .with("field", "payload_bytes")
                    .with("limit", std::to_string(most_payload_bytes)));
  return header;
}

Status check_payload(const SealedEntry& entry) {
  if (entry.erased) return {};
  if (entry.payload.size() == entry.header.payload_bytes &&
      payload_hash(entry.salt, entry.payload) == entry.header.payload_hash)
    return {};
  return fail(Error{Code::BadHash, "check", "payload", {}}
                  .with("device", entry.header.device.hex())
                  .with("seq", std::to_string(entry.header.seq)));
}

std::string encode(const SealedEntry& entry) {
  const HeaderBytes header = encode(entry.header);
  std::string out;
  out.reserve(entry_fixed_bytes + entry.payload.size());
  const auto put = [&out](const auto& bytes) {
    out.append(reinterpret_cast<const char*>(bytes.data()), bytes.size());
  };
  put(header);
  put(entry.signature.bytes);
  out.push_back(entry.erased ? '\1' : '\0');
  put(entry.erased ? Salt{}.bytes : entry.salt.bytes);
  if (!entry.erased) out += entry.payload;
  return out;
}

Result<SealedEntry> decode_entry(std::span<const std::uint8_t> bytes) {
  if (bytes.size() < entry_fixed_bytes)
    return fail(bad("entry", std::to_string(bytes.size()) + " bytes, too short"));
  const auto head = bytes.first<header_bytes>();
  SealedEntry entry;
  JAMBLINE_ASSIGN(entry.header, decode_header(head));
  entry.hash = entry_hash(head);
  ByteReader reader(bytes.subspan(header_bytes));
  std::uint8_t flag = 0;
  reader.bytes(entry.signature);
  reader.number(flag);
  reader.bytes(entry.salt);
  if (flag > 1) return fail(bad("flag", std::to_string(flag)));
  entry.erased = flag == 1;
  if (entry.erased && entry.salt) return fail(bad("salt", "not zero in an erased entry"));
  const std::size_t wanted = entry.erased ? 0 : entry.header.payload_bytes;
  if (reader.left() != wanted)
    return fail(bad("payload",
                    std::to_string(reader.left()) + " bytes instead of " + std::to_string(wanted)));
  const auto payload = reader.take(wanted);
  entry.payload.assign(reinterpret_cast<const char*>(payload.data()), payload.size());
  return entry;
}

}  // namespace jambline::seal
