// A device that is given any answer: both ends of what it has, over memory.
//
// Input:   a byte that says whose turn it is (push, pull, one of two lanes of files), an answer in
//          the bytes of HTTP/1.1, and so on.
#include <boost/asio/buffer.hpp>
#include <boost/beast/http.hpp>
#include <set>

#include "seal/chain.h"
#include "seal/digest.h"
#include "sync/limits.h"
#include "sync/picture_end.h"
#include "sync/tus.h"
#include "tests/fuzz/promise.h"
#include "tests/seal/format_examples.h"
#include "tests/sync/protocol_examples.h"

namespace jambline::fuzz {

namespace {
using namespace jambline::sync;
using DeviceLane = DeviceEnd::Lane;

constexpr std::size_t most_turns = 40;
constexpr std::string_view picture = "abc";

const std::vector<seal::SealedEntry>& own_entries() {
  static const std::vector<seal::SealedEntry> made = [] {
    std::vector<seal::SealedEntry> out{seal::note_example()};
    seal::Header header = out[0].header;
    header.seq = 2;
    header.prev_hash = out[0].hash;
    header.hlc += 1;
    out.push_back(seal::seal_example(seal::second(), header, R"({"words":"hood"})", 0x40));
    return out;
  }();
  return made;
}

// Takes what follows from what it has and is signed by whom it says, as a log does.
class AnsweredStore final : public DeviceStore {
 public:
  AnsweredStore() {
    static const std::vector<seal::SealedEntry> before{seal::founded_example(),
                                                       seal::admitted_example()};
    for (const auto& entry : before) {
      (void)members_.apply(entry);
      chains_[entry.header.device].push_back(entry);
    }
    chains_[own_entries()[0].header.device] = own_entries();
  }
  Result<std::vector<Head>> heads() override {
    std::vector<Head> out;
    for (const auto& [device, chain] : chains_)
      out.push_back({device, chain.size(), chain.back().hash});
    return out;
  }
  Result<std::optional<Hash>> hash_at(const DeviceId& device, std::uint64_t seq) override {
    const auto found = chains_.find(device);
    if (found == chains_.end() || seq == 0 || seq > found->second.size())
      return std::optional<Hash>();
    return std::optional<Hash>(found->second[seq - 1].hash);
  }
  Result<Run> run_from(const DeviceId& device, std::uint64_t seq) override {
    const auto& chain = chains_[device];
    hold(seq >= 1 && seq <= chain.size());
    seal::Packer packer;
    for (std::uint64_t at = seq; at <= chain.size() && packer.add(chain[at - 1]);) ++at;
    return Run{packer.bytes(), seq + packer.count() - 1};
  }
  Result<std::optional<seal::Receipt>> last_receipt(const seal::Epoch& epoch) override {
    std::optional<seal::Receipt> out;
    for (const auto& one : receipts_)
      if (one.epoch == epoch && one.device == own_entries()[0].header.device) out = one;
    return out;
  }
  Status take(const PullPage& page, const std::optional<std::string>& cursor) override {
    for (const auto& entry : page.entries) {
      const auto& header = entry.header;
      auto& chain = chains_[header.device];
      const auto refused = [&](Code code) {
        Error why{code, "take", "entry", {{"device", header.device.hex()}}};
        if (chain.empty()) chains_.erase(header.device);
        return why;
      };
      if (header.seq >= 1 && header.seq <= chain.size()) {
        if (chain[header.seq - 1].hash != entry.hash) return fail(refused(Code::Fork));
        continue;
      }
      const auto* member = members_.find(header.device);
      if (!member) return fail(refused(Code::NotAdmitted));
      if (!seal::verify(member->key, entry.hash.bytes, entry.signature))
        return fail(refused(Code::BadSignature));
      if (header.seq != chain.size() + 1) return fail(refused(Code::ChainBroken));
      chain.push_back(entry);
      (void)members_.apply(entry);
    }
    for (const auto& one : page.receipts) {
      static const auto hub = seal::hub().key();
      JAMBLINE_TRY(seal::check(one, {one.shop, hub, page.epoch, one.device}));
      receipts_.push_back(one);
    }
    if (cursor) cursor_ = cursor;
    return {};
  }
  Result<std::optional<std::string>> cursor() override { return cursor_; }
  bool hub_is_admitted() override { return true; }
  std::size_t entries() const {
    std::size_t out = 0;
    for (const auto& one : chains_) out += one.second.size();
    return out;
  }

 private:
  seal::Members members_;
  std::map<DeviceId, std::vector<seal::SealedEntry>> chains_;
  std::vector<seal::Receipt> receipts_;
  std::optional<std::string> cursor_;
};

class AnsweredFiles final : public FileStore {
 public:
  std::vector<FileItem> here() override {
    return {{seal::sha256(seal::bytes_of(picture)), picture.size(), true},
            {seal::sha256(seal::bytes_of("original")), 1'500'000, false},
            {seal::sha256({}), 0, false}};
  }
  std::vector<FileItem> missing() override {
    std::vector<FileItem> out;
    if (!whole_) out.push_back({wanted(), wanted_bytes.size(), false});
    out.push_back({seal::sha256(seal::bytes_of("lost")), ~std::uint64_t{0}, true});
    return out;
  }
  Result<std::uint64_t> part_bytes(const Hash& blob) override { return parts_[blob].size(); }
  Status came(const Hash& blob) override {
    const std::string part = std::exchange(parts_[blob], {});
    if (seal::sha256(seal::bytes_of(part)) != blob) return fail(Code::BadHash, "keep", "file");
    whole_ = whole_ || blob == wanted();
    return {};
  }
  Status check(const Hash&) override { return {}; }
  void append(const Hash& blob, std::string_view bytes) { parts_[blob] += bytes; }
  static Hash wanted() { return seal::sha256(seal::bytes_of(wanted_bytes)); }
  static constexpr std::string_view wanted_bytes = "of another device";

 private:
  std::map<Hash, std::string> parts_;
  bool whole_ = false;
};

// What a device says is of the protocol, whatever it was told.
void check_asked(const Request& request, const ShopId& shop) {
  const auto target = parse_target(request.target);
  hold(target && target->shop == shop);
  for (const auto& field : request.headers)
    hold(field.value.find_first_of("\r\n") == std::string::npos && !field.value.empty());
  hold(request.body.size() <= seal::most_pack_bytes);
  if (request.send) hold(request.send->offset <= request.send->size_bytes);
  if (request.receive) hold(request.receive->offset < request.receive->size_bytes);
}

std::optional<Response> next_answer(std::string_view& bytes, bool head_only) {
  namespace http = boost::beast::http;
  http::response_parser<http::string_body> parser;
  parser.header_limit(static_cast<std::uint32_t>(most_header_bytes));
  parser.body_limit(most_page_bytes + 4096);
  parser.eager(true);
  if (head_only) parser.skip(true);
  boost::system::error_code ec;
  while (!ec && !parser.is_done() && !bytes.empty()) {
    const auto used = parser.put(boost::asio::const_buffer(bytes.data(), bytes.size()), ec);
    bytes.remove_prefix(used);
    if (used == 0) break;
  }
  if (!parser.is_done()) return std::nullopt;
  Response out;
  out.status = static_cast<int>(parser.get().result_int());
  for (const auto& field : parser.get())
    out.headers.push_back({std::string(field.name_string()), std::string(field.value())});
  out.body = parser.get().body();
  return out;
}

std::string answer_bytes(char lane, int status, std::string_view body,
                         const std::vector<HeaderField>& headers = {}) {
  std::string out = lane + ("HTTP/1.1 " + std::to_string(status) + " \r\n");
  for (const auto& field : headers) out += field.name + ": " + field.value + "\r\n";
  return out + "Content-Length: " + std::to_string(body.size()) + "\r\n\r\n" + std::string(body);
}
}  // namespace

std::vector<std::string> answer_seeds() {
  auto examples = protocol_examples();
  const ShopId shop = seal::example_header().shop;
  const std::string session = answer_bytes(0, 200, examples["challenge.answer"]) +
                              answer_bytes(0, 200, examples["session.answer"]);
  const auto page = [](std::uint64_t head, const std::vector<seal::SealedEntry>& entries) {
    seal::Packer packer;
    for (const auto& entry : entries) packer.add(entry);
    return encode_page(seal::filled<seal::Epoch>(0xe0), 3, head, {seal::receipt_example()},
                       packer.bytes());
  };
  const std::vector<seal::SealedEntry> all{seal::founded_example(), seal::admitted_example(),
                                           seal::note_example()};
  const std::string receipt = encode(seal::receipt_example());
  std::vector<std::string> out{
      session + answer_bytes(0, 200, receipt) + answer_bytes(1, 200, page(3, all)),
      session + answer_bytes(1, 200, page(5, all)) + answer_bytes(1, 200, page(3, {})) +
          answer_bytes(0, 202, examples["kept.apart"])};
  for (int refusal = 0; refusal <= static_cast<int>(Refusal::Full); ++refusal) {
    auto why = problem(static_cast<Refusal>(refusal), "seq");
    why.have_seq = 1;
    why.have_hash = seal::note_example().hash;
    why.retry_s = 2;
    const auto response = response_of(why);
    for (const char lane : {'\0', '\1', '\2'})
      out.push_back(session + answer_bytes(lane, response.status, response.body, response.headers));
  }
  // Files: which are lacked, one made and sent, one fetched.
  const auto place = [&](std::string_view bytes, std::uint64_t size) {
    sync::Target target;
    target.path = Path::File;
    target.shop = shop;
    target.upload = {seal::sha256(seal::bytes_of(bytes)), size,
                     seal::filled<decltype(UploadId::random)>(0x11)};
    return target_of(target);
  };
  const HaveAnswer lacked{
      {seal::sha256(seal::bytes_of(picture)), seal::sha256(seal::bytes_of("original"))}};
  out.push_back(session + answer_bytes(2, 200, to_json(lacked)) +
                answer_bytes(2, 201, {}, {{"Location", place(picture, 3)}}) +
                answer_bytes(2, 204, {}, {{"Upload-Offset", "1"}}) +
                answer_bytes(2, 409, {}, {{"Upload-Offset", "2"}}) +
                "\2HTTP/1.1 200 \r\nUpload-Offset: 2\r\nUpload-Length: 3\r\n\r\n" +
                answer_bytes(2, 204, {}, {{"Upload-Offset", "3"}}) +
                answer_bytes(3, 200, AnsweredFiles::wanted_bytes));
  out.push_back(session + answer_bytes(3, 200, to_json(HaveAnswer{})) +
                answer_bytes(3, 200, AnsweredFiles::wanted_bytes.substr(0, 5)) +
                answer_bytes(2, 206, AnsweredFiles::wanted_bytes.substr(5)));
  return out;
}

void run_answer(Input input) {
  AnsweredStore store;
  AnsweredFiles files;
  static const auto key = seal::second();
  static const auto hub = seal::hub().key();
  const ShopId shop = own_entries()[0].header.shop;
  DeviceEnd device({shop, hub, key, store, 1});
  PictureEnd pictures(shop, device, files, 1);
  std::string_view bytes = text_of(input);
  const std::size_t entries = store.entries();
  std::int64_t now_ms = 1'000'000;
  for (std::size_t turn = 0; turn < most_turns && !bytes.empty(); ++turn) {
    const auto lane = static_cast<std::size_t>(static_cast<std::uint8_t>(bytes.front()) % 4);
    bytes.remove_prefix(1);
    now_ms += 1'000;
    device.try_now();
    pictures.try_now();
    const auto next = lane < 2 ? device.next(static_cast<DeviceLane>(lane), now_ms)
                               : pictures.next(lane - 2, now_ms);
    if (!next.ask) continue;
    const Request& asked = next.ask->request;
    check_asked(asked, shop);
    auto answer = next_answer(bytes, asked.method == Method::Head);
    if (answer && asked.receive && answer->status == (asked.receive->offset > 0 ? 206 : 200))
      files.append(asked.receive->blob, std::exchange(answer->body, {}));
    const Result<Response> got =
        answer ? Result<Response>(*answer) : fail(Code::NoContact, "ask", "hub");
    if (lane < 2)
      device.answered(static_cast<DeviceLane>(lane), got, now_ms);
    else
      pictures.answered(lane - 2, got, now_ms);
    // One receipt was ever signed, for the first entry.
    hold(device.state().receipted_seq <= 1);
    hold(store.entries() >= entries);
    hold(pictures.state().to_send <= files.here().size());
  }
}

}  // namespace jambline::fuzz
