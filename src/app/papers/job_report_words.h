// app/papers/job_report_words.h: one car's record in words, ready to be laid out by report/.
//
// Shape:   the terms are those of the screens; times in the zone given, to the minute, hours to the
//          second as on the sheet of hours; lengths, temperatures and film in the units chosen.
// Without names: people are their role and a number, the same one in the whole report; notes,
//          complaints, reasons in own words, firms, signatures and words on pictures are left out,
//          and the title block says so.
// Source:  what stands now in the folds: taken back is not shown, refused only counted. Nothing of
//          it proves anything; the section "How to check this" says what does.
// Threads: any; words through translation.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "entries/entry.h"
#include "folds/car_view.h"
#include "folds/shop_view.h"
#include "log/entry_log.h"
#include "report/job_report.h"
#include "screens/units.h"

namespace jambline::app {

struct ReportChoice {
  bool hours = true;
  bool names = true;
  bool pictures = true;
  report::PageSize page = report::PageSize::Letter;
  screens::Units units = screens::Units::Us;
};

// What was found out about the log when the report was made.
struct ReportProof {
  ShopId shop;
  Result<log::Audit> audit;
  std::optional<seal::Receipt> last_receipt;  // that covers an entry of the car
};

struct ReportSource {
  const folds::CarView& car;
  const folds::ShopView& shop;
  const std::vector<entries::Entry>& entries;  // of the car
  PersonId made_by;                            // zero: a program
  Moment now;
  QString zone;
};

report::JobReport job_report(const ReportSource& source, const ReportProof& proof,
                             const ReportChoice& choice);

}  // namespace jambline::app
