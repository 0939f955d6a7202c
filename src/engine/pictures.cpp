#include "engine/pictures.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <future>
#include <map>
#include <set>

#include "base/json.h"
#include "engine/read_entry.h"

namespace jambline::engine {

namespace {

struct Meant {
  JobId job;
  PersonId person;
  entries::PictureTaken taken;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "job"}, self.job);
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "taken"}, self.taken);
  }
};

struct Named {
  std::vector<NamedPicture> pictures;
  std::map<Hash, NamedPicture> previews;  // of which picture
  std::map<Hash, NamedPicture> files() const {
    std::map<Hash, NamedPicture> out;
    for (const auto& one : pictures) out.emplace(one.file, one);
    out.insert(previews.begin(), previews.end());
    return out;
  }
};

// Pictures that were taken back, or are refused, are named too: what was once kept is no leftover.
Result<Named> named_pictures(const std::filesystem::path& folder) {
  JAMBLINE_ASSIGN(const auto log, log::EntryLog::open(folder, log::OpenMode::ReadOnly, {}));
  Named out;
  JAMBLINE_TRY(log->said_after(0, [&](const log::Said& said) {
    if (said.header.kind != entries::PictureTaken::kind) return true;
    const entries::Entry entry = read_entry(said);
    if (const auto* taken = entry.payload.get_if<entries::PictureTaken>()) {
      NamedPicture one{entry.subject, taken->picture, taken->facts.file, taken->place};
      out.pictures.push_back(one);
      if (!taken->facts.preview) return true;
      one.file = *taken->facts.preview;
      out.previews.emplace(one.file, one);
    }
    return true;
  }));
  return out;
}

std::optional<Meant> read_meant(const std::string& text) {
  Meant out;
  if (text.empty() || !read_json(text, out).has_value()) return std::nullopt;
  return out;
}

}  // namespace

std::string meant_text(const acts::TakePicture& command, const PersonId& person) {
  return to_json(Meant{command.job,
                       person,
                       {{}, command.facts, command.from, command.place, command.kept_though_poor}});
}

std::optional<Hash> meant_preview(const std::string& meant) {
  const auto read = read_meant(meant);
  return read ? read->taken.facts.preview : std::nullopt;
}

std::string preview_form(const Hash& preview) {
  return "preview " + preview.hex();
}

std::string meant_form(const Hash& file) {
  return "picture " + file.hex();
}

Result<PictureCheck> check_pictures(const std::filesystem::path& folder,
                                    const blobs::BlobStore* store, const std::stop_token& stop,
                                    const std::function<void(double)>& progress) {
  PictureCheck out;
  JAMBLINE_ASSIGN(const auto named, named_pictures(folder));
  const auto once = named.files();
  for (const auto& [file, picture] : once) {
    if (stop.stop_requested()) {
      out.stopped = true;
      return out;
    }
    ++out.files;
    if (!store) {
      out.not_here.push_back(picture);
      continue;
    }
    if (const auto size_bytes = store->size_bytes(file)) out.bytes += *size_bytes;
    if (auto checked = store->check(file); !checked) {
      if (checked.error().code == Code::NoSuchFile)
        out.not_here.push_back(picture);
      else if (checked.error().code == Code::BadHash)
        out.damaged.push_back(picture);
      else
        return fail(std::move(checked.error()));
    }
    if (progress) progress(static_cast<double>(out.files) / static_cast<double>(once.size()));
  }
  return out;
}

Pictures::Pictures(std::filesystem::path folder, std::shared_ptr<blobs::Files> files)
    : folder_(std::move(folder)),
      files_(files ? std::move(files) : std::make_shared<blobs::PosixFiles>()) {}

Status Pictures::open(bool to_write) {
  auto opened = to_write ? blobs::BlobStore::open(*files_, folder_ / "blobs")
                         : blobs::BlobStore::open_read_only(*files_, folder_ / "blobs");
  if (!opened) return to_write ? Status(fail(std::move(opened.error()))) : Status();
  store_ = std::move(*opened);
  return {};
}

void Pictures::begin_keeping(const job::PictureFacts& facts) {
  const std::lock_guard lock(mutex_);
  being_kept_.push_back(facts.file);
  if (facts.preview) being_kept_.push_back(*facts.preview);
}

void Pictures::end_keeping(const job::PictureFacts& facts) {
  const std::lock_guard lock(mutex_);
  const auto end = [&](const Hash& file) {
    const auto one = std::find(being_kept_.begin(), being_kept_.end(), file);
    if (one != being_kept_.end()) being_kept_.erase(one);
  };
  end(facts.file);
  if (facts.preview) end(*facts.preview);
}

Status Pictures::put_one(const std::vector<std::uint8_t>& bytes, const Hash& file) {
  JAMBLINE_ASSIGN(auto writer, store_->begin());
  JAMBLINE_TRY(writer.write(bytes));
  JAMBLINE_TRY(writer.finish(file));
  return {};
}

Status Pictures::put(const std::vector<std::uint8_t>& bytes,
                     const std::vector<std::uint8_t>* preview, const job::PictureFacts& facts) {
  if (!store_) return fail(Code::ReadOnly, "keep a picture", "blobs");
  if (!preview || !facts.preview) return put_one(bytes, facts.file);
  JAMBLINE_ASSIGN(const bool was_there, store_->has(*facts.preview));
  JAMBLINE_TRY(put_one(*preview, *facts.preview));
  Status put = put_one(bytes, facts.file);
  if (!put && !was_there) (void)store_->remove(*facts.preview);  // else it is there as before
  return put;
}

Status Pictures::are_there(const std::vector<acts::Draft>& drafts) const {
  for (const auto& draft : drafts) {
    const auto* taken = draft.payload.get_if<entries::PictureTaken>();
    if (!taken) continue;
    const Hash& file = taken->facts.file;
    if (!store_) return fail(Code::NoSuchFile, "keep a picture", file.hex());
    JAMBLINE_ASSIGN(bool there, store_->has(file));
    if (there && taken->facts.preview) {
      JAMBLINE_ASSIGN(there, store_->has(*taken->facts.preview));
    }
    if (!there) return fail(Code::NoSuchFile, "keep a picture", file.hex());
  }
  return {};
}

// What is being kept is asked after the files are listed and before the log is read: an entry that
// comes in between is on its way or in the log.
Result<std::vector<LeftoverPicture>> Pictures::leftovers(const Draft& draft) const {
  std::vector<LeftoverPicture> out;
  if (!store_) return out;
  JAMBLINE_ASSIGN(const auto files, store_->list());
  if (files.empty()) return out;
  std::set<Hash> known;
  {
    const std::lock_guard lock(mutex_);
    known.insert(being_kept_.begin(), being_kept_.end());
  }
  JAMBLINE_ASSIGN(const auto named, named_pictures(folder_));
  for (const auto& [file, picture] : named.files()) known.insert(file);
  for (const Hash& file : files) {
    const bool is_preview = !draft(preview_form(file)).empty();
    if (is_preview || known.count(file) != 0) continue;
    LeftoverPicture left;
    left.file = file;
    JAMBLINE_ASSIGN(left.size_bytes, store_->size_bytes(file));
    if (const auto meant = read_meant(draft(meant_form(file)))) {
      left.meant = acts::TakePicture{meant->job, meant->taken.facts, meant->taken.from,
                                     meant->taken.place, meant->taken.kept_though_poor};
      left.person = meant->person;
    }
    out.push_back(std::move(left));
  }
  return out;
}

namespace {

constexpr std::uint64_t most_bytes = 64U << 20U;  // of one picture

// Copies on another thread and lets this one do something else.
Result<blobs::CopyReport> copy(const blobs::BlobStore& from, blobs::BlobStore& to,
                               const std::vector<Hash>& names, const std::stop_token& stop,
                               const Pictures::Meanwhile& meanwhile) {
  std::atomic<double> part_done{0};
  auto copying = std::async(std::launch::async, [&] {
    return blobs::copy_blobs(from, to, names, stop, [&](double part) { part_done = part; });
  });
  while (copying.wait_for(std::chrono::milliseconds(2)) != std::future_status::ready)
    if (meanwhile) meanwhile(part_done);
  auto report = copying.get();
  if (report && report->stopped) return fail(Code::Stopped, "copy pictures", "shop folder");
  return report;
}

}  // namespace

Status Pictures::copy_out(const std::filesystem::path& folder, const std::stop_token& stop,
                          const Meanwhile& meanwhile) const {
  JAMBLINE_ASSIGN(const auto named, named_pictures(folder_));
  if (named.pictures.empty() || !store_) return {};
  std::set<Hash> names;
  for (const auto& [file, picture] : named.files()) names.insert(file);
  blobs::PosixFiles files;
  JAMBLINE_ASSIGN(const auto to, blobs::BlobStore::open(files, folder / "blobs"));
  JAMBLINE_TRY(copy(*store_, *to, {names.begin(), names.end()}, stop, meanwhile));
  return {};
}

Status Pictures::copy_in(const std::filesystem::path& folder, const std::stop_token& stop,
                         const Meanwhile& meanwhile, Refused& refused) {
  blobs::PosixFiles files;
  const auto from = blobs::BlobStore::open_read_only(files, folder / "blobs");
  if (!from) {
    if (from.error().code == Code::NoSuchFile) return {};
    return fail(from.error());
  }
  JAMBLINE_ASSIGN(const auto named, named_pictures(folder_));
  if (named.pictures.empty()) return {};
  if (!store_) return fail(Code::ReadOnly, "keep a picture", "blobs");
  std::set<Hash> names;
  for (const auto& [file, picture] : named.files()) {
    JAMBLINE_ASSIGN(const bool here, store_->has(file));
    const auto size_bytes = (*from)->size_bytes(file);
    if (here || !size_bytes) continue;
    if (*size_bytes <= most_bytes)
      names.insert(file);
    else
      refused.emplace_back("blobs/" + file.hex(), Error{Code::TooLarge, "import", file.hex(), {}});
  }
  JAMBLINE_ASSIGN(const auto report,
                  copy(**from, *store_, {names.begin(), names.end()}, stop, meanwhile));
  for (const auto& name : report.damaged)
    refused.emplace_back("blobs/" + name.hex(), Error{Code::BadHash, "import", name.hex(), {}});
  return {};
}

Status Pictures::drop(const Hash& file, const std::string& meant) {
  if (!store_) return fail(Code::ReadOnly, "drop a picture", "blobs");
  JAMBLINE_ASSIGN(const auto named, named_pictures(folder_));
  const auto files = named.files();
  if (files.count(file) != 0) return fail(Code::NotAllowed, "drop a picture", file.hex());
  JAMBLINE_TRY(store_->remove(file));
  const auto preview = meant_preview(meant);
  if (!preview || files.count(*preview) != 0) return {};
  const Status gone = store_->remove(*preview);
  return gone || gone.error().code == Code::NoSuchFile ? Status() : gone;
}

}  // namespace jambline::engine
