// push_ratio and pull_ratio: 200 batches of 500 entries to a hub, and back, over TLS on loopback,
// against a bare server that puts the same bytes into a table with the same pragmas.
#include <iostream>

#include "tests/bench/sync/bench_device.h"
#include "tests/bench/sync/sync_parts.h"

namespace jambline::bench {

namespace {
constexpr std::size_t batches = 200;
constexpr std::size_t batch_entries = 500;

std::string payload_words(std::size_t number) {
  return "what was said as number " + std::to_string(number) + ": " + std::string(100, 'w');
}

void must_be_kept(const Result<sync::Response>& answer) {
  if (answer && answer->status == 200 && !answer->body.empty()) return;
  std::cerr << "the bare server refuses\n";
  std::exit(2);
}
}  // namespace

void push_and_pull() {
  std::vector<double> push_ratios;
  std::vector<double> pull_ratios;
  for (int round = 0; round < 7; ++round) {
    const BenchFolder folder;
    BenchShop shop(folder.path() / "hub", 2);
    std::filesystem::create_directory(folder.path() / "bare");
    const ServerProcess hub("--serve-hub", folder.path() / "hub");
    const ServerProcess bare("--serve-bare", folder.path() / "bare");
    const auto& key = shop.devices().front();

    BenchDevice device(shop.shop(), key, hub.port());
    device.must_end = true;
    std::vector<seal::SealedEntry> entries;
    for (std::size_t i = 0; i < batches * batch_entries; ++i) {
      entries.push_back(shop.run().said(key, payload_words(i)));
      if (entries.size() < batch_entries) continue;
      device.store.add(entries);
      entries.clear();
    }
    net::Client plain(net::device_context(bench_hub_key().key()), {{"127.0.0.1", bare.port()}});

    const auto push_ours = [&] { device.push_all(batches * batch_entries); };
    const auto push_bare = [&] {
      for (const auto& pack : device.store.packs())
        must_be_kept(plain.send({sync::Method::Post, "/", {}, pack}));
    };
    double ours_s = 0;
    double bare_s = 0;
    if (round % 2 == 0) ours_s = seconds(push_ours);
    bare_s = seconds(push_bare);
    if (round % 2 == 1) ours_s = seconds(push_ours);
    push_ratios.push_back(bare_s / ours_s);
    std::printf("push round %d: hub %.3f s, bare %.3f s\n", round, ours_s, bare_s);

    BenchDevice reader(shop.shop(), shop.devices().back(), hub.port());
    reader.must_end = true;
    ours_s = seconds([&] { reader.pull_all(batches * batch_entries); });
    bare_s = seconds([&] {
      for (std::size_t i = 0; i < batches; ++i)
        must_be_kept(
            plain.send({sync::Method::Get, "/" + std::to_string(i * batch_entries), {}, {}}));
    });
    pull_ratios.push_back(bare_s / ours_s);
    std::printf("pull round %d: hub %.3f s, bare %.3f s\n", round, ours_s, bare_s);
  }
  figure("push_ratio", median(push_ratios), "ratio");
  figure("pull_ratio", median(pull_ratios), "ratio");
}

}  // namespace jambline::bench
