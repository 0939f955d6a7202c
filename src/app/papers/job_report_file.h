// app/papers/job_report_file.h: the job report and the evidence bundle of one car, each as one new
// file.
//
// Shape:   the log is read by a reader of its own, opened read-only, and checked as a whole before
//          the report says how far it is proven. What the words come from is given.
// Durable: report/pdf_file.h, evidence/zip_writer.h.
// Errors:  theirs, and those of evidence/write_bundle.h; Stopped.
// Threads: any; beside a running program. The report needs a QGuiApplication.
#pragma once

#include <filesystem>
#include <functional>
#include <stop_token>

#include "app/papers/job_report_words.h"
#include "evidence/write_bundle.h"
#include "report/job_report.h"

namespace jambline::app {

struct ReportMade {
  report::ReportWritten pdf;
  std::optional<Error> bad;  // the log is not in order; the report says where
};

using PaperProgress = std::function<void(double part_done)>;

Result<ReportMade> write_report(const std::filesystem::path& folder, const ReportSource& source,
                                const ReportChoice& choice, const std::filesystem::path& file,
                                const std::stop_token& stop, const PaperProgress& progress);

struct BundleMade {
  evidence::BundleWritten zip;
  std::optional<Error> bad;  // what its own check found
};

// Checked after it was written.
Result<BundleMade> write_bundle(const std::filesystem::path& folder, const ReportSource& source,
                                const std::filesystem::path& file, bool without_missing,
                                const std::stop_token& stop, const PaperProgress& progress);

// "" when the folder has no shop yet, or cannot be read.
std::string fingerprint_of(const std::filesystem::path& folder);

}  // namespace jambline::app
