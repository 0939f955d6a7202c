#include "screens/parts_view_model.h"

#include <algorithm>
#include <map>
#include <set>

#include "screens/cure_words.h"
#include "screens/stage_roles.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using folds::ReleaseState;
using folds::ReleaseView;
using PartWord = PartsViewModel::State;

PartWord state_of(const ReleaseView& release, bool clean, bool disputed) {
  if (disputed || release.disputed) return PartWord::Disputed;
  switch (release.state) {
    case ReleaseState::Offered:
      return PartWord::Offered;
    case ReleaseState::Taken:
      return PartWord::Taken;
    case ReleaseState::Returned:
      return PartWord::Returned;
    case ReleaseState::None:
      break;
  }
  return clean ? PartWord::Ready : PartWord::NotClean;
}

// Whoever has it is told here that it goes back.
QString redo_told(const folds::PanelView& panel, PartWord state, const QString& place) {
  if (panel.verdict != job::Verdict::Redo || state != PartWord::Taken) return place;
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
              "mine", "takers", "canSay", "file"},
             this),
      roles_({"key", "title"}, this),
      racks_({"key", "title"}, this),
      people_({"key", "title", "words", "chosen"}, this) {
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
  const QString rack = release.rack ? rack_name(*release.rack) : QString();
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
      return release.disputed ? tr("more than one has it, by his own word. Who has it?")
                              : tr("two verdicts stand, settle them first");
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
  std::vector<QVariantList> people;
  const auto job = session_.car() ? std::optional(session_.car()->job) : std::nullopt;
  if (job != job_) stop_return();
  job_ = job;
  take_new_picture();
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
                      can_offer, writable() && state == State::Offered, for_me(panel.release),
                      writable() && panel.release.disputed ? takers(panel.release, panel.plan.panel)
                                                           : QStringList(),
                      writable() && state == State::Taken,
                      state == State::Returned ? file_of(panel.release.picture) : QString()});
    }
  }
  for (const auto& rack : session_.shop().racks)
    racks.push_back({text(rack.rack.hex()), text(rack.name)});
  for (const auto& one : session_.shop().people)
    if (!one.left)
      people.push_back({text(one.person.hex()), session_.name_of(one.person),
                        sentence(words_of(one.role)), false});
  parts_.set(std::move(rows));
  racks_.set(std::move(racks));
  people_.set(std::move(people));
  emit changed();
}

PartsViewModel::State PartsViewModel::carState() const {
  const auto* car = session_.car();
  if (!car) return PartWord::NotClean;
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

bool PartsViewModel::carCanSay() const {
  return writable() && carState() == State::Taken;
}

QStringList PartsViewModel::carTakers() const {
  const auto* car = session_.car();
  return car && writable() && car->car_release.disputed ? takers(car->car_release, std::nullopt)
                                                        : QStringList();
}

QString PartsViewModel::carFile() const {
  const auto* car = session_.car();
  return car && carState() == State::Returned ? file_of(car->car_release.picture) : QString();
}

QString PartsViewModel::rack_name(const RackId& rack) const {
  for (const auto& one : session_.shop().racks)
    if (one.rack == rack) return text(one.name);
  return {};
}

// Who has it by his own word, and since when: by taking it, or by offering it.
QStringList PartsViewModel::takers(const ReleaseView& release,
                                   const std::optional<job::Panel>& panel) const {
  std::map<PersonId, std::int64_t> since_ms;
  std::set<ReleaseId> of_part;
  if (const auto& lines = session_.snapshot().timeline)
    for (const auto& entry : *lines) {
      const auto* offered = entry.payload.get_if<entries::ReleaseOffered>();
      const auto* answered = entry.payload.get_if<entries::ReleaseAnswered>();
      if (offered && offered->panel == panel) {
        of_part.insert(offered->release);
        since_ms[entry.person] = entry.wall_ms;
      }
      if (answered && answered->taken && of_part.count(answered->release) != 0)
        since_ms[answered->taker.value_or(entry.person)] = entry.wall_ms;
    }
  QStringList out;
  for (const auto& one : release.takers) {
    const auto since = since_ms.find(one);
    const QString name = session_.name_of(one);
    out << (since == since_ms.end()
                ? name
                : tr("%1 (%2)").arg(
                      name, time_words(since->second, session_.now().wall_ms, session_.zone())));
  }
  return out;
}

QString PartsViewModel::file_of(const std::optional<PictureId>& picture) const {
  const auto* known = picture ? session_.car()->find(*picture) : nullptr;
  return known ? text(known->facts.file.hex()) : QString();
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

// As the last one of this car went; of oneself nobody asks anything.
PartsViewModel::Way PartsViewModel::usual_way() const {
  const auto* car = session_.car();
  const auto* person = session_.shop().find(session_.person());
  const auto is_own = [&](job::Role role) { return person && person->role == role; };
  Way out{job::Role::BodyTechnician, std::nullopt};
  for (const auto& stage : car->stages)
    if (!stage.done && stage.stage >= job::Stage::Assemble && !is_own(usual_role(stage.stage))) {
      out.to = usual_role(stage.stage);
      break;
    }
  std::int64_t last_ms = 0;
  std::int64_t last_rack_ms = 0;
  for (const auto& panel : car->panels) {
    const ReleaseView& one = panel.release;
    if (one.to && one.wall_ms > last_ms && !is_own(*one.to)) {
      out.to = *one.to;
      last_ms = one.wall_ms;
    }
    if (one.rack && one.wall_ms > last_rack_ms) {
      out.rack = one.rack;
      last_rack_ms = one.wall_ms;
    }
  }
  const auto& racks = session_.shop().racks;
  if (!out.rack && !racks.empty()) out.rack = racks.front().rack;
  return out;
}

QString PartsViewModel::mainSecond() const {
  const auto* given = release(mainKey());
  if (mainAct() == Act::Take) return given ? place(*given, State::Offered) : QString();
  if (mainAct() == Act::None) return {};
  const Way way = usual_way();
  const QString rack = way.rack && !mainKey().isEmpty() ? rack_name(*way.rack) : QString();
  return rack.isEmpty() ? tr("to the %1").arg(words_of(way.to))
                        : tr("to the %1, at %2").arg(words_of(way.to), rack);
}

void PartsViewModel::act() {
  const QString key = mainKey();
  switch (mainAct()) {
    case Act::Take:
      return take(key);
    case Act::Offer: {
      const Way way = usual_way();
      return offer(key, way.to, key.isEmpty() ? std::nullopt : way.rack);
    }
    case Act::None:
      break;
  }
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

void PartsViewModel::startReturn(const QString& key) {
  returning_ = key;
  return_picture_.reset();
  pictures_before_.reset();
  emit changed();
}

void PartsViewModel::stopReturn() {
  if (!returning_) return;
  stop_return();
  emit changed();
}

void PartsViewModel::stop_return() {
  returning_.reset();
  return_picture_.reset();
  pictures_before_.reset();
}

void PartsViewModel::willTakePicture() {
  pictures_before_.emplace();
  if (const auto* car = session_.car())
    for (const auto& one : car->pictures) pictures_before_->insert(one.picture);
}

void PartsViewModel::take_new_picture() {
  if (!pictures_before_ || !returning_ || !session_.car()) return;
  for (const auto& one : session_.car()->pictures) {
    if (pictures_before_->count(one.picture) > 0) continue;
    return_picture_ = one.picture;
    pictures_before_.reset();
    return;
  }
}

void PartsViewModel::dropPicture() {
  return_picture_.reset();
  emit changed();
}

QString PartsViewModel::returnFile() const {
  return session_.car() ? file_of(return_picture_) : QString();
}

void PartsViewModel::sendBack(const QString& key, const QString& reason) {
  const auto* given = release(key);
  if (!given) return;
  const auto picture = returning_ == key ? return_picture_ : std::nullopt;
  session_.post(
      acts::ReturnRelease{session_.car()->job, given->release, reason.toStdString(), picture},
      [this](const Result<engine::Wrote>& wrote) {
        if (wrote) stopReturn();
      });
}

void PartsViewModel::settle(const QString& key, int taker) {
  const auto* given = release(key);
  if (!given || taker < 0 || taker >= static_cast<int>(given->takers.size())) return;
  session_.post(acts::SettleRelease{session_.car()->job, given->release,
                                    given->takers[static_cast<std::size_t>(taker)]});
}

void PartsViewModel::hasIt(const QString& key, const QString& person) {
  const auto* given = release(key);
  const auto who = PersonId::parse(person.toStdString());
  if (given && who)
    session_.post(acts::SettleRelease{session_.car()->job, given->release, PersonId{*who}});
}

void PartsViewModel::addRack(const QString& name) {
  if (!name.trimmed().isEmpty()) session_.post(acts::AddRack{name.trimmed().toStdString()});
}

}  // namespace jambline::screens
