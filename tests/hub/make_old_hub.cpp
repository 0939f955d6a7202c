// Makes the folder of a hub as this version writes it, for tests/old_versions: run once when a
// version is released, as `make-old-hub FOLDER`; FOLDER.facts tells what it has to serve for ever.
#include <fstream>
#include <iostream>

#include "hub/shop_schema.h"
#include "tests/hub/hub_world.h"

namespace jambline::test {
namespace {

void make_old_hub(const std::filesystem::path& folder) {
  FakeClock clock;
  clock.moment.wall_ms = hub_monday_ms;
  clock.moment.since_boot_ms = 1000;
  SeededRandom random(1);
  blobs::PosixFiles disk;
  good(
      hub::Hub::make(folder, "Hub of version " + std::to_string(hub::shop_schema_version), random));
  std::ofstream facts(folder.string() + ".facts");
  const auto hub = get(hub::Hub::open(folder, {clock, random, disk, {{erasable_kind}, {}, 0}, {}}));
  const ShopId shop = get(hub::found_shop(*hub));
  const auto admit = [&](std::uint8_t number, bool manager) {
    TestDevice device(*hub, hub_test_key(number), shop, hub->key().key());
    const auto asked = device.enrol(get(hub::invite_device(*hub, shop, 600'000)).code, false,
                                    "tablet " + std::to_string(number));
    get(hub::admit_device(*hub, shop, device.digits(asked), manager));
    device.sign_in();
    return device;
  };
  const auto tablet = admit(2, true);
  const auto lost = admit(3, false);
  DeviceChain of_tablet(tablet, shop);
  DeviceChain of_lost(lost, shop);
  auto twin = of_lost;
  tablet.push(of_tablet.many(6));
  tablet.push({of_tablet.said("Erika Mustermann", erasable_kind)});
  const Hash picture = tablet.upload("a picture of the first version");
  lost.push(of_lost.many(3));
  (void)twin.said("x");
  (void)twin.said("y");
  lost.push({twin.said("another at the same place")});  // a fork
  get(hub::revoke_device(*hub, shop, lost.key().device().hex()));
  lost.push(of_lost.many(2));  // kept apart
  TestDevice waiting(*hub, hub_test_key(4), shop, hub->key().key());
  waiting.enrol(get(hub::invite_device(*hub, shop, 600'000)).code);

  const auto page = tablet.pulled();
  std::string bytes;
  for (const auto& entry : page.entries) bytes += seal::encode(entry);
  for (const auto& receipt : page.receipts) bytes += seal::encode(receipt);
  facts << "hub " << hub->key().key().hex() << "\nshop " << shop.hex() << "\nepoch "
        << hub->shops()[0]->shop().storage().epoch().hex() << "\nentries " << page.entries.size()
        << "\npulled " << seal::sha256(seal::bytes_of(bytes)).hex() << "\npicture " << picture.hex()
        << "\n";
}

}  // namespace
}  // namespace jambline::test

int main(int argc, char** argv) {
  if (argc != 2) return std::cerr << "make-old-hub FOLDER\n", 2;
  jambline::test::make_old_hub(argv[1]);
  return 0;
}
