#include "screens/parts_view_model.h"

#include <algorithm>

#include "screens/cure_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using folds::ReleaseState;
using folds::ReleaseView;
using State = PartsViewModel::State;

QString text(std::string_view words) {
  return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

State state_of(const ReleaseView& release, bool clean, bool disputed) {
  if (disputed || release.disputed) return State::Disputed;
  switch (release.state) {
    case ReleaseState::Offered:
      return State::Offered;
    case ReleaseState::Taken:
      return State::Taken;
    case ReleaseState::Returned:
      return State::Returned;
    case ReleaseState::None:
      break;
  }
  return clean ? State::Ready : State::NotClean;
}

// Whoever has it is told here that it goes back.
QString redo_told(const folds::PanelView& panel, State state, const QString& place) {
  if (panel.verdict != job::Verdict::Redo || state != State::Taken) return place;
  return PartsViewModel::tr("%1: it goes to redo").arg(place);
}

bool is_clean(const folds::PanelView& panel) {
  return !panel.disputed && panel.verdict == job::Verdict::Clean;
}
}  // namespace

PartsViewModel::PartsViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      parts_({"key", "title", "verdict", "place", "state", "stateWords", "canOffer", "canTake",
              "mine"},
             this),
      roles_({"key", "title"}, this),
      racks_({"key", "title"}, this) {
  std::vector<QVariantList> roles;
  for (std::size_t i = 0; i < enum_words<job::Role>.size(); ++i)
    roles.push_back(
        {text(enum_words<job::Role>[i]), sentence(words_of(static_cast<job::Role>(i)))});
  roles_.set(std::move(roles));
  connect(&session, &Session::snapshotChanged, this, &PartsViewModel::refresh);
  refresh();
}

void PartsViewModel::follow_cure(CureWork& cure) {
  cure_ = &cure;
  connect(&cure, &CureWork::changed, this, &PartsViewModel::refresh);
  refresh();
}

QString PartsViewModel::not_handled(job::Panel panel) const {
  if (!cure_) return {};
  const auto at = folds::standing_of(cure_->cures(), panel, trade::CureMilestone::Handle);
  if (!at.standing || at.standing->word == trade::CureWord::Reached) return {};
  const CureSeen seen{cure_->at(), session_.zone(), session_.units()};
  return tr("hang it, do not stack it: handle %1")
      .arg(standing_words(*at.group, *at.standing, seen).words);
}

QStringList PartsViewModel::reasons() const {
  return {tr("still soft"),         tr("edge not clean"),     tr("scratched"),
          tr("back side not done"), tr("not the right part"), tr("no room for it")};
}

bool PartsViewModel::writable() const {
  const auto* car = session_.car();
  return car && !session_.readOnly() && car->unknown_entries == 0 && !car->delivered_ms;
}

bool PartsViewModel::for_me(const ReleaseView& release) const {
  if (release.state != ReleaseState::Offered || release.disputed || !session_.hasPerson())
    return false;
  const auto* person = session_.shop().find(session_.person());
  return person && (!release.to || person->role == *release.to);
}

QString PartsViewModel::place(const ReleaseView& release, State state) const {
  const QString giver = session_.name_of(release.giver);
  QString rack;
  if (release.rack) {
    for (const auto& one : session_.shop().racks)
      if (one.rack == *release.rack) rack = text(one.name);
  }
  switch (state) {
    case State::Offered:
      if (!rack.isEmpty() && release.to)
        return tr("%1, for the %2, from %3").arg(rack, words_of(*release.to), giver);
      if (!rack.isEmpty()) return tr("%1, from %2").arg(rack, giver);
      if (release.to) return tr("for the %1, from %2").arg(words_of(*release.to), giver);
      return tr("from %1").arg(giver);
    case State::Taken:
      return release.taker ? tr("with %1").arg(session_.name_of(*release.taker)) : tr("taken");
    case State::Returned:
      return tr("%1, with %2").arg(text(release.reason), giver);
    case State::Disputed:
      return tr("two answers stand, settle it first");
    case State::Ready:
      return tr("not on a rack yet");
    case State::NotClean:
      return tr("not clean yet");
  }
  return {};
}

void PartsViewModel::refresh() {
  std::vector<QVariantList> rows;
  std::vector<QVariantList> racks;
  if (const auto* car = session_.car()) {
    for (const auto& panel : car->panels) {
      if (panel.plan.on_car && panel.release.state == ReleaseState::None) continue;
      const bool clean = is_clean(panel);
      const State state = state_of(panel.release, clean, panel.disputed);
      const QString state_words = state == State::Offered    ? tr("offered")
                                  : state == State::Taken    ? tr("taken")
                                  : state == State::Returned ? tr("sent back")
                                  : state == State::Disputed ? tr("disputed")
                                  : state == State::Ready    ? tr("clean")
                                                             : tr("waits");
      const bool can_offer =
          writable() && clean && (state == State::Ready || state == State::Returned);
      QStringList where{redo_told(panel, state, place(panel.release, state))};
      if (const QString soft = not_handled(panel.plan.panel); !soft.isEmpty()) where << soft;
      rows.push_back({text(word_of(panel.plan.panel)),
                      sentence(words_of(panel.plan.panel, car->body)), words_of(panel.verdict),
                      where.join(QStringLiteral(" \u00b7 ")), static_cast<int>(state), state_words,
                      can_offer, writable() && state == State::Offered, for_me(panel.release)});
    }
  }
  for (const auto& rack : session_.shop().racks)
    racks.push_back({text(rack.rack.hex()), text(rack.name)});
  parts_.set(std::move(rows));
  racks_.set(std::move(racks));
  emit changed();
}

State PartsViewModel::carState() const {
  const auto* car = session_.car();
  if (!car) return State::NotClean;
  const bool clean = std::all_of(car->panels.begin(), car->panels.end(), is_clean);
  const bool disputed = std::any_of(car->panels.begin(), car->panels.end(),
                                    [](const auto& panel) { return panel.disputed; });
  return state_of(car->car_release, clean, disputed);
}

QString PartsViewModel::carPlace() const {
  const auto* car = session_.car();
  if (!car) return {};
  const State state = carState();
  if (state == State::Ready) return tr("all panels are clean");
  if (state == State::NotClean) {
    const auto open = std::count_if(car->panels.begin(), car->panels.end(),
                                    [](const auto& panel) { return !is_clean(panel); });
    return open == 1 ? tr("1 panel not clean") : tr("%1 panels not clean").arg(open);
  }
  return place(car->car_release, state);
}

bool PartsViewModel::carCanOffer() const {
  const State state = carState();
  return writable() &&
         (state == State::Ready || state == State::NotClean || state == State::Returned);
}

bool PartsViewModel::carCanTake() const {
  return writable() && carState() == State::Offered;
}

const folds::PanelView* PartsViewModel::first(bool to_take) const {
  if (!writable()) return nullptr;
  for (const auto& panel : session_.car()->panels) {
    if (to_take && for_me(panel.release)) return &panel;
    const State state = state_of(panel.release, is_clean(panel), panel.disputed);
    if (!to_take && !panel.plan.on_car && state == State::Ready) return &panel;
  }
  return nullptr;
}

PartsViewModel::Act PartsViewModel::mainAct() const {
  if (!writable()) return Act::None;
  if (first(true) || for_me(session_.car()->car_release)) return Act::Take;
  return first(false) || carState() == State::Ready ? Act::Offer : Act::None;
}

QString PartsViewModel::mainKey() const {
  const auto* panel = mainAct() == Act::Take ? first(true) : first(false);
  return panel ? text(word_of(panel->plan.panel)) : QString();
}

QString PartsViewModel::mainText() const {
  switch (mainAct()) {
    case Act::Take:
      return tr("Take the %1").arg(name_of(mainKey()));
    case Act::Offer:
      return tr("Offer the %1").arg(name_of(mainKey()));
    case Act::None:
      break;
  }
  return {};
}

QString PartsViewModel::mainSecond() const {
  const auto* given = release(mainKey());
  return mainAct() == Act::Take && given ? place(*given, State::Offered) : QString();
}

QString PartsViewModel::name_of(const QString& key) const {
  if (key.isEmpty()) return tr("whole car");
  const auto panel = from_word<job::Panel>(key.toStdString());
  const auto* car = session_.car();
  return panel && car ? words_of(*panel, car->body) : QString();
}

QString PartsViewModel::titleOf(const QString& key) const {
  return sentence(name_of(key));
}

const ReleaseView* PartsViewModel::release(const QString& key) const {
  const auto* car = session_.car();
  if (!car) return nullptr;
  if (key.isEmpty()) return &car->car_release;
  const auto panel = from_word<job::Panel>(key.toStdString());
  const auto* found = panel ? car->find(*panel) : nullptr;
  return found ? &found->release : nullptr;
}

void PartsViewModel::offer(const QString& key, std::optional<job::Role> to,
                           std::optional<RackId> rack) {
  if (!session_.car()) return;
  session_.post(
      acts::OfferRelease{session_.car()->job, from_word<job::Panel>(key.toStdString()), to, rack});
}

void PartsViewModel::offerTo(const QString& key, const QString& role) {
  if (const auto to = from_word<job::Role>(role.toStdString())) offer(key, to, std::nullopt);
}

void PartsViewModel::hang(const QString& key, const QString& rack) {
  if (const auto place = RackId::parse(rack.toStdString())) offer(key, std::nullopt, place);
}

void PartsViewModel::take(const QString& key) {
  const auto* given = release(key);
  if (given) session_.post(acts::TakeRelease{session_.car()->job, given->release});
}

void PartsViewModel::sendBack(const QString& key, const QString& reason) {
  const auto* given = release(key);
  if (given)
    session_.post(acts::ReturnRelease{session_.car()->job, given->release, reason.toStdString()});
}

void PartsViewModel::addRack(const QString& name) {
  if (!name.trimmed().isEmpty()) session_.post(acts::AddRack{name.trimmed().toStdString()});
}

}  // namespace jambline::screens
