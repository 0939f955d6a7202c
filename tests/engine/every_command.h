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
  job::PictureFacts picture_facts;
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
                          const acts::TakePicture& command, const PersonId& person) {
  std::optional<Result<Wrote>> out;
  engine.keep_picture(std::make_shared<const std::vector<std::uint8_t>>(std::move(bytes)), command,
                      person, [&](Result<Wrote> wrote) { out = std::move(wrote); });
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

// Fills an empty shop; the car stays watched.
inline void furnish(Engine& engine, SmallShop& shop) {
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
  ASSERT_TRUE(act(engine, acts::StartClock{shop.ivo, shop.job, shop.inspect}, shop.ivo));
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
  C operator()(Of<acts::Withdraw>) const {
    return acts::Withdraw{shop.job, shop.placed, "wrong panel"};
  }
  C operator()(Of<acts::UndoAction>) const { return acts::UndoAction{shop.last}; }
};

inline std::vector<acts::Command> every_command(const SmallShop& shop) {
  const Sample sample{shop};
  return [&]<std::size_t... I>(std::index_sequence<I...>) {
    return std::vector<acts::Command>{
        sample(Sample::Of<std::variant_alternative_t<I, acts::CommandKinds>>{})...};
  }
  (std::make_index_sequence<std::variant_size_v<acts::CommandKinds>>{});
}

}  // namespace jambline::engine
