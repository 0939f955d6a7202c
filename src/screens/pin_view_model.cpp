#include "screens/pin_view_model.h"

#include "screens/words.h"

namespace jambline::screens {

PinViewModel::PinViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      others_(new RowModel<PinRow>(
          {{"personId", [](const PinRow& row) { return QVariant(row.key); }},
           {"personName", [](const PinRow& row) { return QVariant(row.name); }}},
          this)) {
  connect(&session, &Session::pinAsked, this, [this](const QString& personId) {
    const auto parsed = PersonId::parse(personId.toStdString());
    asked_ = parsed ? PersonId{*parsed} : PersonId{};
    wrong_.clear();
    emit changed();
  });
  connect(&session, &Session::snapshotChanged, this, &PinViewModel::refresh);
  refresh();
}

void PinViewModel::refresh() {
  std::vector<PinRow> rows;
  const auto* me = session_.shop().find(session_.person());
  if (me && me->role == job::Role::Manager)
    for (const PersonId& person : session_.snapshot().with_pin)
      if (person != session_.person())
        rows.push_back({QString::fromStdString(person.hex()), session_.name_of(person)});
  others_->set_rows(std::move(rows));
  emit changed();
}

QString PinViewModel::who() const {
  return asked_ ? session_.name_of(asked_) : QString();
}

bool PinViewModel::hasPin() const {
  return session_.has_pin(session_.person());
}

bool PinViewModel::maySet() const {
  return session_.hasPerson() && !session_.readOnly();
}

void PinViewModel::enter(const QString& pin) {
  const PersonId person = asked_;
  if (!person) return;
  const auto answer = [this, person](const Result<seal::PinTry>& tried) {
    if (person != asked_) return;
    if (!tried) {
      emit session_.failed(tried.error());
      return;
    }
    if (tried->answer == seal::PinAnswer::Wrong || tried->answer == seal::PinAnswer::Wait) {
      refuse(*tried);
      return;
    }
    asked_ = {};
    wrong_.clear();
    emit changed();
    session_.choose_unlocked(person);
  };
  session_.engine().try_pin(person, pin.toStdString(), [this, answer](Result<seal::PinTry> tried) {
    QMetaObject::invokeMethod(
        this, [answer, given = std::move(tried)] { answer(given); }, Qt::QueuedConnection);
  });
}

void PinViewModel::refuse(const seal::PinTry& tried) {
  const auto seconds = static_cast<int>((tried.wait_ms + 999) / 1000);
  const QString wait = tr("Wait %1 s, then try again.").arg(seconds);
  if (tried.answer == seal::PinAnswer::Wait)
    wrong_ = tr("Too many tries. %1").arg(wait);
  else if (seconds > 0)
    wrong_ = tr("Not the PIN of %1. %2").arg(who(), wait);
  else
    wrong_ =
        tr("Not the PIN of %1. Try again; a manager can take a forgotten one away.").arg(who());
  emit changed();
}

void PinViewModel::giveUp() {
  if (!asked_) return;
  asked_ = {};
  wrong_.clear();
  emit changed();
}

void PinViewModel::set(const QString& pin) {
  if (session_.hasPerson()) change(session_.person(), pin);
}

void PinViewModel::takeAway(const QString& personId) {
  const auto parsed = PersonId::parse(personId.toStdString());
  if (parsed) change(PersonId{*parsed}, {});
}

void PinViewModel::change(const PersonId& person, const QString& pin) {
  session_.engine().set_pin(person, pin.toStdString(), [this](Status changed_pin) {
    QMetaObject::invokeMethod(
        this,
        [this, given = std::move(changed_pin)] {
          if (given)
            emit kept();
          else
            emit session_.failed(given.error());
        },
        Qt::QueuedConnection);
  });
}

}  // namespace jambline::screens
