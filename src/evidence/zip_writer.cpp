#include "evidence/zip_writer.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <system_error>
#include <unistd.h>
#include <zip.h>

#include "blobs/file_layer.h"
#include "log/files.h"

namespace jambline::evidence {

namespace fs = std::filesystem;

namespace {
constexpr zip_uint16_t dos_midnight = 0;
constexpr zip_uint16_t dos_1980_01_01 = 0x21;  // the first day that a ZIP knows

Error write_error(zip_error_t* error, const fs::path& file) {
  if (zip_error_system_type(error) == ZIP_ET_SYS && zip_error_code_system(error) != 0)
    return blobs::system_error("write", file, zip_error_code_system(error));
  return Error{Code::FileFailed, "write", file.filename().string(), {}}.with(
      "cause", zip_error_strerror(error));
}

// A member whose bytes are made while it is written.
struct Pieced {
  std::function<ZipWriter::Pieces()> begin;
  std::optional<Error>& failed;
  ZipWriter::Pieces pieces{};
  std::string left{};
  std::size_t at = 0;
  zip_error_t error{};

  zip_int64_t read(void* to, zip_uint64_t most) {
    if (at == left.size()) {
      auto next = pieces();
      if (!next) {
        failed = std::move(next.error());
        zip_error_set(&error, ZIP_ER_INTERNAL, 0);
        return -1;
      }
      left = std::move(*next);
      at = 0;
    }
    const auto count = std::min<zip_uint64_t>(most, left.size() - at);
    std::memcpy(to, left.data() + at, count);
    at += count;
    return static_cast<zip_int64_t>(count);
  }

  static zip_int64_t answer(void* state, void* data, zip_uint64_t count, zip_source_cmd_t command) {
    auto& self = *static_cast<Pieced*>(state);
    switch (command) {
      case ZIP_SOURCE_OPEN:
        self.pieces = self.begin();
        self.left.clear();
        self.at = 0;
        return 0;
      case ZIP_SOURCE_READ:
        return self.read(data, count);
      case ZIP_SOURCE_CLOSE:
        return 0;
      case ZIP_SOURCE_STAT:
        zip_stat_init(static_cast<zip_stat_t*>(data));
        return sizeof(zip_stat_t);
      case ZIP_SOURCE_ERROR:
        return zip_error_to_data(&self.error, data, count);
      case ZIP_SOURCE_FREE:
        delete &self;
        return 0;
      case ZIP_SOURCE_SUPPORTS:
        return zip_source_make_command_bitmap(ZIP_SOURCE_OPEN, ZIP_SOURCE_READ, ZIP_SOURCE_CLOSE,
                                              ZIP_SOURCE_STAT, ZIP_SOURCE_ERROR, ZIP_SOURCE_FREE,
                                              -1);
      default:
        zip_error_set(&self.error, ZIP_ER_OPNOTSUPP, 0);
        return -1;
    }
  }
};

// Not every file system can rename without replacing; there the look before has to do.
int rename_to_new(const fs::path& from, const fs::path& to) {
  if (renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return 0;
  if (errno != EINVAL && errno != ENOSYS) return errno;
  std::error_code ignored;
  if (fs::exists(fs::symlink_status(to, ignored))) return EEXIST;
  return rename(from.c_str(), to.c_str()) == 0 ? 0 : errno;
}

Status sync_file(const fs::path& file) {
  const int opened = open(file.c_str(), O_RDONLY | O_CLOEXEC);
  const bool synced = opened >= 0 && fsync(opened) == 0;
  const int reason = errno;
  if (opened >= 0) close(opened);
  return synced ? Status() : Status(fail(blobs::system_error("write", file, reason)));
}
}  // namespace

struct ZipWriter::Open {
  fs::path target;
  fs::path part;
  zip_t* archive = nullptr;
  std::optional<Error> failed;  // what a member's pieces gave

  ~Open() {
    if (archive) zip_discard(archive);
  }
};

ZipWriter::ZipWriter(std::unique_ptr<Open> open) : open_(std::move(open)) {}
ZipWriter::ZipWriter(ZipWriter&&) noexcept = default;
ZipWriter::~ZipWriter() = default;

Result<ZipWriter> ZipWriter::create(fs::path target) {
  std::error_code ignored;
  if (fs::exists(fs::symlink_status(target, ignored)))
    return fail(Code::AlreadyDone, "write", target.filename().string());
  const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
  if (access(folder.c_str(), W_OK | X_OK) != 0)
    return fail(blobs::system_error("write", target, errno));
  auto open = std::make_unique<Open>();
  open->target = std::move(target);
  open->part = open->target;
  open->part += ".part";
  int reason = 0;
  open->archive = zip_open(open->part.c_str(), ZIP_CREATE | ZIP_TRUNCATE, &reason);
  if (!open->archive) {
    zip_error_t error;
    zip_error_init_with_code(&error, reason);
    Error out = write_error(&error, open->target);
    zip_error_fini(&error);
    return fail(std::move(out));
  }
  return ZipWriter(std::move(open));
}

Status ZipWriter::add(const std::string& name, void* source) {
  auto* made = static_cast<zip_source_t*>(source);
  const auto failed = [&] {
    return fail(write_error(zip_get_error(open_->archive), open_->target));
  };
  if (!made) return failed();
  const zip_int64_t index = zip_file_add(open_->archive, name.c_str(), made, ZIP_FL_ENC_UTF_8);
  if (index < 0) {
    zip_source_free(made);
    return failed();
  }
  const auto at = static_cast<zip_uint64_t>(index);
  if (zip_set_file_compression(open_->archive, at, ZIP_CM_STORE, 0) != 0 ||
      zip_file_set_dostime(open_->archive, at, dos_midnight, dos_1980_01_01, 0) != 0 ||
      zip_file_set_external_attributes(open_->archive, at, 0, ZIP_OPSYS_UNIX, 0100644U << 16U) != 0)
    return failed();
  return {};
}

Status ZipWriter::add_text(const std::string& name, std::string words) {
  if (words.empty()) return add(name, zip_source_buffer(open_->archive, nullptr, 0, 0));
  auto* copy = static_cast<char*>(malloc(words.size()));  // libzip frees it
  if (!copy) return fail(Code::FileFailed, "write", name);
  std::copy(words.begin(), words.end(), copy);
  zip_source_t* source = zip_source_buffer(open_->archive, copy, words.size(), 1);
  if (!source) free(copy);
  return add(name, source);
}

Status ZipWriter::add_file(const std::string& name, const fs::path& file) {
  return add(name, zip_source_file(open_->archive, file.c_str(), 0, 0));
}

Status ZipWriter::add_pieces(const std::string& name, std::function<Pieces()> begin) {
  auto pieced = std::make_unique<Pieced>(Pieced{std::move(begin), open_->failed});
  zip_error_init(&pieced->error);
  zip_source_t* source = zip_source_function(open_->archive, Pieced::answer, pieced.get());
  if (source) (void)pieced.release();
  return add(name, source);
}

Status ZipWriter::close(const std::stop_token& stop,
                        const std::function<void(double part_done)>& progress) {
  struct Watch {
    const std::stop_token& stop;
    const std::function<void(double)>& progress;
  } watch{stop, progress};
  zip_register_cancel_callback_with_state(
      open_->archive,
      [](zip_t*, void* state) { return static_cast<Watch*>(state)->stop.stop_requested() ? 1 : 0; },
      nullptr, &watch);
  if (progress)
    zip_register_progress_callback_with_state(
        open_->archive, 0.01,
        [](zip_t*, double part, void* state) { static_cast<Watch*>(state)->progress(part); },
        nullptr, &watch);
  if (zip_close(open_->archive) != 0) {
    Error error = write_error(zip_get_error(open_->archive), open_->target);
    if (open_->failed) error = std::move(*open_->failed);
    if (stop.stop_requested())
      error = Error{Code::Stopped, "write", open_->target.filename().string(), {}};
    zip_discard(open_->archive);
    open_->archive = nullptr;
    return fail(std::move(error));
  }
  open_->archive = nullptr;
  Status done = sync_file(open_->part);
  if (done)
    if (const int reason = rename_to_new(open_->part, open_->target); reason != 0)
      done = fail(reason == EEXIST
                      ? Error{Code::AlreadyDone, "write", open_->target.filename().string(), {}}
                      : blobs::system_error("write", open_->target, reason));
  if (!done) {
    (void)std::remove(open_->part.c_str());
    return done;
  }
  const fs::path folder =
      open_->target.has_parent_path() ? open_->target.parent_path() : fs::path(".");
  return log::sync_folder(folder);
}

}  // namespace jambline::evidence
