#include "tests/fuzz/hub_request.h"

#include <boost/asio/buffer.hpp>
#include <boost/beast/http.hpp>
#include <filesystem>

#include "seal/digest.h"
#include "seal/pack.h"
#include "sync/limits.h"
#include "sync/page.h"
#include "sync/target.h"
#include "sync/tus.h"
#include "tests/fuzz/memory_folder.h"
#include "tests/fuzz/promise.h"

namespace jambline::fuzz {

namespace http = boost::beast::http;
using sync::Method;
using sync::Request;
using sync::Response;

namespace {
constexpr std::size_t most_requests = 10;
constexpr const char* stranger = "10.0.0.1";

struct Start {
  std::shared_ptr<test::MemoryShop> disk = std::make_shared<test::MemoryShop>();
  std::vector<seal::SealedEntry> notes;  // of the tablet, not yet pushed
  std::optional<hub::ExpectedShops> expected;
  sync::InviteCode expected_code;
};

// Made once; every input starts from a copy.
const Start& start() {
  static const Start made = [] {
    Start out;
    test::SealedRun run;
    const auto tablet = test::hub_test_key(2);
    const auto hub_key = test::hub_test_key(200);
    const std::vector<seal::SealedEntry> entries{run.founded(), run.hub_admitted(hub_key.key()),
                                                 run.admitted(tablet, "tablet"),
                                                 run.admitted(test::hub_test_key(3), "desk", true)};
    out.notes = run.many(tablet, 3);
    out.disk->shop = run.shop();
    out.disk->epoch = test::epoch_number(0xe0);
    test::MemoryHubStorage storage(out.disk,
                                   [](std::uint16_t kind) { return kind == test::erasable_kind; });
    test::MemoryHubFiles files(out.disk);
    FakeClock clock;
    SeededRandom random(8);
    auto shop = sync::HubShop::open({storage, files, hub_key, clock, random, "hub", {}});
    hold(shop && (*shop)->append_own(entries));
    auto expected = hub::ExpectedShops::open(memory_folder() / "expected");
    hold(expected.has_value());
    const auto code = expected->invite(test::hub_monday_ms, 600'000, random);
    hold(code.has_value());
    out.expected_code = *code;
    out.expected = std::move(*expected);
    return out;
  }();
  return made;
}

bool plain_value(std::string_view text) {
  return text.find_first_of(std::string_view("\r\n\0", 3)) == std::string_view::npos;
}

void check_answer(const Response& response) {
  hold(response.status >= 200 && response.status < 600);
  for (const auto& field : response.headers)
    hold(plain_value(field.name) && plain_value(field.value));
  if (response.status >= 400) hold(sync::problem_of(response).has_value());
}
}  // namespace

std::string http_bytes(const Request& request) {
  std::string out = std::string(sync::name_of(request.method)) + " " + request.target +
                    " HTTP/1.1\r\nHost: hub\r\n";
  for (const auto& field : request.headers) out += field.name + ": " + field.value + "\r\n";
  if (!request.body.empty())
    out += "Content-Length: " + std::to_string(request.body.size()) + "\r\n";
  return out + "\r\n" + request.body;
}

RequestWorld::RequestWorld() : disk_(std::make_shared<test::MemoryShop>(*start().disk)) {
  clock_.moment.wall_ms = test::hub_monday_ms;
  clock_.moment.since_boot_ms = 1'000'000;
  storage_ = std::make_unique<test::MemoryHubStorage>(
      disk_, [](std::uint16_t kind) { return kind == test::erasable_kind; });
  files_ = std::make_unique<test::MemoryHubFiles>(disk_);
  auto made = sync::HubShop::open({*storage_, *files_, hub_key, clock_, random_, "hub", {}});
  hold(made.has_value());
  shop_ = std::move(*made);
  lobby_ = std::make_unique<hub::Lobby>(
      hub::Lobby::Parts{
          hub_key,
          clock_,
          "hub",
          [](const ShopId&, const sync::Invited&) -> Result<std::shared_ptr<hub::ShopPlace>> {
            return fail(Code::DiskFull, "make", "shop");
          },
          [](const auto&) {},
          [this](const ShopId& shop) { return shop == disk_->shop; },
          {}},
      *start().expected);
  tablet_token = token(tablet);
  desk_token = token(desk);
}
RequestWorld::~RequestWorld() = default;

sync::Challenge RequestWorld::challenge(const seal::SigningKey& device) {
  sync::Target target;
  target.path = sync::Path::AskChallenge;
  target.shop = shop();
  const auto answer = ask(
      {Method::Post, sync::target_of(target), {}, to_json(sync::ChallengeAsk{device.device()})});
  const auto read = from_json<sync::ChallengeAnswer>(answer.body);
  hold(read.has_value());
  return read->challenge;
}

sync::SessionAsk RequestWorld::proof(const seal::SigningKey& device,
                                     const sync::Challenge& challenge) const {
  const Hash words = sync::session_words(shop(), hub_key.key(), device.device(), challenge);
  return {device.device(), challenge, device.sign(words)};
}

std::string RequestWorld::token(const seal::SigningKey& device) {
  sync::Target target;
  target.path = sync::Path::Session;
  target.shop = shop();
  const auto answer =
      ask({Method::Post, sync::target_of(target), {}, to_json(proof(device, challenge(device)))});
  const auto read = from_json<sync::SessionAnswer>(answer.body);
  hold(read.has_value());
  return read->token.hex();
}

std::unique_ptr<sync::Handling> RequestWorld::begin(const Request& head,
                                                    std::optional<std::uint64_t> body_bytes) {
  const auto target = sync::parse_target(head.target);
  if (target && target->shop == shop() && target->path != sync::Path::About)
    return shop_->begin(head, *target, body_bytes, stranger);
  return lobby_->begin(head, body_bytes, stranger);
}

Response RequestWorld::end(sync::Handling& handling) {
  auto outcome = handling.finish();
  for (int turns = 0; std::holds_alternative<sync::Waiting>(outcome); ++turns) {
    const auto wait_ms = std::get<sync::Waiting>(outcome).for_ms;
    hold(turns < 200 && wait_ms <= std::int64_t{1000} * sync::longest_poll_s);
    clock_.advance_ms(std::max<std::int64_t>(1, wait_ms));
    outcome = handling.finish();
  }
  if (auto* file = std::get_if<sync::FileReply>(&outcome)) {
    std::array<std::uint8_t, 4096> piece{};
    std::uint64_t count = 0;
    while (true) {
      const auto got = file->file->read(piece);
      hold(got.has_value());
      if (*got == 0) break;
      count += *got;
    }
    hold(count == file->size_bytes);
    return file->head;
  }
  return std::get<Response>(outcome);
}

Response RequestWorld::ask(const Request& request) {
  const auto handling = begin(request, request.body.size());
  if (!request.body.empty())
    if (const auto early = handling->take(seal::bytes_of(request.body))) return *early;
  return end(*handling);
}

std::vector<Response> RequestWorld::talk(std::string_view bytes) {
  std::vector<Response> out;
  while (!bytes.empty() && out.size() < most_requests) {
    http::request_parser<http::string_body> parser;
    parser.header_limit(static_cast<std::uint32_t>(sync::most_header_bytes));
    parser.body_limit(std::uint64_t{4} << 20U);
    parser.eager(true);
    boost::system::error_code ec;
    while (!ec && !parser.is_done() && !bytes.empty()) {
      const std::size_t used =
          parser.put(boost::asio::const_buffer(bytes.data(), bytes.size()), ec);
      bytes.remove_prefix(used);
      if (used == 0) break;
    }
    if (!parser.is_header_done()) return out;
    const auto& message = parser.get();
    const auto method = sync::method_of(
        std::string_view(message.method_string().data(), message.method_string().size()));
    if (!method) return out;
    Request head{*method, std::string(message.target()), {}, {}};
    for (const auto& field : message)
      head.headers.push_back({std::string(field.name_string()), std::string(field.value())});
    std::optional<std::uint64_t> body_bytes;
    if (const auto length = parser.content_length()) body_bytes = *length;
    if (!body_bytes && !parser.chunked()) body_bytes = 0;
    const auto handling = begin(head, body_bytes);
    auto early = body_bytes == 0 ? std::nullopt : handling->take({});
    const std::string& body = message.body();
    for (std::size_t at = 0; at < body.size() && !early; at += 1000)
      early = handling->take(seal::bytes_of(std::string_view(body).substr(at, 1000)));
    if (!early && !parser.is_done()) return out;  // cut
    out.push_back(early ? *early : end(*handling));
    check_answer(out.back());
    clock_.advance_ms(200);
  }
  return out;
}

void RequestWorld::check() const {
  for (const auto& [name, bytes] : disk_->blobs) hold(seal::sha256(seal::bytes_of(*bytes)) == name);
  for (const auto& [name, bytes] : disk_->parts) {
    const auto upload = sync::parse_upload(name);
    hold(upload && bytes.size() <= upload->size_bytes);
  }
  for (const auto& [device, places] : disk_->places) {
    std::uint64_t seq = 0;
    for (const std::size_t place : places) hold(disk_->entries.at(place).seq == ++seq);
  }
}

// Everything that the protocol has, as a device says it; then several requests after each other.
std::vector<std::string> request_seeds() {
  std::vector<std::string> out;
  RequestWorld world;
  std::string flow;
  const auto say = [&](sync::Path path, Method method, const std::string& token, std::string body,
                       std::vector<sync::HeaderField> headers = {}, std::string_view place = {}) {
    sync::Target target;
    target.path = path;
    target.shop = world.shop();
    target.device = world.tablet.device();
    target.number = 1;
    target.blob = seal::sha256(seal::bytes_of("abc"));
    Request request{method, place.empty() ? sync::target_of(target) : std::string(place),
                    std::move(headers), std::move(body)};
    if (!token.empty()) request.headers.push_back({"Authorization", "Bearer " + token});
    const std::string bytes = http_bytes(request);
    out.push_back(bytes);
    flow += bytes;
    return world.ask(request);
  };
  const auto flush = [&] {
    out.push_back(flow);
    flow.clear();
  };
  const std::string tablet = world.tablet_token;
  const std::string desk = world.desk_token;
  using sync::Path;
  say(Path::About, Method::Get, {}, {});
  say(Path::AskChallenge, Method::Post, {}, to_json(sync::ChallengeAsk{world.tablet.device()}));
  say(Path::Session, Method::Post, {},
      to_json(world.proof(world.tablet, world.challenge(world.tablet))));
  flush();
  const auto invited =
      from_json<sync::InviteAnswer>(say(Path::Invite, Method::Post, desk, {}).body);
  hold(invited.has_value());
  const auto fresh = test::hub_test_key(4);
  sync::EnrolAsk enrol{invited->code, fresh.key(), "second tablet", false, {}};
  enrol.proof = fresh.sign(sync::enrol_words(world.shop(), world.hub_key.key(), enrol));
  say(Path::Enrol, Method::Post, {}, to_json(enrol));
  say(Path::EnrolState, Method::Get, {}, {});
  say(Path::Pending, Method::Get, desk, {});
  say(Path::Refuse, Method::Post, desk, {});
  flush();
  seal::Packer packer;
  for (const auto& note : start().notes) packer.add(note);
  say(Path::Log, Method::Post, tablet, packer.bytes(),
      {{"Content-Type", std::string(sync::pack_media_type)}});
  say(Path::Pull, Method::Post, desk, to_json(sync::PullAsk{world.disk().epoch, 2, {}, 0}));
  say(Path::Pull, Method::Post, desk, to_json(sync::PullAsk{{}, 99, {}, 25}));
  say(Path::Devices, Method::Get, tablet, {});
  say(Path::Quarantine, Method::Get, desk, {});
  say(Path::Kept, Method::Get, desk, {});
  say(Path::Settle, Method::Post, desk, {});
  flush();
  const Hash abc = seal::sha256(seal::bytes_of("abc"));
  const sync::HeaderField version{"Tus-Resumable", "1.0.0"};
  say(Path::Have, Method::Post, tablet, to_json(sync::HaveAsk{{abc}}));
  say(Path::Files, Method::Options, {}, {});
  const auto made = say(Path::Files, Method::Post, tablet, {},
                        {version,
                         {"Upload-Length", "3"},
                         {"Upload-Metadata", sync::metadata_of("sha256", abc.hex())}});
  const std::string place(made.header("Location"));
  const sync::HeaderField media{"Content-Type", std::string(sync::tus_media_type)};
  say(Path::File, Method::Patch, tablet, "ab", {version, media, {"Upload-Offset", "0"}}, place);
  say(Path::File, Method::Head, tablet, {}, {version}, place);
  say(Path::File, Method::Patch, tablet, "c", {version, media, {"Upload-Offset", "2"}}, place);
  say(Path::Blob, Method::Get, tablet, {}, {{"Range", "bytes=1-"}});
  say(Path::Blob, Method::Head, tablet, {});
  say(Path::File, Method::Delete, tablet, {}, {version}, place);
  flush();
  // A shop that comes to the hub: who has the code.
  sync::EnrolAsk brings{start().expected_code, fresh.key(), "first tablet", true, {}};
  ShopId other;
  other.bytes.fill(0x5a);
  brings.proof = fresh.sign(sync::enrol_words(other, world.hub_key.key(), brings));
  say(Path::Enrol, Method::Post, {}, to_json(brings), {}, "/v1/" + other.hex() + "/enrol");
  out.push_back("POST " + place +
                " HTTP/1.1\r\nTransfer-Encoding: chunked\r\n\r\n3\r\nabc\r\n0\r\n\r\n");
  return out;
}

void run_request(Input input) {
  RequestWorld world;
  world.talk(text_of(input));
  world.check();
}

}  // namespace jambline::fuzz
