// screens/floor_forecasts.h: when each car on the floor will be ready, worked out on the calc lane.
//
// Anew:    a car whose row changed; all of them when the calendar, the zone or what the shop's own
//          cars teach changed, and every quarter of an hour. A few cars at a time: other long work
//          goes between.
// Counted: what runs counts as clocked up to the moment of the calculation.
// Promise: nothing is asked of the disk before the first second, so that a start is not slowed.
//          changed() is sent when all that was asked for is known; until then the older answer of a
//          car stands.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <atomic>
#include <map>
#include <memory>
#include <optional>

#include "folds/forecast.h"
#include "screens/session.h"

namespace jambline::screens {

class FloorForecasts final : public QObject {
  Q_OBJECT

 public:
  struct Known {
    folds::FloorRow row;  // as it was looked at
    std::int64_t at_ms = 0;
    std::optional<folds::Forecast> forecast;
    std::optional<Code> refused;  // why there is none
    int of_all = 0;               // in which turn of all cars
  };

  explicit FloorForecasts(Session& session, QObject* parent = nullptr);

  const Known* of(const JobId& job) const;  // null: not known yet
  // All cars of the floor are known as they stand.
  bool ready() const { return begun_ && !waiting_; }
  const folds::LearnedDurations& learned() const { return learned_; }
  void look();  // now, without waiting for the first second

 signals:
  void changed();

 private:
  struct Round;

  void follow();
  void learn();
  void ask(std::vector<folds::FloorRow> cars);
  void go_on(const std::shared_ptr<Round>& round);
  void take(const std::shared_ptr<Round>& round);

  Session& session_;
  std::map<JobId, Known> known_;
  std::shared_ptr<std::atomic<std::uint64_t>> asked_;  // the newest; older ones are not worked out
  std::shared_ptr<const std::vector<folds::FloorRow>> floor_;
  std::shared_ptr<const std::vector<folds::Lesson>> lessons_;
  folds::LearnedDurations learned_;
  job::Calendar calendar_;
  std::string zone_;
  std::int64_t quarter_ = -1;
  int of_all_ = 0;
  bool wanted_ = false;
  bool begun_ = false;  // what the shop's own cars teach is known
  bool waiting_ = false;
};

}  // namespace jambline::screens
