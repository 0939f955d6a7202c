#include "screens/respirator_form.h"

#include "base/is_one.h"
#include "screens/air_words.h"
#include "screens/exposure_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr int us_table_year = 2006;

template <class E>
QStringList all_of() {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<E>.size(); ++i)
    out << sentence(words_of(static_cast<E>(i)));
  return out;
}
}  // namespace

RespiratorForm::RespiratorForm(Session& session, QObject* parent)
    : Form(session, parent),
      uses_({"key", "title", "from", "value", "note", "opens"}, this),
      sum_(this) {
  connect(&session, &Session::shopChanged, this, &RespiratorForm::refresh);
}

QString RespiratorForm::model() const {
  return QString::fromStdString(shown_.model);
}

QString RespiratorForm::factor() const {
  if (open_) return concentration_number(shown_.assigned_factor);
  return usualFactor(kind(), scheme());
}

QString RespiratorForm::authority() const {
  return open_ ? QString::fromStdString(shown_.authority) : usualAuthority(scheme());
}

QString RespiratorForm::year() const {
  return open_ ? QString::number(shown_.year) : usualYear(scheme());
}

QString RespiratorForm::allowed() const {
  return QString::fromStdString(shown_.allowed_for_activated);
}

QStringList RespiratorForm::kinds() const {
  return all_of<job::RespiratorKind>();
}

QStringList RespiratorForm::schemes() const {
  return all_of<trade::FactorScheme>();
}

void RespiratorForm::open(const QString& respirator) {
  nothingWrong();
  const auto id = RespiratorId::parse(respirator.toStdString());
  const auto* known = id ? session().shop().air.find(RespiratorId{*id}) : nullptr;
  open_ = known ? std::optional(known->respirator) : std::nullopt;
  shown_ = known ? known->said : job::Respirator{};
  if (!known) shown_.kind = job::RespiratorKind::SuppliedHood;
  refresh();
}

void RespiratorForm::refresh() {
  std::vector<QVariantList> rows;
  const auto& air = session().shop().air;
  const auto* known = open_ ? air.find(*open_) : nullptr;
  if (known)
    for (const auto& limit : air.limits) {
      if (limit.said.retired) continue;
      const auto use = words_of(folds::use_of(*known, limit));
      rows.push_back({QString::fromStdString(limit.limit.hex()), limit_title(limit.said),
                      limit_from(limit.said), use.result ? use.value : use.note,
                      use.result ? use.note : QString(), use.result.has_value()});
    }
  uses_.set(std::move(rows));
  emit changed();
}

QString RespiratorForm::usualFactor(int kind, int scheme) const {
  if (!is_one<job::RespiratorKind>(kind) || scheme != static_cast<int>(trade::FactorScheme::Us))
    return {};
  return concentration_number(job::usual_us_factor(static_cast<job::RespiratorKind>(kind)));
}

QString RespiratorForm::usualAuthority(int scheme) const {
  return scheme == static_cast<int>(trade::FactorScheme::Us)
             ? QStringLiteral("OSHA, 29 CFR 1910.134 table 1")
             : QString();
}

QString RespiratorForm::usualYear(int scheme) const {
  return scheme == static_cast<int>(trade::FactorScheme::Us) ? QString::number(us_table_year)
                                                             : QString();
}

bool RespiratorForm::asksAllowed(int kind) const {
  return is_one<job::RespiratorKind>(kind) &&
         !job::supplies_air(static_cast<job::RespiratorKind>(kind));
}

void RespiratorForm::keep(const QString& model, int kind, int scheme, const QString& factor,
                          const QString& authority, const QString& year, const QString& allowed,
                          bool retired) {
  nothingWrong();
  if (!is_one<job::RespiratorKind>(kind) || !is_one<trade::FactorScheme>(scheme)) return;
  const auto called = words(QStringLiteral("model"), model);
  const auto value = number(QStringLiteral("factor"), factor, 1, 10'000);
  const auto by = words(QStringLiteral("authority"), authority);
  const auto of_year = whole(QStringLiteral("year"), year, 1900, 2200);
  const auto shown_model = called.value_or(std::string());
  for (const auto& other : session().shop().air.respirators)
    if (called && !(open_ && other.respirator == *open_) && !other.said.retired &&
        other.said.model == shown_model && static_cast<int>(other.said.kind) == kind)
      refuse(QStringLiteral("model"), tr("This one is in the register already."));
  if (refused()) return;
  const std::string rests_on =
      asksAllowed(kind) ? allowed.trimmed().left(200).toStdString() : std::string();
  const job::Respirator said{*called,
                             static_cast<job::RespiratorKind>(kind),
                             static_cast<trade::FactorScheme>(scheme),
                             *value,
                             *by,
                             *of_year,
                             rests_on,
                             retired};
  if (open_ && said == shown_) {
    emit kept();
    return;
  }
  keep_as(acts::SetRespirator{open_, said});
}

void RespiratorForm::openUse(const QString& key) {
  const auto& air = session().shop().air;
  const auto* known = open_ ? air.find(*open_) : nullptr;
  if (!known) return;
  for (const auto& limit : air.limits) {
    if (QString::fromStdString(limit.limit.hex()) != key) continue;
    const auto use = words_of(folds::use_of(*known, limit));
    if (use.result)
      sum_.show(tr("May be worn up to"), use.value, use.result->basis, session().units(),
                tr("Within a working respirator program only. The maker's own limit for the device "
                   "or the cartridge may be lower."));
  }
}

}  // namespace jambline::screens
