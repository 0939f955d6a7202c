// peer-uploader PORT HUB_KEY SHOP SEED FOLDER: the uploader of our devices (both ends of the
// protocol, our client, our store of files) sends every file of FOLDER to whoever listens at
// 127.0.0.1:PORT. A line of JSON a request; 0 when all is sent, 1 when it is the wrong server.
#include <chrono>
#include <cstdlib>
#include <iostream>
#include <thread>

#include "base/json.h"
#include "blobs/blob_store.h"
#include "net/client.h"
#include "seal/digest.h"
#include "sync/picture_end.h"
#include "sync/tus.h"
#include "tests/whole_file.h"

namespace jambline {
namespace {
namespace fs = std::filesystem;

constexpr std::int64_t most_ms = 60'000;

template <class T>
T must(Result<T> result) {
  if (result) return std::move(*result);
  std::cerr << code_name(result.error().code) << " " << result.error().subject << "\n";
  std::exit(2);
}

struct Line {
  std::string method;
  std::string target;
  std::optional<std::uint64_t> offset;  // from where on bytes were sent
  std::optional<int> status;
  std::optional<std::uint64_t> said;  // the offset that the server answered
  std::optional<std::string> error;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "method"}, self.method);
    visit(Field{.name = "target"}, self.target);
    visit(Field{.name = "offset"}, self.offset);
    visit(Field{.name = "status"}, self.status);
    visit(Field{.name = "said"}, self.said);
    visit(Field{.name = "error"}, self.error);
  }
};

class NoEntries final : public sync::DeviceStore {
 public:
  Result<std::vector<sync::Head>> heads() override { return std::vector<sync::Head>(); }
  Result<std::optional<Hash>> hash_at(const DeviceId&, std::uint64_t) override {
    return std::optional<Hash>();
  }
  Result<Run> run_from(const DeviceId&, std::uint64_t) override {
    return fail(Code::NoSuchFile, "read", "entries");
  }
  Result<std::optional<seal::Receipt>> last_receipt(const seal::Epoch&) override {
    return std::optional<seal::Receipt>();
  }
  Status take(const sync::PullPage&, const std::optional<std::string>&) override { return {}; }
  Result<std::optional<std::string>> cursor() override { return std::optional<std::string>(); }
  bool hub_is_admitted() override { return false; }
};

class StoredFiles final : public sync::FileStore, public net::Bodies {
 public:
  explicit StoredFiles(const fs::path& folder)
      : blobs_(must(blobs::BlobStore::open(disk_, folder / "blobs"))) {
    for (const auto& item : fs::directory_iterator(folder)) {
      if (!item.is_regular_file()) continue;
      const std::string bytes = test::whole_file(item.path());
      items_.push_back({must(blobs_->put(seal::bytes_of(bytes))), bytes.size(), false});
    }
  }
  std::vector<sync::FileItem> here() override { return items_; }
  std::vector<sync::FileItem> missing() override { return {}; }
  Result<std::uint64_t> part_bytes(const Hash&) override { return std::uint64_t{0}; }
  Status came(const Hash&) override { return {}; }
  Status check(const Hash& blob) override { return blobs_->check(blob); }
  Result<Read> read(const sync::BlobPart& part) override {
    JAMBLINE_ASSIGN(auto opened, blobs_->open_at(part.blob, part.offset));
    return Read([file = std::shared_ptr<blobs::FileReader>(std::move(opened))](
                    std::span<std::uint8_t> bytes) { return file->read(bytes); });
  }
  Result<Write> write(const sync::BlobPart&) override {
    return fail(Code::NotAllowed, "fetch", "file");
  }

 private:
  blobs::PosixFiles disk_;
  std::unique_ptr<blobs::BlobStore> blobs_;
  std::vector<sync::FileItem> items_;
};

std::int64_t now_ms() {
  return std::chrono::duration_cast<std::chrono::milliseconds>(
             std::chrono::steady_clock::now().time_since_epoch())
      .count();
}

Result<sync::Response> carry(net::Client& client, const sync::Request& request) {
  auto answer = client.send(request);
  Line line{std::string(sync::name_of(request.method)), request.target, {}, {}, {}, {}};
  line.offset = sync::decimal(request.header("Upload-Offset"));
  if (answer) {
    line.status = answer->status;
    line.said = sync::decimal(answer->header("Upload-Offset"));
  } else {
    line.error = code_name(answer.error().code);
  }
  std::cout << to_json(line) << std::endl;
  return answer;
}

int upload_all(std::uint16_t port, const seal::Key& hub, const ShopId& shop,
               const seal::SigningKey& key, const fs::path& folder) {
  StoredFiles files(folder);
  NoEntries entries;
  sync::DeviceEnd device({shop, hub, key, entries, 1});
  sync::PictureEnd pictures(shop, device, files, 1);
  net::Client client(net::device_context(hub), {{"127.0.0.1", port}}, &files);
  const auto began_ms = now_ms();
  bool asked_what_is_lacked = false;
  while (now_ms() - began_ms < most_ms) {
    if (!device.token(now_ms())) {
      auto next = device.next(sync::DeviceEnd::Lane::Push, now_ms());
      if (next.ask) {
        const auto answer = carry(client, next.ask->request);
        device.answered(sync::DeviceEnd::Lane::Push, answer, now_ms());
        if (!answer && answer.error().code == Code::WrongServer) return 1;
        continue;
      }
    }
    bool idle = true;
    for (std::size_t lane = 0; lane < sync::PictureEnd::lanes; ++lane) {
      auto next = pictures.next(lane, now_ms());
      if (!next.ask) continue;
      idle = false;
      const auto answer = carry(client, next.ask->request);
      pictures.answered(lane, answer, now_ms());
      asked_what_is_lacked = asked_what_is_lacked || answer.has_value();
    }
    if (idle && asked_what_is_lacked && pictures.state().to_send == 0) return 0;
    if (idle) std::this_thread::sleep_for(std::chrono::milliseconds(5));
  }
  std::cerr << "not all was sent in " << most_ms << " ms\n";
  return 2;
}
}  // namespace
}  // namespace jambline

int main(int argc, char** argv) {
  using namespace jambline;
  if (argc != 6) {
    std::cerr << "peer-uploader PORT HUB_KEY SHOP SEED FOLDER\n";
    return 2;
  }
  seal::Key hub;
  ShopId shop;
  std::array<std::uint8_t, 32> seed{};
  if (!from_hex(argv[2], hub.bytes) || !from_hex(argv[3], shop.bytes) || !from_hex(argv[4], seed))
    return 2;
  return upload_all(static_cast<std::uint16_t>(std::atoi(argv[1])), hub, shop,
                    seal::SigningKey::from_seed(seed), argv[5]);
}
