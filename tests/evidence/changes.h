// tests/evidence/changes.h: what somebody may do to a bundle, one function a change, each from a
// seed; each says what has to be named.
#pragma once

#include "seal/receipt.h"
#include "tests/evidence/bundle_parts.h"
#include "tests/evidence/seeded_shop.h"

namespace jambline::evidence {

// The words that both checks have to give; several: one of them.
using Named = std::vector<std::string>;

inline std::string entry_words(const DeviceId& device, std::uint64_t seq) {
  return "device " + device.hex() + ", seq " + std::to_string(seq) + ":";
}
inline std::string entry_words(const Record& record) {
  return entry_words(record.entry.header.device, record.entry.header.seq);
}

class Changer {
 public:
  Changer(const SeededShop& shop, BundleParts& parts, SeededRandom& random)
      : shop_(shop), parts_(parts), random_(random) {}

  using Change = Named (Changer::*)();
  static const std::vector<std::pair<const char*, Change>>& all();

 private:
  struct Place {
    std::string chain;
    std::vector<std::string> records;
    std::size_t at = 0;
    Record record() const { return decoded(records[at]); }
  };
  void put(const Place& place) { parts_.bytes(place.chain) = chain_of(place.records); }

  // A record for which `fits`, of any device.
  template <class Fits>
  Place pick(const Fits& fits) {
    std::vector<Place> all;
    for (const auto& chain : parts_.names(chain_folder)) {
      const auto records = records_of(parts_.bytes(chain));
      for (std::size_t at = 0; at < records.size(); ++at) {
        Place place{chain, records, at};
        if (fits(decoded(records[at]), at + 1 == records.size())) all.push_back(std::move(place));
      }
    }
    if (all.empty()) {
      ADD_FAILURE() << "nothing fits";
      std::abort();
    }
    return all[random_.below(all.size())];
  }
  Place pick_whole() {
    return pick([](const Record& record, bool) { return record.form == Form::Whole; });
  }
  static bool is_of_job(const Record& record) {
    return record.form == Form::Whole && record.entry.header.subject &&
           record.entry.header.kind > seal::kind::payload_erased;
  }
  void flip(std::string& bytes, std::size_t from, std::size_t count) {
    const std::size_t place = from + random_.below(count);
    bytes[place] = static_cast<char>(bytes[place] ^ (1 << random_.below(8)));
  }

  Named flip_whole_header() {
    Place place = pick_whole();
    const Named named{entry_words(place.record())};
    flip(place.records[place.at], 0, seal::header_bytes);
    put(place);
    return named;
  }
  Named flip_bare_header() {
    Place place = pick([](const Record& record, bool) { return record.form != Form::Whole; });
    const Named named{entry_words(place.record())};
    flip(place.records[place.at], 0, seal::header_bytes);
    put(place);
    return named;
  }
  Named flip_signature() {
    Place place = pick([](const Record& record, bool) { return record.is_signed(); });
    const Named named{entry_words(place.record())};
    flip(place.records[place.at], seal::header_bytes, seal::Signature::size);
    put(place);
    return named;
  }
  Named flip_salt() {
    Place place = pick([](const Record& record, bool) {
      return record.form == Form::Whole && !record.entry.erased;
    });
    const Named named{entry_words(place.record())};
    flip(place.records[place.at], signed_header_bytes + 1, seal::Salt::size);
    put(place);
    return named;
  }
  Named flip_payload() {
    Place place = pick([](const Record& record, bool) { return !record.entry.payload.empty(); });
    const Named named{entry_words(place.record())};
    flip(place.records[place.at], seal::entry_fixed_bytes,
         place.records[place.at].size() - seal::entry_fixed_bytes);
    put(place);
    return named;
  }
  Named flip_flag() {
    Place place = pick_whole();
    const Named named{entry_words(place.record())};
    place.records[place.at][signed_header_bytes] ^= 1;
    put(place);
    return named;
  }
  Named swap_neighbours() {
    Place place = pick([](const Record&, bool last) { return !last; });
    const Named named{entry_words(place.record())};
    std::swap(place.records[place.at], place.records[place.at + 1]);
    put(place);
    return named;
  }
  Named leave_out(Place place) {
    const Named named{entry_words(place.record())};
    place.records.erase(place.records.begin() + static_cast<std::ptrdiff_t>(place.at));
    put(place);
    return named;
  }
  Named leave_out_entry() {
    return leave_out(
        pick([](const Record& record, bool last) { return !last && is_of_job(record); }));
  }
  Named leave_out_bare() {
    return leave_out(
        pick([](const Record& record, bool last) { return !last && record.form == Form::Bare; }));
  }
  Named leave_out_membership() {
    return leave_out(pick([](const Record& record, bool last) {
      return !last && record.form == Form::Whole && !is_of_job(record);
    }));
  }
  // What was said is taken out, and its header left.
  Named strip_entry() {
    Place place = pick([](const Record& record, bool) { return record.form == Form::Whole; });
    const Named named{entry_words(place.record())};
    place.records[place.at].resize(random_.below(2) == 0 ? seal::header_bytes
                                                         : signed_header_bytes);
    put(place);
    return named;
  }
  Named say_erased() {
    Place place =
        pick([](const Record& record, bool) { return is_of_job(record) && !record.entry.erased; });
    const Named named{entry_words(place.record())};
    seal::SealedEntry entry = place.record().entry;
    entry.erased = true;
    place.records[place.at] = seal::encode(entry);
    put(place);
    return named;
  }
  Named add_record_twice() {
    Place place = pick([](const Record&, bool) { return true; });
    const auto header = place.record().entry.header;
    place.records.insert(place.records.begin() + static_cast<std::ptrdiff_t>(place.at),
                         place.records[place.at]);
    put(place);
    return {entry_words(header.device, header.seq + 1)};
  }

  // Another key in the place of a member's, the payload's hash made to fit, as far as nobody looks
  // at signatures.
  Named replace_key() {
    Place place = pick([](const Record& record, bool) {
      const auto kind = record.entry.header.kind;
      return kind == seal::kind::shop_founded || kind == seal::kind::device_admitted ||
             kind == seal::kind::hub_admitted;
    });
    const Named named{entry_words(place.record())};
    seal::SealedEntry entry = place.record().entry;
    const seal::SigningKey other = log::key_number(77);
    const auto key_at = entry.payload.find("_key\":\"") + 7;
    entry.payload.replace(key_at, 64, other.key().hex());
    const auto how = random_.below(3);
    if (how > 0) entry.header.payload_hash = seal::payload_hash(entry.salt, entry.payload);
    if (how > 1) entry.signature = other.sign(seal::entry_hash(seal::encode(entry.header)));
    place.records[place.at] = seal::encode(entry);
    put(place);
    return named;
  }

  Named change_photograph() {
    const auto names = parts_.names(pictures_folder);
    const auto& name = names[random_.below(names.size())];
    std::string& bytes = parts_.bytes(name);
    flip(bytes, 0, bytes.size());
    return {"picture " + name.substr(pictures_folder.size(), 64)};
  }
  Named exchange_photograph() {
    const auto names = parts_.names(pictures_folder);
    const auto one = random_.below(names.size() - 1);
    std::swap(parts_.bytes(names[one]), parts_.bytes(names[one + 1]));
    return {"picture " + names[one].substr(pictures_folder.size(), 64)};
  }
  Named leave_out_photograph() {
    const auto names = parts_.names(pictures_folder);
    const auto& name = names[random_.below(names.size())];
    parts_.remove(name);
    return {"picture " + name.substr(pictures_folder.size(), 64)};
  }
  Named add_photograph() {
    const std::string bytes = "a picture of another car";
    const std::string name =
        picture_name(seal::sha256(seal::bytes_of(bytes)), seal::bytes_of(bytes));
    parts_.members.emplace_back(name, bytes);
    return {"member " + name};
  }

  Named replace_receipt() {
    std::string& all = parts_.bytes(std::string(receipts_name));
    const std::size_t count = all.size() / seal::receipt_bytes;
    const std::size_t which = random_.below(count);
    std::string one = all.substr(which * seal::receipt_bytes, seal::receipt_bytes);
    auto receipt = log::must(seal::decode_receipt(seal::bytes_of(one)));
    switch (random_.below(3)) {
      case 0:
        flip(one, 0, one.size());
        break;
      case 1:  // by a hub of his own
        seal::sign(receipt, log::key_number(78));
        one = seal::encode(receipt);
        break;
      default:  // for an entry that never was, by the hub
        receipt.hash.bytes[0] ^= 1;
        seal::sign(receipt, shop_.hub);
        one = seal::encode(receipt);
    }
    all.replace(which * seal::receipt_bytes, seal::receipt_bytes, one);
    return {"receipt " + std::to_string(which + 1)};
  }

  // Back to a whole entry, which is signed: so nothing but a receipt shows it.
  Named drop_tail_before_receipt() {
    const auto& shop = shop_;
    Place place = pick([&](const Record& record, bool) {
      const auto& header = record.entry.header;
      return record.is_signed() && header.device != shop.first.device() &&
             header.seq < shop.received.at(header.device);
    });
    place.records.resize(place.at + 1);
    put(place);
    const auto device = place.record().entry.header.device;
    Named named;
    for (std::uint64_t seq = place.at + 2; seq <= shop_.received.at(device); ++seq)
      named.push_back(entry_words(device, seq));
    return named;
  }
  Named drop_chain() {
    const auto device = random_.below(2) == 0 ? shop_.second.device() : shop_.third.device();
    parts_.remove(chain_name(device));
    Named named;
    for (std::uint64_t seq = 1; seq <= shop_.received.at(device); ++seq)
      named.push_back(entry_words(device, seq));
    return named;
  }

  const SeededShop& shop_;
  BundleParts& parts_;
  SeededRandom& random_;
};

inline const std::vector<std::pair<const char*, Changer::Change>>& Changer::all() {
  static const std::vector<std::pair<const char*, Change>> changes{
      {"a bit in a header of a whole entry", &Changer::flip_whole_header},
      {"a bit in a bare header", &Changer::flip_bare_header},
      {"a bit in a signature", &Changer::flip_signature},
      {"a bit in a salt", &Changer::flip_salt},
      {"a bit in a payload", &Changer::flip_payload},
      {"the flag of an erased payload", &Changer::flip_flag},
      {"two neighbours swapped", &Changer::swap_neighbours},
      {"an entry of the job left out", &Changer::leave_out_entry},
      {"a bare header left out", &Changer::leave_out_bare},
      {"an entry of the shop left out", &Changer::leave_out_membership},
      {"an entry stripped to its header", &Changer::strip_entry},
      {"an entry said to be erased", &Changer::say_erased},
      {"a record twice", &Changer::add_record_twice},
      {"a key replaced", &Changer::replace_key},
      {"a photograph changed", &Changer::change_photograph},
      {"two photographs exchanged", &Changer::exchange_photograph},
      {"a photograph left out", &Changer::leave_out_photograph},
      {"a photograph more", &Changer::add_photograph},
      {"a receipt replaced", &Changer::replace_receipt},
      {"the tail dropped before the last receipt", &Changer::drop_tail_before_receipt},
      {"a device's chain dropped", &Changer::drop_chain}};
  return changes;
}

}  // namespace jambline::evidence
