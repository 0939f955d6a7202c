// What breaks in a world, and how somebody comes to belong to it.
#include <algorithm>

#include "base/json.h"
#include "engine/shop_devices.h"
#include "sync/limits.h"
#include "tests/simulator/world.h"

namespace jambline::simulator {

void World::restart(std::size_t number) {
  say(device(number).name + " starts again");
  device(number).stop();
  BootId boot = random.make<BootId>();
  if (random.below(2)) device(number).clock.boot(boot);
  device(number).start(1000 * ++starts_ + random.below(1000));
}

void World::lose_power(std::size_t number) {
  say(device(number).name + " loses power");
  device(number).lose_power(random.below(1'000'000));
  restart(number);
}

void World::stop_hub() {
  say("the hub stops");
  for (auto& flight : flights_)
    if (flight.answer || flight.waiting) {
      flight.waiting.reset();
      flight.answer = tl::unexpected<Error>(Error{Code::NoContact, "send", "hub", {}});
    }
  network.drop_ghosts();
  hub.stop();
}
void World::start_hub() {
  say("the hub starts");
  hub.start();
}
void World::restart_hub() {
  stop_hub();
  start_hub();
}

void World::backup_hub() {
  say("the hub is backed up");
  const bool was_running = hub.running();
  if (was_running) stop_hub();
  hub_backup_ = hub.backup();
  if (was_running) start_hub();
}

bool World::anybody_has(const Hash& entry, const SimDevice* without, bool also_hub) const {
  for (const auto& one : devices_)
    if (one.get() != without && one->running() && one->knows(entry)) return true;
  if (!also_hub) return false;
  for (const auto& one : hub.entries())
    if (one.hash == entry) return true;
  return false;
}

bool World::put_hub_back(bool declared) {
  if (!hub_backup_ || !hub.running()) return false;
  // What only the hub has would be gone: nothing can bring that back.
  for (const auto& entry : hub.entries())
    if (!anybody_has(entry.hash, nullptr, false)) return false;
  for (const auto& [blob, bytes] : hub.disk().blobs) {
    const bool elsewhere =
        hub_backup_->memory.blobs.count(blob) != 0 ||
        std::any_of(devices_.begin(), devices_.end(), [&, name = blob](const auto& one) {
          return one->running() && !one->cut_seq && !one->forked &&
                 need(one->blobs().has(name), "has");
        });
    if (!elsewhere) return false;
  }
  say(std::string("the hub is put back, ") + (declared ? "declared" : "undeclared"));
  stop_hub();
  hub.put_back(*hub_backup_, declared);
  if (!declared) hub_backup_.reset();
  start_hub();
  hub_was_put_back = true;
  for (auto& one : devices_) one->stale = true;
  return true;
}

void World::back_up(std::size_t number) {
  SimDevice& one = device(number);
  say(one.name + " is backed up");
  DeviceCopy& copy = copies_[number];
  copy.log = folder_.path() / ("copy " + std::to_string(number));
  copy_seq_[number] = one.own_seq();
  one.copy_to(copy);
  one.start(1000 * ++starts_);
}

bool World::put_back(std::size_t number) {
  SimDevice& one = device(number);
  if (!copies_.count(number) || !hub.running() || !one.running()) return false;
  const auto held = hub.entries();
  std::set<Hash> at_hub;
  for (const auto& entry : held) at_hub.insert(entry.hash);
  // Own work that has gone nowhere would be lost with the folder, and its pictures.
  for (const auto& entry : one.entries())
    if (entry.header.device == one.key.device() && entry.header.seq > copy_seq_[number] &&
        !at_hub.count(entry.hash))
      return false;
  for (const auto& item : one.named())
    if (need(one.blobs().has(item.blob), "has") && !hub.disk().blobs.count(item.blob) &&
        pictures_.count(item.blob))
      return false;
  say(one.name + "'s folder is put back");
  one.put_back(copies_[number], random.below(1'000'000));
  one.start(1000 * ++starts_);
  twins = true;
  return true;
}

std::size_t World::clone(std::size_t number) {
  SimDevice& one = device(number);
  say(one.name + " is cloned");
  DeviceCopy copy;
  copy.log = folder_.path() / ("clone of " + std::to_string(number));
  one.copy_to(copy);
  one.start(1000 * ++starts_);
  auto twin = std::make_unique<SimDevice>(
      one.name + "'", one.key, folder_.path() / ("twin " + std::to_string(number)), time);
  twin->put_back(copy, 5);
  twin->start(1000 * ++starts_);
  devices_.push_back(std::move(twin));
  twins = true;
  return devices_.size() - 1;
}

bool World::damage_at_hub() {
  std::vector<Hash> whole;
  for (const auto& [blob, bytes] : hub.disk().blobs)
    for (const auto& one : devices_)
      if (compared(*one) && need(one->blobs().has(blob), "has")) {
        whole.push_back(blob);
        break;
      }
  if (whole.empty()) return false;
  const Hash blob = whole[random.below(whole.size())];
  say("a file of the hub is damaged");
  hub.disk().damage(blob);
  if (random.below(2) && hub.running() && !hub.disk().full) hub.scrub();
  return true;
}

// One step of: a code, the device asks with it, another one may not, a manager admits.
void World::move_enrolment(Mishap mishap) {
  SimDevice& late = device(late_device);
  SimDevice& manager = device(0);
  if (late.member || !hub.running() || !late.running()) return;
  time.ms += 1'000;
  if (!code_) {
    const auto code = hub.shop->invite(false, sync::code_lives_ms);
    if (code) code_ = *code;
    if (!code_) return;
  }
  sync::Target target;
  target.path = sync::Path::Enrol;
  target.shop = genesis().shop;
  const auto ask_with = [&](const seal::SigningKey& key, const char* name) {
    sync::EnrolAsk ask{*code_, key.key(), name, false, {}};
    ask.proof = key.sign(sync::enrol_words(genesis().shop, hub.key.key(), ask));
    return to_json(ask);
  };
  say("the late device asks to be let in");
  const auto answer =
      ask_as(late, target, sync::Method::Post, ask_with(late.key, "tablet 4"), mishap);
  if (!answer) return;
  if (answer->status != 200) {
    code_.reset();  // over, or the hub that knew it was put back
    return;
  }
  const auto rival =
      ask_as(late, target, sync::Method::Post, ask_with(sim_key(77), "rival"), Mishap::None);
  if (rival && rival->status == 200) {
    complain("a code was used twice");
    return;
  }
  if (!manager.running() || !manager.may_write()) return;
  const auto pending = need(hub.shop->pending(), "pending");
  for (const auto& one : pending) {
    if (one.device_key != late.key.key()) {
      complain("somebody else waits");
      continue;
    }
    if (manager.log().members().find(late.key.device())) continue;
    const auto wrote = manager.append(
        {engine::draft_of(engine::Admission{one.device_key, one.device_name, false})}, rosa,
        random);
    if (note(manager, wrote)) late.member = true;
  }
}

}  // namespace jambline::simulator
