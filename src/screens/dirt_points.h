// screens/dirt_points.h: the cars of the chart as rows of a table, newest first.
//
// Roles:   jobId, plate, day, nibs, area, rate, limits, look (ChartSignal's number), lookWords,
// said
//          (the whole row as a sentence).
// Rows:    row r is point count - 1 - r of the chart. Words are made when they are shown.
// Threads: GUI thread.
#pragma once

#include <QAbstractListModel>
#include <map>
#include <memory>

#include "screens/dirt_words.h"

namespace jambline::screens {

class DirtPoints final : public QAbstractListModel {
 public:
  enum Role {
    JobIdRole = Qt::UserRole + 1,
    PlateRole,
    DayRole,
    NibsRole,
    AreaRole,
    RateRole,
    LimitsRole,
    LookRole,
    LookWordsRole,
    SaidRole,
  };
  using Plates = std::map<JobId, QString>;

  using QAbstractListModel::QAbstractListModel;
  void set(std::shared_ptr<const DirtNumbers> numbers, std::shared_ptr<const Plates> plates,
           DirtSaying saying);
  const DirtCar* car(int point) const;
  QString plate(const JobId& job) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 private:
  std::shared_ptr<const DirtNumbers> numbers_;
  std::shared_ptr<const Plates> plates_;
  DirtSaying saying_;
};

}  // namespace jambline::screens
