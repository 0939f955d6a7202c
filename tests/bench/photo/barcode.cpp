// barcode_read_pct  of 240 pictures (tests/picture/barcode_scenes.h) those whose text is read
// right.
//                   barcode_wrong: texts that stand in no picture. barcode_ms: a picture, the whole
//                   search.
#include <QGuiApplication>

#include "tests/bench/figures.h"
#include "tests/bench/photo/photo_bench.h"
#include "tests/picture/barcode_scenes.h"

namespace jambline::bench {

int barcode(int argc, char** argv) {
  const QGuiApplication gui(argc, argv);
  picture::BarcodeFigures figures;
  const double all_s = seconds([&] { figures = picture::read_scenes(0, 1); });
  figure("barcode_read_pct", 100.0 * figures.read / picture::barcode_scenes, "%");
  figure("barcode_wrong", figures.wrong, "texts");
  figure("barcode_ms", 1000 * all_s / picture::barcode_scenes, "ms a picture, with drawing it");
  return 0;
}

}  // namespace jambline::bench
