#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>

#include "app/calc/calculation.h"
#include "tests/calc/json_places.h"
#include "tests/whole_file.h"

namespace jambline::app {
namespace {

struct Ran {
  int code{};
  std::string out;
  std::string errors;
};

// The program with input from a file and both outputs into files.
class Calculator : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = (std::filesystem::temp_directory_path() / "jambline-calc-XXXXXX").string();
    ASSERT_NE(mkdtemp(name.data()), nullptr);
    folder_ = name;
  }
  void TearDown() override {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }

  Ran run(const std::string& arguments, const std::string& input = "") {
    write("in", input);
    const std::string line = JAMBLINE_CALC " " + arguments + " <" + path("in") + " >" +
                             path("out") + " 2>" + path("errors");
    const int status = std::system(line.c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, contents("out"), contents("errors")};
  }
  void write(const std::string& name, const std::string& text) {
    std::ofstream(path(name), std::ios::binary) << text;
  }
  std::string path(const std::string& name) const { return (folder_ / name).string(); }

 private:
  std::string contents(const std::string& name) const { return test::whole_file(path(name)); }
  std::filesystem::path folder_;
};

std::string number(const std::string& text, const std::string& path) {
  const JsonPlaces places(text);
  const Place* place = places.find(path);
  return place ? places.said(*place) : "no " + path;
}

void expect_refused(const Ran& ran, const std::string& words) {
  EXPECT_EQ(ran.code, 2) << ran.out;
  EXPECT_EQ(ran.out, "");
  EXPECT_NE(ran.errors.find(words), std::string::npos) << ran.errors;
}

TEST_F(Calculator, ListNamesEveryCalculationWithALine) {
  const Ran ran = run("--list");
  EXPECT_EQ(ran.code, 0);
  EXPECT_EQ(ran.errors, "");
  std::size_t lines = 0;
  for (const char sign : ran.out) lines += sign == '\n';
  EXPECT_EQ(lines, calculations().size());
  for (const Calculation& one : calculations())
    EXPECT_NE(("\n" + ran.out).find("\n" + std::string(one.name) + "  "), std::string::npos)
        << one.name;
}

TEST_F(Calculator, EverySchemaIsJsonAndClosed) {
  for (const Calculation& one : calculations()) {
    const Ran ran = run(std::string(one.name) + " --schema");
    EXPECT_EQ(ran.code, 0) << one.name;
    const auto schema = JsonDocument::parse(ran.out);
    ASSERT_TRUE(schema && schema->type() == JsonValue::Type::Object) << one.name;
    EXPECT_EQ(number(ran.out, "additionalProperties"), "false") << one.name;
  }
}

TEST_F(Calculator, EveryExampleRunsAndSaysWhatItsNumbersAreMadeOf) {
  for (const Calculation& one : calculations()) {
    const Ran example = run(std::string(one.name) + " --example");
    ASSERT_EQ(example.code, 0) << one.name;
    const Ran ran = run(std::string(one.name), example.out);
    ASSERT_EQ(ran.code, 0) << one.name << ": " << ran.errors;
    EXPECT_EQ(ran.errors, "") << one.name;
    ASSERT_TRUE(JsonDocument::parse(ran.out)) << one.name;
    const JsonPlaces places(ran.out);
    const Place* method = places.find("basis.method");
    ASSERT_NE(method, nullptr) << one.name;
    EXPECT_GT(places.said(*method).size(), 10U) << one.name;
    int terms = 0;
    for (const Place& place : places.all())
      if (place.path.starts_with("basis.terms[") && last_name(place.path) == "source") {
        ++terms;
        EXPECT_NE(places.said(place), "\"\"") << one.name << " " << place.path;
      }
    EXPECT_GT(terms, 0) << one.name;
  }
}

TEST_F(Calculator, AFileAndStandardInputGiveTheSame) {
  const std::string example = run("climate --example").out;
  const Ran piped = run("climate -", example);
  write("panel.json", example);
  const Ran named = run("climate " + path("panel.json"));
  EXPECT_EQ(piped.code, 0) << piped.errors;
  EXPECT_EQ(piped.out, named.out);
  EXPECT_EQ(number(piped.out, "go"), "true");
}

TEST_F(Calculator, TheSameSeedGivesTheSameBytes) {
  const std::string example = run("dirt-pattern --example").out;
  EXPECT_EQ(run("dirt-pattern", example).out, run("dirt-pattern", example).out);
  EXPECT_EQ(number(run("dirt-pattern", example).out, "basis.seed"), number(example, "seed"));
}

TEST_F(Calculator, HelpCarriesTheCaution) {
  const Ran ran = run("--help");
  EXPECT_EQ(ran.code, 0);
  EXPECT_NE(ran.out.find("without danger"), std::string::npos) << ran.out;
  EXPECT_NE(ran.out.find("safety data sheet"), std::string::npos) << ran.out;
}

TEST_F(Calculator, WrongCallsEndWithTwoAndWords) {
  expect_refused(run(""), "Name a calculation.");
  expect_refused(run("film-budgets"), "There is no calculation 'film-budgets'.");
  expect_refused(run("climate " + path("nothing.json")), "nothing.json");
  EXPECT_EQ(run("climate --no-such-option").code, 2);
}

TEST_F(Calculator, ARefusedInputPrintsASentenceThatNamesTheFieldAndNothingElse) {
  const std::string example = run("climate --example").out;
  const JsonPlaces places(example);
  const Place& air = *places.find("air_c");
  expect_refused(run("climate", places.with(air, "-300")),
                 "The field 'air_c' is refused: -300 is not from -45 to 60.\n");
  expect_refused(run("climate", places.with(air, "NaN")),
                 "The field 'air_c' is refused: NaN is no finite number.\n");
  expect_refused(run("climate", places.with(air, "1e999")),
                 "The field 'air_c' is refused: 1e999 is no finite number.\n");
  expect_refused(run("climate", places.without(air)),
                 "The field 'air_c' is refused: it is not there.\n");
  expect_refused(run("climate", places.with_member(places.all()[0], "\"wind\":1")),
                 "The field 'wind' is refused: no such field.\n");
  expect_refused(run("climate", "rain"), "The input is refused: ");
  expect_refused(run("climate", ""), "The input is refused: ");
}

TEST_F(Calculator, SeventeenMegabytesAreTooMuch) {
  const std::string blanks(17U << 20U, ' ');
  expect_refused(run("climate", run("climate --example").out + blanks), "over 16 MiB");
}

}  // namespace
}  // namespace jambline::app
