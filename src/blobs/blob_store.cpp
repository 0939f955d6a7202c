#include "blobs/blob_store.h"

#include <algorithm>
#include <array>

namespace jambline::blobs {
namespace {

using Path = std::filesystem::path;
constexpr std::size_t piece_bytes = std::size_t{256} * 1024;

Error bad_hash(const Path& file, const BlobName& found) {
  return Error{Code::BadHash, "check_blob", file.string(), {{"found", found.hex()}}};
}

Path incoming(const Path& folder) {
  return folder / "incoming";
}

}  // namespace

// The writer.

BlobStore::Writer::Writer(BlobStore& store, Path temp, std::unique_ptr<FileWriter> file)
    : store_(&store), temp_(std::move(temp)), file_(std::move(file)) {}

BlobStore::Writer::~Writer() {
  drop();
}

void BlobStore::Writer::drop() {
  if (!file_) return;
  file_.reset();
  // A temp file that cannot be removed now is removed at the next open.
  static_cast<void>(store_->files_.remove(temp_));
}

Status BlobStore::Writer::note(Status status) {
  if (!status) {
    ended_ = status.error();
    drop();
  }
  return status;
}

Status BlobStore::Writer::write(std::span<const std::uint8_t> bytes) {
  if (ended_) return fail(*ended_);
  hasher_.update(bytes);
  return note(file_->write(bytes));
}

Result<BlobName> BlobStore::Writer::finish(const std::optional<BlobName>& expected) {
  if (ended_) return fail(*ended_);
  auto name = hasher_.finish();
  if (!name) JAMBLINE_TRY(note(fail(name.error())));
  if (expected && *name != *expected)
    JAMBLINE_TRY(note(fail(bad_hash(store_->path_of(*expected), *name))));
  JAMBLINE_TRY(note(file_->sync()));
  JAMBLINE_TRY(note(file_->close()));
  JAMBLINE_TRY(note(store_->publish(temp_, *name)));
  file_.reset();
  ended_ = Error{Code::AlreadyDone, "finish_blob", name->hex(), {}};
  return *name;
}

// Opening.

BlobStore::BlobStore(Files& files, Path folder, bool writable)
    : files_(files), folder_(std::move(folder)), writable_(writable) {}

Result<std::unique_ptr<BlobStore>> BlobStore::open(Files& files, Path folder) {
  std::unique_ptr<BlobStore> store(new BlobStore(files, std::move(folder), true));
  JAMBLINE_TRY(store->prepare());
  return store;
}

Result<std::unique_ptr<BlobStore>> BlobStore::open_read_only(Files& files, Path folder) {
  std::unique_ptr<BlobStore> store(new BlobStore(files, std::move(folder), false));
  JAMBLINE_TRY(files.list(store->folder_));
  return store;
}

Status BlobStore::prepare() {
  JAMBLINE_TRY(make_durable_folder(folder_));
  JAMBLINE_TRY(make_durable_folder(incoming(folder_)));
  JAMBLINE_ASSIGN(const auto leftovers, files_.list(incoming(folder_)));
  for (const FolderItem& item : leftovers)
    if (item.kind == FolderItem::Kind::File)
      JAMBLINE_TRY(files_.remove(incoming(folder_) / item.name));
  return {};
}

// A folder that is there may still be one whose own name was never synced: the first use in a
// process always syncs its parent.
Status BlobStore::make_durable_folder(const Path& folder) {
  {
    const std::lock_guard lock(mutex_);
    if (durable_folders_.count(folder) != 0) return {};
  }
  JAMBLINE_TRY(files_.make_folder(folder));
  const Path parent = folder.has_parent_path() ? folder.parent_path() : Path(".");
  JAMBLINE_TRY(files_.sync_folder(parent));
  const std::lock_guard lock(mutex_);
  durable_folders_.insert(folder);
  return {};
}

// Writing.

Path BlobStore::path_of(const BlobName& name) const {
  const std::string hex = name.hex();
  return folder_ / hex.substr(0, 2) / hex.substr(2, 2) / hex;
}

Result<BlobStore::Writer> BlobStore::begin() {
  if (!writable_) return fail(Code::ReadOnly, "store_blob", folder_.string());
  Path temp;
  {
    const std::lock_guard lock(mutex_);
    temp = incoming(folder_) / std::to_string(++last_temp_);
  }
  JAMBLINE_ASSIGN(auto file, files_.create(temp));
  return Writer(*this, std::move(temp), std::move(file));
}

Result<BlobName> BlobStore::put(std::span<const std::uint8_t> bytes) {
  JAMBLINE_ASSIGN(auto writer, begin());
  JAMBLINE_TRY(writer.write(bytes));
  return writer.finish();
}

Status BlobStore::adopt(const Path& file, const BlobName& name) {
  if (!writable_) return fail(Code::ReadOnly, "store_blob", folder_.string());
  return publish(file, name);
}

Status BlobStore::publish(const Path& temp, const BlobName& name) {
  const Path file = path_of(name);
  JAMBLINE_TRY(make_durable_folder(file.parent_path().parent_path()));
  JAMBLINE_TRY(make_durable_folder(file.parent_path()));
  JAMBLINE_TRY(files_.rename(temp, file));
  return files_.sync_folder(file.parent_path());
}

// Reading.

Status BlobStore::read(const BlobName& name, const Piece& piece) const {
  const Path file = path_of(name);
  JAMBLINE_ASSIGN(const auto reader, files_.open(file));
  std::vector<std::uint8_t> buffer(piece_bytes);
  Hasher hasher;
  for (;;) {
    JAMBLINE_ASSIGN(const std::size_t got, reader->read(buffer));
    if (got == 0) break;
    const auto bytes = std::span<const std::uint8_t>(buffer).first(got);
    hasher.update(bytes);
    if (piece) JAMBLINE_TRY(piece(bytes));
  }
  JAMBLINE_ASSIGN(const Hash found, hasher.finish());
  if (found != name) return fail(bad_hash(file, found));
  return {};
}

Result<std::vector<std::uint8_t>> BlobStore::get(const BlobName& name,
                                                 std::uint64_t limit_bytes) const {
  std::vector<std::uint8_t> all;
  JAMBLINE_TRY(read(name, [&](std::span<const std::uint8_t> bytes) -> Status {
    if (all.size() + bytes.size() > limit_bytes) {
      return fail(Error{Code::TooLarge,
                        "read_blob",
                        path_of(name).string(),
                        {{"limit_bytes", std::to_string(limit_bytes)}}});
    }
    all.insert(all.end(), bytes.begin(), bytes.end());
    return {};
  }));
  return all;
}

Result<std::unique_ptr<FileReader>> BlobStore::open_at(const BlobName& name,
                                                       std::uint64_t offset) const {
  JAMBLINE_ASSIGN(auto reader, files_.open(path_of(name)));
  if (offset > 0) JAMBLINE_TRY(reader->seek(offset));
  return reader;
}

Status BlobStore::check(const BlobName& name) const {
  return read(name, nullptr);
}

Result<bool> BlobStore::has(const BlobName& name) const {
  const auto size = files_.size_bytes(path_of(name));
  if (size) return true;
  if (size.error().code == Code::NoSuchFile) return false;
  return fail(size.error());
}

Result<std::uint64_t> BlobStore::size_bytes(const BlobName& name) const {
  return files_.size_bytes(path_of(name));
}

Result<std::uint64_t> BlobStore::free_bytes() const {
  return files_.free_bytes(folder_);
}

// Every file at the place its name asks for is a blob; all else but incoming/ is strange.
Status BlobStore::walk(std::vector<Found>& found, std::vector<std::string>* strange) const {
  const auto note = [&](const Path& path) {
    if (strange) strange->push_back(path.lexically_relative(folder_).string());
  };
  const auto is_pair = [](const FolderItem& item) {
    std::array<std::uint8_t, 1> byte{};
    return item.kind == FolderItem::Kind::Folder && item.name.size() == 2 &&
           from_hex(item.name, byte) && to_hex(byte) == item.name;
  };
  JAMBLINE_ASSIGN(const auto outer, files_.list(folder_));
  for (const FolderItem& first : outer) {
    const Path above = folder_ / first.name;
    if (first.kind == FolderItem::Kind::Folder && above == incoming(folder_)) continue;
    if (!is_pair(first)) {
      note(above);
      continue;
    }
    JAMBLINE_ASSIGN(const auto inner, files_.list(above));
    for (const FolderItem& second : inner) {
      const Path below = above / second.name;
      if (!is_pair(second)) {
        note(below);
        continue;
      }
      JAMBLINE_ASSIGN(const auto items, files_.list(below));
      for (const FolderItem& item : items) {
        const auto name = BlobName::parse(item.name);
        if (item.kind == FolderItem::Kind::File && name && path_of(*name) == below / item.name)
          found.push_back({*name, item.size_bytes});
        else
          note(below / item.name);
      }
    }
  }
  return {};
}

Result<std::vector<BlobName>> BlobStore::list() const {
  std::vector<Found> found;
  JAMBLINE_TRY(walk(found, nullptr));
  std::vector<BlobName> names;
  names.reserve(found.size());
  for (const Found& one : found) names.push_back(one.name);
  std::sort(names.begin(), names.end());
  return names;
}

Result<ScrubReport> BlobStore::scrub(const std::stop_token& stop, const Progress& progress) const {
  std::vector<Found> found;
  ScrubReport report;
  JAMBLINE_TRY(walk(found, &report.strange));
  for (const Found& one : found) {
    if (stop.stop_requested()) {
      report.stopped = true;
      return report;
    }
    const Status whole = check(one.name);
    if (!whole && whole.error().code == Code::BadHash)
      report.damaged.push_back(one.name);
    else if (!whole)
      report.unreadable.push_back(whole.error());
    report.bytes += one.size_bytes;
    ++report.blobs;
    if (progress) progress(static_cast<double>(report.blobs) / static_cast<double>(found.size()));
  }
  return report;
}

// From one store into another.

Result<CopyReport> copy_blobs(const BlobStore& from, BlobStore& to, std::span<const BlobName> names,
                              const std::stop_token& stop, const Progress& progress) {
  if (!to.writable_) return fail(Code::ReadOnly, "copy_blobs", to.folder_.string());
  CopyReport report;
  std::size_t done = 0;
  for (const BlobName& name : names) {
    if (stop.stop_requested()) {
      report.stopped = true;
      return report;
    }
    const Status there = to.check(name);
    if (there) {
      // A program that put it here may have been killed before its name was durable.
      const Path folder = to.path_of(name).parent_path();
      JAMBLINE_TRY(to.make_durable_folder(folder.parent_path()));
      JAMBLINE_TRY(to.make_durable_folder(folder));
      JAMBLINE_TRY(to.files_.sync_folder(folder));
      ++report.already_there;
    } else {
      JAMBLINE_ASSIGN(auto writer, to.begin());
      std::optional<Error> refused;  // by `to`
      const Status whole = from.read(name, [&](std::span<const std::uint8_t> bytes) -> Status {
        Status written = writer.write(bytes);
        if (!written) refused = written.error();
        return written;
      });
      if (refused) return fail(*refused);
      if (whole) {
        JAMBLINE_TRY(writer.finish(name));
        ++report.copied;
      } else if (whole.error().code == Code::NoSuchFile) {
        report.missing.push_back(name);
      } else {
        report.damaged.push_back(name);
      }
    }
    ++done;
    if (progress) progress(static_cast<double>(done) / static_cast<double>(names.size()));
  }
  return report;
}

// Removing.

Status BlobStore::remove(const BlobName& name) {
  if (!writable_) return fail(Code::ReadOnly, "remove_blob", name.hex());
  const Path file = path_of(name);
  JAMBLINE_TRY(files_.remove(file));
  return files_.sync_folder(file.parent_path());
}

}  // namespace jambline::blobs
