// screens/row_model.h: a list of plain rows as a Qt model that tells only what changed.
//
// Shape:   Row has a `QString key`, unique in the list, that names the thing for its whole life,
// and
//          operator==. A column is a role name and how to read it from a row.
// Promise: set_rows() takes rows away, moves, inserts and changes them one by one, so that a view
//          keeps its place and a delegate under a finger is not torn down.
// Threads: GUI thread.
#pragma once

#include <QAbstractListModel>
#include <QByteArray>
#include <QString>
#include <QVariant>
#include <algorithm>
#include <functional>
#include <utility>
#include <vector>

namespace jambline::screens {

template <class Row>
class RowModel : public QAbstractListModel {
 public:
  using Column = std::pair<QByteArray, std::function<QVariant(const Row&)>>;

  RowModel(std::vector<Column> columns, QObject* parent)
      : QAbstractListModel(parent), columns_(std::move(columns)) {}

  const std::vector<Row>& rows() const { return rows_; }
  int count() const { return static_cast<int>(rows_.size()); }
  int row_of(const QString& key) const { return find(rows_, key); }  // -1: none
  const Row* row(const QString& key) const {
    const int at = row_of(key);
    return at < 0 ? nullptr : &rows_[static_cast<std::size_t>(at)];
  }

  int rowCount(const QModelIndex& parent = {}) const override {
    return parent.isValid() ? 0 : count();
  }
  QVariant data(const QModelIndex& index, int role) const override {
    const int column = role - Qt::UserRole;
    if (index.row() < 0 || index.row() >= rowCount() || column < 0 ||
        column >= static_cast<int>(columns_.size()))
      return {};
    return columns_[static_cast<std::size_t>(column)].second(
        rows_[static_cast<std::size_t>(index.row())]);
  }
  QHash<int, QByteArray> roleNames() const override {
    QHash<int, QByteArray> names;
    int role = Qt::UserRole;
    for (const auto& column : columns_) names.insert(role++, column.first);
    return names;
  }

  void set_rows(std::vector<Row> next) {
    for (int at = rowCount() - 1; at >= 0; --at)
      if (find(next, rows_[static_cast<std::size_t>(at)].key, at) < 0) {
        beginRemoveRows({}, at, at);
        rows_.erase(rows_.begin() + at);
        endRemoveRows();
      }
    for (int at = 0; at < static_cast<int>(next.size()); ++at) {
      const Row& wanted = next[static_cast<std::size_t>(at)];
      const int from = find(rows_, wanted.key, at);
      if (from < 0) {
        beginInsertRows({}, at, at);
        rows_.insert(rows_.begin() + at, wanted);
        endInsertRows();
        continue;
      }
      if (from != at) {
        beginMoveRows({}, from, from, {}, at);
        std::rotate(rows_.begin() + at, rows_.begin() + from, rows_.begin() + from + 1);
        endMoveRows();
      }
      if (rows_[static_cast<std::size_t>(at)] == wanted) continue;
      rows_[static_cast<std::size_t>(at)] = wanted;
      emit dataChanged(index(at), index(at));
    }
  }

 private:
  // Looks at row `first` before all others: there most of a list is found again.
  static int find(const std::vector<Row>& rows, const QString& key, int first = 0) {
    const auto has_key = [&](const Row& row) { return row.key == key; };
    const auto count = static_cast<int>(rows.size());
    if (first < count && has_key(rows[static_cast<std::size_t>(first)])) return first;
    const auto at = std::find_if(rows.begin(), rows.end(), has_key);
    return at == rows.end() ? -1 : static_cast<int>(at - rows.begin());
  }

  std::vector<Column> columns_;
  std::vector<Row> rows_;
};

}  // namespace jambline::screens
