#include <algorithm>

#include "app/papers/report_telling.h"
#include "folds/worked.h"
#include "screens/span_words.h"
#include "screens/text.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::app {

namespace {
using screens::running_words;
using screens::text;
using screens::words_of;

QString state_of(const folds::OperationView& one, const ReportTelling& tell) {
  QStringList out;
  if (one.done)
    out << (one.done_by ? report_tr("done, %1").arg(tell.who(*one.done_by)) : report_tr("done"));
  else
    out << report_tr("open");
  if (one.approval != job::Approval::NotNeeded)
    out << report_tr("approval: %1").arg(words_of(one.approval));
  if (const QString why = tell.own_words(one.why); !why.isEmpty()) out << why;
  return out.join(QStringLiteral("; "));
}

report::ReportTable operations(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Work, by stage"), 6}};
  if (tell.choice.hours) {
    out.columns.push_back({report_tr("Estimate"), 2, true});
    out.columns.push_back({report_tr("Clocked, h:mm:ss"), 2.4, true});
  }
  out.columns.push_back({report_tr("State"), 4});
  std::int64_t estimate_min = 0;
  std::int64_t clocked_ms = 0;
  for (const auto& one : tell.car.operations) {
    const QString work = screens::operation_words(one.stage, one.title, one.work);
    QStringList row{one.title.empty()
                        ? work
                        : report_tr("%1: %2").arg(screens::sentence(words_of(one.stage)), work)};
    if (tell.choice.hours)
      row << (one.estimate_min > 0 ? screens::hours_words(std::int64_t{one.estimate_min} * 60'000)
                                   : QString())
          << running_words(one.clocked_ms);
    out.rows.push_back(row << state_of(one, tell));
    estimate_min += one.estimate_min;
    clocked_ms += one.clocked_ms;
  }
  if (tell.choice.hours && out.rows.size() > 1)
    out.rows.push_back({report_tr("Together"), screens::hours_words(estimate_min * 60'000),
                        running_words(clocked_ms), QString()});
  return out;
}

report::ReportTable spans(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Day"), 2.4},
                 {report_tr("From, to"), 3},
                 {report_tr("Who"), 2.6},
                 {report_tr("Work"), 4.6},
                 {report_tr("h:mm:ss"), 1.6, true}};
  auto all = folds::worked_of(tell.car).spans;
  std::stable_sort(all.begin(), all.end(),
                   [](const auto& a, const auto& b) { return a.start_ms < b.start_ms; });
  for (const auto& span : all) {
    QString work = screens::operation_words(span);
    if (span.from.clock_ms || span.to.clock_ms) work = report_tr("%1 (amended)").arg(work);
    if (span.clock_doubt) work = report_tr("%1 (clock in doubt)").arg(work);
    out.rows.push_back({tell.day(span.start_ms),
                        screens::span_words(span.start_ms, span.end_ms, tell.zone),
                        tell.who(span.person), work, running_words(span.end_ms - span.start_ms)});
  }
  return out;
}

report::ReportTable waits(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Waited for"), 3},
                 {report_tr("From"), 3},
                 {report_tr("To"), 3},
                 {report_tr("Said by"), 3}};
  for (const auto& wait : tell.car.visit.waits)
    out.rows.push_back({screens::sentence(words_of(wait.reason)), tell.when(wait.start_ms),
                        wait.end_ms ? tell.when(*wait.end_ms) : report_tr("still waits"),
                        tell.who(wait.by)});
  return out;
}

QString act_words(entries::ClockActKind act) {
  switch (act) {
    case entries::ClockActKind::Start:
      return report_tr("started");
    case entries::ClockActKind::Stop:
      return report_tr("stopped");
    default:
      return report_tr("paused or went on");
  }
}
}  // namespace

Section work_section(const ReportTelling& tell) {
  Section out{report_tr("What was done"), {}};
  add(out, operations(tell));
  if (!tell.choice.hours) return out;
  add(out, spans(tell));
  add(out, waits(tell));
  return out;
}

Section amendments_section(const ReportTelling& tell) {
  Section out{report_tr("Hours put right afterwards"), {}};
  if (!tell.choice.hours) return out;
  report::ReportTable table;
  table.columns = {{report_tr("Clock"), 4},
                   {report_tr("Counts as"), 3},
                   {report_tr("Clock said"), 3},
                   {report_tr("Why"), 3},
                   {report_tr("Put right by"), 3}};
  for (const auto& one : tell.car.visit.amended) {
    const auto* operation = tell.car.find(one.operation);
    const QString work =
        operation ? screens::operation_words(operation->stage, operation->title, operation->work)
                  : report_tr("an operation that was taken back");
    const QString why = QCoreApplication::translate("AmendClock", one.reason.c_str());
    table.rows.push_back(
        {report_tr("%1 %2, %3").arg(work, act_words(one.act), tell.who(one.worker)),
         tell.when(one.at_ms), tell.when(one.clock_ms), why,
         tell.who(one.amended_by.value_or(one.worker))});
  }
  add(out, std::move(table));
  return out;
}

}  // namespace jambline::app
