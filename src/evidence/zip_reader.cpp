#include "evidence/zip_reader.h"

#include <system_error>
#include <zip.h>

#include "blobs/file_layer.h"
#include "evidence/layout.h"

namespace jambline::evidence {

namespace fs = std::filesystem;

namespace {
Error no_zip(std::string cause) {
  return Error{Code::Malformed, "read", "bundle", {}}.with("cause", std::move(cause));
}

Error error_of(zip_error_t* error, const fs::path& file) {
  Error out = no_zip(zip_error_strerror(error));
  if (zip_error_system_type(error) == ZIP_ET_SYS && zip_error_code_system(error) != 0)
    out = blobs::system_error("read", file, zip_error_code_system(error));
  if (zip_error_code_zip(error) == ZIP_ER_NOENT) out.code = Code::NoSuchFile;
  zip_error_fini(error);
  return out;
}

using MakeSource = std::function<zip_source_t*(zip_error_t*)>;

Result<zip_t*> open_source(const MakeSource& make, const fs::path& file, int flags) {
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* source = make(&error);
  if (!source) return fail(error_of(&error, file));
  zip_t* archive = zip_open_from_source(source, flags, &error);
  if (archive) return archive;
  zip_source_free(source);
  // A name that is there twice is for the caller to name.
  if (zip_error_code_zip(&error) != ZIP_ER_EXISTS || (flags & ZIP_CHECKCONS) == 0)
    return fail(error_of(&error, file));
  zip_error_fini(&error);
  return open_source(make, file, ZIP_RDONLY);
}
}  // namespace

MemberReader::MemberReader(zip_file* file, std::string name)
    : file_(file), name_(std::move(name)) {}

void MemberReader::Close::operator()(zip_file* file) const {
  (void)zip_fclose(file);
}

Result<std::size_t> MemberReader::read(std::span<std::uint8_t> bytes) {
  const zip_int64_t got = zip_fread(file_.get(), bytes.data(), bytes.size());
  if (got >= 0) return static_cast<std::size_t>(got);
  const int what = zip_error_code_zip(zip_file_get_error(file_.get()));
  return fail(Error{what == ZIP_ER_CRC ? Code::BadHash : Code::FileFailed, "read", "member", {}}
                  .with("member", name_)
                  .with("cause", what == ZIP_ER_CRC ? "the ZIP's own checksum does not fit"
                                                    : "it cannot be read to its end"));
}

void ZipReader::Discard::operator()(zip* archive) const {
  zip_discard(archive);
}

Result<ZipReader> ZipReader::open(const fs::path& file) {
  std::error_code refused;
  const auto status = fs::status(file, refused);
  if (!fs::exists(status)) return fail(Code::NoSuchFile, "read", file.filename().string());
  if (!fs::is_regular_file(status)) return fail(no_zip("it is no file"));
  const auto file_bytes = fs::file_size(file, refused);
  if (refused) return fail(blobs::system_error("read", file, refused.value()));
  const auto source = [&](zip_error_t* error) {
    return zip_source_file_create(file.c_str(), 0, 0, error);
  };
  JAMBLINE_ASSIGN(zip_t* const archive, open_source(source, file, ZIP_RDONLY | ZIP_CHECKCONS));
  ZipReader out(archive);
  JAMBLINE_TRY(out.list(file_bytes));
  return out;
}

Result<ZipReader> ZipReader::open(std::span<const std::uint8_t> bytes) {
  const auto source = [&](zip_error_t* error) {
    return zip_source_buffer_create(bytes.data(), bytes.size(), 0, error);
  };
  JAMBLINE_ASSIGN(zip_t* const archive, open_source(source, "bundle", ZIP_RDONLY | ZIP_CHECKCONS));
  ZipReader out(archive);
  JAMBLINE_TRY(out.list(bytes.size()));
  return out;
}

Status ZipReader::list(std::uint64_t file_bytes) {
  const zip_int64_t count = zip_get_num_entries(archive_.get(), 0);
  if (count < 0 || static_cast<std::uint64_t>(count) > most_members)
    return fail(Error{Code::TooLarge, "read", "bundle", {}}.with("limit", "20000 members"));
  std::uint64_t left = file_bytes;
  for (zip_int64_t i = 0; i < count; ++i) {
    zip_stat_t about;
    zip_stat_init(&about);
    constexpr zip_uint64_t wanted = ZIP_STAT_NAME | ZIP_STAT_SIZE | ZIP_STAT_COMP_SIZE |
                                    ZIP_STAT_COMP_METHOD | ZIP_STAT_ENCRYPTION_METHOD;
    if (zip_stat_index(archive_.get(), static_cast<zip_uint64_t>(i), ZIP_FL_ENC_RAW, &about) != 0 ||
        (about.valid & wanted) != wanted)
      return fail(no_zip("its list of contents is damaged"));
    const bool as_it_is = about.comp_method == ZIP_CM_STORE &&
                          about.encryption_method == ZIP_EM_NONE && about.size == about.comp_size;
    if (about.comp_size > left) return fail(no_zip("its contents are longer than the file"));
    left -= about.comp_size;
    members_.push_back({about.name, about.size, as_it_is});
  }
  return {};
}

Result<MemberReader> ZipReader::read(std::size_t member) const {
  zip_file_t* file = zip_fopen_index(archive_.get(), member, 0);
  if (!file)
    return fail(Error{Code::FileFailed, "read", "member", {}}
                    .with("member", members_[member].name)
                    .with("cause", "it cannot be opened"));
  return MemberReader(file, members_[member].name);
}

}  // namespace jambline::evidence
