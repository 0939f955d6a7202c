// tests/fault/fault_world.h: a world of the simulator in which a test says what happens.
#pragma once

#include <gtest/gtest.h>

#include "engine/read_entry.h"
#include "tests/simulator/world.h"

namespace jambline::simulator {

class SimFault : public testing::Test {
 protected:
  // Everybody syncs until nothing changes, then the oracle of FAULTS.md looks.
  void settle() {
    world.calm();
    if (world.complaints().empty()) judge(world);
    for (const auto& what : world.complaints()) ADD_FAILURE() << what;
  }
  SimDevice& tablet(std::size_t number) { return world.device(number); }
  JobId car() {
    for (const auto& entry : tablet(0).entries())
      if (entry.header.subject) return entry.header.subject;
    return {};
  }
  template <class Kind>
  bool say(std::size_t device, const JobId& subject, Kind said) {
    world.pass_ms(1000);
    const auto written = entries::write(entries::Payload(std::move(said)));
    return world.say_raw(device, {subject, written.kind, written.schema, written.payload});
  }
  bool note(std::size_t device, const std::string& words) {
    return say(device, car(), entries::NoteWritten{words});
  }
  // In the place of all plates that it knows of.
  bool set_plate(std::size_t device, const std::string& plate) {
    std::vector<Hash> heads;
    for (const auto& entry : tablet(device).entries()) {
      const auto read = engine::read_entry(entry);
      const auto* said = read.payload.get_if<entries::PlateSet>();
      if (!said || entry.header.subject != car()) continue;
      for (const auto& gone : said->replaces) std::erase(heads, gone);
      heads.push_back(entry.hash);
    }
    return say(device, car(), entries::PlateSet{plate, heads});
  }
  // How often the device's folds say so, as JSON.
  std::size_t shown(std::size_t device, const std::string& words) {
    const std::string text = fold_text(tablet(device).entries());
    std::size_t out = 0;
    for (auto at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) ++out;
    return out;
  }
  bool shows_plate(std::size_t device, const std::string& plate) {
    return shown(device, R"("plate":")" + plate + '"') > 0;
  }
  // The device says who it is, and nothing else.
  void open_session(std::size_t device) {
    ASSERT_TRUE(world.request(device, push));
    ASSERT_TRUE(world.request(device, push));
  }
  // Whatever it waits for is over; less than a token lives.
  void wait() { world.pass_ms(301'000); }
  std::size_t count_at_hub(const DeviceId& device) { return world.hub.held(device); }
  std::size_t hub_entries() { return world.hub.entries().size(); }

  static constexpr std::size_t push = 0, pull = 1, pictures = 2;
  World world{WorldOptions{20, false, {}}};
};

}  // namespace jambline::simulator
