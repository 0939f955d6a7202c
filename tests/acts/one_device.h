// tests/acts/one_device.h: a shop with one car on one device, to decide and to fold what is
// decided.
#pragma once

#include <gtest/gtest.h>

#include "acts/decide.h"
#include "folds/job_fold.h"
#include "folds/shop_fold.h"

namespace jambline::acts {

using job::Panel;
using job::Verdict;

// One device that writes what is decided into folds.
class DecideTest : public testing::Test {
 protected:
  void SetUp() override {
    did(AddPerson{"Rosa", job::Role::Manager});
    manager = shop_view.people.front().person;
    person = manager;
    did(AddPerson{"Ivo", job::Role::Painter});
    painter = shop_view.people.back().person;
    did(AddRack{"rack 1"});
    rack = shop_view.racks.front().rack;
    job = did(usual_car()).front().subject;
  }

  static OpenCar usual_car() {
    OpenCar open;
    open.plate = "K 41-206";
    open.body = job::BodyShape::FourDoorSedan;
    open.panels = {{Panel::Hood, true, {}, {}, {}}, {Panel::FrontBumper, false, {}, {}, {}}};
    open.operations = {{job::Stage::Prep, "", 60}, {job::Stage::Spray, "", 45}};
    return open;
  }

  Result<std::vector<Draft>> decided(const Command& command) {
    const World world{shop_view,
                      [this](const JobId& wanted) -> const folds::CarView* {
                        const auto found = views.find(wanted);
                        return found == views.end() ? nullptr : &found->second;
                      },
                      [this](const PersonId& worker) -> std::optional<JobId> {
                        for (const auto& [id, view] : views)
                          for (const auto& running : view.running)
                            if (running.person == worker) return id;
                        return std::nullopt;
                      },
                      needed, manager_device};
    return decide(world, command, {person, random, now_ms, now()});
  }

  std::vector<entries::Entry> did(const Command& command) {
    const auto drafts = decided(command);
    if (!drafts) {
      ADD_FAILURE() << code_name(drafts.error().code) << " " << drafts.error().operation;
      return {entries::Entry{}};
    }
    std::vector<entries::Entry> out;
    now_ms += 60'000;
    for (const auto& draft : *drafts) {
      entries::Entry entry;
      entry.subject = draft.subject;
      entry.order = {++count, {}, count};
      entry.hash.bytes[0] = static_cast<std::uint8_t>(count);
      entry.hash.bytes[1] = 1;
      entry.wall_ms = now_ms;
      entry.boottime_ms = static_cast<std::uint64_t>(now_ms - 1'800'000'000'000);
      entry.person = person;
      const auto written = entries::write(draft.payload);
      entry.payload = entries::read(written.kind, written.schema, written.payload, false);
      apply(entry);
      out.push_back(entry);
    }
    return out;
  }

  void apply(const entries::Entry& entry) {
    if (!entry.subject) {
      shop.apply(entry);
      shop_view = shop.view();
      return;
    }
    auto& fold = folds.try_emplace(entry.subject, entry.subject).first->second;
    fold.apply(entry);
    views[entry.subject] = fold.view();
  }

  void refused(const Command& command, Code code) {
    const auto drafts = decided(command);
    ASSERT_FALSE(drafts);
    EXPECT_EQ(code_name(drafts.error().code), code_name(code));
  }

  // Whatever is open is signed for.
  void sign() { did(Sign{job, job::SignedFor::Delivery, "R. Ames", {{{{0, 0}, {1, 1}}}}}); }

  AnswerBeforeCut all_yes() {
    AnswerBeforeCut out{job, {}};
    for (std::size_t i = 0; i < enum_words<job::CutItem>.size(); ++i)
      out.checks.push_back({static_cast<job::CutItem>(i), job::CutAnswer::Yes});
    return out;
  }
  void ready_to_cut() {
    if (!car().before_cut_of(person)) did(all_yes());
  }

  Moment now() const {
    return {now_ms, static_cast<std::uint64_t>(now_ms - 1'800'000'000'000), {}, 0};
  }
  const folds::CarView& car() { return views.at(job); }
  const folds::PanelView& panel(Panel name) { return *car().find(name); }
  OperationId operation(std::size_t number) { return car().operations[number].operation; }
  PlaceMark nib(double x_mm, double y_mm) { return {job, Panel::Hood, x_mm, y_mm, {}, 1, {}}; }

  SeededRandom random{7};
  folds::ShopFold shop;
  folds::ShopView shop_view;
  std::map<JobId, folds::JobFold> folds;
  std::map<JobId, folds::CarView> views;
  PersonId person, manager, painter;
  RackId rack;
  JobId job;
  std::function<entries::Right(const JobId&, const Hash&)> needed;
  bool manager_device = true;
  std::uint64_t count = 0;
  std::int64_t now_ms = 1'804'780'800'000;
};

}  // namespace jambline::acts
