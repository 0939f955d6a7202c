// With append refusing, every act of the program fails in words, what the screens show stays equal
// and no draft is lost. The folds themselves: tests/engine/only_write_test.cpp.
#include "tests/bad_input/desk.h"
#include "tests/bad_input/plain_words.h"

namespace jambline::bad_input {
namespace {

TEST(OnlyWriteWords, WithAppendRefusingEveryActFailsInWordsAndTheScreensStayEqual) {
  Desk desk;
  desk.engine().keep_draft("open-car", R"({"plate":"N 7"})");
  desk.settle();
  const std::string before = folds_of(desk.engine(), desk.shop().job);
  for (const Code reason : {Code::DiskFull, Code::FileFailed, Code::ReadOnly}) {
    desk.log().refuse = reason;
    for (const auto& command : engine::every_command(desk.shop())) {
      desk.shell().closeBanner();
      std::optional<Error> told;
      desk.session().post(command, [&](const Result<engine::Wrote>& wrote) {
        if (!wrote) told = wrote.error();
      });
      desk.settle();
      ASSERT_TRUE(told) << command.index();
      EXPECT_EQ(told->code, reason);
      const auto& shell = desk.shell();
      EXPECT_TRUE(shell.bannerShown()) << command.index();
      EXPECT_EQ(complaint({shell.bannerWhat(), shell.bannerKept(), shell.bannerTodo()}), "")
          << command.index();
      EXPECT_EQ(shell.bannerWhat(), screens::words_of(*told).what);
      EXPECT_FALSE(shell.bannerToKnow());
      EXPECT_EQ(folds_of(desk.engine(), desk.shop().job), before) << command.index();
      EXPECT_EQ(desk.engine().draft("open-car"), R"({"plate":"N 7"})");
    }
  }
  desk.log().refuse.reset();
  desk.session().post(acts::WriteNote{desk.shop().job, "room again"});
  desk.settle();
  EXPECT_FALSE(desk.shell().bannerShown()) << "a saved act ends the message";
}

}  // namespace
}  // namespace jambline::bad_input
