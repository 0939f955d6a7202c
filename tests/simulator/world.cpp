#include "tests/simulator/world.h"

#include <algorithm>

#include "sync/limits.h"

namespace jambline::simulator {

namespace {
std::string words_of(const Error& error) {
  std::string out =
      std::string(code_name(error.code)) + " " + error.operation + " " + error.subject;
  for (const auto& [name, value] : error.args) out += " " + name + "=" + value;
  return out;
}
}  // namespace

World::World(WorldOptions options)
    : random(options.seed),
      hub(time, options.seed * 31 + 7,
          options.hub_on_disk ? std::optional(folder_.path() / "hub") : std::nullopt),
      network(hub, random, time),
      rosa(genesis().rosa),
      say_(std::move(options.say)) {
  if (say_) network.say = say_;
  for (std::size_t i = 0; i < devices_of_shop; ++i) {
    const auto folder = folder_.path() / ("device " + std::to_string(i));
    if (i != late_device) copy_log(genesis().folder.path() / (i == 0 ? "0" : "1"), folder);
    devices_.push_back(std::make_unique<SimDevice>(
        "tablet " + std::to_string(i), sim_key(static_cast<std::uint8_t>(i)), folder, time));
    devices_.back()->member = i != late_device;
    devices_.back()->start(options.seed + 100 * ++starts_);
  }
  hub.start();
}
World::~World() = default;

void World::complain(std::string what) {
  say("WRONG: " + what);
  if (complaints_.size() < 20) complaints_.push_back(std::move(what));
}

bool World::note(SimDevice& device, const SimDevice::Wrote& wrote) {
  if (!wrote) {
    say("  refused: " + words_of(wrote.error()));
    if (wrote.error().code == Code::DiskFull && device.full()) meet(Met::DeviceFull);
    return false;
  }
  for (const auto& stored : *wrote)
    ledger_[stored.entry.hash] = {device.key.device(), stored.entry.header.seq};
  ++acts_done;
  if (device.clock.error_ms != 0) meet(Met::WrongClock);
  return true;
}

std::optional<sync::Response> World::ask_as(SimDevice& who, const sync::Target& target,
                                            sync::Method method, std::string body, Mishap mishap) {
  const auto token = who.end->token(time.forward_ms());
  sync::Request request;
  request.method = method;
  request.target = sync::target_of(target);
  if (token) request.headers.push_back({"Authorization", "Bearer " + token->hex()});
  if (!body.empty()) request.headers.push_back({"Content-Type", "application/json"});
  request.body = std::move(body);
  time.ms += 1'000;
  return network.once(request, who.name, mishap);
}

void World::pass_ms(std::int64_t ms) {
  time.ms += ms;
}

void World::pass_half_a_year() {
  time.ms += 180 * 86'400'000LL;
  for (const auto& one : devices_)
    if (one->running() && one->own_seq() > one->end->state().receipted_seq)
      away_since_ms_.try_emplace(one.get(), time.ms - 180 * 86'400'000LL);
}

bool World::request(std::size_t number, std::size_t lane, Mishap mishap) {
  SimDevice& who = device(number);
  if (!who.running()) return false;
  auto flight = network.ask(who, lane);
  if (!flight) return false;
  change_time_for(1);
  network.to_hub(*flight, mishap);
  if (flight->waiting) {
    flights_.push_back(std::move(*flight));
    return false;
  }
  network.deliver(*flight);
  return true;
}

void World::send(std::size_t number, std::size_t lane, Mishap mishap) {
  SimDevice& who = device(number);
  if (!who.running()) return;
  auto flight = network.ask(who, lane);
  if (!flight) return;
  if (random.below(2)) network.to_hub(*flight, mishap);
  flights_.push_back(std::move(*flight));
}

void World::move_flights() {
  network.move_ghosts();
  for (std::size_t i = flights_.size(); i > 0; --i) {
    Flight flight = std::move(flights_.front());
    flights_.pop_front();
    if (flight.device->life != flight.life || !flight.device->running()) continue;
    if (random.below(2)) {
      if (flight.answer) {
        network.deliver(flight);
        continue;
      }
      if (flight.waiting)
        network.ask_again(flight, false);
      else
        network.to_hub(flight, Mishap::None);
    }
    flights_.push_back(std::move(flight));
  }
}

void World::sync(std::size_t number, Mishap mishap) {
  // A poll of it that waits is answered when there is something new.
  for (auto flight = flights_.begin(); flight != flights_.end();) {
    const bool waits = flight->device == &device(number) && flight->waiting;
    if (waits) network.ask_again(*flight, false);
    if (waits && flight->answer) network.deliver(*flight);
    flight = waits && flight->answer ? flights_.erase(flight) : std::next(flight);
  }
  for (int i = 0; i < 400; ++i) {
    bool any = false;
    for (std::size_t lane = 0; lane < lanes_of_device; ++lane)
      if (request(number, lane, mishap)) {
        any = true;
        mishap = Mishap::None;
      }
    if (!any) return;
  }
  complain(device(number).name + " asks for ever");
}

// Whatever is on its way is lost, and everybody knows.
void World::cut_all_connections() {
  for (auto& flight : flights_) {
    flight.waiting.reset();
    flight.answer = tl::unexpected<Error>(Error{Code::NoContact, "send", "hub", {}});
    network.deliver(flight);
  }
  flights_.clear();
  network.drop_ghosts();
}

bool World::compared(const SimDevice& one) const {
  return one.running() && one.member && !one.cut_seq && !one.forked;
}

bool World::will_come(const Hash& blob) const {
  const auto taken = pictures_.find(blob);
  if (taken == pictures_.end()) return true;
  return std::any_of(taken->second.begin(), taken->second.end(), [this](std::size_t taker) {
    return !devices_[taker]->cut_seq && !devices_[taker]->forked;
  });
}

std::size_t World::wanted_files(const SimDevice& one) const {
  std::size_t out = 0;
  for (const auto& item : one.named()) {
    if (need(one.blobs().has(item.blob), "has")) continue;
    const bool somewhere = hub.has_blob(item.blob) || will_come(item.blob) ||
                           std::any_of(devices_.begin(), devices_.end(), [&](const auto& other) {
                             return compared(*other) && need(other->blobs().has(item.blob), "has");
                           });
    if (somewhere) ++out;
  }
  return out;
}

std::set<Hash> World::apart() const {
  std::set<Hash> out;
  for (const auto& one : devices_)
    if (one->cut_seq)
      for (const auto& entry : hub.apart(one->key.device()))
        if (entry.header.seq > *one->cut_seq) out.insert(entry.hash);
  return out;
}

std::set<Hash> World::apart_here(const SimDevice& one) const {
  if (!hub_was_put_back) return {};
  std::set<Hash> out = apart();
  for (const auto& entry : hub.entries()) out.erase(entry.hash);
  std::erase_if(out, [&](const Hash& entry) { return !one.knows(entry); });
  return out;
}

bool World::quiet() const {
  const std::uint64_t entries = hub.shop->storage().hub_seq();
  for (const auto& one : devices_) {
    if (!one->member || one->forked) return false;
    if (!compared(*one)) continue;
    if (one->log_size() != entries && one->log_size() != entries + apart_here(*one).size())
      return false;
    if (one->end->state().receipted_seq != one->own_seq()) return false;
    if (one->pictures->state().to_send != 0 || wanted_files(*one) != 0) return false;
  }
  return divergent_.empty();
}

std::string World::state_words() const {
  std::string out =
      std::to_string(hub.shop->storage().hub_seq()) + "/" + std::to_string(hub.blobs().size());
  for (const auto& one : devices_)
    out += " " + std::to_string(one->log_size()) + "," +
           std::to_string(one->end->state().receipted_seq) + "," +
           std::to_string(one->end->state().apart_through) + "," +
           std::to_string(one->pictures->state().to_send) + "," +
           std::to_string(one->pictures->state().to_fetch);
  return out;
}

void World::calm() {
  say("calm");
  constexpr int most_rounds = 45, least_rounds = 13;  // longer than a session lives
  constexpr std::int64_t round_ms = sync::longest_back_off_ms + 1'000;
  cut_all_connections();
  if (!hub.running()) start_hub();
  hub.set_full(false);
  hub.read_most(0);
  hub.scrub();
  for (std::size_t i = 0; i < devices_.size(); ++i) {
    if (!device(i).running()) restart(i);
    device(i).set_full(false);
    device(i).most_run_entries = seal::most_pack_entries;
    device(i).end->local_changed();
    device(i).pictures->local_changed();
  }
  std::string before;
  int same = 0;
  for (int i = 0; i < most_rounds; ++i) {
    time.ms += round_ms;
    if (!device(late_device).member) move_enrolment(Mishap::None);
    for (std::size_t number = 0; number < devices_.size(); ++number) {
      move_to_new_key(number, Mishap::None);
      sync(number);
      say_again(number);
    }
    look();
    // Long polls end.
    time.ms += std::int64_t{1000} * sync::longest_poll_s + 1'000;
    for (auto& flight : flights_) {
      network.ask_again(flight, true);
      network.deliver(flight);
    }
    flights_.clear();
    const std::string now = state_words();
    same = now == before ? same + 1 : 0;
    before = now;
    if (i >= least_rounds && same >= 2 && quiet()) return;
  }
  if (quiet()) return;
  complain("not quiet after " + std::to_string(most_rounds) + " rounds: " + before);
  for (const auto& one : devices_)
    if (const auto& trouble = one->end->state().trouble) say(one->name + ": " + words_of(*trouble));
}

void World::look() {
  if (!hub.running()) return;
  SimDevice& late = device(late_device);
  if (!late.member && hub.shop->members().find(late.key.device())) {
    late.member = true;
    meet(Met::Enrolled);
  }
  for (auto& one : devices_)
    if (one->running()) look_at(*one);
}

void World::look_at(SimDevice& one) {
  auto& storage = hub.shop->storage();
  const auto& state = one.end->state();
  if (state.tail_missing) meet(Met::TailPulledBack);
  if (state.fork_common_seq && !one.forked) {
    one.forked = true;
    meet(Met::Forked);
    say(one.name + " is forked after " + std::to_string(*state.fork_common_seq));
    if (!twins) complain(one.name + " says it is forked");
    const std::uint64_t common = *state.fork_common_seq;  // what both have
    if (common > 0 && need(one.hash_at(one.key.device(), common), "own") !=
                          need(storage.hash_at(one.key.device(), common), "hub's"))
      complain(one.name + " takes " + std::to_string(common) +
               " for common, and the hub has another");
  }
  if (state.caught_up && one.pictures->state().to_fetch > 0) meet(Met::PictureLate);
  if (const auto away = away_since_ms_.find(&one);
      away != away_since_ms_.end() && state.caught_up && state.receipted_seq == one.own_seq()) {
    for (const auto& [by, deleted_ms] : deleted_ms_)
      if (devices_[by].get() != &one && deleted_ms >= away->second) meet(Met::DeletedWhileAway);
    away_since_ms_.erase(away);
  }
  if (one.stale || one.forked || state.receipted_seq == 0) return;
  const auto here = need(one.hash_at(one.key.device(), state.receipted_seq), "own");
  const auto there = need(storage.hash_at(one.key.device(), state.receipted_seq), "hub's");
  if (!there || here != there)
    complain(one.name + " counts " + std::to_string(state.receipted_seq) +
             " as sent and the hub has " + std::to_string(hub.held(one.key.device())));
}

}  // namespace jambline::simulator
