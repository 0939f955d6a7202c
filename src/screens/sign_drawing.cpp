#include "screens/sign_drawing.h"

#include <algorithm>

#include "screens/map_geometry.h"

namespace jambline::screens {

namespace {
using trade::DirtSign;

// Whether the sign speaks of this panel at all.
bool of_panel(const trade::DirtEvidence& sign, const trade::DirtPanel& panel) {
  switch (sign.sign) {
    case DirtSign::FlatOverUpright:
      return panel.lie == trade::Lie::Flat;
    case DirtSign::PlasticOverMetal:
      return panel.plastic;
    case DirtSign::FirstPanels:
    case DirtSign::LastPanels:
      return false;
    default:
      return sign.panel == panel.panel;
  }
}

bool speaks(const trade::DirtEvidence& sign, const trade::DirtPanel& panel, trade::Point_mm at,
            double band_mm) {
  switch (sign.sign) {
    case DirtSign::Cluster:
      return sign.cluster &&
             trade::distance_mm(at, sign.cluster->center) <= sign.cluster->radius_mm + 1e-6;
    case DirtSign::MaskedEdge:
      return trade::distance_to_lines_mm(at, panel.masked_edges) <= band_mm;
    case DirtSign::Seam:
      return trade::distance_to_lines_mm(at, panel.seams) <= band_mm;
    case DirtSign::ReachStrip:
      return std::any_of(
          panel.reach_strips.begin(), panel.reach_strips.end(),
          [&](const auto& one) { return trade::contains(trade::Polygon{one.points}, at); });
    default:
      return true;
  }
}

void add_sign(SignDrawing& out, const trade::DirtEvidence& sign, const trade::DirtPanel& panel,
              const trade::Placement& place) {
  const trade::Polygon within = place.apply(trade::Polygon{panel.outline});
  const auto add_bands = [&](const std::vector<trade::PanelLine>& lines) {
    for (const auto& line : lines) out.bands.push_back({place.apply(line.points), within});
  };
  switch (sign.sign) {
    case DirtSign::Cluster:
      if (sign.cluster)
        out.circle = {place.apply(sign.cluster->center), sign.cluster->radius_mm, within};
      break;
    case DirtSign::MaskedEdge:
      add_bands(panel.masked_edges);
      break;
    case DirtSign::Seam:
      add_bands(panel.seams);
      break;
    case DirtSign::ReachStrip:
      for (const auto& strip : panel.reach_strips)
        out.areas.push_back(place.apply(trade::Polygon{strip.points}));
      break;
    case DirtSign::Spacing:  // the marks say it
      break;
    default:
      out.areas.push_back(within);
  }
}
}  // namespace

SignDrawing sign_drawing(const trade::DirtPattern& asked, const job::CarPattern& body,
                         std::optional<job::Panel> alone, const trade::DirtEvidence* sign) {
  SignDrawing out;
  out.band_mm = asked.edge_band_mm;
  for (const auto& panel : asked.panels) {
    const auto name = from_word<job::Panel>(panel.panel);
    const auto* drawn = name && (!alone || alone == name) ? body.find(*name) : nullptr;
    if (!drawn) continue;
    const trade::Placement place = alone ? upright(*drawn) : drawn->place;
    const bool meant = sign && of_panel(*sign, panel);
    if (meant) add_sign(out, *sign, panel, place);
    for (const auto& at : panel.marks)
      out.marks.push_back({place.apply(at), meant && speaks(*sign, panel, at, asked.edge_band_mm)});
  }
  return out;
}

}  // namespace jambline::screens
