#include "folds/shop_fold.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace jambline::folds {

namespace {
void keep_first(entries::Order& first, const entries::Order& order) {
  if (first == entries::Order{} || order < first) first = order;
}

void insert_sorted(std::vector<Hash>& list, const Hash& hash) {
  const auto place = std::lower_bound(list.begin(), list.end(), hash);
  if (place == list.end() || *place != hash) list.insert(place, hash);
}
}  // namespace

ShopFold::ShopFold() = default;
ShopFold::ShopFold(const ShopFold&) = default;
ShopFold::ShopFold(ShopFold&&) noexcept = default;
ShopFold& ShopFold::operator=(const ShopFold&) = default;
ShopFold& ShopFold::operator=(ShopFold&&) noexcept = default;
ShopFold::~ShopFold() = default;

void ShopFold::apply(const entries::Entry& entry) {
  using namespace entries;
  if (entry.refused != Refused::No) return insert_sorted(refused_, entry.hash);
  air_.apply(entry);
  entry.payload.visit([&](const auto& said) {
    using T = std::decay_t<decltype(said)>;
    if constexpr (std::is_same_v<T, ShopNamed>) {
      shop_.write(entry, said.replaces, Shop{said.shop_name, said.zone});
    } else if constexpr (std::is_same_v<T, PersonAdded>) {
      Person& person = people_[said.person];
      keep_first(person.first, entry.order);
      person.role.write(entry, said.replaces, said.role);
    } else if constexpr (std::is_same_v<T, PersonNamed>) {
      people_[said.person].name.write(entry, said.replaces, said.person_name);
    } else if constexpr (std::is_same_v<T, PersonLeft>) {
      insert_sorted(people_[said.person].leaving, entry.hash);
    } else if constexpr (std::is_same_v<T, DeviceNamed>) {
      device_names_[said.device].write(entry, said.replaces, said.device_name);
    } else if constexpr (std::is_same_v<T, RackPlaceAdded>) {
      Rack& rack = racks_[said.rack];
      if (rack.first == Order{} || entry.order < rack.first)
        rack = {entry.order, entry.hash, said.rack_name};
    } else if constexpr (std::is_same_v<T, BoothSet>) {
      BoothWrites& booth = booths_[said.booth];
      keep_first(booth.first, entry.order);
      booth.said.write(entry, said.replaces, Booth{said.booth_name, said.booth_kind});
    } else if constexpr (std::is_same_v<T, BoothEventLogged>) {
      booth_events_[said.event].write(
          entry, said.replaces,
          Event{said.booth, said.what, said.happened_ms.value_or(entry.wall_ms),
                said.old_filters_out});
    } else if constexpr (std::is_same_v<T, ShotListSet>) {
      shot_lists_[said.stage].write(entry, said.replaces, said.shots);
    } else if constexpr (std::is_same_v<T, CalendarSet>) {
      calendar_.write(entry, said.replaces, said.calendar);
    } else if constexpr (std::is_same_v<T, RuleSet>) {
      rules_[said.rule].write(entry, said.replaces, said.said);
    } else if constexpr (std::is_same_v<T, RetentionSet>) {
      retentions_[said.record].write(entry, said.replaces, said.years);
    } else if constexpr (std::is_same_v<T, Withdrawn>) {
      withdrawals_.add(entry.hash, said.target);
    } else if constexpr (std::is_same_v<T, UnknownEntry>) {
      insert_sorted(unknown_, entry.hash);
    }
  });
}

ShopView ShopFold::view() const {
  ShopView out;
  const auto shop = shop_.heads(withdrawals_);
  out.name_heads = hashes_of(shop);
  if (!shop.empty()) {
    out.name = shop.back()->value.name;
    out.zone = shop.back()->value.zone;
  }
  std::vector<std::pair<entries::Order, PersonView>> people;
  for (const auto& [id, person] : people_) {
    const auto roles = person.role.heads(withdrawals_);
    if (roles.empty()) continue;  // named before being added has arrived, or taken back
    const auto names = person.name.heads(withdrawals_);
    const bool left = std::any_of(person.leaving.begin(), person.leaving.end(),
                                  [&](const Hash& hash) { return withdrawals_.stands(hash); });
    people.emplace_back(person.first,
                        PersonView{id, names.empty() ? std::string() : names.back()->value,
                                   roles.back()->value, left, hashes_of(roles), hashes_of(names)});
  }
  std::sort(people.begin(), people.end(),
            [](const auto& a, const auto& b) { return a.first < b.first; });
  for (auto& [order, person] : people) out.people.push_back(std::move(person));

  for (const auto& [device, names] : device_names_)
    if (const auto heads = names.heads(withdrawals_); !heads.empty())
      out.device_names.push_back({device, heads.back()->value, hashes_of(heads)});

  std::vector<std::pair<entries::Order, RackView>> racks;
  for (const auto& [id, rack] : racks_)
    if (withdrawals_.stands(rack.hash)) racks.emplace_back(rack.first, RackView{id, rack.name});
  std::sort(racks.begin(), racks.end(),
            [](const auto& a, const auto& b) { return a.first < b.first; });
  for (auto& [order, rack] : racks) out.racks.push_back(std::move(rack));
  view_booths(out);
  for (const auto& [stage, writes] : shot_lists_)
    if (const auto heads = writes.heads(withdrawals_); !heads.empty())
      out.shot_lists.push_back({stage, heads.back()->value, hashes_of(heads)});
  out.air = air_.view(withdrawals_);
  const auto calendars = calendar_.heads(withdrawals_);
  out.calendar = calendars.empty() ? job::usual_calendar() : calendars.back()->value;
  out.calendar_heads = hashes_of(calendars);
  view_rules(out);
  view_retentions(out);
  out.unknown_entries = static_cast<int>(unknown_.size());
  out.refused_entries = static_cast<int>(refused_.size());
  return out;
}

// A usual rule stands until somebody said it anew. Of two words the stricter one, and no rule is
// retired while one of them holds it.
void ShopFold::view_rules(ShopView& out) const {
  std::set<RuleId> own;
  for (const auto& [id, writes] : rules_) {
    const auto heads = writes.heads(withdrawals_);
    if (heads.empty()) continue;
    own.insert(id);
    RuleView view{id, heads.back()->value, false, hashes_of(heads)};
    for (const auto* head : heads) {
      view.said.kind = std::max(view.said.kind, head->value.kind);
      view.said.retired = view.said.retired && head->value.retired;
    }
    out.rules.push_back(std::move(view));
  }
  for (const auto& usual : job::usual_rules())
    if (own.count(usual.id) == 0) out.rules.push_back({usual.id, usual.rule, true, {}});
  std::sort(out.rules.begin(), out.rules.end(),
            [](const RuleView& a, const RuleView& b) { return a.rule < b.rule; });
}

// Of two words the one that keeps longer.
void ShopFold::view_retentions(ShopView& out) const {
  for (const auto& [record, writes] : retentions_) {
    const auto heads = writes.heads(withdrawals_);
    if (heads.empty()) continue;
    RetentionView view{record, heads.back()->value, hashes_of(heads)};
    for (const auto* head : heads)
      if (job::kept_years(record, head->value) > job::kept_years(record, view.years))
        view.years = head->value;
    out.retentions.push_back(std::move(view));
  }
}

void ShopFold::view_booths(ShopView& out) const {
  std::vector<std::pair<entries::Order, BoothView>> booths;
  for (const auto& [id, booth] : booths_) {
    const auto heads = booth.said.heads(withdrawals_);
    if (heads.empty()) continue;
    const Booth& said = heads.back()->value;
    booths.emplace_back(booth.first, BoothView{id, said.name, said.kind, hashes_of(heads)});
  }
  std::sort(booths.begin(), booths.end(),
            [](const auto& a, const auto& b) { return a.first < b.first; });
  for (auto& [order, booth] : booths) out.booths.push_back(std::move(booth));

  for (const auto& [id, writes] : booth_events_) {
    const auto heads = writes.heads(withdrawals_);
    if (heads.empty()) continue;
    const Event& said = heads.back()->value;
    out.booth_events.push_back({id, said.booth, said.what, said.happened_ms, said.old_filters_out,
                                heads.back()->person, hashes_of(heads)});
  }
  std::sort(out.booth_events.begin(), out.booth_events.end(), [](const auto& a, const auto& b) {
    return std::tie(a.happened_ms, a.event) < std::tie(b.happened_ms, b.event);
  });
}

}  // namespace jambline::folds
