// Who may say what, over devices and people with and without rights, in any order of arrival: all
// see the same, and what is refused is as if it had never been said. Held against the rule of
// folds/rights_fold.h told once more in another way, over all entries at once; nothing outside says
// what is right here.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "base/json.h"
#include "base/random.h"
#include "folds/job_fold.h"
#include "folds/rights_fold.h"
#include "folds/shop_fold.h"
#include "seal/digest.h"

namespace jambline::property {
namespace {

using entries::Entry;
using entries::Refused;
using entries::Right;
using folds::DeviceStandings;

template <class Id>
Id numbered(std::uint64_t number) {
  Id out;
  out.bytes[0] = static_cast<std::uint8_t>(number);
  return out;
}

const JobId the_car = numbered<JobId>(200);
constexpr std::uint64_t devices_of_shop = 4;
constexpr std::uint64_t people_of_shop = 4;  // 0 is nobody

struct Drawn {
  std::vector<Entry> entries;
  DeviceStandings devices;  // at the end
};

entries::Payload any_payload(SeededRandom& random, const std::vector<Entry>& before, bool of_car) {
  const auto person = numbered<PersonId>(1 + random.below(people_of_shop - 1));
  if (!before.empty() && random.below(4) == 0)
    return entries::Withdrawn{before[random.below(before.size())].hash, ""};
  const auto heads = [&] {
    std::vector<Hash> out;
    if (!before.empty() && random.below(2)) out.push_back(before[random.below(before.size())].hash);
    return out;
  };
  if (of_car) {
    if (random.below(3) == 0)
      return entries::PlateSet{"K 1" + std::to_string(random.below(9)), heads()};
    entries::OperationPlanned planned;
    planned.operation = numbered<OperationId>(1 + random.below(3));
    planned.title = "more " + std::to_string(random.below(9));
    planned.replaces = heads();
    planned.approval = static_cast<job::Approval>(random.below(4));
    return planned;
  }
  switch (random.below(6)) {
    case 0:
      return entries::PersonAdded{person, static_cast<job::Role>(random.below(6)), heads()};
    case 1:
      return entries::PersonNamed{person, "Person " + std::to_string(random.below(9)), heads()};
    case 2:
      return entries::PersonLeft{person};
    case 3:
      return entries::DoNotSpraySaid{person, random.below(2) == 0, heads()};
    case 4:
      return entries::DeviceNamed{numbered<DeviceId>(1 + random.below(devices_of_shop)),
                                  "tablet " + std::to_string(random.below(9)), heads()};
    default:
      return entries::ShopNamed{"shop " + std::to_string(random.below(9)), "UTC", heads()};
  }
}

Drawn draw(SeededRandom& random) {
  Drawn out;
  for (std::uint64_t device = 1; device <= devices_of_shop; ++device) {
    if (device > 1 && random.below(5) == 0) continue;  // its admission fell
    folds::DeviceStanding standing{device == 1 || random.below(2) == 0, {}};
    if (random.below(3) == 0) standing.cut_seq = random.below(12);
    out.devices[numbered<DeviceId>(device)] = standing;
  }
  std::map<DeviceId, std::uint64_t> seqs;
  std::vector<Entry> of_shop, of_car;
  const auto say = [&](entries::Payload payload, bool car, std::uint64_t person) {
    Entry entry;
    const auto device = numbered<DeviceId>(1 + random.below(devices_of_shop));
    entry.order = {random.below(1000), device, ++seqs[device]};
    entry.subject = car ? the_car : JobId{};
    entry.person = person ? numbered<PersonId>(person) : PersonId{};
    const auto written = entries::write(payload);
    entry.kind = written.kind;
    entry.schema = written.schema;
    entry.hash = seal::Sha256()
                     .add(device.bytes)
                     .add(std::to_string(entry.order.seq))
                     .add(written.payload)
                     .finish();
    entry.payload = std::move(payload);
    (car ? of_car : of_shop).push_back(entry);
    out.entries.push_back(std::move(entry));
  };
  say(entries::CarOpened{}, true, 0);
  for (auto count = 10 + random.below(50); count > 0; --count) {
    const bool car = random.below(2) == 0;
    say(any_payload(random, car ? of_car : of_shop, car), car, random.below(people_of_shop));
  }
  return out;
}

// A reader as the engine is one: it takes entries as they come, and folds a stream anew where the
// folds say so or rights changed.
class Reader {
 public:
  void know(DeviceStandings devices) {
    rights_.set_devices(std::move(devices));
    fold_anew();
  }
  void take(Entry entry) {
    known_.push_back(entry);
    if (entry.payload.is<entries::PersonAdded>()) {
      rights_.apply(entry);
      return fold_anew();
    }
    if (streams_[entry.subject].judge(rights_, entry)) return fold_anew();
    apply(entry);
  }
  std::string text() const {
    auto shop = shop_.view();
    auto car = car_.view();
    shop.refused_entries = car.refused_entries = 0;
    return to_json(shop) + "\n" + to_json(car);
  }
  int refused() const { return shop_.view().refused_entries + car_.view().refused_entries; }

 private:
  void apply(const Entry& entry) {
    if (entry.subject)
      car_.apply(entry);
    else
      shop_.apply(entry);
  }
  void fold_anew() {
    shop_ = folds::ShopFold();
    car_ = folds::JobFold(the_car);
    streams_.clear();
    for (const JobId& subject : {JobId{}, the_car}) {
      std::vector<Entry> stream;
      for (const Entry& entry : known_)
        if (entry.subject == subject) stream.push_back(entry);
      streams_[subject] = folds::judge_all(rights_, stream);
      for (const Entry& entry : stream) apply(entry);
    }
  }

  folds::RightsFold rights_;
  std::vector<Entry> known_;
  std::map<JobId, folds::StreamRights> streams_;
  folds::ShopFold shop_;
  folds::JobFold car_{the_car};
};

// The rule told over everything at once.
bool is_obeyed(const Drawn& all, const Entry& entry) {
  const auto of = [&](const Entry& one) -> const folds::DeviceStanding* {
    const auto found = all.devices.find(one.order.device);
    if (found == all.devices.end()) return nullptr;
    return one.order.seq > found->second.cut_seq.value_or(UINT64_MAX) ? nullptr : &found->second;
  };
  if (!of(entry)) return false;
  const Entry* about = &entry;
  while (const auto* back = about->payload.get_if<entries::Withdrawn>()) {
    const auto target = std::find_if(all.entries.begin(), all.entries.end(),
                                     [&](const Entry& one) { return one.hash == back->target; });
    about = &*target;
  }
  if (about->payload.is<entries::PersonAdded>()) return of(entry)->manager;
  const auto* spray = about->payload.get_if<entries::DoNotSpraySaid>();
  const auto* planned = about->payload.get_if<entries::OperationPlanned>();
  const bool answered = planned && planned->approval && *planned->approval >= job::Approval::Given;
  if (!answered && !(spray && !spray->do_not_spray) && !about->payload.is<entries::PersonLeft>() &&
      !about->payload.is<entries::DeviceNamed>())
    return true;
  if (!entry.person) return of(entry)->manager;
  return std::any_of(all.entries.begin(), all.entries.end(), [&](const Entry& one) {
    const auto* added = one.payload.get_if<entries::PersonAdded>();
    return added && added->person == entry.person && added->role == job::Role::Manager && of(one) &&
           of(one)->manager;
  });
}

template <class T>
void mix(std::vector<T>& list, SeededRandom& random) {
  for (std::size_t i = list.size(); i > 1; --i) std::swap(list[i - 1], list[random.below(i)]);
}

TEST(Rights, EveryOrderOfArrivalShowsTheSameAndWhatIsRefusedChangesNothing) {
  int draws = 0;
  int refused = 0;
  int obeyed = 0;
  EXPECT_TRUE(rc::check([&](std::uint64_t seed) {
    ++draws;
    SeededRandom random(seed);
    Drawn drawn = draw(random);
    // Without what is refused, read by somebody who refuses nothing.
    std::vector<Entry> standing;
    for (const Entry& entry : drawn.entries)
      if (is_obeyed(drawn, entry)) standing.push_back(entry);
    folds::ShopFold shop;
    folds::JobFold car(the_car);
    for (const Entry& entry : standing) {
      if (entry.subject)
        car.apply(entry);
      else
        shop.apply(entry);
    }
    const std::string wanted = to_json(shop.view()) + "\n" + to_json(car.view());
    for (int order = 0; order < 4; ++order) {
      mix(drawn.entries, random);
      Reader reader;
      const std::size_t known_at = random.below(drawn.entries.size());
      auto early = drawn.devices;  // before somebody was revoked
      for (auto& [device, one] : early) one.cut_seq.reset();
      reader.know(early);
      for (std::size_t i = 0; i < drawn.entries.size(); ++i) {
        if (i == known_at) reader.know(drawn.devices);
        reader.take(drawn.entries[i]);
      }
      RC_ASSERT(reader.text() == wanted);
      RC_ASSERT(reader.refused() ==
                static_cast<int>(drawn.entries.size()) - static_cast<int>(standing.size()));
    }
    refused += static_cast<int>(drawn.entries.size() - standing.size());
    obeyed += static_cast<int>(standing.size());
  }));
  EXPECT_GT(refused, 5 * draws);
  EXPECT_GT(obeyed, 5 * draws);
}

}  // namespace
}  // namespace jambline::property
