#include "screens/check_in_view_model.h"

#include <QCoreApplication>
#include <QLocale>

#include "folds/shots_of_car.h"
#include "screens/caution_words.h"
#include "screens/signature_item.h"
#include "screens/text.h"
#include "screens/this_visit.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr int quarter_percent = 25;
constexpr int most_keys = 4;

QString say(const char* words) {
  return QCoreApplication::translate("check-in", words);
}
QString unit_words(job::OdometerUnit unit) {
  return unit == job::OdometerUnit::Miles ? say(QT_TRANSLATE_NOOP("check-in", "mi"))
                                          : say(QT_TRANSLATE_NOOP("check-in", "km"));
}

// By common practice, no source.
QStringList usual_lamps() {
  return {say(QT_TRANSLATE_NOOP("check-in", "engine")),
          say(QT_TRANSLATE_NOOP("check-in", "airbag")),
          say(QT_TRANSLATE_NOOP("check-in", "brakes or ABS")),
          say(QT_TRANSLATE_NOOP("check-in", "tire pressure")),
          say(QT_TRANSLATE_NOOP("check-in", "12 V battery")),
          say(QT_TRANSLATE_NOOP("check-in", "driver assistance")),
          say(QT_TRANSLATE_NOOP("check-in", "another one"))};
}

bool with_pack(job::Drive drive) {
  return drive == job::Drive::Hybrid || drive == job::Drive::PlugIn ||
         drive == job::Drive::Electric;
}

QString fuel_words(int percent, job::Drive drive) {
  if (drive == job::Drive::Electric)
    return say(QT_TRANSLATE_NOOP("check-in", "charge %1 %")).arg(percent);
  switch (percent) {
    case 0:
      return say(QT_TRANSLATE_NOOP("check-in", "tank empty"));
    case quarter_percent:
      return say(QT_TRANSLATE_NOOP("check-in", "tank 1/4"));
    case 2 * quarter_percent:
      return say(QT_TRANSLATE_NOOP("check-in", "tank 1/2"));
    case 3 * quarter_percent:
      return say(QT_TRANSLATE_NOOP("check-in", "tank 3/4"));
    case 100:
      return say(QT_TRANSLATE_NOOP("check-in", "tank full"));
    default:
      return say(QT_TRANSLATE_NOOP("check-in", "tank %1 %")).arg(percent);
  }
}
}  // namespace

QStringList check_in_words(const job::CheckIn& said, job::Drive drive) {
  QStringList out;
  out << (said.odometer ? QStringLiteral("%1 %2").arg(QLocale().toString(*said.odometer),
                                                      unit_words(said.unit))
                        : say(QT_TRANSLATE_NOOP("check-in", "odometer cannot be read")));
  if (said.fuel_percent) out << fuel_words(*said.fuel_percent, drive);
  out << (said.keys == 0   ? say(QT_TRANSLATE_NOOP("check-in", "no key"))
          : said.keys == 1 ? say(QT_TRANSLATE_NOOP("check-in", "1 key"))
                           : say(QT_TRANSLATE_NOOP("check-in", "%1 keys")).arg(said.keys));
  out << (said.warning_lamps.empty()
              ? say(QT_TRANSLATE_NOOP("check-in", "no warning lamp lit"))
              : say(QT_TRANSLATE_NOOP("check-in", "lit: %1")).arg(text(said.warning_lamps)));
  if (!said.old_damage.empty())
    out << say(QT_TRANSLATE_NOOP("check-in", "old damage: %1")).arg(text(said.old_damage));
  if (!said.state_of_pack.empty())
    out << say(QT_TRANSLATE_NOOP("check-in", "pack: %1")).arg(text(said.state_of_pack));
  return out;
}

CheckInViewModel::CheckInViewModel(Session& session, QObject* parent)
    : QObject(parent), session_(session), lamps_({"key", "title", "chosen"}, this) {
  connect(&session, &Session::carOrShopChanged, this, &CheckInViewModel::refresh);
  refresh();
}

const job::CheckIn* CheckInViewModel::said() const {
  const auto* car = session_.car();
  return car && checked_in(*car) ? &car->visit.check_in->said : nullptr;
}

void CheckInViewModel::refresh() {
  const auto* car = session_.car();
  const auto job = car ? std::optional(car->job) : std::nullopt;
  const auto now = said() ? std::optional(*said()) : std::nullopt;
  if (job != job_ || now != taken_up_) {
    job_ = job;
    taken_up_ = now;
    take_up();
  }
  show_lamps();
  emit changed();
}

// What was said becomes the draft.
void CheckInViewModel::take_up() {
  const job::CheckIn none;
  const job::CheckIn& from = taken_up_ ? *taken_up_ : none;
  odometer_ = from.odometer ? QString::number(*from.odometer) : QString();
  unit_ = taken_up_                           ? from.unit
          : session_.units() == Units::Metric ? job::OdometerUnit::Kilometers
                                              : job::OdometerUnit::Miles;
  unread_ = taken_up_ && !from.odometer;
  fuel_ = from.fuel_percent ? (*from.fuel_percent + quarter_percent / 2) / quarter_percent : -1;
  keys_ = taken_up_ ? from.keys : -1;
  lit_ = text(from.warning_lamps).split(QStringLiteral(", "), Qt::SkipEmptyParts);
  damage_ = text(from.old_damage);
  pack_words_ = text(from.state_of_pack);
  pack_ = static_cast<int>(said_packs().indexOf(pack_words_));
}

void CheckInViewModel::show_lamps() {
  std::vector<QVariantList> rows;
  QStringList all = usual_lamps();
  for (const QString& lit : lit_)
    if (!all.contains(lit)) all << lit;
  for (const QString& one : all) rows.push_back({one, sentence(one), lit_.contains(one)});
  lamps_.set(std::move(rows));
}

QString CheckInViewModel::odometerWords() const {
  if (unread_) return tr("cannot be read");
  if (odometer_.isEmpty()) return tr("not typed yet");
  return QStringLiteral("%1 %2").arg(QLocale().toString(odometer_.toInt()), unit());
}

QString CheckInViewModel::unit() const {
  return unit_words(unit_);
}
QString CheckInViewModel::otherUnit() const {
  return unit_words(unit_ == job::OdometerUnit::Miles ? job::OdometerUnit::Kilometers
                                                      : job::OdometerUnit::Miles);
}

QString CheckInViewModel::fuelTitle() const {
  const auto* car = session_.car();
  return car && car->drive == job::Drive::Electric ? tr("Charge")
         : car && car->drive == job::Drive::PlugIn ? tr("Fuel, in the tank")
                                                   : tr("Fuel");
}

QStringList CheckInViewModel::fuels() const {
  return {tr("Empty"), QStringLiteral("1/4"), QStringLiteral("1/2"), QStringLiteral("3/4"),
          tr("Full")};
}

QStringList CheckInViewModel::keyCounts() const {
  QStringList out{tr("None")};
  for (int i = 1; i <= most_keys; ++i) out << QString::number(i);
  return out;
}

bool CheckInViewModel::hasPack() const {
  return session_.car() && with_pack(session_.car()->drive);
}

QStringList CheckInViewModel::said_packs() {
  return {tr("no damage seen"), tr("warning shown"), tr("hit or damaged"),
          tr("hot, hissing or was under water"), tr("not looked at")};
}

QStringList CheckInViewModel::packs() const {
  QStringList out;
  for (const QString& one : said_packs()) out << sentence(one);
  return out;
}

QString CheckInViewModel::packCaution() const {
  return words_of(Caution::BatteryPack);
}

bool CheckInViewModel::writable() const {
  return may_be_written(session_.car(), session_.readOnly());
}

QString CheckInViewModel::picturesWords() const {
  const auto* car = session_.car();
  if (!car) return {};
  const int missing = folds::missing_shots(*car, session_.shop(), job::Stage::CheckIn);
  int taken = 0;
  for (const auto& shot : folds::shots_of_car(*car, session_.shop(), job::Stage::CheckIn))
    taken += static_cast<int>(shot.pictures.size());
  const QString there = taken == 1 ? tr("1 taken") : tr("%1 taken").arg(taken);
  return missing == 0 ? there : tr("%1 · %2 missing").arg(there).arg(missing);
}

bool CheckInViewModel::picturesMissing() const {
  const auto* car = session_.car();
  return car && folds::missing_shots(*car, session_.shop(), job::Stage::CheckIn) > 0;
}

QString CheckInViewModel::rowWords() const {
  const auto* car = session_.car();
  const auto* now = said();
  return now ? check_in_words(*now, car->drive).join(QStringLiteral(" · ")) : QString();
}

QString CheckInViewModel::signedWords() const {
  const auto* car = session_.car();
  const auto* one = car ? signature_for(*car, job::SignedFor::CheckIn) : nullptr;
  if (!one) return {};
  const QString when = time_words(one->wall_ms, session_.now().wall_ms, session_.zone());
  return signedBefore() ? tr("%1 signed at %2, before the last change").arg(text(one->signer), when)
                        : tr("Signed by %1, %2").arg(text(one->signer), when);
}

bool CheckInViewModel::signedBefore() const {
  const auto* car = session_.car();
  const auto* one = car ? signature_for(*car, job::SignedFor::CheckIn) : nullptr;
  return one && checked_in(*car) && car->visit.check_in->wall_ms > one->wall_ms;
}

job::CheckIn CheckInViewModel::draft() const {
  job::CheckIn out;
  if (!unread_ && !odometer_.isEmpty()) out.odometer = odometer_.toInt();
  out.unit = unit_;
  if (fuel_ >= 0) out.fuel_percent = fuel_ * quarter_percent;
  // A charge that was said to the percent is not rounded by looking at it.
  if (fuel_ >= 0 && taken_up_ && taken_up_->fuel_percent &&
      (*taken_up_->fuel_percent + quarter_percent / 2) / quarter_percent == fuel_)
    out.fuel_percent = taken_up_->fuel_percent;
  out.keys = std::max(0, keys_);
  out.warning_lamps = lit_.join(QStringLiteral(", ")).toStdString();
  out.old_damage = damage_.trimmed().toStdString();
  if (hasPack())
    out.state_of_pack = (pack_ >= 0 ? said_packs().at(pack_) : pack_words_).toStdString();
  return out;
}

CheckInViewModel::Act CheckInViewModel::mainAct() const {
  if (!writable()) return Act::None;
  if (!said() || draft() != *said()) return Act::Keep;
  const auto* car = session_.car();
  return !signature_for(*car, job::SignedFor::CheckIn) || signedBefore() ? Act::Sign : Act::None;
}

QString CheckInViewModel::mainText() const {
  return mainAct() == Act::Keep ? tr("Keep the check-in") : tr("The customer signs");
}

QString CheckInViewModel::mainSecond() const {
  if (mainAct() != Act::Keep) return {};
  if (!session_.hasPerson()) return tr("say who you are first");
  const bool odometer = odometerSaid();
  if (!odometer && keys_ < 0) return tr("waits for the odometer and the keys");
  if (!odometer) return tr("waits for the odometer");
  return keys_ < 0 ? tr("waits for the keys") : QString();
}

void CheckInViewModel::setOdometer(const QString& digits) {
  if (digits == odometer_) return;
  odometer_ = digits;
  if (!digits.isEmpty()) unread_ = false;
  emit changed();
}

void CheckInViewModel::setDamage(const QString& words) {
  if (words == damage_) return;
  damage_ = words;
  emit changed();
}

void CheckInViewModel::turnUnit() {
  unit_ =
      unit_ == job::OdometerUnit::Miles ? job::OdometerUnit::Kilometers : job::OdometerUnit::Miles;
  emit changed();
}

void CheckInViewModel::sayUnread() {
  unread_ = !unread_;
  if (unread_) odometer_.clear();
  emit changed();
}

void CheckInViewModel::sayFuel(int row) {
  fuel_ = row == fuel_ ? -1 : row;
  emit changed();
}

void CheckInViewModel::sayKeys(int count) {
  keys_ = count;
  emit changed();
}

void CheckInViewModel::turnLamp(const QString& key) {
  if (!lit_.removeOne(key)) lit_ << key;
  show_lamps();
  emit changed();
}

void CheckInViewModel::sayPack(int row) {
  pack_ = row == pack_ ? -1 : row;
  pack_words_.clear();
  emit changed();
}

void CheckInViewModel::keep() {
  if (mainAct() != Act::Keep || mainWaits()) return;
  session_.post(acts::SayCheckIn{session_.car()->job, draft()},
                [this](const Result<engine::Wrote>& wrote) {
                  if (wrote) emit kept();
                });
}

void CheckInViewModel::sign(const QVariantList& strokes, const QString& signer) {
  if (!writable()) return;
  session_.post(acts::Sign{session_.car()->job, job::SignedFor::CheckIn,
                           signer.trimmed().toStdString(), strokes_drawn(strokes)},
                [this](const Result<engine::Wrote>& wrote) {
                  if (wrote) emit signatureKept();
                });
}

}  // namespace jambline::screens
