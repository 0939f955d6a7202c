// The chain of a whole log is looked at by two threads, half of the entries each; what they find is
// what the whole check finds, which walks from the first entry to the last.
#include "log/chain_check.h"

#include <sqlite3.h>

#include "base/json.h"
#include "tests/log/behind_guards.h"
#include "tests/log/log_folder.h"

namespace jambline::log {
namespace {

Audit chain(const std::filesystem::path& folder) {
  return must(EntryLog::audit(folder, {}, {}, AuditDepth::Chain));
}

void expect_as_whole(const std::filesystem::path& folder, bool good) {
  const Audit halves = chain(folder);
  const Audit whole = audit(folder);
  EXPECT_EQ(!whole.first_bad, good);
  EXPECT_EQ(halves.entries, whole.entries);
  EXPECT_EQ(halves.shop, whole.shop);
  ASSERT_EQ(halves.heads.size(), whole.heads.size());
  for (std::size_t i = 0; i < whole.heads.size(); ++i) {
    EXPECT_EQ(halves.heads[i].device, whole.heads[i].device);
    EXPECT_EQ(halves.heads[i].seq, whole.heads[i].seq);
    EXPECT_EQ(halves.heads[i].hash, whole.heads[i].hash);
  }
  ASSERT_EQ(halves.first_bad.has_value(), whole.first_bad.has_value());
  if (!good) {
    EXPECT_EQ(halves.first_bad->code, whole.first_bad->code);
    EXPECT_EQ(halves.first_bad->arg("device"), whole.first_bad->arg("device"));
    EXPECT_EQ(halves.first_bad->arg("seq"), whole.first_bad->arg("seq"));
  }
}

// Whether the two threads alone say that it holds.
bool halves_hold(const std::filesystem::path& folder) {
  OpenFile file = must(open_file(folder, OpenMode::ReadOnly, {}));
  must(file.database.run("BEGIN"));
  return must(chain_that_holds(folder, file.database, {}, {})).has_value();
}

class Copy : public TempFolder {
 public:
  explicit Copy(const std::filesystem::path& of) {
    for (const auto& file : std::filesystem::directory_iterator(of))
      std::filesystem::copy(file.path(), path() / file.path().filename());
  }
};

constexpr std::uint8_t devices = 4;
constexpr int turns = 5;

// Four devices in one log: the founder admits the others one after another, so that some begin in
// the first half and some in the second; all of them go on by turns.
class ChainOfMany : public testing::Test {
 protected:
  ChainOfMany() {
    auto log = open_log(folder_.path());
    must(log->found_shop(key_number(1), "number 1", at(), random_));
    TempFolder others[devices];
    std::vector<std::unique_ptr<EntryLog>> logs;
    for (std::uint8_t device = 2; device <= devices; ++device) {
      write(*log, 1,
            {{},
             seal::kind::device_admitted,
             1,
             to_json(seal::DeviceAdmitted{key_number(device).key(),
                                          "number " + std::to_string(device), false})});
      logs.push_back(open_log(others[device - 1].path()));
      must(logs.back()->add(entries_of(*log)));
      for (int turn = 0; turn < turns; ++turn) {
        write(*log, 1, note("turn"));
        std::uint8_t writer = 2;
        for (const auto& other : logs) {
          const auto entry = write(*other, writer++, note("turn"));
          must(log->add({&entry, 1}));
        }
      }
    }
    stored_ = all_of(*log);
  }

  seal::SealedEntry write(EntryLog& log, std::uint8_t key, const Draft& draft) {
    return must(log.append(key_number(key), {}, {&draft, 1}, at(now_ms_ += 1000), random_))
        .front()
        .entry;
  }

  // Its header and its hash fit each other afterwards, so that only the link tells.
  void rewrite(const std::filesystem::path& folder, const Stored& stored,
               void (*change)(seal::Header&)) {
    seal::Header header = stored.entry.header;
    change(header);
    const auto bytes = seal::encode(header);
    const Hash hash = seal::entry_hash(bytes);
    const auto hex = [](const auto& some) {
      std::string out;
      for (const std::uint8_t byte : some) {
        char two[3];
        std::snprintf(two, sizeof two, "%02x", byte);
        out += two;
      }
      return out;
    };
    change_behind_guards(folder, "UPDATE entries SET header = x'" + hex(bytes) + "', hash = x'" +
                                     hex(hash.bytes) +
                                     "' WHERE arrival = " + std::to_string(stored.arrival));
  }

  TempFolder folder_;
  SeededRandom random_{5};
  std::int64_t now_ms_ = 0;
  std::vector<Stored> stored_;
};

TEST_F(ChainOfMany, HoldsAcrossTheHalves) {
  EXPECT_TRUE(halves_hold(folder_.path()));
  expect_as_whole(folder_.path(), true);
}

TEST_F(ChainOfMany, ALinkThatIsWrongIsNamedWhereverItStands) {
  for (const Stored& stored : stored_) {
    const Copy copy(folder_.path());
    rewrite(copy.path(), stored, [](seal::Header& header) { header.prev_hash.bytes[9] ^= 1U; });
    EXPECT_FALSE(halves_hold(copy.path())) << stored.arrival;
    expect_as_whole(copy.path(), false);
  }
}

TEST_F(ChainOfMany, AChangedHashAGapAndAnotherShopAreNamedWhereverTheyStand) {
  for (const Stored& stored : stored_) {
    const std::string here = " WHERE arrival = " + std::to_string(stored.arrival);
    for (const std::string& change :
         {"UPDATE entries SET hash = zeroblob(32)" + here, "DELETE FROM entries" + here}) {
      const Copy copy(folder_.path());
      change_behind_guards(copy.path(), change);
      // Without its last entry a log is whole, as far as its chain says.
      const bool last = stored.arrival == stored_.back().arrival && change.front() == 'D';
      EXPECT_EQ(halves_hold(copy.path()), last) << change;
      expect_as_whole(copy.path(), last);
    }
    const Copy copy(folder_.path());
    rewrite(copy.path(), stored, [](seal::Header& header) { header.shop.bytes[0] ^= 1U; });
    EXPECT_FALSE(halves_hold(copy.path())) << stored.arrival;
    expect_as_whole(copy.path(), false);
  }
}

TEST_F(ChainOfMany, CanBeStopped) {
  std::stop_source stop;
  const auto found = EntryLog::audit(
      folder_.path(), stop.get_token(), [&](double) { stop.request_stop(); }, AuditDepth::Chain);
  ASSERT_FALSE(found);
  EXPECT_EQ(found.error().code, Code::Stopped);
}

TEST(ChainOfFew, OneEntryAndTwoAreLookedAtToo) {
  for (const int notes : {0, 1, 2}) {
    const TempFolder folder;
    small_log(folder.path(), notes);
    const Audit found = chain(folder.path());
    EXPECT_FALSE(found.first_bad);
    EXPECT_EQ(found.entries, static_cast<std::uint64_t>(notes) + 1);
  }
}

}  // namespace
}  // namespace jambline::log
