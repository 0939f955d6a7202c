#include "tests/fault/real_shop.h"

#include "blobs/blob_store.h"
#include "engine/read_entry.h"
#include "entries/entry.h"
#include "exchange/hub_note.h"
#include "hub/hub.h"
#include "seal/digest.h"
#include "seal/pack.h"
#include "tests/simulator/world.h"

namespace jambline::fault {

using simulator::genesis;
using simulator::need;
using simulator::sim_hub_key;

namespace {
template <class Do>
void at_hub(const fs::path& folder, Do work) {
  SystemClock clock;
  SystemRandom random;
  blobs::PosixFiles disk;
  const auto at =
      need(hub::Hub::open(folder, {clock, random, disk, {entries::erasable_kinds(), {}, 0}, {}}),
           "open hub");
  EXPECT_TRUE(at->shut().empty());
  work(*at);
}

// Every action has all its parts.
void expect_whole_actions(const std::vector<seal::SealedEntry>& entries) {
  std::map<ActionId, int> missing;
  for (const auto& entry : entries)
    missing.try_emplace(entry.header.action, entry.header.parts).first->second -= 1;
  for (const auto& [action, parts] : missing) EXPECT_EQ(parts, 0) << "half an action";
}
}  // namespace

RealShop::RealShop() {
  SystemRandom random;
  need(hub::Hub::make(hub_folder, "hub", random), "make hub");
  fs::remove(hub_folder / hub::hub_key_file);
  need(sim_hub_key().save(hub_folder / hub::hub_key_file), "hub key");
  at_hub(hub_folder, [](hub::Hub& hub) {
    const auto shop = need(hub.make_shop(genesis().shop, std::nullopt), "make shop");
    need(hub.at_shop(shop, [](sync::HubShop& at) { return at.append_own(genesis().entries); }),
         "first day");
  });
}

fs::path RealShop::make_device(std::uint8_t number, std::uint16_t hub_port) {
  const fs::path out = folder.path() / ("device " + std::to_string(number));
  simulator::copy_log(genesis().folder.path() / (number == 0 ? "0" : "1"), out);
  need(simulator::sim_key(number).save(out / "device.key"), "device key");
  exchange::HubNote note;
  note.step = exchange::HubStep::Member;
  note.hub = sim_hub_key().key();
  note.hub_name = "hub";
  note.shop = genesis().shop;
  need(exchange::write_hub_note(out, note), "hub note");
  set_hub_port(out, hub_port);
  return out;
}

void RealShop::set_hub_port(const fs::path& device, std::uint16_t port) {
  auto note = need(exchange::read_hub_note(device), "hub note");
  note->at = {"127.0.0.1:" + std::to_string(port)};
  need(exchange::write_hub_note(device, *note), "hub note");
}

std::vector<seal::SealedEntry> RealShop::entries_of(const fs::path& device) {
  const auto log = need(log::EntryLog::open(device, log::OpenMode::ReadOnly), "open log");
  std::vector<seal::SealedEntry> out;
  need(log->read_after(0,
                       [&](const log::Stored& stored) {
                         out.push_back(stored.entry);
                         return true;
                       }),
       "read log");
  return out;
}

std::vector<seal::SealedEntry> RealShop::entries_of_hub(const fs::path& hub_folder) {
  std::vector<seal::SealedEntry> out;
  at_hub(hub_folder, [&](hub::Hub& hub) {
    for (const auto& shop : hub.shops())
      need(shop->shop().storage().read_after(
               0,
               [&](std::uint64_t, const DeviceId&, std::uint64_t, std::string_view bytes) {
                 out.push_back(need(seal::decode_entry(seal::bytes_of(bytes)), "hub entry"));
                 return true;
               }),
           "hub entries");
  });
  return out;
}

// Entries come before a device has looked which pictures they name: so it is asked a second time.
void RealShop::sync_all(const std::vector<DeviceProcess*>& devices) {
  const auto quiet = [&] {
    std::set<std::string> counts;
    for (auto* device : devices) {
      device->ask("go");
      if (!device->all_sent()) return false;
      const std::string state = device->state();
      counts.insert(state.substr(state.find(" all=")));
    }
    return counts.size() == 1;
  };
  const bool all = comes_true([&] {
    if (!quiet()) return false;
    std::this_thread::sleep_for(std::chrono::milliseconds(250));
    return quiet();
  });
  EXPECT_TRUE(all) << "not all is everywhere";
  if (!all)
    for (auto* device : devices) ADD_FAILURE() << device->state();
}

void RealShop::expect_equal(const std::vector<fs::path>& devices, std::uint64_t said,
                            std::uint64_t unheard) {
  const auto held = entries_of_hub(hub_folder);
  EXPECT_GE(held.size(), first_day_entries() + said) << "something that was shown as done is lost";
  EXPECT_LE(held.size(), first_day_entries() + said + unheard) << "something is there twice";
  expect_whole_actions(held);
  const std::string text = simulator::fold_text(held);
  std::set<Hash> pictures;
  for (const auto& entry : held) {
    const auto read = engine::read_entry(entry);
    if (const auto* taken = read.payload.get_if<entries::PictureTaken>()) {
      pictures.insert(taken->facts.file);
      if (taken->facts.preview) pictures.insert(*taken->facts.preview);
    }
  }
  blobs::PosixFiles files;
  std::vector<fs::path> blob_folders{hub_folder / "shops" / genesis().shop.hex() / "blobs"};
  for (const auto& device : devices) {
    EXPECT_EQ(simulator::fold_text(entries_of(device)), text) << device.filename();
    const auto audit = log::EntryLog::audit(device, {}, {});
    EXPECT_TRUE(audit && !audit->first_bad) << device.filename();
    blob_folders.push_back(device / "blobs");
  }
  for (const auto& at : blob_folders) {
    if (pictures.empty()) break;
    const auto store = blobs::BlobStore::open_read_only(files, at);
    ASSERT_TRUE(store) << at;
    for (const auto& picture : pictures) EXPECT_TRUE((*store)->check(picture)) << at;
  }
  const auto verified = run_hub("verify --folder '" + hub_folder.string() + "'");
  EXPECT_EQ(verified.code, 0) << verified.said;
}

}  // namespace jambline::fault
