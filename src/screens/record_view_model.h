// screens/record_view_model.h: all cars of the shop, also delivered ones, searched and sorted.
//
// Roles:   jobId, plate, color, colorHex, body, vin, opened, promised, delivered, next, hours,
//          marks (open ones), state (words), disputed, hit (where the search hit, when it
//          is not in plain sight).
// Search:  words in any order, each anywhere in the record of the car (shelf/find.h): plate, VIN,
//          color, notes, people, defects, causes, overrides. The rows stay as they are until the
//          answer is here: the newest `first_page` at once, then all.
//          The sentence beside it (filter) chooses further. Until an answer has come they stay.
// Order:   newest first, or by a column; equal rows stay newest first.
// Cost:    the words of a row are made when it is shown; searching is done on the engine's lane for
//          it, and of more than `at_once` cars so is the sorting, on the calc lane.
// Threads: GUI. wake() has to be called once before cars come (the engine lists none unasked).
#pragma once

#include <QAbstractListModel>
#include <qqmlregistration.h>
#include <stop_token>
#include <unordered_map>

#include "screens/integrity_view_model.h"
#include "screens/record_car_view_model.h"
#include "screens/record_filter_view_model.h"
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
  Q_PROPERTY(QString emptyWords READ emptyWords NOTIFY changed)  // why none is shown
  Q_PROPERTY(bool mayDropWord READ mayDropWord NOTIFY changed)
  Q_PROPERTY(Column sortColumn READ sortColumn NOTIFY changed)
  Q_PROPERTY(bool sortDown READ sortDown NOTIFY changed)
  Q_PROPERTY(jambline::screens::IntegrityViewModel* integrity READ integrity CONSTANT)
  Q_PROPERTY(jambline::screens::RecordFilterViewModel* filter READ filter CONSTANT)
  Q_PROPERTY(jambline::screens::RecordCarViewModel* car READ car CONSTANT)  // the chosen one

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
  QString emptyWords() const;
  bool mayDropWord() const { return !empty() && !wanted_.isEmpty(); }
  Column sortColumn() const { return sort_column_; }
  bool sortDown() const { return sort_down_; }
  IntegrityViewModel* integrity() { return &integrity_; }
  RecordFilterViewModel* filter() { return &filter_; }
  RecordCarViewModel* car() { return &car_; }
  bool searching() const { return searching_ || sorting_; }  // an answer is still to come

  static constexpr int first_page = 50;
  static constexpr std::size_t at_once = 500;

  Q_INVOKABLE void wake();
  Q_INVOKABLE void sortBy(Column column);  // the same column again turns the order
  Q_INVOKABLE void dropLastWord();
  Q_INVOKABLE QString jobIdAt(int row) const;
  Q_INVOKABLE int rowOf(const QString& jobId) const;  // -1: not shown

 signals:
  void changed();

 private:
  using Cars = std::shared_ptr<const std::vector<folds::FloorRow>>;
  using Hits = std::unordered_map<JobId, std::vector<shelf::FindHit>>;
  // What stands in the list, in its order.
  struct Order {
    std::vector<std::size_t> rows;  // places in the cars
    std::vector<JobId> jobs;
  };
  static Order order_of(const Cars& cars, const std::shared_ptr<const Hits>& hits, Column column,
                        bool down);

  void refresh();
  void rebuild();
  void show(const Cars& cars, const std::shared_ptr<const Hits>& hits, Order order);
  bool asks() const { return !wanted_.isEmpty() || filter_.filters(); }
  void ask_anew();
  void ask(int most);
  void found(const Result<bool>& more, std::shared_ptr<const Hits> hits);
  const folds::FloorRow& row(int at) const;
  QString state_words(const folds::FloorRow& car) const;
  QString hit_words(const folds::FloorRow& car) const;

  Session& session_;
  IntegrityViewModel integrity_;
  RecordFilterViewModel filter_;
  RecordCarViewModel car_;
  Cars cars_;                      // the newest
  Cars shown_cars_;                // of rows_
  std::vector<std::size_t> rows_;  // places in *shown_cars_
  std::vector<JobId> jobs_;        // of rows_, to see whether the list itself changed
  QString search_;
  QStringList wanted_;  // words of the search
  std::shared_ptr<const shelf::Names> kinds_;
  std::shared_ptr<const Hits> hits_;        // of the cars that were found; null: all
  std::shared_ptr<const Hits> shown_hits_;  // of rows_
  std::stop_source stop_;
  int asked_ = 0;   // older answers are dropped
  int sorted_ = 0;  // and older orders
  bool searching_ = false;
  bool sorting_ = false;
  Column sort_column_ = Opened;
  bool sort_down_ = true;
  bool awake_ = false;
};

}  // namespace jambline::screens
