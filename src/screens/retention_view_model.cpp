#include "screens/retention_view_model.h"

#include <QCoreApplication>
#include <QPointer>
#include <algorithm>
#include <limits>

#include "screens/retention_words.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/typed_times.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr std::int64_t window_ms = std::int64_t{31} * 24 * 3600 * 1000;

QString last_words(const folds::KeptRecord& record) {
  using R = RetentionViewModel;
  const QString day = date_of_day(record.last_day);
  switch (record.record) {
    case job::RecordClass::Payroll:
      return R::tr("worked %1").arg(day);
    case job::RecordClass::Spraying:
      return R::tr("sprayed %1").arg(day);
    case job::RecordClass::FitTests:
      return R::tr("fit-tested %1").arg(day);
    case job::RecordClass::Exposure:
      return R::tr("sampled %1").arg(day);
    case job::RecordClass::TimeCards:
    case job::RecordClass::CarJobs:
      return {};  // of the same day as the payroll
  }
  return {};
}
}  // namespace

RetentionViewModel::RetentionViewModel(Session& session, QObject* parent)
    : Form(session, parent),
      classes_({"key", "title", "covers", "usual", "source", "own", "fewer", "spoken"}, this),
      leavers_({"key", "title", "last", "until", "shape", "state", "mayForget", "spoken"}, this) {
  connect(&session, &Session::shopChanged, this, &RetentionViewModel::refresh);
  connect(&session, &Session::personChanged, this, &RetentionViewModel::changed);
  refresh();
}

std::optional<int> RetentionViewModel::own_years(job::RecordClass record) const {
  const auto* own = session().shop().find(record);
  return own ? own->years : std::nullopt;
}

std::vector<PersonId> RetentionViewModel::who_left() const {
  std::vector<PersonId> out;
  for (const auto& person : session().shop().people)
    if (person.left) out.push_back(person.person);
  return out;
}

void RetentionViewModel::refresh() {
  std::vector<QVariantList> rows;
  for (const auto& usual : job::usual_retentions()) {
    const auto years = own_years(usual.record);
    const QString title = sentence(words_of(usual.record));
    const QString own = years ? years_of(*years) : QString();
    const bool fewer = job::shorter_than_usual(usual.record, years);
    QString spoken = tr("%1: %2. Usual: %3. %4.")
                         .arg(title, covers_of(usual.record), usual_words(usual.record),
                              usual_source(usual.record));
    if (years) spoken = tr("%1 Here: %2.").arg(spoken, own);
    if (fewer) spoken = tr("%1 Fewer than usual: a rule may ask for longer.").arg(spoken);
    rows.push_back({static_cast<int>(usual.record), title, covers_of(usual.record),
                    usual_words(usual.record), usual_source(usual.record), own, fewer, spoken});
  }
  classes_.set(std::move(rows));
  emit openChanged();
  if (awake_ && who_left() != asked_) ask();
  show();
}

void RetentionViewModel::wake() {
  awake_ = true;
  ask();
  show();
}

void RetentionViewModel::rest() {
  awake_ = false;
  stop_.request_stop();
  ++generation_;
}

std::optional<int> RetentionViewModel::day_of(std::int64_t wall_ms) const {
  return today_of(wall_ms, session().zone());
}

void RetentionViewModel::ask() {
  stop_.request_stop();
  stop_ = std::stop_source();
  const int generation = ++generation_;
  asked_ = who_left();
  sought_.clear();
  last_.clear();
  trouble_.clear();
  loaded_ = asked_.empty();
  if (loaded_) return;
  session().engine().accounts(
      0, std::numeric_limits<std::int64_t>::max(), stop_.get_token(),
      [self = QPointer(this), generation](Result<std::vector<folds::Account>> accounts) {
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [self, generation, accounts = std::move(accounts)] {
              if (!self || generation != self->generation_) return;
              if (accounts) {
                self->take(*accounts);
                return;
              }
              self->trouble_ = words_of(accounts.error()).what;
              self->show();
            },
            Qt::QueuedConnection);
      });
}

// A car knows when an operation was clocked last, by whomever: each leaver's own day is not later.
void RetentionViewModel::take(const std::vector<folds::Account>& accounts) {
  for (const auto& person : asked_) {
    Sought sought{person, std::numeric_limits<std::int64_t>::max(), 0};
    std::int64_t sprayed_ms = 0;
    for (const auto& car : accounts) {
      for (const auto& operation : car.operations)
        if (std::any_of(operation.clocked.begin(), operation.clocked.end(),
                        [&](const auto& one) { return one.person == person; })) {
          sought.from_ms = std::min(sought.from_ms, car.opened_ms);
          sought.to_ms = std::max(sought.to_ms, operation.last_ms);
        }
      for (const auto& spray : car.sprays)
        if (spray.by == person) sprayed_ms = std::max(sprayed_ms, spray.at_ms);
    }
    if (sprayed_ms > 0) last_[person].sprayed_day = day_of(sprayed_ms);
    if (sought.to_ms > 0) sought_.push_back(sought);
  }
  ask_next();
}

void RetentionViewModel::ask_next() {
  loaded_ = sought_.empty();
  if (loaded_) return show();
  const Sought now = sought_.back();
  const int generation = generation_;
  session().engine().worked(now.to_ms - window_ms, now.to_ms + 1,
                            [self = QPointer(this), generation, now](Result<folds::Worked> worked) {
                              QMetaObject::invokeMethod(
                                  QCoreApplication::instance(),
                                  [self, generation, now, worked = std::move(worked)] {
                                    if (!self || generation != self->generation_) return;
                                    if (!worked) {
                                      self->trouble_ = words_of(worked.error()).what;
                                      self->show();
                                      return;
                                    }
                                    std::int64_t last_ms = 0;
                                    for (const auto& span : worked->spans)
                                      if (span.person == now.person)
                                        last_ms = std::max(last_ms, span.end_ms);
                                    Sought& sought = self->sought_.back();
                                    if (last_ms > 0 || now.to_ms - window_ms < now.from_ms) {
                                      // Rather too late than too early where nothing is found.
                                      const std::int64_t said_ms =
                                          last_ms > 0 ? last_ms : now.to_ms;
                                      self->last_[now.person].worked_day = self->day_of(said_ms);
                                      self->sought_.pop_back();
                                    } else {
                                      sought.to_ms = now.to_ms - window_ms;
                                    }
                                    self->ask_next();
                                  },
                                  Qt::QueuedConnection);
                            });
}

std::vector<folds::KeptRecord> RetentionViewModel::kept_of(const PersonId& person) const {
  const auto known = last_.find(person);
  return folds::kept_of_leaver(session().shop(), person,
                               known == last_.end() ? folds::LastDays{} : known->second);
}

void RetentionViewModel::show() {
  struct Row {
    int over_day;
    QVariantList values;
  };
  std::vector<Row> rows;
  for (const auto& person : session().shop().people) {
    if (!person.left || !loaded_) continue;
    const bool erased = person.name.empty();
    const auto kept = kept_of(person.person);
    const auto* longest = folds::kept_longest(kept);
    QStringList did;
    for (const auto& record : kept)
      if (const QString words = last_words(record); !words.isEmpty()) did << words;
    const QString title = session().name_of(person.person);
    const QString last = did.isEmpty()
                             ? tr("Nothing that is kept for years")
                             : sentence(tr("last %1").arg(did.join(QStringLiteral(", "))));
    const bool over = !longest || *longest->over_day <= today();
    const QString until =
        !longest ? tr("no time in years is counted")
        : over   ? tr("usually kept until %1, because of %2; that is over")
                     .arg(date_of_day(*longest->over_day), words_of(longest->record))
               : tr("usually kept until %1, because of %2")
                     .arg(date_of_day(*longest->over_day), words_of(longest->record));
    const StateKind kind = erased ? StateKind::Done : over ? StateKind::NotYet : StateKind::Waits;
    const QString state = erased ? tr("Forgotten")
                          : over ? tr("May be forgotten now")
                                 : tr("Kept until %1").arg(date_of_day(*longest->over_day));
    const QString spoken = tr("%1. %2. %3. %4").arg(title, state, last, sentence(until));
    rows.push_back({erased    ? std::numeric_limits<int>::max()
                    : longest ? *longest->over_day
                              : 0,
                    {text(person.person.hex()), title, last, sentence(until), shape_of(kind), state,
                     !erased, spoken}});
  }
  std::stable_sort(rows.begin(), rows.end(),
                   [](const Row& a, const Row& b) { return a.over_day < b.over_day; });
  std::vector<QVariantList> out;
  for (auto& row : rows) out.push_back(std::move(row.values));
  leavers_.set(std::move(out));
  emit changed();
}

void RetentionViewModel::open(const QString& key) {
  bool good = false;
  const int number = key.toInt(&good);
  if (!good || number < 0 || number >= static_cast<int>(job::usual_retentions().size())) return;
  nothingWrong();
  open_ = static_cast<job::RecordClass>(number);
  emit openChanged();
}

QString RetentionViewModel::title() const {
  return sentence(words_of(open_));
}

QString RetentionViewModel::covers() const {
  return sentence(covers_of(open_));
}

QString RetentionViewModel::usual() const {
  return usual_words(open_);
}

QString RetentionViewModel::source() const {
  return usual_source(open_);
}

QString RetentionViewModel::years() const {
  const auto own = own_years(open_);
  return own ? QString::number(*own) : QString();
}

void RetentionViewModel::keep(const QString& years) {
  nothingWrong();
  const auto said = whole(QStringLiteral("years"), years, 1, job::most_kept_years);
  if (!said) return;
  if (own_years(open_) == *said) {
    emit kept();
    return;
  }
  keep_as(acts::SetRetention{open_, *said});
}

void RetentionViewModel::keepAsUsual() {
  nothingWrong();
  if (!own_years(open_)) {
    emit kept();
    return;
  }
  keep_as(acts::SetRetention{open_, {}});
}

QString RetentionViewModel::fewerWords(const QString& years) const {
  bool good = false;
  const int said = years.trimmed().toInt(&good);
  if (!good || said < 1 || !job::shorter_than_usual(open_, said)) return {};
  return tr("Fewer than the usual %1: a rule, a contract or a lawsuit may ask for longer.")
      .arg(years_of(*job::usual_retention(open_).years));
}

QString RetentionViewModel::notOverWords(const QString& person) const {
  const auto parsed = PersonId::parse(person.toStdString());
  if (!parsed || !loaded_) return {};
  QStringList left;
  for (const auto& record : kept_of(PersonId{*parsed}))
    if (record.over_day && *record.over_day > today())
      left << tr("%1 until %2").arg(words_of(record.record), date_of_day(*record.over_day));
  if (left.isEmpty()) return {};
  return tr("Not over yet, usually kept: %1.").arg(left.join(QStringLiteral(", ")));
}

}  // namespace jambline::screens
