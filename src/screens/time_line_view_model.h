// screens/time_line_view_model.h: the entries of the car on the tape, in words, newest first.
//
// Roles:   entryId (hash, hex), day, time, person, words, takenBack, takenBackWords, doubt (words,
//          empty: the clock is believed), file (of a picture; empty: none), refused (words why it
//          is not obeyed; empty: it is).
// Promise: a row opens to its raw record; takeBack() writes a withdrawal, nothing is ever removed.
//          While entries only come on, rows are inserted and none is made anew.
// Cost:    words are made when a row is shown; 10,000 entries are fine. Threads: GUI.
#pragma once

#include <QAbstractListModel>
#include <QStringList>
#include <qqmlregistration.h>

#include "engine/raw_entry.h"
#include "folds/history.h"
#include "screens/amend_clock_view_model.h"
#include "screens/detail_rows.h"
#include "screens/entry_words.h"
#include "screens/picture_store.h"
#include "screens/session.h"
#include "screens/sync_view_model.h"

namespace jambline::screens {

class TimeLineViewModel final : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to TimeLine")
  Q_PROPERTY(Group group READ group WRITE set_group NOTIFY changed)
  Q_PROPERTY(QString countWords READ countWords NOTIFY changed)
  Q_PROPERTY(bool empty READ empty NOTIFY changed)        // the car has no entries at all
  Q_PROPERTY(bool opened READ opened NOTIFY openChanged)  // an entry is open
  Q_PROPERTY(QString openWords READ openWords NOTIFY openChanged)
  Q_PROPERTY(QString openLine READ openLine NOTIFY openChanged)  // who and when
  Q_PROPERTY(QString openDoubt READ openDoubt NOTIFY openChanged)
  Q_PROPERTY(QString openPlace READ openPlace NOTIFY openChanged)  // here, on the hub; who sent it
  Q_PROPERTY(QString openRefused READ openRefused NOTIFY openChanged)  // "" it is obeyed
  Q_PROPERTY(QString openTakenBack READ openTakenBack NOTIFY openChanged)
  Q_PROPERTY(bool openMayBeTakenBack READ openMayBeTakenBack NOTIFY openChanged)
  Q_PROPERTY(bool openMayBeAmended READ openMayBeAmended NOTIFY openChanged)  // of a clock
  Q_PROPERTY(jambline::screens::AmendClockViewModel* amend READ amend CONSTANT)
  Q_PROPERTY(jambline::screens::PictureStore* store READ store CONSTANT)
  Q_PROPERTY(QString openFile READ openFile NOTIFY openChanged)  // the picture that it is about
  Q_PROPERTY(QString openPicture READ openPicture NOTIFY openChanged)  // "" not in the record now
  Q_PROPERTY(jambline::screens::DetailRows* details READ details CONSTANT)
  Q_PROPERTY(QStringList reasons READ reasons CONSTANT)  // why something is taken back
  // As it lies in the log; read when it is opened.
  Q_PROPERTY(bool rawRead READ rawRead NOTIFY rawChanged)
  Q_PROPERTY(bool rawGood READ rawGood NOTIFY rawChanged)  // signature and payload
  Q_PROPERTY(QString rawSignature READ rawSignature NOTIFY rawChanged)
  Q_PROPERTY(QStringList rawReceipts READ rawReceipts NOTIFY rawChanged)
  Q_PROPERTY(QString rawText READ rawText NOTIFY rawChanged)  // of a long one the beginning

 public:
  enum Group { All, Looks, Hours, HandOff, Air, Notes };
  Q_ENUM(Group)
  enum Role {
    EntryIdRole = Qt::UserRole + 1,
    DayRole,
    TimeRole,
    PersonRole,
    WordsRole,
    TakenBackRole,
    TakenBackWordsRole,
    DoubtRole,
    FileRole,
    RefusedRole,
  };

  explicit TimeLineViewModel(Session& session, QObject* parent = nullptr);
  void show_pictures(PictureStore& store) { store_ = &store; }
  void follow(SyncViewModel& sync);  // which outlives this

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

  // Of the entry in a row among all of the car, from 0 in display order; -1: there is no such row.
  int place_of(int row) const;

  using RawReader = std::function<Result<engine::RawEntry>(const Hash&)>;
  void read_raw_by(RawReader reader) { raw_reader_ = std::move(reader); }  // runs on the calc lane
  bool rawRead() const { return raw_.has_value(); }
  bool rawGood() const { return raw_ && raw_->signature_good && raw_->payload_good; }
  QString rawSignature() const;
  QStringList rawReceipts() const;
  QString rawText() const;

  static constexpr qsizetype most_raw_shown = 6000;

  Group group() const { return group_; }
  void set_group(Group group);
  QString countWords() const;
  bool empty() const { return !timeline_ || timeline_->empty(); }
  bool opened() const { return open_entry() != nullptr; }
  QString openWords() const;
  QString openLine() const;
  QString openDoubt() const;
  QString openPlace() const;
  QString openRefused() const;
  QString openTakenBack() const;
  bool openMayBeTakenBack() const;
  bool openMayBeAmended() const { return openMayBeTakenBack() && open_act() != nullptr; }
  AmendClockViewModel* amend() { return &amend_; }
  PictureStore* store() const { return store_; }
  QString openFile() const;
  QString openPicture() const;
  DetailRows* details() { return &details_; }
  QStringList reasons() const;

  Q_INVOKABLE void open(const QString& entryId);
  Q_INVOKABLE void close();
  Q_INVOKABLE void copyRaw();  // all of it, to the clipboard
  // Takes back the open entry; `reason` is a place in reasons().
  Q_INVOKABLE void takeBack(int reason);
  Q_INVOKABLE void amendOpen();  // the open entry, of a clock, was at another time; it closes

 signals:
  void changed();
  void openChanged();
  void rawChanged();
  void takenBack();  // the withdrawal is on disk

 private:
  void refresh();
  void read_raw();
  void rebuild();
  void show(std::vector<const entries::Entry*> rows);
  const entries::Entry* open_entry() const;
  const folds::ClockActView* act_of(const Hash& entry) const;  // null: no clock, or taken back
  const folds::ClockActView* open_act() const { return open_ ? act_of(*open_) : nullptr; }
  QString told(const entries::Entry& entry) const;
  QString taken_back_words(const entries::Entry& entry) const;
  Telling telling() const;

  Session& session_;
  PictureStore* store_ = nullptr;
  SyncViewModel* sync_ = nullptr;
  std::shared_ptr<const std::vector<entries::Entry>> timeline_;
  std::shared_ptr<const folds::ShopView> shop_;
  folds::History history_;
  std::vector<const entries::Entry*> rows_;  // into *timeline_, newest first
  std::vector<Hash> hashes_;                 // of rows_, to see what is new
  Group group_ = All;
  std::optional<Hash> open_;
  RawReader raw_reader_;
  std::optional<engine::RawEntry> raw_;
  DetailRows details_{this};
  AmendClockViewModel amend_{session_};
};

}  // namespace jambline::screens
