#include "tests/bench/sync/bench_hub.h"

#include <csignal>
#include <fstream>
#include <iostream>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "hub/hub.h"
#include "net/server.h"
#include "seal/digest.h"
#include "sync/handlings.h"

namespace jambline::bench {

namespace {
void must(const Status& status, const char* what) {
  if (status) return;
  std::cerr << what << ": " << code_name(status.error().code) << " " << status.error().arg("cause")
            << "\n";
  std::exit(2);
}
template <class T>
T must_get(Result<T> result, const char* what) {
  if (!result) must(fail(result.error()), what);
  return std::move(*result);
}

net::ServerOptions loopback() {
  net::ServerOptions options;
  options.host = "127.0.0.1";
  options.port = 0;
  return options;
}

int serve(net::Site& site) {
  const auto tls = must_get(net::hub_context(bench_hub_key(), SystemClock()), "certificate");
  const auto server = must_get(net::Server::start(tls, site, loopback(), {}), "listen");
  std::cout << server->port() << std::endl;
  std::string line;
  std::getline(std::cin, line);
  return 0;
}

// The baseline: each entry of a body is put into a table, one transaction a request, with the
// hub's pragmas, and nothing else is looked at. GET gives them back as they lie.
class BarePlace final : public net::Place {
 public:
  explicit BarePlace(const std::filesystem::path& folder)
      : database_(
            must_get(sqlite::Database::open(folder / "bare.db", sqlite::Database::Mode::Create, {}),
                     "bare.db")) {
    must(database_.run("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;"
                       "PRAGMA recursive_triggers=ON; PRAGMA secure_delete=ON;"
                       "PRAGMA temp_store=MEMORY;"
                       "CREATE TABLE IF NOT EXISTS entries(n INTEGER PRIMARY KEY, bytes BLOB)"),
         "table");
    insert_ = must_get(database_.prepare("INSERT INTO entries(bytes) VALUES(?1)"), "insert");
    read_ = must_get(
        database_.prepare("SELECT bytes FROM entries WHERE n > ?1 ORDER BY n LIMIT 500"), "read");
  }
  std::unique_ptr<sync::Handling> begin(const sync::Request& head, std::optional<std::uint64_t>,
                                        const std::string&) override {
    if (head.method == sync::Method::Get)
      return sync::answered({200, {}, page(std::strtoll(head.target.c_str() + 1, nullptr, 10))});
    return std::make_unique<sync::Whole>(1U << 20U, [this](const std::string& body) {
      return sync::Response{200, {}, insert(body) ? "kept" : ""};
    });
  }
  std::uint64_t changes() const override { return 0; }

 private:
  bool insert(const std::string& body) {
    must(database_.run("BEGIN IMMEDIATE"), "begin");
    const auto bytes = seal::bytes_of(body);
    for (std::size_t at = 0; at + 4 <= bytes.size();) {
      std::size_t length = 0;
      for (int i = 0; i < 4; ++i) length = length << 8U | bytes[at++];
      insert_.bind(1, bytes.subspan(at, length));
      must(insert_.finish(), "insert");
      at += length;
    }
    must(database_.run("COMMIT"), "commit");
    return true;
  }
  std::string page(std::int64_t after) {
    std::string out;
    read_.bind(1, after);
    while (must_get(read_.step(), "read")) {
      const auto bytes = read_.bytes(0);
      out.append(reinterpret_cast<const char*>(bytes.data()), bytes.size());
    }
    read_.reset();
    return out;
  }

  sqlite::Database database_;
  sqlite::Statement insert_;
  sqlite::Statement read_;
};

class BareSite final : public net::Site {
 public:
  explicit BareSite(const std::filesystem::path& folder)
      : place_(std::make_shared<BarePlace>(folder)) {}
  std::shared_ptr<net::Place> place_of(const sync::Request&, sync::Response&) override {
    return place_;
  }

 private:
  std::shared_ptr<net::Place> place_;
};
}  // namespace

seal::SigningKey bench_hub_key() {
  return test::hub_test_key(200);
}

BenchShop::BenchShop(const std::filesystem::path& folder, std::size_t devices) {
  SystemRandom random;
  must(hub::Hub::make(folder, "bench", random), "hub");
  std::filesystem::remove(folder / hub::hub_key_file);
  must(bench_hub_key().save(folder / hub::hub_key_file), "hub.key");
  std::vector<seal::SealedEntry> entries{run_.founded(), run_.hub_admitted(bench_hub_key().key())};
  for (std::size_t i = 0; i < devices; ++i) {
    keys_.push_back(seal::SigningKey::make(random));
    entries.push_back(run_.admitted(keys_.back(), "device " + std::to_string(i)));
  }
  const auto shop_folder = folder / "shops" / shop().hex();
  std::filesystem::create_directory(shop_folder);
  must(hub::SqliteHubStorage::make(shop_folder, shop(), random.make<seal::Epoch>()), "shop");
  const auto storage = must_get(hub::SqliteHubStorage::open(shop_folder, {}), "shop");
  must(blobs::PosixFiles().sync_folder(folder), "folder");
  const auto& last = entries.back();
  const auto sign = [&](std::uint64_t first_seq, std::uint64_t last_seq) {
    seal::Receipt receipt;
    receipt.shop = shop();
    receipt.epoch = storage->epoch();
    receipt.device = last.header.device;
    receipt.seq = last.header.seq;
    receipt.hash = last.hash;
    receipt.hub_seq_first = first_seq;
    receipt.hub_seq_last = last_seq;
    seal::sign(receipt, bench_hub_key());
    return receipt;
  };
  must_get(storage->append(entries, {}, sign), "founding");
}

ServerProcess::ServerProcess(const char* what, const std::filesystem::path& folder) {
  int to_child[2];
  int from_child[2];
  if (pipe(to_child) != 0 || pipe(from_child) != 0) std::abort();
  pid_ = fork();
  if (pid_ == 0) {
    dup2(to_child[0], 0);
    dup2(from_child[1], 1);
    for (int fd = 3; fd < 1024; ++fd) ::close(fd);
    execl("/proc/self/exe", "bench-sync", what, folder.c_str(), nullptr);
    _exit(127);
  }
  ::close(to_child[0]);
  ::close(from_child[1]);
  in_ = to_child[1];
  out_ = from_child[0];
  std::string line;
  char sign = 0;
  while (read(out_, &sign, 1) == 1 && sign != '\n') line.push_back(sign);
  port_ = static_cast<std::uint16_t>(std::atoi(line.c_str()));
  if (port_ == 0) {
    std::cerr << what << " does not serve\n";
    std::exit(2);
  }
}

ServerProcess::~ServerProcess() {
  ::close(in_);
  ::close(out_);
  int status = 0;
  waitpid(pid_, &status, 0);
  if (status != 0) std::cerr << "a server ended with " << status << "\n";
}

double ServerProcess::most_memory_mb() const {
  std::ifstream status("/proc/" + std::to_string(pid_) + "/status");
  std::string word;
  while (status >> word)
    if (word == "VmHWM:") {
      double kilobytes = 0;
      status >> kilobytes;
      return kilobytes / 1024;
    }
  return -1;
}

int serve_hub(const std::filesystem::path& folder) {
  rlimit files{4096, 4096};
  setrlimit(RLIMIT_NOFILE, &files);
  const SystemClock clock;
  SystemRandom random;
  blobs::PosixFiles disk;
  const auto hub = must_get(hub::Hub::open(folder, {clock, random, disk, {}, {}}), "hub");
  return serve(*hub);
}

int serve_bare(const std::filesystem::path& folder) {
  BareSite site(folder);
  return serve(site);
}

}  // namespace jambline::bench
