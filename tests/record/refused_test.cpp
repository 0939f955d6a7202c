// What is refused is read from a folder as the program reads it: told with the reason, obeyed by no
// list, page or sheet. Our own design.
#include "tests/engine/two_devices.h"
#include "tests/record/run.h"

namespace jambline {
namespace {

class RecordRefused : public engine::TwoTablets {
 protected:
  void SetUp() override {
    TwoTablets::SetUp();
    entries::OperationPlanned answered;
    answered.operation = OperationId{{9}};
    answered.stage = job::Stage::Correct;
    answered.title = "sand again";
    answered.estimate_min = 30;
    answered.approval = job::Approval::Given;
    booth.say_all_the_same({{car, answered}}, tom);
    office.take_from(booth);
    office.engine.reset();
    at = " --folder " + office.folder.path().string();
  }
  engine::ShopTablet desk{"desk", true};
  std::string at;
};

TEST_F(RecordRefused, IsToldWithItsReasonAndPlansNothing) {
  const Said said = run("show k41206" + at);
  EXPECT_EQ(said.code, 0) << said.words;
  expect_words(said, "[refused: no right to say this]");
  expect_words(said, "1 entry is refused and not obeyed");
  const auto hours = said.words.substr(said.words.find("\nhours\n"));
  EXPECT_EQ(hours.substr(0, hours.find("time line")).find("sand again"), std::string::npos);
  const Said json = run("show k41206 --json" + at);
  expect_words(json, R"("refused":"no right to say this")");
  expect_words(json, R"("refused_entries":1)");
}

// The cars of the list are those of a floor that obeys no more than this.
TEST_F(RecordRefused, APlateOfALostDeviceIsNotListed) {
  office.open();
  log::must(office.admit(desk.admission(true), rosa));
  desk.take_from(office);
  booth.say_all_the_same({{car, entries::PlateSet{"K 99-999", {}}}}, tom);
  office.take_from(booth);
  expect_words(run("list" + at), "K 99-999");
  log::must(desk.revoke(booth.key().device(), rosa));
  office.take_from(desk);
  office.engine.reset();
  const Said said = run("list" + at);
  expect_words(said, "K 41-206");
  EXPECT_EQ(said.words.find("K 99-999"), std::string::npos);
  expect_words(run("show k41206" + at), "[refused: after its device was revoked]");
}

}  // namespace
}  // namespace jambline
