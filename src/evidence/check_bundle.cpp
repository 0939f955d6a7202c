#include "evidence/check_bundle.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/json.h"
#include "evidence/chain_reader.h"
#include "evidence/layout.h"
#include "evidence/zip_reader.h"
#include "seal/digest.h"
#include "seal/fingerprint.h"
#include "seal/membership.h"
#include "seal/receipt.h"
#include "seal/sign.h"

namespace jambline::evidence {

namespace {

constexpr std::size_t records_between_looks = 4096;
constexpr std::size_t most_name_signs = 100;

// Nothing that moves a cursor: the name is somebody else's.
std::string plain(std::string_view name) {
  std::string out(name.substr(0, most_name_signs));
  std::replace_if(
      out.begin(), out.end(), [](char sign) { return sign < ' ' || sign > '~'; }, '?');
  return out;
}

bool stays_whole(std::uint16_t kind) {
  return seal::is_membership(kind) || kind == seal::kind::payload_erased;
}

struct Chain {
  DeviceId device;
  std::size_t member{};
  std::optional<Hash> first_link;  // none: of the founder, or of nobody
  std::vector<Hash> admits;        // hashes of the DeviceAdmitted in it
};

class Checking {
 public:
  Checking(const ZipReader& zip, const std::optional<ShopId>& wanted, const std::stop_token& stop,
           const CheckProgress& progress)
      : zip_(zip), wanted_(wanted), stop_(stop), progress_(progress) {}

  Result<BundleFound> run() {
    // Each step only when nothing was wrong in the one before.
    JAMBLINE_TRY(look_at_names() ? look_at_members() : Status());
    if (good()) JAMBLINE_TRY(check_chains());
    if (good()) check_erasures();
    if (good()) check_receipts();
    if (good()) JAMBLINE_TRY(check_pictures());
    if (good()) JAMBLINE_TRY(check_rest());
    if (good() && wanted_ && found_.shop != *wanted_)
      found_.first_bad = Error{Code::WrongShop, "check", "bundle", {}};
    return std::move(found_);
  }

 private:
  bool good() const { return !found_.first_bad; }

  bool bad(Code code, const DeviceId& device, std::uint64_t seq, std::string cause) {
    found_.first_bad = Error{code, "check", "entry", {}}
                           .with("device", device.hex())
                           .with("seq", std::to_string(seq))
                           .with("cause", std::move(cause));
    return false;
  }
  bool bad_member(const std::string& name, std::string cause) {
    found_.first_bad = Error{Code::Malformed, "check", "bundle", {}}
                           .with("member", plain(name))
                           .with("cause", std::move(cause));
    return false;
  }

  bool look_at_names() {
    std::set<std::string> names;
    for (std::size_t i = 0; i < zip_.members().size(); ++i) {
      const ZipMember& member = zip_.members()[i];
      const MemberName name = read_member_name(member.name);
      if (name.kind == MemberKind::Unknown)
        return bad_member(member.name, "nothing of that name belongs in a bundle");
      if (!member.as_it_is) return bad_member(member.name, "it is compressed or encrypted");
      if (member.bytes > most_bytes_of(name.kind)) return bad_member(member.name, "it is too long");
      bool first = true;
      if (name.kind == MemberKind::Chain) {
        first = std::none_of(chains_.begin(), chains_.end(),
                             [&](const Chain& chain) { return chain.device == name.device; });
        chains_.push_back({name.device, i, std::nullopt, {}});
      } else if (name.kind == MemberKind::Picture) {
        first = pictures_.emplace(name.picture, i).second;
      } else {
        first = names.insert(member.name).second;
        if (name.kind == MemberKind::Receipts)
          receipts_member_ = i;
        else
          rest_.push_back(i);
      }
      if (!first) return bad_member(member.name, "it is there twice");
      all_bytes_ += member.bytes;
    }
    std::sort(chains_.begin(), chains_.end(),
              [](const Chain& a, const Chain& b) { return a.device < b.device; });
    return true;
  }

  // Who belongs, which job it is, and the order of admission; what does not decode is left to
  // check_chains(), which names it.
  Status look_at_members() {
    std::vector<seal::SealedEntry> claims;
    for (Chain& chain : chains_) {
      JAMBLINE_ASSIGN(MemberReader member, zip_.read(chain.member));
      ChainReader reader(std::move(member));
      for (std::uint64_t count = 0;; ++count) {
        JAMBLINE_TRY(look(count));
        auto record = reader.next();
        if (!record || !*record) break;
        auto& entry = (*record)->entry;
        if (count == 0 && entry.header.seq == 1 && entry.header.prev_hash &&
            entry.header.kind != seal::kind::shop_founded)
          chain.first_link = entry.header.prev_hash;
        if ((*record)->form != Form::Whole) continue;
        if (entry.header.kind == seal::kind::device_admitted) chain.admits.push_back(entry.hash);
        if (!stays_whole(entry.header.kind) && entry.header.subject && !found_.job)
          found_.job = entry.header.subject;
        if (seal::is_membership(entry.header.kind)) claims.push_back(std::move(entry));
      }
    }
    // The founder's first: they say which shop it is.
    std::stable_sort(claims.begin(), claims.end(),
                     [](const auto& a, const auto& b) { return a.header.kind < b.header.kind; });
    for (const auto& claim : claims) (void)members_.apply(claim);
    found_.shop = members_.shop();
    order_by_admission();
    return read_receipts();
  }

  // A device after the one that let it in, so that a changed admission is named before all that
  // hangs on it. Those that nobody let in come last.
  void order_by_admission() {
    std::set<Hash> there;
    for (auto done = chains_.begin(); done != chains_.end(); ++done) {
      auto next = std::find_if(done, chains_.end(), [&](const Chain& chain) {
        return !chain.first_link || there.contains(*chain.first_link);
      });
      if (next == chains_.end()) next = done;
      there.insert(next->admits.begin(), next->admits.end());
      std::rotate(done, next, next + 1);
    }
  }

  Status read_receipts() {
    if (!receipts_member_) return {};
    JAMBLINE_ASSIGN(MemberReader member, zip_.read(*receipts_member_));
    for (;;) {
      std::array<std::uint8_t, seal::receipt_bytes> bytes;
      std::size_t have = 0;
      while (have < bytes.size()) {
        const auto got = member.read(std::span(bytes).subspan(have));
        if (!got) {
          receipts_error_ = got.error();
          return {};
        }
        if (*got == 0) break;
        have += *got;
      }
      done_bytes_ += have;
      if (have == 0) return {};
      receipts_.emplace_back(std::span(bytes).first(have).begin(),
                             std::span(bytes).first(have).end());
      if (const auto receipt = seal::decode_receipt(receipts_.back()))
        named_.emplace(std::pair(receipt->device, receipt->seq), Hash{});
    }
  }

  Status check_chains() {
    for (const Chain& chain : chains_) {
      JAMBLINE_TRY(check_chain(chain));
      if (!good()) return {};
    }
    for (const auto& member : members_.devices())
      if (std::none_of(chains_.begin(), chains_.end(),
                       [&](const Chain& chain) { return chain.device == member.first; }))
        found_.heads.push_back({member.first, 0});
    if (!found_.job) {
      found_.first_bad = Error{Code::Missing, "check", "bundle", {}}.with(
          "cause",
          chains_.empty() ? "there are no entries in it" : "no entry of a job is whole in it");
    }
    return {};
  }

  Status check_chain(const Chain& chain) {
    JAMBLINE_ASSIGN(MemberReader member, zip_.read(chain.member));
    ChainReader reader(std::move(member));
    std::uint64_t seq = 0;
    std::uint64_t proven = 0;
    std::optional<Record> before;
    auto current = reader.next();
    while (good()) {
      JAMBLINE_TRY(look(seq));
      if (!current) {
        unreadable(chain, seq + 1, current.error());
        break;
      }
      if (!*current) break;
      ++seq;
      auto after = reader.next();
      const Record* next = after && *after ? &**after : nullptr;
      const Record& record = **current;
      if (check_record(chain, seq, record, before ? &*before : nullptr, next)) {
        if (record.is_signed())
          proven = seq;
        else if (after && !*after)
          bad(Code::Missing, chain.device, seq, "it is the last one here and has no signature");
      }
      before = std::move(**current);
      current = std::move(after);
    }
    if (good() && seq == 0) bad_member(chain_name(chain.device), "there is nothing in it");
    found_.heads.push_back({chain.device, proven});
    step(zip_.members()[chain.member].bytes);
    return {};
  }

  void unreadable(const Chain& chain, std::uint64_t seq, const Error& error) {
    if (error.code == Code::BadHash || error.code == Code::FileFailed)
      bad_member(chain_name(chain.device), std::string(error.arg("cause")));
    else
      bad(Code::Malformed, chain.device, seq, "its bytes are no entry and no header");
  }

  bool check_record(const Chain& chain, std::uint64_t seq, const Record& record,
                    const Record* before, const Record* after) {
    const auto& entry = record.entry;
    const auto& header = entry.header;
    const DeviceId& device = chain.device;
    if (header.device != device)
      return bad(Code::ChainBroken, device, seq, "another device's entry stands in its place");
    if (header.seq != seq) return bad(Code::ChainBroken, device, seq, "it is not here");
    if (found_.shop && header.shop != found_.shop)
      return bad(Code::WrongShop, device, seq, "it is of another shop");
    if (record.form != Form::Whole && stays_whole(header.kind))
      return bad(Code::Missing, device, seq,
                 "only its header is here, and its kind has to be whole");
    if (record.form != Form::Whole && header.subject && header.subject == found_.job)
      return bad(Code::Missing, device, seq, "it is of this job and only its header is here");
    if (record.form == Form::Whole && !check_payload(device, seq, entry)) return false;
    if (!check_link(device, seq, record, before, after)) return false;
    const seal::Member* member = members_.find(device);
    if (!member) return bad(Code::NotAdmitted, device, seq, "its device is no member of the shop");
    if (record.is_signed() && !seal::verify(member->key, entry.hash.bytes, entry.signature))
      return bad(Code::BadSignature, device, seq, "its signature does not verify");
    const Status may = members_.may(device, seq, entry.hash);
    if (!may && may.error().code != Code::Revoked)
      return bad(may.error().code, device, seq, "another one stood where its device was cut off");
    if (record.form == Form::Whole && !stays_whole(header.kind) && header.subject &&
        header.subject != found_.job)
      return bad(Code::Malformed, device, seq, "it is whole and of another job");
    count(record, !may);
    return true;
  }

  bool check_payload(const DeviceId& device, std::uint64_t seq, const seal::SealedEntry& entry) {
    if (entry.erased && stays_whole(entry.header.kind))
      return bad(Code::NotErasable, device, seq, "its payload may not be missing");
    if (!seal::check_payload(entry))
      return bad(Code::BadHash, device, seq, "its payload is another one");
    return true;
  }

  // Where two do not fit, the one is named that is not what was signed.
  bool check_link(const DeviceId& device, std::uint64_t seq, const Record& record,
                  const Record* before, const Record* after) {
    const auto& entry = record.entry;
    if (!before) {
      if (members_.first_link(device, entry.header.prev_hash)) return true;
      return bad(Code::ChainBroken, device, seq, "it does not follow from its device's admission");
    }
    if (entry.header.prev_hash == before->entry.hash) return true;
    const seal::Member* member = members_.find(device);
    bool is_genuine = false;
    if (record.is_signed())
      is_genuine = member && seal::verify(member->key, entry.hash.bytes, entry.signature);
    else if (!before->is_signed())
      is_genuine = after && after->entry.header.prev_hash == entry.hash;
    if (is_genuine)
      return bad(Code::ChainBroken, device, seq - 1, "the entry after it names another one");
    return bad(Code::ChainBroken, device, seq, "it does not name the entry before it");
  }

  void count(const Record& record, bool is_cut) {
    const auto& entry = record.entry;
    const auto& header = entry.header;
    if (const auto wanted = named_.find({header.device, header.seq}); wanted != named_.end())
      wanted->second = entry.hash;
    if (record.form != Form::Whole) {
      ++found_.bare;
      return;
    }
    if (stays_whole(header.kind) || !header.subject)
      ++found_.others;
    else
      ++found_.entries;
    if (header.kind == seal::kind::payload_erased)
      if (const auto erasure = from_json<seal::PayloadErased>(entry.payload))
        targets_.insert(erasure->target);
    const bool is_of_job = header.subject && header.subject == found_.job;
    if (is_cut && is_of_job && !stays_whole(header.kind)) ++found_.after_cut;
    if (entry.erased) {
      ++found_.erased;
      erased_.emplace_back(entry.hash, header);
    } else if (is_of_job && header.kind == picture_kind) {
      if (const auto picture = named_picture(entry.payload))
        wanted_pictures_.emplace(*picture, std::pair(header.device, header.seq));
    }
  }

  void check_erasures() {
    for (const auto& [hash, header] : erased_)
      if (!targets_.contains(hash)) {
        bad(Code::BadHash, header.device, header.seq, "its payload is gone and no entry says so");
        return;
      }
  }

  void check_receipts() {
    for (const auto& bytes : receipts_) {
      const auto receipt = seal::decode_receipt(bytes);
      if (!receipt || receipt->shop != found_.shop || !members_.hubs().contains(receipt->hub) ||
          !seal::verify(*receipt)) {
        bad_receipt(receipt ? &*receipt : nullptr, Code::BadSignature,
                    "it is of no hub of this shop, or was changed");
        return;
      }
      if (named_.at({receipt->device, receipt->seq}) != receipt->hash) {
        bad_receipt(&*receipt, Code::ChainBroken, "the entry that it names is not here");
        return;
      }
      ++found_.receipts;
    }
    if (receipts_error_)
      bad_member(std::string(receipts_name), std::string(receipts_error_->arg("cause")));
  }

  void bad_receipt(const seal::Receipt* receipt, Code code, std::string cause) {
    found_.first_bad =
        Error{code, "check", "receipt", {}}.with("place", std::to_string(found_.receipts + 1));
    if (receipt) {
      found_.first_bad->args.emplace_back("device", receipt->device.hex());
      found_.first_bad->args.emplace_back("seq", std::to_string(receipt->seq));
    }
    found_.first_bad->args.emplace_back("cause", std::move(cause));
  }

  Status check_pictures() {
    for (const auto& [picture, by] : wanted_pictures_) {
      const auto at = pictures_.find(picture);
      if (at == pictures_.end()) {
        bad_picture(picture, by, Code::Missing, "it is not here");
        return {};
      }
      JAMBLINE_ASSIGN(const Hash found, hash_of(at->second));
      if (!good()) return {};
      if (found != picture) {
        bad_picture(picture, by, Code::BadHash, "its bytes are other ones");
        return {};
      }
      ++found_.pictures;
      found_.picture_bytes += zip_.members()[at->second].bytes;
    }
    for (const auto& [picture, member] : pictures_)
      if (!wanted_pictures_.contains(picture)) {
        bad_member(zip_.members()[member].name, "no entry of the job names it");
        return {};
      }
    return {};
  }

  void bad_picture(const Hash& picture, const std::pair<DeviceId, std::uint64_t>& by, Code code,
                   std::string cause) {
    found_.first_bad = Error{code, "check", "picture", {}}
                           .with("picture", picture.hex())
                           .with("device", by.first.hex())
                           .with("seq", std::to_string(by.second))
                           .with("cause", std::move(cause));
  }

  // Bytes first: what was changed is named by its own hash and not by the ZIP's checksum.
  Result<Hash> hash_of(std::size_t member) {
    JAMBLINE_ASSIGN(MemberReader reader, zip_.read(member));
    seal::Sha256 sha;
    std::vector<std::uint8_t> piece(64U << 10U);
    for (;;) {
      if (stop_.stop_requested()) return fail(Code::Stopped, "check", "bundle");
      const auto got = reader.read(piece);
      if (!got) {
        const Hash found = sha.finish();
        if (read_member_name(zip_.members()[member].name).picture == found)
          bad_member(zip_.members()[member].name, std::string(got.error().arg("cause")));
        return found;
      }
      if (*got == 0) return sha.finish();
      sha.add(std::span(piece).first(*got));
      step(*got);
    }
  }

  // What proves nothing has to be readable, no more.
  Status check_rest() {
    std::vector<std::uint8_t> piece(64U << 10U);
    for (const std::size_t member : rest_) {
      JAMBLINE_ASSIGN(MemberReader reader, zip_.read(member));
      for (;;) {
        const auto got = reader.read(piece);
        if (!got) {
          bad_member(zip_.members()[member].name, std::string(got.error().arg("cause")));
          return {};
        }
        if (*got == 0) break;
      }
    }
    return {};
  }

  Status look(std::uint64_t count) {
    if (count % records_between_looks != 0) return {};
    if (stop_.stop_requested()) return fail(Code::Stopped, "check", "bundle");
    return {};
  }
  void step(std::uint64_t bytes) {
    done_bytes_ += bytes;
    if (progress_ && all_bytes_ > 0)
      progress_(std::min(1.0, static_cast<double>(done_bytes_) / static_cast<double>(all_bytes_)));
  }

  const ZipReader& zip_;
  const std::optional<ShopId>& wanted_;
  const std::stop_token& stop_;
  const CheckProgress& progress_;
  BundleFound found_;
  std::vector<Chain> chains_;
  std::map<Hash, std::size_t> pictures_;  // and the member that has each
  std::optional<std::size_t> receipts_member_;
  std::vector<std::size_t> rest_;
  seal::Members members_;
  std::vector<std::vector<std::uint8_t>> receipts_;
  std::optional<Error> receipts_error_;
  std::map<std::pair<DeviceId, std::uint64_t>, Hash> named_;  // by receipts; the hash that is here
  std::map<Hash, std::pair<DeviceId, std::uint64_t>> wanted_pictures_;
  std::vector<std::pair<Hash, seal::Header>> erased_;
  std::set<Hash> targets_;
  std::uint64_t all_bytes_ = 0;
  std::uint64_t done_bytes_ = 0;
};

}  // namespace

Result<BundleFound> check_bundle(const std::filesystem::path& file,
                                 const std::optional<ShopId>& wanted, const std::stop_token& stop,
                                 const CheckProgress& progress) {
  JAMBLINE_ASSIGN(const ZipReader zip, ZipReader::open(file));
  return Checking(zip, wanted, stop, progress).run();
}

Result<BundleFound> check_bundle(std::span<const std::uint8_t> bytes,
                                 const std::optional<ShopId>& wanted) {
  JAMBLINE_ASSIGN(const ZipReader zip, ZipReader::open(bytes));
  const std::stop_token never;
  const CheckProgress silent;
  return Checking(zip, wanted, never, silent).run();
}

std::string lines_of(const BundleFound& found) {
  const auto number = [](std::uint64_t value) { return std::to_string(value); };
  std::string out;
  if (found.shop) out += "shop   " + seal::fingerprint(found.shop) + "\n";
  if (found.job) out += "job    " + found.job.hex() + "\n";
  for (const auto& head : found.heads)
    out += "device " + head.device.hex() + ": " +
           (head.seq == 0 ? "nothing of it is proven"
                          : "proven up to entry " + number(head.seq) +
                                ", nothing can be said about later ones") +
           "\n";
  out += number(found.entries) + " entries of the job, " + number(found.erased) +
         " of them with erased payload; " + number(found.others) + " of the shop, " +
         number(found.bare) + " bare headers, " + number(found.receipts) + " receipts, " +
         number(found.pictures) + " pictures\n";
  if (found.after_cut > 0)
    out += number(found.after_cut) + " of the job came after their device's cut and do not count\n";
  out += "report.txt, FORMAT.md, BUNDLE.md and verify_bundle.py are no evidence\n";
  return out;
}

}  // namespace jambline::evidence
