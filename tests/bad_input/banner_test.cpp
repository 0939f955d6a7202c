// The running program on a folder that is not as it should be, and with acts that do not fit: the
// banner that stands above every screen.
#include "app/jambline/program.h"
#include "tests/bad_input/full_disk.h"
#include "tests/bad_input/plain_words.h"
#include "tests/bad_input/shop_folder.h"
#include "tests/bad_input/shown.h"

namespace jambline::bad_input {
namespace {

class Banner : public testing::Test {
 protected:
  void start() {
    app::Options options;
    options.size = QSize(412, 892);
    auto opened = app::Program::open(shop.path(), shop.clock, options);
    ASSERT_TRUE(opened) << code_name(opened.error().code);
    program = std::move(*opened);
    ASSERT_TRUE(program->show());
    settle();
  }
  void settle() {
    for (int i = 0; i < 3; ++i) {
      program->engine().drain();
      QCoreApplication::processEvents();
    }
  }
  // Posts as a screen does and gives back what it was told.
  std::optional<Error> post(acts::Command command) {
    std::optional<Error> told;
    program->session().post(std::move(command), [&](const Result<engine::Wrote>& wrote) {
      if (!wrote) told = wrote.error();
    });
    settle();
    return told;
  }
  void expect_banner(const QString& what, const char* picture) {
    const auto* shell = program->window()
                            ->property("models")
                            .value<QObject*>()
                            ->property("shell")
                            .value<QObject*>();
    ASSERT_NE(shell, nullptr);
    EXPECT_TRUE(shell->property("bannerShown").toBool()) << picture;
    const screens::ErrorWords words{shell->property("bannerWhat").toString(),
                                    shell->property("bannerKept").toString(),
                                    shell->property("bannerTodo").toString()};
    EXPECT_EQ(complaint(words), "") << picture;
    EXPECT_EQ(words.what.toStdString(), what.toStdString());
    for (const QString& part : {words.what, words.kept, words.todo})
      expect_shown(*program->window(), part);
    expect_shown(*program->window(), "K 41-206");  // the car is still shown
    draw(*program->window(), picture);
  }
  // Every act is refused and nothing is written.
  void expect_only_read(Code code) {
    const std::string bytes = test::whole_file(shop.file());
    const auto entries = shop.entries();
    for (const auto& command : engine::every_command(shop.shop)) {
      const auto told = post(command);
      ASSERT_TRUE(told) << command.index();
      EXPECT_EQ(told->code, code);
      expect_plain(*told);
    }
    EXPECT_EQ(test::whole_file(shop.file()), bytes);
    EXPECT_EQ(shop.entries(), entries);
  }
  void TearDown() override { program.reset(); }

  ShopFolder shop;
  std::unique_ptr<app::Program> program;
};

TEST_F(Banner, ANewerVersionsShopIsShownAndNotWritten) {
  sql(shop.path(), "ALTER TABLE entries ADD COLUMN later TEXT; PRAGMA user_version=2");
  start();
  expect_banner("This shop was written by a newer version.", "newer_version");
  expect_only_read(Code::NewerSchema);
}

TEST_F(Banner, AnotherDevicesKey) {
  fs::remove(shop.path() / "device.key");
  log::must(log::key_number(9).save(shop.path() / "device.key"));
  start();
  expect_banner("The key in this folder belongs to another device.", "another_key");
  expect_only_read(Code::WrongKey);
}

TEST_F(Banner, AKeyOfTheWrongSize) {
  put_bytes(shop.path() / "device.key", "abc");
  start();
  expect_banner("The key of this device cannot be read.", "key_not_readable");
  expect_only_read(Code::Malformed);
}

TEST_F(Banner, NoKey) {
  fs::remove(shop.path() / "device.key");
  start();
  expect_banner("The key of this device is gone.", "key_gone");
  expect_only_read(Code::NoSuchFile);
}

TEST_F(Banner, AReadOnlyFolder) {
  shop.lock_up();
  {
    const PlainPerson plain;
    start();
  }
  expect_banner("Nothing can be written in the folder of this shop.", "read_only_folder");
  expect_only_read(Code::ReadOnly);
}

TEST_F(Banner, SettingsThatCannotBeRead) {
  put_bytes(shop.path() / "device.toml", "theme = [[[");
  start();
  expect_banner("The settings of this device cannot be read.", "settings_not_readable");
  EXPECT_FALSE(post(acts::WriteNote{shop.shop.job, "goes on"}));
}

TEST_F(Banner, AFullDiskKeepsWhatIsTypedAndGoesOnWhenThereIsRoom) {
  FullDisk disk;
  start();
  const auto entries = shop.entries();
  disk.full(true);
  const auto told =
      post(acts::StopClock{shop.shop.ivo});  // the ballast is given up, and not enough
  ASSERT_TRUE(told);
  EXPECT_EQ(told->code, Code::DiskFull);
  EXPECT_FALSE(fs::exists(shop.path() / "ballast"));
  expect_banner("This was not saved. The device is full.", "full_disk");
  EXPECT_EQ(shop.entries(), entries);
  program->session().openCar(QString::fromStdString(shop.shop.job.hex()));
  settle();
  EXPECT_TRUE(program->session().hasCar()) << "reading goes on";
  disk.full(false);
  EXPECT_FALSE(post(acts::StopClock{shop.shop.ivo}));
  const auto* shell =
      program->window()->property("models").value<QObject*>()->property("shell").value<QObject*>();
  EXPECT_FALSE(shell->property("bannerShown").toBool());
  program.reset();  // before the disk goes
}

TEST_F(Banner, AFullDiskAtTheStartShowsTheShop) {
  sql(shop.path(), "PRAGMA journal_mode=DELETE");  // opening it to write needs room
  FullDisk disk;
  disk.full(true);
  start();
  expect_banner("Nothing can be saved. The device is full.", "full_disk_at_start");
  program.reset();
}

TEST_F(Banner, AClockOf1970) {
  shop.clock.moment = {300'000, 300'000, BootId{{2}}, 0};
  start();
  expect_banner("The clock of this device stands before 2025.", "clock_1970");
  EXPECT_FALSE(post(acts::WriteNote{shop.shop.job, "woke up"})) << "the act is saved, with a mark";
  expect_banner("The clock of this device stands before 2025.", "clock_1970_after_an_act");
}

TEST_F(Banner, AClockThatWentBackAYear) {
  start();
  shop.clock.advance_ms(1'800'000);
  shop.clock.moment.wall_ms -= 365LL * 86'400'000;
  EXPECT_FALSE(post(acts::StopClock{shop.shop.ivo}));
  expect_banner("The clock of this device went back.", "clock_a_year_back");
}

TEST_F(Banner, AStopWithoutAStartIsRefused) {
  start();
  EXPECT_FALSE(post(acts::StopClock{shop.shop.ivo}));
  const auto entries = shop.entries();
  ASSERT_TRUE(post(acts::StopClock{shop.shop.ivo}));
  expect_banner("No clock runs for Ivo.", "stop_without_a_start");
  EXPECT_EQ(shop.entries(), entries);
}

TEST_F(Banner, AMarkOutsideItsPanelIsRefused) {
  start();
  const auto entries = shop.entries();
  for (const auto& [x_mm, y_mm] : {std::pair{-50.0, 10.0}, {1e9, 1e9}, {0.0, -0.5}}) {
    const auto told = post(acts::PlaceMark{shop.shop.job, job::Panel::Hood, x_mm, y_mm});
    ASSERT_TRUE(told) << x_mm;
    EXPECT_EQ(told->code, Code::OutsidePanel);
  }
  expect_banner("That place is not on the panel.", "mark_outside_its_panel");
  EXPECT_EQ(shop.entries(), entries);
}

TEST_F(Banner, AVinWithAWrongCheckSignIsRefusedUntilItIsUsedAsTyped) {
  start();
  ASSERT_TRUE(post(acts::SetVin{shop.shop.job, "11111111211111111"}));
  expect_banner("This VIN does not check. Look at place 9.", "vin_wrong_check_sign");
  EXPECT_FALSE(post(acts::SetVin{shop.shop.job, "11111111211111111", true}));
}

}  // namespace
}  // namespace jambline::bad_input
