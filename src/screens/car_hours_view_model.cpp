#include "screens/car_hours_view_model.h"

#include <algorithm>

#include "base/spans.h"
#include "screens/span_words.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {

// Closed spans and what runs, by start.
std::vector<std::pair<folds::WorkedRow, bool>> spans_of(const folds::CarView& car,
                                                        const Session& session) {
  std::vector<std::pair<folds::WorkedRow, bool>> out;
  for (auto& row : folds::worked_of(car).spans) out.emplace_back(std::move(row), false);
  for (auto& row : running_spans({folds::floor_row(car)}, session.now()))
    out.emplace_back(std::move(row), true);
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) {
    return a.first.start_ms < b.first.start_ms;
  });
  return out;
}
}  // namespace

CarHoursViewModel::CarHoursViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      operations_({"key", "title", "hours", "ofWords", "note", "isOver", "isOpen"}, this),
      spans_({"key", "title", "when", "hours", "said", "note", "shape", "spoken"}, this),
      amend_(session) {
  connect(&session, &Session::carOrShopChanged, this, &CarHoursViewModel::refresh);
  connect(&session, &Session::secondPassed, this, &CarHoursViewModel::second_passed);
  refresh();
}

void CarHoursViewModel::second_passed() {
  if (runs_) refresh();
}

void CarHoursViewModel::refresh() {
  const auto* car = session_.car();
  if ((car ? car->job : JobId{}) != shown_) open_.reset();
  shown_ = car ? car->job : JobId{};
  std::vector<QVariantList> rows, span_rows;
  open_spans_.clear();
  open_title_.clear();
  std::int64_t all_ms = 0, estimate_ms = 0, done_ms = 0, done_estimate_ms = 0, apart_ms = 0;
  int overs = 0;
  runs_ = false;
  std::vector<std::pair<folds::WorkedRow, bool>> spans;
  if (car) spans = spans_of(*car, session_);
  const auto add = [&](const OperationId& id, const QString& title, std::int64_t estimate,
                       bool done, job::WorkKind work) {
    std::int64_t ms = 0;
    QStringList people;
    bool runs = false;
    for (const auto& [row, is_running] : spans) {
      if (row.operation != id) continue;
      ms += row.end_ms - row.start_ms;
      runs = runs || is_running;
      const QString name = session_.name_of(row.person);
      if (!people.contains(name)) people << name;
    }
    all_ms += ms;
    estimate_ms += estimate;
    if (work == job::WorkKind::Redo || work == job::WorkKind::Comeback) apart_ms += ms;
    if (done && estimate > 0 && ms > 0) {
      done_ms += ms;
      done_estimate_ms += estimate;
    }
    const bool is_over = estimate > 0 && ms > estimate;
    overs += is_over ? 1 : 0;
    runs_ = runs_ || runs;
    QStringList notes = people;
    if (runs) notes << tr("runs");
    if (done) notes << tr("done");
    const bool is_open = open_ == id;
    if (is_open) open_title_ = title;
    rows.push_back({text(id.hex()), title, running_words(ms),
                    estimate == 0 ? QString()
                    : is_over     ? tr("over %1").arg(running_words(estimate))
                                  : tr("of %1").arg(running_words(estimate)),
                    notes.join(QStringLiteral(" \u00b7 ")), is_over, is_open});
  };
  if (car)
    for (const auto& one : car->operations)
      add(one.operation, operation_words(one.stage, one.title, one.work),
          one.estimate_min * minute_ms, one.done, one.work);
  for (const auto& [row, is_running] : spans) {
    if (row.operation != open_) continue;
    const QString who = session_.name_of(row.person);
    const QString zone = session_.zone();
    const QString day = day_words(row.start_ms, zone);
    const QString when =
        tr("%1, %2").arg(day, is_running ? runs_words(row.start_ms, zone)
                                         : span_words(row.start_ms, row.end_ms, zone));
    const QString hours = running_words(row.end_ms - row.start_ms);
    const QString said = said_words(row, session_);
    const QString note = row.clock_doubt ? tr("clock in doubt") : QString();
    QStringList spoken{who, when, hours, said, note};
    spoken.removeAll(QString());
    span_rows.push_back({text(row.from.act.hex()), who, when, hours, said, note,
                         shape_of(is_running ? StateKind::Running : StateKind::None),
                         tr("%1. Opens its times.").arg(spoken.join(tr(", ")))});
    open_spans_.emplace_back(row, is_running);
  }
  operations_.set(std::move(rows));
  spans_.set(std::move(span_rows));
  over_ = estimate_ms > 0 && all_ms > estimate_ms;
  total_ = running_words(all_ms);
  total_of_ = estimate_ms == 0 ? QString()
              : over_          ? tr("over %1").arg(running_words(estimate_ms))
                               : tr("of %1").arg(running_words(estimate_ms));
  QStringList notes;
  if (runs_) notes << tr("so far");
  if (done_ms > 0)
    notes << tr("what is done was estimated at %1 % of what was clocked")
                 .arg((done_estimate_ms * 100 + done_ms / 2) / done_ms);
  if (apart_ms > 0) notes << tr("%1 of it redo and comeback").arg(running_words(apart_ms));
  total_note_ = notes.join(QStringLiteral(" \u00b7 "));
  row_words_ = estimate_ms == 0
                   ? tr("%1 clocked").arg(hours_words(all_ms))
                   : tr("%1 of %2 estimated").arg(hours_words(all_ms), hours_words(estimate_ms));
  if (overs > 0)
    row_words_ = overs == 1 ? tr("%1, 1 operation is over").arg(row_words_)
                            : tr("%1, %2 operations are over").arg(row_words_).arg(overs);
  row_shape_ = shape_of(overs > 0 ? StateKind::Must : runs_ ? StateKind::Running : StateKind::None);
  emit changed();
}

void CarHoursViewModel::open(const QString& operation) {
  const auto parsed = OperationId::parse(operation.toStdString());
  if (!parsed) return;
  const OperationId id{*parsed};
  open_ = open_ == id ? std::nullopt : std::optional(id);
  refresh();
}

void CarHoursViewModel::openSpan(const QString& key) {
  for (const auto& [row, runs] : open_spans_)
    if (text(row.from.act.hex()) == key) return amend_.open_span(row, runs);
}

}  // namespace jambline::screens
