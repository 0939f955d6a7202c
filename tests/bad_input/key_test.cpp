// The device's key is another one's, spoilt or gone: the shop is shown and nothing is written.
#include "tests/bad_input/shop_folder.h"

namespace jambline::bad_input {
namespace {

struct Case {
  const char* name;
  std::function<void(const fs::path&)> spoil;
  Code code;
};

TEST(BadKey, TheShopIsShownEveryActIsRefusedAndTheOwnKeyPutBackWrites) {
  ShopFolder shop;
  const fs::path key = shop.path() / "device.key";
  const std::string own = test::whole_file(key);
  const auto wanted = shop.entries();
  std::string folds;
  {
    const auto engine = log::must(shop.open());
    folds = folds_of(*engine, shop.shop.job);
  }
  const std::string bytes = test::whole_file(shop.file());
  const Case cases[] = {
      {"another device's", [](const fs::path& file) { log::must(log::key_number(9).save(file)); },
       Code::WrongKey},
      {"too short", [&](const fs::path& file) { put_bytes(file, own.substr(0, 20)); },
       Code::Malformed},
      {"too long", [&](const fs::path& file) { put_bytes(file, own + own); }, Code::Malformed},
      {"empty", [](const fs::path& file) { put_bytes(file, ""); }, Code::Malformed},
      {"no key", [](const fs::path& file) { put_bytes(file, std::string(64, 'z') + "\n"); },
       Code::Malformed},
      {"gone", [](const fs::path&) {}, Code::NoSuchFile},
      {"a folder", [](const fs::path& file) { fs::create_directory(file); }, Code::FileFailed},
  };
  for (const auto& one : cases) {
    fs::remove_all(key);
    one.spoil(key);
    {
      auto opened = shop.open();
      ASSERT_TRUE(opened) << one.name << " " << code_name(opened.error().code);
      auto& engine = **opened;
      EXPECT_EQ(folds_of(engine, shop.shop.job), folds) << one.name;
      EXPECT_TRUE(engine.snapshot()->read_only) << one.name;
      ASSERT_TRUE(engine.snapshot()->trouble) << one.name;
      EXPECT_EQ(engine.snapshot()->trouble->code, one.code) << one.name;
      EXPECT_EQ(engine.snapshot()->trouble->subject, "device.key") << one.name;
      for (const auto& command : engine::every_command(shop.shop)) {
        const auto refused = engine::act(engine, command, shop.shop.ivo);
        ASSERT_FALSE(refused) << one.name << command.index();
        EXPECT_EQ(refused.error().code, one.code) << one.name << command.index();
      }
      EXPECT_EQ(folds_of(engine, shop.shop.job), folds) << one.name;
    }
    EXPECT_EQ(shop.entries(), wanted) << one.name;
    EXPECT_EQ(test::whole_file(shop.file()), bytes) << one.name;
  }
  fs::remove_all(key);
  put_bytes(key, own);
  const auto engine = log::must(shop.open());
  EXPECT_FALSE(engine->snapshot()->read_only);
  EXPECT_TRUE(engine::act(*engine, acts::WriteNote{shop.shop.job, "back"}, shop.shop.ivo));
}

}  // namespace
}  // namespace jambline::bad_input
