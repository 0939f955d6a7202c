#include <algorithm>

#include "app/papers/report_telling.h"
#include "screens/air_words.h"
#include "screens/correct_words.h"
#include "screens/text.h"
#include "screens/units.h"
#include "screens/words.h"
#include "trade/climate.h"

namespace jambline::app {

namespace {
using screens::temperature_words;
using screens::text;
using screens::words_of;

// A must that was passed over, as it stands.
QString passed_over(const job::GunCheck& check, const ReportTelling& tell) {
  QString out = screens::sentence(words_of(check.item));
  if (check.reason) out = report_tr("%1: %2").arg(out, words_of(*check.reason));
  if (const QString note = tell.own_words(check.note); !note.isEmpty())
    out = report_tr("%1 (%2)").arg(out, note);
  return out;
}

report::ReportTable sprays(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Sprayed"), 3.6},
                 {report_tr("Booth, respirator"), 3.6},
                 {report_tr("Checked before the gun"), 2.6},
                 {report_tr("Passed over, and why"), 4}};
  for (const auto& one : tell.car.air.sprays) {
    QStringList where{tell.booth(one.booth)};
    if (const auto* respirator = tell.shop.air.find(one.respirator))
      where << text(respirator->said.model);
    QStringList passed;
    int yes = 0;
    for (const auto& check : one.checks) {
      if (check.answer == job::CutAnswer::Yes) ++yes;
      if (check.answer == job::CutAnswer::No) passed << passed_over(check, tell);
    }
    out.rows.push_back({tell.who_when(one.by, one.at.wall_ms), where.join(QStringLiteral(", ")),
                        report_tr("%1 of %2 yes").arg(yes).arg(one.checks.size()),
                        passed.isEmpty() ? report_tr("nothing") : passed.join(QChar('\n'))});
  }
  return out;
}

report::ReportTable without(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Reported: it was sprayed without"), 6},
                 {report_tr("Booth"), 2.5},
                 {report_tr("Said by"), 4}};
  for (const auto& one : tell.car.air.without) {
    QStringList items;
    for (const auto item : one.items) items << words_of(item);
    out.rows.push_back({screens::sentence(items.join(QStringLiteral(", "))), tell.booth(one.booth),
                        tell.who_when(one.by, one.at.wall_ms)});
  }
  return out;
}

report::ReportTable coats(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Product"), 4},
                 {report_tr("Batch"), 2},
                 {report_tr("Mixed"), 3.6},
                 {report_tr("Coats"), 4.4}};
  for (const auto& mix : tell.car.air.mixes) {
    QStringList coated;
    for (const auto& one : mix.coats) {
      QString line =
          report_tr("%1 on %2, %3")
              .arg(one.coats == 1 ? report_tr("1 coat") : report_tr("%1 coats").arg(one.coats),
                   tell.panels(one.panels).toLower(), tell.when(one.at.wall_ms));
      if (one.heavy_film) line = report_tr("%1, heavy film").arg(line);
      coated << line;
    }
    out.rows.push_back({tell.product(mix.product), text(mix.batch),
                        tell.who_when(mix.by, mix.mixed_ms.value_or(mix.at.wall_ms)),
                        coated.isEmpty() ? report_tr("none said") : coated.join(QChar('\n'))});
  }
  return out;
}

report::ReportTable air(const ReportTelling& tell) {
  report::ReportTable out;
  const auto units = tell.choice.units;
  out.columns = {{report_tr("Air read"), 3.6},
                 {report_tr("Booth"), 2.2},
                 {report_tr("Air"), 1.5, true},
                 {report_tr("Surface"), 1.5, true},
                 {report_tr("Humidity"), 1.6, true},
                 {report_tr("Dew point"), 1.7, true},
                 {report_tr("Margin to dew point"), 2.4, true}};
  for (const auto& one : tell.car.air.climates) {
    QString dew, margin;
    if (one.humidity_percent > 0) {
      const double dew_c = trade::dew_point_c(one.air_c, one.humidity_percent);
      dew = temperature_words(dew_c, units);
      margin = screens::temperature_step_words(one.surface_c - dew_c, units);
    }
    out.rows.push_back(
        {tell.who_when(one.by, one.at.wall_ms), one.booth ? tell.booth(one.booth) : QString(),
         temperature_words(one.air_c, units), temperature_words(one.surface_c, units),
         report_tr("%1 %").arg(qRound(one.humidity_percent)), dew, margin});
  }
  return out;
}
}  // namespace

Section spray_section(const ReportTelling& tell) {
  Section out{report_tr("Spraying"), {}};
  report::ReportFacts facts;
  if (tell.car.booth) fact(facts, report_tr("Sprayed in"), tell.booth(*tell.car.booth));
  add(out, std::move(facts));
  add(out, sprays(tell));
  add(out, without(tell));
  add(out, coats(tell));
  add(out, air(tell));
  return out;
}

namespace {
report::ReportTable heat(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("What"), 3}, {report_tr("Said"), 4}, {report_tr("By"), 4}};
  const auto units = tell.choice.units;
  std::vector<std::pair<std::int64_t, QStringList>> rows;
  if (const auto& limit = tell.car.air.bake_limit)
    rows.push_back(
        {limit->at.wall_ms,
         {report_tr("Bake limit of the carmaker"),
          report_tr("%1 for %2, %3")
              .arg(temperature_words(limit->most_c, units),
                   screens::duration_words(static_cast<std::int64_t>(limit->most_min * 60'000)),
                   text(limit->source)),
          tell.who_when(limit->by, limit->at.wall_ms)}});
  for (const auto& one : tell.car.air.bakes)
    rows.push_back({one.at.wall_ms,
                    {report_tr("Bake"), one.on ? report_tr("started") : report_tr("ended"),
                     tell.who_when(one.by, one.at.wall_ms)}});
  for (const auto& one : tell.car.air.temperatures)
    rows.push_back(
        {one.at.wall_ms,
         {report_tr("Surface of %1").arg(words_of(one.group)),
          temperature_words(one.surface_c, units), tell.who_when(one.by, one.at.wall_ms)}});
  for (const auto& one : tell.car.air.thumbnails)
    rows.push_back({one.at.wall_ms,
                    {report_tr("Thumbnail on %1").arg(words_of(one.group)),
                     one.firm ? report_tr("firm") : report_tr("not yet"),
                     tell.who_when(one.by, one.at.wall_ms)}});
  std::stable_sort(rows.begin(), rows.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  for (auto& row : rows) out.rows.push_back(std::move(row.second));
  return out;
}

report::ReportTable bonds(const ReportTelling& tell) {
  report::ReportTable out;
  out.columns = {{report_tr("Bonded"), 3},
                 {report_tr("With"), 4},
                 {report_tr("Case of the maker's table"), 4},
                 {report_tr("Set"), 4}};
  for (const auto& one : tell.car.air.bonds)
    out.rows.push_back({screens::sentence(text(one.what)), tell.product(one.product),
                        text(one.case_name),
                        tell.who_when(one.by, one.set_ms.value_or(one.at.wall_ms))});
  return out;
}
}  // namespace

Section cure_section(const ReportTelling& tell) {
  Section out{report_tr("Cure, heat and bonding"), {}};
  add(out, heat(tell));
  add(out, bonds(tell));
  return out;
}

}  // namespace jambline::app
