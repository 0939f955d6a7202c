#include "folds/hours_sheet.h"

#include <algorithm>
#include <chrono>
#include <tuple>

#include "trade/hours.h"

namespace jambline::folds {

namespace {
constexpr int most_days = 400;

std::chrono::sys_days days_of(const LocalDate& date) {
  using namespace std::chrono;
  return sys_days{year{date.year} / month{static_cast<unsigned>(date.month)} /
                  day{static_cast<unsigned>(date.day)}};
}

LocalDate date_of(std::chrono::sys_days days) {
  const std::chrono::year_month_day date{days};
  return {static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
          static_cast<int>(static_cast<unsigned>(date.day()))};
}

trade::ClockInterval interval_of(const WorkedRow& row) {
  trade::ClockInterval out;
  out.person = row.person;
  out.operation = row.operation;
  out.start_ms = row.start_ms;
  out.end_ms = row.end_ms;
  return out;
}

// The spans are of one day, by start.
void add_day(std::vector<SheetSpan>& spans, SheetSum& sum) {
  std::int64_t until_ms = 0;
  SheetSpan* longest = nullptr;
  std::int64_t left_out_ms = 0;
  for (auto& span : spans) {
    if (longest && span.start_ms < until_ms) span.twice = longest->twice = true;
    if (!longest || span.start_ms > until_ms) {
      if (longest) left_out_ms += span.start_ms - until_ms;
      sum.worked_ms += span.end_ms - span.start_ms;
    } else if (span.end_ms > until_ms) {
      sum.worked_ms += span.end_ms - until_ms;
    }
    if (!longest || span.end_ms > until_ms) {
      longest = &span;
      until_ms = span.end_ms;
    }
    sum.clock_doubt = sum.clock_doubt || span.row.clock_doubt;
    sum.runs = sum.runs || span.runs;
  }
  sum.between_ms = left_out_ms;
}
}  // namespace

Result<std::vector<SheetDay>> sheet_days(std::string_view zone, LocalDate from, int days) {
  if (days < 1 || days > most_days) return fail(Code::OutOfRange, "list days", "days");
  std::vector<SheetDay> out;
  for (int i = 0; i < days; ++i) {
    const LocalDate date = days_later(from, i);
    JAMBLINE_ASSIGN(const LocalDay span, local_day(zone, date));
    out.push_back({date, span});
  }
  return out;
}

LocalDate days_later(LocalDate date, int days) {
  return date_of(days_of(date) + std::chrono::days{days});
}

LocalDate monday_of(LocalDate date) {
  const std::chrono::weekday day{days_of(date)};
  return days_later(date, 1 - static_cast<int>(day.iso_encoding()));
}

int days_between(LocalDate from, LocalDate to) {
  return static_cast<int>((days_of(to) - days_of(from)).count());
}

HoursSheet hours_sheet(const PersonId& person, const std::vector<WorkedRow>& spans,
                       const std::vector<WorkedRow>& running, std::vector<SheetDay> days) {
  HoursSheet out{person, std::move(days), {}, {}, {}, {}};
  out.sums.resize(out.days.size());
  std::vector<std::pair<const WorkedRow*, bool>> rows;
  for (const auto& row : spans)
    if (row.person == person) rows.emplace_back(&row, false);
  for (const auto& row : running)
    if (row.person == person) rows.emplace_back(&row, true);
  std::stable_sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) {
    return std::tie(a.first->start_ms, a.first->end_ms) <
           std::tie(b.first->start_ms, b.first->end_ms);
  });

  std::vector<trade::DaySpan> day_spans;
  for (const auto& day : out.days) day_spans.push_back({day.span.start_ms, day.span.end_ms});
  std::vector<trade::ClockInterval> intervals;
  intervals.reserve(rows.size());
  for (const auto& [row, runs] : rows) intervals.push_back(interval_of(*row));
  const auto sums = trade::sum_hours(intervals, day_spans);

  for (std::size_t day = 0; day < out.days.size(); ++day) {
    const auto& span = out.days[day].span;
    std::vector<SheetSpan> of_day;
    const std::size_t first_line = out.lines.size();
    for (const auto& [row, runs] : rows) {
      const std::int64_t start_ms = std::max(row->start_ms, span.start_ms);
      const std::int64_t end_ms = std::min(row->end_ms, span.end_ms);
      if (start_ms >= end_ms) continue;
      of_day.push_back({*row, static_cast<int>(day), start_ms, end_ms, runs, false});
      auto line = std::find_if(
          out.lines.begin() + static_cast<std::ptrdiff_t>(first_line), out.lines.end(),
          [&, of = row](const SheetLine& one) { return one.operation == of->operation; });
      if (line == out.lines.end()) {
        out.lines.push_back({static_cast<int>(day), row->job, row->plate, row->operation,
                             row->stage, row->title, row->work});
        line = out.lines.end() - 1;
        for (const auto& sum : sums)
          if (sum.operation == row->operation && sum.day == static_cast<int>(day))
            line->ms = sum.ms;
      }
      line->clock_doubt = line->clock_doubt || row->clock_doubt;
      line->amended = line->amended || row->from.clock_ms || row->to.clock_ms;
      line->runs = line->runs || runs;
    }
    SheetSum& sum = out.sums[day];
    add_day(of_day, sum);
    std::int64_t each_ms = 0;
    for (std::size_t i = first_line; i < out.lines.size(); ++i) {
      each_ms += out.lines[i].ms;
      sum.by_work[static_cast<std::size_t>(out.lines[i].work)] += out.lines[i].ms;
    }
    sum.twice_ms = each_ms - sum.worked_ms;
    out.all.worked_ms += sum.worked_ms;
    out.all.twice_ms += sum.twice_ms;
    out.all.between_ms += sum.between_ms;
    for (std::size_t i = 0; i < sum.by_work.size(); ++i) out.all.by_work[i] += sum.by_work[i];
    out.all.clock_doubt = out.all.clock_doubt || sum.clock_doubt;
    out.all.runs = out.all.runs || sum.runs;
    for (auto& one : of_day) out.spans.push_back(std::move(one));
  }
  return out;
}

}  // namespace jambline::folds
