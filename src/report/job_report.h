// report/job_report.h: a report of many pages as a PDF: a title block, then sections of facts,
// tables, paragraphs, a map of the car's panels and pictures. The words come from who asks for it.
//
// Shape:   US letter or A4; from the second page on a running head, on every page a foot with the
//          page's number of all. Text can be searched and copied. A table's head stands again on
//          every page that it goes on to; no heading stands alone, no row of a table is torn and
//          no paragraph leaves one line behind. Black on white: nothing is told by color alone.
// Pictures: read one at a time, checked against their hash, drawn at 150 dots an inch as JPEG. Of
//          one that is not here its small copy is printed, and `small_copy` says so; where that is
//          missing too, or the bytes are others than those that were kept, a frame with words.
// Memory:  words of all pages, one picture.
// Durable: report/pdf_file.h.
// Errors:  those of report/pdf_file.h; Stopped.
// Threads: any but one at a time a file; needs a QGuiApplication.
#pragma once

#include <QString>
#include <QStringList>
#include <functional>
#include <optional>
#include <set>
#include <stop_token>
#include <variant>
#include <vector>

#include "blobs/blob_store.h"
#include "job/body_shape.h"
#include "job/check_in.h"
#include "report/pdf_file.h"

namespace jambline::report {

struct ReportFact {
  QString label;
  QString words;
};
using ReportFacts = std::vector<ReportFact>;

struct ReportColumn {
  QString title;
  double share = 1;     // of the width
  bool number = false;  // set to the right
};
struct ReportTable {
  std::vector<ReportColumn> columns;
  std::vector<QStringList> rows;
};

struct ReportParagraph {
  QString words;
  bool quiet = false;
};

struct ReportMark {
  job::Panel panel{};
  trade::Point_mm at;  // on the panel laid flat
  int number = 0;
  bool open = false;
};
struct ReportMap {
  job::BodyShape body{};
  std::set<job::Panel> worked_on;
  std::vector<ReportMark> marks;
  QString legend;
};

struct ReportPicture {
  Hash file;
  std::optional<Hash> preview;
  QString title;
  QString words;
};
struct ReportPictures {
  std::vector<ReportPicture> pictures;
  QString small_copy;  // said of one that is printed from its small copy
  QString not_here;
  QString damaged;
};

struct ReportSignature {
  std::vector<job::Stroke> strokes;
  QString words;
};

using ReportBlock = std::variant<ReportFacts, ReportTable, ReportParagraph, ReportMap,
                                 ReportPictures, ReportSignature>;
struct ReportSection {
  QString title;
  std::vector<ReportBlock> blocks;
};

struct JobReport {
  QString shop;
  QString title;
  QString subtitle;
  ReportFacts facts;     // of the title block
  QStringList left_out;  // each in a line of the title block; empty: all is in
  std::vector<ReportSection> sections;
  QString running_head;
  QString foot;        // left of the page's number
  QString page_words;  // "%1 of %2"
  QString family;
  PageSize page{};
};

struct ReportWritten {
  int pages = 0;
  int pictures = 0;      // printed, small copies too
  int small_copies = 0;  // of them
  int not_printed = 0;   // not here, or damaged
  std::uint64_t bytes = 0;
};

// `pictures` null: the folder has none.
Result<ReportWritten> write_job_report(const JobReport& report, const blobs::BlobStore* pictures,
                                       blobs::Files& files, const std::filesystem::path& file,
                                       const std::stop_token& stop,
                                       const std::function<void(double part_done)>& progress);

}  // namespace jambline::report
