#include "evidence/write_bundle.h"

#include <algorithm>
#include <map>
#include <set>
#include <system_error>
#include <tuple>

#include "evidence/bundled_texts.h"
#include "evidence/layout.h"
#include "evidence/zip_writer.h"

namespace jambline::evidence {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t slice_records = 512;

// The records of one device, read from the log while they are written.
class ChainPieces {
 public:
  ChainPieces(log::EntryLog& log, const DeviceId& device, const JobId& job,
              const std::stop_token& stop)
      : log_(&log), device_(device), job_(job), stop_(&stop) {}

  Result<std::string> operator()() {
    if (stop_->stop_requested()) return fail(Code::Stopped, "read", "log.db");
    std::string out;
    for (std::size_t count = slice_records; out.empty() && count != 0;) {
      count = 0;
      if (next_seq_ <= seal::last_seq)
        JAMBLINE_TRY(log_->read_device(device_, next_seq_, [&](const log::Stored& stored) {
          out += held_over(Form::Bare);
          held_ = stored.entry;
          // Also where somebody wrote another number into the header: it goes on and ends.
          next_seq_ = std::max(next_seq_, stored.entry.header.seq) + 1;
          return ++count < slice_records;
        }));
      // The last one of all is known as such when nothing comes after it.
      if (count == 0) out += held_over(Form::Signed);
    }
    return out;
  }

 private:
  std::string held_over(Form form) {
    if (!held_) return {};
    const auto& header = held_->header;
    const bool whole = seal::is_membership(header.kind) ||
                       header.kind == seal::kind::payload_erased || header.subject == job_;
    std::string out = encode_record(whole ? Form::Whole : form, *held_);
    held_.reset();
    return out;
  }

  log::EntryLog* log_;
  DeviceId device_;
  JobId job_;
  const std::stop_token* stop_;
  std::uint64_t next_seq_ = 1;
  std::optional<seal::SealedEntry> held_;
};

struct JobParts {
  std::map<DeviceId, std::set<std::uint64_t>> entries;
  std::set<Hash> pictures;
};

Result<JobParts> parts_of(log::EntryLog& log, const JobId& job) {
  JobParts out;
  JAMBLINE_TRY(log.said_of(job, [&](const log::Said& said) {
    out.entries[said.header.device].insert(said.header.seq);
    if (said.header.kind == picture_kind && !said.erased)
      if (const auto picture = named_picture(said.payload)) out.pictures.insert(*picture);
    return true;
  }));
  if (out.entries.empty()) return fail(Code::Unknown, "bundle", job.hex());
  return out;
}

// Of each device and hub the first receipt that covers each entry of the job, for it says when the
// hub had it, and the furthest of all.
std::vector<seal::Receipt> telling(const std::vector<seal::Receipt>& all, const JobParts& job) {
  std::map<std::tuple<DeviceId, seal::Key, seal::Epoch>, std::map<std::uint64_t, std::size_t>> by;
  for (std::size_t i = 0; i < all.size(); ++i)
    by[{all[i].device, all[i].hub, all[i].epoch}].emplace(all[i].seq, i);
  std::set<std::size_t> wanted;
  for (const auto& [of, receipts] : by) {
    wanted.insert(receipts.rbegin()->second);
    if (const auto entries = job.entries.find(std::get<0>(of)); entries != job.entries.end())
      for (const std::uint64_t seq : entries->second)
        if (const auto first = receipts.lower_bound(seq); first != receipts.end())
          wanted.insert(first->second);
  }
  std::vector<seal::Receipt> out;
  out.reserve(wanted.size());
  for (const std::size_t i : wanted) out.push_back(all[i]);
  return out;
}

Status add_picture(ZipWriter& zip, const blobs::BlobStore* pictures, const Hash& picture,
                   const BundleWanted& wanted, BundleWritten& out) {
  Status there = pictures ? pictures->check(picture)
                          : Status(fail(Code::NoSuchFile, "bundle", wanted.to.filename().string()));
  if (there) {
    ++out.pictures;
    std::array<std::uint8_t, 4> first{};
    JAMBLINE_ASSIGN(const auto reader, pictures->open_at(picture, 0));
    JAMBLINE_ASSIGN(const std::size_t got, reader->read(first));
    return zip.add_file(picture_name(picture, std::span(first).first(got)),
                        pictures->path_of(picture));
  }
  Error& error = there.error();
  const bool is_gone = error.code == Code::NoSuchFile || error.code == Code::BadHash;
  if (is_gone && wanted.without_missing) {
    out.missing.push_back(picture);
    return {};
  }
  if (!is_gone) return fail(std::move(error));
  return fail(Error{error.code, "bundle", "picture", {}}.with("picture", picture.hex()));
}
}  // namespace

Result<BundleWritten> write_bundle(log::EntryLog& log, const blobs::BlobStore* pictures,
                                   const BundleWanted& wanted, const std::stop_token& stop,
                                   const std::function<void(double part_done)>& progress) {
  BundleWritten out;
  JAMBLINE_ASSIGN(const JobParts job, parts_of(log, wanted.job));
  for (const auto& [device, entries] : job.entries) out.entries += entries.size();
  JAMBLINE_ASSIGN(auto zip, ZipWriter::create(wanted.to));
  JAMBLINE_TRY(zip.add_text(std::string(report_name), wanted.report));
  for (const BundledText& text : bundled_texts())
    JAMBLINE_TRY(zip.add_text(std::string(text.name), std::string(text.words)));

  // Receipts before chains: whatever they name is there by then, also beside a running program.
  JAMBLINE_ASSIGN(const auto all_receipts, log.receipts());
  std::string receipts;
  for (const auto& receipt : telling(all_receipts, job)) receipts += seal::encode(receipt);
  out.receipts = receipts.size() / seal::receipt_bytes;
  JAMBLINE_TRY(zip.add_text(std::string(receipts_name), std::move(receipts)));

  std::set<DeviceId> devices;
  for (const auto& head : log.heads()) devices.insert(head.device);
  for (const auto& [device, entries] : job.entries) devices.insert(device);
  for (const DeviceId& device : devices)
    JAMBLINE_TRY(zip.add_pieces(chain_name(device), [&log, device, job_id = wanted.job, &stop] {
      return ChainPieces(log, device, job_id, stop);
    }));
  for (const Hash& picture : job.pictures) {
    if (stop.stop_requested()) return fail(Code::Stopped, "bundle", "pictures");
    JAMBLINE_TRY(add_picture(zip, pictures, picture, wanted, out));
  }
  JAMBLINE_TRY(zip.close(stop, progress));
  std::error_code refused;
  out.bytes = fs::file_size(wanted.to, refused);
  return out;
}

}  // namespace jambline::evidence
