#include "screens/panel_rows.h"

#include <QCoreApplication>

namespace jambline::screens {

std::vector<RowModel<PanelRow>::Column> panel_columns() {
  return {{"panel", [](const PanelRow& row) { return row.key; }},
          {"title", [](const PanelRow& row) { return row.title; }},
          {"shortTitle", [](const PanelRow& row) { return row.short_title; }},
          {"look", [](const PanelRow& row) { return static_cast<int>(row.look); }},
          {"marks", [](const PanelRow& row) { return row.marks; }},
          {"onCar", [](const PanelRow& row) { return row.on_car; }},
          {"aside", [](const PanelRow& row) { return row.aside; }},
          {"isNext", [](const PanelRow& row) { return row.next; }},
          {"isHere", [](const PanelRow& row) { return row.here; }},
          {"noCut", [](const PanelRow& row) { return row.no_cut; }},
          {"spoken", [](const PanelRow& row) { return row.spoken; }},
          {"xMm", [](const PanelRow& row) { return row.spot.x_mm; }},
          {"yMm", [](const PanelRow& row) { return row.spot.y_mm; }},
          {"roomMm", [](const PanelRow& row) { return row.room_mm; }},
          {"boxXMm", [](const PanelRow& row) { return row.box.low.x_mm; }},
          {"boxYMm", [](const PanelRow& row) { return row.box.low.y_mm; }},
          {"boxWidthMm", [](const PanelRow& row) { return row.box.width_mm(); }},
          {"boxHeightMm", [](const PanelRow& row) { return row.box.height_mm(); }}};
}

std::vector<job::Panel> as_they_were(const folds::CarView* before, const folds::CarView* now) {
  std::vector<job::Panel> out;
  if (!before || !now || before->job != now->job || before->body != now->body) return out;
  for (const auto& panel : now->panels)
    if (const auto* was = before->find(panel.plan.panel); was && *was == panel)
      out.push_back(panel.plan.panel);
  return out;
}

QString word_of_panel(job::Panel panel) {
  const std::string_view word = word_of(panel);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

std::optional<job::Panel> panel_of_word(const QString& word) {
  return from_word<job::Panel>(word.toStdString());
}

QString short_words(job::Panel panel) {
  const auto tr = [](const char* text) { return QCoreApplication::translate("panels", text); };
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
