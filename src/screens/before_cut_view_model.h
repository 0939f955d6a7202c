// screens/before_cut_view_model.h: what is answered before anyone sands or machines paint, once per
// person and car.
//
// Answers: nothing is answered before a tap, and nothing is known ahead of one. answerTheRest()
//          says yes to what is left; what only shows later (breaks) and a finish that the car's own
//          panels speak against are left to a tap of their own. A must answered no wants a reason;
//          a stop answered no ends it: there is no way round.
// Calls:   `needed` is that of the session's person and car; who is about to cut calls ask() and
//          goes on when done() comes. keep() writes; done() follows when it is on disk.
// Threads: GUI thread. Errors go to Session::failed; the answers stay.
#pragma once

#include <QObject>
#include <QStringList>
#include <map>
#include <optional>
#include <qqmlregistration.h>

#include "job/before_cut.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class BeforeCutViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool needed READ needed NOTIFY changed)
  Q_PROPERTY(QString title READ title NOTIFY changed)  // "Before you cut, Ivo"
  // Roles: key, title, classWords ("must"), answerWords, shape (ShapeKind), alarm, spoken.
  Q_PROPERTY(QAbstractItemModel* items READ items CONSTANT)
  Q_PROPERTY(QString leftWords READ leftWords NOTIFY changed)  // "7 musts left"; "" none
  Q_PROPERTY(bool anyLeft READ anyLeft NOTIFY changed)         // that answerTheRest answers
  Q_PROPERTY(QString restWords READ restWords NOTIFY changed)
  Q_PROPERTY(bool stopped READ stopped NOTIFY changed)
  Q_PROPERTY(QString stopWords READ stopWords NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  Q_PROPERTY(QString knownWords READ knownWords NOTIFY changed)  // answered before; "" never
  // the item whose answers are open
  Q_PROPERTY(QString openTitle READ openTitle NOTIFY openChanged)
  Q_PROPERTY(QStringList openAnswers READ openAnswers NOTIFY openChanged)
  Q_PROPERTY(int openAnswer READ openAnswer NOTIFY openChanged)  // row of openAnswers; -1 none

 public:
  explicit BeforeCutViewModel(Session& session, QObject* parent = nullptr);

  bool needed() const;
  QString title() const;
  QAbstractItemModel* items() { return &items_; }
  QString leftWords() const;
  bool anyLeft() const;
  QString restWords() const;
  bool stopped() const;
  QString stopWords() const;
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  QString knownWords() const;
  QString openTitle() const;
  QStringList openAnswers() const;
  int openAnswer() const;

  Q_INVOKABLE void ask();                      // opens the card: asked()
  Q_INVOKABLE void press(const QString& key);  // yes; answered already: its answers are opened
  Q_INVOKABLE void open(const QString& key);
  Q_INVOKABLE void choose(int answer);  // a row of openAnswers
  Q_INVOKABLE void answerTheRest();
  Q_INVOKABLE void keep();

 signals:
  void changed();
  void openChanged();
  void opened();  // the answers of one item
  void asked();
  void done();

 private:
  struct Said {
    job::CutAnswer answer{};
    std::optional<job::OverrideReason> reason;
  };
  struct Choice {
    QString words;
    Said said;
  };
  void refresh();
  const folds::BeforeCutView* known() const;
  const Said* said(job::CutItem item) const;
  std::vector<Choice> choices(job::CutItem item) const;
  bool left_to_a_tap(job::CutItem item) const;
  QStringList never_cut() const;
  int left() const;

  Session& session_;
  RowList items_;
  std::map<job::CutItem, Said> said_;
  std::optional<JobId> job_;
  PersonId person_;
  std::optional<job::CutItem> open_;
};

}  // namespace jambline::screens
