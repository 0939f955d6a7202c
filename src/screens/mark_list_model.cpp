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

void MarkListModel::show(std::vector<MarkRow> rows) {
  if (rows == rows_) return;
  const std::size_t before = rows_.size();
  bool added = rows.size() > before;
  for (std::size_t i = 0; added && i < before; ++i) added = rows[i].mark == rows_[i].mark;
  bool same = rows.size() == before;
  for (std::size_t i = 0; same && i < before; ++i) same = rows[i].mark == rows_[i].mark;
  if (added)
    beginInsertRows({}, static_cast<int>(before), static_cast<int>(rows.size()) - 1);
  else if (!same)
    beginResetModel();
  rows_ = std::move(rows);
  merge();
  if (added)
    endInsertRows();
  else if (!same)
    endResetModel();
  if (before > 0 && (added || same))
    emit dataChanged(index(0), index(static_cast<int>(before) - 1));
  if (!same) emit countChanged();
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
