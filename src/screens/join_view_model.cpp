#include "screens/join_view_model.h"

#include "screens/sync_hop.h"
#include "screens/text.h"

namespace jambline::screens {

JoinViewModel::JoinViewModel(Session& session, SyncViewModel& sync, device::Camera& camera,
                             QObject* parent)
    : QObject(parent), session_(session), sync_(sync), scan_(camera) {
  connect(&scan_, &JoinScanViewModel::read, this, &JoinViewModel::take_code);
  connect(&sync_, &SyncViewModel::changed, this, &JoinViewModel::follow);
  connect(&session_, &Session::snapshotChanged, this, &JoinViewModel::changed);
}

JoinViewModel::Step JoinViewModel::step() const {
  switch (sync_.contact()) {
    case SyncViewModel::Joining:
      return digits().isEmpty() ? Asking : Compare;
    case SyncViewModel::TurnedAway:
      if (!code_ && !given_up_) return TurnedAway;
      break;
    case SyncViewModel::Trying:
    case SyncViewModel::Good:
      if (joined_) return In;
      break;
    default:
      break;
  }
  if (asked_) return Asking;
  return code_ ? Ask : Read;
}

void JoinViewModel::follow() {
  if (joining()) {
    joined_ = true;
    asked_ = false;
    given_up_ = false;
    code_.reset();
  }
  emit changed();
}

void JoinViewModel::open() {
  joined_ = joining();
  if (!joining()) another();
  given_up_ = false;
  emit changed();
}

void JoinViewModel::another() {
  code_.reset();
  asked_ = false;
  typed_.clear();
  wrong_.clear();
  trouble_ = {};
  given_up_ = sync_.contact() == SyncViewModel::TurnedAway;
  emit changed();
}

void JoinViewModel::set_typed(const QString& typed) {
  if (typed == typed_) return;
  typed_ = typed;
  wrong_.clear();
  emit changed();
}

void JoinViewModel::take() {
  take_code(typed_.simplified().remove(QChar(' ')));
}

void JoinViewModel::take_code(const QString& text) {
  const auto code = sync::decode_invitation(text.toStdString());
  wrong_.clear();
  if (!code) {
    wrong_ = text.isEmpty() ? tr("The line below the square code is needed.")
                            : tr("This is no code of a hub. It begins with jambline:1");
  } else {
    code_ = *code;
    trouble_ = {};
  }
  emit changed();
}

QString JoinViewModel::hubWords() const {
  if (!code_) return {};
  QStringList at;
  for (const auto& one : code_->at) at << screens::text(one.text());
  return tr("Hub %1, at %2").arg(hex(code_->hub).left(8), at.join(tr(", ")));
}

QString JoinViewModel::whatHappens() const {
  if (!code_) return {};
  if (!code_->shop)
    return tr(
        "The shop on this device goes to the hub: people, cars, all that was written. "
        "Nothing leaves before you have compared six digits with the hub's screen.");
  return tr(
      "This device joins a shop that is there already. A manager compares six digits and "
      "lets it in.");
}

void JoinViewModel::ask() {
  if (!code_ || !possible() || asked_) return;
  asked_ = true;
  trouble_ = {};
  emit changed();
  sync_.exchange()->join(*code_, [self = QPointer(this), this](const Status& done) {
    hop_to_gui(self, [this, done] { say(done); });
  });
}

QString JoinViewModel::compareWords() const {
  return bringsShop()
             ? tr("The hub's own screen shows six digits. They have to be these.")
             : tr("The manager's list of devices shows six digits. They have to be these.");
}

bool JoinViewModel::mayConfirm() const {
  const auto* person = session_.shop().find(session_.person());
  return person && person->role == job::Role::Manager;
}

void JoinViewModel::confirm() {
  if (step() != Compare || !bringsShop() || !mayConfirm()) return;
  sync_.exchange()->confirm_hub(session_.person(),
                                [self = QPointer(this), this](const Status& done) {
                                  hop_to_gui(self, [this, done] { say(done); });
                                });
}

void JoinViewModel::giveUp() {
  joined_ = false;
  sync_.giveUp();
  another();
}

void JoinViewModel::say(const Status& done) {
  asked_ = false;
  if (!done && done.error().code == Code::NotYet && done.error().subject == "restart")
    emit restartWanted();
  else if (!done)
    trouble_ = words_of(done.error());
  emit changed();
}

}  // namespace jambline::screens
