#include "screens/booth_view_model.h"

#include <algorithm>
#include <array>

#include "base/is_one.h"
#include "base/spans.h"
#include "screens/air_units.h"
#include "screens/correct_words.h"
#include "screens/rate_units.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::BoothEvent;
using job::BoothKind;

constexpr auto event_icons =
    std::to_array<const char*>({"filter", "hose", "suit", "airline", "wash"});
static_assert(event_icons.size() == enum_words<BoothEvent>.size());

}  // namespace

QString ago_words(std::int64_t then_ms, std::int64_t now_ms) {
  const std::int64_t min = (now_ms - then_ms) / minute_ms;
  const std::int64_t hours = min / 60;
  const std::int64_t days = hours / 24;
  if (min < 1) return BoothViewModel::tr("just now");
  if (hours < 1) return BoothViewModel::tr("%1 min ago").arg(min);
  if (hours < 36) return BoothViewModel::tr("%1 h ago").arg(hours);
  if (days < 60) return BoothViewModel::tr("%1 days ago").arg(std::max<std::int64_t>(days, 2));
  return BoothViewModel::tr("%1 weeks ago").arg(days / 7);
}

BoothViewModel::BoothViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      booths_({"key",        "title",      "kindWords",  "ages",          "filtersStillIn",
               "stateShape", "stateWords", "stateLine",  "countdown",     "live",
               "sprayed",    "filter",     "filterNote", "filterMissing", "filterOut",
               "filterSum",  "smoke",      "smokeNote",  "smokeMissing",  "smokeOut",
               "smokeSum",   "air",        "airNote",    "airMissing",    "airOut",
               "airSum"},
              this),
      events_({"key", "title", "icon", "note"}, this),
      sprayed_in_({"key", "title", "chosen"}, this),
      sum_(this) {
  connect(&session, &Session::snapshotChanged, this, &BoothViewModel::refresh);
  connect(&session, &Session::secondPassed, this, &BoothViewModel::second_passed);
  refresh();
}

int BoothViewModel::kindCount() const {
  return static_cast<int>(enum_words<BoothKind>.size());
}

int BoothViewModel::eventCount() const {
  return static_cast<int>(enum_words<BoothEvent>.size());
}

const folds::BoothEventView* BoothViewModel::newest(const BoothId& booth, BoothEvent what) const {
  const folds::BoothEventView* out = nullptr;
  for (const auto& one : session_.shop().booth_events)
    if (one.booth == booth && one.what == what && (!out || one.happened_ms >= out->happened_ms))
      out = &one;
  return out;
}

bool BoothViewModel::filters_still_in(const BoothId& booth) const {
  const auto* change = newest(booth, BoothEvent::FiltersChanged);
  return change && change->old_filters_out == false;
}

QVariantList BoothViewModel::row_of(const folds::BoothView& booth) {
  const std::int64_t now_ms = session_.now().wall_ms;
  QStringList ages;
  for (int i = 0; i < eventCount(); ++i) {
    const auto* one = newest(booth.booth, static_cast<BoothEvent>(i));
    ages << (one ? ago_words(one->happened_ms, now_ms) : tr("not yet"));
  }
  const BoothSaid said = say_booth(session_, booth);
  const bool live = said.state.word != folds::BoothWordNow::Idle;
  counts_ = counts_ || live;
  QVariantList row{hex(booth.booth),
                   QString::fromStdString(booth.name),
                   words_of(booth.kind),
                   ages,
                   filters_still_in(booth.booth),
                   shape_of(said.shape),
                   said.word,
                   said.line,
                   said.countdown,
                   live,
                   job::may_be_sprayed_in(booth.kind)};
  for (const BoothFigure& figure :
       {say_filter(session_, booth), say_smoke_test(session_, booth), say_airflow(session_, booth)})
    row << figure.value << figure.note << figure.missing << figure.out << figure.has_sum;
  return row;
}

QString BoothViewModel::dueBooth() const {
  return due_.what == BoothDueKind::Nothing ? QString() : hex(due_.booth);
}

void BoothViewModel::second_passed() {
  if (counts_ || session_.now().wall_ms / minute_ms != minute_) refresh();
}

void BoothViewModel::openSum(const QString& key, Figure figure) {
  const auto id = parsed<BoothId>(key);
  const auto* booth = id ? session_.shop().find(*id) : nullptr;
  const auto* air = id ? session_.shop().air.find(*id) : nullptr;
  if (!booth || !air) return;
  const QString name = QString::fromStdString(booth->name);
  const auto show = [&](const QString& title, const BoothFigure& said, const trade::Basis& basis) {
    sum_.show(title, said.value, basis, session_.units(), said.note);
    emit sumOpened();
  };
  if (figure == Figure::Filter) {
    if (const auto trend = folds::filter_trend(session_.shop(), *air))
      show(tr("%1: filter").arg(name), say_filter(session_, *booth), trend->basis);
  } else if (figure == Figure::Smoke) {
    if (const auto needed = folds::clearance_needed(*booth, air, session_.now()))
      show(tr("%1: time to wait").arg(name),
           {minutes_seconds(needed->minutes), rests_words(session_, *booth, *needed), false, false,
            true},
           basis_of(*needed));
  } else if (const auto compared = folds::booth_airflow(*air)) {
    show(tr("%1: air velocity").arg(name), say_airflow(session_, *booth), compared->basis);
  }
}

void BoothViewModel::refresh() {
  std::vector<QVariantList> rows, places;
  const auto* car = session_.car();
  minute_ = session_.now().wall_ms / minute_ms;
  counts_ = false;
  for (const auto& booth : session_.shop().booths) {
    rows.push_back(row_of(booth));
    places.push_back(
        {hex(booth.booth), QString::fromStdString(booth.name), car && car->booth == booth.booth});
  }
  due_ = booth_due(session_);
  booths_.set(std::move(rows));
  sprayed_in_.set(car ? std::move(places) : std::vector<QVariantList>{});
  show_events();
  emit changed();
  emit draftChanged();
}

void BoothViewModel::show_events() {
  std::vector<QVariantList> rows;
  const std::int64_t now_ms = session_.now().wall_ms;
  const auto& all = session_.shop().booth_events;  // by when they happened
  for (auto one = all.rbegin(); one != all.rend(); ++one) {
    if (!open_ || one->booth != open_) continue;
    const bool lately = now_ms - one->happened_ms < 7LL * 24 * 60 * minute_ms;
    const QString when = lately ? time_words(one->happened_ms, now_ms, session_.zone())
                                : date_words(one->happened_ms, now_ms, session_.zone());
    QString note = tr("%1, %2").arg(when, session_.name_of(one->by));
    if (one->old_filters_out)
      note = *one->old_filters_out ? tr("%1, old filters are out").arg(note)
                                   : tr("%1, old filters were still in").arg(note);
    rows.push_back({hex(one->event), sentence(words_of(one->what)),
                    eventIcon(static_cast<int>(one->what)), note});
  }
  events_.set(std::move(rows));
  emit openChanged();
}

QString BoothViewModel::kindWords(int kind) const {
  return is_one<BoothKind>(kind) ? sentence(words_of(static_cast<BoothKind>(kind))) : QString();
}

QString BoothViewModel::eventWords(int event) const {
  return is_one<BoothEvent>(event) ? sentence(words_of(static_cast<BoothEvent>(event))) : QString();
}

QString BoothViewModel::eventIcon(int event) const {
  return is_one<BoothEvent>(event)
             ? QString::fromLatin1(event_icons[static_cast<std::size_t>(event)])
             : QString();
}

QString BoothViewModel::openName() const {
  const auto* booth = session_.shop().find(open_);
  return booth ? QString::fromStdString(booth->name) : QString();
}

int BoothViewModel::openKind() const {
  const auto* booth = session_.shop().find(open_);
  return booth ? static_cast<int>(booth->kind) : 0;
}

void BoothViewModel::openBooth(const QString& booth) {
  open_ = parsed<BoothId>(booth).value_or(BoothId{});
  show_events();
}

void BoothViewModel::keepBooth(const QString& name, int kind) {
  if (!is_one<BoothKind>(kind) || name.trimmed().isEmpty()) return;
  const std::string text = name.trimmed().toStdString();
  const auto what = static_cast<BoothKind>(kind);
  const auto then = [this](const Result<engine::Wrote>& wrote) {
    if (wrote) emit boothKept();
  };
  if (const auto* booth = session_.shop().find(open_)) {
    if (booth->name == text && booth->kind == what)
      emit boothKept();
    else
      session_.post(acts::ChangeBooth{open_, text, what}, then);
  } else {
    session_.post(acts::AddBooth{text, what}, then);
  }
}

void BoothViewModel::startEvent(const QString& booth, int event) {
  const auto id = parsed<BoothId>(booth);
  if (!id || !is_one<BoothEvent>(event)) return;
  draft_ = {};
  draft_.booth = *id;
  draft_.what = static_cast<BoothEvent>(event);
  emit draftChanged();
}

void BoothViewModel::startCorrecting(const QString& event) {
  const auto id = parsed<BoothEventId>(event);
  const auto* found = id ? session_.shop().find(*id) : nullptr;
  if (!found) return;
  draft_ = {found->booth,           found->what, found->happened_ms, found->event,
            found->old_filters_out, {}};
  emit draftChanged();
}

void BoothViewModel::changeBooth(const QString& booth) {
  const auto id = parsed<BoothId>(booth);
  if (!id) return;
  draft_.booth = *id;
  emit draftChanged();
}

void BoothViewModel::changeWhat(int event) {
  if (!is_one<BoothEvent>(event)) return;
  draft_.what = static_cast<BoothEvent>(event);
  emit draftChanged();
}

QString BoothViewModel::draftTitle() const {
  const auto* booth = session_.shop().find(draft_.booth);
  return booth ? tr("%1: %2").arg(QString::fromStdString(booth->name), words_of(draft_.what))
               : sentence(words_of(draft_.what));
}

QString BoothViewModel::draftBooth() const {
  return hex(draft_.booth);
}

std::int64_t BoothViewModel::draft_ms() const {
  return draft_.happened_ms.value_or(session_.now().wall_ms);
}

QString BoothViewModel::whenDay() const {
  return day_words(draft_ms(), session_.zone());
}

QString BoothViewModel::whenTime() const {
  return clock_words(draft_ms(), session_.zone());
}

void BoothViewModel::shift(int minutes) {
  const std::int64_t moved_ms = draft_ms() + minutes * minute_ms;
  draft_.refused = moved_ms > session_.now().wall_ms
                       ? tr("That time is still to come. The latest is now.")
                       : QString();
  if (draft_.refused.isEmpty()) draft_.happened_ms = moved_ms;
  emit draftChanged();
}

void BoothViewModel::sayNow() {
  draft_.happened_ms.reset();
  if (draft_.corrects) draft_.happened_ms = session_.now().wall_ms;
  draft_.refused.clear();
  emit draftChanged();
}

void BoothViewModel::keepEvent() {
  keep(asksFilters() ? draft_.old_filters_out : std::nullopt);
}

void BoothViewModel::keepFilterChange(bool old_filters_out) {
  if (asksFilters()) keep(old_filters_out);
}

void BoothViewModel::keep(std::optional<bool> old_filters_out) {
  if (!mayKeep()) return;
  const auto then = [this](const Result<engine::Wrote>& wrote) {
    if (wrote) emit eventKept();
  };
  if (draft_.corrects)
    session_.post(acts::CorrectBoothEvent{*draft_.corrects, draft_.booth, draft_.what,
                                          draft_.happened_ms, old_filters_out},
                  then);
  else
    session_.post(
        acts::LogBoothEvent{draft_.booth, draft_.what, draft_.happened_ms, old_filters_out}, then);
}

void BoothViewModel::filtersOut(const QString& booth) {
  const auto id = parsed<BoothId>(booth);
  const auto* change = id ? newest(*id, BoothEvent::FiltersChanged) : nullptr;
  if (!change || !mayKeep()) return;
  session_.post(acts::CorrectBoothEvent{change->event, change->booth, change->what, {}, true});
}

bool BoothViewModel::spraysCar() const {
  const auto* car = session_.car();
  return car && car->unknown_entries == 0 && !session_.readOnly() && boothCount() > 0;
}

QString BoothViewModel::sprayedWords() const {
  const auto* car = session_.car();
  const auto* booth = car && car->booth ? session_.shop().find(*car->booth) : nullptr;
  if (booth) return tr("Sprayed in %1").arg(QString::fromStdString(booth->name));
  return boothCount() == 1 ? tr("Sprayed in this booth?") : tr("Sprayed in which booth?");
}

void BoothViewModel::saySprayedIn(const QString& booth) {
  const auto id = parsed<BoothId>(booth);
  const auto* car = session_.car();
  if (!id || !car || !spraysCar()) return;
  if (car->booth == *id && car->booth_heads.size() == 1) return;
  session_.post(acts::SayBooth{car->job, *id});
}

}  // namespace jambline::screens
