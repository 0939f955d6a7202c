#include "folds/air_fold.h"

#include <algorithm>
#include <functional>
#include <set>

#include "base/spans.h"

namespace jambline::folds {

namespace {
constexpr std::size_t most_said = 200;  // of a booth that nobody ever logged as cleared

template <class T>
void keep_first(T& thing, const entries::Order& order) {
  if (thing.first == entries::Order{} || order < thing.first) thing.first = order;
}

template <class T>
void insert_by(std::vector<T>& list, T one, const entries::Order& order,
               const entries::Order& (*order_of)(const T&)) {
  const auto place = std::lower_bound(
      list.begin(), list.end(), order,
      [&](const T& known, const entries::Order& wanted) { return order_of(known) < wanted; });
  if (place != list.end() && order_of(*place) == order) return;
  list.insert(place, std::move(one));
}

// Of a booth that nobody logs as cleared, what goes without shortening any wait: first of all words
// that it counts, then what a later word says again. A gun that is up and the last one down stay.
void forget_one(std::vector<BoothSaidView>& said) {
  using job::BoothWord;
  const auto counts = [](const auto& one) {
    return one.what == BoothWord::FreshAirDoorsShut || one.what == BoothWord::SprayStarted;
  };
  const auto stops = [](const auto& one) {
    return one.what == BoothWord::FanStopped || one.what == BoothWord::Bake ||
           one.what == BoothWord::DoorOpened;
  };
  bool stopped = false;
  for (auto one = said.begin(); one != std::prev(said.end()); ++one) {
    const auto later = [&](BoothWord what, bool same_spray) {
      return std::any_of(std::next(one), said.end(), [&](const auto& other) {
        return other.what == what && (!same_spray || other.spray == one->spray);
      });
    };
    const bool again =
        one->what == BoothWord::FreshAirDoorsShut || one->what == BoothWord::ClearanceOver ||
        (stops(*one) && stopped) ||
        (one->what == BoothWord::GunDown && later(BoothWord::GunDown, false) &&
         std::none_of(said.begin(), one,
                      [&](const auto& other) {
                        return other.what == BoothWord::SprayStarted && other.spray == one->spray;
                      })) ||
        (one->what == BoothWord::SprayStarted && later(BoothWord::GunDown, true) &&
         later(BoothWord::SprayStarted, false));
    if (again) {
      said.erase(one);
      return;
    }
    if (stops(*one)) stopped = true;
    if (counts(*one)) stopped = false;
  }
  said.erase(said.begin());
}

PersonAirView& person_of(std::map<PersonId, PersonAirView>& people, const PersonId& person) {
  PersonAirView& out = people[person];
  out.person = person;
  return out;
}
}  // namespace

void AirFold::apply(const entries::Entry& entry) {
  using namespace entries;
  entry.payload.visit([&](const auto& said) {
    using T = std::decay_t<decltype(said)>;
    if constexpr (std::is_same_v<T, BoothFactsSet>) {
      facts_[said.booth].write(entry, said.replaces, said.facts);
    } else if constexpr (std::is_same_v<T, BoothRead>) {
      insert_by<Read>(reads_, {entry.hash, entry.person, entry.order, entry.wall_ms, said},
                      entry.order,
                      [](const Read& one) -> const entries::Order& { return one.order; });
    } else if constexpr (std::is_same_v<T, BoothSaid>) {
      insert_by<Said>(said_, {entry.hash, entry.person, stamp_of(entry), said}, entry.order,
                      [](const Said& one) -> const entries::Order& { return one.at.order; });
    } else if constexpr (std::is_same_v<T, RespiratorSet>) {
      auto& thing = respirators_[said.respirator];
      keep_first(thing, entry.order);
      thing.said.write(entry, said.replaces, said.said);
    } else if constexpr (std::is_same_v<T, FitTestDone>) {
      fit_tests_[said.test].write(entry, said.replaces, said);
    } else if constexpr (std::is_same_v<T, CartridgeChanged>) {
      cartridges_[{said.person, said.respirator}].write(
          entry, said.replaces, Cartridge{said.schedule_h, said.schedule_basis});
    } else if constexpr (std::is_same_v<T, BreathingAirChecked>) {
      air_.write(entry, said.replaces, said.said);
    } else if constexpr (std::is_same_v<T, DoNotSpraySaid>) {
      flags_[said.person].write(entry, said.replaces, said.do_not_spray);
    } else if constexpr (std::is_same_v<T, DueSet>) {
      dues_[{said.person, said.what}].write(entry, said.replaces, said.due_day);
    } else if constexpr (std::is_same_v<T, LimitSet>) {
      limits_[said.limit].write(entry, said.replaces, said.said);
    } else if constexpr (std::is_same_v<T, ProductSet>) {
      auto& thing = products_[said.product];
      keep_first(thing, entry.order);
      thing.said.write(entry, said.replaces, said.said);
    } else if constexpr (std::is_same_v<T, ExposureSampled>) {
      samples_[said.sample].write(entry, said.replaces, said);
    }
  });
}

AirView AirFold::view(const Withdrawals& withdrawals) const {
  AirView out;
  view_booths(out, withdrawals);
  view_people(out, withdrawals);
  const auto in_order = [&](const auto& things, auto add) {
    std::vector<std::pair<entries::Order, std::function<void()>>> rows;
    for (const auto& [id, thing] : things) {
      const auto heads = thing.said.heads(withdrawals);
      if (heads.empty()) continue;
      rows.emplace_back(thing.first, [&add, id = id, heads] { add(id, heads); });
    }
    std::sort(rows.begin(), rows.end(),
              [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& row : rows) row.second();
  };
  in_order(respirators_, [&](const RespiratorId& id, const auto& heads) {
    out.respirators.push_back({id, heads.back()->value, hashes_of(heads)});
  });
  in_order(products_, [&](const ProductId& id, const auto& heads) {
    out.products.push_back({id, heads.back()->value, hashes_of(heads)});
  });
  if (const auto heads = air_.heads(withdrawals); !heads.empty())
    out.breathing_air = BreathingAirView{heads.back()->value, heads.back()->person,
                                         heads.back()->wall_ms, hashes_of(heads)};
  std::set<LimitId> own;
  for (const auto& [id, writes] : limits_) {
    const auto heads = writes.heads(withdrawals);
    if (heads.empty()) continue;
    own.insert(id);
    out.limits.push_back({id, heads.back()->value, false, hashes_of(heads)});
  }
  for (const auto& usual : job::usual_limits())
    if (own.count(usual.id) == 0) out.limits.push_back({usual.id, usual.limit, true, {}});
  std::sort(out.limits.begin(), out.limits.end(), [](const LimitView& a, const LimitView& b) {
    return std::tie(a.said.substance, a.said.authority, a.limit) <
           std::tie(b.said.substance, b.said.authority, b.limit);
  });
  for (const auto& [id, writes] : samples_) {
    const auto heads = writes.heads(withdrawals);
    if (heads.empty()) continue;
    const auto& said = heads.back()->value;
    out.samples.push_back({id, said.person, said.substance, said.value, said.unit, said.from_ms,
                           said.to_ms, said.respirator, hashes_of(heads)});
  }
  std::sort(out.samples.begin(), out.samples.end(), [](const SampleView& a, const SampleView& b) {
    return std::tie(a.from_ms, a.sample) < std::tie(b.from_ms, b.sample);
  });
  return out;
}

void AirFold::view_booths(AirView& out, const Withdrawals& withdrawals) const {
  std::map<BoothId, BoothAirView> booths;
  const auto booth_of = [&](const BoothId& booth) -> BoothAirView& {
    BoothAirView& view = booths[booth];
    view.booth = booth;
    return view;
  };
  for (const auto& [booth, writes] : facts_) {
    const auto heads = writes.heads(withdrawals);
    if (heads.empty()) continue;
    booth_of(booth).facts = heads.back()->value;
    booth_of(booth).facts_heads = hashes_of(heads);
  }
  for (const auto& read : reads_)
    if (withdrawals.stands(read.entry))
      booth_of(read.said.booth)
          .readings.push_back({read.said.what, read.said.values, read.said.instrument_percent,
                               read.said.happened_ms.value_or(read.wall_ms), read.by, read.entry});
  for (const auto& said : said_) {
    if (!withdrawals.stands(said.entry)) continue;
    auto& list = booth_of(said.said.booth).said;
    if (said.said.what == job::BoothWord::ClearanceOver) list.clear();
    list.push_back({said.said.what, said.said.spray, said.said.job, said.said.respirator, said.by,
                    said.at, said.entry});
    if (list.size() > most_said) forget_one(list);
  }
  for (auto& [id, booth] : booths) {
    std::stable_sort(booth.readings.begin(), booth.readings.end(),
                     [](const auto& a, const auto& b) { return a.happened_ms < b.happened_ms; });
    out.booths.push_back(std::move(booth));
  }
}

void AirFold::view_people(AirView& out, const Withdrawals& withdrawals) const {
  std::map<PersonId, PersonAirView> people;
  for (const auto& [person, writes] : flags_) {
    const auto heads = writes.heads(withdrawals);
    if (heads.empty()) continue;
    auto& view = person_of(people, person);
    view.do_not_spray =
        std::any_of(heads.begin(), heads.end(), [](const auto* head) { return head->value; });
    view.flag_heads = hashes_of(heads);
  }
  for (const auto& [test, writes] : fit_tests_) {
    const auto heads = writes.heads(withdrawals);
    if (heads.empty()) continue;
    const auto& said = heads.back()->value;
    person_of(people, said.person)
        .fit_tests.push_back({test, said.respirator, said.said, hashes_of(heads)});
  }
  for (const auto& [key, writes] : cartridges_) {
    const auto heads = writes.heads(withdrawals);
    if (heads.empty()) continue;
    const auto& head = *heads.back();
    person_of(people, key.first)
        .cartridges.push_back({key.second, head.value.schedule_h, head.value.schedule_basis,
                               head.wall_ms, used_h(key.first, key.second, head.order, withdrawals),
                               hashes_of(heads)});
  }
  for (const auto& [key, writes] : dues_) {
    const auto heads = writes.heads(withdrawals);
    if (heads.empty()) continue;
    int earliest = heads.front()->value;
    for (const auto* head : heads) earliest = std::min(earliest, head->value);
    person_of(people, key.first).dues.push_back({key.second, earliest, hashes_of(heads)});
  }
  for (auto& [id, person] : people) {
    std::sort(person.fit_tests.begin(), person.fit_tests.end(), [](const auto& a, const auto& b) {
      return std::tie(a.said.tested_day, a.test) < std::tie(b.said.tested_day, b.test);
    });
    out.people.push_back(std::move(person));
  }
}

// From each start to its gun down; a spray whose end nobody said counts as the longest one does.
std::vector<double> AirFold::used_h(const PersonId& person, const RespiratorId& respirator,
                                    const entries::Order& since,
                                    const Withdrawals& withdrawals) const {
  constexpr double longest_h = 8;
  std::vector<double> out;
  for (std::size_t i = 0; i < said_.size(); ++i) {
    const Said& start = said_[i];
    if (start.said.what != job::BoothWord::SprayStarted || start.by != person ||
        start.said.respirator != respirator || start.at.order < since ||
        !withdrawals.stands(start.entry))
      continue;
    const auto down =
        std::find_if(said_.begin() + static_cast<long>(i), said_.end(), [&](const Said& one) {
          return one.said.what == job::BoothWord::GunDown && one.said.spray == start.said.spray &&
                 withdrawals.stands(one.entry);
        });
    if (down == said_.end()) continue;  // it goes on
    const Moment end{down->at.wall_ms, down->at.since_boot_ms, down->at.boot, 0};
    out.push_back(std::min(longest_h, static_cast<double>(elapsed_ms(start.at, end)) / ms_per_h));
  }
  return out;
}

}  // namespace jambline::folds
