#include "screens/fit_test_form.h"

#include <QStringList>

#include "screens/air_words.h"
#include "screens/exposure_words.h"
#include "screens/typed_times.h"

namespace jambline::screens {

namespace {
constexpr std::size_t most_exercises = 20;
}

FitTestForm::FitTestForm(Session& session, QObject* parent)
    : Form(session, parent), respirators_({"key", "title", "note", "chosen"}, this), sum_(this) {
  connect(&session, &Session::shopChanged, this, &FitTestForm::refresh);
}

// A new test is as the last one of this person was: in the same respirator, size and method.
void FitTestForm::open(const PersonId& person) {
  nothingWrong();
  person_ = person;
  respirator_.reset();
  said_ = {};
  const auto& air = session().shop().air;
  if (const auto* known = air.find(person); known && !known->fit_tests.empty()) {
    const auto& last = known->fit_tests.back();
    respirator_ = last.respirator;
    said_.size = last.said.size;
    said_.method = last.said.method;
    said_.valid_days = last.said.valid_days;
  }
  if (!chosen())
    for (const auto& one : air.respirators)
      if (!respirator_ && !one.said.retired && job::fits_tightly(one.said.kind))
        respirator_ = one.respirator;
  if (!mayBeQualitative()) said_.method = job::FitMethod::Quantitative;
  said_.tested_day = today();
  refresh();
}

void FitTestForm::refresh() {
  std::vector<QVariantList> rows;
  for (const auto& one : session().shop().air.respirators)
    if (!one.said.retired && job::fits_tightly(one.said.kind))
      rows.push_back({QString::fromStdString(one.respirator.hex()),
                      QString::fromStdString(one.said.model), words_of(one.said.kind),
                      respirator_ == one.respirator});
  respirators_.set(std::move(rows));
  emit changed();
}

const folds::RespiratorView* FitTestForm::chosen() const {
  const auto* known = respirator_ ? session().shop().air.find(*respirator_) : nullptr;
  return known && job::fits_tightly(known->said.kind) ? known : nullptr;
}

bool FitTestForm::mayBeQualitative() const {
  const auto* known = chosen();
  return known && known->said.kind == job::RespiratorKind::HalfAirPurifying;
}

QString FitTestForm::factors() const {
  QStringList out;
  for (const double factor : said_.exercise_factors) out << concentration_number(factor);
  return out.join(QStringLiteral(", "));
}

std::optional<trade::FitTestResult> FitTestForm::result() const {
  const auto* known = chosen();
  if (!known || said_.exercise_factors.empty()) return std::nullopt;
  trade::FitTest asked;
  asked.exercise_factors = said_.exercise_factors;
  asked.facepiece = job::facepiece_of(known->said.kind);
  asked.valid_days = said_.valid_days;
  const auto out = trade::fit_test(asked);
  return out ? std::optional(*out) : std::nullopt;
}

QString FitTestForm::overall() const {
  const auto out = result();
  return out ? concentration_number(out->overall_factor, out->pass_mark) : QString();
}

QString FitTestForm::markWords() const {
  const auto out = result();
  if (!out) return {};
  const QString mark = concentration_number(out->pass_mark);
  return out->passes ? tr("pass mark %1").arg(mark) : tr("under the pass mark %1").arg(mark);
}

bool FitTestForm::under() const {
  const auto out = result();
  return out && !out->passes;
}

QString FitTestForm::dayText() const {
  return day_text(said_.tested_day);
}

QString FitTestForm::size() const {
  return QString::fromStdString(said_.size);
}

QString FitTestForm::validDays() const {
  return QString::number(said_.valid_days);
}

void FitTestForm::chooseRespirator(const QString& key) {
  const auto id = RespiratorId::parse(key.toStdString());
  if (!id || !session().shop().air.find(RespiratorId{*id})) return;
  respirator_ = RespiratorId{*id};
  if (!mayBeQualitative()) said_.method = job::FitMethod::Quantitative;
  nothingWrong();
  refresh();
}

void FitTestForm::chooseMethod(bool quantitative) {
  said_.method = quantitative || !mayBeQualitative() ? job::FitMethod::Quantitative
                                                     : job::FitMethod::Qualitative;
  emit changed();
}

void FitTestForm::sayPassed(bool passed) {
  said_.passed = passed;
  emit changed();
}

void FitTestForm::typeFactor(int factor) {
  nothingWrong();
  if (factor < 1)
    refuse(QStringLiteral("factor"), tr("A fit factor is 1 or more."));
  else if (said_.exercise_factors.size() >= most_exercises)
    refuse(QStringLiteral("factor"), tr("A test has seven exercises without the grimace."));
  else
    said_.exercise_factors.push_back(factor);
  emit changed();
}

void FitTestForm::dropFactor() {
  if (!said_.exercise_factors.empty()) said_.exercise_factors.pop_back();
  nothingWrong();
  emit changed();
}

void FitTestForm::openSum() {
  if (const auto out = result())
    sum_.show(tr("Overall fit factor"), overall(), out->basis, session().units(), markWords());
}

QString FitTestForm::dayWords(const QString& day) const {
  const auto typed = typed_day(day);
  return typed ? date_of_day(*typed) : QString();
}

void FitTestForm::keep(const QString& size, const QString& day, const QString& valid_days) {
  nothingWrong();
  if (!chosen()) refuse(QStringLiteral("respirator"), tr("Say which respirator was tested."));
  const auto of_size = words(QStringLiteral("size"), size);
  if (quantitative() && said_.exercise_factors.empty())
    refuse(QStringLiteral("factor"), tr("Type the factor of each exercise."));
  const auto tested = Form::day(QStringLiteral("day"), day);
  if (tested && *tested > today()) refuse(QStringLiteral("day"), tr("That day is still to come."));
  const auto valid = whole(QStringLiteral("validDays"), valid_days, 1, 36'500);
  if (refused()) return;
  job::FitTest said = said_;
  said.size = *of_size;
  said.tested_day = *tested;
  said.valid_days = *valid;
  if (quantitative())
    said.passed = !under();
  else
    said.exercise_factors.clear();
  keep_as(acts::RecordFitTest{person_, *respirator_, said, {}});
}

}  // namespace jambline::screens
