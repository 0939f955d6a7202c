#include "screens/session.h"

#include <QPointer>
#include <QTimeZone>
#include <algorithm>
#include <utility>

#include "screens/words.h"

namespace jambline::screens {

namespace {
std::shared_ptr<const engine::Snapshot> whole(std::shared_ptr<const engine::Snapshot> given) {
  if (given && given->shop && given->floor) return given;
  auto filled =
      given ? std::make_shared<engine::Snapshot>(*given) : std::make_shared<engine::Snapshot>();
  if (!filled->shop) filled->shop = std::make_shared<folds::ShopView>();
  if (!filled->floor) filled->floor = std::make_shared<std::vector<folds::FloorRow>>();
  return filled;
}

bool works_here(const folds::ShopView& shop, const PersonId& person) {
  const auto* one = shop.find(person);
  return one && !one->left;
}
}  // namespace

Session::Session(engine::Engine& engine, const Clock& clock, QObject* parent)
    : QObject(parent), engine_(engine), clock_(clock), snapshot_(whole(engine.snapshot())) {
  int here = 0;
  for (const auto& one : shop().people) {
    if (one.left) continue;
    ++here;
    person_ = one.person;
  }
  if (here != 1 || has_pin(person_)) person_ = {};
  second_.setInterval(1000);
  connect(&second_, &QTimer::timeout, this, &Session::secondPassed);
  second_.start();
}

void Session::publish(std::shared_ptr<const engine::Snapshot> snapshot) {
  QMetaObject::invokeMethod(
      this,
      [this, given = std::move(snapshot)] {
        if (given->number < snapshot_->number) return;
        const QString person_was = personName() + personRole();
        const auto before = std::exchange(snapshot_, whole(given));
        if (person_ && !works_here(shop(), person_)) person_ = {};
        const bool other_person = personName() + personRole() != person_was;
        if (other_person) emit personChanged();
        if (snapshot_->car != before->car) emit carChanged();
        const bool shop_is_another = other_person || snapshot_->shop != before->shop ||
                                     snapshot_->read_only != before->read_only;
        const bool car_is_another = snapshot_->car != before->car ||
                                    snapshot_->timeline != before->timeline ||
                                    snapshot_->lessons != before->lessons;
        if (shop_is_another) emit shopChanged();
        if (shop_is_another || car_is_another) emit carOrShopChanged();
        emit snapshotChanged();
      },
      Qt::QueuedConnection);
}

const folds::CarView* Session::car() const {
  const auto* car = snapshot_->car.get();
  return car && job_ && car->job == *job_ && car->opened ? car : nullptr;
}

void Session::tell_all() {
  emit shopChanged();
  emit carOrShopChanged();
  emit snapshotChanged();
}

void Session::set_units(Units units) {
  if (units == units_) return;
  units_ = units;
  emit unitsChanged();
  tell_all();
}

QString Session::zone() const {
  if (!shop().zone.empty()) return QString::fromStdString(shop().zone);
  return QString::fromLatin1(QTimeZone::systemTimeZoneId());
}

void Session::post(acts::Command command, Then then) {
  post_as(person_, std::move(command), std::move(then));
}

void Session::post_as(const PersonId& person, acts::Command command, Then then) {
  engine_.post(std::move(command), person,
               [this, then = std::move(then)](Result<engine::Wrote> wrote) {
                 QMetaObject::invokeMethod(
                     this,
                     [this, then, given = std::move(wrote)] {
                       if (!given) emit failed(given.error());
                       if (then) then(given);
                     },
                     Qt::QueuedConnection);
               });
}

void Session::calculate(QObject* receiver, Work work) {
  ++calculations_;
  engine_.calculate([this, alive = QPointer<QObject>(receiver), work = std::move(work)] {
    QMetaObject::invokeMethod(
        this,
        [this, alive, then = work()] {
          --calculations_;
          if (alive) then();
        },
        Qt::QueuedConnection);
  });
}

QString Session::personId() const {
  return person_ ? QString::fromStdString(person_.hex()) : QString();
}

QString Session::personName() const {
  return person_ ? name_of(person_) : QString();
}

QString Session::personRole() const {
  const auto* one = shop().find(person_);
  return one ? words_of(one->role) : QString();
}

QString Session::carTitle() const {
  const auto* here = car();
  if (!here) return {};
  if (!here->plate.empty()) return QString::fromStdString(here->plate);
  return QString::fromStdString(here->vin).right(8);
}

QString Session::carSubtitle() const {
  const auto* here = car();
  if (!here) return {};
  QStringList words;
  if (!here->color.name.empty()) words << QString::fromStdString(here->color.name);
  words << words_of(here->body);
  return words.join(QStringLiteral(" \u00b7 "));
}

QString Session::name_of(const PersonId& person) const {
  const auto* one = shop().find(person);
  return one && !one->name.empty() ? QString::fromStdString(one->name) : tr("someone");
}

bool Session::started_here(const DeviceId& device) const {
  for (const auto& one : snapshot_->devices)
    if (one.own) return one.device == device;
  return true;
}

void Session::choosePerson(const QString& personId) {
  const auto parsed = PersonId::parse(personId.toStdString());
  const PersonId next =
      parsed && works_here(shop(), PersonId{*parsed}) ? PersonId{*parsed} : PersonId{};
  if (next == person_) return;
  if (next && has_pin(next)) {
    emit pinAsked(personId);
    return;
  }
  choose_unlocked(next);
}

bool Session::has_pin(const PersonId& person) const {
  const auto& all = snapshot_->with_pin;
  return std::find(all.begin(), all.end(), person) != all.end();
}

void Session::choose_unlocked(const PersonId& person) {
  person_ = person;
  emit personChanged();
  tell_all();
}

void Session::openCar(const QString& jobId) {
  const auto parsed = JobId::parse(jobId.toStdString());
  if (!parsed || job_ == JobId{*parsed}) return;
  job_ = JobId{*parsed};
  engine_.watch(job_);
  emit carChanged();
  tell_all();
}

void Session::leaveCar() {
  if (!job_) return;
  job_.reset();
  engine_.watch(std::nullopt);
  emit carChanged();
  tell_all();
}

}  // namespace jambline::screens
