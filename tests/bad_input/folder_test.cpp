// A log file that is not whole, is newer, or lies where nobody may write; and a second copy.
#include <cstdlib>

#include "entries/entry.h"
#include "tests/bad_input/shop_folder.h"

namespace jambline::bad_input {
namespace {

bool is_damage(Code code) {
  return code == Code::DatabaseDamaged || code == Code::ChainBroken || code == Code::BadHash ||
         code == Code::BadSignature;
}

TEST(DamagedLog, RandomBytesOverAnyPageLoseNothingThatAGoodCopyHas) {
  ShopFolder shop;
  const auto wanted = shop.entries();
  const std::string whole = test::whole_file(shop.file());
  ASSERT_EQ(whole.size() % 4096, 0U);
  const std::size_t index = page_of(shop.path(), "entries_by_device");
  ASSERT_GT(index, 1U);
  for (std::size_t page = 1; page <= whole.size() / 4096; ++page) {
    const std::string spoilt = with_random_bytes(whole, (page - 1) * 4096, 4096);
    shop.put_log(spoilt);
    auto opened = shop.open();
    if (!opened) {
      EXPECT_TRUE(is_damage(opened.error().code)) << page;
      EXPECT_EQ(test::whole_file(shop.file()), spoilt) << "refused and changed, page " << page;
    } else {
      folds_of(**opened, shop.shop.job);
      opened->reset();
    }
    if (page == 1 || page == index || page == page_of(shop.path(), "entries")) {
      EXPECT_FALSE(opened) << "read on over page " << page;
    }
    shop.put_log(whole);
    EXPECT_EQ(shop.entries(), wanted) << page;
    EXPECT_TRUE(shop.open()) << page;
    shop.put_log(whole);
  }
}

TEST(DamagedLog, ACutOrEmptyFileIsRefusedAndNothingIsMadeInItsPlace) {
  ShopFolder shop;
  const auto wanted = shop.entries();
  const std::string whole = test::whole_file(shop.file());
  for (const std::size_t length : {std::size_t{0}, std::size_t{50}, std::size_t{4096},
                                   whole.size() / 2, whole.size() - 4096, whole.size() - 1}) {
    shop.put_log(whole.substr(0, length));
    const auto opened = shop.open();
    ASSERT_FALSE(opened) << length;
    EXPECT_EQ(opened.error().code, Code::DatabaseDamaged) << length;
    EXPECT_EQ(test::whole_file(shop.file()), whole.substr(0, length)) << length;
  }
  shop.put_log(whole);
  EXPECT_EQ(shop.entries(), wanted);
}

// 250 notes on another car, so that what comes next lies on pages of its own.
void write_notes(const ShopFolder& shop) {
  const auto log = log::open_log(shop.path());
  const auto key = log::must(seal::SigningKey::load(shop.path() / "device.key"));
  SeededRandom random(3);
  const auto written = entries::write(entries::NoteWritten{"washed again"});
  const std::vector<log::Draft> notes(
      250, {log::job_number(9), written.kind, written.schema, written.payload});
  log::must(log->append(key, shop.shop.ivo, notes, shop.clock.moment, random));
}

// A page that a start does not read: one car's entries among those of many.
TEST(DamagedLog, DamageThatIsMetLaterStopsEveryWriteFromThereOn) {
  ShopFolder shop;
  JobId job;
  write_notes(shop);
  {
    const auto engine = log::must(shop.open());
    auto open = engine::car_to_open();
    open.plate = "M 7-310";
    job = log::must(engine::act(*engine, open, shop.shop.ivo)).job;
  }
  for (int i = 0; i < 6; ++i) write_notes(shop);
  log::must(shop.open()).reset();  // the list of cars is kept, so the next start reads no car
  const auto wanted = shop.entries();
  const std::string whole = test::whole_file(shop.file());
  const std::size_t at = whole.find("M 7-310");
  ASSERT_NE(at, std::string::npos);
  shop.put_log(with_random_bytes(whole, at / 4096 * 4096, 4096));

  auto engine = log::must(shop.open());
  EXPECT_FALSE(engine->snapshot()->read_only);
  engine->watch(job);
  engine->drain();
  ASSERT_TRUE(engine->snapshot()->trouble);
  EXPECT_EQ(engine->snapshot()->trouble->code, Code::DatabaseDamaged);
  EXPECT_TRUE(engine->snapshot()->read_only);
  for (const auto& command : engine::every_command(shop.shop)) {
    const auto refused = engine::act(*engine, command, shop.shop.ivo);
    ASSERT_FALSE(refused) << command.index();
    EXPECT_EQ(refused.error().code, Code::DatabaseDamaged) << command.index();
  }
  engine.reset();
  shop.put_log(whole);
  EXPECT_EQ(shop.entries(), wanted);
}

TEST(NewerSchema, ShowsEverythingRefusesEveryActAndChangesNoByte) {
  ShopFolder shop;
  std::string folds;
  {
    const auto engine = log::must(shop.open());
    folds = folds_of(*engine, shop.shop.job);
  }
  sql(shop.path(), "ALTER TABLE entries ADD COLUMN later TEXT; PRAGMA user_version=2");
  const std::string bytes = test::whole_file(shop.file());
  {
    const auto engine = log::must(shop.open());
    EXPECT_EQ(folds_of(*engine, shop.shop.job), folds);
    EXPECT_TRUE(engine->snapshot()->read_only);
    ASSERT_TRUE(engine->snapshot()->trouble);
    EXPECT_EQ(engine->snapshot()->trouble->code, Code::NewerSchema);
    for (const auto& command : engine::every_command(shop.shop)) {
      const auto refused = engine::act(*engine, command, shop.shop.ivo);
      ASSERT_FALSE(refused) << command.index();
      EXPECT_EQ(refused.error().code, Code::NewerSchema) << command.index();
    }
    EXPECT_EQ(folds_of(*engine, shop.shop.job), folds);
    EXPECT_EQ(engine->snapshot()->trouble->code, Code::NewerSchema);
  }
  EXPECT_EQ(test::whole_file(shop.file()), bytes);
  EXPECT_EQ(test::whole_file(shop.path() / "log.db-wal"), "");
}

TEST(ReadOnlyFolder, IsShownWithTheEntriesThatStillWaitBesideTheLog) {
  ShopFolder shop;
  const log::TempFolder copy;
  std::string folds;
  {
    const auto engine = log::must(shop.open());
    ASSERT_TRUE(engine::act(*engine, acts::WriteNote{shop.shop.job, "late"}, shop.shop.ivo));
    folds = folds_of(*engine, shop.shop.job);
    for (const char* name : {"log.db", "log.db-wal", "lock"})
      fs::copy_file(shop.path() / name, copy.path() / name);
  }
  const auto wanted = shop.entries();
  const std::string bytes = test::whole_file(copy.path() / "log.db");
  const std::string waiting = test::whole_file(copy.path() / "log.db-wal");
  ASSERT_GT(waiting.size(), 4096U);
  for (const char* name : {"log.db", "log.db-wal", "lock"})
    fs::permissions(copy.path() / name, static_cast<fs::perms>(0444));
  fs::permissions(copy.path(), static_cast<fs::perms>(0555));
  {
    const PlainPerson plain;
    const auto engine = log::must(engine::Engine::open(
        {copy.path(), shop.clock, std::make_unique<SeededRandom>(1), "cart 1", {}, {}}));
    EXPECT_EQ(folds_of(*engine, shop.shop.job), folds);
    EXPECT_TRUE(engine->snapshot()->read_only);
    ASSERT_TRUE(engine->snapshot()->trouble);
    EXPECT_EQ(engine->snapshot()->trouble->code, Code::ReadOnly);
    for (const auto& command : engine::every_command(shop.shop)) {
      const auto refused = engine::act(*engine, command, shop.shop.ivo);
      ASSERT_FALSE(refused) << command.index();
      EXPECT_EQ(refused.error().code, Code::ReadOnly) << command.index();
    }
    const auto found = log::must(log::EntryLog::audit(copy.path(), {}, {}));
    EXPECT_FALSE(found.first_bad);
    EXPECT_EQ(found.entries, wanted.size());
  }
  fs::permissions(copy.path(), fs::perms::owner_all);
  EXPECT_EQ(test::whole_file(copy.path() / "log.db"), bytes);
  EXPECT_EQ(test::whole_file(copy.path() / "log.db-wal"), waiting);
}

TEST(TwoCopies, TheSecondLeavesAndReadingGoesOnMeanwhile) {
  ShopFolder shop;
  const auto first = log::must(shop.open());
  const auto second = shop.open();
  ASSERT_FALSE(second);
  EXPECT_EQ(second.error().code, Code::FolderInUse);
  ASSERT_TRUE(engine::act(*first, acts::WriteNote{shop.shop.job, "meanwhile"}, shop.shop.ivo));
  const std::string record = std::string(JAMBLINE_RECORD);
  const std::string folder = "'" + shop.path().string() + "'";
  EXPECT_EQ(std::system((record + " verify --quiet " + folder + " > /dev/null").c_str()), 0);
  EXPECT_EQ(std::system(
                (record + " show --folder " + folder + " 'K 41-206' | grep -q meanwhile").c_str()),
            0);
  ASSERT_TRUE(engine::act(*first, acts::WriteNote{shop.shop.job, "and on"}, shop.shop.ivo));
}

}  // namespace
}  // namespace jambline::bad_input
