#include "screens/mark_list_model.h"

#include "screens/map_geometry.h"

namespace jambline::screens {

int MarkListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : count();
}

QVariant MarkListModel::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid | CheckIndexOption::ParentIsInvalid))
    return {};
  const auto at = static_cast<std::size_t>(index.row());
  const MarkRow& row = rows_[at];
  const std::size_t ring = ring_of_row_[at];
  const bool shown = rings_[ring].front() == at;
  switch (role) {
    case Mark:
      return QString::fromStdString(row.mark.hex());
    case Number:
      return row.number;
    case Kind:
      return static_cast<int>(row.defect);
    case Title:
      return row.title;
    case Note:
      return row.note;
    case Spoken:
      return row.spoken;
    case XMm:
      return middles_[ring].x_mm;
    case YMm:
      return middles_[ring].y_mm;
    case Together:
      return static_cast<int>(rings_[ring].size());
    case Shown:
      return shown;
    default:
      return {};
  }
}

QHash<int, QByteArray> MarkListModel::roleNames() const {
  return {{Mark, "mark"},   {Number, "number"},    {Kind, "kind"}, {Title, "title"},
          {Note, "note"},   {Spoken, "spoken"},    {XMm, "xMm"},   {YMm, "yMm"},
          {Shown, "shown"}, {Together, "together"}};
}

const MarkRow* MarkListModel::find(const MarkId& mark) const {
  for (const MarkRow& row : rows_)
    if (row.mark == mark) return &row;
  return nullptr;
}

const std::vector<std::size_t>& MarkListModel::ring_of(std::size_t row) const {
  return rings_[ring_of_row_[row]];
}

std::vector<MarkListModel::Ring> MarkListModel::ring_of_rows() const {
  std::vector<Ring> out;
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    const auto& held = rings_[ring_of_row_[row]];
    const trade::Point_mm middle = middles_[ring_of_row_[row]];
    out.push_back({held.size(), held.front() == row, middle.x_mm, middle.y_mm});
  }
  return out;
}

// One mark more or less is told as such: the other rings keep their items, and only those that
// look different now are told to look again.
void MarkListModel::show(std::vector<MarkRow> rows) {
  if (rows == rows_) return;
  const auto rows_before = rows_;
  const auto rings_before = ring_of_rows();
  const std::size_t most = std::min(rows.size(), rows_.size());
  std::size_t front = 0;
  while (front < most && rows[front].mark == rows_[front].mark) ++front;
  std::size_t back = 0;
  while (back < most - front &&
         rows[rows.size() - 1 - back].mark == rows_[rows_.size() - 1 - back].mark)
    ++back;
  const auto first = static_cast<std::ptrdiff_t>(front);
  const auto gone = static_cast<std::ptrdiff_t>(rows_.size() - front - back);
  const auto come = static_cast<std::ptrdiff_t>(rows.size() - front - back);
  if (gone > 0) {
    beginRemoveRows({}, static_cast<int>(first), static_cast<int>(first + gone - 1));
    rows_.erase(rows_.begin() + first, rows_.begin() + first + gone);
    merge();
    endRemoveRows();
  }
  if (come > 0) beginInsertRows({}, static_cast<int>(first), static_cast<int>(first + come - 1));
  rows_ = std::move(rows);
  merge();
  if (come > 0) endInsertRows();
  const auto rings_now = ring_of_rows();
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    const bool is_new = row >= front && row < front + static_cast<std::size_t>(come);
    if (is_new) continue;
    const std::size_t was = row < front ? row : row + rows_before.size() - rows_.size();
    if (rows_[row] == rows_before[was] && rings_now[row] == rings_before[was]) continue;
    const QModelIndex changed = index(static_cast<int>(row));
    emit dataChanged(changed, changed);
  }
  if (gone > 0 || come > 0) emit countChanged();
}

void MarkListModel::merge_at(double px_per_mm) {
  if (px_per_mm == px_per_mm_) return;
  px_per_mm_ = px_per_mm;
  const auto before = rings_;
  merge();
  if (rings_ != before && !rows_.empty()) emit dataChanged(index(0), index(count() - 1));
}

void MarkListModel::merge() {
  std::vector<Point_px> places;
  for (const MarkRow& row : rows_)
    places.push_back({row.at.x_mm * px_per_mm_, row.at.y_mm * px_per_mm_});
  rings_ = merged(places, px_per_mm_ > 0 ? ring_apart_px : 0);
  ring_of_row_.assign(rows_.size(), 0);
  middles_.clear();
  for (std::size_t ring = 0; ring < rings_.size(); ++ring) {
    trade::Point_mm sum;
    for (const std::size_t row : rings_[ring]) {
      ring_of_row_[row] = ring;
      sum.x_mm += rows_[row].at.x_mm;
      sum.y_mm += rows_[row].at.y_mm;
    }
    const auto many = static_cast<double>(rings_[ring].size());
    middles_.push_back({sum.x_mm / many, sum.y_mm / many});
  }
}

}  // namespace jambline::screens
