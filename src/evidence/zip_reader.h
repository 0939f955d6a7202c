// evidence/zip_reader.h: a ZIP that somebody else wrote, read by libzip and by narrow rules.
//
// Shape:   members by their number. Only what is stored as it is: nothing is unpacked, and all
//          members together are no longer than the file, so no file is larger than it looks.
// Errors:  of open(): NoSuchFile, ReadOnly (no right to read), FileFailed, Malformed (no ZIP, cut
//          short, in more than one piece; args: cause), TooLarge. Of read(): BadHash (the ZIP's own
//          checksum does not fit; only at the end of the bytes), FileFailed.
// Threads: one owner.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "base/error.h"

struct zip;
struct zip_file;

namespace jambline::evidence {

struct ZipMember {
  std::string name;
  std::uint64_t bytes{};
  bool as_it_is = false;  // neither compressed nor encrypted
};

class MemberReader {
 public:
  explicit MemberReader(zip_file* file, std::string name);
  // 0 = the end.
  Result<std::size_t> read(std::span<std::uint8_t> bytes);

 private:
  struct Close {
    void operator()(zip_file* file) const;
  };
  std::unique_ptr<zip_file, Close> file_;
  std::string name_;
};

class ZipReader {
 public:
  static Result<ZipReader> open(const std::filesystem::path& file);
  static Result<ZipReader> open(std::span<const std::uint8_t> bytes);  // which outlive it

  const std::vector<ZipMember>& members() const { return members_; }
  Result<MemberReader> read(std::size_t member) const;

 private:
  struct Discard {
    void operator()(zip* archive) const;
  };
  ZipReader(zip* archive) : archive_(archive) {}
  Status list(std::uint64_t file_bytes);

  std::unique_ptr<zip, Discard> archive_;
  std::vector<ZipMember> members_;
};

}  // namespace jambline::evidence
