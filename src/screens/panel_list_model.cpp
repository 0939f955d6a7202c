#include "screens/panel_list_model.h"

#include <QCoreApplication>

namespace jambline::screens {

int PanelListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : count();
}

QVariant PanelListModel::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid | CheckIndexOption::ParentIsInvalid))
    return {};
  const PanelRow& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case PanelWord:
      return word_of_panel(row.panel);
    case Title:
      return row.title;
    case ShortTitle:
      return row.short_title;
    case Look:
      return static_cast<int>(row.look);
    case Marks:
      return row.marks;
    case OnCar:
      return row.on_car;
    case Aside:
      return row.aside;
    case IsNext:
      return row.next;
    case IsHere:
      return row.here;
    case Spoken:
      return row.spoken;
    case XMm:
      return row.spot.x_mm;
    case YMm:
      return row.spot.y_mm;
    case RoomMm:
      return row.room_mm;
    case BoxXMm:
      return row.box.low.x_mm;
    case BoxYMm:
      return row.box.low.y_mm;
    case BoxWidthMm:
      return row.box.width_mm();
    case BoxHeightMm:
      return row.box.height_mm();
    default:
      return {};
  }
}

QHash<int, QByteArray> PanelListModel::roleNames() const {
  return {{PanelWord, "panel"},
          {Title, "title"},
          {ShortTitle, "shortTitle"},
          {Look, "look"},
          {Marks, "marks"},
          {OnCar, "onCar"},
          {Aside, "aside"},
          {IsNext, "isNext"},
          {IsHere, "isHere"},
          {Spoken, "spoken"},
          {XMm, "xMm"},
          {YMm, "yMm"},
          {RoomMm, "roomMm"},
          {BoxXMm, "boxXMm"},
          {BoxYMm, "boxYMm"},
          {BoxWidthMm, "boxWidthMm"},
          {BoxHeightMm, "boxHeightMm"}};
}

const PanelRow* PanelListModel::find(job::Panel panel) const {
  for (const PanelRow& row : rows_)
    if (row.panel == panel) return &row;
  return nullptr;
}

void PanelListModel::show(std::vector<PanelRow> rows) {
  bool same = rows.size() == rows_.size();
  for (std::size_t i = 0; same && i < rows.size(); ++i) same = rows[i].panel == rows_[i].panel;
  if (!same) {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
    emit countChanged();
    return;
  }
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i] == rows_[i]) continue;
    rows_[i] = std::move(rows[i]);
    const QModelIndex at = index(static_cast<int>(i));
    emit dataChanged(at, at);
  }
}

QString PanelListModel::panelAt(int row) const {
  return row >= 0 && row < count() ? word_of_panel(rows_[static_cast<std::size_t>(row)].panel)
                                   : QString();
}

int PanelListModel::rowOf(const QString& panel) const {
  for (int i = 0; i < count(); ++i)
    if (panelAt(i) == panel) return i;
  return -1;
}

QString word_of_panel(job::Panel panel) {
  const std::string_view word = word_of(panel);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

std::optional<job::Panel> panel_of_word(const QString& word) {
  return from_word<job::Panel>(word.toStdString());
}

QString short_words(job::Panel panel) {
  const auto tr = [](const char* text) {
    return QCoreApplication::translate("jambline::screens::PanelListModel", text);
  };
  using job::Panel;
  switch (panel) {
    case Panel::Hood:
      return tr("Hood");
    case Panel::LeftFender:
    case Panel::RightFender:
      return tr("Fender");
    case Panel::LeftFrontDoor:
    case Panel::RightFrontDoor:
    case Panel::LeftRearDoor:
    case Panel::RightRearDoor:
      return tr("Door");
    case Panel::LeftQuarter:
    case Panel::RightQuarter:
      return tr("Quarter");
    case Panel::Roof:
      return tr("Roof");
    case Panel::Decklid:
      return tr("Decklid");
    case Panel::Hatch:
      return tr("Hatch");
    case Panel::Liftgate:
      return tr("Liftgate");
    case Panel::Tailgate:
      return tr("Tailgate");
    case Panel::FrontBumper:
    case Panel::RearBumper:
      return tr("Bumper cover");
    case Panel::LeftRocker:
    case Panel::RightRocker:
      return tr("Rocker");
    case Panel::LeftMirror:
    case Panel::RightMirror:
      return tr("Mirror");
    case Panel::FuelDoor:
      return tr("Fuel door");
    case Panel::LeftCabCorner:
    case Panel::RightCabCorner:
      return tr("Cab corner");
    case Panel::LeftBedSide:
    case Panel::RightBedSide:
      return tr("Bed side");
    case Panel::SlidingDoor:
      return tr("Sliding door");
    case Panel::LeftSide:
    case Panel::RightSide:
      return tr("Side panel");
    case Panel::LeftCargoDoor:
    case Panel::RightCargoDoor:
      return tr("Cargo door");
  }
  return {};
}

}  // namespace jambline::screens
