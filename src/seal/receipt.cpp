#include "seal/receipt.h"

#include "seal/digest.h"
#include "seal/wire.h"

namespace jambline::seal {

namespace {
constexpr std::uint8_t receipt_format = 1;

template <class Self, class Visit>
void receipt_fields(Self& self, Visit& visit) {
  visit.bytes(self.shop);
  visit.bytes(self.hub);
  visit.bytes(self.epoch);
  visit.bytes(self.device);
  visit.number(self.seq);
  visit.bytes(self.hash);
  visit.number(self.hub_seq_first);
  visit.number(self.hub_seq_last);
  visit.number(self.received_ms);
}

Hash signed_hash(const Receipt& receipt) {
  const std::string bytes = encode(receipt);
  return Sha256().add(tag::receipt).add(bytes_of(bytes).first(receipt_signed_bytes)).finish();
}

Error refusal(Code code, std::string cause) {
  return Error{code, "check", "receipt", {}}.with("field", std::move(cause));
}
}  // namespace

void sign(Receipt& receipt, const SigningKey& hub) {
  receipt.hub = hub.key();
  receipt.signature = hub.sign(signed_hash(receipt));
}

std::string encode(const Receipt& receipt) {
  std::string out(receipt_bytes, '\0');
  ByteWriter writer(reinterpret_cast<std::uint8_t*>(out.data()));
  writer.number(receipt_format);
  receipt_fields(receipt, writer);
  writer.bytes(receipt.signature);
  return out;
}

Result<Receipt> decode_receipt(std::span<const std::uint8_t> bytes) {
  ByteReader reader(bytes);
  std::uint8_t format = 0;
  Receipt receipt;
  reader.number(format);
  receipt_fields(receipt, reader);
  reader.bytes(receipt.signature);
  if (!reader.ok() || reader.left() != 0) return fail(refusal(Code::Malformed, "length"));
  if (format != receipt_format) return fail(refusal(Code::Malformed, "format"));
  if (receipt.seq < 1 || receipt.seq > last_seq) return fail(refusal(Code::Malformed, "seq"));
  if (receipt.hub_seq_first > receipt.hub_seq_last)
    return fail(refusal(Code::Malformed, "hub_seq"));
  return receipt;
}

bool verify(const Receipt& receipt) {
  return verify(receipt.hub, signed_hash(receipt).bytes, receipt.signature);
}

Status check(const Receipt& receipt, const ReceiptWanted& wanted) {
  if (!verify(receipt)) return fail(refusal(Code::BadSignature, "signature"));
  if (receipt.shop != wanted.shop) return fail(refusal(Code::WrongShop, "shop"));
  if (receipt.hub != wanted.hub) return fail(refusal(Code::Unknown, "hub"));
  if (receipt.epoch != wanted.epoch) return fail(refusal(Code::Unknown, "epoch"));
  if (receipt.device != wanted.device) return fail(refusal(Code::Unknown, "device"));
  return {};
}

}  // namespace jambline::seal
