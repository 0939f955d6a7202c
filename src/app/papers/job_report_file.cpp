#include "app/papers/job_report_file.h"

#include <map>

#include "app/record/car_story.h"
#include "evidence/check_bundle.h"
#include "seal/fingerprint.h"

namespace jambline::app {

namespace {
constexpr double audit_part = 0.35;  // of the time that a report takes
constexpr double zip_part = 0.6;

PaperProgress part_of(const PaperProgress& progress, double from, double share) {
  return [progress, from, share](double part_done) {
    if (progress) progress(from + share * part_done);
  };
}

// The last that says that a hub had an entry of the car.
std::optional<seal::Receipt> last_receipt(const std::vector<seal::Receipt>& all,
                                          const std::vector<entries::Entry>& entries) {
  std::map<DeviceId, std::uint64_t> first;
  for (const auto& entry : entries) {
    const auto [at, is_new] = first.emplace(entry.order.device, entry.order.seq);
    if (!is_new) at->second = std::min(at->second, entry.order.seq);
  }
  std::optional<seal::Receipt> out;
  for (const auto& receipt : all) {
    const auto of = first.find(receipt.device);
    if (of == first.end() || receipt.seq < of->second) continue;
    if (!out || receipt.received_ms > out->received_ms) out = receipt;
  }
  return out;
}

Result<std::unique_ptr<blobs::BlobStore>> pictures_of(blobs::Files& files,
                                                      const std::filesystem::path& folder) {
  auto kept = blobs::BlobStore::open_read_only(files, blobs_of(folder));
  if (!kept && kept.error().code == Code::NoSuchFile) return std::unique_ptr<blobs::BlobStore>();
  return kept;
}
}  // namespace

Result<ReportMade> write_report(const std::filesystem::path& folder, const ReportSource& source,
                                const ReportChoice& choice, const std::filesystem::path& file,
                                const std::stop_token& stop, const PaperProgress& progress) {
  JAMBLINE_ASSIGN(const auto log, log::EntryLog::open(folder, log::OpenMode::ReadOnly));
  auto audit = log::EntryLog::audit(folder, stop, part_of(progress, 0, audit_part));
  if (!audit && audit.error().code == Code::Stopped) return fail(audit.error());
  JAMBLINE_ASSIGN(const auto receipts, log->receipts());
  ReportProof proof{log->shop(), std::move(audit), last_receipt(receipts, source.entries)};
  blobs::PosixFiles files;
  JAMBLINE_ASSIGN(const auto pictures, pictures_of(files, folder));
  ReportMade out;
  JAMBLINE_ASSIGN(
      out.pdf, report::write_job_report(job_report(source, proof, choice), pictures.get(), files,
                                        file, stop, part_of(progress, audit_part, 1 - audit_part)));
  if (proof.audit) out.bad = proof.audit->first_bad;
  return out;
}

Result<BundleMade> write_bundle(const std::filesystem::path& folder, const ReportSource& source,
                                const std::filesystem::path& file, bool without_missing,
                                const std::stop_token& stop, const PaperProgress& progress) {
  JAMBLINE_ASSIGN(const auto log, log::EntryLog::open(folder, log::OpenMode::ReadOnly));
  blobs::PosixFiles files;
  JAMBLINE_ASSIGN(const auto pictures, pictures_of(files, folder));
  const CarStory story = story_of(source.entries, source.shop, source.car);
  const evidence::BundleWanted wanted{
      source.car.job, file, bundle_report(log->shop(), story, source.shop, folder.string()),
      without_missing};
  BundleMade out;
  JAMBLINE_ASSIGN(out.zip, evidence::write_bundle(*log, pictures.get(), wanted, stop,
                                                  part_of(progress, 0, zip_part)));
  const auto found =
      evidence::check_bundle(file, log->shop(), stop, part_of(progress, zip_part, 1 - zip_part));
  if (!found) {
    std::error_code ignored;
    if (found.error().code == Code::Stopped) std::filesystem::remove(file, ignored);
    return fail(found.error());
  }
  out.bad = found->first_bad;
  return out;
}

std::string fingerprint_of(const std::filesystem::path& folder) {
  const auto log = log::EntryLog::open(folder, log::OpenMode::ReadOnly);
  return log && (*log)->shop() ? seal::fingerprint((*log)->shop()) : std::string();
}

}  // namespace jambline::app
