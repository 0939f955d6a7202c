// The pages of the work: hours against estimate, days in the shop, cars that were late.
#include "screens/question_page.h"
#include "screens/text.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
QString operations(int n) {
  return question::count(n, Ask::tr("1 operation"), Ask::tr("%1 operations"));
}

QString hours_title(const folds::HoursRow& row, const QuestionSaying& saying) {
  if (row.person) return question::person(row.person, saying);
  if (!row.month.empty()) return question::month(row.month);
  const QString stage = sentence(words_of(row.stage.value_or(job::Stage{})));
  return row.title.empty() ? stage : text(row.title);
}

QString beside_hours(const folds::HoursRow& row) {
  QStringList out;
  if (row.again > 0)
    out << Ask::tr("%1 done again on %2")
               .arg(question::hours(row.again_min), operations(row.again));
  if (row.without_estimate > 0)
    out << Ask::tr("%1 without an estimate on %2")
               .arg(question::hours(row.without_estimate_min), operations(row.without_estimate));
  return out.join(QStringLiteral("; "));
}
}  // namespace

QuestionPage page_of(const folds::HoursAnswer& answer, const QuestionSaying& saying) {
  QuestionPage page;
  const auto& all = answer.all;
  if (all.operations > 0 && all.estimate_min > 0) {
    page.answer = Ask::tr("%1 clocked on work that was estimated at %2: %3 times the estimate.")
                      .arg(question::hours(all.clocked_min), question::hours(all.estimate_min),
                           question::number(all.clocked_min / all.estimate_min, 2));
    page.rests_on = Ask::tr("%1 of %2; one by one the median is %3 times, %4.")
                        .arg(operations(all.operations), question::cars(all.cars),
                             question::middle(all.ratio, 2),
                             question::spread(all.ratio, operations(all.operations)));
  } else {
    page.answer = Ask::tr("Nothing that is done has both an estimate and a clock.");
  }
  QStringList more{page.rests_on};
  if (const QString beside = beside_hours(all); !beside.isEmpty())
    more << Ask::tr("Beside it: %1.").arg(beside);
  if (answer.open > 0)
    more << Ask::tr("Not done yet and not counted: %1.").arg(operations(answer.open));
  more.removeAll(QString());
  page.rests_on = more.join(QChar(' '));
  page.chart_name = Ask::tr("Hours clocked against hours estimated");
  page.bar_name = Ask::tr("Clocked");
  page.ghost_name = Ask::tr("Estimate");
  page.heads = {Ask::tr("Estimate"), Ask::tr("Clocked"), Ask::tr("Median"), Ask::tr("Count")};
  page.exact_heads = {QStringLiteral("operations"),
                      QStringLiteral("cars"),
                      QStringLiteral("estimate_min"),
                      QStringLiteral("clocked_min"),
                      QStringLiteral("median_ratio"),
                      QStringLiteral("without_estimate"),
                      QStringLiteral("without_estimate_min"),
                      QStringLiteral("again"),
                      QStringLiteral("again_min")};
  page.nothing = Ask::tr(
      "No clock ended on done work in this time. What is clocked and ended stands "
      "here against its estimate.");
  for (const auto& row : answer.rows) {
    QuestionRow out;
    out.key = row.person ? hex(*row.person)
              : row.month.empty()
                  ? QString::number(static_cast<int>(row.stage.value_or(job::Stage{}))) +
                        QChar(' ') + text(row.title)
                  : text(row.month);
    out.title = hours_title(row, saying);
    out.numbers = Ask::tr("%1 of %2")
                      .arg(question::hours(row.clocked_min), question::hours(row.estimate_min));
    QStringList note;
    if (!row.title.empty() && row.stage) note << words_of(*row.stage);
    if (row.operations > 0)
      note << Ask::tr("median %1 times, %2")
                  .arg(question::middle(row.ratio, 2),
                       question::spread(row.ratio, operations(row.operations)));
    if (const QString beside = beside_hours(row); !beside.isEmpty()) note << beside;
    out.note = note.join(dot);
    out.bar = row.clocked_min / 60;
    out.ghost = row.estimate_min / 60;
    out.bar_words = out.numbers;
    out.cells = {question::hours(row.estimate_min), question::hours(row.clocked_min),
                 question::middle(row.ratio, 2), QString::number(row.operations)};
    out.exact = {QString::number(row.operations),
                 QString::number(row.cars),
                 question::exact(row.estimate_min),
                 question::exact(row.clocked_min),
                 row.ratio ? question::exact(row.ratio->median) : QString(),
                 QString::number(row.without_estimate),
                 question::exact(row.without_estimate_min),
                 QString::number(row.again),
                 question::exact(row.again_min)};
    out.cases = row.cases;
    out.unit = CaseUnit::Minutes;
    page.rows.push_back(std::move(out));
  }
  return page;
}

QuestionPage page_of(const folds::FlowAnswer& answer, int view, const QuestionSaying&) {
  QuestionPage page;
  page.nothing = Ask::tr(
      "No car was delivered in this time. Each one that is stands here with its "
      "days.");
  if (const auto& days = answer.all.cycle_days) {
    page.answer = Ask::tr("Half of the cars were in the shop for %1 days or less.")
                      .arg(question::number(days->median));
    page.rests_on =
        Ask::tr("%1. Worked on: median %2 h, %3 % of that time.")
            .arg(sentence(question::spread(days, question::cars(days->n))),
                 question::middle(answer.all.touch_h), question::middle(answer.touch_percent));
  }
  if (view == 0) {
    page.chart_name = Ask::tr("Median days from opening to delivery, by month");
    page.bar_name = Ask::tr("Days, median");
    page.heads = {Ask::tr("Cars"), Ask::tr("Days"), Ask::tr("Worked on")};
    page.exact_heads = {QStringLiteral("cars"),           QStringLiteral("median_cycle_d"),
                        QStringLiteral("lower_cycle_d"),  QStringLiteral("upper_cycle_d"),
                        QStringLiteral("median_touch_h"), QStringLiteral("lower_touch_h"),
                        QStringLiteral("upper_touch_h")};
    for (const auto& row : answer.months) {
      if (!row.cycle_days || !row.touch_h) continue;
      QuestionRow out;
      out.key = text(row.month);
      out.title = question::month(row.month);
      out.numbers = Ask::tr("%1 days").arg(question::number(row.cycle_days->median));
      out.note = question::spread(row.cycle_days, question::cars(row.cycle_days->n)) + dot +
                 Ask::tr("worked on %1 h").arg(question::number(row.touch_h->median));
      out.bar = row.cycle_days->median;
      out.bar_words = out.numbers;
      out.cells = {QString::number(row.cycle_days->n), question::number(row.cycle_days->median),
                   Ask::tr("%1 h").arg(question::number(row.touch_h->median))};
      out.exact = {QString::number(row.cycle_days->n),     question::exact(row.cycle_days->median),
                   question::exact(row.cycle_days->lower), question::exact(row.cycle_days->upper),
                   question::exact(row.touch_h->median),   question::exact(row.touch_h->lower),
                   question::exact(row.touch_h->upper)};
      out.cases = row.cases;
      out.unit = CaseUnit::Days;
      page.rows.push_back(std::move(out));
    }
    return page;
  }
  page.chart_name = Ask::tr("Hours that cars waited, by what they waited for");
  page.bar_name = Ask::tr("Hours waited");
  page.heads = {Ask::tr("Cars"), Ask::tr("Hours"), Ask::tr("A car")};
  page.exact_heads = {QStringLiteral("cars"), QStringLiteral("waited_h"),
                      QStringLiteral("median_waited_h")};
  if (answer.all.cycle_days)
    page.nothing = Ask::tr("No wait was said of the cars that were delivered in this time.");
  for (const auto& row : answer.waits) {
    QuestionRow out;
    out.key = QString::number(static_cast<int>(row.reason));
    out.title = sentence(words_of(row.reason));
    out.numbers = Ask::tr("%1 h").arg(question::number(row.hours, 0));
    out.note = Ask::tr("median %1 h a car, %2")
                   .arg(question::middle(row.hours_a_car),
                        question::spread(row.hours_a_car, question::cars(row.cars)));
    out.bar = row.hours;
    out.bar_words = out.numbers;
    out.cells = {QString::number(row.cars), question::number(row.hours, 0),
                 Ask::tr("%1 h").arg(question::middle(row.hours_a_car))};
    out.exact = {QString::number(row.cars), question::exact(row.hours),
                 row.hours_a_car ? question::exact(row.hours_a_car->median) : QString()};
    out.cases = row.cases;
    out.unit = CaseUnit::Hours;
    page.rows.push_back(std::move(out));
  }
  return page;
}

namespace {
QString held_title(const folds::LateRow& row) {
  switch (row.held) {
    case folds::HeldBy::Wait:
      return Ask::tr("Waited: %1").arg(words_of(row.wait.value_or(job::WaitReason{})));
    case folds::HeldBy::Redo:
      return Ask::tr("Work done again");
    case folds::HeldBy::Stage:
      return Ask::tr("Still to do: %1").arg(words_of(row.stage.value_or(job::Stage{})));
    case folds::HeldBy::NotSaid:
      return Ask::tr("Nothing was said");
  }
  return {};
}
}  // namespace

QuestionPage page_of(const folds::LateAnswer& answer, int view, const QuestionSaying&) {
  QuestionPage page;
  page.nothing = answer.due == 0 ? Ask::tr("No car was promised for this time.")
                                 : Ask::tr("No car was late. %1 were promised.").arg(answer.due);
  if (answer.due > 0) {
    page.answer = answer.late == 0 ? Ask::tr("No car was late.")
                                   : Ask::tr("%1 of %2 cars were late, %3.")
                                         .arg(answer.late)
                                         .arg(answer.due)
                                         .arg(question::percent(answer.late, answer.due));
    page.rests_on = question::count(answer.due, Ask::tr("1 car was promised"),
                                    Ask::tr("%1 cars were promised")) +
                    QChar('.');
    if (answer.hours_late)
      page.rests_on +=
          QChar(' ') +
          Ask::tr("Half of the late ones by %1 h or less, %2.")
              .arg(question::number(answer.hours_late->median),
                   question::spread(answer.hours_late, question::cars(answer.hours_late->n)));
    if (answer.still_here > 0)
      page.rests_on +=
          QChar(' ') + Ask::tr("Still here: %1.").arg(question::cars(answer.still_here));
  }
  if (view == 0) {
    page.chart_name = Ask::tr("Late cars by what held them longest");
    page.bar_name = Ask::tr("Cars late");
    page.heads = {Ask::tr("Cars"), Ask::tr("Late by"), Ask::tr("Held")};
    page.exact_heads = {QStringLiteral("cars"), QStringLiteral("median_late_h"),
                        QStringLiteral("held_h")};
    for (const auto& row : answer.rows) {
      QuestionRow out;
      out.title = held_title(row);
      out.key = out.title;
      out.numbers = question::cars(row.cars);
      out.note = Ask::tr("median %1 h late, %2")
                     .arg(question::middle(row.hours_late),
                          question::spread(row.hours_late, question::cars(row.cars)));
      out.bar = row.cars;
      out.bar_words = out.numbers;
      out.cells = {QString::number(row.cars), Ask::tr("%1 h").arg(question::middle(row.hours_late)),
                   row.held_h > 0 ? Ask::tr("%1 h").arg(question::number(row.held_h))
                                  : QStringLiteral("\u2013")};
      out.exact = {QString::number(row.cars),
                   row.hours_late ? question::exact(row.hours_late->median) : QString(),
                   question::exact(row.held_h)};
      out.cases = row.cases;
      out.unit = CaseUnit::HoursLate;
      page.rows.push_back(std::move(out));
    }
    return page;
  }
  page.chart_name = Ask::tr("Cars late of cars promised, by month");
  page.bar_name = Ask::tr("Late");
  page.ghost_name = Ask::tr("Promised");
  page.heads = {Ask::tr("Promised"), Ask::tr("Late"), Ask::tr("Share")};
  page.exact_heads = {QStringLiteral("promised"), QStringLiteral("late")};
  for (const auto& row : answer.months) {
    QuestionRow out;
    out.key = text(row.month);
    out.title = question::month(row.month);
    out.numbers = Ask::tr("%1 of %2").arg(row.late).arg(row.due);
    out.note = question::percent(row.late, row.due);
    out.bar = row.late;
    out.ghost = row.due;
    out.bar_words = out.numbers;
    out.cells = {QString::number(row.due), QString::number(row.late),
                 question::percent(row.late, row.due)};
    out.exact = {QString::number(row.due), QString::number(row.late)};
    out.cases = row.cases;
    out.unit = CaseUnit::HoursLate;
    page.rows.push_back(std::move(out));
  }
  return page;
}

}  // namespace jambline::screens
