// The log is the only write: when it refuses, every act fails with its reason and nothing changes.
#include <gtest/gtest.h>

#include "base/json.h"
#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"
#include "tests/log/refusing_log.h"

namespace jambline::engine {
namespace {

std::string all_of(const Snapshot& snapshot) {
  return to_json(*snapshot.shop) + to_json(*snapshot.floor) + to_json(*snapshot.record) +
         to_json(*snapshot.car) + std::to_string(snapshot.timeline->size()) +
         std::to_string(snapshot.own_entries);
}

TEST(OnlyWrite, WithAppendRefusingEveryActFailsAndAllFoldsStayEqual) {
  const log::TempFolder folder;
  FakeClock clock;
  clock.moment = {1'790'000'000'000, 1000, BootId{{1}}, 0};
  auto refusing = std::make_unique<log::RefusingLog>(log::open_log(folder.path()));
  log::RefusingLog& log = *refusing;
  const auto open = [&](std::unique_ptr<log::EntryLog> given) {
    Engine::Parts parts{folder.path(), clock, std::make_unique<SeededRandom>(7), "cart", {}, {}};
    parts.log = std::move(given);
    return log::must(Engine::open(std::move(parts)));
  };
  auto engine = open(std::move(refusing));
  SmallShop shop;
  furnish(*engine, clock, shop);
  ASSERT_FALSE(testing::Test::HasFatalFailure());
  engine->want_record();
  engine->keep_draft("open-car", R"({"plate":"N 7"})");
  engine->drain();
  const std::string before = all_of(*engine->snapshot());
  const auto commands = every_command(shop);

  for (const Code reason : {Code::DiskFull, Code::FileFailed, Code::ReadOnly}) {
    log.refuse = reason;
    for (const auto& command : commands) {
      const auto refused = act(*engine, command, shop.ivo);
      ASSERT_FALSE(refused) << command.index();
      EXPECT_EQ(refused.error().code, reason) << command.index();
      EXPECT_EQ(all_of(*engine->snapshot()), before) << command.index();
      EXPECT_TRUE(engine->snapshot()->trouble) << command.index();
    }
  }
  EXPECT_EQ(engine->draft("open-car"), R"({"plate":"N 7"})");

  // The same after a restart: all of it was folded from the log alone.
  engine.reset();
  engine = open(nullptr);
  engine->watch(shop.job);
  engine->want_record();
  engine->drain();
  EXPECT_EQ(all_of(*engine->snapshot()), before);
  EXPECT_EQ(engine->draft("open-car"), R"({"plate":"N 7"})");
  EXPECT_TRUE(act(*engine, commands[0], shop.ivo));
  EXPECT_FALSE(engine->snapshot()->trouble);
}

// The commands above are good ones: with a log that writes, each of them is written. Each into a
// copy of one shop, for the next one may need what this one takes away.
TEST(OnlyWrite, WithALogThatWritesEachOfThemIsWritten) {
  const log::TempFolder made;
  FakeClock clock;
  clock.moment = {1'790'000'000'000, 1000, BootId{{1}}, 0};
  const auto open = [&](const std::filesystem::path& folder, std::uint64_t seed) {
    Engine::Parts parts{folder, clock, std::make_unique<SeededRandom>(seed), "cart", {}, {}};
    return log::must(Engine::open(std::move(parts)));
  };
  SmallShop shop;
  furnish(*open(made.path(), 7), clock, shop);
  ASSERT_FALSE(testing::Test::HasFatalFailure());
  const auto commands = every_command(shop);
  ASSERT_EQ(commands.size(), acts::CommandKinds::count);
  for (std::size_t kind = 0; kind < commands.size(); ++kind) {
    const log::TempFolder folder;
    std::filesystem::copy(made.path(), folder.path(), std::filesystem::copy_options::recursive);
    const auto engine = open(folder.path(), 8 + kind);
    const auto own = engine->snapshot()->own_entries;
    const auto wrote = act(*engine, commands[kind], shop.ivo);
    EXPECT_TRUE(wrote) << kind << " " << (wrote ? "" : wrote.error().operation);
    EXPECT_GT(engine->snapshot()->own_entries, own) << kind;
  }
}

}  // namespace
}  // namespace jambline::engine
