#include <algorithm>
#include <map>
#include <set>

#include "acts/decisions.h"

namespace jambline::acts {

namespace {
constexpr double most_area_mm2 = 20'000'000;
constexpr double most_work_min = 1440;
constexpr int most_areas = 1000;

Status one_check_fits(const job::CutCheck& check, const char* operation) {
  const std::string subject(word_of(check.item));
  if (check.answer == job::CutAnswer::DoesNotApply && !job::may_not_apply(check.item))
    return fail(Code::OutOfRange, operation, subject);
  if (check.answer != job::CutAnswer::No) return {};
  if (job::class_of(check.item) == job::CheckClass::Stop)
    return fail(Code::NotAllowed, operation, subject);
  if (job::class_of(check.item) == job::CheckClass::Must && !check.reason)
    return fail(Error{Code::Missing, operation, "reason", {{"item", subject}}});
  return {};
}

// In the order of the list, each once, and a reason only where a must was passed over.
Result<std::vector<job::CutCheck>> checks_of(const std::vector<job::CutCheck>& said,
                                             const char* operation) {
  std::map<job::CutItem, job::CutCheck> by_item;
  for (const auto& check : said) {
    JAMBLINE_TRY(one_check_fits(check, operation));
    const bool passed_over =
        check.answer == job::CutAnswer::No && job::class_of(check.item) == job::CheckClass::Must;
    const job::CutCheck kept{check.item, check.answer, passed_over ? check.reason : std::nullopt};
    if (!by_item.emplace(check.item, kept).second)
      return fail(Code::AlreadyDone, operation, std::string(word_of(check.item)));
  }
  std::vector<job::CutCheck> out;
  for (std::size_t i = 0; i < enum_words<job::CutItem>.size(); ++i) {
    const auto item = static_cast<job::CutItem>(i);
    const auto found = by_item.find(item);
    if (found != by_item.end())
      out.push_back(found->second);
    else if (job::class_of(item) != job::CheckClass::Should)
      return fail(Code::Missing, operation, std::string(word_of(item)));
  }
  return out;
}

// Whether this round was already done on all these marks and none of them came back since.
bool already_done(const folds::PanelView& panel, const FinishRound& command,
                  const std::vector<MarkId>& marks) {
  for (const auto& mark : panel.marks)
    if (mark.end == job::MarkEnd::CameBack &&
        std::find(marks.begin(), marks.end(), mark.mark) != marks.end())
      return false;
  return std::any_of(panel.rounds.begin(), panel.rounds.end(), [&](const auto& round) {
    return round.round == command.round && round.how == command.how &&
           std::all_of(marks.begin(), marks.end(), [&](const MarkId& mark) {
             return std::find(round.marks.begin(), round.marks.end(), mark) != round.marks.end();
           });
  });
}

// Nothing is ever cut on matte, textured or filmed panels, nor on one that goes to redo.
Status may_be_worked_on(const folds::PanelView& panel, const char* operation) {
  const std::string subject(word_of(panel.plan.panel));
  if (!job::may_be_cut(panel.plan.finish))
    return fail(Error{Code::NotAllowed,
                      operation,
                      subject,
                      {{"finish", std::string(word_of(panel.plan.finish))}}});
  if (panel.verdict == job::Verdict::NotLookedAt)
    return fail(Error{Code::NotYet, operation, subject, {{"what", "verdict"}}});
  if (panel.verdict == job::Verdict::Redo || panel.verdict == job::Verdict::BackToBody)
    return fail(Error{
        Code::NotAllowed, operation, subject, {{"verdict", std::string(word_of(panel.verdict))}}});
  return {};
}

// Whoever cuts has answered what is asked before, in one way.
Status has_answered(const folds::CarView& car, const PersonId& person, const char* operation) {
  const auto* answered = car.before_cut_of(person);
  if (answered && !answered->disputed) return {};
  return fail(Error{Code::NotYet, operation, car.plate, {{"what", "before you cut"}}});
}
}  // namespace

Drafts decide_one(const Scene& scene, const AnswerBeforeCut& command) {
  const char* const operation = "check before cutting";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  const PersonId& person = scene.context.person;
  if (!person) return fail(Code::Missing, operation, "person");
  JAMBLINE_ASSIGN(std::vector<job::CutCheck> checks, checks_of(command.checks, operation));
  const auto* known = car->before_cut_of(person);
  if (known && !known->disputed && known->checks == checks)
    return fail(Code::AlreadyDone, operation, "check before cutting");
  return std::vector<Draft>{
      {command.job,
       entries::BeforeCutAnswered{std::move(checks), known ? known->heads : std::vector<Hash>{}}}};
}

Drafts decide_one(const Scene& scene, const SetCause& command) {
  const char* const operation = "say what threw it";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  const bool any = std::any_of(car->panels.begin(), car->panels.end(), [](const auto& panel) {
    return !panel.marks.empty() || panel.dirt != job::DirtClass::None;
  });
  if (!any) return fail(Error{Code::NotYet, operation, car->plate, {{"what", "marks"}}});
  if (car->cause && !car->cause->disputed && car->cause->cause == command.cause)
    return fail(Code::AlreadyDone, operation,
                command.cause ? std::string(word_of(*command.cause)) : "left open");
  return std::vector<Draft>{
      {command.job,
       entries::CauseSet{car->cause ? car->cause->heads : std::vector<Hash>{}, command.cause}}};
}

Drafts decide_one(const Scene& scene, const FinishRound& command) {
  const char* const operation = "finish a round";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  JAMBLINE_ASSIGN(const auto* panel, scene.panel(*car, command.panel, operation));
  const bool skipped = command.how == job::RoundHow::Skipped;
  if (!skipped) {
    JAMBLINE_TRY(may_be_worked_on(*panel, operation));
    JAMBLINE_TRY(has_answered(*car, scene.context.person, operation));
  }
  std::vector<MarkId> marks;
  for (const MarkId& mark : command.marks) {
    JAMBLINE_ASSIGN(const FoundMark found, find_mark(*car, mark, operation));
    if (found.panel != panel) return fail(Code::Unknown, operation, "mark");
    if (std::find(marks.begin(), marks.end(), mark) == marks.end()) marks.push_back(mark);
  }
  if (marks.empty() && panel->dirt == job::DirtClass::None)
    return fail(Code::Missing, operation, "marks");
  JAMBLINE_TRY(in_range(command.areas, 0, most_areas, operation, "areas"));
  JAMBLINE_TRY(in_range(command.area_mm2, 0, most_area_mm2, operation, "area"));
  if (command.work_min)
    JAMBLINE_TRY(in_range(*command.work_min, 0, most_work_min, operation, "minutes"));
  if (command.how != job::RoundHow::Added && already_done(*panel, command, marks))
    return fail(Code::AlreadyDone, operation, std::string(word_of(command.round)));
  const job::Stage stage = stage_of_looking(*car) == job::Stage::LastPolish ? job::Stage::LastPolish
                                                                            : job::Stage::Correct;
  return std::vector<Draft>{
      {command.job,
       entries::RoundFinished{scene.context.random.make<RoundId>(), command.panel, command.round,
                              command.how, stage, std::move(marks), skipped ? 0 : command.areas,
                              skipped ? 0 : command.area_mm2,
                              skipped ? std::nullopt : command.work_min}}};
}

Drafts decide_one(const Scene& scene, const EndMark& command) {
  const char* const operation = "end a mark";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  JAMBLINE_ASSIGN(const FoundMark found, find_mark(*car, command.mark, operation));
  const folds::MarkView& mark = *found.mark;
  const folds::PanelView& panel = *found.panel;
  const bool settled = mark.end_heads.size() < 2;
  if (mark.end && settled && (mark.end == command.end || mark.end == job::MarkEnd::BurnThrough))
    return fail(
        Error{Code::AlreadyDone, operation, "mark", {{"end", std::string(word_of(*mark.end))}}});
  std::vector<Draft> out{
      {command.job, entries::MarkEnded{command.mark, command.end, mark.end_heads}}};
  if (command.end == job::MarkEnd::CameBack) say_to_correct(command.job, panel, out);
  if (command.end == job::MarkEnd::BurnThrough &&
      (panel.verdict != job::Verdict::Redo || panel.disputed))
    out.push_back({command.job, entries::VerdictGiven{panel.plan.panel, job::Verdict::Redo, false,
                                                      panel.verdict_heads}});
  return out;
}

}  // namespace jambline::acts
