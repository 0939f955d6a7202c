// acts/decisions.h: the deciders behind decide(), one overload a command; internal to acts/.
#pragma once

#include "acts/decide.h"

namespace jambline::acts {

using Drafts = Result<std::vector<Draft>>;

// Of names, reasons and other short text that people type.
inline constexpr std::size_t most_text_bytes = 200;

struct Scene {
  const World& world;
  const Context& context;

  // The car, ready to be written to: known, opened and free of entries of a newer version.
  Result<const folds::CarView*> car(const JobId& job, const char* operation) const;
  Result<const folds::PanelView*> panel(const folds::CarView& car, job::Panel panel,
                                        const char* operation) const;
  // By the role that the person has now and by the device (entries/rights.h).
  bool may(entries::Right right) const;
  template <class Kind>
  bool may_say() const {
    return may(entries::right_of(Kind::kind));
  }
};

Drafts decide_one(const Scene& scene, const NameShop& command);
Drafts decide_one(const Scene& scene, const AddPerson& command);
Drafts decide_one(const Scene& scene, const RenamePerson& command);
Drafts decide_one(const Scene& scene, const ChangeRole& command);
Drafts decide_one(const Scene& scene, const LetPersonGo& command);
Drafts decide_one(const Scene& scene, const NameDevice& command);
Drafts decide_one(const Scene& scene, const AddRack& command);
Drafts decide_one(const Scene& scene, const AddBooth& command);
Drafts decide_one(const Scene& scene, const ChangeBooth& command);
Drafts decide_one(const Scene& scene, const LogBoothEvent& command);
Drafts decide_one(const Scene& scene, const CorrectBoothEvent& command);
Drafts decide_one(const Scene& scene, const OpenCar& command);
Drafts decide_one(const Scene& scene, const SetPlate& command);
Drafts decide_one(const Scene& scene, const SetVin& command);
Drafts decide_one(const Scene& scene, const SetColor& command);
Drafts decide_one(const Scene& scene, const SetPromise& command);
Drafts decide_one(const Scene& scene, const PlanPanel& command);
Drafts decide_one(const Scene& scene, const SayBooth& command);
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
Drafts decide_one(const Scene& scene, const SetCause& command);
Drafts decide_one(const Scene& scene, const ReadFilm& command);
Drafts decide_one(const Scene& scene, const AnswerBeforeCut& command);
Drafts decide_one(const Scene& scene, const FinishRound& command);
Drafts decide_one(const Scene& scene, const EndMark& command);
Drafts decide_one(const Scene& scene, const TakePicture& command);
Drafts decide_one(const Scene& scene, const FilePicture& command);
Drafts decide_one(const Scene& scene, const NotePicture& command);
Drafts decide_one(const Scene& scene, const CheckEdges& command);
Drafts decide_one(const Scene& scene, const SetShotList& command);
Drafts decide_one(const Scene& scene, const SetBoothFacts& command);
Drafts decide_one(const Scene& scene, const ReadBooth& command);
Drafts decide_one(const Scene& scene, const StartSpray& command);
Drafts decide_one(const Scene& scene, const GunDown& command);
Drafts decide_one(const Scene& scene, const SayExhaust& command);
Drafts decide_one(const Scene& scene, const LogClearanceOver& command);
Drafts decide_one(const Scene& scene, const ReportSprayedWithout& command);
Drafts decide_one(const Scene& scene, const SetRespirator& command);
Drafts decide_one(const Scene& scene, const RecordFitTest& command);
Drafts decide_one(const Scene& scene, const ChangeCartridge& command);
Drafts decide_one(const Scene& scene, const CheckBreathingAir& command);
Drafts decide_one(const Scene& scene, const SayDoNotSpray& command);
Drafts decide_one(const Scene& scene, const SetDue& command);
Drafts decide_one(const Scene& scene, const SetLimit& command);
Drafts decide_one(const Scene& scene, const SetProduct& command);
Drafts decide_one(const Scene& scene, const LogSample& command);
Drafts decide_one(const Scene& scene, const OpenFirstAid& command);
Drafts decide_one(const Scene& scene, const MixProduct& command);
Drafts decide_one(const Scene& scene, const SayCoats& command);
Drafts decide_one(const Scene& scene, const ReadBakeLimit& command);
Drafts decide_one(const Scene& scene, const SayBake& command);
Drafts decide_one(const Scene& scene, const ReadPanelTemperature& command);
Drafts decide_one(const Scene& scene, const CheckThumbnail& command);
Drafts decide_one(const Scene& scene, const SayBonded& command);
Drafts decide_one(const Scene& scene, const ReadClimate& command);
Drafts decide_one(const Scene& scene, const StartClock& command);
Drafts decide_one(const Scene& scene, const PauseClock& command);
Drafts decide_one(const Scene& scene, const StopClock& command);
Drafts decide_one(const Scene& scene, const OfferRelease& command);
Drafts decide_one(const Scene& scene, const TakeRelease& command);
Drafts decide_one(const Scene& scene, const ReturnRelease& command);
Drafts decide_one(const Scene& scene, const Withdraw& command);
Drafts decide_one(const Scene& scene, const UndoAction& command);
Drafts decide_one(const Scene& scene, const FinishOperation& command);
Drafts decide_one(const Scene& scene, const AnswerSupplement& command);
Drafts decide_one(const Scene& scene, const SayCheckIn& command);
Drafts decide_one(const Scene& scene, const SayPart& command);
Drafts decide_one(const Scene& scene, const SaySublet& command);
Drafts decide_one(const Scene& scene, const SayWait& command);
Drafts decide_one(const Scene& scene, const Sign& command);
Drafts decide_one(const Scene& scene, const SayCameBack& command);
Drafts decide_one(const Scene& scene, const AmendClock& command);
Drafts decide_one(const Scene& scene, const SettleRelease& command);
Drafts decide_one(const Scene& scene, const SayStep& command);
Drafts decide_one(const Scene& scene, const MeasureFit& command);
Drafts decide_one(const Scene& scene, const MoveFasteners& command);
Drafts decide_one(const Scene& scene, const SetCalendar& command);
Drafts decide_one(const Scene& scene, const SetRule& command);
Drafts decide_one(const Scene& scene, const SetRetention& command);

struct FoundMark {
  const folds::PanelView* panel;
  const folds::MarkView* mark;
};
Result<FoundMark> find_mark(const folds::CarView& car, const MarkId& mark, const char* operation);

// The place lies on the panel's own outline.
Status on_panel(const folds::CarView& car, job::Panel panel, double x_mm, double y_mm,
                const char* operation);

// Inspect, or last polish once the car was put together.
job::Stage stage_of_looking(const folds::CarView& car);

// A mark on a panel that nobody judged yet, or that was clean, says "to correct" by itself.
void say_to_correct(const JobId& job, const folds::PanelView& panel, std::vector<Draft>& out);

// What is done against rules: those that stand in the way of a step. NotYet without a reason,
// NotAllowed where one has no override.
Result<std::vector<entries::BrokenRule>> rules_broken(const Scene& scene, const folds::CarView& car,
                                                      job::Step step,
                                                      const std::optional<job::RuleReason>& reason,
                                                      const char* doing);
std::vector<Hash> heads_of_step(const folds::CarView& car, job::Step step);

// OutOfRange with the value and its limits; no number is none of them.
Status in_range(double value, double least, double most, const char* operation, const char* field);
// Said afterwards: not before 2020, and not later than two devices' clocks may differ.
Status not_to_come(const std::optional<std::int64_t>& at_ms, const Scene& scene,
                   const char* operation);

// A number as a named argument of an error.
std::string number_text(double number);

// Text that people type: trimmed, and neither empty nor longer than `most` bytes.
Result<std::string> typed(const std::string& text, const char* operation, const char* field,
                          std::size_t most);

}  // namespace jambline::acts
