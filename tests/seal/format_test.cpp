// FORMAT.md is the test vector: its hex has to be what the code makes, its tables where the fields
// are.
#include <fstream>
#include <functional>
#include <gtest/gtest.h>
#include <regex>

#include "tests/seal/format_examples.h"

namespace jambline::seal {
namespace {

struct Row {
  std::size_t offset{};
  std::size_t bytes{};
  std::string field;
};

struct Document {
  std::map<std::string, std::string> examples;
  std::vector<Row> header, receipt;
};

Document read_document() {
  Document out;
  std::ifstream in(JAMBLINE_SOURCE_DIR "/src/seal/FORMAT.md");
  const std::regex row(R"(\| (\d+) \| (\d+) \| (\w+) \|.*)");
  const std::regex start(R"(([a-z.0-9_]+) =\s*([0-9a-f]*))");
  std::string line, name;
  bool block = false;
  std::vector<Row>* rows = nullptr;
  while (std::getline(in, line)) {
    std::smatch found;
    if (line.starts_with("## 2.")) rows = &out.header;
    if (line.starts_with("## 3.")) rows = nullptr;
    if (line.starts_with("## 6.")) rows = &out.receipt;
    if (line.starts_with("```")) {
      block = !block;
      name.clear();
    } else if (block && std::regex_match(line, found, start)) {
      name = found[1];
      out.examples[name] = found[2];
    } else if (block) {
      out.examples[name] += line.substr(2);
    } else if (rows && std::regex_match(line, found, row)) {
      rows->push_back({std::stoul(found[1]), std::stoul(found[2]), found[3]});
    }
  }
  return out;
}

std::string bytes_from(const std::string& hex) {
  std::string out(hex.size() / 2, '\0');
  EXPECT_TRUE(from_hex(hex, {reinterpret_cast<std::uint8_t*>(out.data()), out.size()}));
  return out;
}

TEST(FormatDocument, ItsHexIsWhatTheCodeMakes) {
  EXPECT_EQ(read_document().examples, format_examples());
}

TEST(FormatDocument, ItsEntriesDecodeVerifyAndEncodeToTheSameBytes) {
  const auto examples = read_document().examples;
  for (const char* name : {"founded", "admitted", "note", "erased"}) {
    const std::string bytes = bytes_from(examples.at(std::string(name) + ".entry"));
    const auto entry = decode_entry(bytes_of(bytes));
    ASSERT_TRUE(entry) << name;
    const bool erased = std::string(name) == "erased";
    EXPECT_EQ(entry->hash.hex(), examples.at(std::string(erased ? "note" : name) + ".hash"));
    EXPECT_EQ(entry->erased, erased);
    EXPECT_TRUE(check_payload(*entry));
    EXPECT_EQ(encode(*entry), bytes);
    const auto key = Key::parse(examples.at(
        entry->header.device.hex() == examples.at("second.device") ? "second.key" : "founder.key"));
    EXPECT_TRUE(verify(*key, entry->hash.bytes, entry->signature));
  }
  const auto receipt = decode_receipt(bytes_of(bytes_from(examples.at("receipt"))));
  ASSERT_TRUE(receipt);
  EXPECT_TRUE(verify(*receipt));
}

// Turning one named field changes exactly the bytes that the table gives it.
template <class Value>
void expect_rows(const std::vector<Row>& rows, std::size_t whole_bytes, const Value& base,
                 const std::map<std::string, std::function<void(Value&)>>& turns,
                 const std::function<std::string(const Value&)>& encoded) {
  std::size_t end = 0;
  for (const Row& row : rows) {
    EXPECT_EQ(row.offset, end) << row.field;
    end = row.offset + row.bytes;
    const auto turn = turns.find(row.field);
    if (turn == turns.end()) continue;
    Value turned = base;
    turn->second(turned);
    const std::string a = encoded(base), b = encoded(turned);
    for (std::size_t i = 0; i < a.size(); ++i)
      EXPECT_EQ(a[i] != b[i], i >= row.offset && i < end) << row.field << " byte " << i;
  }
  EXPECT_EQ(end, whole_bytes);
  EXPECT_EQ(rows.size(), turns.size() + 1) << "every row but one is turned";
}

template <class Member>
auto flip(Member member) {
  return [member](auto& value) {
    auto& field = value.*member;
    if constexpr (requires { field.bytes; })
      for (auto& byte : field.bytes) byte = static_cast<std::uint8_t>(~byte);
    else
      field = static_cast<std::remove_reference_t<decltype(field)>>(~field);
  };
}

TEST(FormatDocument, ItsHeaderTableSaysWhereEveryFieldIs) {
  using H = Header;
  expect_rows<H>(read_document().header, header_bytes, note_example().header,
                 {{"shop", flip(&H::shop)},
                  {"device", flip(&H::device)},
                  {"seq", flip(&H::seq)},
                  {"prev_hash", flip(&H::prev_hash)},
                  {"subject", flip(&H::subject)},
                  {"hlc", flip(&H::hlc)},
                  {"wall_ms", flip(&H::wall_ms)},
                  {"offset_min", flip(&H::offset_min)},
                  {"clock_flags", flip(&H::clock_flags)},
                  {"boot", flip(&H::boot)},
                  {"boottime_ms", flip(&H::boottime_ms)},
                  {"person", flip(&H::person)},
                  {"action", flip(&H::action)},
                  {"part", flip(&H::part)},
                  {"parts", flip(&H::parts)},
                  {"kind", flip(&H::kind)},
                  {"schema", flip(&H::schema)},
                  {"payload_bytes", flip(&H::payload_bytes)},
                  {"payload_hash", flip(&H::payload_hash)}},
                 [](const H& header) {
                   const auto bytes = encode(header);
                   return std::string(bytes.begin(), bytes.end());
                 });
}

TEST(FormatDocument, ItsReceiptTableSaysWhereEveryFieldIs) {
  using R = Receipt;
  expect_rows<R>(read_document().receipt, receipt_bytes, receipt_example(),
                 {{"shop", flip(&R::shop)},
                  {"hub", flip(&R::hub)},
                  {"epoch", flip(&R::epoch)},
                  {"device", flip(&R::device)},
                  {"seq", flip(&R::seq)},
                  {"hash", flip(&R::hash)},
                  {"hub_seq_first", flip(&R::hub_seq_first)},
                  {"hub_seq_last", flip(&R::hub_seq_last)},
                  {"received_ms", flip(&R::received_ms)},
                  {"signature", flip(&R::signature)}},
                 [](const R& receipt) { return encode(receipt); });
}

}  // namespace
}  // namespace jambline::seal
