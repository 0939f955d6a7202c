// What people do in a world.
#include <iterator>

#include "engine/read_entry.h"
#include "engine/shop_devices.h"
#include "seal/digest.h"
#include "tests/property/random_acts.h"
#include "tests/simulator/world.h"

namespace jambline::simulator {

bool World::act(std::size_t number) {
  SimDevice& by = device(number);
  if (!by.may_write()) return false;
  const auto command = property::random_act(by.shadow->device(), rosa, random);
  say(by.name + " acts");
  if (command.is<acts::TakePicture>()) return take_picture(number);
  if (!note(by, by.act(command, rosa, random))) return false;
  if (command.is<acts::Withdraw>() || command.is<acts::UndoAction>()) deleted_ms_[number] = time.ms;
  return true;
}

bool World::say_plate(std::size_t number) {
  SimDevice& by = device(number);
  const auto& jobs = by.shadow->device().folds().jobs;
  if (!by.may_write() || jobs.empty()) return false;
  say(by.name + " says a plate");
  const std::string plate = "K " + std::to_string(random.below(10'000));
  return note(by, by.act(acts::SetPlate{jobs.begin()->first, plate}, rosa, random));
}

std::string World::picture_bytes(bool small) {
  std::string out(1 + random.below(small ? 200 : 6000), '\0');
  random.fill({reinterpret_cast<std::uint8_t*>(out.data()), out.size()});
  return out;
}

bool World::take_picture(std::size_t number, bool same_as_before) {
  SimDevice& by = device(number);
  if (!by.may_write() || by.shadow->device().folds().jobs.empty()) return false;
  const auto& jobs = by.shadow->device().folds().jobs;
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
  for (const auto* one : {&bytes, &preview}) {
    auto& takers = pictures_[seal::sha256(seal::bytes_of(*one))];
    takers.insert(number);
    if (takers.size() > 1) meet(Met::SamePicture);
  }
  return true;
}

bool World::say_raw(std::size_t number, log::Draft draft) {
  SimDevice& by = device(number);
  return by.may_write() && note(by, by.append({std::move(draft)}, rosa, random));
}

bool World::say_poison(std::size_t number) {
  SimDevice& by = device(number);
  const auto& jobs = by.shadow->device().folds().jobs;
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
  const auto how = random.below(7);
  switch (how) {
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
  if (!say_raw(number, std::move(draft))) return false;
  meet(how < 2 ? Met::UnknownKind : Met::Poison);
  return true;
}

bool World::erase_something(std::size_t number) {
  SimDevice& by = device(number);
  if (!by.may_write()) return false;
  std::vector<Hash> may_go;
  for (const auto& entry : by.entries())
    if (!entry.erased && engine::may_be_erased(entry.header.kind)) may_go.push_back(entry.hash);
  if (may_go.empty()) return false;
  say(by.name + " erases");
  if (!note(by, by.erase(property::one_of(may_go, random), rosa, random))) return false;
  deleted_ms_[number] = time.ms;
  return true;
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
  meet(Met::Revoked);
  return true;
}

}  // namespace jambline::simulator
