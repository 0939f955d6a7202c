#include "screens/sprayed_view_model.h"

#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>

#include "folds/shots_of_car.h"
#include "screens/air_words.h"
#include "screens/shot_rows.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::ProductKind;
using job::Stage;

constexpr double pot_near_s = 5 * 60;
constexpr double pot_shown_s = pot_near_s + 5;  // what is to knock is seen to count before
constexpr double pot_told_s = 10 * 60;          // after its end
constexpr const char* typed_form = "what was mixed last";

bool is_sprayed(ProductKind kind) {
  return kind != ProductKind::PanelAdhesive && kind != ProductKind::GlassUrethane;
}

bool has_color(ProductKind kind) {
  return kind == ProductKind::Base || kind == ProductKind::SingleStage;
}

QString key_of_panel(job::Panel panel) {
  const std::string_view word = word_of(panel);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}
}  // namespace

SprayedViewModel::SprayedViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      climate_(session),
      bake_(session),
      mixes_({"key", "title", "words", "potWords", "potShape", "coats", "asksCoats"}, this),
      sprays_({"key", "title", "words", "lines", "alarm", "shape"}, this),
      products_({"key", "title", "words", "chosen"}, this),
      panels_({"key", "title", "chosen"}, this) {
  connect(&session_, &Session::carOrShopChanged, this, &SprayedViewModel::refresh);
  connect(&session_, &Session::secondPassed, this, &SprayedViewModel::second_passed);
  refresh();
}

bool SprayedViewModel::writable() const {
  const auto* car = session_.car();
  return car && !session_.readOnly() && car->unknown_entries == 0 && !car->delivered_ms;
}

void SprayedViewModel::refresh() {
  const std::optional<JobId> job =
      session_.car() ? std::optional(session_.car()->job) : std::nullopt;
  if (job != job_) {
    job_ = job;
    draft_ = {};
    coats_ = {};
  }
  look_at_pots();
  show_mixes();
  show_sprays();
  show_products();
  show_panels();
  emit changed();
  emit mixChanged();
  emit coatsChanged();
}

QString SprayedViewModel::name_of(const ProductId& product) const {
  const auto* found = session_.shop().air.find(product);
  return found ? text(found->said.product_name) : tr("a product");
}

// 1) What was done

QStringList SprayedViewModel::coat_lines(const folds::CarView& car,
                                         const folds::MixView& mix) const {
  QStringList out;
  for (const auto& coat : mix.coats) {
    QStringList where;
    for (const auto panel : coat.panels) where << words_of(panel, car.body);
    const QString panels = sentence(where.join(QStringLiteral(", ")));
    QString line = coat.coats == 1 ? tr("%1: 1 coat").arg(panels)
                                   : tr("%1: %2 coats").arg(panels).arg(coat.coats);
    if (!coat.flash_min.empty())
      line = tr("%1, flash %2 min").arg(line).arg(qRound(coat.flash_min.front()));
    if (!coat.gun.empty()) line = tr("%1, %2").arg(line, text(coat.gun));
    if (coat.heavy_film) line = tr("%1, a run or heavy film").arg(line);
    out << line;
  }
  return out;
}

void SprayedViewModel::show_mixes() {
  std::vector<QVariantList> rows;
  if (const auto* car = session_.car()) {
    const auto now = session_.now();
    const auto lives = folds::pot_lives(*car, session_.shop(), now);
    for (auto mix = car->air.mixes.rbegin(); mix != car->air.mixes.rend(); ++mix) {
      const folds::PotLifeOfMix* life = nullptr;
      for (const auto& one : lives)
        if (one.mix == mix->mix) life = &one;
      const auto* product = session_.shop().air.find(mix->product);
      QStringList words;
      words << tr("mixed %1, %2")
                   .arg(time_words(mix->mixed_ms.value_or(mix->at.wall_ms), now.wall_ms,
                                   session_.zone()),
                        session_.name_of(mix->by));
      if (!mix->batch.empty()) words << tr("batch %1").arg(text(mix->batch));
      if (product && has_color(product->said.kind))
        words << (mix->color_approved ? tr("color approved") : tr("color not approved"));
      rows.push_back({hex(mix->mix), name_of(mix->product), words.join(QStringLiteral(" · ")),
                      pot_words(life), pot_shape(life), coat_lines(*car, *mix),
                      writable() && mix->coats.empty()});
    }
  }
  mixes_.set(std::move(rows));
}

QString SprayedViewModel::pot_words(const folds::PotLifeOfMix* life) const {
  if (!life) return tr("no pot life on its sheet");
  if (!life->left_s) return tr("pot life not known: a clock was changed");
  const auto left_ms = static_cast<std::int64_t>(*life->left_s * 1000);
  const auto now_ms = session_.now().wall_ms;
  if (left_ms <= 0)
    return tr("pot life over since %1").arg(time_words(now_ms + left_ms, now_ms, session_.zone()));
  const QString until =
      tr("pot life until %1, %2 left")
          .arg(time_words(now_ms + left_ms, now_ms, session_.zone()), duration_words(left_ms));
  return life->at_most ? tr("%1 or less: warmer than its sheet").arg(until) : until;
}

int SprayedViewModel::pot_shape(const folds::PotLifeOfMix* life) const {
  if (!life) return shape_of(StateKind::None);
  if (!life->left_s || *life->left_s <= 0) return shape_of(StateKind::Must);
  return shape_of(*life->left_s <= pot_near_s ? StateKind::Waits : StateKind::Running);
}

void SprayedViewModel::show_sprays() {
  std::vector<QVariantList> rows;
  if (const auto* car = session_.car()) {
    const auto now_ms = session_.now().wall_ms;
    const auto booth_words = [&](const BoothId& booth) {
      const auto* found = session_.shop().find(booth);
      return found ? text(found->name) : tr("a booth");
    };
    for (auto spray = car->air.sprays.rbegin(); spray != car->air.sprays.rend(); ++spray) {
      QStringList lines;
      for (const auto& check : spray->checks) {
        if (!check.reason) continue;
        const QString line =
            tr("%1 went on without %2: %3")
                .arg(session_.name_of(spray->by), words_of(check.item), words_of(*check.reason));
        lines << (check.note.empty() ? line : tr("%1, \u201c%2\u201d").arg(line, text(check.note)));
      }
      const auto* worn = session_.shop().air.find(spray->respirator);
      rows.push_back({hex(spray->entry),
                      tr("%1 in %2").arg(session_.name_of(spray->by), booth_words(spray->booth)),
                      tr("from %1 · %2 · %3")
                          .arg(time_words(spray->at.wall_ms, now_ms, session_.zone()),
                               worn ? text(worn->said.model) : tr("a respirator"),
                               spray->activated ? tr("activated") : tr("not activated")),
                      lines, !lines.isEmpty(),
                      shape_of(lines.isEmpty() ? StateKind::Done : StateKind::Disputed)});
    }
    for (const auto& one : car->air.without) {
      QStringList items;
      for (const auto item : one.items) items << words_of(item);
      rows.push_back(
          {hex(one.entry), tr("Sprayed without, in %1").arg(booth_words(one.booth)),
           tr("said by %1, %2")
               .arg(session_.name_of(one.by), time_words(one.at.wall_ms, now_ms, session_.zone())),
           QStringList{tr("Without %1").arg(items.join(QStringLiteral(", ")))}, true,
           shape_of(StateKind::Must)});
    }
  }
  sprays_.set(std::move(rows));
}

bool SprayedViewModel::ofInterest() const {
  const auto* car = session_.car();
  if (!car) return false;
  if (!car->air.mixes.empty() || !car->air.sprays.empty() || !car->air.without.empty()) return true;
  return std::any_of(car->stages.begin(), car->stages.end(), [](const auto& one) {
    return one.stage == Stage::BeforeTheGun || one.stage == Stage::Spray ||
           one.stage == Stage::Color;
  });
}

QString SprayedViewModel::rowWords() const {
  const auto* car = session_.car();
  if (!car) return {};
  const auto mixes = car->air.mixes.size();
  const auto sprays = car->air.sprays.size();
  if (mixes == 0 && sprays == 0 && car->air.without.empty()) return tr("nothing logged yet");
  QStringList parts;
  if (mixes > 0) parts << (mixes == 1 ? tr("1 mix") : tr("%1 mixes").arg(mixes));
  if (sprays > 0) parts << (sprays == 1 ? tr("sprayed once") : tr("sprayed %1 times").arg(sprays));
  if (!car->air.without.empty()) parts << tr("sprayed without");
  if (bake_.running()) parts << bake_.stateWords().toLower();
  return parts.join(QStringLiteral(" · "));
}

int SprayedViewModel::rowShape() const {
  const auto* car = session_.car();
  if (!car) return shape_of(StateKind::None);
  if (!car->air.without.empty() || !bake_.warning().isEmpty()) return shape_of(StateKind::Must);
  for (const auto& spray : car->air.sprays)
    for (const auto& check : spray.checks)
      if (check.reason) return shape_of(StateKind::Disputed);
  return shape_of(car->air.mixes.empty() && car->air.sprays.empty() ? StateKind::NotYet
                                                                    : StateKind::Done);
}

QString SprayedViewModel::mainMix() const {
  if (!writable()) return {};
  for (const auto& mix : session_.car()->air.mixes)
    if (mix.coats.empty()) return hex(mix.mix);
  return {};
}

QString SprayedViewModel::mainText() const {
  if (mainMix().isEmpty()) return tr("Log a mix");
  for (const auto& mix : session_.car()->air.mixes)
    if (mix.coats.empty()) return tr("Log coats of %1").arg(name_of(mix.product));
  return {};
}

QString SprayedViewModel::mainSecond() const {
  if (mainMix().isEmpty()) return tr("outside the mixing room's door");
  return tr("panels, coats, flash, gun");
}

// 2) Pot life in the margin: of every car that was on the tape since the program runs

void SprayedViewModel::look_at_pots() {
  const auto* car = session_.car();
  if (!car) return;
  std::erase_if(pots_, [&](const Pot& one) { return one.job == car->job; });
  const auto since_boot_ms = static_cast<double>(session_.now().since_boot_ms);
  for (const auto& life : folds::pot_lives(*car, session_.shop(), session_.now()))
    if (life.left_s && *life.left_s > -pot_told_s)
      pots_.push_back(
          {car->job, life.mix, since_boot_ms + *life.left_s * 1000, name_of(life.product)});
}

std::vector<Countdown> SprayedViewModel::countdowns() const {
  std::vector<Countdown> out;
  const Moment now = session_.now();
  for (const Pot& one : pots_) {
    const double left_s = (one.ends_ms - static_cast<double>(now.since_boot_ms)) / 1000;
    if (left_s > pot_shown_s || left_s < -pot_told_s) continue;
    const QString at =
        clock_words(now.wall_ms + static_cast<std::int64_t>(left_s * 1000), session_.zone());
    Countdown count;
    count.key = QStringLiteral("pot ") + hex(one.mix);
    count.left_s = std::max(left_s, 0.0);
    count.knock_s = pot_near_s;
    if (left_s > 0) {
      count.margin = tr("%1: pot life ends %2").arg(one.name, at);
      count.row = tr("%1: pot life ends %2, in under a minute").arg(one.name, at);
    } else {
      count.margin = tr("%1: pot life over").arg(one.name);
      count.row = tr("%1: pot life over since %2. Do not spray it.").arg(one.name, at);
      count.shape = StateKind::Must;
    }
    out.push_back(std::move(count));
  }
  return out;
}

void SprayedViewModel::second_passed() {
  const std::int64_t minute = session_.now().wall_ms / 60'000;
  if (minute == last_minute_ || !session_.car() || session_.car()->air.mixes.empty()) return;
  last_minute_ = minute;
  show_mixes();
}

// 3) The mix that is typed

QString SprayedViewModel::kept(const QString& key) const {
  return QJsonDocument::fromJson(QByteArray::fromStdString(session_.engine().draft(typed_form)))
      .object()
      .value(key)
      .toString();
}

void SprayedViewModel::keep(const QString& key, const QString& words) {
  QJsonObject all =
      QJsonDocument::fromJson(QByteArray::fromStdString(session_.engine().draft(typed_form)))
          .object();
  all.insert(key, words);
  session_.engine().keep_draft(typed_form,
                               QJsonDocument(all).toJson(QJsonDocument::Compact).toStdString());
}

void SprayedViewModel::startMix(const QString& mix) {
  draft_ = {};
  const auto id = MixId::parse(mix.toStdString());
  if (id && session_.car())
    for (const auto& one : session_.car()->air.mixes)
      if (one.mix == *id) {
        draft_.product = one.product;
        draft_.changes = one.mix;
        draft_.batch = text(one.batch);
        draft_.approved = one.color_approved;
      }
  show_products();
  if (!draft_.product && products_.rowCount() == 1)
    chooseProduct(products_.value(0, "key").toString());
  emit mixChanged();
}

void SprayedViewModel::show_products() {
  std::vector<QVariantList> rows;
  for (const auto& one : session_.shop().air.products) {
    if (one.said.retired || !is_sprayed(one.said.kind)) continue;
    const QString hardener = one.said.activated ? tr("activated") : tr("not activated");
    rows.push_back({hex(one.product), text(one.said.product_name),
                    tr("%1, %2").arg(words_of(one.said.kind), hardener),
                    draft_.product == one.product});
  }
  products_.set(std::move(rows));
}

void SprayedViewModel::chooseProduct(const QString& product) {
  draft_.product.reset();
  if (const auto id = ProductId::parse(product.toStdString())) {
    draft_.product = *id;
    if (!draft_.changes) draft_.batch = kept(hex(*id));
  }
  show_products();
  emit mixChanged();
}

void SprayedViewModel::setBatch(const QString& batch) {
  draft_.batch = batch;
  emit mixChanged();
}

void SprayedViewModel::setApproved(bool approved) {
  draft_.approved = approved;
  emit mixChanged();
}

void SprayedViewModel::setAgoMin(int minutes) {
  draft_.ago_min = minutes;
  emit mixChanged();
}

bool SprayedViewModel::asksApproval() const {
  const auto* product = draft_.product ? session_.shop().air.find(*draft_.product) : nullptr;
  return product && has_color(product->said.kind);
}

QString SprayedViewModel::approvalWords() const {
  const auto* car = session_.car();
  if (!car) return {};
  const bool layered = std::any_of(car->panels.begin(), car->panels.end(), [](const auto& panel) {
    return panel.plan.finish == job::Finish::TriCoat;
  });
  const QString color =
      text(car->color.code.empty() ? car->color.name : car->color.code + " " + car->color.name);
  return layered ? tr("%1: variant approved on a let-down panel, as a tri-coat wants it").arg(color)
                 : tr("%1: variant approved on a spray-out").arg(color);
}

QString SprayedViewModel::mixText() const {
  return changing() ? tr("Change this mix") : tr("Log this mix");
}

QString SprayedViewModel::mixSecond() const {
  if (!session_.hasPerson()) return tr("say who you are first");
  if (!draft_.product) return tr("say which product first");
  if (asksApproval() && !draft_.approved) return tr("color not approved: a must before the gun");
  return changing() ? QString() : tr("pot life runs from then");
}

bool SprayedViewModel::mixWaits() const {
  return !writable() || !session_.hasPerson() || !draft_.product;
}

void SprayedViewModel::keepMix() {
  if (mixWaits()) return;
  acts::MixProduct out{session_.car()->job,
                       *draft_.product,
                       draft_.batch.trimmed().toStdString(),
                       asksApproval() && draft_.approved,
                       {},
                       draft_.changes};
  if (draft_.ago_min > 0) out.mixed_ms = session_.now().wall_ms - draft_.ago_min * 60'000LL;
  // A mix that is changed was not mixed anew.
  if (draft_.changes)
    for (const auto& one : session_.car()->air.mixes)
      if (one.mix == *draft_.changes) out.mixed_ms = one.mixed_ms.value_or(one.at.wall_ms);
  session_.post(out, [this, product = *draft_.product,
                      batch = draft_.batch.trimmed()](const Result<engine::Wrote>& wrote) {
    if (!wrote) return;
    keep(hex(product), batch);
    draft_ = {};
    emit mixChanged();
    emit mixKept();
  });
}

// The picture of the label, as the stage's own list wants it.
QString SprayedViewModel::labelKey() const {
  if (!session_.car()) return {};
  for (const auto& one : folds::shots_of_car(*session_.car(), session_.shop(), Stage::BeforeTheGun))
    if (one.shot.view == job::ShotView::PlateOrLabel && one.shot.shot_name == "mix label" &&
        one.state == folds::ShotState::Missing)
      return screens::key_of(one);
  return {};
}

// 4) The coats that are typed

void SprayedViewModel::startCoats(const QString& mix) {
  coats_ = {};
  coats_.gun = kept(QStringLiteral("gun"));
  const auto id = MixId::parse(mix.toStdString());
  if (id) coats_.mix = *id;
  // What the first mix was put on is what the next one goes on.
  if (const auto* car = session_.car())
    for (const auto& one : car->air.mixes)
      for (const auto& coat : one.coats)
        if (one.mix != coats_.mix) coats_.panels = {coat.panels.begin(), coat.panels.end()};
  show_panels();
  emit coatsChanged();
}

void SprayedViewModel::show_panels() {
  std::vector<QVariantList> rows;
  if (const auto* car = session_.car())
    for (const auto& panel : car->panels)
      rows.push_back({key_of_panel(panel.plan.panel),
                      sentence(words_of(panel.plan.panel, car->body)),
                      coats_.panels.contains(panel.plan.panel)});
  panels_.set(std::move(rows));
}

QString SprayedViewModel::coatsTitle() const {
  if (session_.car() && coats_.mix)
    for (const auto& mix : session_.car()->air.mixes)
      if (mix.mix == *coats_.mix) return tr("Coats of %1").arg(name_of(mix.product));
  return tr("Coats");
}

int SprayedViewModel::body() const {
  return session_.car() ? static_cast<int>(session_.car()->body) : -1;
}

QStringList SprayedViewModel::chosenPanels() const {
  QStringList out;
  for (const auto panel : coats_.panels) out << key_of_panel(panel);
  return out;
}

void SprayedViewModel::flipPanel(const QString& word) {
  const auto panel = from_word<job::Panel>(word.toStdString());
  if (!panel || !session_.car() || !session_.car()->find(*panel)) return;
  if (!coats_.panels.erase(*panel)) coats_.panels.insert(*panel);
  show_panels();
  emit coatsChanged();
}

void SprayedViewModel::setCoats(int coats) {
  coats_.coats = std::clamp(coats, 1, 10);
  emit coatsChanged();
}

void SprayedViewModel::setFlashMin(int minutes) {
  coats_.flash_min = std::clamp(minutes, 0, 600);
  emit coatsChanged();
}

void SprayedViewModel::setGun(const QString& gun) {
  coats_.gun = gun;
  emit coatsChanged();
}

void SprayedViewModel::setHeavy(bool heavy) {
  coats_.heavy = heavy;
  emit coatsChanged();
}

QString SprayedViewModel::coatsSecond() const {
  if (!session_.hasPerson()) return tr("say who you are first");
  if (coats_.panels.empty()) return tr("tap the panels first");
  const auto count = static_cast<int>(coats_.panels.size());
  return count == 1 ? tr("on 1 panel") : tr("on %1 panels").arg(count);
}

bool SprayedViewModel::coatsWait() const {
  return !writable() || !session_.hasPerson() || !coats_.mix || coats_.panels.empty();
}

void SprayedViewModel::keepCoats() {
  if (coatsWait()) return;
  acts::SayCoats out{session_.car()->job,
                     *coats_.mix,
                     {coats_.panels.begin(), coats_.panels.end()},
                     coats_.coats,
                     std::vector<double>(static_cast<std::size_t>(coats_.coats - 1),
                                         static_cast<double>(coats_.flash_min)),
                     coats_.gun.trimmed().toStdString(),
                     coats_.heavy};
  session_.post(out, [this, gun = coats_.gun.trimmed()](const Result<engine::Wrote>& wrote) {
    if (!wrote) return;
    keep(QStringLiteral("gun"), gun);
    coats_ = {};
    emit coatsChanged();
    emit coatsKept();
  });
}

}  // namespace jambline::screens
