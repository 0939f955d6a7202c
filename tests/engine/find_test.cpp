// The engine's search: never behind an act, the same from every shelf, and without the names that
// were erased.
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>

#include "base/json.h"
#include "engine/device_key.h"
#include "engine/saved_questions.h"
#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"
#include "tests/whole_file.h"

namespace jambline::engine {
namespace {

class FindCars : public testing::Test {
 protected:
  FindCars() {
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, 0};
    kinds_ = std::make_shared<const shelf::Names>(
        folds::named_kinds([](auto kind) { return std::string(word_of(kind)); }));
    open();
    furnish(*engine_, clock_, shop_);
  }
  void open() {
    engine_.reset();
    engine_ = log::must(Engine::open(
        {folder_.path(), clock_, std::make_unique<SeededRandom>(++seed_), "cart", {}, {}}));
  }
  void drop_shelf() {
    engine_.reset();
    for (const char* ending : {"", "-wal", "-shm"})
      std::filesystem::remove_all(folder_.path() / (std::string("shelf.db") + ending));
  }
  Result<shelf::Found> ask(const shelf::FindAsked& asked, const std::stop_token& stop = {}) {
    std::optional<Result<shelf::Found>> out;
    engine_->find(asked, kinds_, stop, [&](auto found) { out = std::move(found); });
    engine_->drain();
    return std::move(*out);
  }
  std::vector<JobId> found(const std::string& words) {
    shelf::FindAsked asked;
    asked.words = words;
    const auto answer = log::must(ask(asked));
    std::vector<JobId> out;
    for (const auto& car : answer.cars) out.push_back(car.row.job);
    return out;
  }
  bool finds(const std::string& words) { return found(words) == std::vector{shop_.job}; }
  std::string answers() {
    std::string out;
    for (const char* words : {"", "k41", "206 green", "ivo", "kim", "nib", "hood", "4711",
                              "clear A", "booth 2", "x", "quince"}) {
      shelf::FindAsked asked;
      asked.words = words;
      asked.count = true;
      out += to_json(log::must(ask(asked))) + "\n";
    }
    return out;
  }
  std::string shelf_bytes() const {
    return test::whole_file(folder_.path() / "shelf.db") +
           test::whole_file(folder_.path() / "shelf.db-wal");
  }

  log::TempFolder folder_;
  FakeClock clock_;
  std::uint64_t seed_ = 0;
  std::shared_ptr<const shelf::Names> kinds_;
  std::unique_ptr<Engine> engine_;
  SmallShop shop_;
};

TEST_F(FindCars, AreFoundByEveryKindOfWord) {
  for (const char* words : {"nib", "kim hood", "4711", "clear A nib", "urethane", "booth 2 nib"})
    EXPECT_EQ(found(words).empty(), words == std::string("urethane")) << words;
  EXPECT_TRUE(finds("nib deep green 41-206"));
}

TEST_F(FindCars, AreNeverBehindAnAct) {
  ASSERT_TRUE(found("rowan").empty());
  std::optional<std::size_t> seen;
  engine_->post(acts::WriteNote{shop_.job, "Rowan berries on the hood"}, shop_.ivo,
                [&](const auto& wrote) {
                  ASSERT_TRUE(wrote);
                  // Asked in the very moment in which the act is reported as done.
                  shelf::FindAsked asked;
                  asked.words = "rowan";
                  engine_->find(asked, kinds_, {},
                                [&](auto answer) { seen = log::must(answer).cars.size(); });
                });
  engine_->drain();
  EXPECT_EQ(seen, 1U);
  EXPECT_TRUE(finds("berr rowan"));
}

TEST_F(FindCars, AreTheSameFromEveryShelfAndWithoutOne) {
  ASSERT_TRUE(act(*engine_, acts::WriteNote{shop_.job, "wet"}, shop_.ivo));
  const std::string before = answers();
  EXPECT_NE(before.find("\"field\":\"person\""), std::string::npos);
  open();
  EXPECT_EQ(answers(), before);
  drop_shelf();
  open();
  EXPECT_EQ(answers(), before) << "folded from the log";
  drop_shelf();
  std::filesystem::create_directory(folder_.path() / "shelf.db");
  std::ofstream(folder_.path() / "shelf.db" / "in the way");
  open();
  EXPECT_EQ(answers(), before) << "from a shelf in memory";
  ASSERT_TRUE(act(*engine_, acts::WriteNote{shop_.job, "sparrow"}, shop_.ivo));
  EXPECT_TRUE(finds("sparrow"));
}

TEST_F(FindCars, AnOlderShelfIsFoldedAnew) {
  const std::string before = answers();
  engine_.reset();
  {
    auto database = log::must(
        sqlite::Database::open(folder_.path() / "shelf.db", sqlite::Database::Mode::Write, ""));
    ASSERT_TRUE(
        database.run("DROP TABLE find_words; DROP TABLE find_fact;"
                     "UPDATE stamp SET version = 7"));
  }
  open();
  EXPECT_EQ(answers(), before);
}

TEST_F(FindCars, ANameThatWasErasedFindsNothingAndIsNotInTheShelf) {
  ASSERT_TRUE(act(*engine_, acts::AddPerson{"Ottilie", job::Role::Painter}, shop_.ivo));
  const PersonId ottilie = engine_->snapshot()->shop->people.back().person;
  ASSERT_TRUE(act(*engine_, acts::WriteNote{shop_.job, "her note"}, ottilie));
  EXPECT_TRUE(finds("ottil"));
  shelf::FindAsked by_person;
  by_person.people = {ottilie};
  EXPECT_EQ(log::must(ask(by_person)).cars.size(), 1U);
  ASSERT_TRUE(act(*engine_, acts::RenamePerson{ottilie, "Ottokar"}, shop_.ivo));
  EXPECT_TRUE(found("ottil").empty()) << "people are found by the name that they have now";
  EXPECT_TRUE(finds("ottok"));
  ASSERT_TRUE(act(*engine_, acts::LetPersonGo{ottilie}, shop_.ivo));
  std::optional<Status> erased;
  engine_->erase_name(ottilie, shop_.ivo, [&](Status done) { erased = std::move(done); });
  engine_->drain();
  ASSERT_TRUE(*erased);
  EXPECT_TRUE(found("ottok").empty());
  EXPECT_EQ(log::must(ask(by_person)).cars.size(), 1U) << "what was done stays";
  for (int round = 0; round < 2; ++round) {
    const std::string bytes = shelf_bytes();
    for (const char* gone : {"Ottilie", "ottilie", "Ottokar", "ottokar", "ttil", "ttok"})
      EXPECT_EQ(bytes.find(gone), std::string::npos) << gone;
    engine_.reset();
  }
}

TEST_F(FindCars, ANoteThatWasErasedFindsNothingAndLeavesTheShelf) {
  const auto wrote =
      act(*engine_, acts::WriteNote{shop_.job, "Zanzibarius waits outside"}, shop_.ivo);
  ASSERT_TRUE(wrote);
  ASSERT_TRUE(finds("zanzi"));
  engine_.reset();
  {
    const auto log = log::must(log::EntryLog::open(folder_.path(), log::OpenMode::Write));
    const auto key = log::must(seal::SigningKey::load(folder_.path() / "device.key"));
    SeededRandom random(99);
    ASSERT_TRUE(log->erase_payload(key, shop_.ivo, wrote->entries.front().hash, "asked for",
                                   entries::erasable_kinds(), clock_.now(), random));
  }
  open();
  EXPECT_TRUE(found("zanzi").empty());
  engine_.reset();
  const std::string bytes = shelf_bytes();
  for (const char* gone : {"Zanzibarius", "zanzibarius", "anzibar"})
    EXPECT_EQ(bytes.find(gone), std::string::npos) << gone;
}

TEST_F(FindCars, AStoppedQuestionIsAnsweredWithStopped) {
  std::stop_source stop;
  stop.request_stop();
  const auto answer = ask({}, stop.get_token());
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().code, Code::Stopped);
}

TEST_F(FindCars, SavedQuestionsAreThereAfterARestart) {
  EXPECT_TRUE(saved_questions(*engine_).empty());
  SavedQuestion late{"late this year", {}};
  late.asked.words = "\"green\"";
  late.asked.late = true;
  late.asked.people = {shop_.ivo};
  late.opened = OpenedIn::ThisYear;
  keep_questions(*engine_, {late});
  engine_->drain();
  open();
  EXPECT_EQ(saved_questions(*engine_), std::vector{late});
  keep_questions(*engine_, {});
  engine_->drain();
  open();
  EXPECT_TRUE(saved_questions(*engine_).empty());
  engine_->keep_draft(saved_questions_form, "[{\"name\":7}]");
  EXPECT_TRUE(saved_questions(*engine_).empty()) << "what cannot be read is no question";
}

}  // namespace
}  // namespace jambline::engine
