#include "screens/span_words.h"

#include <QCoreApplication>
#include <QStringList>

#include "screens/clocks.h"
#include "screens/text.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
QString span_tr(const char* words) {
  return QCoreApplication::translate("Spans", words);
}

}  // namespace

QString operation_words(job::Stage stage, const std::string& title, job::WorkKind work) {
  const QString what = sentence(title.empty() ? words_of(stage) : text(title));
  return work == job::WorkKind::FirstTime
             ? what
             : span_tr(QT_TRANSLATE_NOOP("Spans", "%1, %2")).arg(what, words_of(work));
}

QString operation_words(const folds::WorkedRow& row) {
  return operation_words(row.stage, row.title, row.work);
}

QString span_words(std::int64_t start_ms, std::int64_t end_ms, const QString& zone) {
  const QString to = clock_words(end_ms, zone);
  const bool same_day = day_words(start_ms, zone) == day_words(end_ms - 1, zone);
  return span_tr(QT_TRANSLATE_NOOP("Spans", "%1 to %2"))
      .arg(clock_words(start_ms, zone),
           same_day
               ? to
               : span_tr(QT_TRANSLATE_NOOP("Spans", "%1 %2")).arg(day_words(end_ms, zone), to));
}

QString runs_words(std::int64_t start_ms, const QString& zone) {
  return span_tr(QT_TRANSLATE_NOOP("Spans", "since %1, runs")).arg(clock_words(start_ms, zone));
}

QString amended_words(std::int64_t at_ms, std::int64_t clock_ms, const std::string& reason,
                      const std::optional<PersonId>& by, const Session& session) {
  const QString zone = session.zone();
  QString said = clock_words(clock_ms, zone);
  if (day_words(at_ms, zone) != day_words(clock_ms, zone))
    said = span_tr(QT_TRANSLATE_NOOP("Spans", "%1 %2")).arg(day_words(clock_ms, zone), said);
  const QString both =
      span_tr(QT_TRANSLATE_NOOP("Spans", "%1, clock said %2")).arg(clock_words(at_ms, zone), said);
  if (reason.empty()) return both;
  return span_tr(QT_TRANSLATE_NOOP("Spans", "%1, %2: %3"))
      .arg(both, session.name_of(by.value_or(PersonId{})),
           QCoreApplication::translate("AmendClock", reason.c_str()));
}

QString said_words(const folds::WorkedRow& row, const Session& session) {
  QStringList out;
  const auto add = [&](std::int64_t at_ms, const folds::SpanEnd& end) {
    if (end.clock_ms) out << amended_words(at_ms, *end.clock_ms, end.reason, end.by, session);
  };
  add(row.start_ms, row.from);
  add(row.end_ms, row.to);
  return out.join(QChar('\n'));
}

std::vector<folds::WorkedRow> running_spans(const std::vector<folds::FloorRow>& floor,
                                            const Moment& now) {
  std::vector<folds::WorkedRow> out;
  for (const auto& car : floor)
    for (const auto& running : car.running) {
      if (running.paused) continue;
      folds::WorkedRow row{car.job, car.plate, running.person, running.operation};
      for (const auto& operation : car.operations) {
        if (operation.operation != running.operation) continue;
        row.stage = operation.stage;
        row.title = operation.title;
        row.work = operation.work;
      }
      row.start_ms = running.start_ms;
      row.end_ms = running.start_ms + length_ms(running, now);
      row.clock_doubt = running.clock_doubt;
      row.from.act = running.act;
      out.push_back(std::move(row));
    }
  return out;
}

}  // namespace jambline::screens
