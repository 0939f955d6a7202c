// tests/engine/two_devices.h: devices of one shop, each with an engine and a folder of its own, and
// what one has written carried to another by hand.
#pragma once

#include <gtest/gtest.h>

#include "base/json.h"
#include "engine/engine.h"
#include "engine/read_entry.h"
#include "job/body_shape.h"
#include "tests/log/log_folder.h"

namespace jambline::engine {

class ShopTablet {
 public:
  explicit ShopTablet(std::string name, bool awaits_admission = false)
      : name_(std::move(name)), awaits_admission_(awaits_admission) {
    static std::uint64_t tablets = 0;
    seed_ = 100 * ++tablets;
    clock.moment = {1'790'000'000'000, 1000, BootId{{1}}, 0};
    open();
  }

  void open(std::unique_ptr<log::EntryLog> log = {}) {
    engine.reset();
    Engine::Parts parts{folder.path(), clock, std::make_unique<SeededRandom>(++seed_),
                        name_,         {},    {}};
    parts.awaits_admission = awaits_admission_;
    parts.log = std::move(log);
    engine = log::must(Engine::open(std::move(parts)));
    if (watched_) watch(*watched_);
  }

  Result<Wrote> act(acts::Command command, const PersonId& person) {
    std::optional<Result<Wrote>> out;
    clock.advance_ms(1000);
    engine->post(std::move(command), person, [&](Result<Wrote> wrote) { out = std::move(wrote); });
    engine->drain();
    return std::move(*out);
  }
  // What its engine refuses to say, as another program would say it, with this device's key.
  void say_all_the_same(const std::vector<std::pair<JobId, entries::Payload>>& said,
                        const PersonId& person) {
    engine.reset();
    {
      const auto log = log::open_log(folder.path());
      SeededRandom random(++seed_);
      clock.advance_ms(1000);
      for (const auto& [subject, payload] : said) {
        const auto written = entries::write(payload);
        const log::Draft draft{subject, written.kind, written.schema, written.payload};
        log::must(log->append(key(), person, {&draft, 1}, clock.now(), random));
      }
    }
    open();
  }

  seal::SigningKey key() const {
    return log::must(seal::SigningKey::load(folder.path() / "device.key"));
  }
  Admission admission(bool manager) const { return {key().key(), name_, manager}; }
  Result<Wrote> admit(const Admission& admission, const PersonId& by) {
    std::optional<Result<Wrote>> out;
    engine->admit_device(admission, by, [&](Result<Wrote> wrote) { out = std::move(wrote); });
    engine->drain();
    return std::move(*out);
  }
  Result<Wrote> revoke(const DeviceId& device, const PersonId& by) {
    std::optional<Result<Wrote>> out;
    engine->revoke_device(device, by, [&](Result<Wrote> wrote) { out = std::move(wrote); });
    engine->drain();
    return std::move(*out);
  }

  std::vector<seal::SealedEntry> entries() const {
    const auto log = log::open_log(folder.path(), log::OpenMode::ReadOnly);
    return log::entries_of(*log);
  }
  Status take(std::vector<seal::SealedEntry> entries, std::vector<seal::Receipt> receipts = {},
              std::optional<log::Cursor> cursor = {}) {
    auto page = std::make_shared<ArrivedPage>(
        ArrivedPage{std::move(entries), std::move(receipts), std::move(cursor)});
    std::optional<Status> out;
    engine->take_page(page, [&](Status taken) { out = std::move(taken); });
    settle([&] { return out.has_value(); });
    return std::move(*out);
  }
  void take_from(const ShopTablet& other) { log::must(take(other.entries())); }

  void watch(const JobId& job) {
    watched_ = job;
    engine->watch(job);
    engine->drain();
  }
  const folds::CarView& car() const { return *engine->snapshot()->car; }
  const folds::ShopView& shop() const { return *engine->snapshot()->shop; }
  entries::Refused refused(const Hash& entry) const {
    for (const auto& one : *engine->snapshot()->timeline)
      if (one.hash == entry) return one.refused;
    ADD_FAILURE() << "not in the time line";
    return entries::Refused::No;
  }
  // Everything that its screens go by, of the watched car and the shop.
  std::string shown() const {
    const auto now = engine->snapshot();
    return to_json(*now->shop) + to_json(*now->floor) + (now->car ? to_json(*now->car) : "");
  }

  log::TempFolder folder;
  FakeClock clock;
  std::unique_ptr<Engine> engine;

 private:
  // Later work queues later work: until it is over.
  template <class Over>
  void settle(Over over) {
    for (int i = 0; i < 1000 && !over(); ++i) engine->drain();
    for (int i = 0; i < 20; ++i) engine->drain();
  }

  std::string name_;
  bool awaits_admission_;
  std::uint64_t seed_ = 0;
  std::optional<JobId> watched_;
};

// A manager's device with a manager and a technician, a car, and a technician's device that has all
// of it.
class TwoTablets : public testing::Test {
 protected:
  void SetUp() override {
    rosa = add(job::Role::Manager, "Rosa", {});
    tom = add(job::Role::BodyTechnician, "Tom", rosa);
    acts::OpenCar open;
    open.plate = "K 41-206";
    open.color = {"G7", "deep green", "#1F4D3A"};
    open.body = job::BodyShape::FourDoorSedan;
    open.panels = {{job::Panel::Hood, true}, {job::Panel::LeftFender, true}};
    open.operations = {{job::Stage::Inspect, "", 60}};
    car = log::must(office.act(open, rosa)).job;
    office.watch(car);
    log::must(office.admit(booth.admission(false), rosa));
    booth.take_from(office);
    booth.watch(car);
  }
  PersonId add(job::Role role, const char* name, const PersonId& by) {
    return log::must(office.act(acts::AddPerson{name, role}, by))
        .entries.front()
        .payload.get<entries::PersonAdded>()
        .person;
  }
  acts::PlaceMark mark(double x_mm) const { return {car, job::Panel::Hood, x_mm, 300, {}, 1, {}}; }

  ShopTablet office{"office"};
  ShopTablet booth{"booth tablet", true};
  PersonId rosa, tom;
  JobId car;
};

}  // namespace jambline::engine
