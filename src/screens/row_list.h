// screens/row_list.h: rows for a view: named values, told apart by the first one.
//
// Shape:   every row has one value a role, in the order of the role names; the first is its key,
//          unique in the list. set() finds what was put in, taken out and changed, so that a row
//          that stays keeps its delegate and the focus on it.
// Threads: GUI thread.
#pragma once

#include <QAbstractListModel>
#include <QByteArrayList>
#include <QVariantList>
#include <vector>

namespace jambline::screens {

class RowList final : public QAbstractListModel {
 public:
  RowList(QByteArrayList roles, QObject* parent);

  void set(std::vector<QVariantList> rows);
  const std::vector<QVariantList>& rows() const { return rows_; }
  QVariant value(int row, const char* role) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 private:
  QByteArrayList roles_;
  std::vector<QVariantList> rows_;
};

}  // namespace jambline::screens
