#include <algorithm>

#include "acts/decisions.h"
#include "base/zones.h"

namespace jambline::acts {

namespace {
constexpr std::size_t most_shop_name_bytes = 80;

// Whoever is held by "do not spray" is not let out by taking back the word that holds him.
Status may_take_back(const Scene& scene, const JobId& job, const Hash& target) {
  if (scene.world.needed && !scene.may(scene.world.needed(job, target)))
    return fail(Code::NotAllowed, "take back", "entry");
  if (job || scene.may(entries::Right::Manager)) return {};
  for (const auto& one : scene.world.shop.air.people)
    if (one.do_not_spray &&
        std::find(one.flag_heads.begin(), one.flag_heads.end(), target) != one.flag_heads.end())
      return fail(Code::NotAllowed, "take back", "do not spray");
  return {};
}
}  // namespace

Drafts decide_one(const Scene& scene, const NameShop& command) {
  JAMBLINE_ASSIGN(std::string name,
                  typed(command.name, "name the shop", "name", most_shop_name_bytes));
  JAMBLINE_TRY(zone_known(command.zone));
  return std::vector<Draft>{
      {{}, entries::ShopNamed{std::move(name), command.zone, scene.world.shop.name_heads}}};
}

// The first person of a shop may be anyone; after that a manager adds managers.
Drafts decide_one(const Scene& scene, const AddPerson& command) {
  JAMBLINE_ASSIGN(std::string name,
                  typed(command.name, "add a person", "name", most_shop_name_bytes));
  bool any_manager = false;
  for (const auto& person : scene.world.shop.people) {
    any_manager = any_manager || (person.role == job::Role::Manager && !person.left);
    if (!person.left && person.name == name) return fail(Code::AlreadyDone, "add a person", name);
  }
  if (command.role == job::Role::Manager && any_manager && !scene.may(entries::Right::Manager))
    return fail(Code::NotAllowed, "add a person", name);
  if (!scene.may_say<entries::PersonAdded>())
    return fail(Error{Code::NotAllowed, "add a person", name, {{"device", "no manager's"}}});
  const auto person = scene.context.random.make<PersonId>();
  return std::vector<Draft>{{{}, entries::PersonAdded{person, command.role, {}}},
                            {{}, entries::PersonNamed{person, std::move(name), {}}}};
}

Drafts decide_one(const Scene& scene, const RenamePerson& command) {
  JAMBLINE_ASSIGN(std::string name, typed(command.name, "rename", "name", most_shop_name_bytes));
  const auto* person = scene.world.shop.find(command.person);
  if (!person) return fail(Code::Unknown, "rename", "person");
  return std::vector<Draft>{
      {{}, entries::PersonNamed{command.person, std::move(name), person->name_heads}}};
}

Drafts decide_one(const Scene& scene, const ChangeRole& command) {
  const auto* person = scene.world.shop.find(command.person);
  if (!person) return fail(Code::Unknown, "change a role", "person");
  if (!scene.may(entries::Right::Manager))
    return fail(Code::NotAllowed, "change a role", person->name);
  if (!scene.may_say<entries::PersonAdded>())
    return fail(
        Error{Code::NotAllowed, "change a role", person->name, {{"device", "no manager's"}}});
  return std::vector<Draft>{
      {{}, entries::PersonAdded{command.person, command.role, person->role_heads}}};
}

// Nobody is there any more to stop a clock that runs: it stops with the same act.
Drafts decide_one(const Scene& scene, const LetPersonGo& command) {
  const auto* person = scene.world.shop.find(command.person);
  if (!person) return fail(Code::Unknown, "let a person go", "person");
  if (person->left) return fail(Code::AlreadyDone, "let a person go", person->name);
  if (!scene.may_say<entries::PersonLeft>())
    return fail(Code::NotAllowed, "let a person go", person->name);
  std::vector<Draft> out;
  const auto job = scene.world.clock_of(command.person);
  const folds::CarView* car = job ? scene.world.car(*job) : nullptr;
  if (car) {
    JAMBLINE_TRY(scene.car(*job, "let a person go"));
    for (const auto& running : car->running)
      if (running.person == command.person)
        out.push_back({*job, entries::ClockActed{command.person, entries::ClockActKind::Stop,
                                                 running.operation}});
  }
  out.push_back({{}, entries::PersonLeft{command.person}});
  return out;
}

Drafts decide_one(const Scene& scene, const NameDevice& command) {
  JAMBLINE_ASSIGN(std::string name,
                  typed(command.name, "name a device", "name", most_shop_name_bytes));
  if (!command.device) return fail(Code::Missing, "name a device", "device");
  if (!scene.may_say<entries::DeviceNamed>()) return fail(Code::NotAllowed, "name a device", name);
  std::vector<Hash> heads;
  for (const auto& known : scene.world.shop.device_names)
    if (known.device == command.device) heads = known.heads;
  return std::vector<Draft>{
      {{}, entries::DeviceNamed{command.device, std::move(name), std::move(heads)}}};
}

bool goes_with_name(const entries::Entry& entry, const PersonId& person) {
  return entry.payload.visit([&](const auto& said) {
    using T = std::decay_t<decltype(said)>;
    if constexpr (std::is_same_v<T, entries::PersonNamed> ||
                  std::is_same_v<T, entries::FitTestDone> ||
                  std::is_same_v<T, entries::DoNotSpraySaid> ||
                  std::is_same_v<T, entries::DueSet> || std::is_same_v<T, entries::ExposureSampled>)
      return said.person == person;
    else
      return std::is_same_v<T, entries::FirstAidOpened> && entry.person == person;
  });
}

Status may_erase_name(const folds::ShopView& shop, const PersonId& person, const PersonId& by) {
  const char* const operation = "erase a name";
  const auto* one = shop.find(person);
  if (!one) return fail(Code::Unknown, operation, "person");
  const auto* teller = shop.find(by);
  if (!teller || teller->left || teller->role != job::Role::Manager)
    return fail(Code::NotAllowed, operation, one->name);
  if (!one->left) return fail(Code::NotYet, operation, one->name);
  if (one->name.empty()) return fail(Code::AlreadyDone, operation, "person");
  return {};
}

Drafts decide_one(const Scene& scene, const AddRack& command) {
  JAMBLINE_ASSIGN(std::string name,
                  typed(command.name, "add a rack", "name", most_shop_name_bytes));
  for (const auto& rack : scene.world.shop.racks)
    if (rack.name == name) return fail(Code::AlreadyDone, "add a rack", name);
  return std::vector<Draft>{
      {{}, entries::RackPlaceAdded{scene.context.random.make<RackId>(), std::move(name)}}};
}

Drafts decide_one(const Scene& scene, const SetRetention& command) {
  const char* const doing = "set how long records are kept";
  const std::string subject(word_of(command.record));
  if (!scene.may_say<entries::RetentionSet>()) return fail(Code::NotAllowed, doing, subject);
  if (command.years)
    JAMBLINE_TRY(in_range(*command.years, 1, job::most_kept_years, doing, "years"));
  const auto* known = scene.world.shop.find(command.record);
  const bool one_word = !known || known->heads.size() == 1;
  if (one_word && (known ? known->years : std::nullopt) == command.years)
    return fail(Code::AlreadyDone, doing, subject);
  return std::vector<Draft>{{{},
                             entries::RetentionSet{command.record, command.years,
                                                   known ? known->heads : std::vector<Hash>{}}}};
}

Drafts decide_one(const Scene& scene, const Withdraw& command) {
  if (command.job) {
    JAMBLINE_TRY(scene.car(command.job, "take back"));
  }
  if (!command.target) return fail(Code::Missing, "take back", "entry");
  JAMBLINE_TRY(may_take_back(scene, command.job, command.target));
  return std::vector<Draft>{{command.job, entries::Withdrawn{command.target, command.reason}}};
}

Drafts decide_one(const Scene& scene, const UndoAction& command) {
  if (command.entries.empty()) return fail(Code::Missing, "undo", "act");
  std::vector<Draft> out;
  for (auto entry = command.entries.rbegin(); entry != command.entries.rend(); ++entry) {
    if (entry->first) {
      JAMBLINE_TRY(scene.car(entry->first, "undo"));
    }
    JAMBLINE_TRY(may_take_back(scene, entry->first, entry->second));
    out.push_back({entry->first, entries::Withdrawn{entry->second, ""}});
  }
  return out;
}

}  // namespace jambline::acts
