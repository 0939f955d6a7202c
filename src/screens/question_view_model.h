// screens/question_view_model.h: what a manager asks of months, quarters and years: the questions
// as rows, and one of them answered as a page (question_page.h).
//
// Time:    a month, a quarter or a year of the shop's zone, this one at first; turn() goes to the
//          one before or after it.
// Rows:    one can be open; its cases are then listed: cars, with the entry where there is one.
// Work:    cars are asked of the engine when a question is opened, when the time is turned and,
// once
//          it was shown, after a change, at most every few seconds; read and answered beside the
//          GUI thread. An answer to an older question is dropped.
// Table:   the shown rows as CSV with exact numbers and units in the heads; written beside and
//          renamed, never over a file that is there.
// Threads: GUI. Nothing is asked but between wake() and rest().
#pragma once

#include <QStringList>
#include <QTimer>
#include <qqmlregistration.h>
#include <stop_token>

#include "screens/question_page.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class QuestionViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Record")
  // Roles: key, title, says.
  Q_PROPERTY(QAbstractItemModel* questions READ questions CONSTANT)
  Q_PROPERTY(State state READ state NOTIFY changed)
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(QString says READ says NOTIFY changed)
  Q_PROPERTY(QStringList views READ views NOTIFY changed)
  Q_PROPERTY(int view READ view NOTIFY changed)
  Q_PROPERTY(Span span READ span NOTIFY changed)
  Q_PROPERTY(QString timeTitle READ timeTitle NOTIFY changed)  // "September 2026"
  Q_PROPERTY(bool isNow READ isNow NOTIFY changed)
  Q_PROPERTY(QString answer READ answer NOTIFY changed)
  Q_PROPERTY(QString restsOn READ restsOn NOTIFY changed)
  Q_PROPERTY(QString emptyWords READ emptyWords NOTIFY changed)  // or the trouble
  // Bars: words, solid, hatched (-1: none), barWords. At most twelve, as the rows stand.
  Q_PROPERTY(QAbstractItemModel* bars READ bars CONSTANT)
  Q_PROPERTY(int barCount READ barCount NOTIFY changed)
  Q_PROPERTY(qreal most READ most NOTIFY changed)
  Q_PROPERTY(QString chartName READ chartName NOTIFY changed)
  Q_PROPERTY(QString barName READ barName NOTIFY changed)
  Q_PROPERTY(QString ghostName READ ghostName NOTIFY changed)
  Q_PROPERTY(QString moreWords READ moreWords NOTIFY changed)  // rows without a bar here
  // Roles: key, title, numbers, note, alarm, cars (words), one, two, three, four, spoken.
  Q_PROPERTY(QAbstractItemModel* rows READ rows CONSTANT)
  Q_PROPERTY(int rowCount READ rowCount NOTIFY changed)
  Q_PROPERTY(QStringList heads READ heads NOTIFY changed)
  // Of the row that is open. Roles: key, job, entry, plate, when, words, spoken.
  Q_PROPERTY(QAbstractItemModel* cases READ cases CONSTANT)
  Q_PROPERTY(int caseCount READ caseCount NOTIFY openChanged)
  Q_PROPERTY(QString openTitle READ openTitle NOTIFY openChanged)  // "" none is open
  Q_PROPERTY(QString openNote READ openNote NOTIFY openChanged)
  Q_PROPERTY(QString place READ place CONSTANT)  // where the table goes unless another is typed
  Q_PROPERTY(QString written READ written NOTIFY changed)

 public:
  enum State { Waiting, Nothing, Shown, Failed };
  Q_ENUM(State)
  enum Span { Month, Quarter, Year };
  Q_ENUM(Span)

  QuestionViewModel(Session& session, QString place, QObject* parent = nullptr);
  ~QuestionViewModel() override;

  QAbstractItemModel* questions() { return &questions_; }
  State state() const { return state_; }
  QString title() const { return question_title(question_); }
  QString says() const { return question_says(question_); }
  QStringList views() const { return question_views(question_, is_manager()); }
  int view() const { return view_; }
  Span span() const { return span_; }
  QString timeTitle() const;
  bool isNow() const;
  QString answer() const { return page_->answer; }
  QString restsOn() const { return page_->rests_on; }
  QString emptyWords() const;
  QAbstractItemModel* bars() { return &bars_; }
  int barCount() const { return bars_.rowCount(); }
  qreal most() const { return most_; }
  QString chartName() const { return page_->chart_name; }
  QString barName() const { return page_->bar_name; }
  QString ghostName() const { return page_->ghost_name; }
  QString moreWords() const;
  QAbstractItemModel* rows() { return &rows_; }
  int rowCount() const { return rows_.rowCount(); }
  QStringList heads() const { return page_->heads; }
  QAbstractItemModel* cases() { return &cases_; }
  int caseCount() const { return cases_.rowCount(); }
  QString openTitle() const;
  QString openNote() const;
  QString place() const { return place_; }
  QString written() const { return written_; }

  Q_INVOKABLE void wake();
  Q_INVOKABLE void rest();
  Q_INVOKABLE void choose(const QString& question);  // a row of questions
  Q_INVOKABLE void showView(int view);
  Q_INVOKABLE void showSpan(int span);
  Q_INVOKABLE void turn(int by);
  Q_INVOKABLE void toNow();
  Q_INVOKABLE void openRow(const QString& row);
  Q_INVOKABLE void closeRow();
  Q_INVOKABLE void writeTable(const QString& place);

  folds::Question question() const { return question_; }
  const QuestionPage& page() const { return *page_; }

 signals:
  void changed();
  void openChanged();

 private:
  bool is_manager() const;
  int month_now() const;  // months since year 0, of the shop's zone
  int first_month() const;
  folds::Period period() const;
  QuestionSaying saying() const;
  void ask();
  void answer_with(std::vector<folds::Account> accounts, int generation);
  void take(std::shared_ptr<const QuestionPage> page);
  void show_rows();
  void show_cases();
  void heard();
  const QuestionRow* open_row() const;

  Session& session_;
  QString place_;
  folds::Question question_{};
  int view_ = 0;
  Span span_ = Quarter;
  int month_ = 0;  // any one in the time that is shown
  bool awake_ = false;
  State state_ = Waiting;
  int generation_ = 0;
  std::stop_source stop_;
  std::uint64_t heard_ = 0;  // snapshot
  QTimer later_;
  std::shared_ptr<const QuestionPage> page_ = std::make_shared<QuestionPage>();
  QString trouble_;
  QString written_;
  QString open_;
  qreal most_ = 0;
  RowList questions_;
  RowList bars_;
  RowList rows_;
  RowList cases_;
};

}  // namespace jambline::screens
