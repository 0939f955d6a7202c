// screens/retention_view_model.h: keep and forget: how long each class of records is kept, and who
// has left and may be forgotten by now.
//
// Rule:    the usual times are floors; the shop sets its own, and its local rule wins. Years that
//          are fewer than usual are taken and said to be fewer (job/retention.h). A manager sets
//          them. Nothing is deleted here: a leaver is erased by ShopViewModel, at any time.
// Leavers: the last day on which each one clocked, sprayed, was sampled or fit-tested, and what of
//          that is kept longest (folds/kept_of_leaver.h). The cars are asked once a wake and when
//          somebody leaves, on the lane of find(), and can be stopped; clocked days then in windows
//          of a month, back from the last one that a car knows of.
// Threads: GUI thread. Errors go to Session::failed; those of reading stand in `trouble`.
#pragma once

#include <map>
#include <stop_token>

#include "folds/kept_of_leaver.h"
#include "screens/form.h"
#include "screens/row_list.h"

namespace jambline::screens {

class RetentionViewModel final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, title, covers, usual, source, own ("" none), fewer, spoken.
  Q_PROPERTY(QAbstractItemModel* classes READ classes CONSTANT)
  // Roles: key, title, last, until, shape, state, mayForget, spoken.
  Q_PROPERTY(QAbstractItemModel* leavers READ leavers CONSTANT)
  Q_PROPERTY(int leaverCount READ leaverCount NOTIFY changed)
  Q_PROPERTY(bool loaded READ loaded NOTIFY changed)
  Q_PROPERTY(QString trouble READ trouble NOTIFY changed)
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)
  // The class that is open in the form.
  Q_PROPERTY(QString title READ title NOTIFY openChanged)
  Q_PROPERTY(QString covers READ covers NOTIFY openChanged)
  Q_PROPERTY(QString usual READ usual NOTIFY openChanged)
  Q_PROPERTY(QString source READ source NOTIFY openChanged)
  Q_PROPERTY(QString years READ years NOTIFY openChanged)  // the shop's own, "" none

 public:
  explicit RetentionViewModel(Session& session, QObject* parent = nullptr);
  ~RetentionViewModel() override { rest(); }

  QAbstractItemModel* classes() { return &classes_; }
  QAbstractItemModel* leavers() { return &leavers_; }
  int leaverCount() const { return leavers_.rowCount(); }
  bool loaded() const { return loaded_; }
  QString trouble() const { return trouble_; }
  bool mayKeep() const { return is_manager() && !session().readOnly(); }
  QString title() const;
  QString covers() const;
  QString usual() const;
  QString source() const;
  QString years() const;

  Q_INVOKABLE void wake();
  Q_INVOKABLE void rest();
  Q_INVOKABLE void open(const QString& key);
  Q_INVOKABLE void keep(const QString& years);  // field: years
  Q_INVOKABLE void keepAsUsual();
  // What is to be said beside the field: that a rule may ask for longer; "" nothing.
  Q_INVOKABLE QString fewerWords(const QString& years) const;
  // Before somebody is erased: which times are not over; "" none, or not known yet.
  Q_INVOKABLE QString notOverWords(const QString& person) const;

 signals:
  void changed();
  void openChanged();

 private:
  // A leaver whose clocked days are looked for: the last one is not later than `to_ms`.
  struct Sought {
    PersonId person;
    std::int64_t from_ms{};
    std::int64_t to_ms{};
  };
  void refresh();
  void show();
  void ask();
  void take(const std::vector<folds::Account>& accounts);
  void ask_next();
  std::vector<PersonId> who_left() const;
  std::optional<int> own_years(job::RecordClass record) const;
  std::optional<int> day_of(std::int64_t wall_ms) const;
  std::vector<folds::KeptRecord> kept_of(const PersonId& person) const;

  job::RecordClass open_{};
  RowList classes_;
  RowList leavers_;
  std::map<PersonId, folds::LastDays> last_;
  std::vector<PersonId> asked_;
  std::vector<Sought> sought_;
  std::stop_source stop_;
  int generation_ = 0;
  bool awake_ = false;
  bool loaded_ = false;
  QString trouble_;
};

}  // namespace jambline::screens
