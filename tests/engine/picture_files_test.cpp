// The file of a picture first, then its entry: nothing is named that is not there, and what was
// left behind is found.
#include <fstream>
#include <gtest/gtest.h>

#include "engine/pictures.h"
#include "engine/restore.h"
#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"

namespace jambline::engine {
namespace {

// The real disk, until it is full: then a write takes half of its bytes and is refused.
class FillingDisk final : public blobs::Files {
 public:
  bool full = false;
  std::size_t most_bytes = SIZE_MAX;  // at once

  Result<std::unique_ptr<blobs::FileWriter>> create(const Path& file) override {
    JAMBLINE_ASSIGN(auto writer, disk_.create(file));
    return std::make_unique<Writer>(*this, std::move(writer));
  }
  Result<std::unique_ptr<blobs::FileWriter>> append(const Path& file) override {
    return disk_.append(file);
  }
  Result<std::unique_ptr<blobs::FileReader>> open(const Path& file) override {
    return disk_.open(file);
  }
  Status rename(const Path& from, const Path& to) override { return disk_.rename(from, to); }
  Status remove(const Path& file) override { return disk_.remove(file); }
  Status make_folder(const Path& folder) override { return disk_.make_folder(folder); }
  Status sync_folder(const Path& folder) override { return disk_.sync_folder(folder); }
  Result<std::vector<blobs::FolderItem>> list(const Path& folder) override {
    return disk_.list(folder);
  }
  Result<std::uint64_t> size_bytes(const Path& file) override { return disk_.size_bytes(file); }
  Result<std::uint64_t> free_bytes(const Path& folder) override { return disk_.free_bytes(folder); }

 private:
  class Writer final : public blobs::FileWriter {
   public:
    Writer(const FillingDisk& disk, std::unique_ptr<blobs::FileWriter> file)
        : disk_(disk), file_(std::move(file)) {}
    Status write(std::span<const std::uint8_t> bytes) override {
      if (!disk_.full && bytes.size() <= disk_.most_bytes) return file_->write(bytes);
      JAMBLINE_TRY(file_->write(bytes.first(bytes.size() / 2)));
      return fail(Code::DiskFull, "write", "picture");
    }
    Status sync() override { return file_->sync(); }
    Status close() override { return file_->close(); }

   private:
    const FillingDisk& disk_;
    std::unique_ptr<blobs::FileWriter> file_;
  };
  blobs::PosixFiles disk_;
};

class PictureFiles : public testing::Test {
 protected:
  void SetUp() override {
    clock.moment = {1'790'000'000'000, 1000, BootId{{1}}, 0};
    open();
    furnish(*engine, clock, shop);
  }
  void open() {
    engine.reset();
    Engine::Parts parts{folder.path(), clock, std::make_unique<SeededRandom>(++seed),
                        "cart",        {},    {}};
    engine = log::must(Engine::open(std::move(parts)));
    engine->watch(shop.job);
    engine->drain();
  }
  std::vector<LeftoverPicture> leftovers() {
    std::optional<Result<std::vector<LeftoverPicture>>> out;
    engine->leftovers([&](auto found) { out = std::move(found); });
    engine->drain();
    return log::must(std::move(*out));
  }
  PictureCheck check() {
    std::optional<Result<PictureCheck>> out;
    engine->check_pictures({}, [&](auto found) { out = std::move(found); });
    engine->drain();
    return log::must(std::move(*out));
  }
  Status drop(const Hash& file) {
    std::optional<Status> out;
    engine->drop_leftover(file, [&](Status dropped) { out = std::move(dropped); });
    engine->drain();
    return std::move(*out);
  }
  std::size_t kept() { return engine->snapshot()->car->pictures.size(); }

  log::TempFolder folder;
  std::uint64_t seed = 6;
  FakeClock clock;
  std::unique_ptr<Engine> engine;
  SmallShop shop;  // one picture is kept in it
  const std::vector<std::uint8_t> bytes{9, 8, 7, 6};
  const std::vector<std::uint8_t> preview{9, 8};
};

TEST_F(PictureFiles, AKeptPictureIsInTheRecordAndOnTheDiskUnderItsHash) {
  const auto command = picture_of(shop.job, bytes);
  ASSERT_TRUE(keep(*engine, bytes, command, shop.ivo));
  EXPECT_EQ(kept(), 2U);
  EXPECT_EQ(*engine->blobs()->get(command.facts.file), bytes);
  EXPECT_TRUE(leftovers().empty());
  EXPECT_EQ(engine->draft("picture " + command.facts.file.hex()), "");
}

TEST_F(PictureFiles, OneThatIsOnItsWayWhenTheProgramLeavesIsKept) {
  bool said = false;
  engine->keep_picture(std::make_shared<const std::vector<std::uint8_t>>(bytes), nullptr,
                       picture_of(shop.job, bytes), shop.ivo,
                       [&](Result<Wrote> wrote) { said = wrote.has_value(); });
  open();
  EXPECT_TRUE(said);
  EXPECT_EQ(kept(), 2U);
  EXPECT_TRUE(leftovers().empty());
}

TEST_F(PictureFiles, ThePreviewIsKeptBesideItAndIsNoPictureOfItsOwn) {
  const auto wrote = keep(*engine, bytes, picture_of(shop.job, bytes), shop.ivo, preview);
  ASSERT_TRUE(wrote);
  const auto& facts = engine->snapshot()->car->pictures.back().facts;
  ASSERT_TRUE(facts.preview);
  EXPECT_EQ(*engine->blobs()->get(*facts.preview), preview);
  EXPECT_TRUE(leftovers().empty());
  EXPECT_EQ(engine->draft("preview " + facts.preview->hex()), "");
  EXPECT_EQ(check().files, 3U);
  std::filesystem::remove(engine->blobs()->path_of(*facts.preview));
  const auto found = check();
  ASSERT_EQ(found.not_here.size(), 1U);
  EXPECT_EQ(found.not_here.front().picture, engine->snapshot()->car->pictures.back().picture);
}

TEST_F(PictureFiles, ThePreviewOfALeftoverIsNotOfferedAndGoesWithIt) {
  auto command = picture_of(shop.job, bytes);
  command.place.panel = job::Panel::Roof;  // the entry is refused
  ASSERT_FALSE(keep(*engine, bytes, command, shop.ivo, preview));
  open();
  const auto left = leftovers();
  ASSERT_EQ(left.size(), 1U);
  EXPECT_EQ(left.front().file, command.facts.file);
  ASSERT_TRUE(left.front().meant);
  EXPECT_EQ(left.front().meant->facts.preview, seal::sha256(preview));
  EXPECT_TRUE(*engine->blobs()->has(seal::sha256(preview)));
  // As after a kill between the two files.
  std::filesystem::remove(engine->blobs()->path_of(command.facts.file));
  EXPECT_TRUE(leftovers().empty());
  ASSERT_FALSE(keep(*engine, bytes, command, shop.ivo, preview));
  ASSERT_TRUE(drop(command.facts.file));
  EXPECT_FALSE(*engine->blobs()->has(seal::sha256(preview)));
  EXPECT_TRUE(leftovers().empty());
}

TEST_F(PictureFiles, APreviewThatANamedPictureHasStaysWhenALeftoverGoes) {
  ASSERT_TRUE(keep(*engine, {4, 5, 6}, picture_of(shop.job, {4, 5, 6}), shop.ivo, preview));
  auto command = picture_of(shop.job, bytes);
  command.place.panel = job::Panel::Roof;
  ASSERT_FALSE(keep(*engine, bytes, command, shop.ivo, preview));
  ASSERT_TRUE(drop(command.facts.file));
  EXPECT_TRUE(*engine->blobs()->has(seal::sha256(preview)));
}

TEST_F(PictureFiles, NoEntryNamesAFileThatIsNotThere) {
  const auto refused = act(*engine, picture_of(shop.job, bytes), shop.ivo);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::NoSuchFile);
  EXPECT_EQ(kept(), 1U);
}

TEST_F(PictureFiles, BytesThatAreNotThoseOfTheHashAreNotKept) {
  const auto refused = keep(*engine, {1, 1, 1}, picture_of(shop.job, bytes), shop.ivo);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::BadHash);
  EXPECT_EQ(engine->blobs()->list()->size(), 1U);
  EXPECT_TRUE(leftovers().empty());
}

// As after a kill between file and entry: the file is there, the entry is not.
TEST_F(PictureFiles, WhatWasLeftBehindIsFoundAtTheNextStartWithWhereItWasMeantToGo) {
  auto command = picture_of(shop.job, bytes);
  command.place.panel = job::Panel::Roof;  // not in the job: the entry is refused
  ASSERT_FALSE(keep(*engine, bytes, command, shop.ivo));
  open();
  const auto left = leftovers();
  ASSERT_EQ(left.size(), 1U);
  EXPECT_EQ(left.front().file, command.facts.file);
  EXPECT_EQ(left.front().size_bytes, bytes.size());
  EXPECT_EQ(left.front().person, shop.ivo);
  ASSERT_TRUE(left.front().meant);
  EXPECT_EQ(left.front().meant->job, shop.job);
  EXPECT_EQ(left.front().meant->place, command.place);
  // It is kept after all.
  auto mended = *left.front().meant;
  mended.place.panel = job::Panel::Hood;
  ASSERT_TRUE(act(*engine, mended, shop.ivo));
  EXPECT_TRUE(leftovers().empty());
}

TEST_F(PictureFiles, ALeftoverIsDroppedAndANamedPictureIsNot) {
  auto command = picture_of(shop.job, bytes);
  command.place.panel = job::Panel::Roof;
  ASSERT_FALSE(keep(*engine, bytes, command, shop.ivo));
  ASSERT_TRUE(drop(command.facts.file));
  EXPECT_TRUE(leftovers().empty());
  EXPECT_EQ(engine->draft("picture " + command.facts.file.hex()), "");
  const auto refused = drop(shop.picture_facts.file);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::NotAllowed);
  EXPECT_TRUE(*engine->blobs()->has(shop.picture_facts.file));
}

TEST_F(PictureFiles, APictureTakenBackIsNoLeftover) {
  ASSERT_TRUE(act(*engine,
                  acts::Withdraw{shop.job, engine->snapshot()->car->pictures.front().taken, ""},
                  shop.ivo));
  EXPECT_EQ(kept(), 0U);
  EXPECT_TRUE(leftovers().empty());
}

TEST_F(PictureFiles, DamagedAndLostFilesAreNamedWithTheirCar) {
  ASSERT_TRUE(keep(*engine, bytes, picture_of(shop.job, bytes), shop.ivo));
  EXPECT_EQ(check().files, 2U);
  EXPECT_TRUE(check().damaged.empty());
  std::ofstream(engine->blobs()->path_of(shop.picture_facts.file)) << "other";
  std::filesystem::remove(engine->blobs()->path_of(picture_of(shop.job, bytes).facts.file));
  const auto found = check();
  ASSERT_EQ(found.damaged.size(), 1U);
  EXPECT_EQ(found.damaged.front().job, shop.job);
  EXPECT_EQ(found.damaged.front().picture, shop.picture);
  ASSERT_EQ(found.not_here.size(), 1U);
  EXPECT_FALSE(found.stopped);
}

TEST_F(PictureFiles, GoOutWithTheShopAndComeBackWithIt) {
  const auto command = picture_of(shop.job, bytes);
  ASSERT_TRUE(keep(*engine, bytes, command, shop.ivo, preview));
  const log::TempFolder out, back;
  std::optional<Result<log::Exported>> exported;
  std::vector<double> parts;
  engine->export_shop(
      out.path() / "shop", {}, [&](double part) { parts.push_back(part); },
      [&](Result<log::Exported> done) { exported = std::move(done); });
  engine->drain();
  ASSERT_TRUE(exported && *exported);
  EXPECT_TRUE(std::is_sorted(parts.begin(), parts.end()));
  EXPECT_EQ(parts.back(), 1);
  log::must(restore_shop(out.path() / "shop", back.path()));
  blobs::PosixFiles files;
  const auto there = log::must(blobs::BlobStore::open_read_only(files, back.path() / "blobs"));
  EXPECT_EQ(log::must(there->list()).size(), 3U);
  EXPECT_EQ(log::must(there->get(command.facts.file)), bytes);
  EXPECT_EQ(log::must(there->get(seal::sha256(preview))), preview);
}

TEST_F(PictureFiles, OfOtherBytesAreNotTakenInAndAreNamed) {
  const auto command = picture_of(shop.job, bytes);
  ASSERT_TRUE(keep(*engine, bytes, command, shop.ivo));
  const log::TempFolder out;
  engine->export_shop(out.path() / "shop", {}, {}, [](const auto& done) { log::must(done); });
  engine->drain();
  blobs::PosixFiles files;
  const auto travelling =
      log::must(blobs::BlobStore::open_read_only(files, out.path() / "shop" / "blobs"));
  std::ofstream(travelling->path_of(command.facts.file), std::ios::trunc) << "other";
  std::filesystem::remove(engine->blobs()->path_of(command.facts.file));
  std::optional<Result<log::Imported>> imported;
  engine->import_shop(out.path() / "shop", {}, {},
                      [&](Result<log::Imported> done) { imported = std::move(done); });
  engine->drain();
  ASSERT_TRUE(imported && *imported);
  ASSERT_EQ((**imported).refused.size(), 1U);
  EXPECT_EQ((**imported).refused.front().second.code, Code::BadHash);
  EXPECT_FALSE(*engine->blobs()->has(command.facts.file));
  EXPECT_EQ(check().not_here.size(), 1U);
}

TEST(PicturesOnAFullDisk, LeaveNothingHalfAndTheNextOneIsKept) {
  const log::TempFolder folder;
  const auto disk = std::make_shared<FillingDisk>();
  Pictures pictures(folder.path(), disk);
  ASSERT_TRUE(pictures.open(true));
  const std::vector<std::uint8_t> bytes(100'000, 7);
  const std::vector<std::uint8_t> preview(1000, 3);
  auto facts = picture_of({}, bytes).facts;
  facts.preview = seal::sha256(preview);
  const Hash file = facts.file;
  disk->full = true;
  const auto refused = pictures.put(bytes, &preview, facts);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::DiskFull);
  EXPECT_TRUE(pictures.store()->list()->empty());
  EXPECT_TRUE(std::filesystem::is_empty(folder.path() / "blobs" / "incoming"));
  disk->full = false;
  EXPECT_TRUE(pictures.put(bytes, &preview, facts));
  EXPECT_EQ(*pictures.store()->get(file), bytes);
  EXPECT_EQ(*pictures.store()->get(*facts.preview), preview);
}

// The preview goes onto the disk, the picture does not.
TEST(PicturesOnAFullDisk, LeaveNoPreviewWithoutItsPicture) {
  const log::TempFolder folder;
  const auto disk = std::make_shared<FillingDisk>();
  Pictures pictures(folder.path(), disk);
  ASSERT_TRUE(pictures.open(true));
  const std::vector<std::uint8_t> bytes(100'000, 7);
  const std::vector<std::uint8_t> preview(1000, 3);
  auto facts = picture_of({}, bytes).facts;
  facts.preview = seal::sha256(preview);
  disk->most_bytes = 50'000;
  ASSERT_FALSE(pictures.put(bytes, &preview, facts));
  EXPECT_TRUE(pictures.store()->list()->empty());
}

TEST_F(PictureFiles, AFolderThatWasRemovedIsSaidAndTheNextStartMakesItAnew) {
  std::filesystem::remove_all(folder.path() / "blobs");
  const auto refused = keep(*engine, bytes, picture_of(shop.job, bytes), shop.ivo);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::NoSuchFile);
  EXPECT_EQ(kept(), 1U);
  EXPECT_EQ(check().not_here.size(), 1U);
  open();
  EXPECT_TRUE(keep(*engine, bytes, picture_of(shop.job, bytes), shop.ivo));
  EXPECT_EQ(kept(), 2U);
}

}  // namespace
}  // namespace jambline::engine
