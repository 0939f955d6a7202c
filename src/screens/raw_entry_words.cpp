#include "screens/raw_entry_words.h"

#include <QCoreApplication>

#include "screens/text.h"
#include "screens/units.h"

namespace jambline::screens {

namespace {
QString raw_tr(const char* text) {
  return QCoreApplication::translate("raw entry", text);
}

class RawFields {
 public:
  void add(const char* field, const QString& value) {
    out_ += QLatin1String(field) + QStringLiteral(": ") + value + QChar('\n');
  }
  template <std::size_t N, class Tag>
  void add(const char* field, const Bytes<N, Tag>& bytes) {
    add(field, hex(bytes));
  }
  template <class Number>
  requires std::is_integral_v<Number>
  void add(const char* field, Number number) { add(field, QString::number(number)); }
  QString text() const { return out_; }

 private:
  QString out_;
};
}  // namespace

QString raw_text(const engine::RawEntry& raw) {
  const auto& entry = raw.sealed;
  const auto& header = entry.header;
  RawFields out;
  out.add("entry_hash", entry.hash);
  out.add("shop", header.shop);
  out.add("device", header.device);
  out.add("seq", header.seq);
  out.add("prev_hash", header.prev_hash);
  out.add("subject", header.subject);
  out.add("hlc", header.hlc);
  out.add("wall_ms", header.wall_ms);
  out.add("offset_min", int{header.offset_min});
  out.add("clock_flags", int{header.clock_flags});
  out.add("boot", header.boot);
  out.add("boottime_ms", header.boottime_ms);
  out.add("person", header.person);
  out.add("action", header.action);
  out.add("part", QStringLiteral("%1 / %2").arg(header.part).arg(header.parts));
  out.add("kind", int{header.kind});
  out.add("schema", int{header.schema});
  out.add("payload_bytes", header.payload_bytes);
  out.add("payload_hash", header.payload_hash);
  const auto bytes = seal::encode(header);
  out.add("header", QString::fromLatin1(QByteArray(reinterpret_cast<const char*>(bytes.data()),
                                                   static_cast<qsizetype>(bytes.size()))
                                            .toHex()));
  out.add("signature", entry.signature);
  out.add("salt", entry.salt);
  out.add("payload", entry.erased ? raw_tr("erased") : text(entry.payload));
  for (const auto& one : raw.received) {
    const auto& receipt = one.receipt;
    out.add("receipt_hub", receipt.hub);
    out.add("receipt_epoch", receipt.epoch);
    out.add("receipt_seq", receipt.seq);
    out.add("receipt_hash", receipt.hash);
    out.add("receipt_hub_seq",
            QStringLiteral("%1 .. %2").arg(receipt.hub_seq_first).arg(receipt.hub_seq_last));
    out.add("receipt_received_ms", receipt.received_ms);
    out.add("receipt_signature", receipt.signature);
  }
  return out.text();
}

QString signature_words(const engine::RawEntry& raw) {
  if (raw.device_name.empty()) return raw_tr("Not verified: its device is no member of the shop.");
  if (!raw.signature_good) return raw_tr("Not verified: the signature is not that of its device.");
  if (!raw.payload_good) return raw_tr("Not verified: what it says is not what was signed.");
  return raw_tr("Verified: signed by %1.").arg(text(raw.device_name));
}

QStringList receipt_words(const engine::RawEntry& raw, const QString& zone) {
  QStringList out;
  for (const auto& one : raw.received) {
    const auto& receipt = one.receipt;
    const QString hub =
        one.hub_name.empty() ? raw_tr("a hub that is not of this shop") : text(one.hub_name);
    const QString when = raw_tr("%1 %2").arg(day_words(receipt.received_ms, zone),
                                             clock_words(receipt.received_ms, zone));
    QString line =
        one.hub_seq
            ? raw_tr("Received by %1 as its number %2, %3").arg(hub).arg(*one.hub_seq).arg(when)
            : raw_tr("Received by %1 with a later entry, %2").arg(hub, when);
    line += raw_tr(", in its life %1").arg(hex(receipt.epoch).left(8));
    if (!one.signature_good) line += raw_tr("; the receipt's signature is wrong");
    out << line + QChar('.');
  }
  if (out.isEmpty()) out << raw_tr("No receipt of a hub yet: this device's word alone.");
  return out;
}

}  // namespace jambline::screens
