// exchange/file_store.h: the pictures that entries name, as sync sees them: which are here, which
// are not, and their bytes in and out.
//
// Shape:   names are read from the log as it grows. Wanted first: what somebody looks at, then
//          previews, then originals of cars in work; originals of delivered cars come when they are
//          looked at. What is coming lies in arriving/ until its hash was checked.
// Threads: FileStore's calls and want(): one owner at a time. Bodies: any thread.
#pragma once

#include <deque>
#include <set>
#include <unordered_map>

#include "blobs/part_store.h"
#include "engine/engine.h"
#include "net/client.h"
#include "sync/picture_end.h"

namespace jambline::exchange {

class PictureFiles final : public sync::FileStore, public net::Bodies {
 public:
  // Without a folder for pictures that may be filled: nothing is here and nothing is missing.
  static Result<std::unique_ptr<PictureFiles>> open(const std::filesystem::path& folder,
                                                    engine::Engine& engine, log::EntryLog& log);

  std::vector<sync::FileItem> here() override;
  std::vector<sync::FileItem> missing() override;
  Result<std::uint64_t> part_bytes(const Hash& blob) override;
  Status came(const Hash& blob) override;
  Status check(const Hash& blob) override;

  Result<Read> read(const sync::BlobPart& part) override;
  Result<Write> write(const sync::BlobPart& part) override;

  void want(const Hash& file);

 private:
  struct Named {
    Hash file;
    std::optional<std::uint64_t> size_bytes;  // not known of a preview that is not here
    bool preview = false;
    JobId job;
  };
  PictureFiles(engine::Engine& engine, log::EntryLog& log);
  void read_names();
  bool is_here(const Named& named);

  engine::Engine& engine_;
  log::EntryLog& log_;
  blobs::PosixFiles disk_;
  std::unique_ptr<blobs::PartStore> parts_;
  blobs::BlobStore* blobs_ = nullptr;
  log::Arrival read_ = 0;
  std::vector<Named> named_;  // each file once, in the order of the log
  std::set<Hash> known_;
  std::unordered_map<Hash, std::uint64_t> here_bytes_;
  std::set<Hash> wanted_;
};

}  // namespace jambline::exchange
