#include "screens/ready_view_model.h"

#include "base/spans.h"
#include "folds/learned.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {

QString hours_of(double min) {
  return hours_words(static_cast<std::int64_t>(min * ms_per_min));
}

QString number_of(double min) {
  return hours_of(min).section(QChar(' '), 0, 0);
}

const trade::WorkItem* item_of(const folds::Forecast& said, const folds::OperationView& operation) {
  if (said.asked)
    for (const auto& one : said.asked->work)
      if (one.name == operation.operation.hex()) return &one;
  return nullptr;
}

QString rests_on(const folds::OperationView& operation, int cars) {
  if (operation.work != job::WorkKind::FirstTime)
    return ReadyViewModel::tr("usual spread (common practice, no source): %1 is not learned")
        .arg(words_of(operation.work));
  if (cars == 0)
    return ReadyViewModel::tr("usual spread (common practice, no source): under %1 own cars")
        .arg(folds::shown_from);
  return ReadyViewModel::tr("from %1 own cars").arg(cars);
}

SumRows::Line open_line(const folds::ShopView& shop) {
  int min = 0;
  for (const auto& day : shop.calendar.week) min += day.to_min - day.from_min;
  return {ReadyViewModel::tr("Open hours"), ReadyViewModel::tr("%1 a week").arg(hours_of(min)),
          shop.calendar_heads.empty()
              ? ReadyViewModel::tr("usual ones (common practice, no source)")
              : ReadyViewModel::tr("set by the shop")};
}
}  // namespace

ReadyViewModel::ReadyViewModel(Session& session, const FloorForecasts& forecasts, QObject* parent)
    : QObject(parent), session_(session), forecasts_(forecasts), sum_(this) {
  connect(&session, &Session::snapshotChanged, this, &ReadyViewModel::changed);
  connect(&forecasts, &FloorForecasts::changed, this, &ReadyViewModel::changed);
}

const FloorForecasts::Known* ReadyViewModel::known() const {
  const auto* car = session_.car();
  return car && !car->delivered_ms ? forecasts_.of(car->job) : nullptr;
}

bool ReadyViewModel::ofInterest() const {
  const auto* about = known();
  return about && (about->forecast || about->refused == Code::NotYet);
}

ForecastWords ReadyViewModel::said() const {
  const auto* about = known();
  return about ? words_of(*about, session_.now().wall_ms, session_.zone()) : ForecastWords{};
}

QString ReadyViewModel::words() const {
  const ForecastWords out = said();
  QStringList all;
  if (!out.likely.isEmpty()) all << tr("likely %1").arg(out.likely);
  if (!out.chance.isEmpty()) all << out.chance + QChar(' ') + out.about;
  if (out.waits || all.isEmpty()) all << out.holds;
  return sentence(all.join(QStringLiteral(" \u00b7 ")));
}

int ReadyViewModel::shape() const {
  switch (said().outlook) {
    case Outlook::Trouble:
      return shape_of(StateKind::Must);
    case Outlook::Careful:
      return shape_of(StateKind::Waits);
    case Outlook::Plain:
      break;
  }
  return shape_of(StateKind::None);
}

std::vector<SumRows::Line> ReadyViewModel::lines(const FloorForecasts::Known& known) const {
  const std::int64_t now_ms = session_.now().wall_ms;
  const QString zone = session_.zone();
  const ForecastWords out = said();
  const auto& forecast = *known.forecast;
  std::vector<SumRows::Line> lines;
  if (known.row.promised_ms)
    lines.push_back({tr("Promised"), time_words(*known.row.promised_ms, now_ms, zone), out.slack});
  if (!out.likely.isEmpty()) {
    lines.push_back({tr("Likely"), out.likely, tr("every operation takes its likely time")});
    lines.push_back({tr("Earliest"), out.earliest, tr("every operation takes its least time")});
  }
  if (forecast.late_ms)
    lines.push_back({tr("Nine in ten by"),
                     time_words(whole_quarter(*forecast.late_ms), now_ms, zone),
                     tr("of %1 drawn runs").arg(forecast.asked ? forecast.asked->trials : 0)});
  if (!out.percent.isEmpty())
    lines.push_back({tr("On time"), out.percent, tr("of the drawn runs")});
  for (const auto& hold : known.row.holds)
    lines.push_back({sentence(words_of(hold.reason)), words_of(hold, now_ms, zone),
                     tr("before %1; by the wall clock").arg(words_of(hold.from_stage))});
  for (const auto& operation : known.row.operations) {
    const auto* item = item_of(forecast, operation);
    if (!item) continue;
    const QString name =
        sentence(operation.title.empty() ? words_of(operation.stage) : text(operation.title));
    const QString planned = operation.estimate_min > 0
                                ? tr("%1 planned").arg(hours_of(operation.estimate_min))
                                : tr("nothing planned, taken as %1 (common practice, no source)")
                                      .arg(hours_of(folds::unestimated_min));
    lines.push_back(
        {name,
         tr("%1 to %2, likely %3")
             .arg(number_of(item->least_min), hours_of(item->most_min), hours_of(item->likely_min)),
         planned + QStringLiteral(" \u00b7 ") +
             rests_on(operation, forecasts_.learned().cars_of(operation.stage))});
  }
  lines.push_back(open_line(session_.shop()));
  return lines;
}

void ReadyViewModel::open() {
  const auto* about = known();
  if (!about) return;
  const ForecastWords out = said();
  if (!about->forecast) {
    sum_.show_lines(tr("Ready by"), sentence(out.holds), {}, {open_line(session_.shop())}, {});
    return;
  }
  const QString figure = out.chance.isEmpty()
                             ? sentence(out.likely.isEmpty() ? out.holds : out.likely)
                             : sentence(out.chance + QChar(' ') + out.about);
  const int cars = about->forecast->learned_from;
  const QString rests =
      cars > 0 ? tr("Rests on %1 cars of this shop or more.").arg(cars)
               : tr("Some of it rests on no cars of this shop yet: they count from %1 on.")
                     .arg(folds::shown_from);
  const QString alone = tr("People and booths are not shared out between cars.");
  sum_.show_lines(tr("Ready by"), figure,
                  about->forecast->result ? about->forecast->result->basis : trade::Basis{},
                  lines(*about), rests + QChar(' ') + alone);
}

}  // namespace jambline::screens
