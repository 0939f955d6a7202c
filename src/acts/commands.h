// acts/commands.h: everything a person can do, as values: the whole write side on one page.
//
// Shape:  a command names ids and values; deciding it (acts/decide.h) gives the entries to append
// or
//         says why not. Units last in names. Ids of new things are made by decide from the context.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/one_of.h"
#include "entries/entry.h"
#include "job/assembly.h"
#include "job/before_cut.h"
#include "job/booth.h"
#include "job/car.h"
#include "job/dirt_cause.h"
#include "job/film_reading.h"
#include "job/mark.h"
#include "job/person.h"
#include "job/round.h"
#include "job/stage.h"

namespace jambline::acts {

// 1) The shop
struct NameShop {
  std::string name;
  std::string zone;
};
struct AddPerson {
  std::string name;
  job::Role role{};
};
struct RenamePerson {
  PersonId person;
  std::string name;
};
struct ChangeRole {
  PersonId person;
  job::Role role{};
};
struct LetPersonGo {
  PersonId person;
};
struct NameDevice {
  DeviceId device;
  std::string name;
};
struct AddRack {
  std::string name;
};
struct AddBooth {
  std::string name;
  job::BoothKind kind{};
};
struct ChangeBooth {
  BoothId booth;
  std::string name;
  job::BoothKind kind{};
};
// Two taps: the booth and what was done. `happened_ms`: it was earlier than now, and never more
// than some minutes after it, by which two devices may differ. Whether the old
// filters are out of the building belongs to a filter change only.
struct LogBoothEvent {
  BoothId booth;
  job::BoothEvent what{};
  std::optional<std::int64_t> happened_ms = {};
  std::optional<bool> old_filters_out = {};
};
// All of it is said anew; without `happened_ms` its time stays.
struct CorrectBoothEvent {
  BoothEventId event;
  BoothId booth;
  job::BoothEvent what{};
  std::optional<std::int64_t> happened_ms = {};
  std::optional<bool> old_filters_out = {};
};

// 2) The car
// Work that is not first-time work says why; a supplement may want an approval.
struct PlannedOperation {
  job::Stage stage{};
  std::string title;
  int estimate_min = 0;
  job::WorkKind work{};
  std::string why = {};
  std::optional<PictureId> picture = {};
  job::Approval approval{};
};
struct OpenCar {
  std::string plate;
  std::string vin;            // empty: none
  bool vin_as_typed = false;  // the person says: use it although it does not check
  job::Color color;
  job::BodyShape body{};
  job::Drive drive{};
  std::optional<std::int64_t> promised_ms;
  std::vector<job::PanelPlan> panels;
  std::vector<PlannedOperation> operations;
};
struct SetPlate {
  JobId job;
  std::string plate;
};
struct SetVin {
  JobId job;
  std::string vin;
  bool as_typed = false;
};
struct SetColor {
  JobId job;
  job::Color color;
};
struct SetPromise {
  JobId job;
  std::int64_t promised_ms{};
};
struct PlanPanel {
  JobId job;
  job::PanelPlan plan;
};
struct SayBooth {
  JobId job;
  BoothId booth;
};
struct PlanOperation {
  JobId job;
  PlannedOperation operation;
};
struct ChangeEstimate {
  JobId job;
  OperationId operation;
  int estimate_min = 0;
};
// Done by whoever taps; the own clock on it stops by the same act.
struct FinishOperation {
  JobId job;
  OperationId operation;
  bool done = true;
};
struct AnswerSupplement {
  JobId job;
  OperationId operation;
  job::Approval approval{};
};
struct FinishStage {
  JobId job;
  job::Stage stage{};
  bool done = true;
  // Wanted pictures are missing and it is done without them. Without a reason that is refused.
  std::optional<job::WithoutShots> without_shots = {};
};
struct WriteNote {
  JobId job;
  std::string text;
};
// Refused with open points that nobody signed for, and while a rule stands in the way: a hard one
// wants a reason, one without an override has no way round.
struct Deliver {
  JobId job;
  std::optional<job::RuleReason> against_rules = {};
};
struct SayCheckIn {
  JobId job;
  job::CheckIn said;
};
struct SayPart {
  JobId job;
  std::optional<PartId> part;  // none: a new one
  job::OrderedPart said;
};
struct SaySublet {
  JobId job;
  std::optional<SubletId> sublet;  // none: a new one
  job::Sublet said;
};
// `waits` false: it goes on.
struct SayWait {
  JobId job;
  job::WaitReason reason{};
  bool waits = true;
  std::optional<std::int64_t> expected_ms = {};
};
// By somebody who is no person of the shop; whoever taps hands over the glass.
struct Sign {
  JobId job;
  job::SignedFor what{};
  std::string signer;
  std::vector<job::Stroke> strokes;
};
// Of a delivered car: it is in work again, and what is worked on it is a comeback's.
struct SayCameBack {
  JobId job;
  std::string complaint;
  std::optional<job::Panel> panel = {};
  std::string who_pays = {};
};

// 3) Looking over. The first mark on a panel says "to correct" by itself, in the same action.
struct PlaceMark {
  JobId job;
  job::Panel panel{};
  double x_mm{};
  double y_mm{};
  job::DefectKind defect{};
  int size = 1;
  job::Layer layer{};
  std::optional<job::ParticleLook> look = {};
};
struct MoveMark {
  JobId job;
  MarkId mark;
  double x_mm{};
  double y_mm{};
};
// Without a look, what was said of the particle stays as long as the kind does.
struct DescribeMark {
  JobId job;
  MarkId mark;
  job::DefectKind defect{};
  int size = 1;
  job::Layer layer{};
  std::optional<job::ParticleLook> look = {};
};
struct WithdrawMark {
  JobId job;
  MarkId mark;
};
struct SayDirtAllOver {
  JobId job;
  job::Panel panel{};
  job::DirtClass dirt{};
};
// `rack`: a clean loose part is released to hang there in the same action; `edges_and_back` must
// then be true. Also settles a dispute: it replaces all heads.
struct GiveVerdict {
  JobId job;
  job::Panel panel{};
  job::Verdict verdict{};
  bool edges_and_back = false;
  std::optional<RackId> rack;
};

// What threw it. No cause: left open, which is said too. Also settles a dispute.
struct SetCause {
  JobId job;
  std::optional<job::DirtCause> cause;
};

// 4) The film, and the work on it.
// The readings of one spot as they were typed. `corrects`: takes the place of that reading. The
// reading before a sequence and the rounds of the sequence are found by decide.
struct ReadFilm {
  JobId job;
  job::Panel panel{};
  int spot = 1;
  job::FilmWhen when{};
  job::FilmGauge gauge{};
  job::FilmUnit unit{};
  std::vector<double> typed;
  std::optional<double> x_mm = {};  // with y_mm or not at all
  std::optional<double> y_mm = {};
  std::optional<ReadingId> corrects = {};
};
// Of the person who taps. Every must and stop is answered; a must that is answered "no" has a
// reason; a stop has no way round. Asked once a person and car; answered again it replaces.
struct AnswerBeforeCut {
  JobId job;
  std::vector<job::CutCheck> checks;
};
// Areas, their size and the minutes of the clock as the walk knows them; skipped: none of them.
// Who did it has answered what is asked before cutting; who skipped it need not.
struct FinishRound {
  JobId job;
  job::Panel panel{};
  job::Round round{};
  job::RoundHow how{};
  std::vector<MarkId> marks;
  int areas = 0;
  double area_mm2 = 0;
  std::optional<double> work_min = {};
};
// A burn-through sends the panel to redo in the same action; one that came back makes a clean panel
// one to correct.
struct EndMark {
  JobId job;
  MarkId mark;
  job::MarkEnd end{};
};

// Pictures. `facts` are those of the file, which is in blobs before the command is decided. A poor
// one is kept only when the person says so. The panel of a mark is found by decide.
struct TakePicture {
  JobId job;
  job::PictureFacts facts;
  job::PictureFrom from{};
  entries::PicturePlace place;
  bool kept_though_poor = false;
};
struct FilePicture {
  JobId job;
  PictureId picture;
  entries::PicturePlace place;
};
// `changes`: takes the place of that note.
struct NotePicture {
  JobId job;
  PictureId picture;
  job::PictureNote drawn;
  std::optional<PictureNoteId> changes = {};
};
// Edges or a jamb, on the picture of a panel. Each find places its mark there: at the place that is
// said, else beside the panel's longest gap. None: clean.
struct CheckEdges {
  JobId job;
  PictureId picture;
  std::vector<job::DefectKind> finds;
  std::optional<double> x_mm = {};  // with y_mm or not at all
  std::optional<double> y_mm = {};
};
// All shots of a stage, said by a manager; new ones have no id yet. None: no pictures are wanted.
struct SetShotList {
  job::Stage stage{};
  std::vector<job::Shot> shots;
};

// When the shop is open, what comes before what, how long records are kept; a manager's.
struct SetCalendar {
  job::Calendar calendar;
};
struct SetRule {
  std::optional<RuleId> rule;  // none: a new one
  job::AssemblyRule said;
};
// How long a class of records is kept here; none: as is usual (job/retention.h).
struct SetRetention {
  job::RecordClass record{};
  std::optional<int> years = {};
};

// The air: booths, protection, limits, products (the shop's); spraying, baking, bonding (a car's).
struct SetBoothFacts {
  BoothId booth;
  job::BoothFacts facts;
};
// `happened_ms`: it was read earlier. A smoke test's value is minutes, of several the longest.
struct ReadBooth {
  BoothId booth;
  job::BoothReading what{};
  std::vector<double> values;
  double instrument_percent = 5;
  std::optional<std::int64_t> happened_ms = {};
};
// Of the person who taps, who holds the gun. Every stop is answered "yes", every must that applies
// "yes" or passed over with a reason; what the records do not bear out cannot be answered "yes".
// Asked at each donning. Without: it is refused, and afterwards there is ReportSprayedWithout.
struct StartSpray {
  JobId job;
  BoothId booth;
  RespiratorId respirator;
  bool activated = true;
  std::vector<job::GunCheck> checks;
};
// Of the own spray in that booth, or of the one that is named. Starts the clearance count.
struct GunDown {
  BoothId booth;
  std::optional<SprayId> spray = {};
};
// Fresh air, fan stopped, bake, door opened.
struct SayExhaust {
  BoothId booth;
  job::BoothWord what{};
};
// Only when the whole time has gone by in one piece; `now` is the device's.
struct LogClearanceOver {
  BoothId booth;
};
// The booth has to clear as after any spray.
struct ReportSprayedWithout {
  JobId job;
  BoothId booth;
  std::vector<job::GunItem> items;
};
struct SetRespirator {
  std::optional<RespiratorId> respirator;  // none: a new one
  job::Respirator said;
};
struct RecordFitTest {
  PersonId person;
  RespiratorId respirator;
  job::FitTest said;
  std::optional<FitTestId> corrects = {};
};
struct ChangeCartridge {
  PersonId person;
  RespiratorId respirator;
  double schedule_h{};
  std::string schedule_basis;
};
struct CheckBreathingAir {
  job::BreathingAir said;
};
struct SayDoNotSpray {
  PersonId person;
  bool do_not_spray = true;
};
struct SetDue {
  PersonId person;
  job::DueKind what{};
  int due_day{};
};
struct SetLimit {
  std::optional<LimitId> limit;  // none: a new one
  job::ExposureLimit said;
};
struct SetProduct {
  std::optional<ProductId> product;  // none: a new one
  job::Product said;
};
struct LogSample {
  PersonId person;
  std::string substance;
  double value{};
  std::string unit;
  std::int64_t from_ms{};
  std::int64_t to_ms{};
  std::optional<RespiratorId> respirator = {};
};
struct OpenFirstAid {
  job::FirstAid what{};
};
// `mixed_ms`: some minutes ago, outside the mixing room's door.
struct MixProduct {
  JobId job;
  ProductId product;
  std::string batch;
  bool color_approved = false;
  std::optional<std::int64_t> mixed_ms = {};
  std::optional<MixId> changes = {};
};
struct SayCoats {
  JobId job;
  MixId mix;
  std::vector<job::Panel> panels;
  int coats = 1;
  std::vector<double> flash_min;
  std::string gun;
  bool heavy_film = false;
};
struct ReadBakeLimit {
  JobId job;
  double most_c{};
  double most_min{};
  std::string source;
};
// On: refused on a hybrid or electric car without the carmaker's limit.
struct SayBake {
  JobId job;
  bool on = true;
};
struct ReadPanelTemperature {
  JobId job;
  job::PanelGroup group{};
  double surface_c{};
};
// How far the sheet's clock was then is kept beside it: other cars learn from it.
struct CheckThumbnail {
  JobId job;
  job::PanelGroup group{};
  bool firm = false;
};
struct SayBonded {
  JobId job;
  ProductId product;
  std::string what;
  std::string case_name;
  std::optional<std::int64_t> set_ms = {};
};
struct ReadClimate {
  JobId job;
  BoothId booth;  // none: where the car stands otherwise
  double air_c{};
  double surface_c{};
  double humidity_percent{};
};

// 5) The clock. One clock a person: starting elsewhere ends what ran, in the same action.
// `started_ms`: it was forgotten and began earlier, though not before the last thing that the
// person's clock did.
struct StartClock {
  PersonId worker;
  JobId job;
  OperationId operation;
  std::optional<std::int64_t> started_ms = {};
};
struct PauseClock {
  PersonId worker;
};
// `ended_ms`: it was forgotten and ended earlier; not before what runs began.
struct StopClock {
  PersonId worker;
  std::optional<std::int64_t> ended_ms = {};
};
// An act of a clock was made at another time: not before the act before it, not after the one that
// follows. Both times are kept.
struct AmendClock {
  JobId job;
  Hash act;
  std::int64_t at_ms{};
  std::string reason;
};

// 6) Handing on. No panel: the whole car.
struct OfferRelease {
  JobId job;
  std::optional<job::Panel> panel;
  std::optional<job::Role> to;
  std::optional<RackId> rack;
};
struct TakeRelease {
  JobId job;
  ReleaseId release;
};
struct ReturnRelease {
  JobId job;
  ReleaseId release;
  std::string reason;
  std::optional<PictureId> picture = {};
};
// Who has it: two took it without knowing of each other, or somebody took it who tapped nothing.
struct SettleRelease {
  JobId job;
  ReleaseId release;
  PersonId taker;
};

// 7) Putting it together. Against a hard rule or a hold only with a reason; against one without an
// override never.
struct SayStep {
  JobId job;
  job::Step step{};
  bool done = true;
  std::optional<job::RuleReason> against_rules = {};
};
struct MeasureFit {
  JobId job;
  job::Panel panel{};
  job::FitRound round{};
  std::vector<job::GapPoint> points;
};
struct MoveFasteners {
  JobId job;
  job::Panel panel{};
  std::vector<job::FastenerMove> moves;
};

// 8) Taking back
struct Withdraw {
  JobId job;
  Hash target;
  std::string reason;
};
struct UndoAction {
  std::vector<std::pair<JobId, Hash>> entries;
};  // what the last act wrote

struct CommandKinds
    : Kinds<NameShop, AddPerson, RenamePerson, ChangeRole, LetPersonGo, NameDevice, AddRack,
            AddBooth, ChangeBooth, LogBoothEvent, CorrectBoothEvent, OpenCar, SetPlate, SetVin,
            SetColor, SetPromise, PlanPanel, SayBooth, PlanOperation, ChangeEstimate, FinishStage,
            WriteNote, Deliver, PlaceMark, MoveMark, DescribeMark, WithdrawMark, SayDirtAllOver,
            GiveVerdict, SetCause, ReadFilm, AnswerBeforeCut, FinishRound, EndMark, TakePicture,
            FilePicture, NotePicture, CheckEdges, SetShotList, SetBoothFacts, ReadBooth, StartSpray,
            GunDown, SayExhaust, LogClearanceOver, ReportSprayedWithout, SetRespirator,
            RecordFitTest, ChangeCartridge, CheckBreathingAir, SayDoNotSpray, SetDue, SetLimit,
            SetProduct, LogSample, OpenFirstAid, MixProduct, SayCoats, ReadBakeLimit, SayBake,
            ReadPanelTemperature, CheckThumbnail, SayBonded, ReadClimate, StartClock, PauseClock,
            StopClock, OfferRelease, TakeRelease, ReturnRelease, Withdraw, UndoAction,
            FinishOperation, AnswerSupplement, SayCheckIn, SayPart, SaySublet, SayWait, Sign,
            SayCameBack, AmendClock, SettleRelease, SayStep, MeasureFit, MoveFasteners, SetCalendar,
            SetRule, SetRetention> {};

struct Command : OneOf<CommandKinds> {
  using OneOf::OneOf;
};

}  // namespace jambline::acts

namespace jambline {
extern template const KindActs<acts::CommandKinds> OneOf<acts::CommandKinds>::acts;
}
