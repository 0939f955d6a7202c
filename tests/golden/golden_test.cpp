// Entries in, view of the car out, both as files that people can read.
//
// CASE.entries.json: a list of lines, of one car, or of the shop's own stream where CASE begins
// with "shop_"; a hash, device, person or boot is written as short hex and padded with zeros.
// CASE.view.json: what the fold shows, one field a line. Where they differ, the new text is written
// beside as CASE.view.json.fail and the difference printed. The expected views were read and agreed
// on by people of this project; no source outside.
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>

#include "base/json.h"
#include "folds/job_fold.h"
#include "folds/shop_fold.h"
#include "tests/whole_file.h"

namespace jambline {
namespace {

struct Line {
  std::string device, hash, person, boot;
  std::uint64_t seq{};
  std::int64_t hlc_ms{};
  std::int64_t wall_ms{};
  std::uint64_t boottime_ms{};
  std::uint16_t kind{};
  std::uint16_t schema{};
  bool erased = false;
  std::string payload;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "seq"}, self.seq);
    visit(Field{.name = "hash"}, self.hash);
    visit(Field{.name = "hlc_ms"}, self.hlc_ms);
    visit(Field{.name = "wall_ms"}, self.wall_ms);
    visit(Field{.name = "boot"}, self.boot);
    visit(Field{.name = "boottime_ms"}, self.boottime_ms);
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "schema"}, self.schema);
    visit(Field{.name = "erased"}, self.erased);
    visit(Field{.name = "payload"}, self.payload);
  }
};

struct Lines {
  std::vector<Line> lines;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "lines"}, self.lines);
  }
};

template <class Name>
Name padded(const std::string& hex) {
  std::string text = hex;
  text.resize(2 * Name::size, '0');
  const auto name = Name::parse(text);
  if (!name) ADD_FAILURE() << "no hex: " << hex;
  return name.value_or(Name{});
}

// One field a line, two blanks a level.
std::string one_field_a_line(const std::string& json) {
  std::string out;
  std::size_t depth = 0;
  bool in_text = false;
  const auto line = [&] { out += "\n" + std::string(2 * depth, ' '); };
  for (std::size_t i = 0; i < json.size(); ++i) {
    const char sign = json[i];
    if (in_text) {
      out.push_back(sign);
      if (sign == '\\') out.push_back(json[++i]);
      if (sign == '"') in_text = false;
      continue;
    }
    const bool empty = (sign == '{' || sign == '[') && (json[i + 1] == '}' || json[i + 1] == ']');
    if (empty) {
      out += sign;
      out += json[++i];
    } else if (sign == '{' || sign == '[') {
      ++depth;
      out.push_back(sign);
      line();
    } else if (sign == '}' || sign == ']') {
      --depth;
      line();
      out.push_back(sign);
    } else {
      out.push_back(sign);
      if (sign == ',') line();
      if (sign == ':') out.push_back(' ');
      in_text = sign == '"';
    }
  }
  return out + "\n";
}

const std::filesystem::path folder = std::filesystem::path(JAMBLINE_SOURCE_DIR) / "tests/golden";

bool of_the_shop(const std::string& name) {
  return name.rfind("shop_", 0) == 0;
}

std::vector<entries::Entry> entries_of(const std::string& name) {
  const auto read =
      from_json<Lines>(test::whole_file(folder / (name + ".entries.json")), Strict::Yes);
  if (!read) {
    ADD_FAILURE() << name << ": " << code_name(read.error().code) << " " << read.error().subject;
    return {};
  }
  std::vector<entries::Entry> out;
  for (const auto& line : read->lines) {
    entries::Entry entry;
    entry.subject = of_the_shop(name) ? JobId{} : padded<JobId>("c4");
    entry.hash = padded<Hash>(line.hash);
    entry.order = {static_cast<std::uint64_t>(line.hlc_ms) << 16U, padded<DeviceId>(line.device),
                   line.seq};
    entry.wall_ms = line.wall_ms;
    entry.boot = padded<BootId>(line.boot);
    entry.boottime_ms = line.boottime_ms;
    entry.person = padded<PersonId>(line.person);
    entry.kind = line.kind;
    entry.schema = line.schema;
    entry.payload = entries::read(line.kind, line.schema, line.payload, line.erased);
    out.push_back(std::move(entry));
  }
  return out;
}

void differ(const std::filesystem::path& expected, const std::filesystem::path& got) {
  const std::string command = "diff -u '" + expected.string() + "' '" + got.string() + "'";
  FILE* pipe = popen(command.c_str(), "r");
  if (!pipe) return;
  char buffer[4096];
  while (const auto count = std::fread(buffer, 1, sizeof buffer, pipe))
    std::fwrite(buffer, 1, count, stdout);
  pclose(pipe);
}

std::vector<std::string> cases() {
  std::vector<std::string> out;
  for (const auto& file : std::filesystem::directory_iterator(folder)) {
    const std::string name = file.path().filename().string();
    const auto end = name.find(".entries.json");
    if (end != std::string::npos) out.push_back(name.substr(0, end));
  }
  std::sort(out.begin(), out.end());
  return out;
}

std::string view_of(const std::vector<entries::Entry>& entries) {
  if (!entries.empty() && !entries.front().subject) {
    folds::ShopFold shop;
    for (const auto& entry : entries) shop.apply(entry);
    return one_field_a_line(to_json(shop.view()));
  }
  folds::JobFold fold(padded<JobId>("c4"));
  for (const auto& entry : entries) fold.apply(entry);
  return one_field_a_line(to_json(fold.view()));
}

class Golden : public testing::TestWithParam<std::string> {};

TEST_P(Golden, FoldsToTheViewThatIsOnFile) {
  const auto entries = entries_of(GetParam());
  ASSERT_FALSE(entries.empty());
  const std::string got = view_of(entries);
  const auto file = folder / (GetParam() + ".view.json");
  const std::string expected = test::whole_file(file);
  const bool same = got.size() == expected.size() && got == expected;
  if (!same) {
    const std::filesystem::path fail = file.string() + ".fail";
    std::ofstream(fail, std::ios::binary) << got;
    differ(file, fail);
  }
  EXPECT_TRUE(same) << got.size() << " bytes instead of " << expected.size();
}

TEST_P(Golden, TheOrderOfArrivalChangesNothing) {
  auto entries = entries_of(GetParam());
  const std::string forward = view_of(entries);
  std::reverse(entries.begin(), entries.end());
  entries.push_back(entries.front());
  EXPECT_EQ(view_of(entries), forward);
}

INSTANTIATE_TEST_SUITE_P(Cases, Golden, testing::ValuesIn(cases()),
                         [](const auto& one) { return one.param; });

TEST(GoldenCases, ThereAreTenOrMore) {
  EXPECT_GE(cases().size(), 10U);
}

}  // namespace
}  // namespace jambline
