#include "screens/question_page.h"

#include <QDate>
#include <QLocale>

#include "folds/tables.h"
#include "screens/dirt_words.h"
#include "screens/rate_units.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

using folds::Question;

namespace {
constexpr int few = 4;  // values; of fewer no half is told
}  // namespace

namespace question {

QString number(double value, int places) {
  QString out = QLocale::c().toString(std::abs(value), 'f', places);
  if (out.contains(QChar('.'))) {
    while (out.endsWith(QChar('0'))) out.chop(1);
    if (out.endsWith(QChar('.'))) out.chop(1);
  }
  return value < 0 && out != QStringLiteral("0") ? QStringLiteral("\u2212") + out : out;
}
QString exact(double value) {
  return QString::number(value, 'g', 17);
}
QString hours(double minutes) {
  return Ask::tr("%1 h").arg(QLocale::c().toString(minutes / 60, 'f', 1));
}
QString count(int n, const QString& one, const QString& many) {
  return n == 1 ? one : many.arg(QLocale().toString(n));
}
QString cars(int n) {
  return cars_words(n);
}
QString percent(int of_these, int all) {
  return all > 0 ? Ask::tr("%1 %").arg(number(100.0 * of_these / all, 0))
                 : QStringLiteral("\u2013");
}
QString month(const std::string& month) {
  const QDate date = QDate::fromString(text(month) + QStringLiteral("-01"), Qt::ISODate);
  return date.isValid() ? QLocale().standaloneMonthName(date.month(), QLocale::ShortFormat) +
                              QChar(' ') + QString::number(date.year())
                        : text(month);
}
QString person(const std::optional<PersonId>& who, const QuestionSaying& saying) {
  const auto* known = who ? saying.shop->find(*who) : nullptr;
  return known && !known->name.empty() ? text(known->name) : Ask::tr("someone");
}
QString booth(const std::optional<BoothId>& which, const QuestionSaying& saying) {
  const auto* known = which ? saying.shop->find(*which) : nullptr;
  return known ? text(known->name) : Ask::tr("no booth said");
}
QString middle(const std::optional<folds::Quartiles>& of, int places) {
  return of ? number(of->median, places) : QStringLiteral("\u2013");
}
QString spread(const std::optional<folds::Quartiles>& of, const QString& counted) {
  return of && of->n >= few ? Ask::tr("middle half %1 to %2, %3")
                                  .arg(number(of->lower), number(of->upper), counted)
                            : counted;
}

}  // namespace question

QString question_title(Question question) {
  switch (question) {
    case Question::Hours:
      return Ask::tr("Hours against estimate");
    case Question::Flow:
      return Ask::tr("Days in the shop");
    case Question::FirstTime:
      return Ask::tr("Through the first time");
    case Question::Dirt:
      return Ask::tr("Dirt by area");
    case Question::Sprays:
      return Ask::tr("Passed over before the gun");
    case Question::Due:
      return Ask::tr("Fit and clearance tests");
    case Question::Late:
      return Ask::tr("Cars that were late");
    case Question::Pictures:
      return Ask::tr("Pictures missing");
  }
  return {};
}

QString question_says(Question question) {
  switch (question) {
    case Question::Hours:
      return Ask::tr("by operation, person and month");
    case Question::Flow:
      return Ask::tr("from opening to delivery, worked on, and waits");
    case Question::FirstTime:
      return Ask::tr("panels sent back, redo and its reasons");
    case Question::Dirt:
      return Ask::tr("nibs on what was sprayed, by month and booth");
    case Question::Sprays:
      return Ask::tr("overrides, sprayed without, facts missing");
    case Question::Due:
      return Ask::tr("expired, due soon, sprayed since");
    case Question::Late:
      return Ask::tr("against the promise, and what held them");
    case Question::Pictures:
      return Ask::tr("stages ended without their pictures");
  }
  return {};
}

QStringList question_views(Question question, bool manager) {
  const QString by_month = Ask::tr("Month");
  switch (question) {
    case Question::Hours:
      return {Ask::tr("Operation"), Ask::tr("Person"), by_month};
    case Question::Flow:
      return {by_month, Ask::tr("Waits")};
    case Question::FirstTime:
      return {by_month, Ask::tr("Kind"), Ask::tr("Redo")};
    case Question::Dirt:
      return manager ? QStringList{by_month, Ask::tr("Booth"), Ask::tr("Painter")}
                     : QStringList{by_month, Ask::tr("Booth")};
    case Question::Sprays:
      return {Ask::tr("Item"), Ask::tr("Person"), by_month};
    case Question::Due:
      return {};
    case Question::Late:
      return {Ask::tr("Held by"), by_month};
    case Question::Pictures:
      return {Ask::tr("Stage"), Ask::tr("Reason"), by_month};
  }
  return {};
}

QString case_words(const folds::QuestionCase& one, CaseUnit unit, Units units) {
  const auto whole = static_cast<int>(one.value + 0.5);
  switch (unit) {
    case CaseUnit::Minutes:
      return Ask::tr("%1 min").arg(question::number(one.value, 0));
    case CaseUnit::Hours:
      return Ask::tr("%1 h").arg(question::number(one.value));
    case CaseUnit::HoursLate:
      return Ask::tr("%1 h late").arg(question::number(one.value));
    case CaseUnit::Days:
      return Ask::tr("%1 days").arg(question::number(one.value));
    case CaseUnit::DaysOver:
      return Ask::tr("%1 days over").arg(question::number(one.value));
    case CaseUnit::Things:
      return question::count(whole, Ask::tr("1 thing"), Ask::tr("%1 things"));
    case CaseUnit::Pictures:
      return question::count(whole, Ask::tr("1 picture"), Ask::tr("%1 pictures"));
    case CaseUnit::Rate:
      return rate_words(one.value, units);
    case CaseUnit::None:
      return {};
  }
  return {};
}

QString page_csv(const QuestionPage& page) {
  using folds::CellKind;
  const auto line = [](const QStringList& cells, bool free_first) {
    std::string out;
    for (int i = 0; i < cells.size(); ++i) {
      if (i > 0) out.push_back(',');
      out += folds::csv_cell(cells[i].toStdString(),
                             i == 0 && free_first ? CellKind::FreeText : CellKind::Number);
    }
    return out + "\r\n";
  };
  std::string out = line(QStringList{QStringLiteral("row")} + page.exact_heads, false);
  for (const auto& row : page.rows) out += line(QStringList{row.title} + row.exact, true);
  return text(out);
}

}  // namespace jambline::screens
