// screens/question_page.h: an answer to a manager's question as a page shows it: one sentence, what
// it rests on, bars, and rows that open to cars and entries.
//
// Shape:  every question has views (by month, by person); a page is one of them. Numbers are those
// of
//         folds/*_question.h and nothing is worked out here. `bar` is drawn solid, `ghost` hatched
//         behind it; a row without a bar is in the table only.
// Exact:  the same row for other programs: English heads with units, numbers as they are.
// Threads: pure; for the calc lane. Words through tr in the context "Question".
#pragma once

#include <QCoreApplication>
#include <QStringList>
#include <optional>
#include <vector>

#include "folds/dirt_question.h"
#include "folds/due_question.h"
#include "folds/first_time_question.h"
#include "folds/flow_question.h"
#include "folds/hours_question.h"
#include "folds/late_question.h"
#include "folds/pictures_question.h"
#include "folds/spray_question.h"
#include "screens/units.h"

namespace jambline::screens {

struct Ask {
  Q_DECLARE_TR_FUNCTIONS(Question)
};

enum class CaseUnit : std::uint8_t {
  Minutes,
  Hours,
  HoursLate,
  Days,
  DaysOver,
  Things,
  Pictures,
  Rate,
  None
};

struct QuestionRow {
  QString key;
  QString title;
  QString numbers;  // for a card: "8.2 h of 7.0 h"
  QString note;     // what it rests on
  std::optional<double> bar = {};
  std::optional<double> ghost = {};
  QString bar_words;
  bool alarm = false;
  QStringList cells;
  QStringList exact;
  std::vector<folds::QuestionCase> cases;
  CaseUnit unit = CaseUnit::None;
};

struct QuestionPage {
  QString answer;
  QString rests_on;
  QString chart_name;
  QString bar_name;    // what is solid
  QString ghost_name;  // what is hatched; empty: nothing is
  QString rows_name;
  QStringList heads;  // of the cells, at most four
  QStringList exact_heads;
  std::vector<QuestionRow> rows;
  QString nothing;  // why there is no row, and what would make one
};

struct QuestionSaying {
  Units units{};
  QString zone;
  std::int64_t now_ms{};
  std::shared_ptr<const folds::ShopView> shop;
};

QString question_title(folds::Question question);  // "Hours against estimate"
QString question_says(folds::Question question);   // one line below it
QStringList question_views(folds::Question question, bool manager);

QuestionPage page_of(const folds::HoursAnswer& answer, const QuestionSaying& saying);
QuestionPage page_of(const folds::FlowAnswer& answer, int view, const QuestionSaying& saying);
QuestionPage page_of(const folds::FirstTimeAnswer& answer, int view, const QuestionSaying& saying);
QuestionPage page_of(const folds::DirtAnswer& answer, int view, const QuestionSaying& saying);
QuestionPage page_of(const folds::SprayAnswer& answer, int view, const QuestionSaying& saying);
QuestionPage page_of(const folds::DueAnswer& answer, const QuestionSaying& saying);
QuestionPage page_of(const folds::LateAnswer& answer, int view, const QuestionSaying& saying);
QuestionPage page_of(const folds::PicturesAnswer& answer, int view, const QuestionSaying& saying);

QString case_words(const folds::QuestionCase& one, CaseUnit unit, Units units);  // "64 min"
QString page_csv(const QuestionPage& page);

// Words that the pages share.
namespace question {
QString number(double value, int places = 1);
QString exact(double value);
QString hours(double minutes);
QString count(int n, const QString& one, const QString& many);  // "1 car", "12 cars"
QString cars(int n);
QString percent(int of_these, int all);   // "30 %"; a dash of nothing
QString month(const std::string& month);  // "Sep 2026"
QString person(const std::optional<PersonId>& person, const QuestionSaying& saying);
QString booth(const std::optional<BoothId>& booth, const QuestionSaying& saying);
QString middle(const std::optional<folds::Quartiles>& of, int places = 1);  // the median, or a dash
// "middle half 2.0 to 4.1, 31 cars"; of fewer than four only how many
QString spread(const std::optional<folds::Quartiles>& of, const QString& counted);
}  // namespace question

}  // namespace jambline::screens
