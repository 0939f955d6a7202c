#include "screens/assembly_view_model.h"

#include <algorithm>

#include "screens/spans.h"
#include "screens/step_words.h"
#include "screens/text.h"
#include "screens/units.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using folds::StepOfCar;
using job::RuleKind;
using job::Step;

}  // namespace

AssemblyViewModel::AssemblyViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      rows_({"key", "heading", "title", "words", "broken", "shape", "dashed", "isNext"}, this),
      ways_({"key", "title", "words", "shape"}, this) {
  connect(&session, &Session::snapshotChanged, this, &AssemblyViewModel::follow);
  connect(&session, &Session::secondPassed, this, [this] {
    if (++seconds_ % work_out_every_s == 0 && car_) work_out();
  });
  follow();
}

bool AssemblyViewModel::writable() const {
  const auto* car = session_.car();
  return car && !session_.readOnly() && car->unknown_entries == 0 && !car->delivered_ms;
}

void AssemblyViewModel::follow() {
  const auto car = session_.car() ? session_.snapshot().car : nullptr;
  const auto shop = session_.snapshot().shop;
  if (car == car_ && shop == shop_) return;
  if (!car || !car_ || car->job != car_->job) {
    worked_ = std::make_shared<const Worked>();
    open_.reset();
  }
  car_ = car;
  shop_ = shop;
  work_out();
}

void AssemblyViewModel::work_out() {
  const std::uint64_t number = ++asked_;
  if (!car_) return show();
  session_.calculate(
      this,
      [this, number, now = session_.now(), car = car_, shop = shop_]() -> std::function<void()> {
        auto out = std::make_shared<Worked>();
        out->steps = folds::in_order(folds::steps_of_car(*car, *shop, now), *shop);
        out->car = car;
        out->shop = shop;
        return [this, number, out] {
          if (number != asked_) return;
          worked_ = out;
          show();
        };
      });
}

const StepOfCar* AssemblyViewModel::find(Step step) const {
  for (const auto& one : worked_->steps)
    if (one.step == step) return &one;
  return nullptr;
}

std::vector<folds::RuleInTheWay> AssemblyViewModel::in_the_way(Step step) const {
  return worked_->shop ? folds::in_the_way(worked_->steps, *worked_->shop, step)
                       : std::vector<folds::RuleInTheWay>{};
}

bool AssemblyViewModel::held(Step step) const {
  const auto rules = in_the_way(step);
  return !rules.empty() && rules.front().said.kind != RuleKind::Soft;
}

std::optional<Step> AssemblyViewModel::next() const {
  for (const auto& one : worked_->steps)
    if (!one.done && !one.by_itself && !held(one.step)) return one.step;
  return std::nullopt;
}

std::optional<Step> AssemblyViewModel::waits_first() const {
  for (const auto& one : worked_->steps)
    if (!one.done && one.step != Step::Delivery) return one.step;
  return std::nullopt;
}

int AssemblyViewModel::done_count() const {
  return static_cast<int>(std::count_if(worked_->steps.begin(), worked_->steps.end(),
                                        [](const auto& one) { return one.done; }));
}

QString AssemblyViewModel::until_words(const StepOfCar& step) const {
  if (step.step == Step::Delivery) return tr("said on the walk-around");
  if (step.until_ms)
    return tr("its clock runs until about %1")
        .arg(time_words(*step.until_ms, session_.now().wall_ms, session_.zone()));
  return tr("its clock cannot say when: log what it needs under Cure");
}

QString AssemblyViewModel::words_of_step(const StepOfCar& step) const {
  const auto* said = worked_->car ? worked_->car->assembly.find(step.step) : nullptr;
  if (step.done && step.by_itself) return tr("the car knows it by its stages and clocks");
  if (step.done && said)
    return tr("%1, %2").arg(session_.name_of(said->by),
                            time_words(said->wall_ms, session_.now().wall_ms, session_.zone()));
  if (step.done) return tr("done");
  if (step.by_itself) return until_words(step);
  QStringList hard;
  QStringList soft;
  bool no_way = false;
  for (const auto& rule : in_the_way(step.step)) {
    no_way = no_way || rule.said.kind == RuleKind::NoOverride;
    QString before = words_of(rule.said.before);
    if (rule.until_ms)
      before =
          tr("%1 (about %2)")
              .arg(before, time_words(*rule.until_ms, session_.now().wall_ms, session_.zone()));
    (rule.said.kind == RuleKind::Soft ? soft : hard) << before;
  }
  if (no_way) return tr("not before: %1. No way round.").arg(hard.join(tr(", ")));
  if (!hard.isEmpty()) return tr("not before: %1").arg(hard.join(tr(", ")));
  if (!soft.isEmpty()) return tr("better after: %1").arg(soft.join(tr(", ")));
  return said ? tr("open again, %1").arg(session_.name_of(said->by)) : tr("can be done now");
}

QString AssemblyViewModel::broken_words(Step step) const {
  const auto* said = worked_->car ? worked_->car->assembly.find(step) : nullptr;
  if (!said || !said->done || said->broken.empty()) return {};
  QStringList out;
  for (const auto& broken : said->broken)
    for (const auto& rule : worked_->shop->rules)
      if (rule.rule == broken.rule) out << words_of(rule.said.before);
  return tr("before %1: %2").arg(out.join(tr(", ")), words_of(said->broken.front().reason));
}

QVariantList AssemblyViewModel::row_of(const StepOfCar& step, const QString& heading) const {
  StateKind shape = StateKind::NotYet;
  const auto rules =
      step.done || step.by_itself ? std::vector<folds::RuleInTheWay>{} : in_the_way(step.step);
  const bool waits = !rules.empty() && rules.front().said.kind != RuleKind::Soft;
  if (step.done)
    shape = StateKind::Done;
  else if (!rules.empty() && rules.front().said.kind == RuleKind::NoOverride)
    shape = StateKind::Must;
  else if (waits || (step.by_itself && step.step != Step::Delivery))
    shape = StateKind::Waits;
  return {text(word_of(step.step)),
          heading,
          sentence(words_of(step.step)),
          words_of_step(step),
          broken_words(step.step),
          shape_of(shape),
          !step.done && (waits || step.by_itself),
          step.step == next()};
}

void AssemblyViewModel::show() {
  std::vector<QVariantList> rows;
  std::vector<const StepOfCar*> done;
  QString heading = tr("To do, in this order");
  for (const auto& one : worked_->steps) {
    if (one.done) {
      done.push_back(&one);
      continue;
    }
    rows.push_back(row_of(one, heading));
    heading.clear();
  }
  heading = tr("Done");
  for (auto one = done.rbegin(); one != done.rend(); ++one) {
    rows.push_back(row_of(**one, heading));
    heading.clear();
  }
  rows_.set(std::move(rows));
  std::vector<QVariantList> ways;
  if (open_)
    for (const auto& rule : in_the_way(*open_)) {
      QString words = sentence(words_of(rule.said.kind));
      if (!rule.said.why.empty()) words = tr("%1 \u00b7 %2").arg(words, text(rule.said.why));
      if (rule.until_ms)
        words =
            tr("about %1 \u00b7 %2")
                .arg(time_words(*rule.until_ms, session_.now().wall_ms, session_.zone()), words);
      ways.push_back({text(rule.rule.hex()), sentence(words_of(rule.said.before)), words,
                      shape_of(rule.said.kind == RuleKind::NoOverride ? StateKind::Must
                               : rule.said.kind == RuleKind::Soft     ? StateKind::NotYet
                                                                      : StateKind::Waits)});
    }
  ways_.set(std::move(ways));
  emit changed();
}

QString AssemblyViewModel::countWords() const {
  return tr("%1 of %2 steps are done").arg(done_count()).arg(count());
}

QStringList AssemblyViewModel::cautions() const {
  const auto step = next();
  return step ? step_cautions(*step) : QStringList();
}

QString AssemblyViewModel::mainText() const {
  if (!writable()) return {};
  if (const auto step = next()) return tr("Done: %1").arg(words_of(*step));
  const auto step = waits_first();
  return step ? tr("Waits: %1").arg(words_of(*step)) : QString();
}

QString AssemblyViewModel::mainSecond() const {
  const auto step = next() ? next() : waits_first();
  const auto* found = step ? find(*step) : nullptr;
  if (!found) return {};
  return next() && in_the_way(*step).empty() ? QString() : words_of_step(*found);
}

QString AssemblyViewModel::rowWords() const {
  const QString count_words = tr("%1 of %2 done").arg(done_count()).arg(count());
  if (const auto step = next()) return tr("%1 \u00b7 next: %2").arg(count_words, words_of(*step));
  const auto step = waits_first();
  return step ? tr("%1 \u00b7 waits: %2").arg(count_words, words_of(*step)) : count_words;
}

int AssemblyViewModel::rowShape() const {
  return shape_of(!waits_first() ? StateKind::Done
                  : !next()      ? StateKind::Waits
                                 : StateKind::NotYet);
}

QString AssemblyViewModel::step() const {
  return open_ ? text(word_of(*open_)) : QString();
}

QString AssemblyViewModel::stepTitle() const {
  return open_ ? sentence(words_of(*open_)) : QString();
}

QString AssemblyViewModel::stepWords() const {
  const auto* found = open_ ? find(*open_) : nullptr;
  if (!found) return {};
  const QString broken = broken_words(*open_);
  return broken.isEmpty()
             ? sentence(words_of_step(*found))
             : tr("%1. Against a rule, %2").arg(sentence(words_of_step(*found)), broken);
}

AssemblyViewModel::StepMode AssemblyViewModel::stepMode() const {
  const auto* found = open_ ? find(*open_) : nullptr;
  if (!found) return StepMode::None;
  if (found->by_itself) return StepMode::Clock;
  if (found->done) return StepMode::Done;
  const auto rules = in_the_way(*open_);
  if (rules.empty() || rules.front().said.kind == RuleKind::Soft) return StepMode::Ready;
  return rules.front().said.kind == RuleKind::NoOverride ? StepMode::NoWay : StepMode::Reason;
}

QStringList AssemblyViewModel::stepCautions() const {
  return open_ ? step_cautions(*open_) : QStringList();
}

bool AssemblyViewModel::stepOfFit() const {
  return open_ && is_of_fit(*open_);
}

bool AssemblyViewModel::stepOfClock() const {
  return open_ && is_of_clock(*open_) && stepMode() == StepMode::Clock;
}

QStringList AssemblyViewModel::reasons() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<job::RuleReason>.size(); ++i)
    out << sentence(words_of(static_cast<job::RuleReason>(i)));
  return out;
}

void AssemblyViewModel::open(const QString& word) {
  open_ = from_word<Step>(word.toStdString());
  show();
}

void AssemblyViewModel::act() {
  if (const auto step = next()) return post(*step, true, {});
  if (const auto step = waits_first()) open(text(word_of(*step)));
}

void AssemblyViewModel::say() {
  if (open_ && stepMode() == StepMode::Ready) post(*open_, true, {});
}

void AssemblyViewModel::sayAgainst(int reason) {
  if (!open_ || stepMode() != StepMode::Reason || reason < 0 || reason >= reasons().size()) return;
  post(*open_, true, static_cast<job::RuleReason>(reason));
}

void AssemblyViewModel::reopen() {
  if (open_ && stepMode() == StepMode::Done) post(*open_, false, {});
}

void AssemblyViewModel::post(Step step, bool done, std::optional<job::RuleReason> reason) {
  if (!writable()) return;
  session_.post(acts::SayStep{session_.car()->job, step, done, reason},
                [this](const Result<engine::Wrote>& wrote) {
                  if (wrote) emit kept();
                });
}

}  // namespace jambline::screens
