// Entries of another device, said again by this one (EntryLog::say_again). Our own design; the
// chain is held against FORMAT.md by audit().
#include <gtest/gtest.h>

#include "base/json.h"
#include "seal/receipt.h"
#include "tests/log/log_folder.h"

namespace jambline::log {
namespace {

constexpr std::uint16_t over_kind = 701;

// Device one founds and admits device two, which writes; two is lost with what it wrote.
struct LostWork {
  TempFolder one_folder, two_folder;
  std::unique_ptr<EntryLog> one = small_log(one_folder.path(), 3);
  std::unique_ptr<EntryLog> two = open_log(two_folder.path());
  SeededRandom random{77};
  PersonId tom{{7}};
  Renamed renamed;

  LostWork() {
    const Draft admit{{},
                      seal::kind::device_admitted,
                      1,
                      to_json(seal::DeviceAdmitted{key_number(2).key(), "tablet two", true})};
    must(one->append(key_number(1), {}, {&admit, 1}, at(9000), random));
    must(two->add(entries_of(*one)));
  }
  seal::SealedEntry write(const Draft& draft, std::int64_t after_ms = 10000) {
    return must(two->append(key_number(2), tom, {&draft, 1}, at(after_ms), random)).front().entry;
  }
  Result<std::vector<Stored>> again(std::span<const seal::SealedEntry> origins) {
    const Draft over{{}, over_kind, 1, R"({"over":true})"};
    return one->say_again(key_number(1), {}, over, origins, renamed, at(60000), random);
  }
};

Draft naming(const Hash& hash) {
  return note("not " + hash.hex() + ", and " + hash.hex());
}

TEST(SayAgain, KeepsPersonTimesAndWordsInTheOwnChain) {
  LostWork work;
  const std::vector<seal::SealedEntry> origins{work.write(note("a", 2), 10000),
                                               work.write(note("b", 3), 20000)};
  const auto said = must(work.again(origins));
  ASSERT_EQ(said.size(), 3U);
  EXPECT_EQ(said[0].entry.header.kind, over_kind);
  for (std::size_t i = 0; i < origins.size(); ++i) {
    auto header = said[i + 1].entry.header;
    EXPECT_EQ(header.device, key_number(1).device());
    EXPECT_EQ(header.seq, said[0].entry.header.seq + i + 1);
    EXPECT_EQ(header.prev_hash, said[i].entry.hash);
    EXPECT_EQ(said[i + 1].entry.payload, origins[i].payload);
    EXPECT_NE(said[i + 1].entry.salt, origins[i].salt);
    const auto& was = origins[i].header;
    header.device = was.device;
    header.seq = was.seq;
    header.prev_hash = was.prev_hash;
    header.payload_hash = was.payload_hash;
    EXPECT_EQ(header, was);  // person, subject, times, action, kind
    EXPECT_EQ(work.renamed.at(origins[i].hash), said[i + 1].entry.hash);
  }
  EXPECT_FALSE(audit(work.one_folder.path()).first_bad);
  // The clock of the own chain goes on from before.
  const Draft after = note("after");
  const auto next =
      must(work.one->append(key_number(1), {}, {&after, 1}, at(61000), work.random)).front().entry;
  EXPECT_EQ(next.header.seq, said.back().entry.header.seq + 1);
  EXPECT_GT(next.header.hlc, said.front().entry.header.hlc);
  EXPECT_FALSE(audit(work.one_folder.path()).first_bad);
}

TEST(SayAgain, WhereOneNamesAnotherItNamesTheNewOne) {
  LostWork work;
  const auto first = work.write(note("a"));
  const auto second = work.write(naming(first.hash));
  const auto foreign = entries_of(*work.one)[1].hash;
  const auto third = work.write(naming(foreign));
  const std::vector<seal::SealedEntry> origins{first, second, third};
  const auto said = must(work.again(origins));
  const std::string& payload = said[2].entry.payload;
  EXPECT_EQ(payload, naming(said[1].entry.hash).payload);
  EXPECT_EQ(said[3].entry.payload, naming(foreign).payload);  // that one stands as it was
}

TEST(SayAgain, NamesFromCallsBeforeStayInForce) {
  LostWork work;
  const auto first = work.write(note("a"));
  const auto said = must(work.again({&first, 1}));
  const auto second = work.write(naming(first.hash));
  const auto more = must(work.again({&second, 1}));
  EXPECT_EQ(more[1].entry.payload, naming(said[1].entry.hash).payload);
}

// More than one takeover holds, and than one action can: as the engine says them, part by part.
TEST(SayAgain, OverMoreThanFiveHundred) {
  LostWork work;
  std::vector<seal::SealedEntry> origins{work.write(note("0"))};
  for (int i = 1; i < 620; ++i)
    origins.push_back(work.write(naming(origins.back().hash), 10000 + i));
  std::vector<Stored> said;
  for (std::size_t from = 0; from < origins.size(); from += 500) {
    const auto some = must(work.again(
        std::span(origins).subspan(from, std::min<std::size_t>(500, origins.size() - from))));
    said.insert(said.end(), some.begin() + 1, some.end());
  }
  ASSERT_EQ(said.size(), origins.size());
  for (std::size_t i = 1; i < said.size(); ++i)
    ASSERT_EQ(said[i].entry.payload, naming(said[i - 1].entry.hash).payload) << i;
  const auto checked = audit(work.one_folder.path());
  EXPECT_FALSE(checked.first_bad);
  EXPECT_EQ(checked.entries, entries_of(*work.one).size());
}

TEST(SayAgain, MembershipErasuresAndWhatWasErasedAreLeftOut) {
  LostWork work;
  const auto kept = work.write(note("kept"));
  const auto gone = work.write(note("gone"));
  const std::uint16_t erasable[] = {note_kind};
  must(work.two->erase_payload(key_number(2), work.tom, gone.hash, "left", erasable, at(11000),
                               work.random));
  work.write({{},
              seal::kind::device_admitted,
              1,
              to_json(seal::DeviceAdmitted{key_number(3).key(), "tablet three", false})});
  std::vector<seal::SealedEntry> origins;
  for (const auto& entry : entries_of(*work.two))
    if (entry.header.device == key_number(2).device()) origins.push_back(entry);
  ASSERT_EQ(origins.size(), 4U);
  const auto said = must(work.again(origins));
  ASSERT_EQ(said.size(), 2U);
  EXPECT_EQ(said[1].entry.payload, kept.payload);
  EXPECT_EQ(work.renamed.size(), 1U);
  EXPECT_EQ(work.one->members().find(key_number(3).device()), nullptr);

  origins.erase(origins.begin());
  const auto none = work.again(origins);
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().code, Code::Unknown);
}

TEST(SayAgain, AllOrNothing) {
  LostWork work;
  std::vector<seal::SealedEntry> origins{work.write(note("a")), work.write(note("b"))};
  const auto before = work.one->last_arrival();
  const auto changed = [&](auto change) {
    auto bad = origins;
    change(bad[1]);
    const auto refused = work.again(bad);
    EXPECT_EQ(work.one->last_arrival(), before);
    EXPECT_TRUE(work.renamed.empty());
    return refused ? Code::Missing : refused.error().code;
  };
  EXPECT_EQ(changed([](auto& one) { one.payload += " "; }), Code::BadHash);
  EXPECT_EQ(changed([](auto& one) { one.header.shop.bytes[0] ^= 1; }), Code::WrongShop);
  EXPECT_EQ(work.one
                ->say_again(key_number(5), {}, {{}, over_kind, 1, "{}"}, origins, work.renamed,
                            at(60000), work.random)
                .error()
                .code,
            Code::WrongKey);
  EXPECT_EQ(work.one->last_arrival(), before);
  EXPECT_EQ(must(work.again(origins)).size(), 3U);
}

}  // namespace
}  // namespace jambline::log
