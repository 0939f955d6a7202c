#include "tests/safety/spray_shop.h"

#include <cstdio>
#include <cstdlib>

namespace jambline::safety {

namespace {
constexpr std::int64_t ms_per_day = 86'400'000;
}

engine::Wrote act(engine::Engine& engine, acts::Command command, const PersonId& by) {
  engine::Wrote out;
  engine.post(std::move(command), by, [&](Result<engine::Wrote> wrote) {
    if (!wrote) {
      std::fprintf(stderr, "refused: %s, %s\n", wrote.error().operation.c_str(),
                   wrote.error().subject.c_str());
      std::abort();
    }
    out = std::move(*wrote);
  });
  engine.drain();
  return out;
}

SprayShop make_shop(engine::Engine& engine, std::int64_t now_ms) {
  SprayShop out;
  const auto shop = [&]() -> const folds::ShopView& { return *engine.snapshot()->shop; };
  act(engine, acts::AddPerson{"Mara", job::Role::Manager}, {});
  out.mara = shop().people.back().person;
  act(engine, acts::NameShop{"Shop", "Etc/UTC"}, out.mara);
  act(engine, acts::AddPerson{"Ivo", job::Role::Painter}, out.mara);
  out.ivo = shop().people.back().person;
  act(engine,
      acts::SetRespirator{{},
                          {"hood 7", job::RespiratorKind::SuppliedHood, trade::FactorScheme::Us, 25,
                           "29 CFR 1910.134", 2006, "", false}},
      out.mara);
  out.hood = shop().air.respirators.back().respirator;
  const int today = static_cast<int>(now_ms / ms_per_day);
  act(engine, acts::CheckBreathingAir{{true, true, true, today - 10, 90}}, out.mara);
  for (const PersonId& person : {out.mara, out.ivo})
    act(engine, acts::SetDue{person, job::DueKind::PainterTraining, today + 100}, out.mara);
  for (const char* name : {"Booth 1", "Booth 2"}) {
    act(engine, acts::AddBooth{name, job::BoothKind::Downdraft}, out.mara);
    const BoothId booth = shop().booths.back().booth;
    job::BoothFacts facts;
    facts.most_pressure_pa = 150;
    act(engine, acts::SetBoothFacts{booth, facts}, out.mara);
    act(engine, acts::ReadBooth{booth, job::BoothReading::FilterPressure, {80}}, out.mara);
    act(engine,
        acts::ReadBooth{
            booth, job::BoothReading::SmokeTest, {smoke_test_min}, 5, now_ms - 20 * ms_per_day},
        out.mara);
  }
  out.booth = shop().booths.front().booth;
  out.other_booth = shop().booths.back().booth;
  return out;
}

JobId open_car(engine::Engine& engine, const SprayShop& shop, const char* plate) {
  acts::OpenCar car;
  car.plate = plate;
  car.color = {"G7", "deep green", "#1F4D3A"};
  car.body = job::BodyShape::FourDoorSedan;
  car.panels = {{.panel = job::Panel::Hood}};
  car.operations = {{job::Stage::BeforeTheGun, "", 30}, {job::Stage::Spray, "", 60}};
  return act(engine, car, shop.mara).job;
}

acts::StartSpray good_day(const SprayShop& shop, const JobId& job, const BoothId& booth) {
  acts::StartSpray out{job, booth, shop.hood, true, {}};
  for (std::size_t i = 0; i < enum_words<job::GunItem>.size(); ++i)
    if (const auto item = static_cast<job::GunItem>(i); job::is_of_now(item))
      out.checks.push_back({item, job::CutAnswer::Yes, {}, {}});
  return out;
}

}  // namespace jambline::safety
