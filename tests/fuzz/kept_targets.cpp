// Small files that were written by this program or another, and what the command line says to a
// hub.
#include <fstream>

#include "exchange/hub_note.h"
#include "exchange/new_key.h"
#include "hub/control.h"
#include "hub/epoch_file.h"
#include "hub/expected_shops.h"
#include "hub/hub_config.h"
#include "hub/manifest.h"
#include "hub/orders.h"
#include "tests/fuzz/memory_folder.h"
#include "tests/fuzz/promise.h"
#include "tests/hub/sealed_run.h"
#include "tests/seal/format_examples.h"

namespace jambline::fuzz {

namespace {
namespace fs = std::filesystem;

void put_file(const fs::path& file, std::string_view bytes) {
  std::ofstream out(file, std::ios::binary | std::ios::trunc);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  hold(out.good());
}

// Read, written, read again: the same.
template <class Read, class Write>
void kept_the_same(const fs::path& folder, Read read, Write write) {
  const auto value = read(folder);
  if (!value) return;
  hold(write(folder, *value).has_value());
  const auto again = read(folder);
  hold(again.has_value());
  hold(to_json(*again) == to_json(*value));
}

void read_note(const fs::path& folder) {
  const auto note = exchange::read_hub_note(folder);
  if (!note) return;
  hold(note->has_value());
  hold(exchange::addresses_of(**note).size() <= (*note)->at.size());
  hold(exchange::write_hub_note(folder, **note).has_value());
  const auto again = exchange::read_hub_note(folder);
  hold(again && *again && to_json(**again) == to_json(**note));
}

// A hub with one shop in which nobody but itself is a member; one device waits.
hub::Hub& served_hub() {
  struct World {
    SystemClock clock;
    SeededRandom random{5};
    blobs::PosixFiles disk;
    std::unique_ptr<hub::Hub> hub;
    World() {
      const fs::path folder = memory_folder() / "served" / "hub";
      hold(hub::Hub::make(folder, "hub", random).has_value());
      auto opened = hub::Hub::open(folder, {clock, random, disk, {}, {}});
      hold(opened.has_value());
      hub = std::move(*opened);
      hold(hub::found_shop(*hub).has_value());
      const auto invited = hub::invite_device(*hub, {}, 600'000);
      hold(invited.has_value());
      const auto key = test::hub_test_key(4);
      sync::EnrolAsk ask{invited->code, key.key(), "tablet", false, {}};
      ask.proof = key.sign(sync::enrol_words(invited->shop, invited->hub, ask));
      sync::Target target;
      target.path = sync::Path::Enrol;
      target.shop = invited->shop;
      const sync::Request request{sync::Method::Post, sync::target_of(target), {}, to_json(ask)};
      sync::Response refused;
      const auto place = hub->place_of(request, refused);
      hold(place != nullptr);
      const auto handling = place->begin(request, request.body.size(), "10.0.0.1");
      hold(!handling->take(seal::bytes_of(request.body)));
      hold(std::get<sync::Response>(handling->finish()).status == 200);
    }
  };
  static World world;
  return *world.hub;
}

// What only looks, or names one of those who wait or are members.
void obey(const hub::Order& order) {
  using hub::Command;
  switch (order.command) {
    case Command::Pending:
    case Command::Admit:
    case Command::Refuse:
    case Command::Revoke:
    case Command::Status:
      break;
    default:
      return;  // makes files where it is told to
  }
  const auto report = hub::carry_out(served_hub(), order, nullptr, {});
  round_trip<hub::Report>(to_json(report));
  hold(!report.revoked);  // the hub is no device that it cuts off itself
}
}  // namespace

// First byte: which file; the rest: its bytes.
std::vector<std::string> kept_seeds() {
  exchange::HubNote note;
  note.step = exchange::HubStep::Asked;
  note.hub = seal::hub().key();
  note.hub_name = "shop hub";
  note.at = {"192.168.1.20:8740", "[fe80::1]:8740"};
  note.shop = seal::example_header().shop;
  hub::HubConfig config{"shop hub", {"shop-hub.local", "[fe80::1]"}, 8740};
  hub::Manifest manifest;
  manifest.hub = note.hub;
  manifest.shops.push_back({note.shop, seal::filled<seal::Epoch>(0xe0), 3, "shop-1.db",
                            seal::note_example().hash, "blobs-1.txt", seal::note_example().hash,
                            2});
  return {'\0' + to_json(note),
          std::string("\1{\"common_seq\":41}"),
          '\2' + to_json(config),
          '\3' + to_json(hub::EpochFile{seal::filled<seal::Epoch>(0xe0), 41}),
          '\4' + to_json(manifest),
          R"(5{"codes":[{"code":")" + seal::note_example().hash.hex() +
              R"(","until_ms":1772439000000}]})"};
}

void run_kept(Input input) {
  if (input.empty()) return;
  const auto bytes = text_of(input.subspan(1));
  const fs::path folder = memory_folder();
  switch (input[0] % 6) {
    case 0:
      put_file(folder / "note" / "hub.json", bytes);
      return read_note(folder / "note");
    case 1: {
      put_file(folder / "move" / "move.json", bytes);
      const Status moved = exchange::move_to_new_key(folder / "move", {});
      hold(exchange::new_key_noted(folder / "move") == !moved);
      return;
    }
    case 2:
      put_file(folder / "hub" / "hub.json", bytes);
      if (const auto config = hub::read_config(folder / "hub"))
        if (const auto at = hub::addresses_of(*config))
          for (const auto& address : *at) hold(sync::parse_address(address.text()).has_value());
      return kept_the_same(folder / "hub", hub::read_config, hub::write_config);
    case 3:
      put_file(folder / "hub" / hub::epoch_file_name, bytes);
      return kept_the_same(folder / "hub", hub::read_epoch, hub::write_epoch);
    case 4:
      put_file(folder / "backup" / hub::manifest_file, bytes);
      if (const auto manifest = hub::read_manifest(folder / "backup"))
        for (const auto& shop : manifest->shops)
          for (const fs::path name : {shop.database, shop.list})
            hold(name.filename() == name && name != "." && name != "..");
      return kept_the_same(folder / "backup", hub::read_manifest, hub::write_manifest);
    default: {
      fs::create_directory(folder / "codes");
      put_file(folder / "codes" / "expected.json", bytes);
      auto expected = hub::ExpectedShops::open(folder / "codes");
      if (!expected) return;
      SeededRandom random(3);
      hold(expected->invite(test::hub_monday_ms, 600'000, random).has_value());
      const auto again = hub::ExpectedShops::open(folder / "codes");
      hold(again && again->count() == expected->count());
    }
  }
}

// First byte: an order to a hub or its report; the rest: one line.
std::vector<std::string> control_seeds() {
  std::vector<std::string> out;
  for (int command = 0; command <= static_cast<int>(hub::Command::Status); ++command) {
    hub::Order order;
    order.command = static_cast<hub::Command>(command);
    order.text = "012 345";
    out.push_back('\0' + to_json(order));
    order.shop = seal::example_header().shop;
    order.manager = true;
    out.push_back('\0' + to_json(order));
    if (order.command == hub::Command::Pending || order.command == hub::Command::Status ||
        order.command == hub::Command::Revoke) {
      order.shop.reset();
      out.push_back('\1' + to_json(hub::carry_out(served_hub(), order, nullptr, {})));
    }
  }
  return out;
}

void run_control(Input input) {
  if (input.empty()) return;
  const auto line = text_of(input.subspan(1));
  if (input[0] % 2 == 1) {
    round_trip<hub::Report>(line);
    const auto report = from_json<hub::Report>(line);
    if (!report || !report->error) return;
    const Error error = hub::error_of(*report->error);
    hold(hub::said_error(error).facts.size() == report->error->facts.size());
    return;
  }
  round_trip<hub::Order>(line);
  if (const auto order = from_json<hub::Order>(line)) obey(*order);
}

}  // namespace jambline::fuzz
