// screens/look_view_model.h: one picture of the car on the tape: what it shows, what its file says,
// what was drawn on it, where it belongs; on to the one before and after.
//
// Shape:   open(picture, among) shows one of a list of ids; the list is the order of previous and
//          next. Facts are label and value (detail_rows.h). Notes are rows of key, words, line.
// Notes:   in parts of the picture; each is one entry beside it, the file is never changed.
// Filing:  startFiling() copies where it is; choose... change the copy; fileHere() posts it.
// Mark:    `ofMark` are the pictures of the mark that `mark` names: picture, file, spoken.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <optional>
#include <qqmlregistration.h>

#include "screens/detail_rows.h"
#include "screens/picture_rows.h"
#include "screens/picture_store.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/sync_view_model.h"

namespace jambline::screens {

class LookViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Look")
  Q_PROPERTY(jambline::screens::PictureStore* store READ store CONSTANT)
  Q_PROPERTY(QString picture READ picture NOTIFY changed)  // "" none
  Q_PROPERTY(QString file READ file NOTIFY changed)
  Q_PROPERTY(int widthPx READ widthPx NOTIFY changed)
  Q_PROPERTY(int heightPx READ heightPx NOTIFY changed)
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(QString line READ line NOTIFY changed)
  Q_PROPERTY(QString poor READ poor NOTIFY changed)  // "" good
  Q_PROPERTY(QString clockWords READ clockWords NOTIFY changed)
  Q_PROPERTY(QString placeInList READ placeInList NOTIFY changed)  // "3 of 12"
  Q_PROPERTY(bool hasPrevious READ hasPrevious NOTIFY changed)
  Q_PROPERTY(bool hasNext READ hasNext NOTIFY changed)
  Q_PROPERTY(bool comparable READ comparable NOTIFY changed)  // another one shows the same
  Q_PROPERTY(QString markKey READ markKey NOTIFY changed)     // "" none, or it was withdrawn
  Q_PROPERTY(QString markPanel READ markPanel NOTIFY changed)
  Q_PROPERTY(QString markWords READ markWords NOTIFY changed)
  Q_PROPERTY(bool writable READ writable NOTIFY changed)
  Q_PROPERTY(jambline::screens::DetailRows* facts READ facts CONSTANT)
  Q_PROPERTY(QAbstractItemModel* notes READ notes CONSTANT)
  Q_PROPERTY(int noteCount READ noteCount NOTIFY changed)
  Q_PROPERTY(QStringList stageChoices READ stageChoices NOTIFY filingChanged)
  Q_PROPERTY(QStringList panelChoices READ panelChoices NOTIFY filingChanged)
  Q_PROPERTY(QStringList shotChoices READ shotChoices NOTIFY filingChanged)
  Q_PROPERTY(QStringList markChoices READ markChoices NOTIFY filingChanged)
  Q_PROPERTY(int filedStage READ filedStage NOTIFY filingChanged)
  Q_PROPERTY(int filedPanel READ filedPanel NOTIFY filingChanged)  // 0: none, as below
  Q_PROPERTY(int filedShot READ filedShot NOTIFY filingChanged)
  Q_PROPERTY(int filedMark READ filedMark NOTIFY filingChanged)
  Q_PROPERTY(bool filedElsewhere READ filedElsewhere NOTIFY filingChanged)
  Q_PROPERTY(QString mark READ mark WRITE set_mark NOTIFY markChanged)
  Q_PROPERTY(QAbstractItemModel* ofMark READ ofMark CONSTANT)
  Q_PROPERTY(int ofMarkCount READ ofMarkCount NOTIFY markChanged)

 public:
  LookViewModel(Session& session, PictureStore& store, QObject* parent = nullptr);
  void follow(SyncViewModel& sync);  // which outlives this: where the file is

  PictureStore* store() const { return &store_; }
  QString picture() const;
  QString file() const;
  int widthPx() const;
  int heightPx() const;
  QString title() const;
  QString line() const;
  QString poor() const;
  QString clockWords() const;
  QString placeInList() const;
  bool hasPrevious() const { return at() > 0; }
  bool hasNext() const { return at() >= 0 && at() + 1 < list_.size(); }
  bool comparable() const;
  QString markKey() const;
  QString markPanel() const;
  QString markWords() const;
  bool writable() const;
  DetailRows* facts() { return &facts_; }
  QAbstractItemModel* notes() { return &notes_; }
  int noteCount() const { return notes_.rowCount(); }
  const folds::PictureView* shown() const;
  QStringList stageChoices() const;
  QStringList panelChoices() const;
  QStringList shotChoices() const;
  QStringList markChoices() const;
  int filedStage() const { return static_cast<int>(filed_.stage); }
  int filedPanel() const;
  int filedShot() const;
  int filedMark() const;
  bool filedElsewhere() const;
  QString mark() const { return mark_; }
  void set_mark(const QString& mark);
  QAbstractItemModel* ofMark() { return &of_mark_; }
  int ofMarkCount() const { return of_mark_.rowCount(); }

  Q_INVOKABLE void open(const QString& picture, const QStringList& among);
  Q_INVOKABLE void previous();
  Q_INVOKABLE void next();
  Q_INVOKABLE QStringList ofMarkKeys() const;
  // shape is a job::PictureNoteShape but text. Ends with noteEnded.
  Q_INVOKABLE void draw(int shape, double x, double y, double toX, double toY);
  Q_INVOKABLE void write(double x, double y, const QString& text);
  Q_INVOKABLE void takeNoteBack(const QString& note);
  Q_INVOKABLE void startFiling();
  Q_INVOKABLE void chooseStage(int row);
  Q_INVOKABLE void choosePanel(int row);
  Q_INVOKABLE void chooseShot(int row);
  Q_INVOKABLE void chooseMark(int row);
  Q_INVOKABLE void fileHere();

 signals:
  void changed();
  void noteEnded();  // the entry is on disk, or was refused
  void filingChanged();
  void filed();
  void markChanged();

 private:
  void refresh();
  void show_facts();
  QString sent_words() const;
  void show_mark();
  qsizetype at() const;
  PictureTelling telling() const;
  const folds::PanelView* panel_of_mark(const folds::MarkView*& mark) const;
  const folds::PanelView* filed_panel() const;
  void post_note(job::PictureNote drawn);

  Session& session_;
  PictureStore& store_;
  SyncViewModel* sync_ = nullptr;
  QString sent_;
  DetailRows facts_{this};
  RowList notes_;
  RowList of_mark_;
  std::optional<PictureId> picture_;
  QStringList list_;
  entries::PicturePlace filed_;
  QString mark_;
};

}  // namespace jambline::screens
