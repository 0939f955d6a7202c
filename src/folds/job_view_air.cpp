// The part of JobFold::view() that tells of air, spraying, baking and bonding. Few entries of a car
// are of these kinds: they are kept as they came and worked out when the view is.
#include <algorithm>

#include "folds/job_fold.h"

namespace jambline::folds {

namespace {

class Air {
 public:
  Air(const std::vector<entries::Entry>& entries, const Withdrawals& withdrawals)
      : withdrawals_(withdrawals) {
    for (const auto& entry : entries)
      if (withdrawals.stands(entry.hash)) standing_.push_back(&entry);
    std::sort(standing_.begin(), standing_.end(),
              [](const auto* a, const auto* b) { return a->order < b->order; });
  }

  CarAirView view() {
    for (const auto* entry : standing_)
      entry->payload.visit([&](const auto& said) { take(*entry, said); });
    for (const auto& [id, writes] : mixes_) {
      const auto heads = writes.heads(withdrawals_);
      if (heads.empty()) continue;
      const auto& said = heads.back()->value;
      MixView view{id,
                   said.product,
                   said.batch,
                   said.color_approved,
                   said.mixed_ms,
                   heads.back()->person,
                   stamps_[heads.front()->hash],
                   std::move(coats_[id]),
                   hashes_of(heads)};
      out_.mixes.push_back(std::move(view));
    }
    std::sort(out_.mixes.begin(), out_.mixes.end(),
              [](const auto& a, const auto& b) { return a.at.order < b.at.order; });
    for (const auto& [id, writes] : bonds_) {
      const auto heads = writes.heads(withdrawals_);
      if (heads.empty()) continue;
      const auto& said = heads.back()->value;
      out_.bonds.push_back({id, said.product, said.what, said.case_name, said.set_ms,
                            heads.back()->person, stamps_[heads.front()->hash], hashes_of(heads)});
    }
    std::sort(out_.bonds.begin(), out_.bonds.end(),
              [](const auto& a, const auto& b) { return a.at.order < b.at.order; });
    if (const auto heads = limits_.heads(withdrawals_); !heads.empty()) {
      const auto* last = heads.back();
      BakeLimitView view{last->value.most_c, last->value.most_min, last->value.source,
                         last->person,       stamps_[last->hash],  hashes_of(heads)};
      for (const auto* head : heads) {
        view.most_c = std::min(view.most_c, head->value.most_c);
        view.most_min = std::min(view.most_min, head->value.most_min);
      }
      out_.bake_limit = std::move(view);
    }
    return std::move(out_);
  }

 private:
  template <class T>
  void take(const entries::Entry& entry, const T& said) {
    using namespace entries;
    const Stamp at = stamp_of(entry);
    stamps_[entry.hash] = at;
    if constexpr (std::is_same_v<T, SprayStarted>)
      out_.sprays.push_back({said.spray, said.booth, said.respirator, said.activated, said.checks,
                             entry.person, at, entry.hash});
    else if constexpr (std::is_same_v<T, SprayedWithout>)
      out_.without.push_back({said.booth, said.items, entry.person, at, entry.hash});
    else if constexpr (std::is_same_v<T, Mixed>)
      mixes_[said.mix].write(entry, said.replaces, said);
    else if constexpr (std::is_same_v<T, Coated>)
      coats_[said.mix].push_back({said.panels, said.coats, said.flash_min, said.gun,
                                  said.heavy_film, entry.person, at, entry.hash});
    else if constexpr (std::is_same_v<T, BakeLimitRead>)
      limits_.write(entry, said.replaces, said);
    else if constexpr (std::is_same_v<T, BakeSaid>)
      out_.bakes.push_back({said.on, entry.person, at, entry.hash});
    else if constexpr (std::is_same_v<T, PanelTemperatureRead>)
      out_.temperatures.push_back({said.group, said.surface_c, entry.person, at, entry.hash});
    else if constexpr (std::is_same_v<T, ThumbnailChecked>)
      out_.thumbnails.push_back(
          {said.group, said.firm, said.product, said.sheet_percent, entry.person, at, entry.hash});
    else if constexpr (std::is_same_v<T, Bonded>)
      bonds_[said.bond].write(entry, said.replaces, said);
    else if constexpr (std::is_same_v<T, ClimateRead>)
      out_.climates.push_back({said.booth, said.air_c, said.surface_c, said.humidity_percent,
                               entry.person, at, entry.hash});
  }

  const Withdrawals& withdrawals_;
  std::vector<const entries::Entry*> standing_;
  std::map<Hash, Stamp> stamps_;
  std::map<MixId, Heads<entries::Mixed>> mixes_;
  std::map<MixId, std::vector<CoatView>> coats_;
  std::map<BondId, Heads<entries::Bonded>> bonds_;
  Heads<entries::BakeLimitRead> limits_;
  CarAirView out_;
};

}  // namespace

void JobFold::view_air(CarView& out) const {
  if (!air_.empty()) out.air = Air(air_, withdrawals_).view();
}

}  // namespace jambline::folds
