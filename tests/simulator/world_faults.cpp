// What breaks in a world.
#include <algorithm>

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
  meet(Met::PowerLost);
}

// The action is there as a whole after that, or not at all, whatever its person was told.
void World::kill_in_act(std::size_t number) {
  SimDevice& one = device(number);
  if (!one.running() || one.full() || !one.may_write()) return;
  const std::uint64_t before = one.own_seq();
  const auto shown_before = ledger_.size();
  say(one.name + " is killed while it writes");
  one.kill_after(random.below(12));
  if (!act(number) && random.below(2)) (void)say_plate(number);
  const std::size_t shown = ledger_.size() - shown_before;
  restart(number);
  std::map<ActionId, std::pair<std::size_t, std::size_t>> parts;  // here, and all
  std::size_t kept = 0;
  need(one.log().read_device(one.key.device(), before + 1,
                             [&](const log::Stored& stored) {
                               const auto& header = stored.entry.header;
                               auto& action = parts[header.action];
                               ++action.first;
                               action.second = header.parts;
                               ledger_[stored.entry.hash] = {header.device, header.seq};
                               ++kept;
                               return true;
                             }),
       "read own");
  for (const auto& [action, count] : parts)
    if (count.first != count.second) complain(one.name + " has a part of an action");
  if (kept < shown) complain(one.name + " has lost what it showed as done");
  if (shown == 0) meet(Met::KilledInAct);
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

void World::hub_loses_power() {
  say("the hub loses power");
  stop_hub();
  hub.lose_power(random.below(1'000'000));
  start_hub();
  meet(Met::HubPowerLost);
}

void World::forget_uploads() {
  if (hub.running() && hub.forget_parts() > 0) say("the hub forgets what came of uploads");
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
  for (const Hash& blob : hub.blobs()) {
    const bool elsewhere = hub_backup_->blobs.count(blob) != 0 ||
                           std::any_of(devices_.begin(), devices_.end(), [&](const auto& one) {
                             return compared(*one) && need(one->blobs().has(blob), "has");
                           });
    if (!elsewhere) return false;
  }
  say(std::string("the hub is put back, ") + (declared ? "declared" : "undeclared"));
  stop_hub();
  hub.put_back(*hub_backup_, declared);
  if (!declared) hub_backup_.reset();
  start_hub();
  hub_was_put_back = true;
  meet(declared ? Met::HubPutBackDeclared : Met::HubPutBackSilently);
  for (auto& one : devices_) one->stale = true;
  return true;
}

void World::back_up(std::size_t number) {
  SimDevice& one = device(number);
  say(one.name + " is backed up");
  DeviceCopy& copy = copies_[number];
  copy.log = folder_.path() / ("copy " + std::to_string(number));
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
  if (divergent_.count(number)) return false;
  for (const auto& entry : one.entries())
    if (!at_hub.count(entry.hash) && !copies_[number].entries.count(entry.hash)) return false;
  for (const auto& item : one.named())
    if (need(one.blobs().has(item.blob), "has") && !hub.has_blob(item.blob) &&
        pictures_.count(item.blob))
      return false;
  say(one.name + "'s folder is put back");
  one.put_back(copies_[number], random.below(1'000'000));
  one.start(1000 * ++starts_);
  twins = true;
  meet(Met::DevicePutBack);
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
  if (!hub.running()) return false;
  std::vector<Hash> whole;
  for (const Hash& blob : hub.blobs())
    for (const auto& one : devices_)
      if (compared(*one) && need(one->blobs().has(blob), "has")) {
        whole.push_back(blob);
        break;
      }
  if (whole.empty()) return false;
  const Hash blob = whole[random.below(whole.size())];
  say("a file of the hub is damaged");
  hub.damage(blob);
  meet(Met::DamagedAtHub);
  if (random.below(2) && !hub.full()) hub.scrub();
  return true;
}

}  // namespace jambline::simulator
