// What every calculation refuses, and that the sentence names the field.
#include <gtest/gtest.h>

#include "app/calc/calculation.h"
#include "tests/calc/json_places.h"

namespace jambline::app {
namespace {

const Calculation& named(std::string_view name) {
  for (const Calculation& one : calculations())
    if (one.name == name) return one;
  ADD_FAILURE() << "no " << name;
  return calculations().front();
}

void expect_refused(const Calculation& one, const std::string& input, const std::string& field,
                    const std::string& what) {
  const auto output = one.run(input);
  ASSERT_FALSE(output) << one.name << " took " << what << " in " << field << ": " << *output;
  EXPECT_EQ(output.error().arg("field"), field) << one.name << " " << what;
  const std::string sentence = refused(output.error(), input);
  EXPECT_TRUE(sentence.starts_with("The field '" + field + "' is refused: ")) << sentence;
  EXPECT_TRUE(sentence.ends_with(".\n")) << sentence;
}

// Is the field required, as the schema has it?
bool required(const JsonPlaces& schema, const std::string& path) {
  std::string parent;
  std::string name;
  for (std::size_t at = 0; at < path.size(); ++at) {
    if (path[at] == '[') {
      parent += (parent.empty() ? "properties." : ".properties.") + name + ".items";
      name.clear();
      while (path[at] != ']') ++at;
    } else if (path[at] == '.') {
      if (!name.empty()) parent += (parent.empty() ? "properties." : ".properties.") + name;
      name.clear();
    } else {
      name += path[at];
    }
  }
  const std::string list = parent.empty() ? "required[" : parent + ".required[";
  for (const Place& place : schema.all())
    if (place.path.starts_with(list) && schema.said(place) == '"' + name + '"') return true;
  return false;
}

TEST(Refusal, NotANumberAndInfinityAreNamedByTheirField) {
  for (const Calculation& one : calculations()) {
    const std::string example = one.example();
    const JsonPlaces places(example);
    for (const Place& place : places.all()) {
      if (place.kind != 'n') continue;
      for (const char* said : {"NaN", "Infinity", "-inf", "1e999"}) {
        const std::string input = places.with(place, said);
        const auto output = one.run(input);
        ASSERT_FALSE(output) << one.name << " " << place.path;
        EXPECT_EQ(refused(output.error(), input), "The field '" + last_name(place.path) +
                                                      "' is refused: " + said +
                                                      " is no finite number.\n")
            << one.name;
      }
    }
  }
}

TEST(Refusal, AWrongTypeIsNamedByItsPath) {
  for (const Calculation& one : calculations()) {
    const std::string example = one.example();
    const JsonPlaces places(example);
    for (const Place& place : places.all())
      if (!place.path.empty())
        expect_refused(one, places.with(place, place.kind == 't' ? "7" : "\"x\""), place.path,
                       "a wrong type");
    EXPECT_FALSE(one.run("[]")) << one.name;
    EXPECT_FALSE(one.run("7")) << one.name;
  }
}

TEST(Refusal, AFieldThatIsMissingIsNamed) {
  int found = 0;
  for (const Calculation& one : calculations()) {
    const std::string example = one.example();
    const std::string schema_text = one.schema();
    const JsonPlaces places(example);
    const JsonPlaces schema(schema_text);
    for (const Place& place : places.all()) {
      if (place.path.empty() || place.path.back() == ']') continue;
      if (!required(schema, place.path)) continue;
      ++found;
      expect_refused(one, places.without(place), place.path, "nothing");
    }
  }
  EXPECT_GT(found, 500);
}

TEST(Refusal, AnUnknownFieldIsNamed) {
  for (const Calculation& one : calculations()) {
    const std::string example = one.example();
    const JsonPlaces places(example);
    for (const Place& place : places.all())
      if (place.kind == 'o')
        expect_refused(one, places.with_member(place, "\"unheard_of\":1"),
                       place.path.empty() ? "unheard_of" : place.path + ".unheard_of",
                       "an unknown field");
  }
}

TEST(Refusal, WhatIsNoJsonIsRefused) {
  for (const Calculation& one : calculations())
    for (const char* text :
         {"", " ", "{", "{\"a\":}", "nib", "{}{}", "{\"a\" 1}", "\xff\xfe", "["}) {
      const auto output = one.run(text);
      ASSERT_FALSE(output) << one.name << " " << text;
      EXPECT_TRUE(refused(output.error(), text).ends_with(".\n")) << text;
    }
}

struct Row {
  const char* calculation;
  const char* place;  // what is replaced in the example
  std::string value;
  const char* field;  // what is named; empty: the place itself
};

void check(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    const Calculation& one = named(row.calculation);
    const std::string example = one.example();
    const JsonPlaces places(example);
    const Place* place = places.find(row.place);
    ASSERT_NE(place, nullptr) << row.calculation << " has no " << row.place;
    expect_refused(one, places.with(*place, row.value), *row.field ? row.field : row.place,
                   row.value.substr(0, 40));
  }
}

TEST(Refusal, LengthsTimesAndAmountsAreNotNegative) {
  check({{"film-budget", "base.mean_um", "-1", ""},
         {"film-budget", "steps[0].removal.mean_um", "-1", ""},
         {"film-budget", "total_after_um[1]", "-100", ""},
         {"film-budget", "leave_um", "-40", ""},
         {"film-budget", "coats", "0", ""},
         {"film-learning", "prior.sd_um", "0", ""},
         {"film-learning", "gauge_sd_um", "0", ""},
         {"film-acceptance", "least_um", "-1", ""},
         {"film-acceptance", "most_um", "20", ""},
         {"dirt-pattern", "edge_band_mm", "-50", ""},
         {"dirt-pattern", "history.flat_m2", "-1", ""},
         {"dirt-pattern", "patterns", "0", ""},
         {"dirt-chart", "jobs[3].area_m2", "-3.2", ""},
         {"dirt-chart", "jobs[3].marks", "-1", ""},
         {"spacing", "area_mm2", "-1", ""},
         {"groups", "reach_mm", "-1", ""},
         {"rate-limits", "exposure", "0", ""},
         {"share-limits", "mean_share", "1.2", ""},
         {"rate-ratio", "exposure_b", "0", ""},
         {"share", "count", "12", ""},
         {"share", "confidence", "1", ""},
         {"count", "expected", "-0.1", ""},
         {"several-chances", "chances[2]", "1.5", ""},
         {"correction-plan", "rounds[1].radius_mm", "-60", ""},
         {"correction-plan", "rounds[1].radius_mm", "10", ""},
         {"correction-plan", "keep_off_mm", "-12", ""},
         {"correction-plan", "plastic_speed", "0", ""},
         {"circles-area", "circles[0].radius_mm", "-90", ""},
         {"cure-clock", "steps[0].points[0].minutes", "0", ""},
         {"cure-clock", "now_min", "-1", ""},
         {"activation-energy", "hot_min", "0", ""},
         {"activation-energy", "hot_c", "20", ""},
         {"drive-away", "rows[2].minutes", "-5", ""},
         {"clearance-time", "exhaust_m3_h", "0", ""},
         {"clearance-time", "volume_m3", "-92", ""},
         {"clearance-time", "extra_factor", "0.5", ""},
         {"clearance-count", "now_s", "0", ""},
         {"purge-time", "air_changes_1_h", "0", ""},
         {"purge-time", "removed_percent", "100", ""},
         {"airflow", "velocities_m_s[4]", "-0.5", ""},
         {"airflow", "area_m2", "-24", ""},
         {"filter-due", "limit_pa", "-180", ""},
         {"dilution-air", "lel_percent", "0", ""},
         {"climate", "humidity_percent", "0", ""},
         {"climate", "humidity_percent", "101", ""},
         {"climate", "air_max_c", "10", ""},
         {"exposure", "samples[0].value", "-1", ""},
         {"exposure", "samples[0].to_h", "0", ""},
         {"exposure", "limits[0].authority", "\"\"", ""},
         {"exposure", "limits[1].unit", "\"mg/m3\"", ""},
         {"concentration", "molar_mass_g", "0", ""},
         {"concentration", "pressure_kpa", "0", ""},
         {"maximum-use", "limit", "0", ""},
         {"maximum-use", "authority", "\"\"", ""},
         {"maximum-use", "factor_scheme", "\"uk\"", ""},
         {"fit-test", "exercise_factors[3]", "0", ""},
         {"cartridge", "schedule_h", "0", ""},
         {"cartridge", "schedule_basis", "\"\"", ""},
         {"cartridge", "used_h[0]", "-1", ""},
         {"panel-fit", "fasteners[0].travel_x_mm", "-1", ""},
         {"panel-fit", "points[0].weight", "0", ""},
         {"ready-by", "work[0].least_min", "-70", ""},
         {"ready-by", "work[0].likely_min", "10", ""},
         {"ready-by", "work[0].most_min", "10", ""},
         {"round-hours", "step_min", "0", ""},
         {"photo", "picture.width", "2", ""},
         {"photo", "picture.gray[5]", "256", ""},
         {"hours", "acts[0].wall_ms", "-1", ""},
         {"hours", "days[0].end_ms", "0", ""}});
}

TEST(Refusal, NothingIsColderThanTheRangeAndAbsoluteZeroLiesFarUnderIt) {
  check({{"climate", "air_c", "-300", ""},
         {"climate", "surface_c", "-273.16", ""},
         {"cure-clock", "readings[2].surface_c", "-300", ""},
         {"cure-clock", "steps[1].points[0].at_c", "-300", ""},
         {"cure-minutes", "surface_c", "-300", ""},
         {"cure-minutes", "points[0].at_c", "-300", ""},
         {"activation-energy", "cold_c", "-273.16", ""},
         {"drive-away", "coldest_c", "-300", ""},
         {"drive-away", "rows[0].at_c", "-300", ""},
         {"concentration", "air_c", "-273.16", ""}});
}

TEST(Refusal, EmptyListsThatLeaveNothingToComputeAreNamed) {
  check({{"film-acceptance", "spots_um", "[]", ""},
         {"film-budget", "total_after_um", "[]", ""},
         {"film-budget", "total_before_base_um", "[]", ""},
         {"dirt-pattern", "panels", "[]", ""},
         {"dirt-pattern", "panels[0].outline", "[]", ""},
         {"dirt-chart", "jobs", "[]", ""},
         {"spacing", "points", "[]", ""},
         {"groups", "points", "[]", ""},
         {"several-chances", "chances", "[]", ""},
         {"correction-plan", "panels", "[]", ""},
         {"correction-plan", "rounds", "[]", ""},
         {"correction-plan", "panels[1].outline", "[]", ""},
         {"circles-area", "circles", "[]", ""},
         {"shortest-walk", "places", "[]", ""},
         {"cure-clock", "steps", "[]", ""},
         {"cure-clock", "steps[0].points", "[]", ""},
         {"cure-clock", "readings", "[]", ""},
         {"cure-minutes", "points", "[]", ""},
         {"drive-away", "rows", "[]", ""},
         {"airflow", "velocities_m_s", "[]", ""},
         {"filter-due", "readings", "[]", ""},
         {"exposure", "samples", "[]", ""},
         {"exposure", "limits", "[]", ""},
         {"fit-test", "exercise_factors", "[]", ""},
         {"panel-fit", "points", "[]", ""},
         {"panel-fit", "fasteners", "[]", ""},
         {"rigid-fit", "from", "[]", ""},
         {"rigid-fit", "to", "[]", ""},
         {"ready-by", "work", "[]", ""},
         {"hours", "acts", "[]", ""},
         {"photo", "picture.gray", "[]", ""},
         {"vin", "vin", "\"\"", ""}});
}

std::string many(std::size_t count, const std::string& one) {
  std::string out = "[";
  for (std::size_t i = 0; i < count; ++i) out += (i ? "," : "") + one;
  return out + "]";
}

TEST(Refusal, FiveHundredMarksAPanelAndNoMore) {
  const std::string place = R"({"x_mm":500,"y_mm":500})";
  const std::string mark = R"({"mark":"1","x_mm":500,"y_mm":500,"work":"nib"})";
  check({{"dirt-pattern", "panels[0].marks", many(501, place), ""},
         {"correction-plan", "panels[0].marks", many(501, mark), ""},
         {"spacing", "points", many(501, place), ""},
         {"groups", "points", many(501, place), ""},
         {"dirt-pattern", "panels[0].outline", many(501, place), ""},
         {"film-acceptance", "spots_um", many(10001, "50"), ""},
         {"exposure", "samples", many(1001, R"({"substance":"a","value":1,"from_h":0,"to_h":1})"),
          ""},
         {"ready-by", "work",
          many(1001, R"({"name":"a","least_min":1,"likely_min":1,"most_min":1,"wait":false,)"
                     R"("after":[]})"),
          ""}});
  const Calculation& plan = named("correction-plan");
  const std::string example = plan.example();
  const JsonPlaces places(example);
  std::string marks = "[";
  for (int i = 0; i < 500; ++i)
    marks += std::string(i ? "," : "") + R"({"mark":")" + std::to_string(i) +
             R"(","x_mm":500,"y_mm":500,"work":"nib"})";
  EXPECT_TRUE(plan.run(places.with(*places.find("panels[0].marks"), marks + "]")));
}

TEST(Refusal, OutlinesThatCrossThemselvesAreNamed) {
  const std::string bow_tie =
      R"([{"x_mm":0,"y_mm":0},{"x_mm":1000,"y_mm":1000},{"x_mm":1000,"y_mm":0},)"
      R"({"x_mm":0,"y_mm":1000}])";
  const std::string flat = R"([{"x_mm":0,"y_mm":0},{"x_mm":500,"y_mm":0},{"x_mm":1000,"y_mm":0}])";
  const std::string two = R"([{"x_mm":0,"y_mm":0},{"x_mm":500,"y_mm":0}])";
  for (const std::string& outline : {bow_tie, flat, two})
    check({{"dirt-pattern", "panels[0].outline", outline, ""},
           {"dirt-pattern", "panels[0].reach_strips[0].points", outline, ""},
           {"correction-plan", "panels[0].outline", outline, ""}});
}

TEST(Refusal, MarksOffTheirPanelAndPlacesOffTheFloorAreNamed) {
  check({{"dirt-pattern", "panels[0].marks[3].x_mm", "-40", "panels[0].marks[3]"},
         {"correction-plan", "panels[0].marks[0].y_mm", "2000", "panels[0].marks[0]"},
         {"correction-plan", "panels[0].stands_at.x_mm", "1e300", ""},
         {"correction-plan", "panels[0].body_lines[0].points[1].x_mm", "1e300", ""},
         {"dirt-pattern", "panels[0].masked_edges[0].points[0].y_mm", "-1e300", ""},
         {"dirt-pattern", "panels[0].outline[2].x_mm", "1e300", ""}});
}

TEST(Refusal, TimesThatAreTwiceOrGoBackAreNamed) {
  check({{"cure-clock", "readings[1].at_min", "0", ""},
         {"cure-clock", "readings[3].at_min", "29", ""},
         {"cure-clock", "steps[1].points[1].at_c", "20", "steps[1].points"},
         {"cure-clock", "steps[1].points[1].minutes", "900", "steps[1].points"},
         {"cure-minutes", "points[1].at_c", "20", "points"},
         {"filter-due", "readings[1].day", "0", ""},
         {"clearance-count", "changes[1].at_s", "0", ""},
         {"clearance-count", "changes[3].at_s", "750", ""},
         {"exposure", "samples[1].from_h", "1", ""},
         {"dirt-chart", "jobs[4].day", "0", ""},
         {"ready-by", "hours[1].from_min", "500", ""},
         {"ready-by", "work[0].name", "\"fit\"", "work[5].name"},
         {"ready-by", "work[0].after", "[\"fit\"]", "work[0].after"},
         {"ready-by", "work[0].after", "[\"polish\"]", "work[0].after"},
         {"hours", "days", R"([{"start_ms":0,"end_ms":9},{"start_ms":8,"end_ms":20}])",
          "days[1].start_ms"}});
}

TEST(Refusal, ValuesThatContradictEachOtherAreNamed) {
  check({{"film-budget", "substrate", "\"plastic\"", "substrate"},
         {"film-budget", "total_after_um", "[60]", "total_after_um"},
         {"exposure", "limits[1].kind", "\"eight hours\"", "limits[1].kind"},
         {"concentration", "ppm", "0.005,\"mg_m3\":1", "mg_m3"},
         {"ready-by", "hours", R"([{"from_min":0,"to_min":60}])", "hours"},
         {"rate-ratio", "count_a", "0,\"x\":0", "x"}});
}

}  // namespace
}  // namespace jambline::app
