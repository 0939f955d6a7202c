#include "screens/bond_view_model.h"

#include <QDateTime>
#include <QTimeZone>
#include <array>

#include "base/spans.h"
#include "screens/air_words.h"
#include "screens/text.h"
#include "screens/typed_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr std::array<int, 5> agos_min{0, 5, 15, 30, 60};
constexpr double least_bond_c = -45;
constexpr double most_bond_c = 60;

}  // namespace

BondViewModel::BondViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      products_({"key", "title", "kindWords", "chosen"}, this),
      cases_({"key", "title", "chosen"}, this) {
  connect(&session, &Session::carOrShopChanged, this, &BondViewModel::refresh);
  refresh();
}

QStringList BondViewModel::parts() const {
  return {tr("windshield"), tr("back glass"), tr("quarter glass"),
          tr("door skin"),  tr("roof panel"), tr("quarter panel")};
}

QStringList BondViewModel::agos() const {
  QStringList out;
  for (const int ago : agos_min) out << (ago == 0 ? tr("just now") : tr("%1 min ago").arg(ago));
  return out;
}

QString BondViewModel::caution() const {
  return tr(
      "Pinchweld primed, no wet color or clear on the flange. A door glass stays open a crack, "
      "doors are not slammed, no pressure wash before the maker's time.");
}

const folds::ProductView* BondViewModel::product() const {
  return product_ ? session_.shop().air.find(*product_) : nullptr;
}

bool BondViewModel::ofGlass() const {
  const auto* chosen = product();
  return chosen && chosen->said.kind == job::ProductKind::GlassUrethane;
}

void BondViewModel::refresh() {
  if (session_.job() != job_) {
    job_ = session_.job();
    product_.reset();
    part_.clear();
    case_.clear();
  }
  std::vector<QVariantList> rows;
  for (const auto& one : session_.shop().air.products) {
    const bool glass = one.said.kind == job::ProductKind::GlassUrethane;
    if (one.said.retired || (!glass && one.said.kind != job::ProductKind::PanelAdhesive)) continue;
    rows.push_back({text(one.product.hex()), text(one.said.product_name),
                    glass && one.said.drive_away.empty() ? tr("its drive-away table is not entered")
                                                         : words_of(one.said.kind),
                    product_ == one.product});
  }
  products_.set(std::move(rows));
  rows.clear();
  if (const auto* chosen = product(); chosen && ofGlass())
    for (const auto& table : chosen->said.drive_away)
      rows.push_back(
          {text(table.case_name), text(table.case_name), text(table.case_name) == case_});
  cases_.set(std::move(rows));
  emit changed();
}

void BondViewModel::start() {
  product_.reset();
  part_.clear();
  case_.clear();
  ago_ = 0;
  typed_ms_.reset();
  for (QString* refusal : {&time_refusal_, &air_refusal_, &surface_refusal_, &humidity_refusal_})
    refusal->clear();
  emit started();
  refresh();
}

void BondViewModel::sayPart(const QString& part) {
  part_ = part.trimmed();
  emit changed();
}

void BondViewModel::chooseProduct(const QString& product) {
  const auto id = ProductId::parse(product.toStdString());
  product_ = id ? std::optional(ProductId{*id}) : std::nullopt;
  case_.clear();
  if (const auto* chosen = this->product();
      chosen && ofGlass() && chosen->said.drive_away.size() == 1)
    case_ = text(chosen->said.drive_away.front().case_name);
  refresh();
}

void BondViewModel::chooseCase(const QString& case_name) {
  case_ = case_name;
  refresh();
}

void BondViewModel::chooseAgo(int row) {
  if (row < 0 || static_cast<std::size_t>(row) >= agos_min.size()) return;
  ago_ = row;
  typed_ms_.reset();
  time_refusal_.clear();
  emit changed();
}

void BondViewModel::sayTime(const QString& typed) {
  time_refusal_.clear();
  typed_ms_.reset();
  if (!typed.trimmed().isEmpty()) {
    const auto time = typed_time(typed);
    if (time) {
      const QTimeZone zone(session_.zone().toLatin1());
      const QDate today = QDateTime::fromMSecsSinceEpoch(session_.now().wall_ms, zone).date();
      const std::int64_t at_ms = QDateTime(today, *time, zone).toMSecsSinceEpoch();
      if (at_ms <= session_.now().wall_ms)
        typed_ms_ = at_ms;
      else
        time_refusal_ = tr("%1 is still to come.").arg(typed.trimmed());
    } else {
      time_refusal_ = tr("That is no time: %1. Type it as 14:30.").arg(typed.trimmed());
    }
  }
  emit changed();
}

QString BondViewModel::waits() const {
  const auto* car = session_.car();
  if (!session_.hasPerson()) return tr("say who you are first");
  if (!car) return tr("no car");
  if (part_.isEmpty()) return tr("say what was bonded");
  if (!product()) return tr("choose the product");
  if (ofGlass() && caseCount() == 0) return tr("enter its drive-away table first");
  if (ofGlass() && case_.isEmpty()) return tr("choose the airbag and belt case");
  return time_refusal_.isEmpty() ? QString() : tr("say when it was set");
}

QString BondViewModel::mainText() const {
  return part_.isEmpty() ? tr("Log what was bonded") : tr("%1 set").arg(sentence(part_));
}

void BondViewModel::keep() {
  const auto* car = session_.car();
  if (!waits().isEmpty() || !car) return;
  acts::SayBonded said{car->job, *product_, part_.toStdString(), {}, typed_ms_};
  if (ofGlass()) said.case_name = case_.toStdString();
  const int ago = agos_min[static_cast<std::size_t>(ago_)];
  if (!said.set_ms && ago > 0) said.set_ms = session_.now().wall_ms - ago * minute_ms;
  session_.post(std::move(said), [this](const Result<engine::Wrote>& wrote) {
    if (wrote) emit kept();
  });
}

std::optional<double> BondViewModel::temperature(const QString& typed, QString& refusal) const {
  const auto shown = typed_number(typed);
  const double celsius = shown ? celsius_of(*shown, session_.units()) : 0;
  if (shown && celsius >= least_bond_c && celsius <= most_bond_c) return celsius;
  refusal = shown ? tr("It takes %1 to %2.")
                        .arg(temperature_words(least_bond_c, session_.units()),
                             temperature_words(most_bond_c, session_.units()))
                  : tr("Type a number.");
  return std::nullopt;
}

void BondViewModel::logAir(const QString& air, const QString& surface, const QString& humidity) {
  const auto* car = session_.car();
  if (!car) return;
  for (QString* refusal : {&air_refusal_, &surface_refusal_, &humidity_refusal_}) refusal->clear();
  const auto air_c = temperature(air, air_refusal_);
  const auto surface_c = temperature(surface, surface_refusal_);
  const auto percent = typed_number(humidity);
  const bool humid = percent && *percent >= 0.1 && *percent <= 100;
  if (!humid) humidity_refusal_ = tr("It takes 1 to 100 %.");
  emit changed();
  if (!air_c || !surface_c || !humid) return;
  session_.post(acts::ReadClimate{car->job, {}, *air_c, *surface_c, *percent},
                [this](const Result<engine::Wrote>& wrote) {
                  if (wrote) emit airKept();
                });
}

}  // namespace jambline::screens
