// A desk whose screens are held against the program jambline-calc: the input of a screen is written
// as JSON, the program is run on it, and its answer is read.
#pragma once

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <sys/wait.h>

#include "base/json.h"
#include "screens/sum_rows.h"
#include "tests/screens/correct_desk.h"
#include "tests/whole_file.h"

namespace jambline::screens {

class CalculatorDesk : public CorrectDesk {
 protected:
  void SetUp() override {
    CorrectDesk::SetUp();
    session_->set_units(Units::Metric);
  }
  template <class Output, class Input>
  Output calculated(const std::string& name, const Input& input) {
    const auto path = [this](const char* file) {
      return (std::filesystem::path(folder_) / file).string();
    };
    std::ofstream(path("input.json"), std::ios::binary) << to_json(input);
    const std::string line =
        JAMBLINE_CALC " " + name + " " + path("input.json") + " >" + path("output.json");
    const int status = std::system(line.c_str());
    EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0) << line;
    output_ = test::whole_file(path("output.json"));
    auto out = from_json<Output>(output_);
    EXPECT_TRUE(out) << output_;
    return out ? *out : Output{};
  }
  // The answers of the calculation lane have come.
  void worked_out() {
    settle();
    settle();
  }

  // What a screen shows of a number is what the calculator rests it on.
  void same_sum(SumRows& shown, const trade::Basis& given) {
    SumRows wanted(nullptr);
    wanted.show({}, {}, given, session_->units());
    EXPECT_EQ(shown.method().toStdString(), wanted.method().toStdString());
    ASSERT_EQ(shown.rows()->rowCount(), wanted.rows()->rowCount());
    for (int row = 0; row < wanted.rows()->rowCount(); ++row)
      for (const char* role : {"name", "value", "source"})
        EXPECT_EQ(at(shown.rows(), row, role).toString().toStdString(),
                  at(wanted.rows(), row, role).toString().toStdString());
  }

  std::string output_;
};

}  // namespace jambline::screens
