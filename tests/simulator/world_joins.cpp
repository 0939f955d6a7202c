// How somebody comes to belong to a world, and what becomes of the work of who no longer does.
#include "base/json.h"
#include "engine/read_entry.h"
#include "engine/shop_devices.h"
#include "engine/work_again.h"
#include "exchange/new_key.h"
#include "seal/digest.h"
#include "sync/limits.h"
#include "tests/simulator/world.h"

namespace jambline::simulator {

SimDevice* World::able_manager() {
  for (const auto& one : devices_) {
    if (!one->running() || !one->may_write()) continue;
    const auto* member = one->log().members().find(one->key.device());
    if (member->manager && !member->cut) return one.get();
  }
  return nullptr;
}

// What is said again and what is left where it is: entry_log.h, say_again().
void World::note_origins(const std::vector<seal::SealedEntry>& origins) {
  for (const auto& origin : origins) {
    const bool left = origin.erased || origin.header.kind <= seal::kind::payload_erased;
    (left ? left_there_ : to_be_again_).insert(origin.hash);
  }
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
  if (!by.may_write()) return false;
  say(by.name + " takes over " + std::to_string(origins.size()) + " of " + device(number).name);
  const auto said =
      engine::say_work_again(by.log(), by.key, origins, entries::TakenOverWhy::AfterRevocation,
                             rosa, by.clock.now(), random);
  if (said) by.note(*said);
  if (!said && said.error().code != Code::AlreadyDone) return note(by, said);
  if (said) {
    (void)note(by, said);
    note_origins(origins);
    meet(Met::TakenOver);
  }
  target.path = sync::Path::Settle;
  target.number = origins.back().header.seq;
  const auto settled = ask_as(by, target, sync::Method::Post, {}, Mishap::None);
  return settled && settled->status == 204;
}

void World::move_to_new_key(std::size_t number, Mishap mishap) {
  SimDevice& one = device(number);
  if (!one.running() || !one.forked || !hub.running()) return;
  const auto common = one.end->state().fork_common_seq;
  if (!common || !one.end->token(time.forward_ms())) return;
  const auto key = need(exchange::asking_key(one.folder, random), "asking key");
  asking_.insert(key.key());
  sync::Target target;
  target.path = sync::Path::Enrol;
  target.shop = genesis().shop;
  sync::EnrolAsk ask{{}, key.key(), one.name + " again", false, {}};
  ask.proof = key.sign(sync::enrol_words(genesis().shop, hub.key.key(), ask));
  const auto response = ask_as(one, target, sync::Method::Post, to_json(ask), mishap);
  if (!response || response->status != 200) return;
  const auto answer = need(from_json<sync::EnrolAnswer>(response->body), "enrol answer");
  if (answer.state == sync::EnrolState::Admitted) {
    say(one.name + " goes on under a new key after " + std::to_string(*common));
    auto left = one.move_to_new_key(*common, 1000 * ++starts_);
    if (!left.empty()) divergent_[number] = std::move(left);
    return meet(Met::NewKey);
  }
  SimDevice* manager = able_manager();
  if (!manager || manager->log().members().find(key.device())) return;
  const auto* before = manager->log().members().find(one.key.device());
  (void)note(*manager, manager->append({engine::draft_of(engine::Admission{
                                           key.key(), one.name, before && before->manager})},
                                       rosa, random));
}

// As LocalExchange::say_divergent_again().
void World::say_again(std::size_t number) {
  SimDevice& one = device(number);
  const auto waits = divergent_.find(number);
  if (waits == divergent_.end() || !one.running() || !one.may_write() ||
      !one.end->state().caught_up)
    return;
  auto left = waits->second;
  std::erase_if(left, [&](const auto& entry) { return one.knows(entry.hash); });
  const auto said = engine::say_work_again(
      one.log(), one.key, left, entries::TakenOverWhy::CopiedFolder, {}, one.clock.now(), random);
  if (!said && said.error().code != Code::AlreadyDone) return (void)note(one, said);
  if (said) {
    say(one.name + " says " + std::to_string(left.size()) + " entries again");
    one.note(*said);
    (void)note(one, said);
    meet(Met::SaidAgain);
  }
  note_origins(left);
  for (const auto& entry : left)
    if (entry.header.kind == seal::kind::payload_erased)
      to_be_erased_.insert(need(from_json<seal::PayloadErased>(entry.payload), "erasure").target);
  need(exchange::divergent_entries_said(one.folder), "said");
  divergent_.erase(waits);
}

// One step of: a code, the device asks with it, another one may not, a manager admits.
void World::move_enrolment(Mishap mishap) {
  SimDevice& late = device(late_device);
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
  if (!answer) {
    if (mishap != Mishap::LostBefore) meet(Met::EnrolAnswerLost);
    return;
  }
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
  meet(Met::CodeTwice);
  SimDevice* manager = able_manager();
  if (!manager) return;
  const auto pending = need(hub.shop->pending(), "pending");
  for (const auto& one : pending) {
    if (one.device_key != late.key.key()) {
      if (!asking_.count(one.device_key)) complain("somebody else waits");
      continue;
    }
    if (manager->log().members().find(late.key.device())) continue;
    const auto wrote = manager->append(
        {engine::draft_of(engine::Admission{one.device_key, one.device_name, false})}, rosa,
        random);
    (void)note(*manager, wrote);
  }
}

}  // namespace jambline::simulator
