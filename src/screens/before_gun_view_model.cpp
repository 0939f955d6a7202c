#include "screens/before_gun_view_model.h"

#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>

#include "folds/floor_view.h"
#include "folds/pot_life.h"
#include "screens/air_words.h"
#include "screens/booth_air_words.h"
#include "screens/correct_words.h"
#include "screens/gun_words.h"
#include "screens/spans.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::CheckClass;
using job::CutAnswer;
using job::GunItem;

constexpr std::uint64_t answer_holds_ms = 15 * 60'000;  // common practice, no source
constexpr const char* worn_form = "respirators worn last";

std::optional<GunItem> gun_item_of(const QString& key) {
  return from_word<GunItem>(key.toStdString());
}

template <class E>
QString key_of(E word) {
  const std::string_view text = word_of(word);
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

bool is_asked(const folds::GunFact& fact) {
  return job::class_of(fact.item) != CheckClass::Should;
}
}  // namespace

BeforeGunViewModel::BeforeGunViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      cars_({"key", "title", "words"}, this),
      booths_({"key", "title", "words", "chosen"}, this),
      respirators_({"key", "title", "words", "chosen"}, this),
      mixes_({"key", "title", "words", "chosen"}, this),
      known_({"key", "title", "words", "spoken"}, this),
      asked_({"key", "title", "words", "classWords", "answerWords", "shape", "alarm", "spoken"},
             this),
      shoulds_({"key", "title", "words", "said", "spoken"}, this),
      stops_({"key", "title", "words"}, this) {
  connect(&session_, &Session::snapshotChanged, this, &BeforeGunViewModel::refresh);
  connect(&session_, &Session::secondPassed, this, &BeforeGunViewModel::forget_old);
  refresh();
}

bool BeforeGunViewModel::here() const {
  const auto* car = session_.car();
  return car && !session_.readOnly() && car->unknown_entries == 0 && !car->delivered_ms;
}

const BeforeGunViewModel::Said* BeforeGunViewModel::said(GunItem item) const {
  const auto found = said_.find(item);
  return found == said_.end() ? nullptr : &found->second;
}

const folds::GunFact* BeforeGunViewModel::fact(GunItem item) const {
  for (const auto& one : facts_)
    if (one.item == item) return &one;
  return nullptr;
}

bool BeforeGunViewModel::borne_out(const folds::GunFact& fact) const {
  return !job::is_of_now(fact.item) && fact.known == true;
}

bool BeforeGunViewModel::answered(const folds::GunFact& fact) const {
  return borne_out(fact) || said(fact.item);
}

folds::GunScene BeforeGunViewModel::scene() const {
  return {session_.shop(),   *session_.car(), booth_.value_or(BoothId{}),
          session_.person(), respirator_,     activated(),
          session_.now()};
}

// Who, where, through what and on which car: with another of them the old answers are nobody's.
void BeforeGunViewModel::refresh() {
  const std::optional<JobId> job =
      session_.car() ? std::optional(session_.car()->job) : std::nullopt;
  if (job != job_ || session_.person() != person_) {
    const bool other_person = session_.person() != person_;
    if (job != job_) mixes_seen_ = 0;
    job_ = job;
    person_ = session_.person();
    said_.clear();
    open_.reset();
    reported_.clear();
    if (other_person) respirator_.reset();
  }
  if (booth_ && !session_.shop().find(*booth_)) booth_.reset();
  if (respirator_ && !session_.shop().air.find(*respirator_)) respirator_.reset();
  if (!booth_ && session_.car()) {
    if (session_.car()->booth) {
      booth_ = session_.car()->booth;
    } else {
      std::vector<BoothId> all;
      for (const auto& one : session_.shop().booths)
        if (job::may_be_sprayed_in(one.kind)) all.push_back(one.booth);
      if (all.size() == 1) booth_ = all.front();
    }
    const auto* found = booth_ ? session_.shop().find(*booth_) : nullptr;
    if (found && !job::may_be_sprayed_in(found->kind)) booth_.reset();
  }
  guess_respirator();
  guess_mixes();
  facts_ = here() ? folds::gun_facts(scene()) : std::vector<folds::GunFact>{};
  unmet_.clear();
  for (const auto& one : facts_) {
    if (job::class_of(one.item) != CheckClass::Stop) continue;
    const Said* now = said(one.item);
    const bool not_chosen = one.item == GunItem::RightRespirator && !respirator_ &&
                            session_.shop().air.respirators.empty();
    if (one.known == false || not_chosen || (now && now->answer != CutAnswer::Yes))
      unmet_.push_back(one.item);
  }
  show_choices();
  show_rows();
  emit changed();
  emit openChanged();
}

// The one that was worn last: on this device, else on this car, else the only one.
void BeforeGunViewModel::guess_respirator() {
  if (respirator_ || !session_.hasPerson()) return;
  const auto known = [&](const RespiratorId& id) {
    const auto* found = session_.shop().air.find(id);
    return found && !found->said.retired;
  };
  const auto kept =
      QJsonDocument::fromJson(QByteArray::fromStdString(session_.engine().draft(worn_form)))
          .object();
  const auto worn =
      RespiratorId::parse(kept.value(hex(session_.person())).toString().toStdString());
  if (worn && known(*worn)) respirator_ = *worn;
  if (!respirator_ && session_.car())
    for (const auto& spray : session_.car()->air.sprays)
      if (spray.by == session_.person() && known(spray.respirator)) respirator_ = spray.respirator;
  if (respirator_) return;
  std::vector<RespiratorId> all;
  for (const auto& one : session_.shop().air.respirators)
    if (!one.said.retired) all.push_back(one.respirator);
  if (all.size() == 1) respirator_ = all.front();
}

void BeforeGunViewModel::remember_respirator() {
  if (!respirator_) return;
  QJsonObject kept =
      QJsonDocument::fromJson(QByteArray::fromStdString(session_.engine().draft(worn_form)))
          .object();
  kept.insert(hex(session_.person()), hex(*respirator_));
  session_.engine().keep_draft(worn_form,
                               QJsonDocument(kept).toJson(QJsonDocument::Compact).toStdString());
}

std::vector<const folds::MixView*> BeforeGunViewModel::fresh_mixes() const {
  std::vector<const folds::MixView*> out;
  if (const auto* car = session_.car())
    for (const auto& mix : car->air.mixes)
      if (folds::elapsed_ms(mix.at, session_.now()) <= mix_is_of_today_ms &&
          session_.shop().air.find(mix.product))
        out.push_back(&mix);
  return out;
}

// A new mix: what has no coat yet is to be sprayed; where all have one, the newest.
void BeforeGunViewModel::guess_mixes() {
  const auto fresh = fresh_mixes();
  if (fresh.size() == mixes_seen_) return;
  mixes_seen_ = fresh.size();
  sprayed_.clear();
  for (const auto* mix : fresh)
    if (mix->coats.empty()) sprayed_.insert(mix->mix);
  if (sprayed_.empty() && !fresh.empty()) sprayed_.insert(fresh.back()->mix);
}

// With a mix on the car nobody talks its hardener away: none chosen counts as all of them.
bool BeforeGunViewModel::activated() const {
  const auto fresh = fresh_mixes();
  if (fresh.empty()) return activated_said_;
  const bool chosen = std::any_of(fresh.begin(), fresh.end(),
                                  [&](const auto* mix) { return sprayed_.contains(mix->mix); });
  return std::any_of(fresh.begin(), fresh.end(), [&](const auto* mix) {
    return (!chosen || sprayed_.contains(mix->mix)) &&
           session_.shop().air.find(mix->product)->said.activated;
  });
}

void BeforeGunViewModel::show_choices() {
  std::vector<QVariantList> cars, booths, respirators, mixes;
  if (session_.snapshot().floor)
    for (const auto& row : *session_.snapshot().floor)
      if (row.next_stage == job::Stage::BeforeTheGun || row.next_stage == job::Stage::Spray)
        cars.push_back({hex(row.job), text(row.plate), words_of(*row.next_stage)});
  for (const auto& one : session_.shop().booths)
    if (job::may_be_sprayed_in(one.kind))
      booths.push_back({hex(one.booth), text(one.name), words_of(one.kind), booth_ == one.booth});
  for (const auto& one : session_.shop().air.respirators)
    if (!one.said.retired)
      respirators.push_back({hex(one.respirator), text(one.said.model), words_of(one.said.kind),
                             respirator_ == one.respirator});
  for (const auto* mix : fresh_mixes()) {
    const auto& product = session_.shop().air.find(mix->product)->said;
    mixes.push_back({hex(mix->mix), text(product.product_name),
                     product.activated ? tr("activated") : tr("not activated"),
                     sprayed_.contains(mix->mix)});
  }
  cars_.set(std::move(cars));
  booths_.set(std::move(booths));
  respirators_.set(std::move(respirators));
  mixes_.set(std::move(mixes));
}

void BeforeGunViewModel::show_rows() {
  std::vector<QVariantList> known, asked, shoulds, stops;
  if (here()) {
    const folds::GunScene at = scene();
    const GunWords words{session_, at};
    for (const auto& one : facts_) {
      const CheckClass item_class = job::class_of(one.item);
      const QString title = words.title(one.item);
      const QString key = key_of(one.item);
      const Said* now = said(one.item);
      if (item_class == CheckClass::Should) {
        const QString stands =
            one.item == GunItem::ActivatorAndPotLife ? pot_words() : words.known(one);
        shoulds.push_back({key, title, stands, now != nullptr,
                           tr("%1, %2").arg(title, now                ? tr("yes")
                                                   : stands.isEmpty() ? tr("should")
                                                                      : stands)});
        continue;
      }
      const QString stands = words.known(one);
      if (borne_out(one)) {
        if (one.item != GunItem::MaySpray)
          known.push_back({key, title, stands, tr("%1, %2").arg(title, stands)});
        continue;
      }
      const bool met = now && now->answer == CutAnswer::Yes;
      const QString answer =
          met ? tr("yes, now")
          : now && now->reason
              ? tr("%1 goes on without: %2").arg(session_.personName(), words_of(*now->reason))
          : now ? tr("no")
                : QString();
      const StateKind state = met                  ? StateKind::Done
                              : now && now->reason ? StateKind::Disputed
                                                   : StateKind::Must;
      asked.push_back({key, title, stands, class_words(item_class), answer, shape_of(state),
                       state == StateKind::Must,
                       tr("%1, %2, %3")
                           .arg(title, class_words(item_class),
                                answer.isEmpty() ? tr("not answered") : answer)});
    }
    for (const GunItem item : unmet_)
      stops.push_back({key_of(item), words.title(item), words.put_right(item)});
  }
  known_.set(std::move(known));
  asked_.set(std::move(asked));
  shoulds_.set(std::move(shoulds));
  stops_.set(std::move(stops));
}

std::pair<int, int> BeforeGunViewModel::left() const {
  std::pair<int, int> out{0, 0};
  for (const auto& one : facts_) {
    if (!is_asked(one) || answered(one)) continue;
    ++(job::class_of(one.item) == CheckClass::Stop ? out.first : out.second);
  }
  return out;
}

QString BeforeGunViewModel::title() const {
  return session_.hasPerson() ? tr("Before the gun, %1").arg(session_.personName())
                              : tr("Before the gun");
}

QString BeforeGunViewModel::leftWords() const {
  const auto [stops, musts] = left();
  return stops + musts == 0 ? QString() : tr("%1 left").arg(stops + musts);
}

QString BeforeGunViewModel::emptyWords() const {
  if (session_.car())
    return tr("This car can only be read here. It is not sprayed from this screen.");
  return carCount() == 0
             ? tr("No car is before the gun or at spraying. What is asked here belongs to a car.")
             : tr("No car is on the tape. Which one is sprayed?");
}

QString BeforeGunViewModel::carWords() const {
  if (here()) {
    const auto next = folds::floor_row(*session_.car()).next_stage;
    if (next == job::Stage::BeforeTheGun || next == job::Stage::Spray) return session_.carTitle();
  }
  if (carCount() == 0) return {};
  return carCount() == 1 ? tr("1 car waits for it") : tr("%1 cars wait for it").arg(carCount());
}

QString BeforeGunViewModel::boothWords() const {
  const auto* booth = booth_ ? session_.shop().find(*booth_) : nullptr;
  return booth ? text(booth->name) : QString();
}

QString BeforeGunViewModel::boothNote() const {
  const auto* booth = booth_ ? session_.shop().find(*booth_) : nullptr;
  if (!booth) return tr("booth");
  const BoothSaid said = say_booth(session_, *booth);
  if (said.state.word == folds::BoothWordNow::Idle) return tr("booth");
  return said.state.word == folds::BoothWordNow::Counting ? tr("%1, %2").arg(said.word, said.line)
                                                          : said.word;
}

QString BeforeGunViewModel::respiratorWords() const {
  const auto* worn = respirator_ ? session_.shop().air.find(*respirator_) : nullptr;
  return worn ? text(worn->said.model) : QString();
}

QString BeforeGunViewModel::productWords() const {
  QStringList names;
  for (const auto* mix : fresh_mixes())
    if (sprayed_.contains(mix->mix))
      names << text(session_.shop().air.find(mix->product)->said.product_name);
  const QString hardener = activated() ? tr("activated, holds isocyanate") : tr("not activated");
  return names.isEmpty() ? hardener : tr("%1: %2").arg(names.join(QStringLiteral(", ")), hardener);
}

// Of what is to be sprayed, the one that ends first.
QString BeforeGunViewModel::pot_words() const {
  const folds::PotLifeOfMix* first = nullptr;
  const auto lives = folds::pot_lives(*session_.car(), session_.shop(), session_.now());
  for (const auto& one : lives)
    if (sprayed_.contains(one.mix) && one.left_s && (!first || *one.left_s < *first->left_s))
      first = &one;
  if (!first) return {};
  const auto left_ms = static_cast<std::int64_t>(*first->left_s * 1000);
  const auto now_ms = session_.now().wall_ms;
  const QString at = time_words(now_ms + left_ms, now_ms, session_.zone());
  return left_ms > 0 ? tr("pot life until %1").arg(at) : tr("pot life over since %1").arg(at);
}

QString BeforeGunViewModel::mainText() const {
  if (!session_.hasPerson()) return tr("Say who you are first");
  if (!booth_) return tr("Say which booth first");
  if (stopped()) return tr("Do not spray");
  const auto [stops, musts] = left();
  if (stops + musts == 0) return tr("Start spray clock");
  QStringList parts;
  if (stops > 0) parts << (stops == 1 ? tr("1 stop") : tr("%1 stops").arg(stops));
  if (musts > 0) parts << (musts == 1 ? tr("1 must") : tr("%1 musts").arg(musts));
  return tr("Spray clock waits for %1").arg(parts.join(tr(" and ")));
}

QString BeforeGunViewModel::mainSecond() const {
  if (!session_.hasPerson() || !booth_) return {};
  if (stopped()) return tr("no way round a stop");
  const auto [stops, musts] = left();
  if (stops + musts > 0)
    return musts > 0 && stops == 0 ? tr("or go on by name, with a reason") : QString();
  return tr("%1, %2").arg(boothWords(), respiratorWords());
}

bool BeforeGunViewModel::mainWaits() const {
  const auto [stops, musts] = left();
  return !here() || !session_.hasPerson() || !booth_ || !respirator_ || stopped() ||
         stops + musts > 0 || starting_;
}

void BeforeGunViewModel::open(const QString& booth) {
  said_.clear();
  reported_.clear();
  booth_.reset();
  activated_said_ = true;
  mixes_seen_ = 0;
  if (const auto id = BoothId::parse(booth.toStdString())) booth_ = *id;
  refresh();
}

void BeforeGunViewModel::chooseCar(const QString& job) {
  session_.openCar(job);
}

void BeforeGunViewModel::forget(std::initializer_list<GunItem> items) {
  for (const GunItem item : items) said_.erase(item);
}

void BeforeGunViewModel::chooseBooth(const QString& booth) {
  const auto id = BoothId::parse(booth.toStdString());
  if (!id || booth_ == *id) return;
  booth_ = *id;
  forget({GunItem::ExhaustFreshAir, GunItem::NobodyUnprotected, GunItem::FiltersAndGauge});
  refresh();
}

void BeforeGunViewModel::chooseRespirator(const QString& respirator) {
  const auto id = RespiratorId::parse(respirator.toStdString());
  if (!id || respirator_ == *id) return;
  respirator_ = *id;
  forget({GunItem::RightRespirator, GunItem::SealOrFlow, GunItem::FitTested, GunItem::BreathingAir,
          GunItem::CartridgeInTime});
  refresh();
}

void BeforeGunViewModel::flipMix(const QString& mix) {
  const auto id = MixId::parse(mix.toStdString());
  if (!id) return;
  if (!sprayed_.erase(*id)) sprayed_.insert(*id);
  refresh();
}

void BeforeGunViewModel::sayActivated(bool activated) {
  activated_said_ = activated;
  refresh();
}

void BeforeGunViewModel::forget_old() {
  const std::uint64_t now_ms = session_.now().since_boot_ms;
  const auto gone = std::erase_if(said_, [&](const auto& one) {
    return job::is_of_now(one.first) &&
           (now_ms < one.second.at_ms || now_ms - one.second.at_ms > answer_holds_ms);
  });
  if (gone > 0) refresh();
}

void BeforeGunViewModel::press(const QString& key) {
  const auto item = gun_item_of(key);
  const auto* about = item ? fact(*item) : nullptr;
  if (!about) return;
  // What the records do not bear out is never a plain yes.
  if (said(*item) || !job::is_of_now(*item)) {
    openItem(key);
    return;
  }
  said_[*item] = {CutAnswer::Yes, {}, {}, session_.now().since_boot_ms};
  refresh();
}

void BeforeGunViewModel::openItem(const QString& key) {
  const auto item = gun_item_of(key);
  if (!item || !fact(*item)) return;
  if (*item == GunItem::RightRespirator) {
    emit respiratorAsked();
    return;
  }
  open_ = item;
  emit openChanged();
  emit opened();
}

void BeforeGunViewModel::openNext() {
  for (const auto& one : facts_)
    if (is_asked(one) && !answered(one)) {
      openItem(key_of(one.item));
      return;
    }
}

void BeforeGunViewModel::flipShould(const QString& key) {
  const auto item = gun_item_of(key);
  const auto* about = item ? fact(*item) : nullptr;
  if (!about || is_asked(*about)) return;
  if (*item == GunItem::Climate && !said(*item)) {
    emit airAsked();
    return;
  }
  if (!said_.erase(*item)) said_[*item] = {CutAnswer::Yes, {}, {}, session_.now().since_boot_ms};
  refresh();
}

void BeforeGunViewModel::sayAirRead() {
  said_[GunItem::Climate] = {CutAnswer::Yes, {}, {}, session_.now().since_boot_ms};
  refresh();
}

void BeforeGunViewModel::start() {
  forget_old();
  if (mainWaits()) return;
  acts::StartSpray out{session_.car()->job, *booth_, *respirator_, activated(), {}};
  for (const auto& [item, one] : said_)
    if (fact(item)) out.checks.push_back({item, one.answer, one.reason, one.note});
  starting_ = true;
  emit changed();
  session_.post(out, [this, booth = *booth_](const Result<engine::Wrote>& wrote) {
    starting_ = false;
    if (wrote) {
      remember_respirator();
      said_.clear();
      if (session_.car()) after_start(*session_.car(), booth);
    }
    refresh();
    if (wrote) emit started(hex(booth));
  });
}

// The car was sprayed there, and the clock of who sprays goes to the spraying.
void BeforeGunViewModel::after_start(const folds::CarView& car, const BoothId& booth) {
  if (car.booth != booth) session_.post(acts::SayBooth{car.job, booth});
  for (const auto& one : car.operations) {
    if (one.stage != job::Stage::Spray) continue;
    const bool runs = std::any_of(car.running.begin(), car.running.end(), [&](const auto& clock) {
      return clock.person == session_.person() && clock.operation == one.operation && !clock.paused;
    });
    if (!runs) session_.post(acts::StartClock{session_.person(), car.job, one.operation});
    return;
  }
}

void BeforeGunViewModel::report() {
  if (!here() || !booth_ || unmet_.empty()) return;
  QStringList names;
  for (const GunItem item : unmet_) names << words_of(item);
  session_.post(
      acts::ReportSprayedWithout{session_.car()->job, *booth_, unmet_},
      [this, names](const Result<engine::Wrote>& wrote) {
        if (!wrote) return;
        reported_ =
            tr("Written down: it was sprayed without %1.").arg(names.join(QStringLiteral(", ")));
        emit changed();
        emit reported();
      });
}

}  // namespace jambline::screens
