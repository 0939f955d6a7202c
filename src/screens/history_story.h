// screens/history_story.h: one car's visit on a time axis: air, each person's hours, waits,
// entries.
//
// Axis:    an entry stands where its wall clock says, but never left of one that comes before it in
//          display order, so that stepping goes one way.
// Lanes:   rows for Theme's Lanes; a spray and a coat are moments, for nobody says here how long
//          they took.
// Threads: any, while no translation is being changed; looks only at what it is given.
#pragma once

#include <QVariantList>
#include <memory>
#include <vector>

#include "folds/car_view.h"
#include "folds/job_fold.h"
#include "folds/shop_view.h"

namespace jambline::screens {

enum class LaneLook : std::uint8_t { Solid, Here, Waits, Tick };  // as in Lanes.qml

struct HistoryStory {
  QVariantList lanes;
  QVariantList marks;               // days, and the promise
  std::vector<std::int64_t> at_ms;  // of each entry, growing
  std::int64_t start_ms = 0;
  std::int64_t end_ms = 0;
};

struct HistoryGiven {
  std::shared_ptr<const std::vector<entries::Entry>> timeline;
  std::shared_ptr<const folds::CarView> car;
  std::shared_ptr<const folds::ShopView> shop;
  QString zone;
  std::int64_t now_ms{};
};
HistoryStory story_of(const HistoryGiven& given);

// The car as it was after the entry at `place`. Going on from an earlier place of the same time
// line folds only what lies between; one owner at a time.
class HistoryFold {
 public:
  folds::CarView at(const std::shared_ptr<const std::vector<entries::Entry>>& timeline,
                    std::size_t place);

 private:
  std::shared_ptr<const std::vector<entries::Entry>> timeline_;
  std::unique_ptr<folds::JobFold> fold_;
  std::size_t applied_ = 0;
};

}  // namespace jambline::screens
