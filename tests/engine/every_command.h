// tests/engine/every_command.h: a small shop on an engine, and one command of every kind that would
// be taken there. A new command without a sample here does not compile.
#pragma once

#include <gtest/gtest.h>
#include <type_traits>
#include <utility>

#include "engine/engine.h"
#include "job/body_shape.h"

namespace jambline::engine {

struct SmallShop {
  PersonId ivo;  // manager; his clock runs on `inspect`
  RackId rack;
  BoothId booth;
  BoothEventId event;
  JobId job;  // hood on the car with one mark, front bumper cover clean and offered
  OperationId inspect;
  OperationId correct;
  MarkId mark;
  Hash placed;
  ReleaseId release;
  double x_mm = 0;
  double y_mm = 0;
  std::vector<std::pair<JobId, Hash>> last;
  PictureId picture;  // of the hood
  PersonId kim;       // a painter, whose gun is up in `sprayed_in`
  BoothId sprayed_in;
  BoothId cleared;  // its time is over; nobody logged it
  RespiratorId respirator;
  RespiratorId mask;  // a half mask with cartridges
  ProductId product;
  ProductId urethane;
  MixId mix;
  job::PictureFacts picture_facts;
  JobId gone;    // a car that was delivered
  Hash started;  // ivo's clock on `inspect`
  std::int64_t started_ms = 0;
};

// Posts and waits for the answer.
inline Result<Wrote> act(Engine& engine, acts::Command command, const PersonId& person) {
  std::optional<Result<Wrote>> out;
  engine.post(std::move(command), person, [&](Result<Wrote> wrote) { out = std::move(wrote); });
  engine.drain();
  return std::move(*out);
}

// Some bytes as a picture; the engine does not look into them.
inline acts::TakePicture picture_of(const JobId& job, const std::vector<std::uint8_t>& bytes) {
  acts::TakePicture out;
  out.job = job;
  blobs::Hasher hasher;
  hasher.update(bytes);
  out.facts.file = *hasher.finish();
  out.facts.size_bytes = static_cast<std::int64_t>(bytes.size());
  out.facts.width_px = 1600;
  out.facts.height_px = 1200;
  out.facts.sharpness = 150;
  out.facts.mean = 120;
  out.place = {job::Stage::Inspect, {}, job::Panel::Hood, {}};
  return out;
}

// Keeps it and waits for the answer.
inline Result<Wrote> keep(Engine& engine, std::vector<std::uint8_t> bytes,
                          const acts::TakePicture& command, const PersonId& person,
                          const std::vector<std::uint8_t>& preview = {}) {
  std::optional<Result<Wrote>> out;
  Engine::PictureBytes small;
  if (!preview.empty()) small = std::make_shared<const std::vector<std::uint8_t>>(preview);
  engine.keep_picture(std::make_shared<const std::vector<std::uint8_t>>(std::move(bytes)), small,
                      command, person, [&](Result<Wrote> wrote) { out = std::move(wrote); });
  engine.drain();
  return std::move(*out);
}

inline acts::OpenCar car_to_open() {
  acts::OpenCar open;
  open.plate = "K 41-206";
  open.color = {"G7", "deep green", "#1F4D3A"};
  open.body = job::BodyShape::FourDoorSedan;
  open.panels = {{job::Panel::Hood, true}, {job::Panel::FrontBumper, false}};
  open.operations = {{job::Stage::Inspect, "", 60}, {job::Stage::Correct, "", 30}};
  return open;
}

inline acts::AnswerBeforeCut before_cut(const JobId& job, job::CutAnswer of_the_cord) {
  acts::AnswerBeforeCut out{job, {}};
  for (std::size_t i = 0; i < enum_words<job::CutItem>.size(); ++i) {
    const auto item = static_cast<job::CutItem>(i);
    out.checks.push_back(
        {item, item == job::CutItem::CordAndOutlet ? of_the_cord : job::CutAnswer::Yes});
  }
  return out;
}

inline job::Respirator hood_with_air() {
  return {"hood 7",
          job::RespiratorKind::SuppliedHood,
          trade::FactorScheme::Us,
          25,
          "29 CFR 1910.134",
          2006,
          "",
          false};
}

inline job::Product a_clear() {
  job::Product out;
  out.product_name = "clear A";
  out.kind = job::ProductKind::Clear;
  out.activated = true;
  out.steps = {{trade::CureMilestone::PolishFrom, {{20, 960}, {60, 30}}}};
  return out;
}
inline job::Product a_urethane() {
  job::Product out;
  out.product_name = "urethane A";
  out.kind = job::ProductKind::GlassUrethane;
  out.cure = trade::CureKind::MoistureCure;
  out.drive_away = {{"two bags", {{20, 50, 60}}}};
  return out;
}

// Every stop and must answered: of now with "yes", what rests on records passed over.
inline acts::StartSpray spray_on(const JobId& job, const BoothId& booth,
                                 const RespiratorId& respirator) {
  acts::StartSpray out{job, booth, respirator, true, {}};
  for (std::size_t i = 0; i < enum_words<job::GunItem>.size(); ++i) {
    const auto item = static_cast<job::GunItem>(i);
    if (job::class_of(item) == job::CheckClass::Should) continue;
    if (job::is_of_now(item))
      out.checks.push_back({item, job::CutAnswer::Yes, {}, {}});
    else if (job::class_of(item) == job::CheckClass::Must)
      out.checks.push_back({item, job::CutAnswer::No, job::GunReason::RecordNotHere, {}});
  }
  return out;
}

// Fills an empty shop; the car stays watched.
inline void furnish(Engine& engine, FakeClock& clock, SmallShop& shop) {
  ASSERT_TRUE(act(engine, acts::AddPerson{"Ivo", job::Role::Manager}, {}));
  shop.ivo = engine.snapshot()->shop->people.front().person;
  ASSERT_TRUE(act(engine, acts::AddRack{"rack 1"}, shop.ivo));
  shop.rack = engine.snapshot()->shop->racks.front().rack;
  ASSERT_TRUE(act(engine, acts::AddBooth{"booth 1"}, shop.ivo));
  shop.booth = engine.snapshot()->shop->booths.front().booth;
  ASSERT_TRUE(
      act(engine, acts::LogBoothEvent{shop.booth, job::BoothEvent::FiltersChanged}, shop.ivo));
  shop.event = engine.snapshot()->shop->booth_events.front().event;
  const auto opened = act(engine, car_to_open(), shop.ivo);
  ASSERT_TRUE(opened);
  shop.job = opened->job;
  engine.watch(shop.job);
  engine.drain();
  const auto box = trade::bounds(
      job::pattern(job::BodyShape::FourDoorSedan).find(job::Panel::Hood)->shape.outline.corners);
  shop.x_mm = box.width_mm() / 2;
  shop.y_mm = box.height_mm() / 2;
  ASSERT_TRUE(
      act(engine, acts::PlaceMark{shop.job, job::Panel::Hood, shop.x_mm, shop.y_mm}, shop.ivo));
  ASSERT_TRUE(act(
      engine,
      acts::GiveVerdict{shop.job, job::Panel::FrontBumper, job::Verdict::Clean, true, shop.rack},
      shop.ivo));
  shop.inspect = engine.snapshot()->car->operations[0].operation;
  shop.correct = engine.snapshot()->car->operations[1].operation;
  ASSERT_TRUE(act(engine, before_cut(shop.job, job::CutAnswer::DoesNotApply), shop.ivo));
  ASSERT_TRUE(act(engine, acts::SetRespirator{{}, hood_with_air()}, shop.ivo));
  shop.respirator = engine.snapshot()->shop->air.respirators.front().respirator;
  ASSERT_TRUE(act(engine, acts::SetProduct{{}, a_clear()}, shop.ivo));
  ASSERT_TRUE(act(engine, acts::SetProduct{{}, a_urethane()}, shop.ivo));
  shop.product = engine.snapshot()->shop->air.products.front().product;
  shop.urethane = engine.snapshot()->shop->air.products.back().product;
  ASSERT_TRUE(act(engine, acts::MixProduct{shop.job, shop.product, "4711"}, shop.ivo));
  job::Respirator mask = hood_with_air();
  mask.model = "mask 1";
  mask.kind = job::RespiratorKind::HalfAirPurifying;
  mask.assigned_factor = 10;
  ASSERT_TRUE(act(engine, acts::SetRespirator{{}, mask}, shop.ivo));
  shop.mask = engine.snapshot()->shop->air.respirators.back().respirator;
  ASSERT_TRUE(act(engine, acts::AddPerson{"Kim", job::Role::Painter}, shop.ivo));
  shop.kim = engine.snapshot()->shop->people.back().person;
  for (BoothId* booth : {&shop.sprayed_in, &shop.cleared}) {
    ASSERT_TRUE(
        act(engine, acts::AddBooth{booth == &shop.cleared ? "booth 3" : "booth 2"}, shop.ivo));
    *booth = engine.snapshot()->shop->booths.back().booth;
  }
  ASSERT_TRUE(
      act(engine, acts::ReadBooth{shop.cleared, job::BoothReading::SmokeTest, {0.1}}, shop.ivo));
  ASSERT_TRUE(act(engine, spray_on(shop.job, shop.cleared, shop.respirator), shop.kim));
  ASSERT_TRUE(act(engine, acts::GunDown{shop.cleared}, shop.kim));
  ASSERT_TRUE(act(engine, spray_on(shop.job, shop.sprayed_in, shop.respirator), shop.kim));
  clock.advance_ms(10'000);
  ASSERT_TRUE(act(engine, acts::StartClock{shop.ivo, shop.job, shop.inspect}, shop.ivo));
  shop.mix = engine.snapshot()->car->air.mixes.front().mix;
  shop.started = engine.snapshot()->car->visit.clock_acts.front().entry;
  shop.started_ms = engine.snapshot()->car->visit.clock_acts.front().at_ms;
  ASSERT_TRUE(
      act(engine,
          acts::Sign{shop.job, job::SignedFor::Delivery, "A. Quince", {{{{0.1, 0.5}, {0.9, 0.5}}}}},
          shop.ivo));
  acts::OpenCar small = car_to_open();
  small.plate = "K 41-207";
  small.panels = {{job::Panel::Roof, true}};
  small.operations = {};
  const auto other = act(engine, small, shop.ivo);
  ASSERT_TRUE(other);
  shop.gone = other->job;
  ASSERT_TRUE(act(engine, acts::GiveVerdict{shop.gone, job::Panel::Roof, job::Verdict::Clean, true},
                  shop.ivo));
  ASSERT_TRUE(act(engine, acts::Deliver{shop.gone}, shop.ivo));
  const std::vector<std::uint8_t> bytes{1, 2, 3};
  ASSERT_TRUE(keep(engine, bytes, picture_of(shop.job, bytes), shop.ivo));
  const auto& car = *engine.snapshot()->car;
  shop.picture = car.pictures.front().picture;
  shop.picture_facts = car.pictures.front().facts;
  const auto& mark = car.find(job::Panel::Hood)->marks.front();
  shop.mark = mark.mark;
  shop.placed = mark.placed;
  shop.release = car.find(job::Panel::FrontBumper)->release.release;
  shop.last = engine.snapshot()->last_act->entries;
}

struct Sample {
  const SmallShop& shop;

  template <class T>
  struct Of {};
  using C = acts::Command;

  C operator()(Of<acts::NameShop>) const { return acts::NameShop{"Shop", "America/New_York"}; }
  C operator()(Of<acts::AddPerson>) const { return acts::AddPerson{"Mara", job::Role::GlassTech}; }
  C operator()(Of<acts::RenamePerson>) const { return acts::RenamePerson{shop.ivo, "Ivan"}; }
  C operator()(Of<acts::ChangeRole>) const {
    return acts::ChangeRole{shop.ivo, job::Role::Painter};
  }
  C operator()(Of<acts::LetPersonGo>) const { return acts::LetPersonGo{shop.ivo}; }
  C operator()(Of<acts::NameDevice>) const {
    return acts::NameDevice{DeviceId{{7}}, "booth tablet"};
  }
  C operator()(Of<acts::AddRack>) const { return acts::AddRack{"rack 9"}; }
  C operator()(Of<acts::AddBooth>) const { return acts::AddBooth{"booth 9"}; }
  C operator()(Of<acts::ChangeBooth>) const {
    return acts::ChangeBooth{shop.booth, "booth 1", job::BoothKind::CrossDraft};
  }
  C operator()(Of<acts::LogBoothEvent>) const {
    return acts::LogBoothEvent{shop.booth, job::BoothEvent::NewHose};
  }
  C operator()(Of<acts::CorrectBoothEvent>) const {
    return acts::CorrectBoothEvent{shop.event, shop.booth, job::BoothEvent::Cleaned};
  }
  C operator()(Of<acts::OpenCar>) const { return car_to_open(); }
  C operator()(Of<acts::SetPlate>) const { return acts::SetPlate{shop.job, "K 1"}; }
  C operator()(Of<acts::SetVin>) const { return acts::SetVin{shop.job, "11111111111111111"}; }
  C operator()(Of<acts::SetColor>) const { return acts::SetColor{shop.job, {"R1", "red", ""}}; }
  C operator()(Of<acts::SetPromise>) const { return acts::SetPromise{shop.job, 5}; }
  C operator()(Of<acts::PlanPanel>) const { return acts::PlanPanel{shop.job, {job::Panel::Roof}}; }
  C operator()(Of<acts::SayBooth>) const { return acts::SayBooth{shop.job, shop.booth}; }
  C operator()(Of<acts::PlanOperation>) const {
    return acts::PlanOperation{shop.job, {job::Stage::Wash, "", 10}};
  }
  C operator()(Of<acts::ChangeEstimate>) const {
    return acts::ChangeEstimate{shop.job, shop.inspect, 5};
  }
  C operator()(Of<acts::FinishStage>) const {
    return acts::FinishStage{shop.job, job::Stage::Inspect, true, job::WithoutShots::NoCamera};
  }
  C operator()(Of<acts::WriteNote>) const { return acts::WriteNote{shop.job, "door open"}; }
  C operator()(Of<acts::Deliver>) const { return acts::Deliver{shop.job}; }
  C operator()(Of<acts::PlaceMark>) const {
    return acts::PlaceMark{shop.job, job::Panel::Hood, shop.x_mm, shop.y_mm + 10};
  }
  C operator()(Of<acts::MoveMark>) const {
    return acts::MoveMark{shop.job, shop.mark, shop.x_mm, shop.y_mm + 5};
  }
  C operator()(Of<acts::DescribeMark>) const {
    return acts::DescribeMark{shop.job, shop.mark, job::DefectKind::Crater, 2};
  }
  C operator()(Of<acts::WithdrawMark>) const { return acts::WithdrawMark{shop.job, shop.mark}; }
  C operator()(Of<acts::SayDirtAllOver>) const {
    return acts::SayDirtAllOver{shop.job, job::Panel::Hood, job::DirtClass::Over50};
  }
  C operator()(Of<acts::GiveVerdict>) const {
    return acts::GiveVerdict{shop.job, job::Panel::Hood, job::Verdict::Redo};
  }
  C operator()(Of<acts::SetCause>) const { return acts::SetCause{shop.job, job::DirtCause::Hose}; }
  C operator()(Of<acts::ReadFilm>) const {
    return acts::ReadFilm{.job = shop.job,
                          .panel = job::Panel::Hood,
                          .when = job::FilmWhen::BeforeCutting,
                          .typed = {112, 115, 110}};
  }
  C operator()(Of<acts::AnswerBeforeCut>) const {
    return before_cut(shop.job, job::CutAnswer::Yes);
  }
  C operator()(Of<acts::FinishRound>) const {
    return acts::FinishRound{shop.job, job::Panel::Hood, job::Round::Level, {}, {shop.mark}, 1, 700,
                             1.5};
  }
  C operator()(Of<acts::EndMark>) const {
    return acts::EndMark{shop.job, shop.mark, job::MarkEnd::BurnThrough};
  }
  C operator()(Of<acts::TakePicture>) const {
    return acts::TakePicture{
        shop.job, shop.picture_facts, job::PictureFrom::File, {job::Stage::Correct}};
  }
  C operator()(Of<acts::FilePicture>) const {
    return acts::FilePicture{shop.job, shop.picture, {job::Stage::WalkAround}};
  }
  C operator()(Of<acts::NotePicture>) const {
    return acts::NotePicture{
        shop.job, shop.picture, {job::PictureNoteShape::Circle, 0.5, 0.5, 0.6, 0.5, ""}};
  }
  C operator()(Of<acts::CheckEdges>) const {
    return acts::CheckEdges{shop.job, shop.picture, {job::DefectKind::TapeLine}};
  }
  C operator()(Of<acts::SetShotList>) const { return acts::SetShotList{job::Stage::Wash, {}}; }
  C operator()(Of<acts::SetBoothFacts>) const {
    job::BoothFacts facts;
    facts.volume_m3 = 90;
    return acts::SetBoothFacts{shop.booth, facts};
  }
  C operator()(Of<acts::ReadBooth>) const {
    return acts::ReadBooth{shop.booth, job::BoothReading::FilterPressure, {80}};
  }
  C operator()(Of<acts::StartSpray>) const {
    return spray_on(shop.job, shop.booth, shop.respirator);
  }
  C operator()(Of<acts::GunDown>) const { return acts::GunDown{shop.sprayed_in}; }
  C operator()(Of<acts::SayExhaust>) const {
    return acts::SayExhaust{shop.booth, job::BoothWord::DoorOpened};
  }
  C operator()(Of<acts::LogClearanceOver>) const { return acts::LogClearanceOver{shop.cleared}; }
  C operator()(Of<acts::ReportSprayedWithout>) const {
    return acts::ReportSprayedWithout{shop.job, shop.booth, {job::GunItem::RightRespirator}};
  }
  C operator()(Of<acts::SetRespirator>) const {
    job::Respirator other = hood_with_air();
    other.model = "mask 2";
    other.kind = job::RespiratorKind::HalfAirPurifying;
    return acts::SetRespirator{{}, other};
  }
  C operator()(Of<acts::RecordFitTest>) const {
    return acts::RecordFitTest{
        shop.ivo, shop.mask, {"M", job::FitMethod::Qualitative, {}, true, 20'500, 365}};
  }
  C operator()(Of<acts::ChangeCartridge>) const {
    return acts::ChangeCartridge{shop.ivo, shop.mask, 8, "maker's program"};
  }
  C operator()(Of<acts::CheckBreathingAir>) const {
    return acts::CheckBreathingAir{{true, true, true, 20'500, 90}};
  }
  C operator()(Of<acts::SayDoNotSpray>) const { return acts::SayDoNotSpray{shop.ivo}; }
  C operator()(Of<acts::SetDue>) const {
    return acts::SetDue{shop.ivo, job::DueKind::PainterTraining, 21'000};
  }
  C operator()(Of<acts::SetLimit>) const {
    return acts::SetLimit{
        {}, {"HDI", trade::LimitKind::Ceiling, 0.02, "ppm", "the shop", 2026, "own", false}};
  }
  C operator()(Of<acts::SetProduct>) const {
    job::Product other = a_clear();
    other.product_name = "clear B";
    return acts::SetProduct{{}, other};
  }
  C operator()(Of<acts::LogSample>) const {
    return acts::LogSample{shop.ivo, "HDI", 0.002, "ppm", 1'789'990'000'000, 1'789'993'600'000};
  }
  C operator()(Of<acts::OpenFirstAid>) const { return acts::OpenFirstAid{job::FirstAid::Eye}; }
  C operator()(Of<acts::MixProduct>) const {
    return acts::MixProduct{shop.job, shop.product, "4712"};
  }
  C operator()(Of<acts::SayCoats>) const {
    return acts::SayCoats{shop.job, shop.mix, {job::Panel::Hood}, 2, {8}, "1.3 mm, 2 bar"};
  }
  C operator()(Of<acts::ReadBakeLimit>) const {
    return acts::ReadBakeLimit{shop.job, 60, 30, "repair manual"};
  }
  C operator()(Of<acts::SayBake>) const { return acts::SayBake{shop.job}; }
  C operator()(Of<acts::ReadPanelTemperature>) const {
    return acts::ReadPanelTemperature{shop.job, job::PanelGroup::Roof, 24};
  }
  C operator()(Of<acts::CheckThumbnail>) const {
    return acts::CheckThumbnail{shop.job, job::PanelGroup::Roof, true};
  }
  C operator()(Of<acts::SayBonded>) const {
    return acts::SayBonded{shop.job, shop.urethane, "windshield", "two bags"};
  }
  C operator()(Of<acts::ReadClimate>) const {
    return acts::ReadClimate{shop.job, shop.booth, 22, 21, 45};
  }
  C operator()(Of<acts::StartClock>) const {
    return acts::StartClock{shop.ivo, shop.job, shop.correct};
  }
  C operator()(Of<acts::PauseClock>) const { return acts::PauseClock{shop.ivo}; }
  C operator()(Of<acts::StopClock>) const { return acts::StopClock{shop.ivo}; }
  C operator()(Of<acts::OfferRelease>) const {
    return acts::OfferRelease{shop.job, job::Panel::FrontBumper, job::Role::GlassTech};
  }
  C operator()(Of<acts::TakeRelease>) const { return acts::TakeRelease{shop.job, shop.release}; }
  C operator()(Of<acts::ReturnRelease>) const {
    return acts::ReturnRelease{shop.job, shop.release, "scratch"};
  }
  C operator()(Of<acts::FinishOperation>) const {
    return acts::FinishOperation{shop.job, shop.correct};
  }
  C operator()(Of<acts::AnswerSupplement>) const {
    return acts::AnswerSupplement{shop.job, shop.correct, job::Approval::Asked};
  }
  C operator()(Of<acts::SayCheckIn>) const {
    job::CheckIn said;
    said.odometer = 48'210;
    said.keys = 2;
    return acts::SayCheckIn{shop.job, said};
  }
  C operator()(Of<acts::SayPart>) const {
    return acts::SayPart{shop.job, {}, {"left headlamp", job::PartState::Ordered, {}}};
  }
  C operator()(Of<acts::SaySublet>) const {
    return acts::SaySublet{
        shop.job, {}, {job::SubletKind::Glass, "glass shop", job::SubletState::Planned, {}}};
  }
  C operator()(Of<acts::SayWait>) const { return acts::SayWait{shop.job, job::WaitReason::Booth}; }
  C operator()(Of<acts::Sign>) const {
    return acts::Sign{
        shop.job, job::SignedFor::Delivery, "R. Ames", {{{{0.1, 0.5}, {0.6, 0.4}, {0.9, 0.5}}}}};
  }
  C operator()(Of<acts::SayCameBack>) const { return acts::SayCameBack{shop.gone, "wind noise"}; }
  C operator()(Of<acts::AmendClock>) const {
    return acts::AmendClock{shop.job, shop.started, shop.started_ms - 60'000, "forgot to tap"};
  }
  C operator()(Of<acts::SettleRelease>) const {
    return acts::SettleRelease{shop.job, shop.release, shop.ivo};
  }
  C operator()(Of<acts::SayStep>) const {
    return acts::SayStep{shop.job, job::Step::BumperLampsGrille};
  }
  C operator()(Of<acts::MeasureFit>) const {
    return acts::MeasureFit{shop.job,
                            job::Panel::FrontBumper,
                            job::FitRound::AfterHanging,
                            {{100, 500, 90, 5, 4}, {1900, 500, 90, 3, 4}}};
  }
  C operator()(Of<acts::MoveFasteners>) const {
    return acts::MoveFasteners{shop.job, job::Panel::FrontBumper, {{"left bracket", 1, 0, 0}}};
  }
  C operator()(Of<acts::SetCalendar>) const {
    auto calendar = job::usual_calendar();
    calendar.holidays = {20'800};
    return acts::SetCalendar{calendar};
  }
  C operator()(Of<acts::SetRule>) const {
    return acts::SetRule{
        {}, {job::Step::LampsAimed, job::Step::RoadTest, job::RuleKind::Soft, "at night"}};
  }
  C operator()(Of<acts::SetRetention>) const {
    return acts::SetRetention{job::RecordClass::TimeCards, 4};
  }
  C operator()(Of<acts::Withdraw>) const {
    return acts::Withdraw{shop.job, shop.placed, "wrong panel"};
  }
  C operator()(Of<acts::UndoAction>) const { return acts::UndoAction{shop.last}; }
};

inline std::vector<acts::Command> every_command(const SmallShop& shop) {
  const Sample sample{shop};
  std::vector<acts::Command> out;
  acts::CommandKinds::each([&]<class T>() { out.push_back(sample(Sample::Of<T>{})); });
  return out;
}

}  // namespace jambline::engine
