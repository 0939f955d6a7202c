#include "sync/page.h"

#include "seal/wire.h"
#include "sync/limits.h"

namespace jambline::sync {

namespace {
constexpr std::uint8_t page_format = 1;
constexpr std::size_t page_head_bytes = 1 + 16 + 8 + 8 + 2;

Error bad_page(Code code, std::string field) {
  return Error{code, "decode", "page", {}}.with("field", std::move(field));
}
}  // namespace

std::string encode_page(const seal::Epoch& epoch, std::uint64_t next, std::uint64_t head,
                        const std::vector<seal::Receipt>& receipts, std::string_view pack) {
  std::string out(page_head_bytes, '\0');
  seal::ByteWriter writer(reinterpret_cast<std::uint8_t*>(out.data()));
  writer.number(page_format);
  writer.bytes(epoch);
  writer.number(next);
  writer.number(head);
  writer.number(static_cast<std::uint16_t>(receipts.size()));
  out.reserve(out.size() + receipts.size() * seal::receipt_bytes + pack.size());
  for (const auto& receipt : receipts) out += seal::encode(receipt);
  out += pack;
  return out;
}

Result<PullPage> decode_page(std::span<const std::uint8_t> bytes) {
  if (bytes.size() > most_page_bytes) return fail(bad_page(Code::TooLarge, "length"));
  seal::ByteReader reader(bytes);
  PullPage out;
  std::uint8_t format = 0;
  std::uint16_t receipts = 0;
  reader.number(format);
  reader.bytes(out.epoch);
  reader.number(out.next);
  reader.number(out.head);
  reader.number(receipts);
  if (!reader.ok()) return fail(bad_page(Code::Malformed, "length"));
  if (format != page_format) return fail(bad_page(Code::Malformed, "format"));
  if (out.next > out.head) return fail(bad_page(Code::Malformed, "next"));
  if (receipts > most_page_receipts) return fail(bad_page(Code::TooLarge, "receipts"));
  for (std::uint16_t i = 0; i < receipts; ++i) {
    const auto one = reader.take(seal::receipt_bytes);
    if (!reader.ok()) return fail(bad_page(Code::Malformed, "receipts"));
    JAMBLINE_ASSIGN(out.receipts.emplace_back(), seal::decode_receipt(one));
  }
  JAMBLINE_ASSIGN(out.entries, seal::decode_pack(reader.take(reader.left())));
  return out;
}

}  // namespace jambline::sync
