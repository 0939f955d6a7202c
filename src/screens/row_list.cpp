#include "screens/row_list.h"

#include <algorithm>

namespace jambline::screens {

RowList::RowList(QByteArrayList roles, QObject* parent)
    : QAbstractListModel(parent), roles_(std::move(roles)) {}

void RowList::set(std::vector<QVariantList> rows) {
  const auto same_key = [](const QVariantList& a, const QVariantList& b) { return a[0] == b[0]; };
  const std::size_t most = std::min(rows.size(), rows_.size());
  std::size_t front = 0;
  while (front < most && same_key(rows[front], rows_[front])) ++front;
  std::size_t back = 0;
  while (back < most - front &&
         same_key(rows[rows.size() - 1 - back], rows_[rows_.size() - 1 - back]))
    ++back;
  const auto at = static_cast<std::ptrdiff_t>(front);
  const auto gone = static_cast<std::ptrdiff_t>(rows_.size() - front - back);
  const auto come = static_cast<std::ptrdiff_t>(rows.size() - front - back);
  if (gone > 0) {
    beginRemoveRows({}, static_cast<int>(at), static_cast<int>(at + gone - 1));
    rows_.erase(rows_.begin() + at, rows_.begin() + at + gone);
    endRemoveRows();
  }
  if (come > 0) {
    beginInsertRows({}, static_cast<int>(at), static_cast<int>(at + come - 1));
    rows_.insert(rows_.begin() + at, rows.begin() + at, rows.begin() + at + come);
    endInsertRows();
  }
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i] == rows_[i]) continue;
    rows_[i] = std::move(rows[i]);
    const QModelIndex changed = index(static_cast<int>(i));
    emit dataChanged(changed, changed);
  }
}

QVariant RowList::value(int row, const char* role) const {
  const auto place = roles_.indexOf(role);
  if (row < 0 || row >= rowCount() || place < 0) return {};
  return rows_[static_cast<std::size_t>(row)][place];
}

int RowList::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant RowList::data(const QModelIndex& index, int role) const {
  const int place = role - Qt::UserRole;
  if (!index.isValid() || index.row() >= rowCount() || place < 0 || place >= roles_.size())
    return {};
  return rows_[static_cast<std::size_t>(index.row())][place];
}

QHash<int, QByteArray> RowList::roleNames() const {
  QHash<int, QByteArray> names;
  for (int i = 0; i < roles_.size(); ++i) names.insert(Qt::UserRole + i, roles_[i]);
  return names;
}

}  // namespace jambline::screens
