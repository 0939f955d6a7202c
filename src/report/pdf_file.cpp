#include "report/pdf_file.h"

#include <QPageLayout>
#include <QPageSize>
#include <system_error>

namespace jambline::report {

namespace fs = std::filesystem;

Result<std::unique_ptr<PdfFile>> PdfFile::create(blobs::Files& files, fs::path target) {
  std::error_code ignored;
  const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
  if (!fs::is_directory(folder, ignored))
    return fail(Code::NoSuchFile, "write a PDF", folder.string());
  if (fs::exists(target, ignored))
    return fail(Code::AlreadyDone, "write a PDF", target.filename().string());
  fs::path part = target;
  part += ".part";
  if (fs::exists(part, ignored)) JAMBLINE_TRY(files.remove(part));  // what a kill left
  JAMBLINE_ASSIGN(auto file, files.create(part));
  std::unique_ptr<PdfFile> out(new PdfFile(files, std::move(target), std::move(file)));
  out->open(QIODevice::WriteOnly | QIODevice::Unbuffered);
  return out;
}

PdfFile::PdfFile(blobs::Files& files, fs::path target, std::unique_ptr<blobs::FileWriter> file)
    : files_(files), target_(std::move(target)), file_(std::move(file)) {}

PdfFile::~PdfFile() {
  file_.reset();
  if (!kept_) (void)files_.remove(part());
}

fs::path PdfFile::part() const {
  fs::path out = target_;
  out += ".part";
  return out;
}

std::unique_ptr<QPdfWriter> PdfFile::paper(PageSize page, double margin_mm, const QString& title) {
  auto out = std::make_unique<QPdfWriter>(this);
  out->setResolution(paper_dpi);
  out->setPageSize(QPageSize(page == PageSize::A4 ? QPageSize::A4 : QPageSize::Letter));
  out->setPageMargins(QMarginsF(margin_mm, margin_mm, margin_mm, margin_mm),
                      QPageLayout::Millimeter);
  out->setTitle(title);
  out->setCreator(QStringLiteral("Jambline"));
  return out;
}

Result<std::uint64_t> PdfFile::finish() {
  if (!written_) return fail(written_.error());
  JAMBLINE_TRY(file_->sync());
  JAMBLINE_TRY(file_->close());
  std::error_code ignored;
  if (fs::exists(target_, ignored))
    return fail(Code::AlreadyDone, "write a PDF", target_.filename().string());
  JAMBLINE_TRY(files_.rename(part(), target_));
  kept_ = true;
  JAMBLINE_TRY(files_.sync_folder(target_.has_parent_path() ? target_.parent_path() : "."));
  return bytes_;
}

qint64 PdfFile::readData(char* /*data*/, qint64 /*most*/) {
  return -1;
}

// Qt goes on after a failed write and does not ask: the first error is kept and nothing more goes
// to the disk.
qint64 PdfFile::writeData(const char* data, qint64 size) {
  if (!written_) return size;
  written_ =
      file_->write({reinterpret_cast<const std::uint8_t*>(data), static_cast<std::size_t>(size)});
  if (written_) bytes_ += static_cast<std::uint64_t>(size);
  return size;
}

}  // namespace jambline::report
