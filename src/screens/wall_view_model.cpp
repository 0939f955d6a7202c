#include "screens/wall_view_model.h"

#include <algorithm>

#include "screens/picture_rows.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
QVariantMap wall_part(const QString& text, const QString& key = {}, bool changed = false) {
  return {{QStringLiteral("text"), text},
          {QStringLiteral("key"), key},
          {QStringLiteral("changed"), changed}};
}
const QString stage_key = QStringLiteral("stage");
const QString panel_key = QStringLiteral("panel");
}  // namespace

WallViewModel::WallViewModel(Session& session, PictureStore& store, QObject* parent)
    : QAbstractListModel(parent), session_(session), store_(store) {
  connect(&session_, &Session::carOrShopChanged, this, &WallViewModel::refresh);
  refresh();
}

void WallViewModel::refresh() {
  auto next = session_.car() ? session_.snapshot().car : nullptr;
  if (next == car_) return;
  if (!next || !car_ || next->job != car_->job) {
    stage_.reset();
    panel_.reset();
    place_ = 0;
  }
  const auto before = std::move(car_);  // what shown_ points into, until it is laid out anew
  car_ = std::move(next);
  lay_out();
}

void WallViewModel::lay_out() {
  std::vector<const folds::PictureView*> shown;
  if (car_)
    for (const auto* picture : pictures_by_stage(*car_))
      if ((!stage_ || picture->place.stage == *stage_) &&
          (!panel_ || picture->place.panel == panel_))
        shown.push_back(picture);
  std::vector<Row> rows;
  for (std::size_t at = 0; at < shown.size();) {
    const job::Stage stage = shown[at]->place.stage;
    std::size_t end = at;
    while (end < shown.size() && shown[end]->place.stage == stage) ++end;
    rows.push_back({stage, at, end - at});
    for (; at < end; at += std::min(end - at, static_cast<std::size_t>(columns_)))
      rows.push_back({std::nullopt, at, std::min(end - at, static_cast<std::size_t>(columns_))});
  }
  const bool same = rows == rows_;
  if (!same) beginResetModel();
  shown_ = std::move(shown);
  rows_ = std::move(rows);
  if (!same) endResetModel();
  if (same && !rows_.empty()) emit dataChanged(index(0), index(rowCount() - 1));
  emit changed();
}

void WallViewModel::set_columns(int columns) {
  if (columns < 1 || columns == columns_) return;
  columns_ = columns;
  lay_out();
}

int WallViewModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QHash<int, QByteArray> WallViewModel::roleNames() const {
  return {{HeadingRole, "heading"}, {CellsRole, "cells"}};
}

QVariantMap WallViewModel::cell(const folds::PictureView& picture) const {
  const PictureTelling telling{*car_, session_.shop(), session_.zone(), session_.now().wall_ms};
  const QString title = title_of(picture, telling);
  const QString line = line_of(picture, telling);
  const QString poor = poor_words(picture);
  QStringList spoken{title, line};
  if (!poor.isEmpty()) spoken << poor;
  if (!picture.notes.empty()) spoken << tr("drawn on");
  return {{QStringLiteral("picture"), QString::fromStdString(picture.picture.hex())},
          {QStringLiteral("file"), QString::fromStdString(picture.facts.file.hex())},
          {QStringLiteral("title"), title},
          {QStringLiteral("line"), line},
          {QStringLiteral("poor"), poor},
          {QStringLiteral("notes"), static_cast<int>(picture.notes.size())},
          {QStringLiteral("spoken"), spoken.join(QStringLiteral(", "))}};
}

QVariant WallViewModel::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == HeadingRole)
    return row.heading ? tr("%1, %2").arg(sentence(words_of(*row.heading))).arg(row.count)
                       : QString();
  if (role != CellsRole) return {};
  QVariantList cells;
  if (!row.heading)
    for (std::size_t i = 0; i < row.count; ++i) cells << cell(*shown_[row.first + i]);
  return cells;
}

bool WallViewModel::empty() const {
  return !car_ || car_->pictures.empty();
}

QString WallViewModel::countWords() const {
  const int all = car_ ? static_cast<int>(car_->pictures.size()) : 0;
  if (pictures() != all) return tr("%1 of %2 pictures").arg(pictures()).arg(all);
  return all == 1 ? tr("1 picture") : tr("%1 pictures").arg(all);
}

std::vector<job::Stage> WallViewModel::stages() const {
  std::vector<job::Stage> out;
  if (car_)
    for (const auto* picture : pictures_by_stage(*car_))
      if (out.empty() || out.back() != picture->place.stage) out.push_back(picture->place.stage);
  return out;
}

std::vector<job::Panel> WallViewModel::panels() const {
  std::vector<job::Panel> out;
  if (car_)
    for (const auto& panel : car_->panels)
      if (std::any_of(car_->pictures.begin(), car_->pictures.end(),
                      [&](const auto& one) { return one.place.panel == panel.plan.panel; }))
        out.push_back(panel.plan.panel);
  return out;
}

QVariantList WallViewModel::question() const {
  return {wall_part(tr("Pictures of")),
          wall_part(choices(stage_key).value(choiceOf(stage_key)), stage_key, stage_.has_value()),
          wall_part(tr("on")),
          wall_part(choices(panel_key).value(choiceOf(panel_key)), panel_key, panel_.has_value())};
}

QStringList WallViewModel::choices(const QString& key) const {
  QStringList out;
  if (key == stage_key) {
    out << tr("all stages");
    for (const auto stage : stages()) out << words_of(stage);
  } else if (key == panel_key) {
    out << tr("the whole car");
    for (const auto panel : panels()) out << words_of(panel, car_->body);
  }
  return out;
}

int WallViewModel::choiceOf(const QString& key) const {
  const auto row = [](const auto& list, const auto& chosen) {
    const auto found = std::find(list.begin(), list.end(), *chosen);
    return found == list.end() ? 0 : static_cast<int>(found - list.begin()) + 1;
  };
  if (key == stage_key && stage_) return row(stages(), stage_);
  if (key == panel_key && panel_) return row(panels(), panel_);
  return 0;
}

void WallViewModel::answerWith(const QString& key, int row) {
  if (row < 0 || row >= choices(key).size()) return;
  const auto at = static_cast<std::size_t>(row) - 1;  // 0 is the first choice: all
  if (key == stage_key) stage_ = row > 0 ? std::optional(stages()[at]) : std::nullopt;
  if (key == panel_key) panel_ = row > 0 ? std::optional(panels()[at]) : std::nullopt;
  place_ = 0;
  lay_out();
}

void WallViewModel::askAll() {
  stage_.reset();
  panel_.reset();
  lay_out();
}

QStringList WallViewModel::keys() const {
  QStringList out;
  for (const auto* picture : shown_) out << QString::fromStdString(picture->picture.hex());
  return out;
}

}  // namespace jambline::screens
