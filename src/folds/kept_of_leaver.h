// folds/kept_of_leaver.h: until when the records of somebody who has left are usually kept.
//
// Counted: payroll, time cards and, where the shop says years for them, the cars' own records from
//          the last day that was clocked; spraying from the last day that was sprayed; exposure
//          from the last sample; a fit test where the shop says years for it. A fit test without
//          such years binds nobody who has left: the next one is not made here.
// Years:   the shop's own, else the usual ones (job/retention.h). Days since 1970, in the shop's
//          zone. Pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/shop_view.h"

namespace jambline::folds {

// What the cars say of a person; nothing where the person never did it.
struct LastDays {
  std::optional<int> worked_day = {};
  std::optional<int> sprayed_day = {};
  friend bool operator==(const LastDays&, const LastDays&) = default;
};

struct KeptRecord {
  job::RecordClass record{};
  int last_day{};
  std::optional<int> over_day = {};  // the first day on which the time is over; none: no years
  friend bool operator==(const KeptRecord&, const KeptRecord&) = default;
};

// By class, those of which anything is there.
std::vector<KeptRecord> kept_of_leaver(const ShopView& shop, const PersonId& person,
                                       const LastDays& days);
// The one that is over last, or null where none has years.
const KeptRecord* kept_longest(const std::vector<KeptRecord>& records);

}  // namespace jambline::folds
