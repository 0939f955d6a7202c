#include "tests/simulator/world.h"

#include <algorithm>

#include "base/json.h"
#include "engine/read_entry.h"
#include "engine/shop_devices.h"
#include "engine/work_again.h"
#include "seal/digest.h"
#include "sync/limits.h"
#include "tests/property/random_acts.h"

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
    return false;
  }
  for (const auto& stored : *wrote)
    ledger_[stored.entry.hash] = {device.key.device(), stored.entry.header.seq};
  ++acts_done;
  return true;
}

bool World::act(std::size_t number) {
  SimDevice& by = device(number);
  if (!by.may_write()) return false;
  const auto command = property::random_act(by.shadow, rosa, random);
  say(by.name + " acts");
  if (std::holds_alternative<acts::TakePicture>(command)) return take_picture(number);
  return note(by, by.act(command, rosa, random));
}

bool World::act(std::size_t number, const acts::Command& command) {
  SimDevice& by = device(number);
  return by.may_write() && note(by, by.act(command, rosa, random));
}

std::string World::picture_bytes(bool small) {
  std::string out(1 + random.below(small ? 200 : 6000), '\0');
  random.fill({reinterpret_cast<std::uint8_t*>(out.data()), out.size()});
  return out;
}

bool World::take_picture(std::size_t number, bool same_as_before) {
  SimDevice& by = device(number);
  if (!by.may_write() || by.shadow.folds().jobs.empty()) return false;
  const auto& jobs = by.shadow.folds().jobs;
  auto chosen = jobs.begin();
  std::advance(chosen, static_cast<long>(random.below(jobs.size())));
  acts::TakePicture command{chosen->first, {}, job::PictureFrom::Camera, {job::Stage{}}};
  const bool again = same_as_before && !some_pictures_.empty();
  const std::string bytes = again ? property::one_of(some_pictures_, random) : picture_bytes(false);
  const std::string preview = picture_bytes(true);
  say(by.name + " takes a picture" + (again ? " that was taken before" : ""));
  const auto wrote = by.take_picture(command, bytes, preview, rosa, random);
  if (!note(by, wrote)) return false;
  some_pictures_.push_back(bytes);
  for (const auto* one : {&bytes, &preview})
    pictures_.try_emplace(seal::sha256(seal::bytes_of(*one)), number);
  return true;
}

bool World::say_raw(std::size_t number, log::Draft draft) {
  SimDevice& by = device(number);
  return by.may_write() && note(by, by.append({std::move(draft)}, rosa, random));
}

bool World::say_poison(std::size_t number) {
  SimDevice& by = device(number);
  const auto& jobs = by.shadow.folds().jobs;
  log::Draft draft;
  if (!jobs.empty() && random.below(3)) {
    auto chosen = jobs.begin();
    std::advance(chosen, static_cast<long>(random.below(jobs.size())));
    draft.subject = chosen->first;
  } else if (random.below(2)) {
    draft.subject = random.make<JobId>();  // a car that nobody has opened
  }
  const auto real = entries::write(entries::PlateSet{"K 1", {}});
  draft.kind = real.kind;
  draft.schema = real.schema;
  draft.payload = real.payload;
  switch (random.below(7)) {
    case 0:
      draft.kind = 4711;
      break;
    case 1:
      draft.schema = 999;
      break;
    case 2:
      draft.payload = "{\"plate\":\"" + std::string(65'000, 'x') + "\"}";
      break;
    case 3:
      draft.payload = "\xff\xfe{\"plate\":\xc3\x28}";
      break;
    case 4:
      draft.kind = entries::FilmRead::kind;
      draft.payload = R"({"typed":[1e308,-1e308],"spot":99999999999999999999})";
      break;
    case 5:
      draft.payload = std::string(500, '[');
      break;
    default:
      draft.payload.clear();
      break;
  }
  say(by.name + " says poison, kind " + std::to_string(draft.kind));
  return say_raw(number, std::move(draft));
}

bool World::erase_something(std::size_t number) {
  SimDevice& by = device(number);
  if (!by.may_write()) return false;
  std::vector<Hash> may_go;
  for (const auto& entry : by.entries())
    if (!entry.erased && engine::may_be_erased(entry.header.kind)) may_go.push_back(entry.hash);
  if (may_go.empty()) return false;
  say(by.name + " erases");
  return note(by, by.erase(property::one_of(may_go, random), rosa, random));
}

bool World::revoke(std::size_t by_number, std::size_t number) {
  SimDevice& by = device(by_number);
  SimDevice& gone = device(number);
  if (!by.may_write() || gone.cut_seq) return false;
  const auto draft = engine::revocation_of(by.log(), gone.key.device());
  if (!draft) return false;
  say(by.name + " revokes " + gone.name);
  if (!note(by, by.append({*draft}, rosa, random))) return false;
  gone.cut_seq = by.log().members().find(gone.key.device())->cut->seq;
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

bool World::take_over(std::size_t by_number, std::size_t number) {
  SimDevice& by = device(by_number);
  sync::Target target;
  target.path = sync::Path::Kept;
  target.shop = genesis().shop;
  target.device = device(number).key.device();
  target.number = 1;
  std::vector<seal::SealedEntry> origins;
  for (;;) {
    const auto answer = ask_as(by, target, sync::Method::Get, {}, Mishap::None);
    if (!answer || answer->status != 200) return false;
    auto pack = seal::decode_pack(seal::bytes_of(answer->body));
    if (!pack || pack->empty()) break;
    target.number = pack->back().header.seq + 1;
    origins.insert(origins.end(), pack->begin(), pack->end());
  }
  if (origins.empty()) return false;
  say(by.name + " takes over " + std::to_string(origins.size()) + " of " + device(number).name);
  const auto said =
      engine::say_work_again(by.log(), by.key, origins, entries::TakenOverWhy::AfterRevocation,
                             rosa, by.clock.now(), random);
  if (said) by.note(*said);
  if (!note(by, said)) return false;
  target.path = sync::Path::Settle;
  target.number = origins.back().header.seq;
  const auto settled = ask_as(by, target, sync::Method::Post, {}, Mishap::None);
  return settled && settled->status == 204;
}

void World::pass_ms(std::int64_t ms) {
  time.ms += ms;
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

bool World::quiet() const {
  const std::uint64_t entries = hub.shop->storage().hub_seq();
  for (const auto& one : devices_) {
    if (!one->member) return false;
    if (!compared(*one)) continue;
    if (one->log_size() != entries) return false;
    if (one->end->state().receipted_seq != one->own_seq()) return false;
    if (one->pictures->state().to_send != 0 || one->pictures->state().to_fetch != 0) return false;
  }
  return true;
}

std::string World::state_words() const {
  std::string out = std::to_string(hub.shop->storage().hub_seq()) + "/" +
                    std::to_string(hub.disk().blobs.size()) + "/" +
                    std::to_string(hub.disk().apart.size());
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
    for (std::size_t number = 0; number < devices_.size(); ++number) sync(number);
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
  if (!quiet()) complain("not quiet after " + std::to_string(most_rounds) + " rounds: " + before);
}

void World::look() {
  if (!hub.running()) return;
  for (auto& one : devices_) {
    if (!one->running()) continue;
    const auto& state = one->end->state();
    if (state.fork_common_seq && !one->forked) {
      one->forked = true;
      say(one->name + " is forked after " + std::to_string(*state.fork_common_seq));
      if (!twins) complain(one->name + " says it is forked");
    }
    if (one->stale || one->forked || state.receipted_seq == 0) continue;
    const auto here = need(one->hash_at(one->key.device(), state.receipted_seq), "own");
    const auto there =
        need(hub.shop->storage().hash_at(one->key.device(), state.receipted_seq), "hub's");
    if (!there || here != there)
      complain(one->name + " counts " + std::to_string(state.receipted_seq) +
               " as sent and the hub has " + std::to_string(hub.held(one->key.device())));
  }
}

}  // namespace jambline::simulator
