#include "screens/hours_view_model.h"

#include <QCoreApplication>
#include <QPointer>
#include <algorithm>
#include <set>

#include "base/spans.h"
#include "screens/clocks.h"
#include "screens/hours_table.h"
#include "screens/span_words.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/typed_times.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
const LocalDate epoch_day{1970, 1, 1};

QString key_of(const folds::SheetSpan& span) {
  return text(span.row.from.act.hex()) + text(span.row.operation.hex());
}

int number_of(const LocalDate& date) {
  return folds::days_between(epoch_day, date);
}

QString plate_of(const std::string& plate) {
  return plate.empty() ? HoursViewModel::tr("a car without a plate") : text(plate);
}
}  // namespace

HoursViewModel::HoursViewModel(Session& session, QString place, QObject* parent)
    : QObject(parent),
      session_(session),
      place_(std::move(place)),
      people_({"key", "title", "isChosen"}, this),
      kinds_({"key", "title", "hours"}, this),
      days_({"key", "title", "hours", "note", "isToday", "spoken"}, this),
      lines_({"key", "title", "car", "hours", "note"}, this),
      spans_({"key", "title", "car", "when", "hours", "said", "note", "shape", "spoken"}, this),
      waits_({"key", "title", "when", "waits", "spoken"}, this),
      amend_(session) {
  connect(&session, &Session::snapshotChanged, this, &HoursViewModel::ask);
  connect(&session, &Session::secondPassed, this, &HoursViewModel::second_passed);
}

LocalDate HoursViewModel::today() const {
  return local_date_at(session_.zone().toStdString(), session_.now().wall_ms).value_or(epoch_day);
}

void HoursViewModel::wake() {
  awake_ = true;
  if (!person_ || from_ == LocalDate{}) showOwn();
  ask();
}

void HoursViewModel::showOwn() {
  person_ = session_.person();
  week_ = false;
  toNow();
}

void HoursViewModel::choosePerson(const QString& person) {
  const auto parsed = PersonId::parse(person.toStdString());
  if (!parsed) return;
  person_ = PersonId{*parsed};
  show();
}

void HoursViewModel::showWeek(bool week) {
  if (week == week_) return;
  week_ = week;
  // From a week to its day of today, if it has one, else to its first.
  const LocalDate now = today();
  if (week)
    from_ = folds::monday_of(from_);
  else if (folds::monday_of(now) == from_)
    from_ = now;
  ask();
}

void HoursViewModel::openDay(const QString& day) {
  bool good = false;
  const int number = day.toInt(&good);
  if (!good) return;
  week_ = false;
  from_ = folds::days_later(epoch_day, number);
  ask();
}

void HoursViewModel::turn(int by) {
  from_ = folds::days_later(from_, week_ ? 7 * by : by);
  ask();
}

void HoursViewModel::toNow() {
  from_ = week_ ? folds::monday_of(today()) : today();
  ask();
}

bool HoursViewModel::isNow() const {
  return from_ == (week_ ? folds::monday_of(today()) : today());
}

void HoursViewModel::ask() {
  if (!awake_) return;
  if (!person_) person_ = session_.person();
  for (const auto& person : session_.shop().people)
    if (!person_ && !person.left) person_ = person.person;
  auto days = folds::sheet_days(session_.zone().toStdString(), from_, week_ ? 7 : 1);
  if (!days) {
    trouble_ = words_of(days.error()).what;
    emit changed();
    return;
  }
  if (asked_.empty() || asked_.front().date != days->front().date ||
      asked_.size() != days->size()) {
    loaded_ = false;
    worked_ = {};
    written_.clear();
  }
  asked_ = std::move(*days);
  show();
  const int generation = ++generation_;
  session_.engine().worked(asked_.front().span.start_ms, asked_.back().span.end_ms,
                           [self = QPointer(this), generation](Result<folds::Worked> worked) {
                             QMetaObject::invokeMethod(
                                 QCoreApplication::instance(),
                                 [self, generation, worked = std::move(worked)] {
                                   if (!self || generation != self->generation_) return;
                                   self->loaded_ = true;
                                   self->trouble_ =
                                       worked ? QString() : words_of(worked.error()).what;
                                   if (worked) self->worked_ = *worked;
                                   self->show();
                                 },
                                 Qt::QueuedConnection);
                           });
}

// What runs counts on.
void HoursViewModel::second_passed() {
  if (!awake_) return;
  const auto at = clock_of(*session_.snapshot().floor, person_);
  if (at && !at->running->paused) show();
}

std::vector<folds::HoursSheet> HoursViewModel::sheets(bool everybody) const {
  std::vector<folds::HoursSheet> out;
  if (!everybody) {
    out.push_back(folds::hours_sheet(person_, worked_.spans, {}, asked_));
    return out;
  }
  for (const auto& person : session_.shop().people)
    out.push_back(folds::hours_sheet(person.person, worked_.spans, {}, asked_));
  return out;
}

void HoursViewModel::show() {
  std::vector<QVariantList> people;
  for (const auto& person : session_.shop().people)
    if (!person.left || person.person == person_)
      people.push_back(
          {text(person.person.hex()), session_.name_of(person.person), person.person == person_});
  people_.set(std::move(people));
  sheet_ = folds::hours_sheet(person_, worked_.spans,
                              running_spans(*session_.snapshot().floor, session_.now()), asked_);
  std::vector<QVariantList> kinds;
  const auto& by_work = sheet_.all.by_work;
  const bool apart =
      std::any_of(by_work.begin() + 1, by_work.end(), [](auto ms) { return ms > 0; });
  for (std::size_t i = 0; apart && i < by_work.size(); ++i)
    if (by_work[i] > 0)
      kinds.push_back({static_cast<int>(i), sentence(words_of(static_cast<job::WorkKind>(i))),
                       running_words(by_work[i])});
  kinds_.set(std::move(kinds));
  std::vector<QVariantList> days;
  for (std::size_t i = 0; week_ && i < sheet_.days.size(); ++i) {
    const auto& day = sheet_.days[i];
    const auto& sum = sheet_.sums[i];
    const QString name = day_words(day.span.start_ms, session_.zone());
    QStringList notes{note_of(day)};
    if (sum.clock_doubt) notes << tr("clock in doubt");
    if (sum.runs) notes << tr("so far");
    notes.removeAll(QString());
    const QString hours = sum.worked_ms > 0 ? running_words(sum.worked_ms) : QString();
    const QString note = notes.join(QStringLiteral(" \u00b7 "));
    days.push_back(
        {number_of(day.date), name, hours, note, day.date == today(),
         tr("%1, %2. Opens the day.").arg(name, hours.isEmpty() ? tr("nothing clocked") : hours)});
  }
  days_.set(std::move(days));
  show_lines();
  show_spans();
  show_waits();
  emit changed();
}

void HoursViewModel::show_lines() {
  struct Line {
    folds::SheetLine line;
    QString key;
  };
  std::vector<Line> all;
  for (const auto& line : sheet_.lines) {
    const auto known = std::find_if(all.begin(), all.end(), [&](const Line& one) {
      return one.line.operation == line.operation;
    });
    if (known == all.end()) {
      all.push_back({line, text(line.operation.hex())});
      continue;
    }
    known->line.ms += line.ms;
    known->line.clock_doubt = known->line.clock_doubt || line.clock_doubt;
    known->line.runs = known->line.runs || line.runs;
  }
  std::vector<QVariantList> rows;
  for (const auto& [line, key] : all) {
    const QString title = operation_words(line.stage, line.title, line.work);
    const QString car =
        line.runs ? tr("%1 \u00b7 so far").arg(plate_of(line.plate)) : plate_of(line.plate);
    rows.push_back({key, title, car, running_words(line.ms),
                    line.clock_doubt ? tr("clock in doubt") : QString()});
  }
  lines_.set(std::move(rows));
}

void HoursViewModel::show_spans() {
  std::vector<QVariantList> rows;
  const QString zone = session_.zone();
  for (const auto& span : sheet_.spans) {
    if (week_) break;
    const QString title = operation_words(span.row);
    const QString car = plate_of(span.row.plate);
    const QString when = span.runs ? runs_words(span.row.start_ms, zone)
                                   : span_words(span.row.start_ms, span.row.end_ms, zone);
    const std::int64_t ms = span.end_ms - span.start_ms;
    const bool cut = ms < span.row.end_ms - span.row.start_ms;
    QStringList notes;
    if (cut) notes << tr("%1 of it on this day").arg(running_words(ms));
    if (span.twice) notes << tr("on two cars at once");
    if (span.row.clock_doubt) notes << tr("clock in doubt");
    const QString said = said_words(span.row, session_);
    const QString hours = running_words(span.row.end_ms - span.row.start_ms);
    QStringList spoken{title, car, when, hours, said, notes.join(tr(", "))};
    spoken.removeAll(QString());
    rows.push_back({key_of(span), title, car, when, hours, said,
                    notes.join(QStringLiteral(" \u00b7 ")),
                    shape_of(span.runs ? StateKind::Running : StateKind::None),
                    tr("%1. Opens its times.").arg(spoken.join(tr(", ")))});
  }
  spans_.set(std::move(rows));
}

void HoursViewModel::show_waits() {
  std::set<JobId> cars;
  for (const auto& line : sheet_.lines) cars.insert(line.job);
  std::vector<QVariantList> rows;
  const std::int64_t now_ms = session_.now().wall_ms;
  const QString zone = session_.zone();
  int number = 0;
  for (const auto& wait : worked_.waits) {
    if (!cars.count(wait.job)) continue;
    const QString why = words_of(wait.reason);
    const QString title = wait.end_ms ? tr("%1 waited for %2").arg(plate_of(wait.plate), why)
                                      : tr("%1 waits for %2").arg(plate_of(wait.plate), why);
    const QString since = time_words(wait.start_ms, now_ms, zone);
    QString when = wait.end_ms ? tr("%1 to %2").arg(since, time_words(*wait.end_ms, now_ms, zone))
                               : tr("since %1").arg(since);
    if (!wait.end_ms && wait.expected_ms)
      when = tr("%1, expected %2").arg(when, time_words(*wait.expected_ms, now_ms, zone));
    rows.push_back({number++, title, when, !wait.end_ms, tr("%1, %2").arg(title, when)});
  }
  waits_.set(std::move(rows));
}

QString HoursViewModel::note_of(const folds::SheetDay& day) const {
  const std::int64_t length_ms = day.span.length_ms();
  if (length_ms == day_ms || length_ms == 0) return {};
  const QString hours =
      length_ms % hour_ms == 0 ? QString::number(length_ms / hour_ms) : duration_words(length_ms);
  return tr("a day of %1 hours").arg(hours);
}

QString HoursViewModel::title() const {
  if (asked_.empty()) return {};
  const QString zone = session_.zone();
  const QString first = day_words(asked_.front().span.start_ms, zone);
  return week_ ? tr("%1 to %2").arg(first, day_words(asked_.back().span.start_ms, zone)) : first;
}

QString HoursViewModel::dayNote() const {
  if (week_ || asked_.empty()) return {};
  const QString note = note_of(asked_.front());
  if (note.isEmpty()) return {};
  return asked_.front().span.length_ms() < day_ms
             ? tr("%1: the clocks go forward").arg(sentence(note))
             : tr("%1: the clocks go back").arg(sentence(note));
}

QString HoursViewModel::total() const {
  return running_words(sheet_.all.worked_ms);
}

QString HoursViewModel::totalNote() const {
  QStringList out;
  if (sheet_.all.runs) out << tr("so far");
  if (!week_ && !sheet_.spans.empty()) {
    const QString zone = session_.zone();
    std::int64_t last_ms = 0;
    for (const auto& span : sheet_.spans) last_ms = std::max(last_ms, span.end_ms);
    out << span_words(sheet_.spans.front().start_ms, last_ms, zone);
    if (sheet_.all.between_ms > 0)
      out << tr("%1 between not clocked").arg(running_words(sheet_.all.between_ms));
  }
  return out.join(QStringLiteral(" \u00b7 "));
}

QString HoursViewModel::twiceWords() const {
  return sheet_.all.twice_ms > 0
             ? tr("%1 were clocked on two cars at once. The sum counts them once, each operation "
                  "its own.")
                   .arg(running_words(sheet_.all.twice_ms))
             : QString();
}

QString HoursViewModel::doubtWords() const {
  return sheet_.all.clock_doubt
             ? tr("A device's clock was in doubt here. The length is by its own timer.")
             : QString();
}

QStringList HoursViewModel::steps() const {
  return rounding_words();
}

void HoursViewModel::openSpan(const QString& key) {
  for (const auto& span : sheet_.spans) {
    if (key_of(span) != key) continue;
    amend_.open_span(span.row, span.runs);
    return;
  }
}

void HoursViewModel::writeTable(const QString& place, int step, bool everybody) {
  if (asked_.empty()) return;
  const HoursTable table{place, day_text(number_of(asked_.front().date)),
                         day_text(number_of(asked_.back().date)), everybody ? QString() : who(),
                         rounding_of(step)};
  written_ = tr("It is being written.");
  emit changed();
  session_.calculate(this,
                     [this, table, sheets = sheets(everybody),
                      shop = session_.snapshot().shop]() -> std::function<void()> {
                       return [this, said = write_table(table, sheets, *shop)] {
                         written_ = said;
                         emit changed();
                       };
                     });
}

}  // namespace jambline::screens
