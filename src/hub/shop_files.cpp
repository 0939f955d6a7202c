#include "hub/shop_files.h"

#include <sys/stat.h>

namespace jambline::hub {

namespace fs = std::filesystem;

namespace {
class BlobSource final : public sync::FileSource {
 public:
  explicit BlobSource(std::unique_ptr<blobs::FileReader> file) : file_(std::move(file)) {}
  Result<std::size_t> read(std::span<std::uint8_t> bytes) override { return file_->read(bytes); }

 private:
  std::unique_ptr<blobs::FileReader> file_;
};

class PartSink final : public sync::FileSink {
 public:
  explicit PartSink(blobs::PartStore::Writer writer) : writer_(std::move(writer)) {}
  Status write(std::span<const std::uint8_t> bytes) override { return writer_.write(bytes); }
  std::uint64_t size_bytes() const override { return writer_.size_bytes(); }

 private:
  blobs::PartStore::Writer writer_;
};
}  // namespace

Result<std::unique_ptr<ShopFiles>> ShopFiles::open(blobs::Files& disk, const fs::path& shop_folder,
                                                   std::int64_t now_ms) {
  std::unique_ptr<ShopFiles> out(new ShopFiles(disk, shop_folder));
  JAMBLINE_ASSIGN(out->blobs_, blobs::BlobStore::open(disk, shop_folder / "blobs"));
  JAMBLINE_ASSIGN(out->parts_, blobs::PartStore::open(disk, shop_folder / "parts", *out->blobs_));
  JAMBLINE_TRY(out->sweep_parts(now_ms));
  return out;
}

Result<bool> ShopFiles::has(const Hash& blob) {
  return blobs_->has(blob);
}

Result<std::uint64_t> ShopFiles::size_bytes(const Hash& blob) {
  return blobs_->size_bytes(blob);
}

Result<std::unique_ptr<sync::FileSource>> ShopFiles::read(const Hash& blob, std::uint64_t offset) {
  JAMBLINE_ASSIGN(auto file, blobs_->open_at(blob, offset));
  return std::make_unique<BlobSource>(std::move(file));
}

Status ShopFiles::begin(const sync::UploadId& upload) {
  return parts_->begin(upload.text());
}

Result<std::uint64_t> ShopFiles::offset(const sync::UploadId& upload) {
  return parts_->size_bytes(upload.text());
}

Result<std::unique_ptr<sync::FileSink>> ShopFiles::append(const sync::UploadId& upload,
                                                          std::uint64_t offset) {
  JAMBLINE_ASSIGN(auto writer, parts_->append(upload.text(), offset));
  return std::make_unique<PartSink>(std::move(writer));
}

Status ShopFiles::finish(const sync::UploadId& upload) {
  return parts_->finish(upload.text(), upload.blob);
}

Status ShopFiles::drop(const sync::UploadId& upload) {
  return parts_->remove(upload.text());
}

// By the time at which the disk says a part was last written; one it says nothing of stays.
Status ShopFiles::sweep_parts(std::int64_t now_ms) {
  JAMBLINE_ASSIGN(const auto all, parts_->list());
  for (const auto& part : all) {
    struct stat about {};
    if (part.kind != blobs::FolderItem::Kind::File ||
        ::stat((folder_ / "parts" / part.name).c_str(), &about) != 0)
      continue;
    const std::int64_t written_ms = std::int64_t{about.st_mtim.tv_sec} * 1000;
    if (now_ms - written_ms <= part_lives_ms) continue;
    if (Status gone = parts_->remove(part.name); !gone && gone.error().code != Code::NoSuchFile)
      return gone;
  }
  return {};
}

Result<BlobScrub> ShopFiles::set_damaged_aside(const std::stop_token& stop) {
  JAMBLINE_ASSIGN(const auto found, blobs_->scrub(stop, {}));
  BlobScrub out{found.blobs, found.bytes, {}, found.unreadable.size(), found.stopped};
  if (found.damaged.empty()) return out;
  const fs::path aside = folder_ / "damaged";
  JAMBLINE_TRY(disk_.make_folder(aside));
  JAMBLINE_TRY(disk_.sync_folder(folder_));
  for (const Hash& blob : found.damaged) {
    // A whole file that came under this name meanwhile stays.
    if (blobs_->check(blob)) continue;
    fs::path to = aside / blob.hex();
    for (int again = 2; disk_.size_bytes(to); ++again)
      to = aside / (blob.hex() + "-" + std::to_string(again));
    const fs::path from = blobs_->path_of(blob);
    JAMBLINE_TRY(disk_.rename(from, to));
    JAMBLINE_TRY(disk_.sync_folder(aside));
    JAMBLINE_TRY(disk_.sync_folder(from.parent_path()));
    out.damaged.push_back(blob);
  }
  return out;
}

Result<std::size_t> ShopFiles::parts() const {
  JAMBLINE_ASSIGN(const auto all, parts_->list());
  return all.size();
}

}  // namespace jambline::hub
