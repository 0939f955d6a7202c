// Files of a hub's shop: tus 1.0 (core, creation, termination), what is missing, and downloads.
#include "sync/handlings.h"
#include "sync/limits.h"
#include "sync/tus.h"

namespace jambline::sync {

namespace {
constexpr std::int64_t longest_drain_ms = 2'000;
constexpr std::int64_t look_again_ms = 20;

// Every answer under files/ names the version.
Response with_version(Response response) {
  response.headers.push_back({"Tus-Resumable", std::string(tus_version)});
  return response;
}
Response tus_refused(const Problem& why) {
  return with_version(response_of(why));
}

Response at_offset(int status, std::uint64_t offset) {
  return with_version({status, {{"Upload-Offset", std::to_string(offset)}}, {}});
}

Response other_offset(std::uint64_t offset) {
  Problem out = problem(Refusal::OtherOffset);
  out.limit = offset;
  Response response = tus_refused(out);
  response.headers.push_back({"Upload-Offset", std::to_string(offset)});
  return response;
}

// Pieces go to the disk as they come. A cut connection leaves what had come.
class UploadHandling final : public Handling {
 public:
  UploadHandling(HubFiles& files, UploadId upload, std::unique_ptr<FileSink> sink,
                 std::shared_ptr<std::atomic<bool>> taken_over)
      : files_(files),
        upload_(upload),
        sink_(std::move(sink)),
        began_at_(sink_->size_bytes()),
        taken_over_(std::move(taken_over)) {}

  std::uint64_t most_body_bytes() const override { return upload_.size_bytes - began_at_; }
  bool beside_the_shop() const override { return true; }

  std::optional<Response> take(std::span<const std::uint8_t> piece) override {
    if (*taken_over_) return other_offset(sink_->size_bytes());
    if (sink_->size_bytes() + piece.size() > upload_.size_bytes)
      return tus_refused(problem(Refusal::TooLarge));
    if (const Status written = sink_->write(piece); !written)
      return tus_refused(problem_of(written.error()));
    return std::nullopt;
  }

  Outcome finish() override {
    const std::uint64_t size = sink_->size_bytes();
    sink_.reset();
    if (size == upload_.size_bytes)
      if (const Status done = files_.finish(upload_); !done)
        return tus_refused(problem_of(done.error()));
    return at_offset(204, size);
  }

 private:
  HubFiles& files_;
  UploadId upload_;
  std::unique_ptr<FileSink> sink_;
  std::uint64_t began_at_;
  std::shared_ptr<std::atomic<bool>> taken_over_;
};
}  // namespace

std::unique_ptr<Handling> HubShop::begin_files(const Request& head, const Target& target) {
  if (target.path == Path::Blob) {
    return std::make_unique<Whole>(0, [this, head, blob_name = target.blob](const std::string&) {
      return blob(head, blob_name);
    });
  }
  if (head.method == Method::Options)
    return answered(with_version({204,
                                  {{"Tus-Version", std::string(tus_version)},
                                   {"Tus-Extension", std::string(tus_extensions)},
                                   {"Tus-Max-Size", std::to_string(most_blob_bytes)}},
                                  {}}));
  if (head.header("Tus-Resumable") != tus_version) {
    Response out = tus_refused(problem(Refusal::OtherTusVersion));
    out.headers.push_back({"Tus-Version", std::string(tus_version)});
    return answered(out);
  }
  if (target.path == Path::Files) return answered(create(head));
  if (head.method == Method::Head) return begin_upload_head(target.upload);
  if (head.method == Method::Delete) return answered(drop_upload(target.upload));
  return begin_upload(head, target.upload);
}

Response HubShop::create(const Request& head) {
  const auto size = decimal(head.header("Upload-Length"));
  if (!size) return tus_refused(problem(Refusal::BadRequest, "Upload-Length"));
  if (*size > most_blob_bytes) {
    Problem out = problem(Refusal::TooLarge);
    out.limit = most_blob_bytes;
    return tus_refused(out);
  }
  const auto named = metadata_value(head.header("Upload-Metadata"), "sha256");
  UploadId upload;
  upload.size_bytes = *size;
  parts_.random.fill(upload.random.bytes);
  if (!named || !from_hex(*named, upload.blob.bytes))
    return tus_refused(problem(Refusal::BadRequest, "sha256"));
  const auto there = parts_.files.has(upload.blob);
  if (!there) return tus_refused(problem_of(there.error()));
  if (!*there) {
    if (const Status begun = parts_.files.begin(upload); !begun)
      return tus_refused(problem_of(begun.error()));
    if (upload.size_bytes == 0)
      if (const Status done = parts_.files.finish(upload); !done)
        return tus_refused(problem_of(done.error()));
  }
  Target place;
  place.path = Path::File;
  place.shop = parts_.storage.shop();
  place.upload = upload;
  Response out = with_version({201, {{"Location", target_of(place)}}, {}});
  if (*there) out.headers.push_back({"Upload-Offset", std::to_string(*size)});
  return out;
}

// What a connection had sent before it was cut may still be coming in: who asks how far it is waits
// for that, and after a while takes the other for dead.
std::unique_ptr<Handling> HubShop::begin_upload_head(const UploadId& upload) {
  return std::make_unique<Whole>(
      0, [this, upload, began = std::optional<std::int64_t>()](const std::string&) mutable {
        if (!began) began = forward_ms();
        const auto other = uploading_.find(upload.text());
        const bool coming = other != uploading_.end() && !other->second.expired();
        if (coming && forward_ms() < *began + longest_drain_ms)
          return Outcome(Waiting{look_again_ms});
        return Outcome(upload_head(upload));
      });
}

Response HubShop::upload_head(const UploadId& upload) {
  const auto there = parts_.files.has(upload.blob);
  if (!there) return tus_refused(problem_of(there.error()));
  std::uint64_t offset = upload.size_bytes;
  if (!*there) {
    if (const auto other = uploading_.find(upload.text()); other != uploading_.end()) {
      if (const auto flag = other->second.lock()) *flag = true;  // its connection is dead
      uploading_.erase(other);
    }
    const auto at = parts_.files.offset(upload);
    if (!at) return tus_refused(problem_of(at.error()));
    offset = *at;
  }
  Response out = at_offset(200, offset);
  out.headers.push_back({"Upload-Length", std::to_string(upload.size_bytes)});
  out.headers.push_back({"Upload-Metadata", metadata_of("sha256", upload.blob.hex())});
  out.headers.push_back({"Cache-Control", "no-store"});
  return out;
}

Response HubShop::drop_upload(const UploadId& upload) {
  if (const Status dropped = parts_.files.drop(upload); !dropped)
    return tus_refused(problem_of(dropped.error()));
  return with_version({204, {}, {}});
}

std::unique_ptr<Handling> HubShop::begin_upload(const Request& head, const UploadId& upload) {
  if (head.header("Content-Type") != tus_media_type)
    return answered(tus_refused(problem(Refusal::OtherMediaType)));
  const auto offset = decimal(head.header("Upload-Offset"));
  if (!offset) return answered(tus_refused(problem(Refusal::BadRequest, "Upload-Offset")));
  const auto there = parts_.files.has(upload.blob);
  if (!there) return answered(tus_refused(problem_of(there.error())));
  if (*there)
    return answered(*offset == upload.size_bytes ? at_offset(204, *offset)
                                                 : other_offset(upload.size_bytes));
  auto sink = parts_.files.append(upload, *offset);
  if (!sink) {
    const Error& error = sink.error();
    if (error.code == Code::OutOfRange)
      return answered(other_offset(decimal(error.arg("value")).value_or(0)));
    return answered(tus_refused(problem_of(error)));
  }
  std::erase_if(uploading_, [](const auto& one) { return one.second.expired(); });
  auto taken_over = std::make_shared<std::atomic<bool>>(false);
  uploading_[upload.text()] = taken_over;
  return std::make_unique<UploadHandling>(parts_.files, upload, std::move(*sink),
                                          std::move(taken_over));
}

Outcome HubShop::blob(const Request& head, const Hash& blob) {
  const auto size = parts_.files.size_bytes(blob);
  if (!size) return response_of(problem_of(size.error()));
  std::uint64_t from = 0;
  if (const auto range = head.header("Range"); !range.empty()) {
    const auto start = range_start(range);
    if (!start || *start > *size) return response_of(problem(Refusal::BadRequest, "Range"));
    from = *start;
  }
  Response out{from > 0 ? 206 : 200,
               {{"Content-Type", "application/octet-stream"}, {"Accept-Ranges", "bytes"}},
               {}};
  if (from > 0)
    out.headers.push_back({"Content-Range", "bytes " + std::to_string(from) + "-" +
                                                std::to_string(*size == 0 ? 0 : *size - 1) + "/" +
                                                std::to_string(*size)});
  if (head.method == Method::Head) {
    out.headers.push_back({"Content-Length", std::to_string(*size)});
    return out;
  }
  if (from == *size) return Response{out.status, out.headers, {}};
  auto file = parts_.files.read(blob, from);
  if (!file) return response_of(problem_of(file.error()));
  return FileReply{std::move(out), std::move(*file), *size - from};
}

Response HubShop::have_answer(const std::string& body) {
  const auto ask = from_json<HaveAsk>(body);
  if (!ask) return response_of(problem(Refusal::BadRequest, ask.error().subject));
  if (ask->hashes.size() > most_have_hashes) return response_of(problem(Refusal::TooLarge));
  HaveAnswer out;
  for (const Hash& hash : ask->hashes) {
    const auto there = parts_.files.has(hash);
    if (!there) return response_of(problem_of(there.error()));
    if (!*there) out.missing.push_back(hash);
  }
  return json_answer(out);
}

}  // namespace jambline::sync
