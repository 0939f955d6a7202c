// screens/evidence_view_model.h: what threw the dirt of the car on the tape: the answer in one
// sentence, each sign as a line from chance to cause, what particles look like, and the cause that
// a person sets or leaves open.
//
// Worked out: on the calculation lane when dirt, verdicts or the shop's history change, once every
//          sprayed panel is looked at (ready), or as long as the screen is shown. Until the answer
//          comes the word is Working and the marks are on the map; an older answer is dropped.
// History: asked for from the engine with the first need; flat panels are compared when it has
// come. Acts:    one command each; what cannot be says so through Session::failed. Threads: GUI
// thread.
#pragma once

#include <QObject>
#include <QRectF>
#include <QStringList>
#include <atomic>
#include <memory>
#include <optional>
#include <qqmlregistration.h>

#include "screens/evidence_words.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/sign_drawing.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class EvidenceViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool shown MEMBER shown_ WRITE setShown NOTIFY changed)
  Q_PROPERTY(bool ready READ ready NOTIFY changed)  // there is something to say of this car
  Q_PROPERTY(Word word READ word NOTIFY changed)
  Q_PROPERTY(QString countWords READ countWords NOTIFY changed)  // "12 marks, 3 panels"
  Q_PROPERTY(QString answer READ answer NOTIFY changed)          // one sentence
  Q_PROPERTY(QString lookAt READ lookAt NOTIFY changed)          // what to look at next, or why
  Q_PROPERTY(int answerShape READ answerShape NOTIFY changed)    // StateKind
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)      // for a row that leads here
  // Signs that point, at least the three least likely; the others. Roles: key, title, note, chance,
  // position, points, pointsTo, lookAt, chosen.
  Q_PROPERTY(QAbstractItemModel* signs READ signs CONSTANT)
  Q_PROPERTY(QAbstractItemModel* otherSigns READ otherSigns CONSTANT)
  Q_PROPERTY(int otherCount READ otherCount NOTIFY changed)
  // What particles look like. Roles: key, title, note, pointsTo, lookAt.
  Q_PROPERTY(QAbstractItemModel* clues READ clues CONSTANT)
  Q_PROPERTY(int clueCount READ clueCount NOTIFY changed)
  Q_PROPERTY(QString mapPanel READ mapPanel NOTIFY drawingChanged)  // entry's word; "" the car
  Q_PROPERTY(QString mapWords READ mapWords NOTIFY drawingChanged)  // what the map shows
  Q_PROPERTY(QRectF mapBox READ mapBox NOTIFY drawingChanged)  // of what was looked at, mm, y up
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)
  // The causes, those that something points to first. Roles: key, title, icon, chosen, pointed.
  Q_PROPERTY(QAbstractItemModel* causes READ causes CONSTANT)
  Q_PROPERTY(QString setWords READ setWords NOTIFY changed)  // "Hose, said by Ivo 10:42"; "" none
  Q_PROPERTY(bool disputed READ disputed NOTIFY changed)
  Q_PROPERTY(QStringList disputeWords READ disputeWords NOTIFY changed)  // "Hose: Ivo, 10:42"
  Q_PROPERTY(Act mainAct READ mainAct NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  Q_PROPERTY(bool noneChosen READ noneChosen NOTIFY changed)  // it would be left open

 public:
  enum class Word { None, Working, TooFew, Chance, Points, Refused };
  Q_ENUM(Word)
  enum class Act { None, SetCause, LeaveOpen, Back };
  Q_ENUM(Act)

  explicit EvidenceViewModel(Session& session, QObject* parent = nullptr);
  ~EvidenceViewModel() override;

  void setShown(bool shown);
  bool ready() const { return ready_; }
  Word word() const { return word_; }
  QString countWords() const;
  QString answer() const;
  QString lookAt() const;
  int answerShape() const;
  QString rowWords() const;
  QAbstractItemModel* signs() { return &signs_; }
  QAbstractItemModel* otherSigns() { return &other_signs_; }
  int otherCount() const { return other_signs_.rowCount(); }
  QAbstractItemModel* clues() { return &clues_; }
  int clueCount() const { return clues_.rowCount(); }
  QString mapPanel() const { return map_panel_; }
  QString mapWords() const;
  QRectF mapBox() const;
  SumRows* sum() { return &sum_; }
  QAbstractItemModel* causes() { return &causes_; }
  QString setWords() const;
  bool disputed() const;
  QStringList disputeWords() const;
  Act mainAct() const;
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  bool noneChosen() const { return !picked(); }

  SignDrawing drawing() const;
  const trade::DirtPatternResult* result() const { return result_ ? &*result_ : nullptr; }

  Q_INVOKABLE void showSign(const QString& key);     // on the map; again: the whole car
  Q_INVOKABLE void showPanel(const QString& panel);  // with its least likely sign; "" the car
  Q_INVOKABLE void openSum(const QString& key);      // fills `sum`
  Q_INVOKABLE void pick(const QString& cause);       // the picked one again, or "": none
  Q_INVOKABLE void act();
  Q_INVOKABLE void settle(int row);  // of disputeWords

 signals:
  void changed();
  void drawingChanged();
  void backAsked();

 private:
  struct Said {  // one head of a disputed cause
    std::optional<job::DirtCause> cause;
    QString words;
  };
  void refresh();
  void ask(trade::DirtPattern pattern);
  void take(std::uint64_t number, const Result<trade::DirtPatternResult>& judged);
  void forget();
  void show_signs();
  void show_causes();
  QString name_of(const std::string& panel) const;
  QString title_of(const trade::DirtEvidence& sign) const;
  int marks_on(const std::string& panel) const;
  int marks_of_car() const;
  std::vector<job::DirtCause> pointed() const;
  std::optional<job::DirtCause> picked() const;
  std::vector<Said> said_by_all() const;
  const trade::DirtEvidence* sign(const QString& key) const;
  const folds::CauseView* cause() const;
  void say(std::optional<job::DirtCause> cause);

  Session& session_;
  bool shown_ = false;
  bool ready_ = false;
  bool all_looked_at_ = false;
  Word word_ = Word::None;
  JobId job_;
  std::shared_ptr<const folds::CarView> car_;  // that was looked at last
  std::shared_ptr<const std::vector<folds::Lesson>> lessons_;
  bool lessons_wanted_ = false;
  std::optional<trade::DirtPattern> asked_;
  std::optional<trade::DirtPatternResult> result_;
  std::optional<Error> refused_;
  std::vector<SeenClue> seen_;
  std::shared_ptr<std::atomic<std::uint64_t>> number_;  // of the newest question
  RowList signs_;
  RowList other_signs_;
  RowList clues_;
  RowList causes_;
  SumRows sum_;
  QString chosen_sign_;
  QString map_panel_;
  bool has_picked_ = false;
  std::optional<job::DirtCause> picked_;
};

}  // namespace jambline::screens
