// What the acts of the correction walk write.
#include <algorithm>
#include <cmath>

#include "base/spans.h"
#include "screens/clocks.h"
#include "screens/walk_view_model.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr double most_work_min = 1440;
constexpr double one_area_mm2 = 300.0 * 300.0;
}  // namespace

// Since the round before of this person, or since the clock began; none: no clock ran, or one of
// them is in doubt.
std::optional<double> WalkViewModel::clocked_min() const {
  const auto* car = session_.car();
  if (!car) return std::nullopt;
  std::int64_t since_ms = 0;
  for (const auto& panel : car->panels)
    for (const auto& round : panel.rounds)
      if (round.by == session_.person()) since_ms = std::max(since_ms, round.wall_ms);
  const auto counts = [&](const OperationId& operation) {
    const auto* what = car->find(operation);
    return what && what->stage == work_.stage();
  };
  std::int64_t sum_ms = 0;
  for (const auto& one : car->worked) {
    if (one.person != session_.person() || !counts(one.operation) || one.end_ms <= since_ms)
      continue;
    if (one.clock_doubt) return std::nullopt;
    sum_ms += one.end_ms - std::max(one.start_ms, since_ms);
  }
  for (const auto& one : car->running) {
    if (one.person != session_.person() || one.paused || !counts(one.operation)) continue;
    if (one.clock_doubt) return std::nullopt;
    sum_ms += one.start_ms >= since_ms ? length_ms(one, session_.now())
                                       : session_.now().wall_ms - since_ms;
  }
  const double minutes = static_cast<double>(sum_ms) / ms_per_min;
  if (minutes <= 0 || minutes > most_work_min) return std::nullopt;
  return minutes;
}

void WalkViewModel::finish(job::Round round, job::RoundHow how,
                           const std::vector<folds::WalkStation>& stations) {
  const auto* car = session_.car();
  if (!car || !work_.ready() || posted_ > 0) return;
  told_.clear();
  const auto clocked = how == job::RoundHow::Skipped ? std::nullopt : clocked_min();
  double planned_min = 0;
  for (const auto& one : stations) planned_min += one.minutes;
  for (const auto& one : stations) {
    acts::FinishRound said{car->job, one.panel, round, how, {}};
    said.marks = how == job::RoundHow::Added ? one.marks : one.left;
    said.areas = one.whole ? static_cast<int>(std::ceil(one.area_mm2 / one_area_mm2))
                           : static_cast<int>(one.areas.size());
    said.area_mm2 = one.area_mm2;
    if (clocked && planned_min > 0) said.work_min = *clocked * one.minutes / planned_min;
    ++posted_;
    session_.post(std::move(said), [this](const Result<engine::Wrote>&) { --posted_; });
  }
}

void WalkViewModel::act() {
  const auto* car = session_.car();
  if (!car || mainWaits() || !work_.ready() || posted_ > 0) return;
  switch (mode()) {
    case Mode::Round: {
      std::vector<folds::WalkStation> open;
      for (const auto& one : step()->stations)
        if (!one.done) open.push_back(one);
      finish(step()->round, job::RoundHow::AsPlanned, open);
      break;
    }
    case Mode::Ask:
      for (const MarkId& mark : work_.planned()->walk().asked) {
        ++posted_;
        session_.post(acts::EndMark{car->job, mark, job::MarkEnd::Gone},
                      [this](const Result<engine::Wrote>&) { --posted_; });
      }
      break;
    case Mode::Clean:
      say_clean();
      break;
    case Mode::Nothing:
      break;
  }
}

void WalkViewModel::say_clean() {
  const auto* car = session_.car();
  for (const job::Panel panel : work_.panels_done()) {
    const auto* view = car->find(panel);
    acts::GiveVerdict said{car->job, panel, job::Verdict::Clean, !view->plan.on_car, std::nullopt};
    ++posted_;
    session_.post(std::move(said), [this](const Result<engine::Wrote>&) { --posted_; });
  }
}

void WalkViewModel::skip() {
  if (mode() != Mode::Round || mainWaits()) return;
  std::vector<folds::WalkStation> open;
  for (const auto& one : step()->stations)
    if (!one.done) open.push_back(one);
  finish(step()->round, job::RoundHow::Skipped, open);
}

// Its areas are those of that round on these panels, where the plan has it; else of this round.
void WalkViewModel::add(int round) {
  if (!work_.planned() || mainWaits() || round < 0 ||
      static_cast<std::size_t>(round) >= enum_words<job::Round>.size())
    return;
  std::vector<folds::WalkStation> stations;
  for (const job::Panel panel : panels()) {
    std::optional<folds::WalkStation> best;
    for (const auto& step : work_.planned()->walk().steps)
      for (const auto& station : step.stations)
        if (station.panel == panel && (!best || step.round == static_cast<job::Round>(round)))
          best = station;
    if (best) stations.push_back(*best);
  }
  finish(static_cast<job::Round>(round), job::RoundHow::Added, stations);
}

void WalkViewModel::end(const QString& mark, job::MarkEnd how) {
  const auto* car = session_.car();
  const auto id = MarkId::parse(mark.toStdString());
  if (!car || !id || mainWaits() || posted_ > 0) return;
  ++posted_;
  session_.post(acts::EndMark{car->job, MarkId{*id}, how},
                [this](const Result<engine::Wrote>&) { --posted_; });
}

void WalkViewModel::gone(const QString& mark) {
  end(mark, job::MarkEnd::Gone);
}

void WalkViewModel::cameBack(const QString& mark) {
  end(mark, job::MarkEnd::CameBack);
}

void WalkViewModel::burnThrough(const QString& mark) {
  const auto* car = session_.car();
  const auto id = MarkId::parse(mark.toStdString());
  if (!car || !id || mainWaits() || posted_ > 0) return;
  const folds::PanelView* panel = nullptr;
  for (const auto& one : car->panels)
    for (const auto& view : one.marks)
      if (view.mark == MarkId{*id}) panel = &one;
  if (!panel) return;
  const QString name = words_of(panel->plan.panel, car->body);
  QStringList told{tr("Stop on the %1. It goes to redo.").arg(name)};
  const JobId job = car->job;
  std::vector<ReleaseId> offers;
  for (const auto* release : {&panel->release, &car->car_release}) {
    if (release->disputed) continue;
    if (release->state == folds::ReleaseState::Offered) offers.push_back(release->release);
    if (release->state == folds::ReleaseState::Taken && release->taker)
      told << tr("%1 has it: tell %1.").arg(session_.name_of(*release->taker));
  }
  if (!offers.empty()) told << tr("The offer is taken back.");
  ++posted_;
  session_.post(acts::EndMark{job, MarkId{*id}, job::MarkEnd::BurnThrough},
                [this, job, offers, told](const Result<engine::Wrote>& wrote) {
                  --posted_;
                  if (!wrote) return;
                  told_ = told.join(QChar(' '));
                  for (const ReleaseId& release : offers)
                    session_.post(acts::ReturnRelease{
                        job, release, tr("burn-through, goes to redo").toStdString()});
                  emit changed();
                });
}

}  // namespace jambline::screens
