#include "seal/pack.h"

#include "seal/wire.h"

namespace jambline::seal {

namespace {
Error refusal(Code code, std::size_t place) {
  return Error{code, "decode", "pack", {}}.with("place", std::to_string(place));
}
}  // namespace

bool Packer::add(const SealedEntry& entry) {
  const std::string one = encode(entry);
  if (count_ == most_pack_entries || bytes_.size() + 4 + one.size() > most_pack_bytes) return false;
  std::uint8_t length[4];
  ByteWriter(length).number(static_cast<std::uint32_t>(one.size()));
  bytes_.append(reinterpret_cast<const char*>(length), sizeof length);
  bytes_ += one;
  ++count_;
  return true;
}

void Packer::clear() {
  bytes_.clear();
  count_ = 0;
}

Result<std::vector<SealedEntry>> decode_pack(std::span<const std::uint8_t> bytes) {
  std::vector<SealedEntry> out;
  if (bytes.size() > most_pack_bytes) return fail(refusal(Code::TooLarge, 0));
  ByteReader reader(bytes);
  while (reader.left() > 0) {
    const std::size_t place = out.size() + 1;
    if (place > most_pack_entries) return fail(refusal(Code::TooLarge, place));
    std::uint32_t length = 0;
    reader.number(length);
    const auto one = reader.take(length);
    if (!reader.ok()) return fail(refusal(Code::Malformed, place).with("cause", "cut short"));
    auto entry = decode_entry(one);
    if (!entry) return fail(std::move(entry.error()).with("place", std::to_string(place)));
    out.push_back(std::move(*entry));
  }
  return out;
}

}  // namespace jambline::seal
