#include "folds/hours_csv.h"

#include "trade/hours.h"

namespace jambline::folds {

namespace {
std::string cell(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (const char sign : text) {
    if (sign == '"') out += '"';
    out += sign;
  }
  return out + "\"";
}

std::string two(int number) {
  return (number < 10 ? "0" : "") + std::to_string(number);
}

std::string date_text(const LocalDate& date) {
  return std::to_string(date.year) + "-" + two(date.month) + "-" + two(date.day);
}

std::string seconds(std::int64_t ms) {
  std::string rest = std::to_string(1000 + ms % 1000).substr(1);
  return std::to_string(ms / 1000) + "." + rest;
}
}  // namespace

Result<std::string> hours_csv(const std::vector<HoursSheet>& sheets, const ShopView& shop,
                              std::optional<int> round_min) {
  std::string out = "person,day,day_length_min,car,operation,work,worked_s,clock_in_doubt,amended";
  if (round_min) {
    JAMBLINE_TRY(trade::round_neutral(0, *round_min));
    out += ",worked_min_to_nearest_" + std::to_string(*round_min);
  }
  out += "\r\n";
  for (const auto& sheet : sheets) {
    const auto* person = shop.find(sheet.person);
    const std::string name = person && !person->name.empty() ? person->name : "someone";
    for (const auto& line : sheet.lines) {
      const auto& day = sheet.days[static_cast<std::size_t>(line.day)];
      const std::string title = line.title.empty() ? std::string(word_of(line.stage)) : line.title;
      out += cell(name) + "," + date_text(day.date) + "," +
             std::to_string(day.span.length_ms() / 60'000) + "," + cell(line.plate) + "," +
             cell(title) + "," + cell(std::string(word_of(line.work))) + "," + seconds(line.ms) +
             (line.clock_doubt ? ",yes" : ",no") + (line.amended ? ",yes" : ",no");
      if (round_min) {
        JAMBLINE_ASSIGN(const std::int64_t rounded_ms, trade::round_neutral(line.ms, *round_min));
        out += "," + std::to_string(rounded_ms / 60'000);
      }
      out += "\r\n";
    }
  }
  return out;
}

}  // namespace jambline::folds
