// Whatever people do on whichever device, in whatever order it becomes known: all see the same.
// The checks compare the folds with themselves; nothing outside says what is right here.
#include <gtest/gtest.h>
#include <numeric>
#include <rapidcheck.h>

#include "app/demo/demo_shop.h"
#include "engine/read_entry.h"
#include "tests/log/log_folder.h"
#include "tests/property/random_acts.h"

namespace jambline::property {
namespace {

constexpr std::int64_t clock_errors_ms[] = {0, 0, 3 * 86'400'000LL, -2 * 3'600'000LL,
                                            -Device::start_ms + 60'000};

template <class T>
void shuffle(std::vector<T>& list, SeededRandom& random) {
  for (std::size_t i = list.size(); i > 1; --i) std::swap(list[i - 1], list[random.below(i)]);
}

Folds rebuilt(std::vector<entries::Entry> entries) {
  Folds out;
  for (const auto& entry : entries) out.apply(entry);
  return out;
}

struct Shop {
  std::vector<Device> devices;
  PersonId person;
  SeededRandom random;
  int done = 0;

  explicit Shop(std::uint64_t seed) : random(seed) {
    const auto count = 2 + random.below(4);
    for (std::size_t i = 0; i < count; ++i)
      devices.emplace_back(static_cast<std::uint8_t>(i + 1), clock_errors_ms[random.below(5)]);
    const auto first = devices[0].act(acts::AddPerson{"Rosa", job::Role::Manager}, {}, random);
    person = first->entries[0].payload.get<entries::PersonAdded>().person;
    (void)devices[0].act(acts::AddRack{"rack 1"}, person, random);
    const auto opened = devices[0].act(demo::invented_car(random), person, random);
    if (!opened) std::abort();
    for (auto& device : devices)
      for (const auto& entry : devices[0].known()) device.take(entry);
  }

  // Some entries of one device come to another, in any order, some of them twice.
  void some_exchange() {
    const auto& from = one_of(devices, random);
    auto& to = devices[random.below(devices.size())];
    std::vector<entries::Entry> page;
    for (const auto& entry : from.known())
      for (std::uint64_t copies = random.below(3); copies > 0; --copies) page.push_back(entry);
    shuffle(page, random);
    for (const auto& entry : page) to.take(entry);
  }

  void all_exchange() {
    std::vector<entries::Entry> all;
    for (const auto& device : devices)
      all.insert(all.end(), device.known().begin(), device.known().end());
    for (auto& device : devices) {
      shuffle(all, random);
      for (const auto& entry : all) device.take(entry);
    }
  }

  void live(int acts) {
    for (int i = 0; i < acts; ++i) {
      auto& device = devices[random.below(devices.size())];
      for (auto& one : devices) one.pass_ms(static_cast<std::int64_t>(random.below(600'000)));
      if (random.below(25) == 0) device.set_clock_error(clock_errors_ms[random.below(5)]);
      if (device.act(random_act(device, person, random), person, random)) ++done;
      if (random.below(5) == 0) some_exchange();
    }
  }
};

void holds(const std::function<void(std::uint64_t)>& check) {
  EXPECT_TRUE(rc::check([&](std::uint64_t seed) { check(seed); }));
}

TEST(Folds, DevicesThatKnowTheSameEntriesShowTheSame) {
  holds([](std::uint64_t seed) {
    Shop shop(seed);
    shop.live(50);
    RC_ASSERT(shop.done > 5);
    shop.all_exchange();
    const auto first = shop.devices.front().folds().text();
    for (const auto& device : shop.devices) RC_ASSERT(device.folds().text() == first);
  });
}

TEST(Folds, RebuiltFromShuffledEntriesEqualsGrown) {
  holds([](std::uint64_t seed) {
    Shop shop(seed);
    shop.live(40);
    for (const auto& device : shop.devices) {
      auto entries = device.known();
      shuffle(entries, shop.random);
      RC_ASSERT(rebuilt(entries).text() == device.folds().text());
    }
  });
}

// What a screen shows of a car, but for the count of its entries and the marks' numbers: a number
// counts withdrawn marks too, and a mark of a device whose clock is behind comes before others.
std::string shown(const Device& device, const JobId& job) {
  folds::CarView view = device.folds().jobs.at(job).view();
  view.entries = 0;
  for (auto& panel : view.panels)
    for (auto& mark : panel.marks) mark.number = 0;
  return to_json(view);
}

std::vector<std::pair<JobId, Hash>> names_of(const Action& action) {
  std::vector<std::pair<JobId, Hash>> out;
  for (const auto& entry : action.entries) out.emplace_back(entry.subject, entry.hash);
  return out;
}

TEST(Folds, AnUndoneActIsAsIfItHadNeverBeenAndItsUndoBringsItBack) {
  holds([](std::uint64_t seed) {
    Shop shop(seed);
    shop.live(25);
    auto& device = shop.devices.front();
    for (int i = 0; i < 12; ++i) {
      const auto command = random_act(device, shop.person, shop.random);
      if (command.is<acts::OpenCar>()) continue;
      std::map<JobId, std::string> before;
      for (const auto& [job, fold] : device.folds().jobs) before[job] = shown(device, job);
      const auto act = device.act(command, shop.person, shop.random);
      if (!act) continue;
      std::map<JobId, std::string> after;
      for (const auto& [job, fold] : device.folds().jobs) after[job] = shown(device, job);
      const auto undo = device.act(acts::UndoAction{names_of(*act)}, shop.person, shop.random);
      if (!undo) continue;  // a car that was taken back takes no more acts
      for (const auto& [job, text] : before) RC_ASSERT(shown(device, job) == text);
      const auto redo = device.act(acts::UndoAction{names_of(*undo)}, shop.person, shop.random);
      if (!redo) continue;
      for (const auto& [job, text] : after) RC_ASSERT(shown(device, job) == text);
    }
  });
}

TEST(Folds, WhereEveryMarkWasTakenBackNoneIsLeft) {
  holds([](std::uint64_t seed) {
    Shop shop(seed);
    auto& device = shop.devices.front();
    const auto job = device.folds().jobs.begin()->first;
    const auto car = device.folds().jobs.at(job).view();
    const std::string before = shown(device, job);
    std::vector<std::pair<JobId, Hash>> written;
    for (int i = 0; i < 10; ++i) {
      const auto& panel = one_of(car.panels, shop.random).plan.panel;
      const auto place = demo::place_on(job::pattern(car.body).find(panel)->shape, shop.random);
      const auto act = device.act(acts::PlaceMark{job, panel, place.x_mm, place.y_mm, {}, 1, {}},
                                  shop.person, shop.random);
      RC_ASSERT(act);
      for (const auto& name : names_of(*act)) written.push_back(name);
    }
    RC_ASSERT(shown(device, job) != before);
    RC_ASSERT(device.act(acts::UndoAction{written}, shop.person, shop.random));
    RC_ASSERT(shown(device, job) == before);
  });
}

// A value is what the last writer said who knew of the others: no clock has a say.
TEST(Folds, AWriteThatKnewOfAnotherTakesItsPlaceWhateverTheClocksSay) {
  holds([](std::uint64_t seed) {
    Shop shop(seed);
    auto& first = shop.devices[0];
    auto& second = shop.devices[1];
    first.set_clock_error(3 * 86'400'000LL);
    second.set_clock_error(-2 * 3'600'000LL);
    const auto job = first.folds().jobs.begin()->first;
    const auto panel = first.folds().jobs.at(job).view().panels.front().plan.panel;
    const auto ahead = first.act(acts::GiveVerdict{job, panel, job::Verdict::Clean, true, {}},
                                 shop.person, shop.random);
    RC_ASSERT(ahead);
    for (const auto& entry : ahead->entries) second.take(entry);
    const auto behind = second.act(acts::GiveVerdict{job, panel, job::Verdict::Redo, false, {}},
                                   shop.person, shop.random);
    RC_ASSERT(behind);
    for (const auto& entry : behind->entries) first.take(entry);
    for (const auto* device : {&first, &second}) {
      const auto car = device->folds().jobs.at(job).view();
      const auto* view = car.find(panel);
      RC_ASSERT(view->verdict == job::Verdict::Redo);
      RC_ASSERT(!view->disputed);
    }
  });
}

// The same over two folders with real logs: what one wrote and the other took folds alike.
TEST(Folds, TwoFoldersThatExchangedTheirEntriesShowTheSame) {
  for (std::uint64_t seed = 1; seed <= 3; ++seed) {
    const log::TempFolder one, two;
    log::must(demo::make_shop(one.path(), {.seed = seed, .delivered = 1, .in_work = 14}));
    auto from = log::open_log(one.path(), log::OpenMode::ReadOnly);
    auto to = log::open_log(two.path());
    const auto sealed = log::entries_of(*from);
    SeededRandom random(seed);
    for (std::size_t at = 0; at < sealed.size();) {
      const std::size_t length = std::min<std::size_t>(1 + random.below(60), sealed.size() - at);
      const std::size_t again = std::min<std::size_t>(at, random.below(20));
      log::must(to->add({sealed.data() + at - again, length + again}));
      at += length;
    }
    Folds here, there;
    for (const auto& entry : sealed) here.apply(engine::read_entry(entry));
    auto back = log::entries_of(*to);
    shuffle(back, random);
    for (const auto& entry : back) there.apply(engine::read_entry(entry));
    EXPECT_EQ(here.text(), there.text());
  }
}

}  // namespace
}  // namespace jambline::property
