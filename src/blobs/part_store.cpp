#include "blobs/part_store.h"

#include <algorithm>
#include <utility>

namespace jambline::blobs {

namespace {
constexpr std::size_t most_name_signs = 160;
constexpr std::size_t part_piece_bytes = std::size_t{256} * 1024;

bool good_name(std::string_view name) {
  if (name.empty() || name.size() > most_name_signs || name.front() == '.') return false;
  return std::all_of(name.begin(), name.end(), [](char sign) {
    return (sign >= '0' && sign <= '9') || (sign >= 'a' && sign <= 'z') || sign == '.' ||
           sign == '-';
  });
}
}  // namespace

PartStore::Writer::Writer(PartStore& store, std::string name, std::unique_ptr<FileWriter> file,
                          std::uint64_t size_bytes)
    : store_(&store), name_(std::move(name)), file_(std::move(file)), size_bytes_(size_bytes) {}

PartStore::Writer::Writer(Writer&& other) noexcept
    : store_(std::exchange(other.store_, nullptr)),
      name_(std::move(other.name_)),
      file_(std::move(other.file_)),
      size_bytes_(other.size_bytes_) {}

PartStore::Writer::~Writer() {
  if (!store_) return;
  const std::lock_guard lock(store_->mutex_);
  store_->known_[name_].writing = false;
}

Status PartStore::Writer::write(std::span<const std::uint8_t> bytes) {
  Status written = file_->write(bytes);
  const std::lock_guard lock(store_->mutex_);
  Known& known = store_->known_[name_];
  if (written) {
    known.hasher.update(bytes);
    known.size_bytes += bytes.size();
    size_bytes_ += bytes.size();
  } else {
    known.from_start = false;  // how much of it was taken only the file knows
  }
  return written;
}

PartStore::PartStore(Files& files, std::filesystem::path folder, BlobStore& whole)
    : files_(files), folder_(std::move(folder)), whole_(whole) {}

Result<std::unique_ptr<PartStore>> PartStore::open(Files& files, std::filesystem::path folder,
                                                   BlobStore& whole) {
  JAMBLINE_TRY(files.make_folder(folder));
  return std::unique_ptr<PartStore>(new PartStore(files, std::move(folder), whole));
}

Result<std::filesystem::path> PartStore::path_of(const std::string& name) const {
  if (!good_name(name)) return fail(Code::Malformed, "keep a part", "name");
  return folder_ / name;
}

Status PartStore::begin(const std::string& name) {
  JAMBLINE_ASSIGN(const auto file, path_of(name));
  if (files_.size_bytes(file)) return fail(Code::AlreadyDone, "begin a part", name);
  JAMBLINE_ASSIGN(const auto made, files_.create(file));
  JAMBLINE_TRY(made->close());
  const std::lock_guard lock(mutex_);
  known_.erase(name);
  known_[name].from_start = true;
  return {};
}

Result<std::uint64_t> PartStore::size_bytes(const std::string& name) const {
  JAMBLINE_ASSIGN(const auto file, path_of(name));
  return files_.size_bytes(file);
}

Result<PartStore::Writer> PartStore::append(const std::string& name, std::uint64_t offset) {
  JAMBLINE_ASSIGN(const auto file, path_of(name));
  JAMBLINE_ASSIGN(const std::uint64_t size, files_.size_bytes(file));
  {
    const std::lock_guard lock(mutex_);
    Known& known = known_[name];
    if (known.writing) return fail(Code::Busy, "append to a part", name);
    if (size != offset)
      return fail(
          Error{Code::OutOfRange, "append to a part", name, {{"value", std::to_string(size)}}});
    if (known.size_bytes != size) known.from_start = false;
    known.writing = true;
  }
  auto writer = files_.append(file);
  if (!writer) {
    const std::lock_guard lock(mutex_);
    known_[name].writing = false;
    return fail(std::move(writer.error()));
  }
  return Writer(*this, name, std::move(*writer), size);
}

Result<Hash> PartStore::hash_of(const std::string& name, const std::filesystem::path& file) {
  JAMBLINE_ASSIGN(const std::uint64_t size, files_.size_bytes(file));
  {
    const std::lock_guard lock(mutex_);
    const auto known = known_.find(name);
    if (known != known_.end() && known->second.from_start && known->second.size_bytes == size) {
      known->second.from_start = false;
      return known->second.hasher.finish();
    }
  }
  JAMBLINE_ASSIGN(const auto reader, files_.open(file));
  std::vector<std::uint8_t> buffer(part_piece_bytes);
  Hasher hasher;
  for (;;) {
    JAMBLINE_ASSIGN(const std::size_t got, reader->read(buffer));
    if (got == 0) break;
    hasher.update(std::span<const std::uint8_t>(buffer).first(got));
  }
  return hasher.finish();
}

Status PartStore::finish(const std::string& name, const BlobName& expected) {
  JAMBLINE_ASSIGN(const auto file, path_of(name));
  JAMBLINE_ASSIGN(const Hash found, hash_of(name, file));
  if (found != expected) {
    JAMBLINE_TRY(remove(name));
    return fail(Error{Code::BadHash, "finish a part", name, {{"found", found.hex()}}});
  }
  {
    JAMBLINE_ASSIGN(const auto writer, files_.append(file));
    JAMBLINE_TRY(writer->sync());
    JAMBLINE_TRY(writer->close());
  }
  JAMBLINE_TRY(whole_.adopt(file, expected));
  const std::lock_guard lock(mutex_);
  known_.erase(name);
  return {};
}

Status PartStore::remove(const std::string& name) {
  JAMBLINE_ASSIGN(const auto file, path_of(name));
  {
    const std::lock_guard lock(mutex_);
    known_.erase(name);
  }
  return files_.remove(file);
}

Result<std::vector<FolderItem>> PartStore::list() const {
  return files_.list(folder_);
}

}  // namespace jambline::blobs
