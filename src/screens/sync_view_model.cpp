#include "screens/sync_view_model.h"

#include <QRegularExpression>

#include "screens/sync_hop.h"
#include "screens/text.h"
#include "screens/units.h"

namespace jambline::screens {

SyncViewModel::SyncViewModel(Session& session, QObject* parent)
    : QObject(parent), session_(session), rows_({"key", "title", "words", "shape"}, this) {
  connect(&session, &Session::snapshotChanged, this, &SyncViewModel::refresh);
  connect(&session, &Session::secondPassed, this, &SyncViewModel::refresh);
  refresh();
}

void SyncViewModel::use(exchange::Exchange* exchange) {
  exchange_ = exchange;
  take(exchange ? exchange->state() : exchange::SyncState{});
}

QString SyncViewModel::place_of(const Hash& file) const {
  if (!exchange_ || !hasHub()) return tr("on this device only");
  return place_words(exchange_->place_of_picture(file));
}

void SyncViewModel::serve(PictureStore& pictures) {
  connect(&pictures, &PictureStore::missed, this, [this](const Hash& file) {
    if (exchange_ && maySend()) exchange_->want(file);
  });
  connect(this, &SyncViewModel::picturesCame, &pictures, &PictureStore::look_again);
}

void SyncViewModel::publish(exchange::SyncState state) {
  QMetaObject::invokeMethod(
      this,
      [this, state = std::move(state)]() mutable {
        if (exchange_) take(std::move(state));
      },
      Qt::QueuedConnection);
}

void SyncViewModel::take(exchange::SyncState state) {
  const bool came = state.pictures_came > state_.pictures_came;
  const bool elsewhere = state.at != state_.at;
  state_ = std::move(state);
  refresh();
  emit changed();
  if (elsewhere) emit addressesChanged();
  if (came) emit picturesCame();
}

void SyncViewModel::refresh() {
  const std::int64_t now_ms = session_.now().wall_ms;
  const QString zone = session_.zone();
  const QString margin = margin_words(state_, now_ms, zone);
  SyncWords said = sync_words(state_, now_ms, zone);

  const auto own = session_.snapshot().own_entries;
  const auto away = state_.entries_to_send + state_.entries_refused;
  const auto on_hub = own > away ? own - away : 0;
  const bool waits = state_.entries_to_send + state_.pictures_to_send > 0;
  const bool refused = state_.entries_refused > 0;
  std::vector<QVariantList> rows;
  if (hasHub()) {
    rows.push_back({QStringLiteral("here"), tr("Here, not sent yet"), waiting_words(state_),
                    shape_of(waits ? StateKind::Waits : StateKind::None)});
    rows.push_back({QStringLiteral("hub"), tr("On the hub"),
                    tr("%1 of this device, signed for").arg(entries_words(on_hub)),
                    shape_of(on_hub > 0 ? StateKind::Done : StateKind::NotYet)});
    rows.push_back({QStringLiteral("refused"), tr("Refused"),
                    refused ? tr("%1: this device was ended before them. A manager looks at them.")
                                  .arg(entries_words(state_.entries_refused))
                            : tr("nothing"),
                    shape_of(refused ? StateKind::Disputed : StateKind::None)});
    if (state_.pictures_to_fetch > 0)
      rows.push_back({QStringLiteral("fetch"), tr("On the hub, not here yet"),
                      pictures_words(state_.pictures_to_fetch), shape_of(StateKind::Unseen)});
  }
  rows_.set(std::move(rows));

  std::vector<DetailRows::Row> facts;
  if (hasHub()) {
    facts.push_back({tr("Hub"), hubName()});
    facts.push_back({tr("Last answer"), state_.contact_ms
                                            ? time_words(*state_.contact_ms, now_ms, zone)
                                            : tr("none yet")});
    if (state_.again_ms && *state_.again_ms > now_ms && maySend() && !state_.paused)
      facts.push_back({tr("Next try"), time_words(*state_.again_ms, now_ms, zone)});
    if (state_.metered) facts.push_back({tr("Network"), tr("metered, as the system says")});
  }
  QString facts_said;
  for (const auto& [label, value] : facts) facts_said += label + value + QChar('\n');

  const bool other = margin != margin_ || said.head != said_.head ||
                     said.explain != said_.explain || said.shape != said_.shape;
  margin_ = margin;
  said_ = std::move(said);
  if (facts_said != facts_said_) {
    facts_said_ = facts_said;
    facts_.set(std::move(facts));
  }
  if (other) emit changed();
}

QString SyncViewModel::hubName() const {
  if (!state_.hub_name.empty()) return text(state_.hub_name);
  return state_.hub ? hex(state_.hub).left(8) : QString();
}

ErrorWords SyncViewModel::trouble() const {
  return state_.trouble && !state_.paused ? words_of(*state_.trouble) : ErrorWords{};
}

QString SyncViewModel::troubleDetails() const {
  if (!state_.trouble) return {};
  const Error& error = *state_.trouble;
  QStringList lines{text(code_name(error.code)), text(error.operation), text(error.subject)};
  for (const auto& [arg, value] : error.args)
    lines << QStringLiteral("%1: %2").arg(text(arg), text(value));
  lines.removeAll(QString());
  return lines.join(QChar('\n'));
}

QString SyncViewModel::addresses() const {
  QStringList out;
  for (const auto& one : state_.at) out << text(one.text());
  return out.join(QStringLiteral(", "));
}

QString SyncViewModel::digits() const {
  return text(state_.digits);
}

QString SyncViewModel::forkWords() const {
  if (contact() != Forked) return {};
  if (!state_.fork) return tr("Work since then is kept here.");
  return tr("Up to number %1 both are the same and whole. %2 were written here since and go out "
            "under the new name.")
      .arg(state_.fork->common_seq)
      .arg(entries_words(state_.fork->own_entries));
}

QString SyncViewModel::place_of(const entries::Entry& entry) const {
  const auto& devices = session_.snapshot().devices;
  for (const auto& device : devices) {
    if (device.device != entry.order.device) continue;
    if (!device.own) return tr("came from %1").arg(text(device.name));
    if (!exchange_ || !hasHub()) return tr("on this device only");
    return place_words(exchange_->place_of_entry(entry.order.seq));
  }
  return {};
}

SyncViewModel::Act SyncViewModel::mainAct() const {
  if (maySend()) return paused() ? GoOn : SendNow;
  if (mayAskAnew()) return AskAnew;
  if (contact() == Joining || contact() == TurnedAway) return Join;
  return Export;
}

QString SyncViewModel::mainText() const {
  switch (mainAct()) {
    case SendNow:
      return tr("Send now");
    case GoOn:
      return tr("Go on");
    case AskAnew:
      return tr("Ask for a new admission");
    case Join:
      return contact() == Joining ? tr("Compare the digits") : tr("Use a new code");
    case Export:
      return tr("Export to a folder");
  }
  return {};
}

QString SyncViewModel::mainSecond() const {
  if (mainAct() == Export) return tr("all that is here, as plain files");
  if (mainAct() == AskAnew) return tr("a manager compares six digits");
  if (mainAct() != SendNow) return {};
  const bool waits = state_.entries_to_send + state_.pictures_to_send > 0;
  return waits ? waiting_words(state_) : tr("and ask the hub what is new");
}

void SyncViewModel::sendNow() {
  if (exchange_ && maySend()) exchange_->send_now();
}

void SyncViewModel::pause(bool pause) {
  if (exchange_ && maySend()) exchange_->pause(pause);
}

void SyncViewModel::choosePictures(int when) {
  if (exchange_ && when >= Always && when <= Never)
    exchange_->set_pictures_when(static_cast<exchange::PicturesWhen>(when));
}

QString SyncViewModel::keepAddresses(const QString& typed) {
  static const QRegularExpression between(QStringLiteral("[\\s,;]+"));
  std::vector<sync::Address> at;
  for (const QString& one : typed.split(between, Qt::SkipEmptyParts)) {
    const auto address = sync::parse_address(one.toStdString());
    if (!address) return tr("This is no address: %1. It is like 192.168.1.20:8740.").arg(one);
    at.push_back(*address);
  }
  if (at.empty()) return tr("One address is needed.");
  if (at.size() > sync::most_addresses)
    return tr("%1 addresses at most.").arg(sync::most_addresses);
  if (exchange_) exchange_->set_addresses(std::move(at));
  return {};
}

void SyncViewModel::say(const Status& done) {
  notice_.clear();
  if (!done && done.error().code == Code::NotYet && done.error().subject == "restart") {
    emit restartWanted();
  } else if (!done) {
    const ErrorWords words = words_of(done.error());
    notice_ = tr("%1 %2").arg(words.what, words.todo);
  }
  emit changed();
}

void SyncViewModel::askForNewKey() {
  if (!exchange_ || !mayAskAnew()) return;
  exchange_->ask_for_new_key([self = QPointer(this), this](const Status& done) {
    hop_to_gui(self, [this, done] { say(done); });
  });
}

void SyncViewModel::giveUp() {
  if (exchange_) exchange_->give_up_joining();
}

}  // namespace jambline::screens
