// Limits: what the program comes with, each against the print of its authority.
#include <algorithm>
#include <gtest/gtest.h>
#include <iostream>
#include <set>

#include "job/exposure_limit.h"
#include "tests/outside/table.h"
#include "trade/concentration.h"

namespace jambline::job {
namespace {

using outside::number;
using outside::table;

// Commas part the cells of a table, so there the comma of a name is a point.
std::string name_of(const ExposureLimit& limit) {
  std::string out = limit.substance;
  std::replace(out.begin(), out.end(), ',', '.');
  return out;
}

const ExposureLimit* printed_as(const outside::Row& row) {
  for (const auto& usual : usual_limits()) {
    const auto& limit = usual.limit;
    if (name_of(limit) == row.at("substance") && word_of(limit.kind) == row.at("kind") &&
        limit.authority.find(row.at("authority")) != std::string::npos)
      return &limit;
  }
  return nullptr;
}

double dangerous_in_its_unit(const outside::Row& row) {
  if (row.at("dangerous_unit") == row.at("unit")) return number(row, "dangerous");
  trade::Concentration in;
  in.mg_m3 = number(row, "dangerous");
  in.molar_mass_g = number(row, "molar_mass_g");
  const auto out = trade::convert_concentration(in);
  EXPECT_TRUE(out);
  return out ? out->ppm : 0;
}

TEST(LimitsOutside, EveryLimitIsAsItsAuthorityPrintsIt) {
  const auto rows = table("usual_limits.csv");
  EXPECT_EQ(rows.size(), usual_limits().size()) << "a limit without a line here has no source";
  for (const auto& row : rows) {
    const auto* limit = printed_as(row);
    ASSERT_NE(limit, nullptr) << row.at("substance") << ", " << row.at("kind") << ", "
                              << row.at("authority");
    EXPECT_EQ(limit->value, number(row, "value")) << limit->substance;
    EXPECT_EQ(limit->unit, row.at("unit")) << limit->substance;
    EXPECT_EQ(limit->scheme ? std::string(word_of(*limit->scheme)) : std::string(),
              row.at("scheme"));
    ASSERT_EQ(limit->dangerous.has_value(), !row.at("dangerous").empty()) << limit->substance;
    if (!limit->dangerous) continue;
    const double dangerous = dangerous_in_its_unit(row);
    EXPECT_LE(*limit->dangerous, dangerous) << "rounded to the stricter side";
    EXPECT_NEAR(*limit->dangerous / dangerous, 1, 0.01) << limit->substance;
  }
}

// Source: 29 CFR 1910.1000(d); a limit is a value of an authority, so none stands without
TEST(LimitsOutside, NoLimitStandsWithoutAuthorityYearAndSource) {
  std::set<std::string> ids;
  for (const auto& usual : usual_limits()) {
    const auto& limit = usual.limit;
    const std::string what = limit.substance + ", " + std::string(word_of(limit.kind)) + ", " +
                             limit.authority + ' ' + std::to_string(limit.year);
    std::cout << what << ": " << limit.value << ' ' << limit.unit << " (" << limit.source << ")\n";
    EXPECT_FALSE(limit.substance.empty()) << what;
    EXPECT_FALSE(limit.authority.empty()) << what;
    EXPECT_FALSE(limit.source.empty()) << what;
    EXPECT_GE(limit.year, 1970) << what;
    EXPECT_LE(limit.year, 2026) << what;
    EXPECT_TRUE(limit.unit == "ppm" || limit.unit == "mg/m3") << what;
    EXPECT_FALSE(limit.retired) << what;
    EXPECT_TRUE(ids.insert(usual.id.hex()).second) << what << ": its id stands twice";
  }
}

}  // namespace
}  // namespace jambline::job
