#include "evidence/chain_reader.h"

#include "seal/wire.h"

namespace jambline::evidence {

namespace {
constexpr std::size_t piece_bytes = 64U << 10U;

Error cut_short() {
  return Error{Code::Malformed, "decode", "record", {}}.with("cause", "cut short");
}
}  // namespace

Result<bool> ChainReader::have(std::size_t count) {
  while (bytes_.size() - at_ < count) {
    bytes_.erase(bytes_.begin(), bytes_.begin() + static_cast<std::ptrdiff_t>(at_));
    at_ = 0;
    const std::size_t before = bytes_.size();
    bytes_.resize(before + piece_bytes);
    auto got = member_.read(std::span(bytes_).subspan(before));
    bytes_.resize(before + (got ? *got : 0));
    if (!got) return fail(std::move(got.error()));
    if (*got == 0) return false;
  }
  return true;
}

Result<std::optional<Record>> ChainReader::next() {
  JAMBLINE_ASSIGN(const bool more, have(4));
  if (!more) {
    if (bytes_.size() != at_) return fail(cut_short());
    return std::nullopt;
  }
  std::uint32_t length = 0;
  seal::ByteReader(std::span(bytes_).subspan(at_, 4)).number(length);
  if (length > most_record_bytes)
    return fail(Error{Code::Malformed, "decode", "record", {}}.with("cause", "too long"));
  JAMBLINE_ASSIGN(const bool whole, have(4 + std::size_t{length}));
  if (!whole) return fail(cut_short());
  JAMBLINE_ASSIGN(Record record, decode_record(std::span(bytes_).subspan(at_ + 4, length)));
  at_ += 4 + std::size_t{length};
  return record;
}

}  // namespace jambline::evidence
