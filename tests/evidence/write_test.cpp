// What a bundle is made of, and what is refused: files that are none, names that do not belong,
// disks and folders that take nothing.
#include <regex>
#include <set>
#include <sys/stat.h>

#include "evidence/bundled_texts.h"
#include "tests/evidence/bundle_parts.h"
#include "tests/evidence/seeded_shop.h"
#include "tests/seal/format_examples.h"
#include "tests/whole_file.h"

namespace jambline::evidence {
namespace {

namespace fs = std::filesystem;

struct WrittenBundle {
  SeededShop shop{1};
  MemoryFolder out;
  fs::path file = out.path() / "car.zip";
  BundleWritten wrote = log::must(shop.write(shop.job(1), file));

  std::vector<std::string> there() const {
    std::vector<std::string> names;
    for (const auto& one : fs::directory_iterator(out.path()))
      names.push_back(one.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
  }
};

std::string first_bad(const fs::path& file) {
  const auto found = log::must(check_bundle(file));
  if (!found.first_bad) return "good";
  return std::string(found.first_bad->arg("member")) + ": " +
         std::string(found.first_bad->arg("cause"));
}

TEST(Bundle, HasTheJobWholeAndOfAllOtherEntriesTheirHeaders) {
  const WrittenBundle made;
  const BundleParts parts = BundleParts::of(made.file);
  std::set<Hash> whole;
  std::size_t records = 0;
  for (const auto& name : parts.names(chain_folder)) {
    BundleParts copy = parts;
    for (const auto& bytes : records_of(copy.bytes(name))) {
      const Record record = decoded(bytes);
      ++records;
      if (record.form == Form::Whole) whole.insert(record.entry.hash);
    }
  }
  auto log = made.shop.open();
  std::size_t all = 0;
  for (const auto& entry : log::entries_of(*log)) {
    ++all;
    const bool wanted =
        entry.header.kind <= seal::kind::payload_erased || entry.header.subject == made.shop.job(1);
    EXPECT_EQ(whole.contains(entry.hash), wanted) << entry.header.kind;
  }
  EXPECT_EQ(records, all);
  EXPECT_EQ(parts.names(pictures_folder).size(), made.wrote.pictures);
  EXPECT_TRUE(made.wrote.missing.empty());
  EXPECT_EQ(made.wrote.bytes, fs::file_size(made.file));
  EXPECT_EQ(BundleParts(parts).bytes("report.txt"), "a report\n");
  for (const auto& text : bundled_texts()) {
    const fs::path source = fs::path(JAMBLINE_SOURCE_DIR) /
                            (text.name == "FORMAT.md" ? "src/seal" : "src/evidence") / text.name;
    EXPECT_EQ(BundleParts(parts).bytes(std::string(text.name)), test::whole_file(source));
  }
}

TEST(Bundle, TheSameLogGivesTheSameBytesAndNothingIsWrittenOver) {
  const WrittenBundle made;
  const fs::path again = made.out.path() / "again.zip";
  log::must(made.shop.write(made.shop.job(1), again));
  EXPECT_EQ(test::whole_file(again), test::whole_file(made.file));
  const auto refused = made.shop.write(made.shop.job(2), again);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::AlreadyDone);
  EXPECT_EQ(test::whole_file(again), test::whole_file(made.file));
  EXPECT_EQ(made.there(), (std::vector<std::string>{"again.zip", "car.zip"}));
}

TEST(Bundle, AJobThatIsNotThereAFolderThatIsNotAndAStopLeaveNothing) {
  const WrittenBundle made;
  const auto none = made.shop.write(log::job_number(99), made.out.path() / "none.zip");
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().code, Code::Unknown);
  const auto nowhere = made.shop.write(made.shop.job(1), made.out.path() / "no" / "car.zip");
  ASSERT_FALSE(nowhere);
  EXPECT_EQ(nowhere.error().code, Code::NoSuchFile);
  std::stop_source stop;
  stop.request_stop();
  auto log = made.shop.open();
  const auto stopped =
      write_bundle(*log, made.shop.store.get(),
                   {made.shop.job(1), made.out.path() / "s.zip", "", {}}, stop.get_token(), {});
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.error().code, Code::Stopped);
  EXPECT_EQ(made.there(), std::vector<std::string>{"car.zip"});
}

TEST(Bundle, AMissingOrDamagedPictureIsNamedAndLeftOutOnlyWhenAsked) {
  const WrittenBundle made;
  const auto names = BundleParts::of(made.file).names(pictures_folder);
  const Hash gone = *Hash::parse(names[0].substr(pictures_folder.size(), 64));
  const Hash damaged = *Hash::parse(names[1].substr(pictures_folder.size(), 64));
  fs::remove(made.shop.store->path_of(gone));
  const fs::path file = made.out.path() / "without.zip";
  auto refused = made.shop.write(made.shop.job(1), file);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::NoSuchFile);
  EXPECT_EQ(refused.error().arg("picture"), gone.hex());
  EXPECT_FALSE(fs::exists(file));
  std::ofstream(made.shop.store->path_of(damaged), std::ios::app) << "x";
  const auto wrote = log::must(made.shop.write(made.shop.job(1), file, true));
  EXPECT_EQ(wrote.missing.size(), 2U);
  const auto found = log::must(check_bundle(file));
  ASSERT_TRUE(found.first_bad);
  EXPECT_EQ(found.first_bad->code, Code::Missing);
  EXPECT_EQ(found.first_bad->arg("picture"), std::min(gone, damaged).hex());
}

TEST(Bundle, WhatIsNoZipOrCutShortCouldNotBeRead) {
  const WrittenBundle made;
  const std::string bytes = test::whole_file(made.file);
  const fs::path file = made.out.path() / "other";
  const auto code_of = [&](const std::string& content) {
    std::ofstream(file, std::ios::binary | std::ios::trunc) << content;
    const auto found = check_bundle(file);
    return found ? std::string("read") : std::string(code_name(found.error().code));
  };
  EXPECT_EQ(code_of(""), "Malformed");
  EXPECT_EQ(code_of("PK and no more"), "Malformed");
  for (const double part : {0.1, 0.5, 0.9, 0.999})
    EXPECT_EQ(code_of(bytes.substr(0, static_cast<std::size_t>(part * bytes.size()))), "Malformed")
        << part;
  EXPECT_EQ(check_bundle(made.out.path() / "none").error().code, Code::NoSuchFile);
  EXPECT_EQ(check_bundle(made.out.path()).error().code, Code::Malformed);
}

// Written by Python's zipfile, which puts in what it is told to.
TEST(Bundle, NamesThatDoNotBelongTwiceTheSameAndCompressionAreRefused) {
  const WrittenBundle made;
  const auto changed = [&](const std::string& code) {
    const fs::path file = made.out.path() / "changed.zip";
    fs::copy_file(made.file, file, fs::copy_options::overwrite_existing);
    const std::string command =
        "python3 -W ignore -c 'import zipfile,sys\n"
        "z=zipfile.ZipFile(sys.argv[1],\"a\")\n" +
        code + "\nz.close()' '" + file.string() + "'";
    EXPECT_EQ(std::system(command.c_str()), 0) << code;
    return first_bad(file);
  };
  for (const char* name : {"../x", "/etc/x", "chain/../receipts", "pictures/", "chain/0", "x.txt",
                           "receipts/", "pictures/00.jpg", "REPORT.TXT"})
    EXPECT_EQ(changed("z.writestr(\"" + std::string(name) + "\", b\"x\")"),
              std::string(name) + ": nothing of that name belongs in a bundle");
  EXPECT_EQ(changed("z.writestr(\"x\\x1b[2J\", b\"x\")"),
            "x?[2J: nothing of that name belongs in a bundle");
  EXPECT_EQ(changed("z.writestr(\"report.txt\", b\"x\")"), "report.txt: it is there twice");
  EXPECT_EQ(changed("z.writestr(\"receipts\", b\"x\")"), "receipts: it is there twice");
  EXPECT_EQ(changed("z.writestr(\"pictures/" + std::string(64, 'a') +
                    "\", b\"x\"*100000, zipfile.ZIP_DEFLATED)"),
            "pictures/" + std::string(64, 'a') + ": it is compressed or encrypted");
  EXPECT_EQ(changed("z.writestr(\"pictures/" + std::string(64, 'a') + ".jpg\", bytes(64*2**20+1))"),
            "pictures/" + std::string(64, 'a') + ".jpg: it is too long");
  EXPECT_EQ(changed("z.writestr(\"chain/" + std::string(32, 'a') + "\", b\"\")"),
            "chain/" + std::string(32, 'a') + ": there is nothing in it");
  const fs::path many = made.out.path() / "many.zip";
  const std::string command =
      "python3 -c 'import zipfile,sys\nz=zipfile.ZipFile(sys.argv[1],\"w\")\n"
      "for i in range(20001): z.writestr(f\"{i}\", b\"\")\nz.close()' '" +
      many.string() + "'";
  ASSERT_EQ(std::system(command.c_str()), 0);
  EXPECT_EQ(check_bundle(many).error().code, Code::TooLarge);
}

// Its example, put together as it says from the entries of FORMAT.md.
TEST(BundleDocument, ItsExampleIsGoodAndItsHeaderAloneIsRefused) {
  std::ifstream in(JAMBLINE_SOURCE_DIR "/src/evidence/BUNDLE.md");
  const std::map<std::string, std::string> entries{
      {"founded.entry", seal::encode(seal::founded_example())},
      {"admitted.entry", seal::encode(seal::admitted_example())},
      {"note.entry", seal::encode(seal::note_example())}};
  std::vector<BundleParts> blocks;
  const std::regex record(R"(  ([0-9a-f]{8}) ([a-z.]+)(?: bytes 0 to (\d+))?)");
  bool block = false;
  for (std::string line; std::getline(in, line);) {
    std::smatch found;
    if (line == "```") {
      block = !block;
      if (block) blocks.emplace_back();
    } else if (block && line.starts_with(chain_folder)) {
      blocks.back().members.emplace_back(line, "");
    } else if (block) {
      ASSERT_TRUE(std::regex_match(line, found, record)) << line;
      std::string bytes = entries.at(found[2]);
      if (found[3].matched) bytes.resize(std::stoul(found[3]) + 1);
      EXPECT_EQ(std::stoul(found[1], nullptr, 16), bytes.size()) << line;
      blocks.back().members.back().second += chain_of({bytes});
    }
  }
  ASSERT_EQ(blocks.size(), 2U);
  const MemoryFolder out;
  blocks[0].write(out.path() / "one.zip");
  const auto found = log::must(check_bundle(out.path() / "one.zip"));
  EXPECT_FALSE(found.first_bad);
  EXPECT_EQ(found.job.hex(), "505152535455565758595a5b5c5d5e5f");
  EXPECT_EQ(found.heads,
            (std::vector<BundleHead>{{seal::founder().device(), 2}, {seal::second().device(), 1}}));
  BundleParts alone = blocks[0];
  alone.bytes(blocks[1].members[0].first) = blocks[1].members[0].second;
  alone.write(out.path() / "two.zip");
  EXPECT_EQ(first_bad(out.path() / "two.zip"), ": no entry of a job is whole in it");
}

TEST(BundleDocument, ItsLimitsAndNamesAreThoseOfTheProgram) {
  std::string words = std::regex_replace(
      test::whole_file(JAMBLINE_SOURCE_DIR "/src/evidence/BUNDLE.md"), std::regex(R"(\s+)"), " ");
  EXPECT_NE(words.find("At most 20,000 members; a picture has at most 64 MiB, `receipts` 64 MiB, a "
                       "chain 4 GiB, any other member 16 MiB."),
            std::string::npos);
  EXPECT_EQ(most_members, 20'000U);
  EXPECT_EQ(most_picture_bytes, 64U << 20U);
  EXPECT_EQ(most_receipts_bytes, 64U << 20U);
  EXPECT_EQ(most_chain_bytes, 4ULL << 30U);
  EXPECT_EQ(most_text_bytes, 16U << 20U);
  for (const char* name : {"report.txt", "FORMAT.md", "BUNDLE.md", "verify_bundle.py"})
    EXPECT_EQ(read_member_name(name).kind, MemberKind::NoEvidence) << name;
  EXPECT_EQ(read_member_name("Receipts").kind, MemberKind::Unknown);
  EXPECT_EQ(read_member_name("chain/" + std::string(32, 'A')).kind, MemberKind::Unknown);
  EXPECT_EQ(read_member_name("pictures/" + std::string(64, 'a') + ".jpegs").kind,
            MemberKind::Unknown);
}

}  // namespace
}  // namespace jambline::evidence
