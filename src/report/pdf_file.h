// report/pdf_file.h: one new PDF on the disk, whole under its name or not there at all.
//
// Durable: written beside the target (".part" after its name), synced, renamed, the folder synced.
//          After an error neither is there. A file that is there already is never replaced.
// Errors:  NoSuchFile (no such folder), AlreadyDone, DiskFull, ReadOnly, FileFailed.
// Threads: one owner; painting it needs a QGuiApplication.
#pragma once

#include <QIODevice>
#include <QPdfWriter>
#include <cstdint>
#include <filesystem>
#include <memory>

#include "base/error.h"
#include "blobs/file_layer.h"

namespace jambline::report {

enum class PageSize : std::uint8_t { Letter, A4 };

inline constexpr int paper_dpi = 300;

class PdfFile final : public QIODevice {
 public:
  // `files` outlives it.
  static Result<std::unique_ptr<PdfFile>> create(blobs::Files& files, std::filesystem::path target);
  ~PdfFile() override;

  // A writer onto it, with these margins all round; it has to be gone before finish().
  std::unique_ptr<QPdfWriter> paper(PageSize page, double margin_mm, const QString& title);
  const Status& written() const { return written_; }  // the first thing that went wrong
  Result<std::uint64_t> finish();                     // its bytes

 protected:
  qint64 readData(char* data, qint64 most) override;
  qint64 writeData(const char* data, qint64 size) override;

 private:
  PdfFile(blobs::Files& files, std::filesystem::path target,
          std::unique_ptr<blobs::FileWriter> file);
  std::filesystem::path part() const;

  blobs::Files& files_;
  std::filesystem::path target_;
  std::unique_ptr<blobs::FileWriter> file_;
  Status written_;
  std::uint64_t bytes_ = 0;
  bool kept_ = false;
};

}  // namespace jambline::report
