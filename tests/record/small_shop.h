// tests/record/small_shop.h: a folder with a shop of two people and two cars, written by the engine
// itself, and what was done there.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <gtest/gtest.h>
#include <memory>
#include <string>

#include "engine/engine.h"
#include "job/body_shape.h"

namespace jambline {

inline constexpr std::int64_t morning_ms = 1'795'617'000'000;  // 2026-11-25 14:30 UTC, 9:30 there

class SmallShop {
 public:
  SmallShop() {
    std::string name = (std::filesystem::temp_directory_path() / "jambline-record-XXXXXX").string();
    if (!mkdtemp(name.data())) std::abort();
    folder = name;
    clock.moment = {morning_ms, 1000, BootId{{1}}, -300};
  }
  ~SmallShop() {
    engine.reset();
    std::error_code ignored;
    std::filesystem::remove_all(folder, ignored);
  }
  SmallShop(const SmallShop&) = delete;
  SmallShop& operator=(const SmallShop&) = delete;

  void open(std::function<void(std::shared_ptr<const engine::Snapshot>)> published = {}) {
    engine::Engine::Parts parts{folder, clock, std::make_unique<SeededRandom>(5), "cart 1",
                                std::move(published)};
    auto opened = engine::Engine::open(std::move(parts));
    if (!opened) std::abort();
    engine = std::move(*opened);
  }
  void close() { engine.reset(); }

  engine::Wrote act(acts::Command command, PersonId person) {
    std::optional<Result<engine::Wrote>> out;
    engine->post(std::move(command), person,
                 [&](Result<engine::Wrote> wrote) { out = std::move(wrote); });
    engine->drain();
    if (!*out) {
      ADD_FAILURE() << code_name(out->error().code) << " " << out->error().subject;
      return {};
    }
    clock.advance_ms(60'000);
    return std::move(**out);
  }
  engine::Wrote act(acts::Command command) { return act(std::move(command), ivo); }

  JobId open_car(std::string plate, job::Color color) {
    acts::OpenCar command;
    command.plate = std::move(plate);
    command.color = std::move(color);
    command.body = job::BodyShape::FourDoorSedan;
    command.panels = {
        {job::Panel::Hood, true}, {job::Panel::LeftFender, true}, {job::Panel::FrontBumper, false}};
    command.operations = {{job::Stage::Inspect, "", 60}, {job::Stage::Correct, "", 90}};
    const JobId job = act(command).job;
    engine->watch(job);
    engine->drain();
    return job;
  }

  static trade::Point_mm middle(job::Panel panel) {
    const auto& shape = job::pattern(job::BodyShape::FourDoorSedan).find(panel)->shape;
    return {shape.width_mm() / 2, shape.height_mm() / 2};
  }

  // K 41-206: two nibs on the hood, the second taken back; left fender clean; six minutes looked.
  void work() {
    act(acts::NameShop{"Test shop", "America/New_York"}, {});
    act(acts::AddPerson{"Ivo", job::Role::Painter}, {});
    ivo = engine->snapshot()->shop->people.front().person;
    act(acts::AddPerson{"Mara", job::Role::BodyTechnician});
    mara = engine->snapshot()->shop->people.back().person;
    act(acts::AddRack{"rack 2"});
    const RackId rack = engine->snapshot()->shop->racks.front().rack;
    other = open_car("S 88-014", {"R3", "dark red", "#5A1A1A"});
    green = open_car("K 41-206", {"G7", "deep green", "#1F4D3A"});
    const OperationId inspect = engine->snapshot()->car->operations.front().operation;
    act(acts::StartClock{ivo, green, inspect});
    const auto at = middle(job::Panel::Hood);
    act(acts::PlaceMark{green, job::Panel::Hood, at.x_mm, at.y_mm, job::DefectKind::Nib, 2});
    act(acts::PlaceMark{green, job::Panel::Hood, at.x_mm + 50, at.y_mm, job::DefectKind::Crater});
    const MarkId second = engine->snapshot()->car->find(job::Panel::Hood)->marks.back().mark;
    act(acts::WithdrawMark{green, second}, mara);
    act(acts::GiveVerdict{green, job::Panel::LeftFender, job::Verdict::Clean});
    act(acts::GiveVerdict{green, job::Panel::FrontBumper, job::Verdict::Clean, true, rack});
    act(acts::StopClock{ivo});
    act(acts::WriteNote{green, "door open,\nwet"});
  }

  std::filesystem::path folder;
  FakeClock clock;
  std::unique_ptr<engine::Engine> engine;
  PersonId ivo;
  PersonId mara;
  JobId green;
  JobId other;
};

}  // namespace jambline
