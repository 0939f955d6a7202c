// report/report_pieces.h: the blocks of a report as pieces of report/page_flow.h; each file of
// them makes one kind. What is given has to outlive the pieces.
#pragma once

#include "report/job_report.h"
#include "report/page_flow.h"
#include "report/paper_text.h"

namespace jambline::report {

void add_heading(std::vector<Piece>& to, const Paper& paper, const QString& words);
void add_paragraph(std::vector<Piece>& to, const Paper& paper, const QString& words, Look look,
                   double above);
void add_facts(std::vector<Piece>& to, const Paper& paper, const ReportFacts& facts);
void add_table(std::vector<Piece>& to, const Paper& paper, const ReportTable& table);
void add_map(std::vector<Piece>& to, const Paper& paper, const ReportMap& map);
void add_signature(std::vector<Piece>& to, const Paper& paper, const ReportSignature& signature);

// What drawing pictures needs and finds out.
struct PictureRun {
  const blobs::BlobStore* blobs = nullptr;
  const std::stop_token* stop = nullptr;
  std::function<void()> went_on;
  ReportWritten* written = nullptr;
};
// `run` is used when the pieces are drawn.
void add_pictures(std::vector<Piece>& to, const Paper& paper, const ReportPictures& pictures,
                  const PictureRun& run);

}  // namespace jambline::report
