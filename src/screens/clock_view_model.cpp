#include "screens/clock_view_model.h"

#include <algorithm>

#include "base/spans.h"
#include "base/zones.h"
#include "screens/plate.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/typed_times.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {

QString title_of(const folds::OperationView* operation) {
  if (!operation) return {};
  return sentence(operation->title.empty() ? words_of(operation->stage) : text(operation->title));
}

std::vector<RowModel<PersonTileRow>::Column> person_columns() {
  return {{"personId", [](const PersonTileRow& row) { return row.key; }},
          {"personName", [](const PersonTileRow& row) { return row.name; }},
          {"doing", [](const PersonTileRow& row) { return row.doing; }},
          {"seconds", [](const PersonTileRow& row) { return row.seconds; }},
          {"shape", [](const PersonTileRow& row) { return row.state; }},
          {"isChosen", [](const PersonTileRow& row) { return row.chosen; }}};
}

std::vector<RowModel<OperationRow>::Column> operation_columns() {
  return {{"operationId", [](const OperationRow& row) { return row.key; }},
          {"title", [](const OperationRow& row) { return row.title; }},
          {"hours", [](const OperationRow& row) { return row.hours; }},
          {"isOver", [](const OperationRow& row) { return row.over; }},
          {"isNext", [](const OperationRow& row) { return row.next; }},
          {"isMine", [](const OperationRow& row) { return row.mine; }}};
}
}  // namespace

ClockViewModel::ClockViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      people_(new RowModel<PersonTileRow>(person_columns(), this)),
      operations_(new RowModel<OperationRow>(operation_columns(), this)) {
  connect(&session, &Session::snapshotChanged, this, &ClockViewModel::rebuild);
  connect(&session, &Session::secondPassed, this, &ClockViewModel::rebuild);
  connect(&session, &Session::personChanged, this, &ClockViewModel::forget_earlier);
  rebuild();
}

void ClockViewModel::rebuild() {
  floor_ = session_.snapshot().floor;
  mine_ = clock_of(*floor_, session_.person());
  const Moment now = session_.now();

  std::vector<PersonTileRow> tiles;
  QStringList others;
  for (const auto& person : session_.shop().people) {
    if (person.left) continue;
    PersonTileRow row;
    row.key = text(person.person.hex());
    row.name = session_.name_of(person.person);
    row.chosen = person.person == session_.person();
    row.doing = tr("not clocked");
    if (const auto at = clock_of(*floor_, person.person)) {
      const bool rests = at->running->paused;
      const std::int64_t ms = length_ms(*at->running, now);
      row.state = shape_of(rests ? StateKind::Paused : StateKind::Running);
      row.doing = rests ? tr("paused") : title_of(at->operation) + dot + plate_of(*at->car);
      if (!rests) row.seconds = static_cast<double>(ms / 1000);
      if (!row.chosen)
        others << (rests ? tr("%1 paused").arg(row.name)
                         : QStringLiteral("%1 %2:%3")
                               .arg(row.name)
                               .arg(ms / minute_ms / 60)
                               .arg(ms / minute_ms % 60, 2, 10, QChar('0')));
    }
    tiles.push_back(std::move(row));
  }
  people_->set_rows(std::move(tiles));
  const int more = static_cast<int>(others.size()) - 2;
  others_ = others.mid(0, 2).join(dot) + (more > 0 ? QStringLiteral(" +%1").arg(more) : QString());

  std::vector<OperationRow> rows;
  if (const auto* car = sheet_car()) {
    const auto* coming = next();
    for (const auto& operation : car->operations) {
      OperationRow row;
      row.key = text(operation.operation.hex());
      row.title = title_of(&operation);
      row.hours = hours(*car, operation);
      row.over = operation.estimate_min > 0 &&
                 used_ms(*car, operation, now) > operation.estimate_min * minute_ms;
      row.next = coming == &operation;
      row.mine = mine_ && mine_->running->operation == operation.operation;
      rows.push_back(std::move(row));
    }
  }
  // What is behind the car's next stage comes last: it is seldom started again.
  const auto* car = sheet_car();
  std::stable_partition(rows.begin(), rows.end(), [&](const OperationRow& row) {
    if (row.mine || row.next) return true;
    for (const auto& operation : car->operations)
      if (text(operation.operation.hex()) == row.key)
        return car->next_stage && operation.stage >= *car->next_stage;
    return false;
  });
  operations_->set_rows(std::move(rows));
  emit changed();
}

const folds::FloorRow* ClockViewModel::sheet_car() const {
  const auto tape = session_.job();
  for (const auto& car : *floor_)
    if (tape && car.job == *tape) return &car;
  return mine_ ? mine_->car : nullptr;
}

const folds::OperationView* ClockViewModel::next() const {
  const auto* car = sheet_car();
  if (!car) return nullptr;
  const bool same = mine_ && mine_->car == car;
  return next_operation(*car, same && running() ? mine_->operation : nullptr);
}

QString ClockViewModel::hours(const folds::FloorRow& car,
                              const folds::OperationView& operation) const {
  const QString used = hours_words(used_ms(car, operation, session_.now()));
  if (operation.estimate_min == 0) return used;
  const QString number = used.section(QChar(' '), 0, 0);
  return tr("%1 of %2").arg(number, hours_words(operation.estimate_min * minute_ms));
}

QString ClockViewModel::operation() const {
  if (!session_.hasPerson()) return tr("Nobody is chosen");
  if (!mine_) return tr("No clock runs");
  return mine_->operation ? title_of(mine_->operation) : tr("Work");
}

QString ClockViewModel::who() const {
  if (!session_.hasPerson()) return tr("tap here to say who it is");
  if (!mine_) return tr("%1, tap here to start one").arg(session_.personName());
  QString out = session_.personName();
  if (mine_->running->paused) out = tr("%1 paused").arg(out);
  if (!mine_->operation) return out;
  const std::int64_t over_ms = used_ms(*mine_->car, *mine_->operation, session_.now()) -
                               mine_->operation->estimate_min * minute_ms;
  if (mine_->operation->estimate_min > 0 && over_ms > 0)
    return out + dot + tr("%1 over").arg(hours_words(over_ms));
  return out + dot + hours(*mine_->car, *mine_->operation);
}

double ClockViewModel::seconds() const {
  if (!running()) return -1;
  return static_cast<double>(length_ms(*mine_->running, session_.now()) / 1000);
}

double ClockViewModel::usedHours() const {
  if (!mine_ || !mine_->operation) return 0;
  return static_cast<double>(used_ms(*mine_->car, *mine_->operation, session_.now())) / ms_per_h;
}

double ClockViewModel::allottedHours() const {
  return mine_ && mine_->operation ? mine_->operation->estimate_min / 60.0 : 0;
}

QString ClockViewModel::tabWords() const {
  return session_.hasPerson() ? title_of(next()) : QString();
}

QString ClockViewModel::carWords() const {
  const auto* car = sheet_car();
  return car ? plate_of(*car) : QString();
}

// Only what is known of the car on the tape: closed intervals of today, and what runs on it.
QString ClockViewModel::daySum() const {
  const auto* car = session_.car();
  const std::string zone = session_.zone().toStdString();
  const std::int64_t now_ms = session_.now().wall_ms;
  const auto date = local_date_at(zone, now_ms);
  if (!car || !date) return {};
  const auto day = local_day(zone, *date);
  if (!day) return {};
  std::int64_t sum = 0;
  for (const auto& worked : car->worked)
    if (worked.person == session_.person())
      sum += std::max<std::int64_t>(
          0, std::min(worked.end_ms, day->end_ms) - std::max(worked.start_ms, day->start_ms));
  if (running() && mine_->car->job == car->job) sum += length_ms(*mine_->running, session_.now());
  return tr("%1 today on this car").arg(hours_words(sum));
}

QStringList ClockViewModel::roles() const {
  QStringList out;
  for (std::size_t at = 0; at < enum_words<job::Role>.size(); ++at)
    out << sentence(words_of(static_cast<job::Role>(at)));
  return out;
}

void ClockViewModel::startNext() {
  if (const auto* coming = next()) start(text(coming->operation.hex()));
}

void ClockViewModel::start(const QString& operationId) {
  const auto parsed = OperationId::parse(operationId.toStdString());
  const auto* car = sheet_car();
  if (!parsed || !car) return;
  session_.post(acts::StartClock{session_.person(), car->job, OperationId{*parsed},
                                 mayEarlier() ? started_ms() : std::nullopt});
  forget_earlier();
}

void ClockViewModel::forget_earlier() {
  earlier_min_ = 0;
  typed_ms_.reset();
  earlier_wrong_.clear();
  emit changed();
}

std::optional<std::int64_t> ClockViewModel::started_ms() const {
  if (typed_ms_) return typed_ms_;
  return earlier_min_ > 0 ? std::optional(session_.now().wall_ms - earlier_min_ * minute_ms)
                          : std::nullopt;
}

QString ClockViewModel::startTime() const {
  const auto ms = started_ms();
  return ms && mayEarlier() ? clock_words(*ms, session_.zone()) : QString();
}

void ClockViewModel::sayEarlier(int minutes) {
  forget_earlier();
  earlier_min_ = std::clamp(minutes, 0, 24 * 60);
  emit changed();
}

void ClockViewModel::sayStarted(const QString& time) {
  forget_earlier();
  const std::int64_t now_ms = session_.now().wall_ms;
  const auto minute = typed_minute(time);
  const auto ms =
      minute ? wall_of(today_of(now_ms, session_.zone()), *minute, session_.zone()) : std::nullopt;
  if (!ms) {
    earlier_wrong_ = tr("Four digits: 0915 is 9:15.");
  } else if (*ms > now_ms) {
    earlier_wrong_ = tr("That time is still to come.");
  } else {
    earlier_min_ = -1;
    typed_ms_ = ms;
  }
  emit changed();
}

void ClockViewModel::pause() {
  session_.post(acts::PauseClock{session_.person()});
}

void ClockViewModel::goOn() {
  if (!paused()) return;
  session_.post(acts::StartClock{session_.person(), mine_->car->job, mine_->running->operation});
}

void ClockViewModel::stop() {
  session_.post(acts::StopClock{session_.person()});
}

void ClockViewModel::addPerson(const QString& name, int role) {
  if (role < 0 || role >= static_cast<int>(enum_words<job::Role>.size())) return;
  session_.post(acts::AddPerson{name.toStdString(), static_cast<job::Role>(role)},
                [this](const Result<engine::Wrote>& wrote) {
                  if (!wrote) return;
                  for (const auto& entry : wrote->entries)
                    if (const auto* added = entry.payload.get_if<entries::PersonAdded>())
                      session_.choosePerson(text(added->person.hex()));
                  emit personAdded();
                });
}

}  // namespace jambline::screens
