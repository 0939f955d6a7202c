// screens/papers.h: a report or a bundle of one car as screens ask for it. The program makes it.
//
// Shape:   values that do not change while a file is made beside the work: nothing of the engine is
//          asked, so no tap waits for it.
// Threads: the makers are called on a thread of screens/paper_run.h.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

#include "base/clock.h"
#include "entries/entry.h"
#include "folds/car_view.h"
#include "folds/shop_view.h"
#include "screens/units.h"

namespace jambline::screens {

class Session;

struct PaperOf {
  std::shared_ptr<const folds::CarView> car;
  std::shared_ptr<const folds::ShopView> shop;
  std::shared_ptr<const std::vector<entries::Entry>> entries;
  PersonId by;
  Moment now;
  QString zone;
  explicit operator bool() const { return car && shop && entries; }
};
PaperOf paper_of(const Session& session);  // of the car on the tape; empty until it has come

struct ReportWanted {
  PaperOf of;
  bool hours = true;
  bool names = true;
  bool pictures = true;
  bool letter_paper = true;
  Units units = Units::Us;
};

struct PaperMade {
  std::uint64_t bytes = 0;
  int pages = 0;             // of a report
  int missing = 0;           // pictures that are not in it
  std::optional<Error> bad;  // the log is not in order, and the file says so
};

using PaperProgress = std::function<void(double part_done)>;
using WriteReport =
    std::function<Result<PaperMade>(const ReportWanted&, const std::filesystem::path& file,
                                    const std::stop_token&, const PaperProgress&)>;
using WriteBundle = std::function<Result<PaperMade>(
    const PaperOf&, const std::filesystem::path& file, bool without_missing, const std::stop_token&,
    const PaperProgress&)>;

// What the printing program of this device said.
struct PrintSaid {
  enum class Answer : std::uint8_t { Accepted, NoProgram, Refused };
  Answer answer{};
  QString words;  // its own
};
using PrintPaper = std::function<PrintSaid(const std::filesystem::path& file)>;

// "Report K 41-206 2026-11-24 154012.pdf"; without a folder.
QString paper_file_name(const QString& what, const PaperOf& of, const QString& ending);
// A folder as it was typed or chosen.
std::filesystem::path paper_folder(const QString& typed);
// The shop's fingerprint in groups of four, two lines.
QString fingerprint_lines(const QString& fingerprint);

}  // namespace jambline::screens
