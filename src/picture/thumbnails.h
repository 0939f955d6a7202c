// picture/thumbnails.h: small pictures by the hash of the original, in a folder that can go any
// time.
//
// Shape:   <cache>/<64 hex>-<side>.jpg and <64 hex>-preview.jpg, each followed by the SHA-256 of
// its
//          own bytes: one that is damaged, cut short or gone is made anew from the original. They
//          carry pixels only: no time, no place.
// Durable: not at all (renamed into place, never synced). A full disk costs speed, not pictures.
// Cost:    a first get() decodes the original (JPEG: scaled); later ones read a small file.
// Errors:  those of BlobStore::get and of decode().
// Threads: any but the one that draws; several at once.
#pragma once

#include <QImage>
#include <cstdint>
#include <filesystem>
#include <span>
#include <vector>

#include "base/error.h"
#include "base/ids.h"
#include "blobs/blob_store.h"

namespace jambline::picture {

inline constexpr std::size_t most_preview_bytes = 60'000;
inline constexpr int most_preview_px = 1280;

class Thumbnails {
 public:
  Thumbnails(const blobs::BlobStore& store, std::filesystem::path cache);

  // Longest side `side_px`, rounded up to 160, 320 or 1280; an original that is smaller stays so.
  Result<QImage> get(const Hash& file, int side_px) const;
  // JPEG of 60,000 bytes and 1280 px at most.
  Result<std::vector<std::uint8_t>> preview(const Hash& file) const;
  // Fills the cache from the scaled decode that look_at() gave, so that nothing is decoded later.
  void keep(const Hash& file, const QImage& small) const;
  void forget_all() const;

 private:
  std::filesystem::path path_of(const Hash& file, const char* ending) const;
  Result<QImage> largest(const Hash& file) const;

  const blobs::BlobStore& store_;
  std::filesystem::path cache_;
};

// The picture of that side, rounded up as above; null when it cannot be decoded.
QImage thumbnail_of(std::span<const std::uint8_t> bytes, int side_px);
std::vector<std::uint8_t> preview_of(const QImage& small);

}  // namespace jambline::picture
