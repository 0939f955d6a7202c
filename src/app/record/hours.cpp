#include <algorithm>
#include <cstdio>
#include <iostream>

#include "app/command_line_words.h"
#include "app/record/commands.h"
#include "app/record/entry_lines.h"
#include "app/record/read_folder.h"
#include "app/record/typed_date.h"
#include "folds/hours_csv.h"

namespace jambline::app {

namespace {
using folds::HoursSheet;

std::string length(std::int64_t ms) {
  char out[32];
  const std::int64_t seconds = ms / 1000;
  std::snprintf(out, sizeof out, "%lld:%02lld:%02lld", static_cast<long long>(seconds / 3600),
                static_cast<long long>(seconds / 60 % 60), static_cast<long long>(seconds % 60));
  return out;
}

std::string date_text(const LocalDate& date) {
  char out[32];
  std::snprintf(out, sizeof out, "%04d-%02d-%02d", date.year, date.month, date.day);
  return out;
}

std::string lower_case(std::string text) {
  for (char& sign : text)
    if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
  return text;
}

// The days that are asked for; without any, the week in which somebody worked last.
Result<std::vector<folds::SheetDay>> days_of(const HoursAsked& asked, const ShopFolder& folder,
                                             const std::vector<folds::WorkedRow>& spans) {
  const std::string zone = folder.shop.zone.empty() ? "UTC" : folder.shop.zone;
  if (!asked.from.empty()) {
    JAMBLINE_ASSIGN(const LocalDate from, typed_date(asked.from, "--from"));
    JAMBLINE_ASSIGN(const LocalDate to,
                    typed_date(asked.to.empty() ? asked.from : asked.to, "--to"));
    return folds::sheet_days(zone, from, folds::days_between(from, to) + 1);
  }
  if (!asked.to.empty()) {
    JAMBLINE_ASSIGN(const LocalDate to, typed_date(asked.to, "--to"));
    return folds::sheet_days(zone, folds::days_later(to, -6), 7);
  }
  std::int64_t last_ms = 0;
  for (const auto& span : spans) last_ms = std::max(last_ms, span.start_ms);
  JAMBLINE_ASSIGN(const LocalDate last, local_date_at(zone, last_ms));
  return folds::sheet_days(zone, folds::monday_of(last), 7);
}

void print_day(const HoursSheet& sheet, std::size_t day, const std::string& zone) {
  const auto& sum = sheet.sums[day];
  const auto& span = sheet.days[day].span;
  if (sum.worked_ms == 0) return;
  std::cout << "  " << date_text(sheet.days[day].date) << "  " << length(sum.worked_ms);
  if (span.length_ms() != 86'400'000) std::cout << "  a day of " << length(span.length_ms());
  if (sum.twice_ms > 0) std::cout << "  " << length(sum.twice_ms) << " on two cars at once";
  std::cout << '\n';
  for (const auto& line : sheet.lines) {
    if (line.day != static_cast<int>(day)) continue;
    std::cout << "    " << length(line.ms) << "  " << one_line(line.plate) << ", "
              << (line.title.empty() ? std::string(word_of(line.stage)) : one_line(line.title));
    if (line.work != job::WorkKind::FirstTime) std::cout << ", " << word_of(line.work);
    std::cout << (line.clock_doubt ? "  (clock in doubt)" : "") << '\n';
    for (const auto& one : sheet.spans) {
      if (one.day != line.day || one.row.operation != line.operation) continue;
      std::cout << "      " << time_of(one.row.start_ms, zone) << " to "
                << time_of(one.row.end_ms, zone);
      for (const auto& end : {one.row.from, one.row.to})
        if (end.clock_ms)
          std::cout << "; clock said " << time_of(*end.clock_ms, zone)
                    << (end.reason.empty() ? "" : ": " + one_line(end.reason));
      std::cout << '\n';
    }
  }
}

void print(const HoursSheet& sheet, const ShopFolder& folder) {
  std::cout << name_of(sheet.person, folder.shop) << "  " << length(sheet.all.worked_ms) << '\n';
  for (std::size_t day = 0; day < sheet.days.size(); ++day) print_day(sheet, day, folder.shop.zone);
  const auto& by_work = sheet.all.by_work;
  for (std::size_t i = 1; i < by_work.size(); ++i)
    if (by_work[i] > 0)
      std::cout << "  of it " << word_of(static_cast<job::WorkKind>(i)) << ": "
                << length(by_work[i]) << '\n';
}
}  // namespace

int hours(const HoursAsked& asked) {
  const auto folder = read_folder(asked.folder);
  if (!folder) {
    std::cerr << said(folder.error());
    return 2;
  }
  folds::Worked worked;
  for (const auto& car : folder->cars) {
    auto of_car = folds::worked_of(car);
    worked.spans.insert(worked.spans.end(), of_car.spans.begin(), of_car.spans.end());
    worked.waits.insert(worked.waits.end(), of_car.waits.begin(), of_car.waits.end());
  }
  const auto days = days_of(asked, *folder, worked.spans);
  if (!days) {
    std::cerr << said(days.error());
    return 2;
  }
  std::vector<HoursSheet> sheets;
  bool named = false;
  for (const auto& person : folder->shop.people) {
    const std::string name = name_of(person.person, folder->shop);
    if (!asked.person.empty() &&
        lower_case(name).find(lower_case(asked.person)) == std::string::npos)
      continue;
    named = true;
    auto sheet = folds::hours_sheet(person.person, worked.spans, {}, *days);
    if (sheet.all.worked_ms > 0 || !asked.person.empty()) sheets.push_back(std::move(sheet));
  }
  if (!named && !asked.person.empty()) {
    std::cerr << said(Error{Code::Unknown, "list hours", asked.person, {}});
    return 2;
  }
  if (asked.csv) {
    const auto table = folds::hours_csv(
        sheets, folder->shop, asked.round_min > 0 ? std::optional(asked.round_min) : std::nullopt);
    if (!table) {
      std::cerr << said(table.error());
      return 2;
    }
    std::cout << *table;
    return 0;
  }
  std::cout << date_text(days->front().date) << " to " << date_text(days->back().date) << ", "
            << (folder->shop.zone.empty() ? "UTC" : folder->shop.zone) << '\n';
  for (const auto& sheet : sheets) print(sheet, *folder);
  for (const auto& car : folder->cars)
    for (const auto& running : car.running)
      if (!running.paused)
        std::cout << name_of(running.person, folder->shop) << " runs since "
                  << time_of(running.start_ms, folder->shop.zone) << " on " << one_line(car.plate)
                  << ", not counted here\n";
  for (const auto& wait : worked.waits) {
    const std::int64_t end_ms = wait.end_ms.value_or(INT64_MAX);
    if (end_ms <= days->front().span.start_ms || wait.start_ms >= days->back().span.end_ms)
      continue;
    std::cout << one_line(wait.plate) << " waited for " << word_of(wait.reason) << " from "
              << time_of(wait.start_ms, folder->shop.zone)
              << (wait.end_ms ? " to " + time_of(*wait.end_ms, folder->shop.zone) : ", still")
              << '\n';
  }
  return 0;
}

}  // namespace jambline::app
