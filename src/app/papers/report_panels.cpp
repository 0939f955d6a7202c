#include <algorithm>

#include "app/papers/report_telling.h"
#include "screens/correct_words.h"
#include "screens/film_words.h"
#include "screens/map_geometry.h"
#include "screens/picture_words.h"
#include "screens/place_words.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::app {

namespace {
using screens::words_of;

QString marks_words(const folds::PanelView& panel) {
  int gone = 0, burnt = 0, open = 0;
  for (const auto& mark : panel.marks) {
    if (mark.open()) ++open;
    if (mark.end == job::MarkEnd::Gone) ++gone;
    if (mark.end == job::MarkEnd::BurnThrough) ++burnt;
  }
  QStringList out;
  if (!panel.marks.empty()) out << report_tr("%1 found").arg(panel.marks.size());
  if (gone > 0) out << report_tr("%1 gone").arg(gone);
  if (burnt > 0) out << report_tr("%1 burnt through").arg(burnt);
  if (open > 0) out << report_tr("%1 open").arg(open);
  if (panel.dirt != job::DirtClass::None)
    out << report_tr("dirt all over, %1").arg(words_of(panel.dirt));
  return out.isEmpty() ? report_tr("none") : out.join(QStringLiteral(", "));
}

QString looked_at(const folds::PanelView& panel, const ReportTelling& tell) {
  QStringList out;
  for (const auto& one : panel.verdicts)
    out << report_tr("%1: %2").arg(screens::sentence(words_of(one.verdict)),
                                   tell.who_when(one.by, one.wall_ms));
  if (out.isEmpty()) out << screens::sentence(words_of(panel.verdict));
  if (panel.disputed) out << report_tr("these answers disagree");
  if (panel.edges_and_back) out << report_tr("edges and back looked at");
  return out.join(QChar('\n'));
}

report::ReportTable panels(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Panel"), 3},
                 {report_tr("Plan"), 4.4},
                 {report_tr("Marks"), 3.2},
                 {report_tr("Looked at"), 4.4}};
  for (const auto& panel : tell.car.panels)
    out.rows.push_back(
        {tell.panel(panel.plan.panel),
         QStringList{words_of(panel.plan.treatment), words_of(panel.plan.finish),
                     words_of(panel.plan.substrate),
                     panel.plan.on_car ? report_tr("on the car") : report_tr("loose")}
             .join(QStringLiteral(", ")),
         marks_words(panel), looked_at(panel, tell)});
  return out;
}

QString place_of(const folds::MarkView& mark, job::Panel panel, job::BodyShape body) {
  const auto* drawn = job::pattern(body).find(panel);
  if (!drawn) return {};
  const auto place = screens::upright(*drawn);
  const auto box = trade::bounds(place.apply(drawn->shape.outline).corners);
  return screens::place_words(panel, screens::ninth(box, place.apply({mark.x_mm, mark.y_mm})));
}

QString end_words(const folds::MarkView& mark) {
  QString out = mark.end ? words_of(*mark.end) : report_tr("open");
  if (mark.came_back && mark.end != job::MarkEnd::CameBack)
    out = report_tr("%1, had come back").arg(out);
  return out;
}

report::ReportTable marks(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("No."), 1.2, true}, {report_tr("Panel, place"), 4.4},
                 {report_tr("What"), 4.6},      {report_tr("Found at"), 1.8},
                 {report_tr("Found by"), 4.6},  {report_tr("How it ended"), 2.4}};
  for (const auto& panel : tell.car.panels)
    for (const auto& mark : panel.marks) {
      QStringList what{report_tr("%1, size %2").arg(words_of(mark.defect)).arg(mark.size)};
      if (mark.layer != job::Layer::NotSaid) what << words_of(mark.layer);
      if (mark.look) what << words_of(*mark.look);
      out.rows.push_back({QString::number(mark.number),
                          report_tr("%1, %2").arg(tell.panel(panel.plan.panel),
                                                  place_of(mark, panel.plan.panel, tell.car.body)),
                          screens::sentence(what.join(QStringLiteral(", "))), words_of(mark.stage),
                          tell.who_when(mark.by, mark.wall_ms), end_words(mark)});
    }
  return out;
}

report::ReportMap map_of(const ReportTelling& tell) {
  report::ReportMap out;
  out.body = tell.car.body;
  for (const auto& panel : tell.car.panels) {
    if (panel.plan.treatment != job::Treatment::NotRefinished)
      out.worked_on.insert(panel.plan.panel);
    for (const auto& mark : panel.marks)
      out.marks.push_back({panel.plan.panel, {mark.x_mm, mark.y_mm}, mark.number, mark.open()});
  }
  out.legend = report_tr(
      "All panels laid flat, the front at the top. Shaded: refinished. White circle: a mark that "
      "is "
      "gone or ended. Black: still open.");
  return out;
}
}  // namespace

Section panels_section(const ReportTelling& tell) {
  Section out{report_tr("Panels, and what was found on them"), {}};
  if (tell.car.panels.empty()) return out;
  add(out, panels(tell));
  out.blocks.emplace_back(map_of(tell));
  add(out, marks(tell));
  if (tell.car.cause && tell.car.cause->cause)
    say(out, report_tr("What threw the dirt, as a person said: %1 (%2).")
                 .arg(words_of(*tell.car.cause->cause),
                      tell.who_when(tell.car.cause->by, tell.car.cause->wall_ms)));
  return out;
}

Section film_section(const ReportTelling& tell) {
  Section out{report_tr("Film thickness"), {}};
  report::ReportTable table;
  table.columns = {
      {report_tr("Panel, spot"), 3},
      {report_tr("When"), 3},
      {report_tr("Gauge reads"), 2.4},
      {report_tr("Readings, as typed"), 4},
      {report_tr("Mean, %1").arg(screens::film_unit_words(tell.choice.units)), 1.8, true},
      {report_tr("Read by"), 4}};
  for (const auto& panel : tell.car.panels)
    for (const auto& one : panel.film)
      table.rows.push_back({report_tr("%1, %2").arg(tell.panel(panel.plan.panel)).arg(one.spot),
                            words_of(one.when), words_of(one.gauge),
                            screens::readings_words(one.typed, one.unit),
                            screens::film_number_words(one.mean_um, tell.choice.units),
                            tell.who_when(one.by, one.wall_ms)});
  add(out, std::move(table));
  report::ReportTable rounds;
  rounds.columns = {{report_tr("Panel"), 3},
                    {report_tr("Round"), 4},
                    {report_tr("Marks"), 1.4, true},
                    {report_tr("Done by"), 5}};
  for (const auto& panel : tell.car.panels)
    for (const auto& one : panel.rounds)
      rounds.rows.push_back(
          {tell.panel(panel.plan.panel),
           report_tr("%1, %2").arg(screens::sentence(words_of(one.round)), words_of(one.how)),
           one.marks.empty() ? QString() : QString::number(one.marks.size()),
           tell.who_when(one.by, one.wall_ms)});
  add(out, std::move(rounds));
  if (!out.blocks.empty() && out.blocks.size() > 1)
    out.title = report_tr("Film thickness, sanding and polishing");
  return out;
}

}  // namespace jambline::app
