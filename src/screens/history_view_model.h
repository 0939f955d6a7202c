// screens/history_view_model.h: the visit of the car on the tape over time: lanes with a handle,
// and the car as it was at the handle.
//
// Handle:  stands after one of the entries, in display order. It stays at the newest while it is
//          there. What is shown of the car is folded from the entries up to it, on the calc lane;
//          while an answer is on its way only the newest place is remembered.
// Rows:    those of TimeLineViewModel up to the handle, newest first. Threads: GUI.
#pragma once

#include <QSortFilterProxyModel>
#include <QVariantMap>
#include <memory>
#include <qqmlregistration.h>

#include "screens/history_story.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/time_line_view_model.h"

namespace jambline::screens {

class HistoryViewModel final : public QSortFilterProxyModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to History")
  Q_PROPERTY(jambline::screens::TimeLineViewModel* timeLine READ timeLine CONSTANT)
  Q_PROPERTY(QVariantList lanes READ lanes NOTIFY storyChanged)
  Q_PROPERTY(QVariantList marks READ marks NOTIFY storyChanged)
  Q_PROPERTY(double startMs READ startMs NOTIFY storyChanged)
  Q_PROPERTY(double endMs READ endMs NOTIFY storyChanged)
  Q_PROPERTY(double handleMs READ handleMs NOTIFY handleChanged)
  Q_PROPERTY(
      QString handleWords READ handleWords NOTIFY handleChanged)  // "Tue 10:14, entry 3 of 9"
  Q_PROPERTY(int place READ place NOTIFY handleChanged)           // 1 is the first entry
  Q_PROPERTY(int count READ count NOTIFY storyChanged)
  // The car then: ofMark (hex), number, xMm, yMm (of the pattern), ended, cameBack, spoken.
  Q_PROPERTY(QAbstractItemModel* carMarks READ carMarks CONSTANT)
  Q_PROPERTY(QVariantMap panels READ panels NOTIFY carChanged)  // word of each planned: looked at
  Q_PROPERTY(QString markWords READ markWords NOTIFY carChanged)
  Q_PROPERTY(QString airWords READ airWords NOTIFY carChanged)  // "" nothing was said yet
  Q_PROPERTY(bool settled READ settled NOTIFY carChanged)       // shows the car at the handle

 public:
  HistoryViewModel(Session& session, TimeLineViewModel& time_line, QObject* parent = nullptr);

  TimeLineViewModel* timeLine() const { return &time_line_; }
  QVariantList lanes() const { return story_.lanes; }
  QVariantList marks() const { return story_.marks; }
  double startMs() const { return static_cast<double>(story_.start_ms); }
  double endMs() const { return static_cast<double>(story_.end_ms); }
  double handleMs() const;
  QString handleWords() const;
  int place() const { return at_ + 1; }
  int count() const { return static_cast<int>(story_.at_ms.size()); }
  QAbstractItemModel* carMarks() { return &car_marks_; }
  QVariantMap panels() const { return panels_; }
  QString markWords() const { return mark_words_; }
  QString airWords() const { return air_words_; }
  bool settled() const { return !asking_ && !telling_; }

  Q_INVOKABLE void wake();  // while it is looked at
  Q_INVOKABLE void rest();
  Q_INVOKABLE void moveTo(double wallMs);  // to the last entry up to then
  Q_INVOKABLE void step(int entries);
  // Goes there and opens it; of a car that is still to come, when it has come.
  Q_INVOKABLE void showEntry(const QString& entryId);

 signals:
  void storyChanged();
  void handleChanged();
  void carChanged();

 protected:
  bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

 private:
  void refresh();
  void go(int at);
  void put(int at);  // by hand
  void show_wanted();
  void tell();  // the story
  void ask();   // the car at the handle
  void show(const folds::CarView& car);
  QString air_of(const folds::CarView& car) const;

  Session& session_;
  TimeLineViewModel& time_line_;
  std::shared_ptr<const std::vector<entries::Entry>> timeline_;
  std::shared_ptr<HistoryFold> fold_ = std::make_shared<HistoryFold>();  // of the calc lane
  HistoryStory story_;
  std::optional<JobId> job_;
  std::optional<Hash> wanted_;
  int at_ = -1;
  bool follow_ = true;  // what comes on moves the handle
  int told_ = 0;        // older stories are dropped
  bool awake_ = false;
  bool telling_ = false;
  bool asking_ = false;
  bool again_ = false;  // the handle went on meanwhile
  RowList car_marks_;
  QVariantMap panels_;
  QString mark_words_;
  QString air_words_;
};

}  // namespace jambline::screens
