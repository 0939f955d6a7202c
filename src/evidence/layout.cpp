#include "evidence/layout.h"

#include <algorithm>

#include "base/json.h"
#include "evidence/bundled_texts.h"
#include "seal/wire.h"

namespace jambline::evidence {

namespace {
struct NamedFile {
  Hash file;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "file"}, self.file);
  }
};
struct NamesFile {
  NamedFile facts;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "facts"}, self.facts);
  }
};

constexpr std::size_t most_ending_signs = 4;

// Nothing, or a dot and one to four small letters.
bool is_ending(std::string_view text) {
  if (text.empty()) return true;
  const auto letters = text.substr(1);
  return text[0] == '.' && !letters.empty() && letters.size() <= most_ending_signs &&
         std::all_of(letters.begin(), letters.end(),
                     [](char sign) { return sign >= 'a' && sign <= 'z'; });
}

// from_hex takes capitals too; a name has one form only.
template <class Name>
std::optional<Name> parse_name(std::string_view text) {
  const auto name = Name::parse(text);
  if (!name || name->hex() != text) return std::nullopt;
  return name;
}
}  // namespace

MemberName read_member_name(std::string_view name) {
  MemberName out;
  if (name == receipts_name) {
    out.kind = MemberKind::Receipts;
  } else if (name == report_name ||
             std::any_of(bundled_texts().begin(), bundled_texts().end(),
                         [&](const BundledText& text) { return text.name == name; })) {
    out.kind = MemberKind::NoEvidence;
  } else if (name.starts_with(chain_folder)) {
    if (const auto device = parse_name<DeviceId>(name.substr(chain_folder.size()))) {
      out.kind = MemberKind::Chain;
      out.device = *device;
    }
  } else if (name.starts_with(pictures_folder)) {
    const auto rest = name.substr(pictures_folder.size());
    const auto picture = parse_name<Hash>(rest.substr(0, 2 * Hash::size));
    if (picture && is_ending(rest.substr(2 * Hash::size))) {
      out.kind = MemberKind::Picture;
      out.picture = *picture;
    }
  }
  return out;
}

std::uint64_t most_bytes_of(MemberKind kind) {
  switch (kind) {
    case MemberKind::Receipts:
      return most_receipts_bytes;
    case MemberKind::Chain:
      return most_chain_bytes;
    case MemberKind::Picture:
      return most_picture_bytes;
    case MemberKind::NoEvidence:
    case MemberKind::Unknown:
      return most_text_bytes;
  }
  return 0;
}

std::string chain_name(const DeviceId& device) {
  return std::string(chain_folder) + device.hex();
}

std::string picture_name(const Hash& picture, std::span<const std::uint8_t> first_bytes) {
  std::string out = std::string(pictures_folder) + picture.hex();
  if (first_bytes.size() < 4) return out;
  if (first_bytes[0] == 0xff && first_bytes[1] == 0xd8) out += ".jpg";
  if (first_bytes[0] == 0x89 && first_bytes[1] == 'P' && first_bytes[2] == 'N') out += ".png";
  return out;
}

std::string encode_record(Form form, const seal::SealedEntry& entry) {
  std::string bytes;
  if (form == Form::Whole) {
    bytes = seal::encode(entry);
  } else {
    const auto header = seal::encode(entry.header);
    bytes.append(reinterpret_cast<const char*>(header.data()), header.size());
    if (form == Form::Signed)
      bytes.append(reinterpret_cast<const char*>(entry.signature.bytes.data()),
                   seal::Signature::size);
  }
  std::uint8_t length[4];
  seal::ByteWriter(length).number(static_cast<std::uint32_t>(bytes.size()));
  return std::string(reinterpret_cast<const char*>(length), sizeof length) + bytes;
}

Result<Record> decode_record(std::span<const std::uint8_t> bytes) {
  Record out;
  if (bytes.size() >= seal::entry_fixed_bytes) {
    out.form = Form::Whole;
    JAMBLINE_ASSIGN(out.entry, seal::decode_entry(bytes));
    return out;
  }
  if (bytes.size() != seal::header_bytes && bytes.size() != signed_header_bytes)
    return fail(Error{Code::Malformed, "decode", "record", {}}.with(
        "cause", std::to_string(bytes.size()) + " bytes are no entry and no header"));
  const auto head = bytes.first<seal::header_bytes>();
  JAMBLINE_ASSIGN(out.entry.header, seal::decode_header(head));
  out.entry.hash = seal::entry_hash(head);
  if (bytes.size() == signed_header_bytes) {
    out.form = Form::Signed;
    seal::ByteReader(bytes.subspan(seal::header_bytes)).bytes(out.entry.signature);
  }
  return out;
}

std::optional<Hash> named_picture(std::string_view payload) {
  const auto named = from_json<NamesFile>(payload);
  if (!named || !named->facts.file) return std::nullopt;
  return named->facts.file;
}

}  // namespace jambline::evidence
