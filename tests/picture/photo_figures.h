// tests/picture/photo_figures.h: how often the judgement of pictures is wrong on the measured set.
#pragma once

#include <map>
#include <string>

#include "picture/read.h"
#include "tests/picture/photo_set.h"

namespace jambline::picture {

struct PhotoFigures {
  int good = 0;
  int false_alarms = 0;  // good ones that are not called good
  int bad = 0;
  int misses = 0;  // bad ones that are called good
  std::map<std::string, int> misses_by_variant;
  std::string wrong;  // the names of all of them
  std::string unread;

  double false_alarm_percent() const { return 100.0 * false_alarms / good; }
  double miss_percent() const { return 100.0 * misses / bad; }
};

inline void judge_sources(int first, int step, PhotoFigures& out) {
  for (int source = first; source < sources; source += step) {
    const QImage picture = source_picture(source);
    if (picture.isNull()) {
      out.unread += source_name(source) + ' ';
      continue;
    }
    for (std::size_t i = 0; i < variant_names.size(); ++i) {
      const auto variant = static_cast<Variant>(i);
      const auto bytes = as_jpeg(variant_of(picture, variant, static_cast<unsigned>(source)));
      const auto seen = look_at(bytes);
      if (!seen) {
        out.unread += source_name(source) + ' ';
        continue;
      }
      const bool called_good = seen->judgement.word == trade::PhotoWord::Good;
      const bool is_good = variant == Variant::Good;
      ++(is_good ? out.good : out.bad);
      if (called_good == is_good) continue;
      ++(is_good ? out.false_alarms : out.misses);
      if (!is_good) ++out.misses_by_variant[variant_names[i]];
      out.wrong += source_name(source) + ' ' + variant_names[i] + "; ";
    }
  }
}

}  // namespace jambline::picture
