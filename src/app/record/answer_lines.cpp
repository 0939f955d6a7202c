#include "app/record/answer_lines.h"

#include <cstdio>

#include "app/record/entry_lines.h"

namespace jambline::app {

namespace {
std::string decimal(double value, int digits = 1) {
  char out[48];
  std::snprintf(out, sizeof out, "%.*f", digits, value);
  return out;
}
std::string hours_of(double minutes) {
  return decimal(minutes / 60) + " h";
}
std::string counted(int count, const char* one, const char* many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}
std::string spread(const std::optional<folds::Quartiles>& of, const char* unit) {
  if (!of) return "none";
  return "median " + decimal(of->median) + unit + " (middle half " + decimal(of->lower) + " to " +
         decimal(of->upper) + ", n " + std::to_string(of->n) + ")";
}
std::string booth_name(const std::optional<BoothId>& booth, const folds::ShopView& shop) {
  const auto* known = booth ? shop.find(*booth) : nullptr;
  return known ? one_line(known->name) : "no booth said";
}
std::string respirator_name(const RespiratorId& respirator, const folds::ShopView& shop) {
  const auto* known = shop.air.find(respirator);
  return known ? one_line(known->said.model) : "a respirator that is not here";
}
std::string row_name(const folds::HoursRow& row, const folds::ShopView& shop) {
  if (row.person) return name_of(*row.person, shop);
  if (!row.month.empty()) return row.month;
  if (!row.stage) return "all";
  return row.title.empty() ? std::string(word_of(*row.stage))
                           : one_line(row.title) + " (" + std::string(word_of(*row.stage)) + ")";
}
std::string share(int part, int of) {
  return std::to_string(part) + " of " + std::to_string(of) +
         (of > 0 ? " (" + decimal(100.0 * part / of, 0) + " %)" : "");
}
void print_row(std::ostream& out, const folds::HoursRow& row, const folds::ShopView& shop) {
  out << row_name(row, shop) << ": estimate " << hours_of(row.estimate_min) << ", clocked "
      << hours_of(row.clocked_min) << " on " << counted(row.operations, "operation", "operations")
      << " of " << counted(row.cars, "car", "cars");
  if (row.ratio) out << "; clocked to estimate " << spread(row.ratio, "");
  if (row.without_estimate > 0)
    out << "; without an estimate " << hours_of(row.without_estimate_min) << " on "
        << row.without_estimate;
  if (row.again > 0) out << "; done again " << hours_of(row.again_min) << " on " << row.again;
  out << '\n';
}
void print_dirt(std::ostream& out, const std::string& name, const folds::DirtRow& row) {
  out << "  " << name << ": " << decimal(row.nibs_per_m2, 2) << " nibs per m2 (" << row.nibs
      << " on " << decimal(row.sprayed_m2) << " m2, " << counted(row.cars, "car", "cars") << "); "
      << spread(row.of_cars, "") << '\n';
}
void print_spray(std::ostream& out, const std::string& name, const folds::SprayRow& row) {
  out << "  " << name << ": " << counted(row.starts, "start", "starts") << ", "
      << row.with_overrides << " with a must passed over, " << row.facts_missing
      << " with facts missing, " << counted(row.without, "report", "reports")
      << " of spraying without\n";
}
}  // namespace

void print_answer(std::ostream& out, const folds::HoursAnswer& answer,
                  const folds::ShopView& shop) {
  print_row(out, answer.all, shop);
  if (answer.open > 0)
    out << counted(answer.open, "operation", "operations")
        << " clocked and not done: not counted\n";
  for (const auto& row : answer.rows) {
    out << "  ";
    print_row(out, row, shop);
  }
}

void print_answer(std::ostream& out, const folds::FlowAnswer& answer, const folds::ShopView&) {
  out << "in the shop: " << spread(answer.all.cycle_days, " days") << '\n'
      << "worked on: " << spread(answer.all.touch_h, " h") << '\n'
      << "of the time in the shop: " << spread(answer.touch_percent, " %") << '\n';
  for (const auto& month : answer.months)
    out << "  " << month.month << ": " << spread(month.cycle_days, " days") << ", worked on "
        << spread(month.touch_h, " h") << '\n';
  for (const auto& wait : answer.waits)
    out << "  waited for " << word_of(wait.reason) << ": " << decimal(wait.hours) << " h on "
        << counted(wait.cars, "car", "cars") << "; " << spread(wait.hours_a_car, " h") << '\n';
}

void print_answer(std::ostream& out, const folds::FirstTimeAnswer& answer, const folds::ShopView&) {
  out << share(answer.all.through, answer.all.panels) << " panels through the first time, "
      << answer.all.clean_at_once << " of them clean at once\n";
  for (const auto& month : answer.months)
    out << "  " << month.month << ": " << share(month.through, month.panels) << '\n';
  for (const auto& kind : answer.kinds)
    out << "  sent back with " << (kind.defect ? std::string(word_of(*kind.defect)) : "no mark")
        << ": " << counted(kind.panels, "panel", "panels") << '\n';
  for (const auto& one : answer.redo)
    out << "  redo, " << (one.why.empty() ? "no reason written" : one_line(one.why)) << ": "
        << hours_of(one.clocked_min) << " on " << counted(one.operations, "operation", "operations")
        << '\n';
  for (const auto& one : answer.came_back) out << "  came back: " << one_line(one.plate) << '\n';
}

void print_answer(std::ostream& out, const folds::DirtAnswer& answer, const folds::ShopView& shop) {
  print_dirt(out, "all", answer.all);
  if (answer.left_out > 0)
    out << counted(answer.left_out, "car", "cars") << " not looked over to the end: not counted\n";
  for (const auto& row : answer.months) print_dirt(out, row.month, row);
  for (const auto& row : answer.booths) print_dirt(out, booth_name(row.booth, shop), row);
  for (const auto& row : answer.painters) print_dirt(out, name_of(*row.painter, shop), row);
}

void print_answer(std::ostream& out, const folds::SprayAnswer& answer,
                  const folds::ShopView& shop) {
  print_spray(out, "all", answer.all);
  for (const auto& row : answer.months) print_spray(out, row.month, row);
  for (const auto& row : answer.people) print_spray(out, name_of(*row.person, shop), row);
  for (const auto& row : answer.items)
    out << "  " << word_of(*row.item) << ": passed over " << row.with_overrides << ", not met "
        << row.starts - row.with_overrides << ", sprayed without " << row.without << '\n';
  for (const auto& one : answer.reasons)
    out << "  passed over, " << (one.reason ? std::string(word_of(*one.reason)) : "no reason")
        << ": " << one.times << '\n';
}

void print_answer(std::ostream& out, const folds::DueAnswer& answer, const folds::ShopView& shop) {
  out << counted(answer.tests, "test", "tests") << ": " << answer.expired << " expired, "
      << answer.missing << " missing, " << answer.soon << " due soon; "
      << counted(answer.sprayed, "start", "starts") << " after one had expired\n";
  for (const auto& row : answer.rows) {
    out << "  " << word_of(row.test) << ", "
        << (row.person ? name_of(*row.person, shop) + ", " + respirator_name(*row.respirator, shop)
                       : booth_name(row.booth, shop))
        << ": " << word_of(row.state);
    if (row.due_day) out << ", " << row.days_left << " days left";
    if (row.sprayed > 0) out << ", sprayed " << row.sprayed << " times since";
    out << '\n';
  }
}

void print_answer(std::ostream& out, const folds::LateAnswer& answer, const folds::ShopView&) {
  out << share(answer.late, answer.due) << " cars late, " << answer.still_here
      << " of them still here; " << spread(answer.hours_late, " h late") << '\n';
  for (const auto& month : answer.months)
    out << "  " << month.month << ": " << share(month.late, month.due) << '\n';
  for (const auto& row : answer.rows) {
    out << "  " << word_of(row.held);
    if (row.wait) out << " for " << word_of(*row.wait);
    if (row.stage) out << " " << word_of(*row.stage);
    out << ": " << counted(row.cars, "car", "cars") << ", " << spread(row.hours_late, " h late");
    if (row.held_h > 0) out << "; " << decimal(row.held_h) << " h";
    out << '\n';
  }
}

void print_answer(std::ostream& out, const folds::PicturesAnswer& answer, const folds::ShopView&) {
  out << share(answer.all.with_missing, answer.all.ended) << " stages ended with pictures missing, "
      << counted(answer.all.missing, "picture", "pictures") << '\n';
  for (const auto& row : answer.months)
    out << "  " << row.month << ": " << share(row.with_missing, row.ended) << '\n';
  for (const auto& row : answer.stages)
    out << "  " << word_of(*row.stage) << ": " << share(row.with_missing, row.ended) << ", "
        << counted(row.missing, "picture", "pictures") << '\n';
  for (const auto& row : answer.reasons)
    out << "  " << (row.why ? std::string(word_of(*row.why)) : "no reason said") << ": "
        << row.with_missing << '\n';
}

}  // namespace jambline::app
