#include "screens/detail_rows.h"

namespace jambline::screens {

void DetailRows::set(std::vector<Row> rows) {
  beginResetModel();
  rows_ = std::move(rows);
  endResetModel();
}

int DetailRows::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant DetailRows::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == LabelRole) return row.label;
  if (role == ValueRole) return row.value;
  return {};
}

QHash<int, QByteArray> DetailRows::roleNames() const {
  return {{LabelRole, "label"}, {ValueRole, "value"}};
}

}  // namespace jambline::screens
