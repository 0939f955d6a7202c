#include "screens/record_car_view_model.h"

#include <algorithm>

#include "folds/open_points.h"
#include "screens/entry_words.h"
#include "screens/open_point_words.h"
#include "screens/text.h"
#include "screens/units.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr std::size_t last_shown = 6;
constexpr std::int64_t minute_of_ms = 60'000;

// Whether something that is usually asked for was passed over.
struct PassedOver {
  bool operator()(const entries::SprayStarted& said) const {
    return std::any_of(said.checks.begin(), said.checks.end(),
                       [](const auto& check) { return check.reason.has_value(); });
  }
  bool operator()(const entries::SprayedWithout&) const { return true; }
  bool operator()(const entries::BeforeCutAnswered& said) const {
    return std::any_of(said.checks.begin(), said.checks.end(),
                       [](const auto& check) { return check.reason.has_value(); });
  }
  bool operator()(const entries::StepSaid& said) const { return !said.broken.empty(); }
  bool operator()(const entries::StageDone& said) const { return said.without_shots.has_value(); }
  template <class Other>
  bool operator()(const Other&) const {
    return false;
  }
};
}  // namespace

RecordCarViewModel::RecordCarViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      stages_({"key", "title", "hours", "done"}, this),
      overrides_({"entry", "words", "who"}, this),
      last_({"entry", "words", "who"}, this) {
  settle_.setSingleShot(true);
  settle_.setInterval(settle_ms);
  connect(&settle_, &QTimer::timeout, this, [this] {
    if (job_ && session_.job() != job_) session_.openCar(hex(*job_));
  });
  connect(&session_, &Session::snapshotChanged, this, &RecordCarViewModel::refresh);
}

void RecordCarViewModel::choose(const QString& job_id) {
  const auto job = parsed<JobId>(job_id);
  if (job == job_) return;
  job_ = job;
  shown_.reset();
  if (job_)
    settle_.start();
  else
    settle_.stop();
  refresh();
  emit changed();
}

QString RecordCarViewModel::job() const {
  return job_ ? hex(*job_) : QString();
}

const folds::CarView* RecordCarViewModel::car() const {
  const auto* car = session_.car();
  return car && job_ && car->job == *job_ ? car : nullptr;
}

void RecordCarViewModel::refresh() {
  // Another car was put on the tape elsewhere.
  if (job_ && !settle_.isActive() && session_.job() != job_) {
    job_.reset();
    shown_.reset();
  }
  const auto* now = car();
  if (!now || session_.snapshot().car == shown_) {
    if (!now) emit changed();
    return;
  }
  shown_ = session_.snapshot().car;
  show_facts(*now);
  show_hours(*now);
  show_held(*now);
  show_entries();
  emit changed();
}

void RecordCarViewModel::show_facts(const folds::CarView& car) {
  const auto when = [this](std::int64_t wall_ms) {
    return tr("%1 %2").arg(day_words(wall_ms, session_.zone()),
                           clock_words(wall_ms, session_.zone()));
  };
  std::vector<DetailRows::Row> rows;
  const auto* entries = session_.snapshot().timeline.get();
  if (entries && !entries->empty()) rows.push_back({tr("Opened"), when(entries->front().wall_ms)});
  if (car.promised_ms) rows.push_back({tr("Promised"), when(*car.promised_ms)});
  if (car.delivered_ms) rows.push_back({tr("Delivered"), when(*car.delivered_ms)});
  if (!car.vin.empty()) rows.push_back({tr("VIN"), text(car.vin)});
  facts_.set(std::move(rows));
}

void RecordCarViewModel::show_hours(const folds::CarView& car) {
  std::vector<QVariantList> rows;
  for (const auto& stage : car.stages) {
    std::int64_t clocked_ms = 0;
    std::int64_t estimated_ms = 0;
    for (const auto& operation : car.operations) {
      if (operation.stage != stage.stage) continue;
      clocked_ms += operation.clocked_ms;
      estimated_ms += operation.estimate_min * minute_of_ms;
    }
    const QString words = sentence(words_of(stage.stage));
    rows.push_back({words, words,
                    tr("%1 of %2").arg(hours_words(clocked_ms), hours_words(estimated_ms)),
                    stage.done});
  }
  stages_.set(std::move(rows));
}

void RecordCarViewModel::show_held(const folds::CarView& car) {
  std::vector<DetailRows::Row> rows;
  const std::int64_t now_ms = session_.now().wall_ms;
  for (const auto& wait : car.visit.waits) {
    const QString span = hours_words(wait.end_ms.value_or(now_ms) - wait.start_ms);
    rows.push_back(
        {sentence(words_of(wait.reason)), wait.end_ms ? span : tr("%1, still waiting").arg(span)});
  }
  held_.set(std::move(rows));
  open_.clear();
  if (car.delivered_ms) return;
  for (const auto& point : folds::open_points(car, session_.shop(), session_.now()))
    open_ << sentence(words_of(point, car.body));
}

void RecordCarViewModel::show_entries() {
  const auto& timeline = session_.snapshot().timeline;
  std::vector<QVariantList> overrides;
  std::vector<QVariantList> last;
  if (timeline) {
    const folds::History history(*timeline);
    const Telling telling{session_.shop(), history, session_.zone()};
    const auto row = [&](const entries::Entry& entry) -> QVariantList {
      const QString when = tr("%1 %2").arg(day_words(entry.wall_ms, session_.zone()),
                                           clock_words(entry.wall_ms, session_.zone()));
      return {hex(entry.hash), words_of(entry, telling),
              entry.person ? tr("%1, %2").arg(name_of(entry.person, session_.shop()), when) : when};
    };
    for (const auto& entry : *timeline)
      if (entry.refused == entries::Refused::No && !history.taken_back(entry.hash) &&
          entry.payload.visit(PassedOver()))
        overrides.push_back(row(entry));
    for (auto entry = timeline->rbegin(); entry != timeline->rend() && last.size() < last_shown;
         ++entry)
      last.push_back(row(*entry));
  }
  overrides_.set(std::move(overrides));
  last_.set(std::move(last));
}

QString RecordCarViewModel::plate() const {
  return car() ? text(car()->plate) : QString();
}

QString RecordCarViewModel::look() const {
  if (!car()) return {};
  const QString body = words_of(car()->body);
  return car()->color.name.empty() ? body : text(car()->color.name) + dot + body;
}

std::optional<std::int64_t> RecordCarViewModel::late_by_ms() const {
  if (!car() || !car()->promised_ms) return std::nullopt;
  return car()->delivered_ms.value_or(session_.now().wall_ms) - *car()->promised_ms;
}

bool RecordCarViewModel::late() const {
  return late_by_ms().value_or(0) > 0;
}

QString RecordCarViewModel::dueWords() const {
  const auto by_ms = late_by_ms();
  if (!by_ms) return {};
  if (*by_ms > 0) return tr("%1 late").arg(hours_words(*by_ms));
  if (!car()->delivered_ms) return tr("due in %1").arg(hours_words(-*by_ms));
  return *by_ms == 0 ? tr("in time") : tr("%1 early").arg(hours_words(-*by_ms));
}

QString RecordCarViewModel::hoursWords() const {
  if (!car()) return {};
  std::int64_t clocked_ms = 0;
  std::int64_t estimated_ms = 0;
  for (const auto& operation : car()->operations) {
    clocked_ms += operation.clocked_ms;
    estimated_ms += operation.estimate_min * minute_of_ms;
  }
  return tr("%1 clocked, %2 estimated").arg(hours_words(clocked_ms), hours_words(estimated_ms));
}

}  // namespace jambline::screens
