#include "hub/shop_audit.h"

#include "hub/shop_file.h"
#include "hub/shop_schema.h"
#include "sqlite/sqlite.h"

namespace jambline::hub {

namespace {
Error bad_place(Code code, std::uint64_t hub_seq, std::string cause) {
  return Error{code, "check", "entry", {}}
      .with("hub_seq", std::to_string(hub_seq))
      .with("cause", std::move(cause));
}
}  // namespace

struct ShopAudit::Row {
  std::uint64_t hub_seq{};
  std::uint16_t kind{};
  std::span<const std::uint8_t> bytes;
};

std::optional<Error> ShopAudit::look_at(const Row& row) {
  if (row.hub_seq != found_.through + 1)
    return bad_place(Code::ChainBroken, row.hub_seq, "one before it is gone");
  const auto entry = seal::decode_entry(row.bytes);
  if (!entry) return bad_place(entry.error().code, row.hub_seq, "its bytes");
  const auto& header = entry->header;
  const auto bad = [&](Code code, std::string cause) {
    return bad_place(code, row.hub_seq, std::move(cause))
        .with("device", header.device.hex())
        .with("seq", std::to_string(header.seq));
  };
  if (header.kind != row.kind)
    return bad(Code::DatabaseDamaged, "its columns are not those of its header");
  if (header.shop != shop_) return bad(Code::WrongShop, "header");
  if (const Status linked = walk_.next(header, entry->hash); !linked)
    return bad(linked.error().code, std::string(linked.error().arg("cause")));
  const seal::Member* member = members_.find(header.device);
  if (!member) return bad(Code::NotAdmitted, "no member of the shop");
  if (!seal::verify(member->key, entry->hash.bytes, entry->signature))
    return bad(Code::BadSignature, "signature");
  if (const Status payload = seal::check_payload(*entry); !payload)
    return bad(payload.error().code, "payload");
  if (entry->erased && header.kind <= seal::kind::payload_erased)
    return bad(Code::NotErasable, "payload");
  if (!members_.may(header.device, header.seq, entry->hash)) ++found_.after_cut;
  if (entry->erased) ++found_.erased;
  return std::nullopt;
}

Status ShopAudit::go_on(const std::stop_token& stop, bool pages) {
  using sqlite::Database;
  found_.stopped = false;
  if (found_.first_bad) return {};
  JAMBLINE_ASSIGN(Database database,
                  Database::open(folder_ / shop_file_name, Database::Mode::ReadOnly, {}));
  JAMBLINE_TRY(check_shop_schema(database));
  if (pages) {
    JAMBLINE_ASSIGN(const std::string said, database.text("PRAGMA quick_check(1)"));
    if (said != "ok") {
      found_.first_bad = Error{Code::DatabaseDamaged, "check", shop_file_name, {{"cause", said}}};
      return {};
    }
  }
  JAMBLINE_TRY(database.run("BEGIN"));  // one view from the first row to the last
  {
    JAMBLINE_ASSIGN(auto rows, database.prepare("SELECT bytes FROM entries WHERE kind BETWEEN 1 "
                                                "AND 4 ORDER BY hub_seq"));
    for (;;) {
      JAMBLINE_ASSIGN(const bool more, rows.step());
      if (!more) break;
      if (const auto entry = seal::decode_entry(rows.bytes(0))) (void)members_.apply(*entry);
    }
  }
  JAMBLINE_ASSIGN(auto rows, database.prepare("SELECT hub_seq, kind, bytes FROM entries "
                                              "WHERE hub_seq > ? ORDER BY hub_seq"));
  rows.bind(1, static_cast<std::int64_t>(found_.through));
  for (;;) {
    if (stop.stop_requested()) {
      found_.stopped = true;
      return {};
    }
    JAMBLINE_ASSIGN(const bool more, rows.step());
    if (!more) break;
    Row row;
    row.hub_seq = static_cast<std::uint64_t>(rows.number(0));
    row.kind = static_cast<std::uint16_t>(rows.number(1));
    row.bytes = rows.bytes(2);
    found_.first_bad = look_at(row);
    if (found_.first_bad) return {};
    found_.through = row.hub_seq;
    ++found_.entries;
  }

  JAMBLINE_ASSIGN(auto receipts,
                  database.prepare("SELECT hub_seq_last, receipts.bytes, entries.bytes, device, "
                                   "seq_last FROM receipts LEFT JOIN entries "
                                   "ON hub_seq = hub_seq_last WHERE hub_seq_last > ? "
                                   "ORDER BY hub_seq_last"));
  receipts.bind(1, receipts_through_);
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, receipts.step());
    if (!more) return {};
    const auto place = static_cast<std::uint64_t>(receipts.number(0));
    const auto receipt = seal::decode_receipt(receipts.bytes(1));
    const auto entry = seal::decode_entry(receipts.bytes(2));
    DeviceId device;
    if (!receipt)
      found_.first_bad = bad_place(receipt.error().code, place, "a receipt's bytes");
    else if (!seal::verify(*receipt) || receipt->shop != shop_ || receipt->hub != hub_)
      found_.first_bad = bad_place(Code::BadSignature, place, "a receipt is not this hub's");
    else if (!entry || entry->hash != receipt->hash)
      found_.first_bad =
          bad_place(Code::ChainBroken, place, "a receipt names it, and it is not so");
    else if (!receipts.read(3, device) || device != receipt->device ||
             static_cast<std::uint64_t>(receipts.number(4)) != receipt->seq)
      found_.first_bad =
          bad_place(Code::DatabaseDamaged, place, "a receipt's columns are not those it says");
    if (found_.first_bad) return {};
    receipts_through_ = receipts.number(0);
    ++found_.receipts;
  }
}

}  // namespace jambline::hub
