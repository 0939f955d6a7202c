// photos_vs_rsync: 200 photos of 1.5 MB to a hub over TLS, against `rsync --fsync` of the same
// folder on this machine, which has no TLS. resent_pct: what it costs on the wire when every
// connection dies after 1 MB, handshakes and all.
#include <cstdlib>
#include <iostream>

#include "tests/bench/sync/bench_device.h"
#include "tests/bench/sync/cutting_proxy.h"
#include "tests/bench/sync/sync_parts.h"

namespace jambline::bench {

namespace {
constexpr std::size_t photo_bytes = 1'500'000;

}  // namespace

std::size_t files_in(const std::filesystem::path& hub, std::size_t size_bytes) {
  std::size_t out = 0;
  for (const auto& item : std::filesystem::recursive_directory_iterator(hub))
    if (item.is_regular_file() && item.path().filename().string().size() >= 60 &&
        item.file_size() == size_bytes)
      ++out;
  return out;
}

void photos_against_rsync() {
  std::vector<double> ratios;
  for (int round = 0; round < 3; ++round) {
    const BenchFolder folder;
    BenchShop shop(folder.path() / "hub", 1);
    FolderFiles files(folder.path() / "photos", 200, photo_bytes, 77);
    const ServerProcess hub("--serve-hub", folder.path() / "hub");
    BenchDevice device(shop.shop(), shop.devices().front(), hub.port(), &files);
    device.must_end = true;
    const double ours_s = seconds([&] { device.send_files(true); });
    const std::string command = "rsync -a --fsync " + (folder.path() / "photos").string() + "/ " +
                                (folder.path() / "copy").string() + "/";
    const double rsync_s = seconds([&] {
      if (std::system(command.c_str()) != 0) std::exit(2);
    });
    if (files_in(folder.path() / "hub", photo_bytes) != 200) {
      std::cerr << "photos are missing at the hub\n";
      std::exit(2);
    }
    ratios.push_back(rsync_s / ours_s);
    std::printf("photos round %d: hub over TLS %.3f s, rsync --fsync without TLS %.3f s\n", round,
                ours_s, rsync_s);
  }
  figure("photos_vs_rsync", median(ratios), "ratio");
}

void photos_cut_again_and_again() {
  std::uint64_t wire[2] = {0, 0};
  for (const std::uint64_t cut_after : {std::uint64_t{0}, std::uint64_t{1'000'000}}) {
    const BenchFolder folder;
    BenchShop shop(folder.path() / "hub", 1);
    FolderFiles files(folder.path() / "photos", 20, photo_bytes, 78);
    const ServerProcess hub("--serve-hub", folder.path() / "hub");
    const CuttingProxy proxy(hub.port(), cut_after);
    BenchDevice device(shop.shop(), shop.devices().front(), proxy.port(), &files);
    device.send_files(false);
    if (files_in(folder.path() / "hub", photo_bytes) != 20) {
      std::cerr << "photos are missing at the hub\n";
      std::exit(2);
    }
    wire[cut_after == 0 ? 0 : 1] = proxy.client_bytes();
    std::printf("20 photos: %llu bytes on the wire, %llu connections, %llu cut\n",
                static_cast<unsigned long long>(proxy.client_bytes()),
                static_cast<unsigned long long>(proxy.connections()),
                static_cast<unsigned long long>(proxy.cuts()));
  }
  figure(
      "resent_pct",
      100.0 * (static_cast<double>(wire[1]) - static_cast<double>(wire[0])) / (20.0 * photo_bytes),
      "%");
}

}  // namespace jambline::bench
