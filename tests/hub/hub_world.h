// tests/hub/hub_world.h: a hub in a throw-away folder, and devices that speak to it without
// sockets.
#pragma once

#include <filesystem>
#include <gtest/gtest.h>
#include <memory>
#include <mutex>
#include <string>
#include <thread>

#include "hub/hub_status.h"
#include "hub/operator_acts.h"
#include "seal/digest.h"
#include "seal/pack.h"
#include "sync/limits.h"
#include "sync/page.h"
#include "sync/target.h"
#include "sync/tus.h"
#include "tests/hub/hub_folder.h"
#include "tests/hub/sealed_run.h"

namespace jambline::test {

inline sync::Response ask_site(net::Site& site, const sync::Request& request,
                               const std::string& peer = "10.0.0.7") {
  sync::Response refused;
  const auto place = site.place_of(request, refused);
  if (!place) return refused;
  const auto handling = place->begin(request, request.body.size(), peer);
  if (!request.body.empty())
    if (const auto early = handling->take(seal::bytes_of(request.body))) return *early;
  auto outcome = handling->finish();
  if (auto* file = std::get_if<sync::FileReply>(&outcome)) {
    std::array<std::uint8_t, 4096> piece{};
    while (const std::size_t count = get(file->file->read(piece)))
      file->head.body.append(reinterpret_cast<const char*>(piece.data()), count);
    return std::move(file->head);
  }
  if (auto* response = std::get_if<sync::Response>(&outcome)) return std::move(*response);
  ADD_FAILURE() << "the answer is to wait";
  return {};
}

inline std::string problem_type(const sync::Response& response) {
  const auto problem = sync::problem_of(response);
  return problem ? problem->type : "no problem: " + std::to_string(response.status);
}

// One device as the protocol sees it.
class TestDevice {
 public:
  TestDevice(net::Site& site, seal::SigningKey key, ShopId shop, seal::Key hub)
      : site_(&site), key_(std::move(key)), shop_(shop), hub_(hub) {}

  const seal::SigningKey& key() const { return key_; }
  std::string token;

  sync::Request request(sync::Path path, sync::Method method, std::string body = {}) const {
    sync::Target target;
    target.path = path;
    target.shop = shop_;
    target.device = key_.device();
    return at(target, method, std::move(body));
  }
  sync::Request at(const sync::Target& target, sync::Method method, std::string body = {}) const {
    sync::Request out;
    out.method = method;
    out.target = sync::target_of(target);
    out.body = std::move(body);
    if (!token.empty()) out.headers.push_back({"Authorization", "Bearer " + token});
    return out;
  }
  sync::Response send(const sync::Request& request) const { return ask_site(*site_, request); }

  sync::Response enrol(const sync::InviteCode& code, bool brings_shop = false,
                       const std::string& name = "tablet") const {
    sync::EnrolAsk ask{code, key_.key(), name, brings_shop, {}};
    ask.proof = key_.sign(sync::enrol_words(shop_, hub_, ask));
    return send(request(sync::Path::Enrol, sync::Method::Post, to_json(ask)));
  }
  std::string digits(const sync::Response& enrolled) const {
    return sync::six_digits(shop_, key_.key(), hub_,
                            get(from_json<sync::EnrolAnswer>(enrolled.body)).nonce);
  }
  sync::SessionAnswer sign_in() {
    const auto challenge = send(request(sync::Path::AskChallenge, sync::Method::Post,
                                        to_json(sync::ChallengeAsk{key_.device()})));
    EXPECT_EQ(challenge.status, 200) << challenge.body;
    sync::SessionAsk ask{
        key_.device(), get(from_json<sync::ChallengeAnswer>(challenge.body)).challenge, {}};
    ask.proof = key_.sign(sync::session_words(shop_, hub_, ask.device, ask.challenge));
    const auto answer = send(request(sync::Path::Session, sync::Method::Post, to_json(ask)));
    EXPECT_EQ(answer.status, 200) << answer.body;
    auto session = get(from_json<sync::SessionAnswer>(answer.body));
    token = session.token.hex();
    return session;
  }
  sync::Response push(const std::vector<seal::SealedEntry>& entries) const {
    seal::Packer pack;
    for (const auto& entry : entries) EXPECT_TRUE(pack.add(entry));
    sync::Target target;
    target.path = sync::Path::Log;
    target.shop = shop_;
    target.device = entries.front().header.device;
    target.number = entries.front().header.seq;
    return send(at(target, sync::Method::Post, pack.bytes()));
  }
  sync::Response pull(std::uint64_t after = 0) const {
    sync::PullAsk ask;
    ask.after = after;
    return send(request(sync::Path::Pull, sync::Method::Post, to_json(ask)));
  }
  sync::PullPage pulled(std::uint64_t after = 0) const {
    const auto response = pull(after);
    EXPECT_EQ(response.status, 200) << response.body;
    return get(sync::decode_page(seal::bytes_of(response.body)));
  }
  Hash upload(const std::string& bytes) const {
    const Hash blob = seal::sha256(seal::bytes_of(bytes));
    auto create = request(sync::Path::Files, sync::Method::Post);
    create.headers.push_back({"Tus-Resumable", "1.0.0"});
    create.headers.push_back({"Upload-Length", std::to_string(bytes.size())});
    create.headers.push_back({"Upload-Metadata", sync::metadata_of("sha256", blob.hex())});
    const auto made = send(create);
    EXPECT_EQ(made.status, 201) << made.body;
    if (!made.header("Upload-Offset").empty()) return blob;  // it is there
    auto patch = request(sync::Path::Files, sync::Method::Patch, bytes);
    patch.target = made.header("Location");
    patch.headers.push_back({"Tus-Resumable", "1.0.0"});
    patch.headers.push_back({"Upload-Offset", "0"});
    patch.headers.push_back({"Content-Type", std::string(sync::tus_media_type)});
    EXPECT_EQ(send(patch).status, 204);
    return blob;
  }
  sync::Response download(const Hash& blob) const {
    sync::Target target;
    target.path = sync::Path::Blob;
    target.shop = shop_;
    target.blob = blob;
    return send(at(target, sync::Method::Get));
  }

 private:
  net::Site* site_;
  seal::SigningKey key_;
  ShopId shop_;
  seal::Key hub_;
};

class HubWorld : public ::testing::Test {
 protected:
  HubWorld() {
    clock.moment.wall_ms = hub_monday_ms;
    clock.moment.since_boot_ms = 1'000'000;
    good(hub::Hub::make(path(), "Shop hub", random));
    open();
  }
  std::filesystem::path path() const { return folder.path() / "hub"; }
  hub::Hub::Parts parts() {
    hub::ShopFileOptions storage;
    storage.erasable_kinds = {erasable_kind};
    return {clock, random, disk, storage, [this](const sync::HubEvent& event) {
              const std::lock_guard lock(events_mutex);
              events.push_back(event);
            }};
  }
  void open() { hub = get(hub::Hub::open(path(), parts())); }
  void reopen() {
    hub.reset();
    open();
  }
  seal::Key hub_key() const { return hub->key().key(); }
  TestDevice device(std::uint8_t number, const ShopId& shop) {
    return {*hub, hub_test_key(number), shop, hub_key()};
  }
  // A device that the hub's operator lets in.
  TestDevice admitted(std::uint8_t number, const ShopId& shop, bool manager = false) {
    TestDevice out = device(number, shop);
    const auto invitation = get(hub::invite_device(*hub, shop, 600'000));
    const auto asked = out.enrol(invitation.code, false, "tablet " + std::to_string(number));
    EXPECT_EQ(asked.status, 200) << asked.body;
    get(hub::admit_device(*hub, shop, out.digits(asked), manager));
    out.sign_in();
    return out;
  }
  // A shop that a device brings: founded there, with the hub admitted.
  TestDevice brought(SealedRun& run, const std::vector<seal::SealedEntry>& more = {}) {
    TestDevice out(*hub, run.founder(), run.shop(), hub_key());
    const auto invitation = get(hub::expect_shop(*hub, 600'000));
    const auto asked = out.enrol(invitation.code, true);
    EXPECT_EQ(asked.status, 200) << asked.body;
    out.sign_in();
    std::vector<seal::SealedEntry> entries{run.founded(), run.hub_admitted(hub_key())};
    entries.insert(entries.end(), more.begin(), more.end());
    EXPECT_EQ(out.push(entries).status, 200);
    return out;
  }
  std::filesystem::path shop_folder(const ShopId& shop) const {
    return path() / "shops" / shop.hex();
  }

  HubTempFolder folder;
  FakeClock clock;
  SeededRandom random{11};
  blobs::PosixFiles disk;
  std::mutex events_mutex;
  std::vector<sync::HubEvent> events;
  std::unique_ptr<hub::Hub> hub;
};

// What a device writes after it was admitted: its chain begins at its admission.
class DeviceChain {
 public:
  DeviceChain(const TestDevice& device, const ShopId& shop) : key_(device.key()), shop_(shop) {
    for (const auto& entry : device.pulled().entries)
      if (entry.header.kind == seal::kind::device_admitted &&
          entry.payload.find(key_.key().hex()) != std::string::npos)
        prev_ = entry.hash;
  }
  seal::SealedEntry said(std::string words, std::uint16_t kind = plain_kind) {
    return written(R"({"words":")" + std::move(words) + R"("})", kind);
  }
  // As anybody can who has a key: whether he may is for those who read it.
  seal::SealedEntry admitted(const seal::Key& key, std::string name, bool manager) {
    return written(to_json(seal::DeviceAdmitted{key, std::move(name), manager}),
                   seal::kind::device_admitted);
  }
  seal::SealedEntry written(std::string payload, std::uint16_t kind) {
    seal::SealedEntry entry;
    entry.payload = std::move(payload);
    entry.salt = random_.make<seal::Salt>();
    auto& header = entry.header;
    header.shop = shop_;
    header.device = key_.device();
    header.seq = ++seq_;
    header.prev_hash = prev_;
    header.wall_ms = hub_monday_ms + static_cast<std::int64_t>(seq_);
    header.part = header.parts = 1;
    header.kind = kind;
    header.schema = 1;
    header.payload_bytes = static_cast<std::uint32_t>(entry.payload.size());
    header.payload_hash = seal::payload_hash(entry.salt, entry.payload);
    entry.hash = seal::entry_hash(seal::encode(header));
    entry.signature = key_.sign(entry.hash);
    prev_ = entry.hash;
    return entry;
  }
  std::vector<seal::SealedEntry> many(std::size_t count) {
    std::vector<seal::SealedEntry> out;
    for (std::size_t i = 0; i < count; ++i) out.push_back(said("n" + std::to_string(i)));
    return out;
  }

 private:
  seal::SigningKey key_;
  ShopId shop_;
  SeededRandom random_{5};
  std::uint64_t seq_ = 0;
  Hash prev_;
};

}  // namespace jambline::test
