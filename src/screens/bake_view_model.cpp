#include "screens/bake_view_model.h"

#include <algorithm>
#include <cmath>

#include "folds/booth_state.h"
#include "screens/state_kind.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr double warn_under_c = 5;
constexpr double least_limit_c = 20, most_limit_c = 150;
constexpr double least_limit_min = 1, most_limit_min = 600;
}  // namespace

BakeViewModel::BakeViewModel(Session& session, QObject* parent)
    : QObject(parent), session_(session), fields_({"key", "title", "words", "chosen"}, this) {
  connect(&session_, &Session::carOrShopChanged, this, &BakeViewModel::refresh);
  connect(&session_, &Session::secondPassed, this, [this] {
    if (running()) emit changed();
  });
  refresh();
}

void BakeViewModel::refresh() {
  const std::optional<JobId> job =
      session_.car() ? std::optional(session_.car()->job) : std::nullopt;
  if (job != job_) {
    job_ = job;
    most_c_.reset();
    most_min_.reset();
    field_ = 0;
  }
  show_fields();
}

void BakeViewModel::show_fields() {
  fields_.set({{0, tr("Most"), most_c_ ? temperature_words(*most_c_, session_.units()) : QString(),
                field_ == 0},
               {1, tr("For"), most_min_ ? tr("%1 min").arg(std::lround(*most_min_)) : QString(),
                field_ == 1}});
  emit changed();
}

bool BakeViewModel::needsLimit() const {
  return session_.car() && session_.car()->drive != job::Drive::Combustion;
}

bool BakeViewModel::hasLimit() const {
  return session_.car() && session_.car()->air.bake_limit;
}

QString BakeViewModel::driveWords() const {
  return session_.car() ? sentence(words_of(session_.car()->drive)) : QString();
}

QString BakeViewModel::limitWords() const {
  if (!hasLimit())
    return needsLimit() ? tr("The carmaker's limit is not read. Without it this car is not baked.")
                        : tr("No limit of the carmaker is read.");
  const auto& limit = *session_.car()->air.bake_limit;
  const QString out = tr("At most %1 for %2 min: %3, read by %4")
                          .arg(temperature_words(limit.most_c, session_.units()))
                          .arg(std::lround(limit.most_min))
                          .arg(QString::fromStdString(limit.source), session_.name_of(limit.by));
  return limit.heads.size() > 1 ? tr("%1. Two were read: the lower and the shorter holds.").arg(out)
                                : out;
}

const folds::BakeView* BakeViewModel::now() const {
  return session_.car() && !session_.car()->air.bakes.empty() ? &session_.car()->air.bakes.back()
                                                              : nullptr;
}

bool BakeViewModel::running() const {
  return now() && now()->on;
}

std::optional<double> BakeViewModel::hottest_c() const {
  std::optional<double> out;
  if (running())
    for (const auto& read : session_.car()->air.temperatures)
      if (now()->at.order < read.at.order)
        out = std::max(out.value_or(read.surface_c), read.surface_c);
  return out;
}

QString BakeViewModel::stateWords() const {
  if (!session_.car()) return {};
  if (!now()) return hasLimit() || !needsLimit() ? tr("Not baked yet") : limitWords();
  const auto minutes = folds::elapsed_ms(now()->at, session_.now()) / 60'000;
  if (!running())
    return tr("Bake ended %1")
        .arg(time_words(now()->at.wall_ms, session_.now().wall_ms, session_.zone()));
  return hasLimit() ? tr("Baking, %1 of at most %2 min")
                          .arg(minutes)
                          .arg(std::lround(session_.car()->air.bake_limit->most_min))
                    : tr("Baking, %1").arg(duration_words(minutes * 60'000));
}

int BakeViewModel::stateShape() const {
  if (!warning().isEmpty()) return shape_of(StateKind::Must);
  if (running()) return shape_of(StateKind::Running);
  if (now()) return shape_of(StateKind::Done);
  return shape_of(needsLimit() && !hasLimit() ? StateKind::Must : StateKind::NotYet);
}

QString BakeViewModel::warning() const {
  if (!running() || !hasLimit()) return {};
  const auto& limit = *session_.car()->air.bake_limit;
  QStringList out;
  if (const auto hottest = hottest_c()) {
    const QString read = temperature_words(*hottest, session_.units());
    const QString most = temperature_words(limit.most_c, session_.units());
    if (*hottest >= limit.most_c)
      out << tr("A panel is at %1, the carmaker's limit is %2: end the bake.").arg(read, most);
    else if (*hottest >= limit.most_c - warn_under_c)
      out << tr("A panel is at %1, near the carmaker's limit of %2.").arg(read, most);
  }
  const auto baked_min = static_cast<double>(folds::elapsed_ms(now()->at, session_.now())) / 60'000;
  if (baked_min >= limit.most_min)
    out << tr("The carmaker's %1 min are over: end the bake.").arg(std::lround(limit.most_min));
  return out.join(QLatin1Char(' '));
}

QString BakeViewModel::mainText() const {
  return running() ? tr("End the bake") : tr("Start the bake");
}

QString BakeViewModel::mainSecond() const {
  if (!session_.hasPerson()) return tr("say who you are first");
  if (running()) return tr("the rest begins");
  if (needsLimit() && !hasLimit()) return tr("waits for the carmaker's limit");
  return tr("not before the flash is over");
}

bool BakeViewModel::mainWaits() const {
  const auto* car = session_.car();
  if (!car || session_.readOnly() || car->delivered_ms || !session_.hasPerson()) return true;
  return !running() && needsLimit() && !hasLimit();
}

void BakeViewModel::act() {
  if (mainWaits()) return;
  const folds::CarView& car = *session_.car();
  const bool on = !running();
  // Air that goes round clears nothing.
  if (const auto* booth = on && car.booth ? session_.shop().find(*car.booth) : nullptr) {
    const auto state =
        folds::booth_state(*booth, session_.shop().air.find(booth->booth), session_.now());
    if (state.word != folds::BoothWordNow::Idle)
      session_.post(acts::SayExhaust{booth->booth, job::BoothWord::Bake});
  }
  session_.post(acts::SayBake{car.job, on});
}

QString BakeViewModel::fieldTitle() const {
  return field_ == 0 ? tr("At most, by the carmaker") : tr("For at most");
}

QString BakeViewModel::unitWords() const {
  return field_ == 0 ? temperature_unit(session_.units()) : tr("min");
}

int BakeViewModel::digits() const {
  if (field_ == 1) return typed_.startsWith(QLatin1Char('1')) ? 3 : 2;
  const bool of_three = session_.units() == Units::Us ? typed_.startsWith(QLatin1Char('1')) ||
                                                            typed_.startsWith(QLatin1Char('2')) ||
                                                            typed_.startsWith(QLatin1Char('3'))
                                                      : typed_.startsWith(QLatin1Char('1'));
  return of_three ? 3 : 2;
}

void BakeViewModel::setTyped(const QString& typed) {
  if (typed_ == typed) return;
  typed_ = typed;
  if (!typed_.isEmpty()) wrong_.clear();
  emit typedChanged();
  emit changed();
}

void BakeViewModel::beginLimit() {
  most_c_.reset();
  most_min_.reset();
  chooseField(0);
}

// What is typed again is not there until then.
void BakeViewModel::chooseField(int field) {
  field_ = field == 1 ? 1 : 0;
  (field_ == 1 ? most_min_ : most_c_).reset();
  typed_.clear();
  wrong_.clear();
  emit typedChanged();
  show_fields();
}

void BakeViewModel::type(int value) {
  typed_.clear();
  wrong_.clear();
  if (field_ == 0) {
    const double c = celsius_of(value, session_.units());
    if (c >= least_limit_c && c <= most_limit_c) {
      most_c_ = c;
      if (!most_min_) field_ = 1;
    } else {
      wrong_ = tr("A limit is from %1 to %2. Type it again.")
                   .arg(temperature_words(least_limit_c, session_.units()),
                        temperature_words(most_limit_c, session_.units()));
    }
  } else if (value >= least_limit_min && value <= most_limit_min) {
    most_min_ = value;
  } else {
    wrong_ = tr("A limit is from 1 to 600 min. Type it again.");
  }
  emit typedChanged();
  show_fields();
}

QString BakeViewModel::keepText() const {
  return typed_.isEmpty() ? tr("Keep the carmaker's limit") : tr("Take this number");
}

QString BakeViewModel::keepSecond() const {
  if (!typed_.isEmpty()) return fieldTitle();
  if (!most_c_) return tr("type the temperature first");
  if (!most_min_) return tr("type the minutes first");
  return session_.hasPerson() ? tr("with where it says so") : tr("say who you are first");
}

bool BakeViewModel::keepWaits(const QString& source) const {
  if (!typed_.isEmpty()) return false;
  return !most_c_ || !most_min_ || source.trimmed().isEmpty() || !session_.hasPerson() ||
         !session_.car();
}

void BakeViewModel::takeOrKeep(const QString& source) {
  if (!typed_.isEmpty()) {
    type(typed_.toInt());
    return;
  }
  if (keepWaits(source)) return;
  session_.post(acts::ReadBakeLimit{session_.car()->job, *most_c_, *most_min_,
                                    source.trimmed().toStdString()},
                [this](const Result<engine::Wrote>& wrote) {
                  if (!wrote) return;
                  beginLimit();
                  emit limitKept();
                });
}

}  // namespace jambline::screens
