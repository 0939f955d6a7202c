#include "screens/rules_view_model.h"

#include <algorithm>
#include <tuple>

#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::RuleKind;
using job::Step;

QString heading_of(RuleKind kind) {
  switch (kind) {
    case RuleKind::NoOverride:
      return RulesViewModel::tr("No way round");
    case RuleKind::Hold:
      return RulesViewModel::tr("Held until its clock is over");
    case RuleKind::Hard:
      return RulesViewModel::tr("Broken only with a reason");
    case RuleKind::Soft:
      return RulesViewModel::tr("Shown only");
  }
  return {};
}

StateKind shape_of_rule(const job::AssemblyRule& rule) {
  if (rule.retired) return StateKind::NotYet;
  return rule.kind == RuleKind::NoOverride ? StateKind::Must
         : rule.kind == RuleKind::Soft     ? StateKind::NotYet
                                           : StateKind::Waits;
}
}  // namespace

RulesViewModel::RulesViewModel(Session& session, QObject* parent)
    : Form(session, parent),
      rows_({"key", "heading", "title", "before", "why", "shape", "retired", "fixed"}, this),
      steps_({"key", "title", "words", "chosen"}, this) {
  std::vector<QVariantList> steps;
  for (std::size_t i = 0; i < enum_words<Step>.size(); ++i) {
    const auto step = static_cast<Step>(i);
    steps.push_back({text(word_of(step)), sentence(words_of(step)), QString(), false});
  }
  steps_.set(std::move(steps));
  connect(&session, &Session::shopChanged, this, &RulesViewModel::refresh);
  refresh();
}

void RulesViewModel::refresh() {
  auto rules = session().shop().rules;
  std::stable_sort(rules.begin(), rules.end(), [](const auto& a, const auto& b) {
    return std::tuple(a.said.retired, -static_cast<int>(a.said.kind), a.said.after) <
           std::tuple(b.said.retired, -static_cast<int>(b.said.kind), b.said.after);
  });
  std::vector<QVariantList> rows;
  QString last;
  for (const auto& one : rules) {
    const QString heading = one.said.retired ? tr("Retired") : heading_of(one.said.kind);
    rows.push_back({text(one.rule.hex()), heading == last ? QString() : heading,
                    sentence(words_of(one.said.after)),
                    tr("not before: %1").arg(words_of(one.said.before)), text(one.said.why),
                    shape_of(shape_of_rule(one.said)), one.said.retired,
                    one.said.kind == RuleKind::NoOverride});
    last = heading;
  }
  rows_.set(std::move(rows));
  emit changed();
}

QString RulesViewModel::before() const {
  return before_chosen_ ? sentence(words_of(draft_.before)) : QString();
}

QString RulesViewModel::after() const {
  return after_chosen_ ? sentence(words_of(draft_.after)) : QString();
}

QStringList RulesViewModel::kinds() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<RuleKind>.size(); ++i)
    out << sentence(words_of(static_cast<RuleKind>(i)));
  return out;
}

void RulesViewModel::setKind(int kind) {
  if (kind < 0 || kind >= static_cast<int>(enum_words<RuleKind>.size())) return;
  draft_.kind = static_cast<RuleKind>(kind);
  emit formChanged();
}

void RulesViewModel::retire(const QString& rule) {
  set_retired(rule, true);
}

void RulesViewModel::putBack(const QString& rule) {
  set_retired(rule, false);
}

void RulesViewModel::set_retired(const QString& key, bool retired) {
  for (const auto& one : session().shop().rules) {
    if (text(one.rule.hex()) != key) continue;
    job::AssemblyRule said = one.said;
    said.retired = retired;
    return say({one.rule, said});
  }
}

// What is refused is said at the form too: a sheet may stand over the banner.
void RulesViewModel::say(acts::SetRule command) {
  nothingWrong();
  session().post(std::move(command), [this](const Result<engine::Wrote>& wrote) {
    if (wrote) {
      emit kept();
      return;
    }
    const ErrorWords said = words_of(wrote.error());
    refuse(QStringLiteral("rule"), tr("%1 %2").arg(said.what, said.todo));
  });
}

void RulesViewModel::start() {
  nothingWrong();
  draft_ = {};
  before_chosen_ = false;
  after_chosen_ = false;
  emit formChanged();
}

void RulesViewModel::chooseBefore(const QString& word) {
  const auto step = from_word<Step>(word.toStdString());
  if (!step) return;
  draft_.before = *step;
  before_chosen_ = true;
  nothingWrong();
  emit formChanged();
}

void RulesViewModel::chooseAfter(const QString& word) {
  const auto step = from_word<Step>(word.toStdString());
  if (!step) return;
  draft_.after = *step;
  after_chosen_ = true;
  nothingWrong();
  emit formChanged();
}

void RulesViewModel::keep(const QString& why) {
  nothingWrong();
  if (!after_chosen_) refuse(QStringLiteral("after"), tr("Choose the step that waits."));
  if (!before_chosen_) refuse(QStringLiteral("before"), tr("Choose the step that comes first."));
  const auto said = words(QStringLiteral("why"), why);
  if (refused() || !said) return;
  draft_.why = *said;
  say({std::nullopt, draft_});
}

}  // namespace jambline::screens
