#include "screens/gun_words.h"

#include <QCoreApplication>

#include "base/spans.h"
#include "screens/air_words.h"
#include "screens/booth_view_model.h"
#include "screens/rate_units.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::GunItem;

QString gun_tr(const char* words) {
  return QCoreApplication::translate("gun", words);
}
}  // namespace

QString class_words(job::CheckClass check_class) {
  switch (check_class) {
    case job::CheckClass::Stop:
      return gun_tr(QT_TRANSLATE_NOOP("gun", "stop"));
    case job::CheckClass::Must:
      return gun_tr(QT_TRANSLATE_NOOP("gun", "must"));
    case job::CheckClass::Should:
      break;
  }
  return gun_tr(QT_TRANSLATE_NOOP("gun", "should"));
}

const folds::RespiratorView* GunWords::respirator() const {
  return scene.respirator ? scene.shop.air.find(*scene.respirator) : nullptr;
}

// Short enough for a tile; the whole words stand in the time line.
QString GunWords::title(GunItem item) const {
  switch (item) {
    case GunItem::SealOrFlow:
      if (!respirator()) break;
      return job::fits_tightly(respirator()->said.kind)
                 ? gun_tr(QT_TRANSLATE_NOOP("gun", "Shaved, seal checked"))
                 : gun_tr(QT_TRANSLATE_NOOP("gun", "Air hood flow checked"));
    case GunItem::NobodyUnprotected:
      return gun_tr(QT_TRANSLATE_NOOP("gun", "Nobody inside unprotected"));
    case GunItem::MixRoomAndGround:
      return gun_tr(QT_TRANSLATE_NOOP("gun", "Mix room fan on, cans grounded, phones out"));
    default:
      break;
  }
  return sentence(words_of(item));
}

// A day that was entered as a day is the same day everywhere.
QString GunWords::day(std::int64_t day_ms) const {
  return date_words(day_ms, scene.now.wall_ms, QStringLiteral("UTC"));
}

QString GunWords::record(const folds::GunFact& fact, const QString& done, const QString& due,
                         const QString& was_due, const QString& broken) const {
  if (!fact.known && !fact.as_of_ms && !fact.due_ms)
    return gun_tr(QT_TRANSLATE_NOOP("gun", "no record"));
  const bool over = fact.due_ms && scene.now.wall_ms >= *fact.due_ms;
  QStringList parts;
  if (fact.as_of_ms) parts << done.arg(day(*fact.as_of_ms));
  if (fact.due_ms) parts << (over ? was_due : due).arg(day(*fact.due_ms - day_ms));
  if (fact.known != true && !over) parts << broken;
  return parts.join(QStringLiteral(", "));
}

QString GunWords::filters(const folds::GunFact& fact) const {
  if (!fact.as_of_ms) return gun_tr(QT_TRANSLATE_NOOP("gun", "gauge not read yet"));
  const QString when = ago_words(*fact.as_of_ms, scene.now.wall_ms);
  if (fact.known == true) return gun_tr(QT_TRANSLATE_NOOP("gun", "gauge in range, %1")).arg(when);
  if (!fact.known)
    return gun_tr(QT_TRANSLATE_NOOP("gun", "gauge read %1, its most is not entered")).arg(when);
  const bool today = scene.now.wall_ms - *fact.as_of_ms <= day_ms;
  return today ? gun_tr(QT_TRANSLATE_NOOP("gun", "gauge at its most or over, %1")).arg(when)
               : gun_tr(QT_TRANSLATE_NOOP("gun", "gauge not read today, last %1")).arg(when);
}

QString GunWords::respirator_words(const folds::GunFact& fact) const {
  const auto* worn = respirator();
  if (!worn) return gun_tr(QT_TRANSLATE_NOOP("gun", "none chosen"));
  const QString kind = words_of(worn->said.kind);
  if (fact.known != true)
    return worn->said.retired ? gun_tr(QT_TRANSLATE_NOOP("gun", "%1, retired")).arg(kind)
                              : gun_tr(QT_TRANSLATE_NOOP("gun", "%1, supplies no air")).arg(kind);
  if (scene.activated && !job::supplies_air(worn->said.kind))
    return gun_tr(QT_TRANSLATE_NOOP("gun", "%1, by the written program: %2"))
        .arg(kind, QString::fromStdString(worn->said.allowed_for_activated));
  return kind;
}

QString GunWords::known(const folds::GunFact& fact) const {
  switch (fact.item) {
    case GunItem::RightRespirator:
      return respirator_words(fact);
    case GunItem::MaySpray:
      return fact.known == false ? gun_tr(QT_TRANSLATE_NOOP("gun", "under do not spray"))
                                 : gun_tr(QT_TRANSLATE_NOOP("gun", "nothing said against it"));
    case GunItem::FitTested:
      return record(fact, gun_tr(QT_TRANSLATE_NOOP("gun", "fit test %1")),
                    gun_tr(QT_TRANSLATE_NOOP("gun", "due %1")),
                    gun_tr(QT_TRANSLATE_NOOP("gun", "was due %1")),
                    gun_tr(QT_TRANSLATE_NOOP("gun", "does not pass")));
    case GunItem::BreathingAir:
      return record(fact, gun_tr(QT_TRANSLATE_NOOP("gun", "checked %1")),
                    gun_tr(QT_TRANSLATE_NOOP("gun", "due %1")),
                    gun_tr(QT_TRANSLATE_NOOP("gun", "was due %1")),
                    gun_tr(QT_TRANSLATE_NOOP("gun", "grade or an alarm is not in order")));
    case GunItem::CartridgeInTime:
      if (!fact.as_of_ms) return gun_tr(QT_TRANSLATE_NOOP("gun", "no schedule entered"));
      return (fact.known == true
                  ? gun_tr(QT_TRANSLATE_NOOP("gun", "changed %1, hours left"))
                  : gun_tr(QT_TRANSLATE_NOOP("gun", "changed %1, its hours are used")))
          .arg(date_words(*fact.as_of_ms, scene.now.wall_ms, session.zone()));
    case GunItem::TrainedAndGun:
      return record(fact, {}, gun_tr(QT_TRANSLATE_NOOP("gun", "training due %1")),
                    gun_tr(QT_TRANSLATE_NOOP("gun", "training was due %1")), {});
    case GunItem::FiltersAndGauge:
      return filters(fact);
    case GunItem::ColorApproved:
      return fact.known == true
                 ? gun_tr(QT_TRANSLATE_NOOP("gun", "variant approved on a spray-out"))
                 : gun_tr(QT_TRANSLATE_NOOP("gun", "spray-out not approved yet"));
    case GunItem::Climate:
      return fact.as_of_ms ? gun_tr(QT_TRANSLATE_NOOP("gun", "read %1"))
                                 .arg(ago_words(*fact.as_of_ms, scene.now.wall_ms))
                           : gun_tr(QT_TRANSLATE_NOOP("gun", "not read yet"));
    default:
      return {};
  }
}

QString GunWords::put_right(GunItem item) const {
  const auto* worn = respirator();
  switch (item) {
    case GunItem::RightRespirator:
      if (scene.shop.air.respirators.empty())
        return gun_tr(QT_TRANSLATE_NOOP(
            "gun", "No respirator is entered. A manager enters it in the register."));
      if (!worn) return gun_tr(QT_TRANSLATE_NOOP("gun", "Choose the respirator that you wear."));
      if (worn->said.retired)
        return gun_tr(QT_TRANSLATE_NOOP("gun", "This one is retired. Choose another."));
      return gun_tr(QT_TRANSLATE_NOOP(
          "gun",
          "Activated product wants supplied air: take an air hood or an airline. Else the shop's "
          "written program has to allow this one."));
    case GunItem::SealOrFlow:
      return worn && !job::fits_tightly(worn->said.kind)
                 ? gun_tr(QT_TRANSLATE_NOOP(
                       "gun", "Find out why the air is short: line, valve, compressor."))
                 : gun_tr(QT_TRANSLATE_NOOP(
                       "gun", "Put it on again, or take another size. No beard at the seal."));
    case GunItem::ExhaustFreshAir:
      return gun_tr(QT_TRANSLATE_NOOP("gun", "Switch the exhaust on, on fresh air, doors shut."));
    case GunItem::NobodyUnprotected:
      return gun_tr(QT_TRANSLATE_NOOP(
          "gun", "Everybody without supplied air leaves the booth and the deck downwind."));
    case GunItem::MaySpray:
      return gun_tr(QT_TRANSLATE_NOOP("gun", "%1 does not spray. Only a manager takes that back."))
          .arg(session.name_of(scene.person));
    default:
      return {};
  }
}

}  // namespace jambline::screens
