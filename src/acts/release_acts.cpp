#include "acts/decisions.h"

namespace jambline::acts {

namespace {
struct Found {
  const folds::ReleaseView* release;
  std::string subject;
  std::optional<job::Panel> panel = {};  // none: the whole car
};

Result<Found> find_release(const folds::CarView& car, const ReleaseId& release,
                           const char* operation) {
  if (car.car_release.state != folds::ReleaseState::None && car.car_release.release == release)
    return Found{&car.car_release, car.plate};
  for (const auto& panel : car.panels)
    if (panel.release.state != folds::ReleaseState::None && panel.release.release == release)
      return Found{&panel.release, std::string(word_of(panel.plan.panel)), panel.plan.panel};
  return fail(Code::Unknown, operation, "release");
}

Drafts answer(const Scene& scene, const JobId& job, const ReleaseId& release, bool taken,
              std::string reason, std::optional<PictureId> picture, const char* operation) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(job, operation));
  JAMBLINE_ASSIGN(const Found found, find_release(*car, release, operation));
  if (found.release->disputed) return fail(Code::Disputed, operation, found.subject);
  if (found.release->state != folds::ReleaseState::Offered)
    return fail(Code::AlreadyDone, operation, found.subject);
  if (picture && !car->find(*picture)) return fail(Code::Unknown, operation, "picture");
  return std::vector<Draft>{{job, entries::ReleaseAnswered{release, taken, std::move(reason),
                                                           found.release->answer_heads, picture}}};
}
}  // namespace

// A part is offered once it is clean; the whole car when nothing on it is disputed.
Drafts decide_one(const Scene& scene, const OfferRelease& command) {
  const char* const operation = "offer";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  const folds::ReleaseView* known = &car->car_release;
  if (command.panel) {
    JAMBLINE_ASSIGN(const auto* panel, scene.panel(*car, *command.panel, operation));
    const std::string subject(word_of(*command.panel));
    if (panel->disputed) return fail(Code::Disputed, operation, subject);
    if (panel->verdict != job::Verdict::Clean)
      return fail(Error{Code::NotYet, operation, subject, {{"what", "clean"}}});
    known = &panel->release;
  } else {
    for (const auto& panel : car->panels)
      if (panel.disputed)
        return fail(Code::Disputed, operation, std::string(word_of(panel.plan.panel)));
  }
  if (!command.to && !command.rack) return fail(Code::Missing, operation, "to");
  return std::vector<Draft>{
      {command.job, entries::ReleaseOffered{scene.context.random.make<ReleaseId>(), command.panel,
                                            command.to, command.rack, known->offer_heads}}};
}

Drafts decide_one(const Scene& scene, const TakeRelease& command) {
  return answer(scene, command.job, command.release, true, "", {}, "take");
}

Drafts decide_one(const Scene& scene, const ReturnRelease& command) {
  JAMBLINE_ASSIGN(std::string reason, typed(command.reason, "return", "reason", most_text_bytes));
  return answer(scene, command.job, command.release, false, std::move(reason), command.picture,
                "return");
}

Drafts decide_one(const Scene& scene, const SettleRelease& command) {
  const char* const operation = "settle who has it";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, operation));
  JAMBLINE_ASSIGN(const Found found, find_release(*car, command.release, operation));
  const bool has_it =
      found.release->state == folds::ReleaseState::Taken && found.release->taker == command.taker;
  if (has_it && !found.release->disputed) return fail(Code::AlreadyDone, operation, found.subject);
  const auto* taker = scene.world.shop.find(command.taker);
  if (!taker || taker->left) return fail(Code::Unknown, operation, "person");
  const folds::ReleaseView& known = *found.release;
  if (known.offer_heads.size() < 2)
    return std::vector<Draft>{
        {command.job, entries::ReleaseAnswered{
                          command.release, true, "", known.answer_heads, {}, command.taker}}};
  // Two offers stand: one takes their place, and is taken.
  const auto anew = scene.context.random.make<ReleaseId>();
  return std::vector<Draft>{
      {command.job,
       entries::ReleaseOffered{anew, found.panel, known.to, known.rack, known.offer_heads}},
      {command.job, entries::ReleaseAnswered{anew, true, "", {}, {}, command.taker}}};
}

}  // namespace jambline::acts
