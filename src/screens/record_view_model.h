// screens/record_view_model.h: all cars of the shop, also delivered ones, searched and sorted.
//
// Roles:   jobId, plate, color, colorHex, body, vin, opened, promised, delivered, next, hours,
//          marks (open ones), state (words), disputed, hit (where the search hit, when it
//          is not in plain sight).
// Search:  words in any order, each anywhere in the record of the car (shelf/find.h): plate, VIN,
//          color, notes, people, defects, causes, overrides. The rows stay as they are until the
//          answer is here: the newest `first_page` at once, then all.
// Order:   newest first, or by a column; equal rows stay newest first.
// Cost:    the words of a row are made when it is shown; the search is done beside the GUI thread.
// Threads: GUI. wake() has to be called once before cars come (the engine lists none unasked).
#pragma once

#include <QAbstractListModel>
#include <qqmlregistration.h>
#include <stop_token>
#include <unordered_map>

#include "screens/integrity_view_model.h"
#include "screens/session.h"

namespace jambline::screens {

class RecordViewModel final : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Record")
  Q_PROPERTY(QString search READ search WRITE set_search NOTIFY changed)
  Q_PROPERTY(QString countWords READ countWords NOTIFY changed)
  Q_PROPERTY(bool loaded READ loaded NOTIFY changed)  // the cars have come
  Q_PROPERTY(bool empty READ empty NOTIFY changed)    // there is no car at all
  Q_PROPERTY(int shown READ shown NOTIFY changed)
  Q_PROPERTY(Column sortColumn READ sortColumn NOTIFY changed)
  Q_PROPERTY(bool sortDown READ sortDown NOTIFY changed)
  Q_PROPERTY(jambline::screens::IntegrityViewModel* integrity READ integrity CONSTANT)

 public:
  // In the order of the table.
  enum Column { Car, Color, State, Opened, Promised, Delivered, Hours, Marks };
  Q_ENUM(Column)
  enum Role {
    JobIdRole = Qt::UserRole + 1,
    PlateRole,
    ColorRole,
    ColorHexRole,
    BodyRole,
    VinRole,
    OpenedRole,
    PromisedRole,
    DeliveredRole,
    StateRole,
    HoursRole,
    MarksRole,
    DisputedRole,
    HitRole,
  };

  explicit RecordViewModel(Session& session, QObject* parent = nullptr);
  ~RecordViewModel() override;

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

  QString search() const { return search_; }
  void set_search(const QString& search);
  QString countWords() const;
  bool loaded() const { return cars_ != nullptr; }
  bool empty() const { return cars_ && cars_->empty(); }
  int shown() const { return rowCount(); }
  Column sortColumn() const { return sort_column_; }
  bool sortDown() const { return sort_down_; }
  IntegrityViewModel* integrity() { return &integrity_; }
  bool searching() const { return searching_; }  // an answer is still to come

  static constexpr int first_page = 50;

  Q_INVOKABLE void wake();
  Q_INVOKABLE void sortBy(Column column);  // the same column again turns the order
  Q_INVOKABLE void dropLastWord();
  Q_INVOKABLE QString jobIdAt(int row) const;

 signals:
  void changed();

 private:
  void refresh();
  void rebuild();
  void ask(int most);
  void found(const Result<shelf::Found>& answer);
  const folds::FloorRow& row(int at) const;
  QString state_words(const folds::FloorRow& car) const;
  QString hit_words(const folds::FloorRow& car) const;
  bool before(const folds::FloorRow& a, const folds::FloorRow& b) const;

  Session& session_;
  IntegrityViewModel integrity_;
  std::shared_ptr<const std::vector<folds::FloorRow>> cars_;
  std::vector<std::size_t> rows_;  // places in *cars_
  std::vector<JobId> jobs_;        // of rows_, to see whether the list itself changed
  QString search_;
  QStringList wanted_;  // words of the search
  std::shared_ptr<const shelf::Names> kinds_;
  std::unordered_map<JobId, std::vector<shelf::FindHit>> hits_;  // of the cars that were found
  std::stop_source stop_;
  int asked_ = 0;  // older answers are dropped
  bool searching_ = false;
  bool filtered_ = false;  // hits_ is an answer
  Column sort_column_ = Opened;
  bool sort_down_ = true;
  bool awake_ = false;
};

}  // namespace jambline::screens
