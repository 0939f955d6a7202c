// tests/bench/screens/bench_hand.h: a finger on the running program with a painter who acts, a
// sedan on the tape and nibs thrown on it. Whatever does not come ends the bench. GUI thread.
#pragma once

#include <random>
#include <vector>

#include "acts/commands.h"
#include "job/body_shape.h"
#include "tests/threads/screen_hand.h"

namespace jambline::bench {

class BenchHand : public ScreenHand {
 public:
  BenchHand(app::Program& program, std::uint64_t seed);

  static const job::CarPattern& sedan() { return job::pattern(job::BodyShape::FourDoorSedan); }
  void choose_painter();
  engine::Wrote post(acts::Command command);
  // Of these panels; on the tape when it returns.
  JobId open_sedan(const char* plate, const std::vector<job::PatternPanel>& panels,
                   std::vector<acts::PlannedOperation> operations);
  trade::Point_mm spot(const trade::Polygon& outline);  // inside it, at random
  void throw_nib(const JobId& car, const job::PatternPanel& panel);
  void throw_nibs(const JobId& car, const std::vector<job::PatternPanel>& panels,
                  int nibs);  // spread by area

 private:
  app::Program& program_;
  std::mt19937_64 random_;
};

}  // namespace jambline::bench
