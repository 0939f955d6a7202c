#include "exchange/file_store.h"

#include <limits>

#include "engine/read_entry.h"

namespace jambline::exchange {

namespace {
constexpr std::uint64_t unknown_size = std::numeric_limits<std::uint64_t>::max();
}

PictureFiles::PictureFiles(engine::Engine& engine, log::EntryLog& log)
    : engine_(engine), log_(log), blobs_(engine.blobs_to_fill()) {}

Result<std::unique_ptr<PictureFiles>> PictureFiles::open(const std::filesystem::path& folder,
                                                         engine::Engine& engine,
                                                         log::EntryLog& log) {
  std::unique_ptr<PictureFiles> out(new PictureFiles(engine, log));
  if (out->blobs_) {
    JAMBLINE_ASSIGN(out->parts_,
                    blobs::PartStore::open(out->disk_, folder / "arriving", *out->blobs_));
  }
  return out;
}

void PictureFiles::read_names() {
  const auto add = [this](const Hash& file, std::optional<std::uint64_t> size_bytes, bool preview,
                          const JobId& job) {
    if (known_.insert(file).second) named_.push_back({file, size_bytes, preview, job});
  };
  // What cannot be read now is read the next time.
  (void)log_.said_after(read_, [&](const log::Said& said) {
    read_ = said.arrival;
    if (said.header.kind != entries::PictureTaken::kind) return true;
    const entries::Entry entry = engine::read_entry(said);
    const auto* taken = entry.payload.get_if<entries::PictureTaken>();
    if (!taken) return true;
    if (taken->facts.preview) add(*taken->facts.preview, std::nullopt, true, entry.subject);
    add(taken->facts.file, static_cast<std::uint64_t>(taken->facts.size_bytes), false,
        entry.subject);
    return true;
  });
}

bool PictureFiles::is_here(const Named& named) {
  if (here_bytes_.count(named.file)) return true;
  const auto size = blobs_->size_bytes(named.file);
  if (!size) return false;
  here_bytes_[named.file] = *size;
  return true;
}

std::vector<sync::FileItem> PictureFiles::here() {
  std::vector<sync::FileItem> out;
  if (!blobs_) return out;
  read_names();
  for (const Named& named : named_)
    if (is_here(named)) out.push_back({named.file, here_bytes_[named.file], named.preview});
  return out;
}

std::vector<sync::FileItem> PictureFiles::missing() {
  std::vector<sync::FileItem> out;
  if (!blobs_) return out;
  std::set<JobId> in_work;
  for (const auto& row : *engine_.snapshot()->floor) in_work.insert(row.job);
  std::vector<sync::FileItem> later;
  for (const Named& named : named_) {
    if (is_here(named)) continue;
    const sync::FileItem item{named.file, named.size_bytes.value_or(unknown_size), named.preview};
    if (wanted_.count(named.file))
      out.push_back(item);
    else if (named.preview || in_work.count(named.job))
      later.push_back(item);
  }
  out.insert(out.end(), later.begin(), later.end());
  return out;
}

Result<std::uint64_t> PictureFiles::part_bytes(const Hash& blob) {
  const auto size = parts_->size_bytes(blob.hex());
  if (size) return *size;
  if (size.error().code == Code::NoSuchFile) return 0;
  return fail(size.error());
}

Status PictureFiles::came(const Hash& blob) {
  wanted_.erase(blob);
  return parts_->finish(blob.hex(), blob);
}

Status PictureFiles::check(const Hash& blob) {
  return blobs_->check(blob);
}

void PictureFiles::want(const Hash& file) {
  wanted_.insert(file);
}

Result<net::Bodies::Read> PictureFiles::read(const sync::BlobPart& part) {
  JAMBLINE_ASSIGN(auto opened, blobs_->open_at(part.blob, part.offset));
  return Read([file = std::shared_ptr<blobs::FileReader>(std::move(opened))](
                  std::span<std::uint8_t> bytes) { return file->read(bytes); });
}

Result<net::Bodies::Write> PictureFiles::write(const sync::BlobPart& part) {
  const std::string name = part.blob.hex();
  if (part.offset == 0)
    if (const Status begun = parts_->begin(name); !begun && begun.error().code != Code::AlreadyDone)
      return fail(begun.error());
  JAMBLINE_ASSIGN(auto opened, parts_->append(name, part.offset));
  return Write([writer = std::make_shared<blobs::PartStore::Writer>(std::move(opened))](
                   std::span<const std::uint8_t> bytes) { return writer->write(bytes); });
}

}  // namespace jambline::exchange
