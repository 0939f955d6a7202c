// The pages of the paint: through the first time, dirt by area, pictures missing.
#include "screens/picture_words.h"
#include "screens/question_page.h"
#include "screens/rate_units.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
QString panels_of(int n) {
  return question::count(n, Ask::tr("1 panel"), Ask::tr("%1 panels"));
}

void list_kinds(const folds::FirstTimeAnswer& answer, QuestionPage& page) {
  page.chart_name = Ask::tr("Panels that were sent back, by what was on them");
  page.bar_name = Ask::tr("Panels sent back");
  page.heads = {Ask::tr("Panels"), Ask::tr("Cars")};
  page.exact_heads = {QStringLiteral("panels_sent_back"), QStringLiteral("cars")};
  if (answer.all.panels > 0)
    page.nothing = Ask::tr("No panel was sent back. %1 were looked at.").arg(answer.all.panels);
  for (const auto& row : answer.kinds) {
    QuestionRow out;
    out.key = row.defect ? QString::number(static_cast<int>(*row.defect)) : QString();
    out.title = row.defect ? sentence(words_of(*row.defect)) : Ask::tr("No mark on it");
    const int cars_with = folds::cars_of(row.cases);
    out.numbers = panels_of(row.panels);
    out.note = question::cars(cars_with);
    out.bar = row.panels;
    out.bar_words = QString::number(row.panels);
    out.cells = {QString::number(row.panels), QString::number(cars_with)};
    out.exact = {QString::number(row.panels), QString::number(cars_with)};
    out.cases = row.cases;
    page.rows.push_back(std::move(out));
  }
}

void list_redo(const folds::FirstTimeAnswer& answer, QuestionPage& page) {
  page.chart_name = Ask::tr("Hours of redo, by the reason that was written");
  page.bar_name = Ask::tr("Hours clocked");
  page.heads = {Ask::tr("Hours"), Ask::tr("Count"), Ask::tr("Cars")};
  page.exact_heads = {QStringLiteral("operations"), QStringLiteral("cars"),
                      QStringLiteral("clocked_min")};
  page.nothing = Ask::tr("No redo was clocked in this time.");
  for (const auto& row : answer.redo) {
    QuestionRow out;
    out.key = QStringLiteral("redo ") + text(row.why);
    out.title = row.why.empty() ? Ask::tr("No reason was written") : text(row.why);
    out.numbers = question::hours(row.clocked_min);
    out.note = question::count(row.operations, Ask::tr("1 operation"), Ask::tr("%1 operations")) +
               dot + question::cars(row.cars);
    out.bar = row.clocked_min / 60;
    out.bar_words = out.numbers;
    out.cells = {out.numbers, QString::number(row.operations), QString::number(row.cars)};
    out.exact = {QString::number(row.operations), QString::number(row.cars),
                 question::exact(row.clocked_min)};
    out.cases = row.cases;
    out.unit = CaseUnit::Minutes;
    page.rows.push_back(std::move(out));
  }
  if (answer.came_back.empty()) return;
  const int back = static_cast<int>(answer.came_back.size());
  QuestionRow out;
  out.key = QStringLiteral("came back");
  out.title = Ask::tr("Came back after delivery");
  out.numbers = question::cars(folds::cars_of(answer.came_back));
  out.note = question::count(back, Ask::tr("1 complaint"), Ask::tr("%1 complaints"));
  out.cells = {QStringLiteral("\u2013"), QString::number(back),
               QString::number(folds::cars_of(answer.came_back))};
  out.exact = {QString::number(back), QString::number(folds::cars_of(answer.came_back)), QString()};
  out.cases = answer.came_back;
  page.rows.push_back(std::move(out));
}
}  // namespace

QuestionPage page_of(const folds::FirstTimeAnswer& answer, int view, const QuestionSaying&) {
  QuestionPage page;
  const auto& all = answer.all;
  page.nothing = Ask::tr(
      "No panel was looked at in this time. Each one that was sprayed counts from "
      "its first look.");
  if (all.panels > 0) {
    page.answer = Ask::tr("%1 of %2 panels were through the first time, %3.")
                      .arg(all.through)
                      .arg(all.panels)
                      .arg(question::percent(all.through, all.panels));
    page.rests_on =
        Ask::tr("%1 clean at the first look, the others corrected; %2 sent back, on %3.")
            .arg(all.clean_at_once)
            .arg(all.sent_back)
            .arg(question::cars(folds::cars_of(all.cases)));
  }
  if (view == 1) {
    list_kinds(answer, page);
    return page;
  }
  if (view == 2) {
    list_redo(answer, page);
    return page;
  }
  page.chart_name = Ask::tr("Panels through the first time, by month");
  page.bar_name = Ask::tr("Through");
  page.ghost_name = Ask::tr("Looked at");
  page.heads = {Ask::tr("Panels"), Ask::tr("Through"), Ask::tr("Share"), Ask::tr("Back")};
  page.exact_heads = {QStringLiteral("panels"), QStringLiteral("through_first_time"),
                      QStringLiteral("clean_at_once"), QStringLiteral("sent_back")};
  for (const auto& row : answer.months) {
    QuestionRow out;
    out.key = text(row.month);
    out.title = question::month(row.month);
    out.numbers = question::percent(row.through, row.panels);
    out.note = Ask::tr("%1 of %2; %3 sent back")
                   .arg(row.through)
                   .arg(panels_of(row.panels))
                   .arg(row.sent_back);
    out.bar = row.through;
    out.ghost = row.panels;
    out.bar_words = Ask::tr("%1 of %2").arg(row.through).arg(row.panels);
    out.cells = {QString::number(row.panels), QString::number(row.through),
                 question::percent(row.through, row.panels), QString::number(row.sent_back)};
    out.exact = {QString::number(row.panels), QString::number(row.through),
                 QString::number(row.clean_at_once), QString::number(row.sent_back)};
    out.cases = row.cases;
    page.rows.push_back(std::move(out));
  }
  return page;
}

QuestionPage page_of(const folds::DirtAnswer& answer, int view, const QuestionSaying& saying) {
  QuestionPage page;
  page.nothing = Ask::tr(
      "No car that was sprayed in this time was looked over to the end. Each one "
      "then counts with its nibs and its area.");
  const auto& all = answer.all;
  if (all.cars > 0) {
    page.answer = Ask::tr("%1: %2 nibs on what was sprayed.")
                      .arg(rate_words(all.nibs_per_m2, saying.units))
                      .arg(all.nibs);
    page.rests_on = Ask::tr("%1, %2.").arg(question::cars(all.cars),
                                           area_words(all.sprayed_m2 * 1e6, saying.units));
    if (all.of_cars)
      page.rests_on += QChar(' ') + Ask::tr("Middle half of the cars: %1 to %2.")
                                        .arg(rate_number(all.of_cars->lower, saying.units),
                                             rate_number(all.of_cars->upper, saying.units));
    if (answer.left_out > 0)
      page.rests_on +=
          QChar(' ') +
          Ask::tr("Not looked over to the end: %1.").arg(question::cars(answer.left_out));
  }
  page.chart_name = Ask::tr("Nibs by area that was sprayed");
  page.bar_name = Ask::tr("Nibs per %1").arg(area_unit(saying.units));
  page.heads = {Ask::tr("Nibs"), Ask::tr("Area"), Ask::tr("Rate"), Ask::tr("Cars")};
  page.exact_heads = {QStringLiteral("cars"), QStringLiteral("nibs"), QStringLiteral("sprayed_m2"),
                      QStringLiteral("nibs_per_m2")};
  const auto& rows = view == 0 ? answer.months : view == 1 ? answer.booths : answer.painters;
  for (const auto& row : rows) {
    QuestionRow out;
    out.key = view == 0                ? text(row.month)
              : view == 1 && row.booth ? hex(*row.booth)
              : row.painter            ? hex(*row.painter)
                                       : QString();
    out.title = view == 0   ? question::month(row.month)
                : view == 1 ? question::booth(row.booth, saying)
                            : question::person(row.painter, saying);
    out.numbers = rate_words(row.nibs_per_m2, saying.units);
    out.note = Ask::tr("%1 nibs on %2, %3")
                   .arg(row.nibs)
                   .arg(area_words(row.sprayed_m2 * 1e6, saying.units), question::cars(row.cars));
    out.bar = per_area(row.nibs_per_m2, saying.units);
    out.bar_words = rate_number(row.nibs_per_m2, saying.units);
    out.cells = {QString::number(row.nibs), area_words(row.sprayed_m2 * 1e6, saying.units),
                 rate_number(row.nibs_per_m2, saying.units), QString::number(row.cars)};
    out.exact = {QString::number(row.cars), QString::number(row.nibs),
                 question::exact(row.sprayed_m2), question::exact(row.nibs_per_m2)};
    out.cases = row.cases;
    out.unit = CaseUnit::Rate;
    page.rows.push_back(std::move(out));
  }
  return page;
}

QuestionPage page_of(const folds::PicturesAnswer& answer, int view, const QuestionSaying&) {
  QuestionPage page;
  const auto& all = answer.all;
  page.nothing = all.ended == 0
                     ? Ask::tr("No stage that wants pictures was ended in this time.")
                     : Ask::tr("No picture was missing. %1 stages were ended.").arg(all.ended);
  if (all.ended > 0) {
    page.answer = all.with_missing == 0
                      ? Ask::tr("No stage was ended without its pictures.")
                      : Ask::tr("%1 of %2 stages were ended without all their pictures, %3.")
                            .arg(all.with_missing)
                            .arg(all.ended)
                            .arg(question::percent(all.with_missing, all.ended));
    page.rests_on =
        Ask::tr("%1 missing, on %2.")
            .arg(question::count(all.missing, Ask::tr("1 picture"), Ask::tr("%1 pictures")),
                 question::cars(folds::cars_of(all.cases)));
  }
  page.chart_name = view == 1 ? Ask::tr("Stages ended with pictures missing, by reason")
                              : Ask::tr("Stages ended with pictures missing, of all ended");
  page.bar_name = Ask::tr("Pictures missing");
  if (view != 1) page.ghost_name = Ask::tr("Ended");
  page.heads = view == 1 ? QStringList{Ask::tr("Stages"), Ask::tr("Pictures")}
                         : QStringList{Ask::tr("Ended"), Ask::tr("Missing"), Ask::tr("Pictures")};
  page.exact_heads =
      view == 1 ? QStringList{QStringLiteral("with_missing"), QStringLiteral("pictures_missing")}
                : QStringList{QStringLiteral("ended"), QStringLiteral("with_missing"),
                              QStringLiteral("pictures_missing")};
  const auto& rows = view == 0 ? answer.stages : view == 1 ? answer.reasons : answer.months;
  for (const auto& row : rows) {
    QuestionRow out;
    out.title = row.stage   ? sentence(words_of(*row.stage))
                : view == 2 ? question::month(row.month)
                : row.why   ? sentence(words_of(*row.why))
                            : Ask::tr("No reason said");
    out.key = view == 2 ? text(row.month) : out.title;
    const QString missing =
        question::count(row.missing, Ask::tr("1 picture"), Ask::tr("%1 pictures"));
    out.numbers = view == 1 ? QString::number(row.with_missing)
                            : Ask::tr("%1 of %2").arg(row.with_missing).arg(row.ended);
    out.note = missing;
    out.bar = row.with_missing;
    if (view != 1) out.ghost = row.ended;
    out.bar_words = out.numbers;
    out.cells = {QString::number(row.with_missing), QString::number(row.missing)};
    out.exact = out.cells;
    if (view != 1) {
      out.cells.prepend(QString::number(row.ended));
      out.exact.prepend(QString::number(row.ended));
    }
    out.cases = row.cases;
    out.unit = CaseUnit::Pictures;
    page.rows.push_back(std::move(out));
  }
  return page;
}

}  // namespace jambline::screens
