#include "screens/history_story.h"

#include <QCoreApplication>
#include <algorithm>

#include "base/zones.h"
#include "screens/entry_words.h"
#include "screens/units.h"

namespace jambline::screens {

namespace {
constexpr int most_days = 8;  // with a line of their own; of more every second, third ...
constexpr std::int64_t most_ticks = 600;  // nobody sees more on one line
constexpr std::int64_t least_axis_ms = 60'000;

QString history_tr(const char* text) {
  return QCoreApplication::translate("history", text);
}

QVariantMap span(std::int64_t from_ms, std::int64_t to_ms, LaneLook look) {
  return {{QStringLiteral("from"), static_cast<double>(from_ms)},
          {QStringLiteral("to"), static_cast<double>(to_ms)},
          {QStringLiteral("look"), static_cast<int>(look)}};
}

QVariantMap lane(const QString& name, const QVariantList& spans) {
  return {{QStringLiteral("name"), name}, {QStringLiteral("spans"), spans}};
}

QVariantList air_of(const folds::CarView& car) {
  QVariantList out;
  for (const auto& one : car.air.climates)
    out << span(one.at.wall_ms, one.at.wall_ms, LaneLook::Tick);
  for (const auto& one : car.air.sprays)
    out << span(one.at.wall_ms, one.at.wall_ms, LaneLook::Here);
  for (const auto& mix : car.air.mixes)
    for (const auto& coat : mix.coats)
      out << span(coat.at.wall_ms, coat.at.wall_ms, LaneLook::Here);
  return out;
}

QVariantList waits_of(const folds::CarView& car, std::int64_t end_ms) {
  QVariantList out;
  for (const auto& wait : car.visit.waits)
    out << span(wait.start_ms, wait.end_ms.value_or(end_ms), LaneLook::Waits);
  return out;
}

// Who worked, in the order of the first span of each.
std::vector<PersonId> workers_of(const folds::CarView& car) {
  std::vector<std::pair<std::int64_t, PersonId>> all;
  for (const auto& one : car.worked) all.emplace_back(one.start_ms, one.person);
  for (const auto& one : car.running) all.emplace_back(one.start_ms, one.person);
  std::stable_sort(all.begin(), all.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<PersonId> out;
  for (const auto& one : all)
    if (std::find(out.begin(), out.end(), one.second) == out.end()) out.push_back(one.second);
  return out;
}

QVariantList hours_of(const folds::CarView& car, const PersonId& person, std::int64_t end_ms) {
  QVariantList out;
  for (const auto& one : car.worked)
    if (one.person == person) out << span(one.start_ms, one.end_ms, LaneLook::Solid);
  for (const auto& one : car.running)
    if (one.person == person && !one.paused) out << span(one.start_ms, end_ms, LaneLook::Solid);
  return out;
}

void mark_days(HistoryStory& story, const QString& zone) {
  const std::string name = zone.isEmpty() ? "UTC" : zone.toStdString();
  std::vector<std::int64_t> days;
  std::int64_t at_ms = story.start_ms;
  while (at_ms < story.end_ms) {
    const auto date = local_date_at(name, at_ms);
    if (!date) return;
    const auto day = local_day(name, *date);
    if (!day || day->end_ms <= at_ms) return;
    if (day->start_ms > story.start_ms) days.push_back(day->start_ms);
    at_ms = day->end_ms;
  }
  const auto step = static_cast<std::size_t>(days.size() / most_days + 1);
  for (std::size_t i = 0; i < days.size(); i += step)
    story.marks << QVariantMap{{QStringLiteral("at"), static_cast<double>(days[i])},
                               {QStringLiteral("text"), day_words(days[i], zone)}};
}
}  // namespace

HistoryStory story_of(const HistoryGiven& given) {
  HistoryStory out;
  if (!given.timeline || given.timeline->empty() || !given.car) return out;
  const folds::CarView& car = *given.car;
  std::int64_t last_ms = given.timeline->front().wall_ms;
  for (const auto& entry : *given.timeline) {
    last_ms = std::max(last_ms, entry.wall_ms);
    out.at_ms.push_back(last_ms);
  }
  out.start_ms = out.at_ms.front();
  out.end_ms = out.at_ms.back();
  for (const auto& one : car.worked) {
    out.start_ms = std::min(out.start_ms, one.start_ms);
    out.end_ms = std::max(out.end_ms, one.end_ms);
  }
  if (!car.delivered_ms && !car.running.empty()) out.end_ms = std::max(out.end_ms, given.now_ms);
  out.end_ms = std::max(out.end_ms, out.start_ms + least_axis_ms);
  const std::int64_t reach_ms = out.end_ms - out.start_ms;
  if (car.promised_ms && *car.promised_ms > out.end_ms &&
      *car.promised_ms - out.end_ms < reach_ms / 2)
    out.end_ms = *car.promised_ms;
  mark_days(out, given.zone);
  if (car.promised_ms && *car.promised_ms >= out.start_ms && *car.promised_ms <= out.end_ms)
    out.marks << QVariantMap{{QStringLiteral("at"), static_cast<double>(*car.promised_ms)},
                             {QStringLiteral("text"), history_tr("promised")},
                             {QStringLiteral("low"), true}};
  if (const auto air = air_of(car); !air.isEmpty()) out.lanes << lane(history_tr("Air"), air);
  for (const auto& person : workers_of(car))
    out.lanes << lane(name_of(person, *given.shop), hours_of(car, person, out.end_ms));
  if (const auto waits = waits_of(car, out.end_ms); !waits.isEmpty())
    out.lanes << lane(history_tr("Waits"), waits);
  QVariantList ticks;
  const std::int64_t least_ms = (out.end_ms - out.start_ms) / most_ticks;
  std::int64_t last_tick_ms = out.start_ms - least_ms - 1;
  for (const std::int64_t at : out.at_ms) {
    if (at - last_tick_ms <= least_ms) continue;
    last_tick_ms = at;
    ticks << span(at, at, LaneLook::Tick);
  }
  out.lanes << lane(history_tr("Entries"), ticks);
  return out;
}

folds::CarView HistoryFold::at(const std::shared_ptr<const std::vector<entries::Entry>>& timeline,
                               std::size_t place) {
  if (timeline != timeline_ || !fold_ || applied_ > place + 1) {
    timeline_ = timeline;
    fold_ = std::make_unique<folds::JobFold>(timeline->front().subject);
    applied_ = 0;
  }
  for (; applied_ <= place && applied_ < timeline->size(); ++applied_)
    fold_->apply((*timeline)[applied_]);
  return fold_->view();
}

}  // namespace jambline::screens
