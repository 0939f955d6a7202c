// acts/decisions.h: the deciders behind decide(), one overload a command; internal to acts/.
#pragma once

#include "acts/decide.h"

namespace jambline::acts {

using Drafts = Result<std::vector<Draft>>;

struct Scene {
  const World& world;
  const Context& context;

  // The car, ready to be written to: known, opened and free of entries of a newer version.
  Result<const folds::CarView*> car(const JobId& job, const char* operation) const;
  Result<const folds::PanelView*> panel(const folds::CarView& car, job::Panel panel,
                                        const char* operation) const;
  bool is_manager() const;
};

Drafts decide_one(const Scene& scene, const NameShop& command);
Drafts decide_one(const Scene& scene, const AddPerson& command);
Drafts decide_one(const Scene& scene, const RenamePerson& command);
Drafts decide_one(const Scene& scene, const ChangeRole& command);
Drafts decide_one(const Scene& scene, const LetPersonGo& command);
Drafts decide_one(const Scene& scene, const AddRack& command);
Drafts decide_one(const Scene& scene, const OpenCar& command);
Drafts decide_one(const Scene& scene, const SetPlate& command);
Drafts decide_one(const Scene& scene, const SetVin& command);
Drafts decide_one(const Scene& scene, const SetColor& command);
Drafts decide_one(const Scene& scene, const SetPromise& command);
Drafts decide_one(const Scene& scene, const PlanPanel& command);
Drafts decide_one(const Scene& scene, const PlanOperation& command);
Drafts decide_one(const Scene& scene, const ChangeEstimate& command);
Drafts decide_one(const Scene& scene, const FinishStage& command);
Drafts decide_one(const Scene& scene, const WriteNote& command);
Drafts decide_one(const Scene& scene, const Deliver& command);
Drafts decide_one(const Scene& scene, const PlaceMark& command);
Drafts decide_one(const Scene& scene, const MoveMark& command);
Drafts decide_one(const Scene& scene, const DescribeMark& command);
Drafts decide_one(const Scene& scene, const WithdrawMark& command);
Drafts decide_one(const Scene& scene, const SayDirtAllOver& command);
Drafts decide_one(const Scene& scene, const GiveVerdict& command);
Drafts decide_one(const Scene& scene, const StartClock& command);
Drafts decide_one(const Scene& scene, const PauseClock& command);
Drafts decide_one(const Scene& scene, const StopClock& command);
Drafts decide_one(const Scene& scene, const OfferRelease& command);
Drafts decide_one(const Scene& scene, const TakeRelease& command);
Drafts decide_one(const Scene& scene, const ReturnRelease& command);
Drafts decide_one(const Scene& scene, const Withdraw& command);
Drafts decide_one(const Scene& scene, const UndoAction& command);

// Text that people type: trimmed, and neither empty nor longer than `most` bytes.
Result<std::string> typed(const std::string& text, const char* operation, const char* field,
                          std::size_t most);

}  // namespace jambline::acts
