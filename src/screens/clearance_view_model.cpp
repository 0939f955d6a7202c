#include "screens/clearance_view_model.h"

#include <algorithm>
#include <cmath>

#include "screens/air_units.h"
#include "screens/caution_words.h"
#include "screens/correct_words.h"

namespace jambline::screens {

namespace {
using folds::BoothWordNow;
using ClearanceState = ClearanceViewModel::State;

static_assert(
    static_cast<int>(ClearanceState::Nothing) == static_cast<int>(BoothWordNow::Idle) &&
    static_cast<int>(ClearanceState::Spraying) == static_cast<int>(BoothWordNow::Spraying) &&
    static_cast<int>(ClearanceState::Counting) == static_cast<int>(BoothWordNow::Counting) &&
    static_cast<int>(ClearanceState::NotCounting) == static_cast<int>(BoothWordNow::NotCounting) &&
    static_cast<int>(ClearanceState::NoTime) == static_cast<int>(BoothWordNow::NoTime) &&
    static_cast<int>(ClearanceState::TimeOver) == static_cast<int>(BoothWordNow::TimeOver));

// More than four digits have no room at their size.
bool counts_minutes(double left_s) {
  return std::ceil(left_s - 1e-6) >= 6000;
}

// Since the gun was picked up: 12:05, from an hour on 1:02:05.
QString up_words(std::int64_t ms) {
  const std::int64_t seconds = ms / 1000;
  if (seconds >= 3600) return running_words(ms);
  return QStringLiteral("%1:%2").arg(seconds / 60).arg(seconds % 60, 2, 10, QChar('0'));
}
}  // namespace

ClearanceViewModel::ClearanceViewModel(Session& session, const device::Knocks& knocks,
                                       QObject* parent)
    : QObject(parent),
      session_(session),
      knocks_(knocks),
      sprayers_({"key", "person", "words", "digits", "mine"}, this),
      sum_(this) {
  connect(&session, &Session::snapshotChanged, this, &ClearanceViewModel::refresh);
  connect(&session, &Session::secondPassed, this, [this] {
    if (said_.state.word != BoothWordNow::Idle) refresh();
  });
}

const folds::BoothView* ClearanceViewModel::view() const {
  return booth_ ? session_.shop().find(booth_) : nullptr;
}

QString ClearanceViewModel::booth() const {
  return booth_ ? QString::fromStdString(booth_.hex()) : QString();
}

QString ClearanceViewModel::title() const {
  const auto* one = view();
  return one ? QString::fromStdString(one->name) : QString();
}

QString ClearanceViewModel::note() const {
  const auto* one = view();
  if (!one) return {};
  const auto* air = session_.shop().air.find(booth_);
  if (!air || !air->facts.volume_m3) return words_of(one->kind);
  return tr("%1 · %2").arg(words_of(one->kind),
                           air_words(AirQuantity::Volume, *air->facts.volume_m3, session_.units()));
}

void ClearanceViewModel::open(const QString& key) {
  const auto id = BoothId::parse(key.toStdString());
  booth_ = id ? BoothId{*id} : BoothId{};
  sound_ = words_of(knocks_.answers() ? Caution::ProgramRuns : Caution::NoSound);
  refresh();
}

void ClearanceViewModel::refresh() {
  const auto* one = view();
  if (!one) {
    said_ = {};
    sprayers_.set({});
    mine_ = false;
    emit changed();
    return;
  }
  const Moment now = session_.now();
  said_ = say_booth(session_, *one);
  rests_ = said_.state.needed ? rests_words(session_, *one, *said_.state.needed) : QString();
  std::vector<QVariantList> rows;
  mine_ = false;
  for (const auto& up : said_.state.up) {
    const bool own = session_.hasPerson() && up.by == session_.person() &&
                     session_.started_here(up.at.order.device);
    mine_ = mine_ || own;
    rows.push_back({up.spray ? QString::fromStdString(up.spray->hex()) : QString(),
                    session_.name_of(up.by), sprayer_words(session_, up),
                    up_words(folds::elapsed_ms(up.at, now)), own});
  }
  sprayers_.set(std::move(rows));
  emit changed();
}

QString ClearanceViewModel::digits() const {
  switch (state()) {
    case State::Spraying:
      return sprayers_.rowCount() > 0 ? sprayers_.value(0, "digits").toString() : QString();
    case State::Counting:
    case State::NotCounting:
      return counts_minutes(said_.state.left_s)
                 ? QString::number(static_cast<int>(std::ceil(said_.state.left_s / 60 - 1e-9)))
                 : count_words(said_.state.left_s);
    case State::TimeOver:
      return QStringLiteral("0:00");
    default:
      return {};
  }
}

QString ClearanceViewModel::digitsUnit() const {
  const bool waits = state() == State::Counting || state() == State::NotCounting;
  return waits && counts_minutes(said_.state.left_s) ? tr("minutes") : QString();
}

QString ClearanceViewModel::spokenDigits() const {
  const auto minutes = static_cast<int>(std::ceil(said_.state.left_s / 60 - 1e-9));
  switch (state()) {
    case State::Counting:
      return minutes <= 1 ? tr("%1, under a minute left").arg(title())
                          : tr("%1, %2 minutes left").arg(title()).arg(minutes);
    case State::NotCounting:
      return tr("%1, nothing counts, %2 minutes to wait").arg(title()).arg(minutes);
    case State::TimeOver:
      return tr("%1, the time is over").arg(title());
    default:
      return title();
  }
}

bool ClearanceViewModel::turned() const {
  return lastSeconds() && static_cast<long long>(std::ceil(said_.state.left_s)) % 2 == 1;
}

QString ClearanceViewModel::whyWords() const {
  switch (state()) {
    case State::Counting:
      return words_of(Caution::StayOutUnless);
    case State::TimeOver:
      return words_of(Caution::LocalRule);
    default:
      return said_.line;
  }
}

QString ClearanceViewModel::clearsAt() const {
  return state() == State::Counting ? clock_words(said_.clears_ms, session_.zone()) : QString();
}

double ClearanceViewModel::gone() const {
  if (state() == State::TimeOver) return 1;
  if (state() != State::Counting || !said_.state.needed) return 0;
  return std::clamp(1 - said_.state.left_s / (said_.state.needed->minutes * 60), 0.0, 1.0);
}

QString ClearanceViewModel::restartWords() const {
  const int restarts = said_.state.restarts;
  if (state() == State::Spraying || restarts == 0) return {};
  return restarts == 1 ? tr("begun again once") : tr("begun again %1 times").arg(restarts);
}

bool ClearanceViewModel::wasteShown() const {
  return state() != State::Nothing && state() != State::Spraying && said_.state.last_down &&
         waste_seen_.count(said_.state.last_down->entry) == 0;
}

QString ClearanceViewModel::mainSecond() const {
  if (!mayAct()) return tr("say who you are first");
  switch (state()) {
    case State::Counting:
      return tr("when the time is over, %1").arg(clearsAt());
    case State::NotCounting:
      return tr("first fresh air, doors shut");
    case State::NoTime:
      return tr("first a smoke test or a fixed time");
    default:
      return {};
  }
}

void ClearanceViewModel::gunDown() {
  if (!mine_) return;
  session_.post(acts::GunDown{booth_, {}});
}

void ClearanceViewModel::gunDownOf(const QString& spray) {
  const auto id = SprayId::parse(spray.toStdString());
  if (!id || !mayAct()) return;
  session_.post(acts::GunDown{booth_, SprayId{*id}});
}

void ClearanceViewModel::say(job::BoothWord what) {
  if (!view() || !mayAct()) return;
  session_.post(acts::SayExhaust{booth_, what});
}

void ClearanceViewModel::logOver() {
  if (!view() || !mayAct()) return;
  session_.post(acts::LogClearanceOver{booth_}, [this](const Result<engine::Wrote>& wrote) {
    if (wrote) emit logged();
  });
}

void ClearanceViewModel::wasteSeen() {
  if (!said_.state.last_down) return;
  waste_seen_.insert(said_.state.last_down->entry);
  emit changed();
}

void ClearanceViewModel::openSum() {
  const auto* one = view();
  if (!one || !said_.state.needed) return;
  sum_.show(tr("%1: time to wait").arg(title()), minutes_seconds(said_.state.needed->minutes),
            basis_of(*said_.state.needed), session_.units(), rests_);
  emit sumOpened();
}

}  // namespace jambline::screens
