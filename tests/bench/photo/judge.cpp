// judge_false_alarm_pct  good pictures of the measured set (tests/picture/photo_set.h) that are not
//                        called good. judge_miss_pct: blurred, dark and clipped ones that are.
#include <QGuiApplication>
#include <cstdio>

#include "tests/bench/figures.h"
#include "tests/bench/photo/photo_bench.h"
#include "tests/bench/screens/shops.h"
#include "tests/picture/photo_figures.h"

namespace jambline::bench {

int judge(int argc, char** argv) {
  QGuiApplication gui(argc, argv);
  picture::PhotoFigures figures;
  picture::judge_sources(0, 1, figures);
  if (!figures.unread.empty())
    std::fprintf(stderr, "bench-photo: not read: %s\n", figures.unread.c_str());
  must_be(figures.unread.empty(), "pictures of the measured set are missing");
  figure("judge_false_alarm_pct", figures.false_alarm_percent(), "%");
  figure("judge_miss_pct", figures.miss_percent(), "%");
  return 0;
}

}  // namespace jambline::bench
