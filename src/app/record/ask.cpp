#include <iostream>

#include "app/command_line_words.h"
#include "app/record/answer_lines.h"
#include "app/record/commands.h"
#include "app/record/read_folder.h"
#include "app/record/typed_period.h"
#include "app/record/write_tables.h"
#include "base/clock.h"
#include "base/json.h"
#include "folds/tables.h"

namespace jambline::app {

namespace {
struct Asked {
  ShopFolder folder;
  std::vector<folds::Account> accounts;
  folds::Period period;
  std::string zone;
  std::int64_t now_ms = 0;
};

Result<Asked> read_asked(const AskAsked& asked) {
  Asked out;
  JAMBLINE_ASSIGN(out.folder, read_folder(asked.folder));
  out.zone = out.folder.shop.zone.empty() ? "UTC" : out.folder.shop.zone;
  JAMBLINE_ASSIGN(out.period, typed_period(asked.from, asked.to, out.zone));
  out.now_ms = SystemClock().now().wall_ms;
  for (const auto& car : out.folder.cars) out.accounts.push_back(folds::account_of(car));
  return out;
}

template <class Answer>
int tell(const Asked& in, const AskAsked& asked, const Answer& answer) {
  if (!asked.json) {
    print_answer(std::cout, answer, in.folder.shop);
    return 0;
  }
  std::string out = "{\"question\":";
  json::write_text(out, asked.question);
  out += ",\"zone\":";
  json::write_text(out, in.zone);
  out += ",\"from_ms\":";
  json::write_integer(out, in.period.from_ms);
  out += ",\"to_ms\":";
  json::write_integer(out, in.period.to_ms);
  out += ",\"now_ms\":";
  json::write_integer(out, in.now_ms);
  out += ",\"answer\":" + to_json(answer) + "}";
  std::cout << out << '\n';
  return 0;
}

folds::DirtAnswer dirt_answer(const Asked& in) {
  std::vector<folds::Lesson> lessons;
  for (const auto& car : in.folder.cars) lessons.push_back(folds::lesson_of(car));
  return folds::dirt_question(lessons, in.accounts, in.period, in.zone);
}
}  // namespace

int ask(const AskAsked& asked) {
  using folds::Question;
  const auto question = from_word<Question>(asked.question);
  const auto by = from_word<folds::HoursBy>(asked.by);
  if (!question || !by) {
    std::cerr << said(Error{Code::Unknown, "ask", question ? asked.by : asked.question, {}});
    return 2;
  }
  const auto in = read_asked(asked);
  if (!in) {
    std::cerr << said(in.error());
    return 2;
  }
  const auto& accounts = in->accounts;
  switch (*question) {
    case Question::Hours:
      return tell(*in, asked, folds::hours_question(accounts, *by, in->period, in->zone));
    case Question::Flow:
      return tell(*in, asked, folds::flow_question(accounts, in->period, in->zone));
    case Question::FirstTime:
      return tell(*in, asked, folds::first_time_question(accounts, in->period, in->zone));
    case Question::Dirt:
      return tell(*in, asked, dirt_answer(*in));
    case Question::Sprays:
      return tell(*in, asked, folds::spray_question(accounts, in->period, in->zone));
    case Question::Due:
      return tell(*in, asked,
                  folds::due_question(accounts, in->folder.shop, in->period, in->now_ms));
    case Question::Late:
      return tell(*in, asked, folds::late_question(accounts, in->period, in->zone, in->now_ms));
    case Question::Pictures:
      return tell(*in, asked, folds::pictures_question(accounts, in->folder.shop, in->period));
  }
  return 2;
}

int export_tables(const ExportAsked& asked) {
  TablesWanted wanted{asked.folder, asked.to, asked.tables, asked.json};
  if (!asked.from.empty() || !asked.to_day.empty()) {
    const auto zone = zone_of(asked.folder);
    const auto period = zone ? typed_period(asked.from, asked.to_day, *zone)
                             : Result<folds::Period>(fail(zone.error()));
    if (!period) {
      std::cerr << said(period.error());
      return 2;
    }
    wanted.period = *period;
  }
  const auto written = write_tables(wanted);
  if (!written) {
    std::cerr << said(written.error());
    if (written.error().code == Code::Unknown) {
      std::cerr << "tables:";
      for (const auto& table : folds::tables()) std::cerr << ' ' << table.name;
      std::cerr << '\n';
    }
    return 2;
  }
  for (const auto& one : written->tables)
    std::cout << one.file << "  " << one.rows << (one.rows == 1 ? " row\n" : " rows\n");
  std::cout << written->cars << (written->cars == 1 ? " car\n" : " cars\n");
  return 0;
}

}  // namespace jambline::app
