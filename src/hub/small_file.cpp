#include "hub/small_file.h"

#include <algorithm>
#include <vector>

#include "blobs/file_layer.h"
#include "blobs/hasher.h"

namespace jambline::hub {

namespace fs = std::filesystem;

namespace {
constexpr std::size_t hashed_piece_bytes = std::size_t{256} * 1024;

std::span<const std::uint8_t> as_bytes(std::string_view text) {
  return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}
}  // namespace

Status write_whole(const fs::path& file, std::string_view bytes) {
  blobs::PosixFiles files;
  fs::path made = file;
  made += ".new";
  if (Status gone = files.remove(made); !gone && gone.error().code != Code::NoSuchFile) return gone;
  JAMBLINE_ASSIGN(const auto out, files.create(made));
  JAMBLINE_TRY(out->write(as_bytes(bytes)));
  JAMBLINE_TRY(out->sync());
  JAMBLINE_TRY(out->close());
  return rename_durably(made, file);
}

Result<std::string> read_whole(const fs::path& file, std::size_t most_bytes) {
  blobs::PosixFiles files;
  JAMBLINE_ASSIGN(const std::uint64_t size, files.size_bytes(file));
  if (size > most_bytes)
    return fail(Error{Code::TooLarge, "read", file.filename().string(), {}}.with(
        "limit", std::to_string(most_bytes)));
  JAMBLINE_ASSIGN(const auto in, files.open(file));
  std::string out(size, '\0');
  std::size_t done = 0;
  while (done < out.size()) {
    JAMBLINE_ASSIGN(
        const std::size_t got,
        in->read({reinterpret_cast<std::uint8_t*>(out.data()) + done, out.size() - done}));
    if (got == 0) break;
    done += got;
  }
  out.resize(done);
  return out;
}

Status make_folder(const fs::path& folder) {
  return blobs::PosixFiles().make_folder(folder);
}

Status sync_folder(const fs::path& folder) {
  return blobs::PosixFiles().sync_folder(folder);
}

Status rename_durably(const fs::path& from, const fs::path& to) {
  blobs::PosixFiles files;
  JAMBLINE_TRY(files.rename(from, to));
  return files.sync_folder(to.has_parent_path() ? to.parent_path() : fs::path("."));
}

Result<Hash> hash_of_file(const fs::path& file) {
  blobs::PosixFiles files;
  JAMBLINE_ASSIGN(const auto in, files.open(file));
  std::vector<std::uint8_t> piece(hashed_piece_bytes);
  blobs::Hasher hasher;
  for (;;) {
    JAMBLINE_ASSIGN(const std::size_t got, in->read(piece));
    if (got == 0) return hasher.finish();
    hasher.update(std::span<const std::uint8_t>(piece).first(got));
  }
}

}  // namespace jambline::hub
