#include "sync/picture_end.h"

#include <algorithm>
#include <limits>

#include "base/json.h"
#include "sync/limits.h"
#include "sync/page.h"
#include "sync/tus.h"

namespace jambline::sync {

namespace {
constexpr std::int64_t far_ms = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t look_for_token_ms = 500;
constexpr std::int64_t ask_have_again_ms = 20'000;

template <class Items, class Good>
std::optional<FileItem> first_by_haste(const Items& items, Good good) {
  for (const bool preview : {true, false})
    for (const FileItem& item : items)
      if (item.preview == preview && good(item)) return item;
  return std::nullopt;
}
}  // namespace

PictureEnd::PictureEnd(ShopId shop, DeviceEnd& device, FileStore& store, std::uint64_t seed)
    : shop_(shop), device_(device), store_(store), random_(seed) {}

void PictureEnd::set_allowed(bool originals, bool previews) {
  originals_ = originals;
  previews_ = previews;
  count();
}

void PictureEnd::try_now() {
  for (Lane& lane : lane_) lane.not_before_ms = 0;
  fetch_later_ms_.clear();
  ask_again_ms_ = 0;
}

bool PictureEnd::allowed(const FileItem& item) const {
  return item.preview ? previews_ : originals_;
}

bool PictureEnd::in_work(const Hash& blob) const {
  return std::any_of(std::begin(lane_), std::end(lane_), [&](const Lane& lane) {
    return (lane.upload && lane.upload->item.blob == blob) ||
           (lane.fetch && lane.fetch->blob == blob);
  });
}

void PictureEnd::count() {
  state_.to_send = state_.to_send_bytes = state_.to_fetch = 0;
  for (const FileItem& item : here_)
    if (!at_hub_.count(item.blob) && !damaged_.count(item.blob)) {
      ++state_.to_send;
      state_.to_send_bytes += item.size_bytes;
    }
  state_.to_fetch = missing_.size();
  state_.damaged_here.assign(damaged_.begin(), damaged_.end());
}

void PictureEnd::look_again(std::int64_t now_ms) {
  if (device_.state().blob_mark != blob_mark_) {  // the hub has lost files: ask for all again
    blob_mark_ = device_.state().blob_mark;
    at_hub_.clear();
    doubted_.clear();
    not_at_hub_.clear();
    changed_ = true;
  }
  if (device_.state().sessions != sessions_) {  // it may have been put back without a word
    sessions_ = device_.state().sessions;
    doubted_ = at_hub_;
  }
  if (ask_again_ms_ <= now_ms) {
    for (const FileItem& item : missing_)
      if (!at_hub_.count(item.blob)) not_at_hub_.erase(item.blob);
    ask_again_ms_ = now_ms + ask_have_again_ms;
  }
  if (!changed_) return;
  changed_ = false;
  here_ = store_.here();
  missing_ = store_.missing();
  count();
}

std::optional<FileItem> PictureEnd::next_to_send() const {
  return first_by_haste(here_, [this](const FileItem& item) {
    return not_at_hub_.count(item.blob) && !damaged_.count(item.blob) && allowed(item) &&
           !in_work(item.blob);
  });
}

std::optional<FileItem> PictureEnd::next_to_fetch() const {
  return first_by_haste(missing_, [this](const FileItem& item) {
    return at_hub_.count(item.blob) && allowed(item) && !in_work(item.blob) &&
           !fetch_later_ms_.count(item.blob);
  });
}

Request PictureEnd::request(Method method, std::string target, const Token& token) const {
  Request out;
  out.method = method;
  out.target = std::move(target);
  out.headers.push_back({"Authorization", "Bearer " + token.hex()});
  return out;
}

DeviceEnd::Next PictureEnd::next(std::size_t which, std::int64_t now_ms) {
  Lane& lane = lane_[which];
  if (lane.asked != Asked::Nothing) return {std::nullopt, far_ms};
  if (now_ms < lane.not_before_ms) return {std::nullopt, lane.not_before_ms};
  const auto token = device_.token(now_ms);
  if (!token) return {std::nullopt, now_ms + look_for_token_ms};
  look_again(now_ms);
  std::erase_if(fetch_later_ms_, [&](const auto& one) { return one.second <= now_ms; });
  if (lane.upload) return ask_upload(lane, *token);

  std::vector<Hash> unknown;
  for (const auto* items : {&here_, &missing_})
    for (const FileItem& item : *items) {
      if (unknown.size() == most_have_hashes) break;
      if ((!at_hub_.count(item.blob) || doubted_.count(item.blob)) &&
          !not_at_hub_.count(item.blob) && !damaged_.count(item.blob))
        unknown.push_back(item.blob);
    }
  const bool other_asks = std::any_of(std::begin(lane_), std::end(lane_),
                                      [](const Lane& one) { return one.asked == Asked::Have; });
  if (!unknown.empty() && !other_asks) return ask_have(lane, std::move(unknown), *token);

  auto send = next_to_send();
  auto fetch = next_to_fetch();
  if (send && fetch && fetch->preview && !send->preview) send.reset();
  if (send) {
    lane.upload = Upload{*send, {}, 0, false};
    return ask_upload(lane, *token);
  }
  if (fetch) {
    lane.fetch = *fetch;
    return ask_fetch(lane, *token, now_ms);
  }
  return {std::nullopt, missing_.empty() ? far_ms : ask_again_ms_};
}

DeviceEnd::Next PictureEnd::ask_have(Lane& lane, std::vector<Hash> hashes, const Token& token) {
  Target target;
  target.path = Path::Have;
  target.shop = shop_;
  Request out = request(Method::Post, target_of(target), token);
  out.headers.push_back({"Content-Type", std::string(json_media_type)});
  out.body = to_json(HaveAsk{hashes});
  lane.have_asked = std::move(hashes);
  lane.asked = Asked::Have;
  return {DeviceEnd::Ask{std::move(out), 0}, 0};
}

DeviceEnd::Next PictureEnd::ask_upload(Lane& lane, const Token& token) {
  const Upload& upload = *lane.upload;
  Target files;
  files.path = Path::Files;
  files.shop = shop_;
  const bool create = upload.location.empty();
  const bool head = !create && !upload.offset_known;
  Request out = request(create ? Method::Post
                        : head ? Method::Head
                               : Method::Patch,
                        create ? target_of(files) : upload.location, token);
  out.headers.push_back({"Tus-Resumable", std::string(tus_version)});
  if (create) {
    out.headers.push_back({"Upload-Length", std::to_string(upload.item.size_bytes)});
    out.headers.push_back({"Upload-Metadata", metadata_of("sha256", upload.item.blob.hex())});
    lane.asked = Asked::Create;
  } else if (head) {
    lane.asked = Asked::Head;
  } else {
    out.headers.push_back({"Content-Type", std::string(tus_media_type)});
    out.headers.push_back({"Upload-Offset", std::to_string(upload.offset)});
    out.send = BlobPart{upload.item.blob, upload.offset, upload.item.size_bytes};
    lane.asked = Asked::Patch;
  }
  return {DeviceEnd::Ask{std::move(out), 0}, 0};
}

DeviceEnd::Next PictureEnd::ask_fetch(Lane& lane, const Token& token, std::int64_t now_ms) {
  const FileItem item = *lane.fetch;
  auto there = store_.part_bytes(item.blob);
  if (!there) {
    lane.fetch.reset();
    failed(lane, there.error(), now_ms);
    return {std::nullopt, lane.not_before_ms};
  }
  if (*there >= item.size_bytes) {  // all of it came before something broke off
    lane.asked = Asked::Get;
    answered(static_cast<std::size_t>(&lane - lane_), Response{206, {}, {}}, now_ms);
    return {std::nullopt, now_ms};
  }
  Target target;
  target.path = Path::Blob;
  target.shop = shop_;
  target.blob = item.blob;
  Request out = request(Method::Get, target_of(target), token);
  if (*there > 0) out.headers.push_back({"Range", "bytes=" + std::to_string(*there) + "-"});
  out.receive = BlobPart{item.blob, *there, item.size_bytes};
  lane.asked = Asked::Get;
  return {DeviceEnd::Ask{std::move(out), 0}, 0};
}

void PictureEnd::failed(Lane& lane, Error error, std::int64_t now_ms, std::int64_t at_least_ms) {
  lane.not_before_ms = now_ms + lane.back_off.next_ms(random_, at_least_ms);
  state_.trouble = std::move(error);
}

void PictureEnd::went_well(Lane& lane) {
  lane.back_off.good();
  device_.contact();
}

void PictureEnd::sent(Lane& lane) {
  at_hub_.insert(lane.upload->item.blob);
  doubted_.erase(lane.upload->item.blob);
  not_at_hub_.erase(lane.upload->item.blob);
  lane.upload.reset();
  count();
}

void PictureEnd::answered(std::size_t which, const Result<Response>& answer, std::int64_t now_ms) {
  Lane& lane = lane_[which];
  const Asked asked = std::exchange(lane.asked, Asked::Nothing);
  if (asked == Asked::Nothing) return;
  if (!answer) {
    if (lane.upload) lane.upload->offset_known = false;  // what came is asked first
    const Code code = answer.error().code;
    if (code == Code::NoContact || code == Code::WrongServer)
      device_.no_contact(answer.error(), now_ms);
    if (lane.upload && (code == Code::BadHash || code == Code::NoSuchFile)) {
      damaged_.insert(lane.upload->item.blob);
      lane.upload.reset();
      count();
    }
    lane.fetch.reset();
    return failed(lane, answer.error(), now_ms);
  }
  if (answer->status == 401) {
    device_.token_refused();
    lane.fetch.reset();
    if (lane.upload) lane.upload->offset_known = false;
    lane.not_before_ms = now_ms + look_for_token_ms;
    return;
  }
  switch (asked) {
    case Asked::Have:
      return have_answered(lane, *answer, now_ms);
    case Asked::Get:
      return fetched(lane, *answer, now_ms);
    default:
      return upload_answered(lane, asked, *answer, now_ms);
  }
}

void PictureEnd::have_answered(Lane& lane, const Response& response, std::int64_t now_ms) {
  const auto asked = std::exchange(lane.have_asked, {});
  const auto answer = from_json<HaveAnswer>(response.body);
  if (response.status != 200 || !answer)
    return failed(lane, Error{Code::WrongServer, "ask for files", "hub", {}}, now_ms);
  for (const Hash& hash : asked) {
    at_hub_.insert(hash);
    doubted_.erase(hash);
  }
  for (const Hash& hash : answer->missing) {
    at_hub_.erase(hash);
    not_at_hub_.insert(hash);
  }
  went_well(lane);
  state_.trouble.reset();
  count();
}

void PictureEnd::upload_answered(Lane& lane, Asked asked, const Response& response,
                                 std::int64_t now_ms) {
  if (response.status >= 300) return upload_refused(lane, response, now_ms);
  Upload& upload = *lane.upload;
  const auto offset = decimal(response.header("Upload-Offset"));
  if (asked == Asked::Create) {
    upload.location = std::string(response.header("Location"));
    const auto target = parse_target(upload.location);
    if (!target || target->path != Path::File || target->shop != shop_) {
      upload.location.clear();
      return failed(lane, Error{Code::WrongServer, "send a file", "hub", {}}, now_ms);
    }
    upload.offset = offset.value_or(0);
    upload.offset_known = true;
    if (upload.offset == upload.item.size_bytes) sent(lane);  // it was there, or is empty
  } else {
    if (!offset || *offset > upload.item.size_bytes) {
      upload.offset_known = false;
      return failed(lane, Error{Code::WrongServer, "send a file", "hub", {}}, now_ms);
    }
    upload.offset = *offset;
    upload.offset_known = true;
    if (upload.offset == upload.item.size_bytes) sent(lane);
  }
  went_well(lane);
  state_.trouble.reset();
}

void PictureEnd::upload_refused(Lane& lane, const Response& response, std::int64_t now_ms) {
  Upload& upload = *lane.upload;
  const auto why = problem_of(response);
  const auto refusal = why ? refusal_of(*why) : std::nullopt;
  const std::int64_t wait_ms = why ? std::int64_t{1000} * why->retry_s.value_or(0) : 0;
  if (response.status == 404 || response.status == 410) {  // begun anew
    upload.location.clear();
    upload.offset_known = false;
    lane.not_before_ms = now_ms + lane.back_off.next_ms(random_) - first_back_off_ms / 2;
    return;
  }
  if (response.status == 409) {
    upload.offset_known = false;
    lane.not_before_ms = now_ms + lane.back_off.next_ms(random_) - first_back_off_ms / 2;
    return;
  }
  if (refusal == Refusal::OtherBytes) {
    const FileItem item = upload.item;
    lane.upload.reset();
    if (const Status good = store_.check(item.blob); !good) {
      damaged_.insert(item.blob);
      state_.trouble = good.error();
      count();
    }
    lane.not_before_ms = now_ms + lane.back_off.next_ms(random_);
    return;
  }
  upload.offset_known = false;
  const Code code = refusal == Refusal::Full                                  ? Code::DiskFull
                    : refusal == Refusal::TooLarge                            ? Code::TooLarge
                    : refusal == Refusal::Busy || refusal == Refusal::TooMany ? Code::Busy
                    : refusal == Refusal::Revoked || refusal == Refusal::NotAdmitted ? Code::Revoked
                    : refusal ? Code::Malformed
                              : Code::WrongServer;
  failed(lane, Error{code, "send a file", "hub", {}}, now_ms, wait_ms);
}

void PictureEnd::fetched(Lane& lane, const Response& response, std::int64_t now_ms) {
  const FileItem item = *std::exchange(lane.fetch, std::nullopt);
  if (response.status == 404) {  // another one is to send it once more
    at_hub_.erase(item.blob);
    not_at_hub_.insert(item.blob);
    return;
  }
  const auto why = problem_of(response);
  // There is no such place in the hub's file: what is here is longer, so it is no part of it, and
  // goes when it is hashed.
  const bool too_long_here = why && refusal_of(*why) == Refusal::BadRequest;
  if (response.status != 200 && response.status != 206 && !too_long_here) {
    fetch_later_ms_[item.blob] = now_ms + ask_have_again_ms;
    return failed(lane, Error{why ? Code::Busy : Code::WrongServer, "fetch a file", "hub", {}},
                  now_ms);
  }
  if (const Status whole = store_.came(item.blob); !whole) {
    fetch_later_ms_[item.blob] = now_ms + ask_have_again_ms;
    return failed(lane, whole.error(), now_ms);
  }
  ++state_.came;
  changed_ = true;
  went_well(lane);
  state_.trouble.reset();
}

}  // namespace jambline::sync
