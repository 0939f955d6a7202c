// evidence/zip_writer.h: one new ZIP, whole under its name or not there at all.
//
// Shape:   nothing is compressed and every member has the same time, so the same members give the
//          same bytes. Members are read when close() writes them.
// Durable: written beside the target (".part" after its name), synced, renamed, the folder synced.
//          After an error neither is there. A file that is there already is never replaced.
// Errors:  AlreadyDone, DiskFull, ReadOnly, NoSuchFile (the folder), FileFailed, Stopped, and what
// a
//          member's pieces gave.
// Threads: one owner.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "base/error.h"

namespace jambline::evidence {

class ZipWriter {
 public:
  // The next bytes of a member; empty = its end.
  using Pieces = std::function<Result<std::string>()>;

  static Result<ZipWriter> create(std::filesystem::path target);
  ZipWriter(ZipWriter&&) noexcept;
  ZipWriter& operator=(ZipWriter&&) = delete;
  ~ZipWriter();

  Status add_text(const std::string& name, std::string words);
  Status add_file(const std::string& name, const std::filesystem::path& file);
  // `begin` gives the pieces from the first on; it may be asked more than once.
  Status add_pieces(const std::string& name, std::function<Pieces()> begin);
  Status close(const std::stop_token& stop, const std::function<void(double part_done)>& progress);

 private:
  struct Open;
  explicit ZipWriter(std::unique_ptr<Open> open);
  Status add(const std::string& name, void* source);

  std::unique_ptr<Open> open_;
};

}  // namespace jambline::evidence
