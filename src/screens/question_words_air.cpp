// The pages of spraying: what was passed over before the gun, fit and clearance tests. Counts and
// days; never a word that a place was without danger.
#include "screens/air_words.h"
#include "screens/question_page.h"
#include "screens/text.h"
#include "screens/typed_times.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
QString starts_of(int n) {
  return question::count(n, Ask::tr("1 start"), Ask::tr("%1 starts"));
}
QString reports_of(int n) {
  return question::count(n, Ask::tr("1 report"), Ask::tr("%1 reports"));
}

QString due_title(const folds::DueRow& row, const QuestionSaying& saying) {
  if (row.test == folds::DueTest::Clearance)
    return Ask::tr("Clearance test, %1").arg(question::booth(row.booth, saying));
  return Ask::tr("Fit test, %1").arg(question::person(row.person, saying));
}

QString due_state(const folds::DueRow& row) {
  switch (row.state) {
    case folds::DueState::Expired:
      return Ask::tr("expired");
    case folds::DueState::Missing:
      return Ask::tr("not there");
    case folds::DueState::Soon:
      return Ask::tr("due soon");
    case folds::DueState::InDate:
      return Ask::tr("in date");
  }
  return {};
}
}  // namespace

QuestionPage page_of(const folds::SprayAnswer& answer, int view, const QuestionSaying& saying) {
  QuestionPage page;
  const auto& all = answer.all;
  page.nothing = all.starts + all.without == 0
                     ? Ask::tr("Nobody started to spray in this time, and nothing was reported.")
                     : Ask::tr("Nothing was passed over on %1.").arg(starts_of(all.starts));
  if (all.starts + all.without > 0) {
    page.answer = all.with_overrides == 0
                      ? Ask::tr("On no start was a must passed over.")
                      : Ask::tr("On %1 of %2 starts a must was passed over, %3.")
                            .arg(all.with_overrides)
                            .arg(all.starts)
                            .arg(question::percent(all.with_overrides, all.starts));
    page.rests_on = Ask::tr("%1; facts missing on %2; %3 of spraying without.")
                        .arg(starts_of(all.starts))
                        .arg(all.facts_missing)
                        .arg(reports_of(all.without));
  }
  if (view == 0) {
    page.chart_name = Ask::tr("What was passed over, not met, or sprayed without");
    page.bar_name = Ask::tr("Times passed over");
    page.ghost_name = Ask::tr("Times in all");
    page.heads = {Ask::tr("Passed over"), Ask::tr("Not met"), Ask::tr("Without")};
    page.exact_heads = {QStringLiteral("passed_over"), QStringLiteral("not_met"),
                        QStringLiteral("sprayed_without")};
    for (const auto& row : answer.items) {
      const int not_met = row.starts - row.with_overrides;
      QuestionRow out;
      out.key = QString::number(static_cast<int>(row.item.value_or(job::GunItem{})));
      out.title = sentence(words_of(row.item.value_or(job::GunItem{})));
      out.numbers = QString::number(row.starts + row.without);
      QStringList note;
      if (row.with_overrides > 0) note << Ask::tr("passed over %1").arg(row.with_overrides);
      if (not_met > 0) note << Ask::tr("not met %1").arg(not_met);
      if (row.without > 0) note << Ask::tr("sprayed without %1").arg(row.without);
      out.note = note.join(dot);
      out.bar = row.with_overrides;
      out.ghost = row.starts + row.without;
      out.bar_words = out.numbers;
      out.cells = {QString::number(row.with_overrides), QString::number(not_met),
                   QString::number(row.without)};
      out.exact = out.cells;
      out.cases = row.cases;
      page.rows.push_back(std::move(out));
    }
    return page;
  }
  page.chart_name = Ask::tr("Starts with a must passed over, of all starts");
  page.bar_name = Ask::tr("With a must passed over");
  page.ghost_name = Ask::tr("Starts");
  page.heads = {Ask::tr("Starts"), Ask::tr("Passed over"), Ask::tr("Missing"), Ask::tr("Without")};
  page.exact_heads = {QStringLiteral("starts"), QStringLiteral("with_overrides"),
                      QStringLiteral("facts_missing"), QStringLiteral("reports_without")};
  for (const auto& row : view == 1 ? answer.people : answer.months) {
    QuestionRow out;
    out.key = row.person ? hex(*row.person) : text(row.month);
    out.title = row.person ? question::person(row.person, saying) : question::month(row.month);
    out.numbers = Ask::tr("%1 of %2").arg(row.with_overrides).arg(row.starts);
    out.note =
        Ask::tr("facts missing on %1").arg(row.facts_missing) + dot + reports_of(row.without);
    out.bar = row.with_overrides;
    out.ghost = row.starts;
    out.bar_words = out.numbers;
    out.cells = {QString::number(row.starts), QString::number(row.with_overrides),
                 QString::number(row.facts_missing), QString::number(row.without)};
    out.exact = out.cells;
    out.cases = row.cases;
    out.unit = CaseUnit::Things;
    page.rows.push_back(std::move(out));
  }
  return page;
}

QuestionPage page_of(const folds::DueAnswer& answer, const QuestionSaying& saying) {
  QuestionPage page;
  page.nothing =
      Ask::tr("No booth and no fit test is in the register yet. Both are entered there.");
  if (!answer.rows.empty()) {
    page.answer =
        answer.expired + answer.missing == 0
            ? Ask::tr("Every test that is kept is in date today.")
            : Ask::tr("%1 expired, %2 not there.").arg(answer.expired).arg(answer.missing);
    page.rests_on =
        Ask::tr("%1 as of today; %2 due within 30 days; %3 in this time after one had expired.")
            .arg(question::count(answer.tests, Ask::tr("1 test"), Ask::tr("%1 tests")))
            .arg(answer.soon)
            .arg(starts_of(answer.sprayed));
  }
  page.chart_name = Ask::tr("Starts after a test had expired");
  page.bar_name = Ask::tr("Starts since");
  page.heads = {Ask::tr("State"), Ask::tr("Due"), Ask::tr("Sprayed")};
  page.exact_heads = {QStringLiteral("state"), QStringLiteral("due_day"),
                      QStringLiteral("days_left_d"), QStringLiteral("sprayed_since")};
  for (const auto& row : answer.rows) {
    QuestionRow out;
    out.key = (row.person ? hex(*row.person) : QString()) +
              (row.respirator ? hex(*row.respirator) : QString()) +
              (row.booth ? hex(*row.booth) : QString());
    out.title = due_title(row, saying);
    const bool expired = row.state == folds::DueState::Expired;
    out.alarm = expired || row.state == folds::DueState::Missing;
    out.numbers = due_state(row);
    QStringList note;
    if (row.respirator)
      if (const auto* model = saying.shop->air.find(*row.respirator))
        note << text(model->said.model);
    if (row.due_day) note << Ask::tr("due %1").arg(date_of_day(*row.due_day));
    if (expired) note << Ask::tr("%1 days over").arg(-row.days_left);
    if (row.sprayed > 0) note << Ask::tr("%1 since").arg(starts_of(row.sprayed));
    out.note = note.join(dot);
    if (row.sprayed > 0) {
      out.bar = row.sprayed;
      out.bar_words = QString::number(row.sprayed);
    }
    out.cells = {out.numbers, row.due_day ? date_of_day(*row.due_day) : QStringLiteral("\u2013"),
                 QString::number(row.sprayed)};
    out.exact = {text(word_of(row.state)), row.due_day ? day_text(*row.due_day) : QString(),
                 row.due_day ? QString::number(row.days_left) : QString(),
                 QString::number(row.sprayed)};
    out.cases = row.cases;
    out.unit = CaseUnit::DaysOver;
    page.rows.push_back(std::move(out));
  }
  return page;
}

}  // namespace jambline::screens
