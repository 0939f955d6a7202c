// engine/pictures.h: the files of pictures beside the log that names them.
//
// Threads: any; what it reads of the log it reads through a log of its own.
// Errors:  those of log/entry_log.h and blobs/blob_store.h. Without blobs/ (a folder that cannot be
//          written and has none): ReadOnly or NoSuchFile.
#pragma once

#include <functional>
#include <mutex>
#include <stop_token>
#include <string>

#include "acts/decide.h"
#include "engine/engine.h"

namespace jambline::engine {

// Where a picture is meant to go, as a draft keeps it until its entry stands.
std::string meant_text(const acts::TakePicture& command, const PersonId& person);
std::string meant_form(const Hash& file);  // the draft's name
std::optional<Hash> meant_preview(const std::string& meant);
// The draft that says that a file is the preview of one: it is no picture of its own.
std::string preview_form(const Hash& preview);

// Hashes the files of all pictures again that the folder's log names. Null: there are no files.
Result<PictureCheck> check_pictures(const std::filesystem::path& folder,
                                    const blobs::BlobStore* store, const std::stop_token& stop,
                                    const std::function<void(double)>& progress);

class Pictures {
 public:
  // Without `files`: the real disk.
  explicit Pictures(std::filesystem::path folder, std::shared_ptr<blobs::Files> files = {});
  Status open(bool to_write);  // once, before anything else

  blobs::BlobStore* store() const { return store_.get(); }
  // From here until end_keeping() the files are no leftovers.
  void begin_keeping(const job::PictureFacts& facts);
  void end_keeping(const job::PictureFacts& facts);
  // The preview, if there is one, first: where the picture is, its preview is too.
  Status put(const std::vector<std::uint8_t>& bytes, const std::vector<std::uint8_t>* preview,
             const job::PictureFacts& facts);
  // No entry without its file.
  Status are_there(const std::vector<acts::Draft>& drafts) const;

  using Draft = std::function<std::string(const std::string& form)>;
  Result<std::vector<LeftoverPicture>> leftovers(const Draft& draft) const;
  // Its preview goes with it; `meant` is its draft, if there is one.
  Status drop(const Hash& file, const std::string& meant);

  // Beside an exported shop, in its folder blobs: every file that the log names and that is here
  // whole. On a thread of their own; `meanwhile` is called on this one until it is over.
  using Meanwhile = std::function<void(double part_done)>;
  Status copy_out(const std::filesystem::path& folder, const std::stop_token& stop,
                  const Meanwhile& meanwhile) const;
  // And back: what the log names and that was not here. Files of other bytes than their name says
  // are left out and named.
  using Refused = std::vector<std::pair<std::string, Error>>;
  Status copy_in(const std::filesystem::path& folder, const std::stop_token& stop,
                 const Meanwhile& meanwhile, Refused& refused);

 private:
  Status put_one(const std::vector<std::uint8_t>& bytes, const Hash& file);

  std::filesystem::path folder_;
  std::shared_ptr<blobs::Files> files_;
  std::unique_ptr<blobs::BlobStore> store_;
  mutable std::mutex mutex_;
  std::vector<Hash> being_kept_;
};

}  // namespace jambline::engine
