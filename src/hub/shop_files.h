// hub/shop_files.h: the files of one shop at the hub: blobs/ and parts/ in the shop's folder.
//
// Shape:   a file on its way is the part hash-size-random (sync::UploadId). Parts that nobody has
//          touched for seven days are removed when the shop is opened and once a day after that.
//          set_damaged_aside() moves a file whose bytes are not its name's to damaged/.
// Errors:  those of sync/hub_files.h.
// Threads: any; a reader or writer has one owner.
#pragma once

#include <filesystem>
#include <memory>
#include <stop_token>

#include "blobs/part_store.h"
#include "sync/hub_files.h"

namespace jambline::hub {

inline constexpr std::int64_t part_lives_ms = std::int64_t{7} * 24 * 3'600'000;

struct BlobScrub {
  std::uint64_t blobs = 0;
  std::uint64_t bytes = 0;
  std::vector<Hash> damaged;  // set aside
  std::uint64_t unreadable = 0;
  bool stopped = false;
};

class ShopFiles final : public sync::HubFiles {
 public:
  static Result<std::unique_ptr<ShopFiles>> open(blobs::Files& disk,
                                                 const std::filesystem::path& shop_folder,
                                                 std::int64_t now_ms);

  Result<bool> has(const Hash& blob) override;
  Result<std::uint64_t> size_bytes(const Hash& blob) override;
  Result<std::unique_ptr<sync::FileSource>> read(const Hash& blob, std::uint64_t offset) override;
  Status begin(const sync::UploadId& upload) override;
  Result<std::uint64_t> offset(const sync::UploadId& upload) override;
  Result<std::unique_ptr<sync::FileSink>> append(const sync::UploadId& upload,
                                                 std::uint64_t offset) override;
  Status finish(const sync::UploadId& upload) override;
  Status drop(const sync::UploadId& upload) override;

  Status sweep_parts(std::int64_t now_ms);
  Result<BlobScrub> set_damaged_aside(const std::stop_token& stop);
  blobs::BlobStore& blobs() { return *blobs_; }
  Result<std::size_t> parts() const;

 private:
  ShopFiles(blobs::Files& disk, std::filesystem::path shop_folder)
      : disk_(disk), folder_(std::move(shop_folder)) {}

  blobs::Files& disk_;
  std::filesystem::path folder_;
  std::unique_ptr<blobs::BlobStore> blobs_;
  std::unique_ptr<blobs::PartStore> parts_;
};

}  // namespace jambline::hub
