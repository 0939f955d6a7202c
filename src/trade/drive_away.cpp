// drive_away of trade/cure_clock.h.
#include <tuple>

#include "trade/cure_clock.h"
#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr const char* table_of_maker = "the adhesive maker's table, entered by the shop";

// The nearest temperature that is not warmer, then the nearest humidity there that is not moister;
// of two alike the slower.
std::optional<DriveAwayRow> row_for(const std::vector<DriveAwayRow>& rows, double at_c,
                                    double humidity) {
  std::optional<DriveAwayRow> best;
  const auto place = [](const DriveAwayRow& row) {
    return std::tuple(row.at_c, row.humidity_percent, row.minutes);
  };
  for (const DriveAwayRow& row : rows)
    if (row.at_c <= at_c && row.humidity_percent <= humidity &&
        (!best || place(row) > place(*best)))
      best = row;
  return best;
}
}  // namespace

Result<DriveAwayResult> drive_away(const DriveAway& in) {
  if (in.rows.size() > 100) return fail(refusal(Code::TooLarge, "rows", "100 at most"));
  if (in.rows.empty()) return fail(refusal(Code::Missing, "rows", "the adhesive maker's table"));
  for (std::size_t i = 0; i < in.rows.size(); ++i) {
    JAMBLINE_TRY(need(item("rows", i, "at_c"), in.rows[i].at_c, -40, 60, "-40 to 60 C"));
    JAMBLINE_TRY(need(item("rows", i, "humidity_percent"), in.rows[i].humidity_percent, 0, 100,
                      "0 to 100 %"));
    JAMBLINE_TRY(need(item("rows", i, "minutes"), in.rows[i].minutes, 1, 1e5, "over 0"));
  }
  if (in.coldest_c) JAMBLINE_TRY(need("coldest_c", *in.coldest_c, -40, 60, "-40 to 60 C"));
  if (in.driest_percent)
    JAMBLINE_TRY(need("driest_percent", *in.driest_percent, 0, 100, "0 to 100 %"));
  DriveAwayResult out;
  out.worst_assumed = !in.coldest_c || !in.driest_percent;
  out.basis.method =
      "The maker's table at the coldest and driest that was logged; nothing in between.";
  if (in.coldest_c) out.basis.term("coldest", *in.coldest_c, "C", measured);
  if (in.driest_percent) out.basis.term("driest", *in.driest_percent, "%", measured);
  if (out.worst_assumed)
    out.basis.method += " What is not known: the longest time that the table has for it.";
  // What is not known may be anything that the table has.
  std::vector<double> temperatures;
  std::vector<double> humidities;
  for (const auto& row : in.rows) {
    temperatures.push_back(row.at_c);
    humidities.push_back(row.humidity_percent);
  }
  if (in.coldest_c) temperatures = {*in.coldest_c};
  if (in.driest_percent) humidities = {*in.driest_percent};
  DriveAwayRow slowest;
  for (const double at_c : temperatures)
    for (const double humidity : humidities) {
      const auto row = row_for(in.rows, at_c, humidity);
      if (!row) return out;  // colder or drier than the table
      if (row->minutes > slowest.minutes) slowest = *row;
    }
  out.minutes = slowest.minutes;
  out.basis.term("row taken, temperature", slowest.at_c, "C", table_of_maker);
  out.basis.term("row taken, humidity", slowest.humidity_percent, "%", table_of_maker);
  out.basis.term("time", *out.minutes, "min", table_of_maker);
  return out;
}

}  // namespace jambline::trade
