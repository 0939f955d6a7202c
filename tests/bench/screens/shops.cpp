#include "tests/bench/screens/shops.h"

#include <map>
#include <unistd.h>

#include "app/demo/demo_shop.h"
#include "base/clock.h"
#include "base/json.h"
#include "engine/read_entry.h"
#include "log/entry_log.h"
#include "log/shop_folder.h"
#include "seal/membership.h"
#include "tests/bench/figures.h"
#include "tests/bench/no_ballast.h"

namespace jambline::bench {

namespace {
demo::DemoOptions demo_of(ShopSize size, std::uint64_t seed) {
  demo::DemoOptions options;
  options.seed = seed;
  options.delivered = size.delivered;
  options.in_work = size.in_work;
  options.now = SystemClock().now();
  return options;
}

// Where a commit costs nothing: what is only made, not measured.
std::filesystem::path quick_place() {
  const std::filesystem::path memory = "/dev/shm";
  return access(memory.c_str(), W_OK) == 0 ? memory : std::filesystem::temp_directory_path();
}

std::unique_ptr<log::EntryLog> open_log(const std::filesystem::path& folder) {
  return must(log::EntryLog::open(folder, log::OpenMode::Write, no_ballast()), "open a log");
}
}  // namespace

std::uint64_t make_demo(const std::filesystem::path& folder, ShopSize size) {
  must(demo::make_shop(folder, demo_of(size, 41)), "make the demo shop");
  const auto log =
      must(log::EntryLog::open(folder, log::OpenMode::ReadOnly, no_ballast()), "read the shop");
  return static_cast<std::uint64_t>(log->last_arrival());
}

std::vector<std::filesystem::path> packs_of_other_tablet(const std::filesystem::path& folder,
                                                         const std::filesystem::path& into,
                                                         int cars, std::uint64_t seed) {
  SeededRandom random(seed);
  const auto own = must(seal::SigningKey::load(folder / "device.key"), "the shop's key");
  const auto other = seal::SigningKey::make(random);
  const SystemClock clock;
  const BenchFolder beside(quick_place());
  const auto there = open_log(beside.path());
  {
    const auto here = open_log(folder);
    const log::Draft admitted{{},
                              seal::kind::device_admitted,
                              1,
                              to_json(seal::DeviceAdmitted{other.key(), "one more tablet", false})};
    must(here->append(own, {}, {&admitted, 1}, clock.now(), random), "admit a tablet");
    std::vector<seal::SealedEntry> page;
    const auto hand_over = [&] {
      must(there->add(page), "copy the shop");
      page.clear();
    };
    must(here->read_after(0,
                          [&](const log::Stored& stored) {
                            page.push_back(stored.entry);
                            if (page.size() == 5000) hand_over();
                            return true;
                          }),
         "read the shop");
    hand_over();
  }
  demo::Sinks sinks;
  sinks.here = [&](const PersonId& person, const std::vector<acts::Draft>& drafts,
                   const Moment& moment) -> Result<std::vector<entries::Entry>> {
    std::vector<log::Draft> bytes;
    for (const auto& draft : drafts) {
      auto text = entries::write(draft.payload);
      bytes.push_back({draft.subject, text.kind, text.schema, std::move(text.payload)});
    }
    JAMBLINE_ASSIGN(const auto stored, there->append(other, person, bytes, moment, random));
    std::vector<entries::Entry> out;
    for (const auto& one : stored) out.push_back(engine::read_entry(one.entry));
    return out;
  };
  must(demo::make_entries(demo_of({cars, 0}, seed), sinks), "write on the other tablet");
  namespace fs = std::filesystem;
  const BenchFolder out;
  must(log::export_shop(*there, out.path() / "shop", {}, {}), "export");
  std::map<std::uint64_t, fs::path> packs;  // by first number
  const std::string device = other.device().hex();
  for (const auto& file : fs::directory_iterator(out.path() / "shop" / "entries")) {
    const std::string name = file.path().filename().string();
    if (name.starts_with(device + '-'))
      packs[std::stoull(name.substr(device.size() + 1))] = file.path();
  }
  std::vector<fs::path> laid;
  for (const auto& [first, pack] : packs) {
    laid.push_back(into / (std::to_string(seed) + '-' + std::to_string(first)));
    fs::create_directories(laid.back() / "entries");
    fs::copy_file(pack, laid.back() / "entries" / pack.filename());
  }
  return laid;
}

}  // namespace jambline::bench
