#include <algorithm>
#include <cmath>

#include "app/papers/report_telling.h"
#include "folds/open_points.h"
#include "screens/check_in_view_model.h"
#include "screens/correct_words.h"
#include "screens/fit_words.h"
#include "screens/open_point_words.h"
#include "screens/picture_words.h"
#include "screens/text.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::app {

namespace {
using screens::text;
using screens::words_of;

report::ReportTable steps(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {
      {report_tr("Step of assembly"), 5}, {report_tr("State"), 4}, {report_tr("Said by"), 4}};
  for (const auto& one : tell.car.assembly.steps) {
    QString state = one.done ? report_tr("done") : report_tr("open");
    if (!one.broken.empty())
      state =
          report_tr("%1, against the rules: %2").arg(state, words_of(one.broken.front().reason));
    out.rows.push_back(
        {screens::sentence(words_of(one.step)), state, tell.who_when(one.by, one.wall_ms)});
  }
  return out;
}

// "3.8 to 4.2"; one number where both are the same.
QString span_of(const std::vector<double>& values) {
  if (values.empty()) return {};
  const auto [low, high] = std::minmax_element(values.begin(), values.end());
  const QString from = screens::gap_number(*low);
  const QString to = screens::gap_number(*high);
  return from == to ? from : report_tr("%1 to %2").arg(from, to);
}

report::ReportTable fits(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Panel"), 3},
                 {report_tr("Measured"), 2.2},
                 {report_tr("Points"), 1.8, true},
                 {report_tr("Gaps, mm"), 2.8, true},
                 {report_tr("Wanted"), 2, true},
                 {report_tr("Furthest off"), 2.6, true},
                 {report_tr("Flush, mm"), 2.6, true},
                 {report_tr("By"), 4.6}};
  for (const auto& fit : tell.car.assembly.fits) {
    std::vector<double> gaps, wanted, flush;
    double furthest = 0;
    for (const auto& point : fit.points) {
      gaps.push_back(point.gap_mm);
      wanted.push_back(point.wanted_gap_mm);
      furthest = std::max(furthest, std::abs(point.gap_mm - point.wanted_gap_mm));
      if (point.flush_mm) flush.push_back(*point.flush_mm);
    }
    out.rows.push_back({tell.panel(fit.panel), words_of(fit.round),
                        QString::number(fit.points.size()), span_of(gaps), span_of(wanted),
                        screens::gap_number(furthest),
                        flush.empty() ? report_tr("not read") : span_of(flush),
                        tell.who_when(fit.by, fit.wall_ms)});
  }
  return out;
}
}  // namespace

Section fit_section(const ReportTelling& tell) {
  Section out{report_tr("Assembly and fit"), {}};
  add(out, steps(tell));
  add(out, fits(tell));
  return out;
}

namespace {
report::ReportTable before_cutting(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Checked before cutting"), 4}, {report_tr("Passed over, and why"), 8}};
  for (const auto& one : tell.car.before_cut) {
    QStringList passed;
    for (const auto& check : one.checks)
      if (check.answer == job::CutAnswer::No)
        passed << (check.reason ? report_tr("%1: %2").arg(screens::sentence(words_of(check.item)),
                                                          words_of(*check.reason))
                                : screens::sentence(words_of(check.item)));
    out.rows.push_back({tell.who_when(one.person, one.wall_ms),
                        passed.isEmpty() ? report_tr("nothing") : passed.join(QChar('\n'))});
  }
  return out;
}

void add_stages(report::ReportFacts& to, const ReportTelling& tell) {
  QStringList done, open;
  for (const auto& one : tell.car.stages) (one.done ? done : open) << words_of(one.stage);
  const auto joined = [](const QStringList& stages) {
    return screens::sentence(stages.join(QStringLiteral(", ")));
  };
  fact(to, report_tr("Stages done"), joined(done));
  fact(to, report_tr("Stages open"), joined(open));
}

report::ReportTable without_pictures(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Done though pictures were missing"), 4},
                 {report_tr("How many"), 2},
                 {report_tr("Because"), 6}};
  for (const auto& one : tell.car.stages)
    if (one.without_shots)
      out.rows.push_back({screens::sentence(words_of(one.stage)),
                          QString::number(one.shots_missing.value_or(0)),
                          words_of(*one.without_shots)});
  return out;
}

report::ReportTable ordered(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Part, or work elsewhere"), 5},
                 {report_tr("State"), 3},
                 {report_tr("Said by"), 4}};
  for (const auto& one : tell.car.visit.parts)
    out.rows.push_back(
        {text(one.said.part_name), words_of(one.said.state), tell.who_when(one.by, one.wall_ms)});
  for (const auto& one : tell.car.visit.sublets) {
    const QString firm = tell.own_words(one.said.who);
    const QString kind = screens::sentence(words_of(one.said.kind));
    out.rows.push_back({firm.isEmpty() ? kind : report_tr("%1, %2").arg(kind, firm),
                        words_of(one.said.state), tell.who_when(one.by, one.wall_ms)});
  }
  return out;
}

report::ReportTable came_back(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Came back"), 4}, {report_tr("Because"), 5}, {report_tr("State"), 2}};
  for (const auto& one : tell.car.visit.comebacks) {
    QStringList why;
    if (one.panel) why << tell.panel(*one.panel);
    if (const QString said = tell.own_words(one.complaint); !said.isEmpty()) why << said;
    out.rows.push_back({tell.who_when(one.by, one.wall_ms), why.join(QStringLiteral(": ")),
                        one.over ? report_tr("over") : report_tr("open")});
  }
  return out;
}
}  // namespace

Section checks_section(const ReportTelling& tell) {
  Section out{report_tr("Checks before handing on"), {}};
  report::ReportFacts facts;
  if (tell.car.visit.check_in)
    fact(facts, report_tr("As it came"),
         tell.choice.names ? screens::check_in_words(tell.car.visit.check_in->said, tell.car.drive)
                                 .join(screens::dot)
                           : QString());
  QStringList open;
  for (const auto& point : folds::open_points(tell.car, tell.shop, tell.now))
    open << words_of(point, tell.car.body);
  fact(facts, report_tr("Open points now"),
       open.isEmpty() ? report_tr("none") : open.join(QChar('\n')));
  add_stages(facts, tell);
  add(out, std::move(facts));
  add(out, without_pictures(tell));
  add(out, before_cutting(tell));
  add(out, ordered(tell));
  add(out, came_back(tell));
  if (!tell.choice.names) return out;
  for (const auto& one : tell.car.visit.signatures)
    out.blocks.emplace_back(report::ReportSignature{
        one.strokes, report_tr("Signed for %1 by %2, %3; open points then: %4")
                         .arg(words_of(one.what), text(one.signer), tell.when(one.wall_ms))
                         .arg(one.open_points)});
  return out;
}

namespace {
QString state_words(folds::ReleaseState state) {
  switch (state) {
    case folds::ReleaseState::Offered:
      return report_tr("offered, not taken yet");
    case folds::ReleaseState::Taken:
      return report_tr("taken");
    case folds::ReleaseState::Returned:
      return report_tr("sent back");
    case folds::ReleaseState::None:
      break;
  }
  return {};
}

void add_release(report::ReportTable& to, const QString& what, const folds::ReleaseView& one,
                 const ReportTelling& tell) {
  if (one.state == folds::ReleaseState::None) return;
  QString state = state_words(one.state);
  if (one.taker) state = report_tr("%1, %2").arg(state, tell.who(*one.taker));
  if (const QString why = tell.own_words(one.reason); !why.isEmpty())
    state = report_tr("%1: %2").arg(state, why);
  if (one.disputed) state = report_tr("%1; two answers stand").arg(state);
  to.rows.push_back({what, tell.who(one.giver), state, tell.when(one.wall_ms)});
}
}  // namespace

Section releases_section(const ReportTelling& tell) {
  Section out{report_tr("Handed on"), {}};
  report::ReportTable table;
  table.columns = {{report_tr("What"), 3},
                   {report_tr("Given by"), 3},
                   {report_tr("How it stands"), 5},
                   {report_tr("Since"), 3}};
  add_release(table, report_tr("The car"), tell.car.car_release, tell);
  for (const auto& panel : tell.car.panels)
    add_release(table, tell.panel(panel.plan.panel), panel.release, tell);
  add(out, std::move(table));
  return out;
}

Section notes_section(const ReportTelling& tell) {
  Section out{report_tr("Notes"), {}};
  if (!tell.choice.names) return out;
  report::ReportTable table;
  table.columns = {{report_tr("Written by"), 3}, {report_tr("Note"), 8}};
  for (const auto& one : tell.car.visit.notes)
    table.rows.push_back({tell.who_when(one.by, one.wall_ms), text(one.text).trimmed()});
  add(out, std::move(table));
  return out;
}

}  // namespace jambline::app
