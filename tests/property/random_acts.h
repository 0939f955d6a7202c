// tests/property/random_acts.h: something that a person could do now, drawn at random.
#pragma once

#include "app/demo/dirt.h"
#include "app/demo/invented.h"
#include "app/demo/visit.h"
#include "folds/shots_of_car.h"
#include "tests/property/random_air.h"
#include "tests/property/random_visit.h"

namespace jambline::property {

inline acts::Command any_reading(const folds::CarView& car, const folds::PanelView& panel,
                                 SeededRandom& random) {
  acts::ReadFilm out{.job = car.job,
                     .panel = panel.plan.panel,
                     .spot = demo::between(random, 1, 3),
                     .when = any_word<job::FilmWhen>(random),
                     .gauge = any_word<job::FilmGauge>(random),
                     .unit = any_word<job::FilmUnit>(random)};
  const double um = out.when == job::FilmWhen::BeforeBase ? demo::between(random, 40, 90)
                                                          : demo::between(random, 80, 140);
  for (int i = demo::between(random, 2, 5); i > 0; --i)
    out.typed.push_back(out.unit == job::FilmUnit::Mil ? um / job::um_per_mil : um + i);
  if (!panel.film.empty() && random.below(4) == 0)
    out.corrects = one_of(panel.film, random).reading;
  return out;
}

inline acts::Command any_round(const JobId& job, const folds::PanelView& panel,
                               SeededRandom& random) {
  acts::FinishRound out{
      job, panel.plan.panel, any_word<job::Round>(random), any_word<job::RoundHow>(random), {}};
  for (const auto& mark : panel.marks)
    if (random.below(2)) out.marks.push_back(mark.mark);
  out.areas = demo::between(random, 0, 3);
  out.area_mm2 = out.areas * 2000.5;
  if (random.below(2)) out.work_min = demo::between(random, 0, 20);
  return out;
}

inline acts::Command any_check(const JobId& job, SeededRandom& random) {
  acts::AnswerBeforeCut out{job, {}};
  for (std::size_t i = 0; i < enum_words<job::CutItem>.size(); ++i) {
    const bool no = i < 3 && random.below(4) == 0;
    out.checks.push_back(
        {static_cast<job::CutItem>(i), no ? job::CutAnswer::No : job::CutAnswer::Yes,
         no ? std::optional(any_word<job::OverrideReason>(random)) : std::nullopt});
  }
  return out;
}

inline acts::Command any_booth_act(const folds::ShopView& shop, const JobId& job,
                                   SeededRandom& random) {
  const std::string name = "booth " + std::to_string(random.below(100));
  if (shop.booths.empty() || random.below(6) == 0)
    return acts::AddBooth{name, any_word<job::BoothKind>(random)};
  const auto& booth = one_of(shop.booths, random).booth;
  const auto what = any_word<job::BoothEvent>(random);
  switch (random.below(4)) {
    case 0:
      return acts::ChangeBooth{booth, name, any_word<job::BoothKind>(random)};
    case 1:
      return acts::SayBooth{job, booth};
    case 2:
      if (!shop.booth_events.empty())
        return acts::CorrectBoothEvent{
            one_of(shop.booth_events, random).event, booth, what,
            random.below(2) ? std::nullopt : std::optional(Device::start_ms)};
      [[fallthrough]];
    default:
      return acts::LogBoothEvent{
          booth, what, random.below(2) ? std::nullopt : std::optional(Device::start_ms - 5000)};
  }
}

inline entries::PicturePlace any_place(const folds::ShopView& shop, const folds::PanelView& panel,
                                       SeededRandom& random) {
  entries::PicturePlace place{any_word<job::Stage>(random)};
  const auto& shots = folds::shots_of(shop, place.stage);
  if (!shots.empty() && random.below(4)) place.shot = one_of(shots, random).shot;
  if (random.below(4)) place.panel = panel.plan.panel;
  if (!panel.marks.empty() && random.below(3) == 0) place.mark = one_of(panel.marks, random).mark;
  return place;
}

inline acts::Command any_picture_act(const folds::ShopView& shop, const folds::CarView& car,
                                     const folds::PanelView& panel, SeededRandom& random) {
  using namespace acts;
  if (car.pictures.empty() || random.below(3) == 0) {
    TakePicture take{car.job,
                     {},
                     any_word<job::PictureFrom>(random),
                     any_place(shop, panel, random),
                     random.below(2) == 0};
    take.facts.file.bytes[0] = static_cast<std::uint8_t>(1 + random.below(200));
    take.facts.size_bytes = 1000;
    take.facts.width_px = 1600;
    take.facts.height_px = 1200;
    take.facts.word = any_word<trade::PhotoWord>(random);
    return take;
  }
  const auto& picture = one_of(car.pictures, random);
  switch (random.below(5)) {
    case 0:
      return FilePicture{car.job, picture.picture, any_place(shop, panel, random)};
    case 1:
      return NotePicture{car.job,
                         picture.picture,
                         {any_word<job::PictureNoteShape>(random), random.unit(), random.unit(),
                          random.unit(), random.unit(), "look here"},
                         picture.notes.empty() || random.below(2)
                             ? std::nullopt
                             : std::optional(one_of(picture.notes, random).note)};
    case 2: {
      SetShotList list{any_word<job::Stage>(random), {}};
      list.shots = folds::shots_of(shop, list.stage);
      if (!list.shots.empty() && random.below(2)) list.shots.pop_back();
      if (random.below(2))
        list.shots.push_back({{},
                              "own shot " + std::to_string(random.below(100)),
                              any_word<job::ShotView>(random),
                              any_word<job::ShotWanted>(random)});
      return list;
    }
    default: {
      CheckEdges look{car.job, picture.picture, {}};
      for (const auto find :
           {job::DefectKind::TapeLine, job::DefectKind::TapeBleed, job::DefectKind::PrimerShowing})
        if (random.below(3) == 0) look.finds.push_back(find);
      return look;
    }
  }
}

// May well be refused; that is part of the game.
inline acts::Command random_act(const Device& device, const PersonId& person,
                                SeededRandom& random) {
  using namespace acts;
  const auto& jobs = device.folds().jobs;
  const auto shop = device.folds().shop.view();
  if (jobs.empty() || (jobs.size() < 3 && random.below(12) == 0)) return demo::invented_car(random);
  auto chosen = jobs.begin();
  std::advance(chosen, static_cast<long>(random.below(jobs.size())));
  const folds::CarView car = chosen->second.view();
  const JobId job = car.job;
  if (car.panels.empty()) return SetPlate{job, demo::plate(random)};
  const auto& panel = one_of(car.panels, random);
  const auto name = panel.plan.panel;
  const auto* drawn = job::pattern(car.body).find(name);
  const auto place = drawn ? demo::place_on(drawn->shape, random) : trade::Point_mm{};
  const PersonId worker = shop.people.empty() ? person : one_of(shop.people, random).person;
  switch (random.below(66)) {
    case 0:
      return SetPlate{job, demo::plate(random)};
    case 1:
      return SetVin{job, demo::vin(random)};
    case 2:
      return SetColor{job, demo::color(random)};
    case 3:
      return SetPromise{job, Device::start_ms + static_cast<std::int64_t>(random.below(1000000))};
    case 4:
      return PlanPanel{job, {name, random.below(2) == 0, {}, any_word<job::Finish>(random), {}}};
    case 5:
      return PlanOperation{job, {any_word<job::Stage>(random), "", demo::between(random, 0, 300)}};
    case 6:
      if (!car.operations.empty())
        return ChangeEstimate{job, one_of(car.operations, random).operation,
                              demo::between(random, 0, 300)};
      [[fallthrough]];
    case 7:
      return FinishStage{
          job, any_word<job::Stage>(random), random.below(3) != 0,
          random.below(3) ? std::optional(any_word<job::WithoutShots>(random)) : std::nullopt};
    case 8:
      return WriteNote{job, "seen by number " + std::to_string(random.below(100))};
    case 9:
      return random.below(4) ? Command(SayDirtAllOver{job, name, any_word<job::DirtClass>(random)})
                             : Command(Deliver{job});
    case 10:
    case 11:
    case 12:
    case 13:
      return PlaceMark{
          job,
          name,
          place.x_mm,
          place.y_mm,
          any_word<job::DefectKind>(random),
          demo::between(random, 1, 4),
          any_word<job::Layer>(random),
          random.below(3) ? std::nullopt : std::optional(any_word<job::ParticleLook>(random))};
    case 14:
    case 15:
      if (!panel.marks.empty())
        return MoveMark{job, one_of(panel.marks, random).mark, place.x_mm, place.y_mm};
      [[fallthrough]];
    case 16:
      if (!panel.marks.empty())
        return DescribeMark{
            job,
            one_of(panel.marks, random).mark,
            any_word<job::DefectKind>(random),
            demo::between(random, 1, 4),
            any_word<job::Layer>(random),
            random.below(2) ? std::nullopt : std::optional(any_word<job::ParticleLook>(random))};
      [[fallthrough]];
    case 17:
      if (!panel.marks.empty()) return WithdrawMark{job, one_of(panel.marks, random).mark};
      [[fallthrough]];
    case 18:
    case 19:
    case 20:
      return GiveVerdict{job, name, any_word<job::Verdict>(random), true,
                         shop.racks.empty() || random.below(3)
                             ? std::nullopt
                             : std::optional(shop.racks.front().rack)};
    case 21:
    case 22:
      if (!car.operations.empty())
        return StartClock{worker, job, one_of(car.operations, random).operation};
      [[fallthrough]];
    case 23:
      return random.below(2) ? Command(PauseClock{worker}) : Command(StopClock{worker});
    case 24:
      return OfferRelease{job,
                          random.below(2) ? std::optional(name) : std::nullopt,
                          any_word<job::Role>(random),
                          {}};
    case 25:
      return TakeRelease{job, random.below(2) ? panel.release.release : car.car_release.release};
    case 26:
      return ReturnRelease{job, random.below(2) ? panel.release.release : car.car_release.release,
                           "not ready"};
    case 27:
    case 28: {
      const auto& entry = one_of(device.known(), random);
      return Withdraw{entry.subject, entry.hash, "by mistake"};
    }
    case 30:
    case 31:
      if (!panel.marks.empty())
        return EndMark{job, one_of(panel.marks, random).mark, any_word<job::MarkEnd>(random)};
      [[fallthrough]];
    case 32:
    case 33:
    case 34:
      return any_reading(car, panel, random);
    case 35:
    case 36:
      if (!car.before_cut_of(person)) return any_check(job, random);
      return any_round(job, panel, random);
    case 37:
      return any_check(job, random);
    case 38:
      return SetCause{
          job, random.below(4) ? std::optional(any_word<job::DirtCause>(random)) : std::nullopt};
    case 41:
    case 42:
    case 43:
    case 44:
      return any_picture_act(shop, car, panel, random);
    case 45:
    case 46:
    case 47:
    case 48:
    case 49:
    case 50:
    case 51:
    case 52:
    case 53:
      return any_air_act(shop, car, name, worker, random);
    case 54:
    case 55:
    case 56:
    case 57:
    case 58:
    case 59:
    case 60:
    case 61:
    case 62:
    case 63:
      return any_visit_act(shop, car, name, worker, random);
    case 39:
    case 40:
      return any_booth_act(shop, job, random);
    case 64:
      return NameDevice{one_of(device.known(), random).order.device,
                        "tablet " + std::to_string(random.below(100))};
    default:
      return random.below(2) ? Command(AddPerson{"Person " + std::to_string(random.below(1000)),
                                                 any_word<job::Role>(random)})
                             : Command(AddRack{"rack " + std::to_string(random.below(1000))});
  }
}

}  // namespace jambline::property
