// 300 changes from seeds to bundles, to the folder that one is made of, and to the bytes of the
// ZIP: each is found and named by the program and by the stand-alone verifier, in the same words.
// 100 bundles that nobody changed are good.
#include <sqlite3.h>

#include "seal/fingerprint.h"
#include "tests/evidence/changes.h"
#include "tests/evidence/python_check.h"

namespace jambline::evidence {
namespace {

namespace fs = std::filesystem;

// As verify_bundle.py says it.
std::string python_words(const Error& error) {
  std::string out;
  const std::string_view device = error.arg("device");
  if (error.code == Code::WrongShop && device.empty())
    return "its fingerprint is not the one given: this is another shop";
  if (error.subject == "picture") out = "picture " + std::string(error.arg("picture"));
  if (error.subject == "receipt") out = "receipt " + std::string(error.arg("place"));
  if (!error.arg("member").empty()) out = "member " + std::string(error.arg("member"));
  if (!device.empty())
    out += (out.empty() ? "" : ", ") + ("device " + std::string(device)) + ", seq " +
           std::string(error.arg("seq"));
  if (!out.empty()) out += ": ";
  return out + std::string(error.arg("cause"));
}

std::string python_lines(const BundleFound& found) {
  return lines_of(found) + (found.first_bad ? "BAD    " + python_words(*found.first_bad) : "good") +
         "\n";
}

std::string joined(const PythonSaid& said) {
  std::string out;
  for (const auto& line : said.lines) out += line + "\n";
  return out;
}

bool names_one(const std::string& words, const Named& named) {
  return std::any_of(named.begin(), named.end(),
                     [&](const std::string& one) { return words.find(one) != std::string::npos; });
}

struct Case {
  std::string change;
  fs::path file;
  Named named;
};

// Looks at each with both and says how many were missed, and how many not named.
void expect_found_and_named(const std::vector<Case>& cases) {
  std::vector<std::string> asked;
  for (const auto& one : cases) asked.push_back("bundle " + one.file.string());
  const auto python = python_check(asked);
  std::size_t missed = 0;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const Case& one = cases[i];
    const auto found = log::must(check_bundle(one.file));
    if (!found.first_bad) {
      ++missed;
      ADD_FAILURE() << "missed: " << one.change << ", case " << i;
      continue;
    }
    const std::string words = python_words(*found.first_bad);
    EXPECT_TRUE(names_one(words, one.named))
        << one.change << ", case " << i << ": " << words << "\nwanted " << one.named.front();
    EXPECT_EQ(python[i].code, 1) << one.change << ", case " << i << joined(python[i]);
    if (one.change == "a receipt replaced")  // a length or number that is none has no device
      EXPECT_TRUE(names_one(python[i].last(), one.named)) << joined(python[i]) << words;
    else
      EXPECT_EQ(joined(python[i]), python_lines(found)) << one.change << ", case " << i;
  }
  EXPECT_EQ(missed, 0U) << "of " << cases.size();
  testing::Test::RecordProperty("changes", static_cast<int>(cases.size()));
  testing::Test::RecordProperty("missed", static_cast<int>(missed));
}

TEST(Tamper, EveryChangeToABundleIsFoundAndNamedByBoth) {
  const MemoryFolder out;
  std::vector<Case> cases;
  constexpr std::size_t shops = 10;
  constexpr std::size_t changes_each = 24;
  SeededRandom random(300);
  for (std::size_t number = 0; number < shops; ++number) {
    const SeededShop shop(number);
    const fs::path clean = out.path() / ("clean-" + std::to_string(number) + ".zip");
    log::must(shop.write(shop.job(number), clean));
    const BundleParts parts = BundleParts::of(clean);
    for (std::size_t i = 0; i < changes_each; ++i) {
      const auto& all = Changer::all();
      const auto& [name, change] = all[(number * changes_each + i) % all.size()];
      BundleParts changed = parts;
      Changer changer(shop, changed, random);
      Case one{name, out.path() / ("changed-" + std::to_string(cases.size()) + ".zip"), {}};
      one.named = (changer.*change)();
      ASSERT_NE(changed.members, parts.members) << name;
      changed.write(one.file);
      cases.push_back(std::move(one));
    }
  }
  EXPECT_EQ(cases.size(), 240U);
  expect_found_and_named(cases);
}

// Bytes of the file itself, in what is evidence; the ZIP's checksum is not made to fit.
TEST(Tamper, AByteOfTheFileIsFoundAndWhatItBelongsToIsNamed) {
  const MemoryFolder out;
  const SeededShop shop(20);
  const fs::path clean = out.path() / "clean.zip";
  log::must(shop.write(shop.job(1), clean));
  const std::string bytes = test::whole_file(clean);
  SeededRandom random(20);
  std::vector<Case> cases;
  BundleParts parts = BundleParts::of(clean);
  std::vector<std::string> names = parts.names(chain_folder);
  for (const auto& name : parts.names(pictures_folder)) names.push_back(name);
  for (int i = 0; i < 24; ++i) {
    const std::string& name = names[static_cast<std::size_t>(i) % names.size()];
    const std::string& content = parts.bytes(name);
    const std::size_t begin = bytes.find(content);
    ASSERT_NE(begin, std::string::npos);
    std::string changed = bytes;
    const std::size_t at = random.below(content.size());
    changed[begin + at] = static_cast<char>(changed[begin + at] ^ (1 << random.below(8)));
    Case one{"a byte of " + name, out.path() / ("changed-" + std::to_string(i) + ".zip"), {}};
    std::ofstream(one.file, std::ios::binary) << changed;
    if (name.starts_with(pictures_folder)) {
      one.named = {"picture " + name.substr(pictures_folder.size(), 64)};
    } else {
      const auto records = records_of(content);
      std::size_t end = 0;
      std::uint64_t seq = 0;
      while (end <= at) end += 4 + records[seq++].size();
      one.named = {"device " + name.substr(chain_folder.size()) + ", seq " + std::to_string(seq) +
                   ":"};
    }
    cases.push_back(std::move(one));
  }
  expect_found_and_named(cases);
}

void edit(const fs::path& folder, const std::string& sql) {
  sqlite3* raw = nullptr;
  ASSERT_EQ(sqlite3_open((folder / "log.db").c_str(), &raw), SQLITE_OK);
  std::string guards;
  const auto collect = [](void* to, int, char** column, char**) {
    *static_cast<std::string*>(to) += std::string(column[0]) + ";\n";
    return 0;
  };
  sqlite3_exec(raw, "SELECT sql FROM sqlite_schema WHERE type='trigger'", collect, &guards,
               nullptr);
  const std::string all =
      "BEGIN; DROP TRIGGER entries_stay; DROP TRIGGER entries_never_change; "
      "DROP TRIGGER erasures_are_entries; DROP TRIGGER erasures_stay; "
      "DROP TRIGGER erasures_never_change; " +
      sql + ";" + guards + "COMMIT";
  ASSERT_EQ(sqlite3_exec(raw, all.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
      << sqlite3_errmsg(raw) << "\n"
      << sql;
  sqlite3_close(raw);
}

std::string blob(const DeviceId& device) {
  return "x'" + device.hex() + "'";
}

struct Edit {
  std::string sql;
  std::string device;
  std::uint64_t seq = 0;  // that has to be named; 0: any of that device
  std::string in_folder =
      {};  // and where the folder itself is looked at: after a gap, the next one
};

// One edit of log.db, of the kind `number`, on an entry of the job by the second device.
Edit an_edit(const SeededShop& shop, const JobId& job, std::size_t number, SeededRandom& random) {
  std::vector<seal::Header> theirs;
  auto log = shop.open();
  log::must(log->read_device(shop.second.device(), 1, [&](const log::Stored& stored) {
    if (stored.entry.header.subject == job && !stored.entry.erased)
      theirs.push_back(stored.entry.header);
    return true;
  }));
  const DeviceId device = shop.second.device();
  const std::uint64_t received = shop.received.at(device);
  std::erase_if(theirs, [&](const seal::Header& header) { return header.seq >= received; });
  const std::uint64_t seq = theirs[random.below(theirs.size())].seq;
  const std::string here = " WHERE device=" + blob(device) + " AND seq=" + std::to_string(seq);
  switch (number) {
    case 0:
      return {"UPDATE entries SET payload=CAST(replace(payload, '\"', ' ') AS BLOB)" + here,
              device.hex(), seq};
    case 1:
      return {"UPDATE entries SET signature=zeroblob(64)" + here, device.hex(), seq};
    case 2:
      return {"UPDATE entries SET salt=zeroblob(16)" + here, device.hex(), seq};
    case 3:
      return {"UPDATE entries SET erased=1, payload=x'', salt=zeroblob(16)" + here, device.hex(),
              seq};
    case 4: {
      const auto header = *std::find_if(theirs.begin(), theirs.end(),
                                        [&](const seal::Header& one) { return one.seq == seq; });
      auto bytes = seal::encode(header);
      bytes.back() ^= 1;
      return {"UPDATE entries SET header=x'" + to_hex(bytes) + "'" + here, device.hex(), seq};
    }
    case 5:
      return {"DELETE FROM entries" + here, device.hex(), seq, "device "};
    case 6:
      return {
          "DELETE FROM entries WHERE device=" + blob(device) + " AND seq>" + std::to_string(seq),
          device.hex(), 0, "device "};
    case 7:
      return {
          "UPDATE entries SET payload=CAST(replace(payload, 'cart', 'card') AS BLOB) WHERE "
          "kind=2 AND seq=2",
          shop.first.device().hex(), 2};
    case 8:
      return {"UPDATE entries SET header=(SELECT header FROM entries WHERE kind=1) WHERE device=" +
                  blob(shop.first.device()) + " AND seq=5",
              shop.first.device().hex(), 0, "device " + shop.first.device().hex() + " seq "};
    default:
      return {
          "UPDATE receipts SET bytes=CAST(substr(bytes,1,89)||x'00'||substr(bytes,91) AS BLOB) "
          "WHERE device=" +
              blob(device) + " AND seq=" + std::to_string(received),
          device.hex(), received};
  }
}
constexpr std::size_t edits = 10;

// Where the log itself refuses to open, there is no bundle, and the refusal names the entry.
TEST(Tamper, ADatabaseEditedBeforeBundlingIsFoundInTheFolderAndInTheBundle) {
  const MemoryFolder out;
  SeededRandom random(36);
  std::vector<Case> cases;
  std::unique_ptr<SeededShop> shop;
  std::vector<std::string> folders;
  std::vector<Edit> made;
  std::size_t refused = 0;
  for (std::size_t number = 0; number < 36; ++number) {
    if (number % edits == 0) shop = std::make_unique<SeededShop>(100 + number / edits);
    const JobId job = shop->job(number);
    const fs::path folder = out.path() / ("shop-" + std::to_string(number));
    fs::create_directory(folder);
    fs::copy_file(shop->folder.path() / "log.db", folder / "log.db");
    Edit one = an_edit(*shop, job, number % edits, random);
    if (one.in_folder.empty())
      one.in_folder = "device " + one.device + " seq " + std::to_string(one.seq) + ":";
    edit(folder, one.sql);
    const fs::path file = out.path() / ("edited-" + std::to_string(number) + ".zip");
    const std::string named = one.device + (one.seq ? ", seq " + std::to_string(one.seq) : ", seq");
    const auto wrote = shop->write(job, file, false, folder);
    if (wrote) {
      cases.push_back({one.sql, file, {named}});
    } else {
      ++refused;
      EXPECT_FALSE(fs::exists(file));
      EXPECT_EQ(wrote.error().arg("device"), one.device) << one.sql;
      if (one.seq) {
        EXPECT_EQ(wrote.error().arg("seq"), std::to_string(one.seq)) << one.sql;
      }
    }
    const auto audit = log::EntryLog::audit(folder, {}, {});
    ASSERT_TRUE(audit) << one.sql;
    ASSERT_TRUE(audit->first_bad) << one.sql;
    const std::string audited = "device " + std::string(audit->first_bad->arg("device")) + " seq " +
                                std::string(audit->first_bad->arg("seq")) + ":";
    EXPECT_NE(audited.find(one.in_folder), std::string::npos) << one.sql << audited;
    folders.push_back("folder " + folder.string());
    made.push_back(one);
  }
  const auto python = python_check(folders);
  for (std::size_t i = 0; i < made.size(); ++i) {
    EXPECT_EQ(python[i].code, 1) << made[i].sql << joined(python[i]);
    EXPECT_NE(python[i].last().find(made[i].in_folder), std::string::npos)
        << made[i].sql << joined(python[i]);
  }
  EXPECT_EQ(cases.size() + refused, 36U);
  EXPECT_GE(cases.size(), 20U);
  expect_found_and_named(cases);
}

TEST(Tamper, ATailDroppedAfterTheLastReceiptIsWhatProvenUpToMeans) {
  const MemoryFolder out;
  for (std::uint64_t seed = 200; seed < 204; ++seed) {
    const SeededShop shop(seed);
    const DeviceId device = shop.second.device();
    const std::uint64_t received = shop.received.at(device);
    edit(shop.folder.path(), "DELETE FROM entries WHERE device=" + blob(device) + " AND seq>" +
                                 std::to_string(received));
    edit(shop.folder.path(),  // and nobody sees a gap
         "UPDATE entries SET arrival=-(SELECT count(*) FROM entries AS e WHERE "
         "e.arrival<=entries.arrival); UPDATE entries SET arrival=-arrival");
    const fs::path file = out.path() / (std::to_string(seed) + ".zip");
    log::must(shop.write(shop.job(seed), file));
    const auto found = log::must(check_bundle(file));
    EXPECT_FALSE(found.first_bad) << python_words(*found.first_bad);
    const std::string line = "device " + device.hex() + ": proven up to entry " +
                             std::to_string(received) + ", nothing can be said about later ones\n";
    EXPECT_NE(lines_of(found).find(line), std::string::npos) << lines_of(found);
    const auto python = python_check({"bundle " + file.string()});
    EXPECT_EQ(python[0].code, 0);
    EXPECT_EQ(joined(python[0]), python_lines(found));
  }
}

TEST(Tamper, AHundredBundlesThatNobodyChangedAreGood) {
  const MemoryFolder out;
  std::vector<fs::path> files;
  std::vector<std::string> asked;
  std::vector<ShopId> shops;
  for (std::uint64_t seed = 300; seed < 325; ++seed) {
    const SeededShop shop(seed);
    for (std::uint64_t number = 0; number < shop_jobs; ++number) {
      files.push_back(out.path() / (std::to_string(seed) + "-" + std::to_string(number) + ".zip"));
      const auto wrote = log::must(shop.write(shop.job(number), files.back()));
      EXPECT_GE(wrote.pictures, 2U);
      EXPECT_GE(wrote.receipts, 3U);
      asked.push_back("bundle " + files.back().string());
      shops.push_back(shop.shop);
    }
  }
  const auto python = python_check(asked);
  std::size_t alarms = 0;
  for (std::size_t i = 0; i < files.size(); ++i) {
    const auto found = log::must(check_bundle(files[i], shops[i]));
    if (found.first_bad || python[i].code != 0) ++alarms;
    EXPECT_FALSE(found.first_bad) << python_words(*found.first_bad);
    EXPECT_EQ(python[i].code, 0);
    EXPECT_EQ(joined(python[i]), python_lines(found));
    EXPECT_EQ(found.heads.size(), 3U);
    EXPECT_EQ(found.after_cut > 0, lines_of(found).find("do not count") != std::string::npos);
  }
  EXPECT_EQ(files.size(), 100U);
  EXPECT_EQ(alarms, 0U);
  ShopId other = shops[0];
  other.bytes[0] ^= 1;
  const auto foreign = log::must(check_bundle(files[0], other));
  ASSERT_TRUE(foreign.first_bad);
  EXPECT_EQ(foreign.first_bad->code, Code::WrongShop);
}

}  // namespace
}  // namespace jambline::evidence
