#include "screens/booth_air_words.h"

#include <algorithm>
#include <cmath>

#include "base/spans.h"
#include "screens/air_units.h"
#include "screens/booth_view_model.h"
#include "screens/caution_words.h"
#include "screens/rate_units.h"

namespace jambline::screens {

namespace {
using folds::BoothWordNow;
using job::BoothReading;
using job::BoothWord;

const folds::BoothAirView* air_of(const Session& session, const folds::BoothView& booth) {
  return session.shop().air.find(booth.booth);
}

QString name_of(const folds::BoothView& booth) {
  return QString::fromStdString(booth.name);
}

QString date(const Session& session, std::int64_t ms) {
  return date_words(ms, session.now().wall_ms, session.zone());
}

std::int64_t ms_of_day(double day) {
  return static_cast<std::int64_t>(std::llround(day * static_cast<double>(day_ms)));
}

bool is_today(const Session& session, std::int64_t ms) {
  return std::floor(local_days(ms, session.zone())) ==
         std::floor(local_days(session.now().wall_ms, session.zone()));
}

double mean_of(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return values.empty() ? 0 : sum / static_cast<double>(values.size());
}

QString stopped_words(const std::optional<BoothWord>& by) {
  if (by == BoothWord::FanStopped) return words_of(Caution::FanStopped);
  if (by == BoothWord::Bake) return words_of(Caution::Baking);
  if (by == BoothWord::DoorOpened) return words_of(Caution::DoorOpened);
  return words_of(Caution::NoFreshAir);
}

// The filter since it was changed; none: why not.
Result<trade::FilterTrendResult> trend_of(const Session& session, const folds::BoothAirView* air) {
  if (!air) return fail(Code::Missing, "look at the filter", "most pressure");
  return folds::filter_trend(session.shop(), *air);
}
}  // namespace

QString plate_of(const Session& session, const JobId& job) {
  for (const auto& row : *session.snapshot().floor)
    if (row.job == job) return QString::fromStdString(row.plate);
  return {};
}

QString sprayer_words(const Session& session, const folds::BoothSaidView& up) {
  const QString plate = up.job ? plate_of(session, *up.job) : QString();
  const QString name = session.name_of(up.by);
  return plate.isEmpty() ? name : BoothViewModel::tr("%1, %2").arg(name, plate);
}

QString count_words(double left_s) {
  const auto seconds = static_cast<long long>(std::ceil(std::max(0.0, left_s) - 1e-6));
  if (seconds >= 6000) return BoothViewModel::tr("%1 min").arg((seconds + 59) / 60);
  return QStringLiteral("%1:%2").arg(seconds / 60).arg(seconds % 60, 2, 10, QChar('0'));
}

BoothSaid say_booth(const Session& session, const folds::BoothView& booth) {
  const Moment now = session.now();
  BoothSaid out;
  out.state = folds::booth_state(booth, air_of(session, booth), now);
  out.word = words_of(Caution::StayOut);
  out.shape = StateKind::Must;
  switch (out.state.word) {
    case BoothWordNow::Idle:
      out.shape = StateKind::NotYet;
      out.word = job::may_be_sprayed_in(booth.kind) ? BoothViewModel::tr("No spraying is logged")
                                                    : BoothViewModel::tr("No spraying in here");
      break;
    case BoothWordNow::Spraying: {
      out.word = words_of(Caution::Spraying);
      QStringList all;
      for (const auto& up : out.state.up) all << sprayer_words(session, up);
      out.line = all.join(QStringLiteral(" · "));
      break;
    }
    case BoothWordNow::Counting:
      out.shape = StateKind::Waits;
      out.countdown = count_words(out.state.left_s);
      // The minute in which it is over; the one before would be early by up to a minute.
      out.clears_ms = now.wall_ms + static_cast<std::int64_t>(std::ceil(out.state.left_s * 1000));
      out.clears_ms = (out.clears_ms + minute_ms - 1) / minute_ms * minute_ms;
      out.line = BoothViewModel::tr("clears %1").arg(clock_words(out.clears_ms, session.zone()));
      break;
    case BoothWordNow::NotCounting:
      out.line = stopped_words(out.state.stopped_by);
      break;
    case BoothWordNow::NoTime:
      out.line = words_of(job::is_open(booth.kind) ? Caution::OpenDeck : Caution::NoTime);
      break;
    case BoothWordNow::TimeOver:
      out.shape = StateKind::Waits;
      out.word = words_of(Caution::TimeOver);
      out.line = words_of(Caution::LocalRule);
      break;
  }
  return out;
}

QString rests_words(const Session& session, const folds::BoothView& booth,
                    const trade::ClearanceResult& needed) {
  const auto* air = air_of(session, booth);
  const auto* smoke = folds::last_reading(air, BoothReading::SmokeTest);
  const QString test =
      smoke
          ? BoothViewModel::tr("smoke test %1, measured %2")
                .arg(minutes_seconds(*std::max_element(smoke->values.begin(), smoke->values.end())),
                     date(session, smoke->happened_ms))
          : QString();
  QString out;
  switch (needed.rule) {
    case trade::ClearanceRule::SmokeTest:
      out = test;
      break;
    case trade::ClearanceRule::Formula:
      out = BoothViewModel::tr("formula, %1").arg(words_of(Caution::WeakerBasis));
      break;
    case trade::ClearanceRule::LongerOfBoth:
      out = BoothViewModel::tr("%1, is overdue: the longer of it and the formula").arg(test);
      break;
    case trade::ClearanceRule::FixedTime:
      out = smoke
                ? BoothViewModel::tr("the shop's fixed time, not shorter than the old %1").arg(test)
                : BoothViewModel::tr("the shop's fixed time, no test");
      break;
  }
  if (air && air->facts.extra_factor > 1)
    out = BoothViewModel::tr("%1, × %2 %3")
              .arg(out, QString::number(air->facts.extra_factor),
                   QString::fromStdString(air->facts.extra_factor_name));
  return out;
}

trade::Basis basis_of(const trade::ClearanceResult& needed) {
  trade::Basis out = needed.basis;
  if (needed.rule != trade::ClearanceRule::SmokeTest) return out;
  const auto from = std::find_if(out.terms.begin(), out.terms.end(),
                                 [](const auto& term) { return term.name == "smoke test"; });
  out.terms.erase(out.terms.begin(), from);
  return out;
}

BoothFigure say_filter(const Session& session, const folds::BoothView& booth) {
  const auto* air = air_of(session, booth);
  const auto* read = folds::last_reading(air, BoothReading::FilterPressure);
  if (!read) return {BoothViewModel::tr("not read yet"), {}, true, false, false};
  const double pressure_pa = mean_of(read->values);
  const auto most_pa = air->facts.most_pressure_pa;
  BoothFigure out;
  out.value = most_pa ? air_words(AirQuantity::Pressure, pressure_pa, *most_pa, session.units())
                      : air_words(AirQuantity::Pressure, pressure_pa, session.units());
  const QString age = ago_words(read->happened_ms, session.now().wall_ms);
  if (!most_pa) {
    out.note = BoothViewModel::tr("read %1, no most pressure known").arg(age);
    return out;
  }
  const QString most = air_words(AirQuantity::Pressure, *most_pa, session.units());
  if (pressure_pa >= *most_pa) {
    out.out = true;
    out.has_sum = trend_of(session, air).has_value();
    out.note = BoothViewModel::tr("filters are due: most is %1").arg(most);
    return out;
  }
  const auto trend = trend_of(session, air);
  out.has_sum = trend.has_value();
  if (!trend) {
    out.note = BoothViewModel::tr("most %1, read %2, too few readings for a date").arg(most, age);
  } else if (!trend->due_day) {
    out.note = BoothViewModel::tr("most %1, read %2, it does not rise").arg(most, age);
  } else {
    const std::int64_t due_ms = ms_of_day(*trend->due_day);
    out.out = due_ms <= session.now().wall_ms;
    const QString about = date(session, due_ms);
    out.note = trend->due_early_day && trend->due_late_day
                   ? BoothViewModel::tr("most %1, due about %2 (%3 to %4)")
                         .arg(most, about, date(session, ms_of_day(*trend->due_early_day)),
                              date(session, ms_of_day(*trend->due_late_day)))
                   : BoothViewModel::tr("most %1, due about %2").arg(most, about);
  }
  return out;
}

BoothFigure say_smoke_test(const Session& session, const folds::BoothView& booth) {
  const auto* air = air_of(session, booth);
  const auto* test = folds::last_reading(air, BoothReading::SmokeTest);
  if (!test) {
    const auto needed = folds::clearance_needed(booth, air, session.now());
    return {BoothViewModel::tr("none yet"),
            needed ? rests_words(session, booth, *needed)
                   : words_of(job::is_open(booth.kind) ? Caution::OpenDeck : Caution::NoTime),
            true, false, false};
  }
  BoothFigure out;
  out.has_sum = true;
  out.value = minutes_seconds(*std::max_element(test->values.begin(), test->values.end()));
  const std::int64_t due_ms = *folds::smoke_test_due_ms(*air);
  const std::int64_t now_ms = session.now().wall_ms;
  out.out = due_ms < now_ms || test->happened_ms > now_ms;
  const QString when = date(session, test->happened_ms);
  const QString due = date(session, due_ms);
  out.note = test->happened_ms > now_ms
                 ? BoothViewModel::tr("dated %1, still to come: taken as overdue").arg(when)
             : out.out ? BoothViewModel::tr("measured %1, overdue since %2").arg(when, due)
                       : BoothViewModel::tr("measured %1, due %2").arg(when, due);
  return out;
}

BoothFigure say_airflow(const Session& session, const folds::BoothView& booth) {
  const auto* air = air_of(session, booth);
  const auto* read = folds::last_reading(air, BoothReading::Velocity);
  if (!read) return {BoothViewModel::tr("not read yet"), {}, true, false, false};
  BoothFigure out;
  const QString age = ago_words(read->happened_ms, session.now().wall_ms);
  const auto compared = folds::booth_airflow(*air);
  if (!compared) {
    out.value = air_words(AirQuantity::Velocity, mean_of(read->values), session.units());
    out.note = BoothViewModel::tr("read %1, nothing to compare with").arg(age);
    return out;
  }
  out.has_sum = true;
  const double wanted_m_s = *air->facts.wanted_m_s;
  out.value = air_words(AirQuantity::Velocity, compared->mean_m_s, wanted_m_s, session.units());
  const QString wanted = BoothViewModel::tr("%1, required by %2")
                             .arg(air_words(AirQuantity::Velocity, wanted_m_s, session.units()),
                                  QString::fromStdString(air->facts.wanted_from));
  switch (compared->word) {
    case trade::AirflowWord::Over:
      out.note = BoothViewModel::tr("over %1").arg(wanted);
      break;
    case trade::AirflowWord::TooNearToCall:
      out.note = BoothViewModel::tr("too near to call: %1").arg(wanted);
      break;
    case trade::AirflowWord::Under:
      out.out = true;
      out.note = BoothViewModel::tr("under %1").arg(wanted);
      break;
  }
  return out;
}

namespace {
QString overdue(const Session& session, const folds::BoothAirView& air, const BoothFigure& test) {
  const std::int64_t due_ms = folds::smoke_test_due_ms(air).value_or(0);
  return due_ms < session.now().wall_ms
             ? BoothViewModel::tr("overdue since %1").arg(date(session, due_ms))
             : test.note;
}
}  // namespace

BoothDue booth_due(const Session& session) {
  BoothDue best;
  const auto offer = [&](BoothDueKind what, const folds::BoothView& booth, const QString& text,
                         const QString& why) {
    if (best.what != BoothDueKind::Nothing && best.what <= what) return;
    best = {what, booth.booth, text, BoothViewModel::tr("%1: %2").arg(name_of(booth), why)};
  };
  for (const auto& booth : session.shop().booths) {
    const auto* air = air_of(session, booth);
    if (folds::booth_state(booth, air, session.now()).word == BoothWordNow::TimeOver)
      offer(BoothDueKind::LogOver, booth, BoothViewModel::tr("Log: clearance over"),
            BoothViewModel::tr("the time is over"));
    if (job::may_be_sprayed_in(booth.kind)) {
      const auto test = say_smoke_test(session, booth);
      if (test.missing || test.out)
        offer(BoothDueKind::SmokeTest, booth, BoothViewModel::tr("Log a smoke test"),
              test.missing ? BoothViewModel::tr("none yet") : overdue(session, *air, test));
    }
    if (!air) continue;
    const auto* pressure = folds::last_reading(air, BoothReading::FilterPressure);
    if (air->facts.most_pressure_pa) {
      if (!pressure || !is_today(session, pressure->happened_ms))
        offer(BoothDueKind::ReadPressure, booth, BoothViewModel::tr("Log the filter pressure"),
              BoothViewModel::tr("not read today"));
      else if (const auto filter = say_filter(session, booth); filter.out)
        offer(BoothDueKind::ChangeFilters, booth, BoothViewModel::tr("Filters changed"),
              filter.note);
    }
    if (air->facts.wanted_m_s && !folds::last_reading(air, BoothReading::Velocity))
      offer(BoothDueKind::ReadVelocity, booth, BoothViewModel::tr("Log the air velocity"),
            BoothViewModel::tr("not read yet"));
  }
  return best;
}

}  // namespace jambline::screens
