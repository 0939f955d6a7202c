#include "sync_screens.h"

#include "acts.h"
#include "item.h"
#include "rules.h"
#include "screens/devices_view_model.h"
#include "screens/join_view_model.h"
#include "screens/sync_view_model.h"
#include "seal/sign.h"
#include "tests/screens_sync/fake_exchange.h"

namespace jambline::walk {

namespace {
using exchange::Contact;
using exchange::FakeExchange;
using exchange::SyncState;

// Of the shop that is walked; the next one takes its place.
FakeExchange& exchange_of(Shop& shop) {
  static std::unique_ptr<FakeExchange> one;
  auto& sync = shop.program().sync();
  auto next =
      std::make_unique<FakeExchange>([&sync](SyncState state) { sync.publish(std::move(state)); });
  sync.use(next.get());
  one = std::move(next);
  return *one;
}

void say(Shop& shop, FakeExchange& exchange, SyncState state) {
  exchange.say(std::move(state));
  settle(shop.window());
}

SyncState good(Shop& shop) {
  SyncState out;
  out.contact = Contact::Good;
  out.hub_name = "hub in the office";
  out.hub = seal::Key{{7}};
  out.at = {{"192.168.1.20", 8740}, {"hub.shop.lan", 8740}};
  out.contact_ms = shop.program().session().now().wall_ms - 20'000;
  out.all_sent_ms = out.contact_ms;
  return out;
}

SyncState device_waits(Shop& shop) {
  SyncState out = good(shop);
  out.all_sent_ms.reset();
  out.entries_to_send = 12;
  out.pictures_to_send = 3;
  out.bytes_to_send = 4'100'000;
  out.pictures_to_fetch = 40;
  return out;
}

bool sending(Shop& shop, const SyncState& state) {
  say(shop, exchange_of(shop), state);
  return place(shop, "Record", "Sending");
}

bool sending_of(Shop& shop, Contact contact, const char* digits) {
  SyncState state = device_waits(shop);
  state.contact = contact;
  state.digits = digits;
  if (contact == Contact::Forked) state.fork = exchange::Fork{1204, 12};
  return sending(shop, state);
}

bool sending_trouble(Shop& shop) {
  SyncState state = device_waits(shop);
  state.contact = Contact::Trying;
  state.metered = true;
  state.again_ms = shop.program().session().now().wall_ms + 240'000;
  state.trouble =
      Error{Code::WrongServer, "push", "hub", {{"address", "192.168.1.20:8740"}, {"cause", "key"}}};
  return sending(shop, state);
}

bool join(Shop& shop, const SyncState& state, bool read) {
  auto& exchange = exchange_of(shop);
  say(shop, exchange, state);
  if (!place(shop, "Floor", "None")) return false;
  QVariant sheets;
  QMetaObject::invokeMethod(&shop.window(), "sheets", Q_RETURN_ARG(QVariant, sheets));
  auto* sheet = sheets.isValid() ? sheets.value<QObject*>()->property("joinSheet").value<QObject*>()
                                 : nullptr;
  if (!sheet || !QMetaObject::invokeMethod(sheet, "show")) return false;
  if (read) {
    const sync::Invitation code{
        seal::Key{{0x3f, 0x2a}}, ShopId{{3}}, sync::InviteCode{{4}}, {{"192.168.1.20", 8740}}};
    shop.program().join().set_typed(QString::fromStdString(sync::encode(code)));
    shop.program().join().take();
  }
  settle(shop.window());
  return true;
}

SyncState digits_compared(bool brings_shop) {
  SyncState out;
  out.contact = Contact::Joining;
  out.digits = "042 917";
  out.brings_shop = brings_shop;
  return out;
}

bool join_digits(Shop& shop, bool brings_shop) {
  return join(shop, digits_compared(brings_shop), false);
}

// Without a car yet: what a device shows that asks for the first time.
bool floor_waiting(Shop& shop) {
  say(shop, exchange_of(shop), digits_compared(false));
  return place(shop, "Floor", "None");
}

bool join_away(Shop& shop) {
  SyncState state;
  state.contact = Contact::TurnedAway;
  return join(shop, state, false);
}

bool join_wrong(Shop& shop) {
  if (!join(shop, {}, false)) return false;
  shop.program().join().set_typed(QStringLiteral("jambline:1?hub=banana"));
  shop.program().join().take();
  settle(shop.window());
  return true;
}

// A second and a third device of the shop, the third one ended.
seal::Key device_key(std::uint8_t seed) {
  return seal::SigningKey::from_seed({seed}).key();
}

PersonId be_manager(Shop& shop) {
  const PersonId manager = manager_of(shop).value_or(PersonId{});
  if (manager) {
    shop.program().session().choosePerson(QString::fromStdString(manager.hex()));
    settle(shop.window());
  }
  return manager;
}

void let_in(Shop& shop, const PersonId& manager) {
  auto& engine = shop.program().engine();
  if (!manager) return;
  for (const auto& one : engine.snapshot()->devices)
    if (one.device == seal::device_of(device_key(2))) return;
  engine.admit_device({device_key(2), "tablet by the long truck booth", false}, manager, {});
  engine.admit_device({device_key(3), "desk", true}, manager, {});
  engine.admit_device({device_key(4), "phone of the glass tech", false}, manager, {});
  engine.drain();
  engine.revoke_device(seal::device_of(device_key(4)), manager, {});
  engine.drain();
  settle(shop.window());
}

seal::SealedEntry note(const PersonId& by, const char* words, std::uint64_t seq,
                       std::int64_t wall_ms) {
  seal::SealedEntry out;
  entries::NoteWritten said;
  said.text = words;
  const auto written = entries::write(said);
  out.header.kind = written.kind;
  out.header.schema = written.schema;
  out.header.seq = seq;
  out.header.person = by;
  out.header.wall_ms = wall_ms;
  out.hash = Hash{{static_cast<std::uint8_t>(seq)}};
  out.payload = written.payload;
  return out;
}

bool devices(Shop& shop, bool asked) {
  const PersonId manager = be_manager(shop);
  let_in(shop, manager);
  auto& exchange = exchange_of(shop);
  const auto now_ms = shop.program().session().now().wall_ms;
  exchange.last_seen.hub_ms = now_ms;
  exchange.last_seen.seen = {
      {seal::device_of(device_key(2)), now_ms - 300'000, 44, now_ms - 60'000},
      {seal::device_of(device_key(3)), now_ms - 20'000, {}, {}}};
  exchange.invitation = {seal::Key{{0x3f, 0x2a}},
                         ShopId{{3}},
                         sync::InviteCode{{4}},
                         {{"192.168.1.20", 8740}, {"hub.shop.lan", 8740}}};
  if (asked) {
    exchange.waiting = {{device_key(5), "tablet 4", sync::Nonce{{5}}, now_ms - 60'000, false},
                        {device_key(6), "phone of the new body technician", sync::Nonce{{6}},
                         now_ms - 120'000, false}};
    exchange.kept = {{seal::device_of(device_key(4)), 120, 122, 0, now_ms - 3'600'000}};
    exchange.kept_entries = {
        note(manager, "The right mirror is on rack 2", 120, now_ms - 7'200'000),
        note(manager, "The customer comes at noon and wants the old bumper cover back", 121,
             now_ms - 7'100'000),
        note(manager, "Wet", 122, now_ms - 7'000'000)};
  }
  say(shop, exchange, good(shop));
  if (!place(shop, "Record", "Devices")) return false;
  shop.program().devices().look();
  settle(shop.window());
  return true;
}

bool is_managed(Shop& shop) {
  return manager_of(shop).has_value();
}

bool device(Shop& shop, bool ends) {
  if (!devices(shop, false)) return false;
  if (!is_managed(shop)) return press(shop, "device0");
  // The fork is told of the second; the last of those that are in is ended.
  auto& all = shop.program().engine().snapshot()->devices;
  int row = -1;
  for (std::size_t at = 0; at < all.size(); ++at)
    if (all[at].device == seal::device_of(device_key(2))) row = static_cast<int>(at);
  const std::string name = "device" + std::to_string(row);
  return press(shop, name.c_str()) && (!ends || press(shop, "deviceLost"));
}

bool invite(Shop& shop) {
  if (!devices(shop, false)) return false;
  return !is_managed(shop) || press(shop, "devicesInvite");
}

bool kept(Shop& shop) {
  if (!devices(shop, true)) return false;
  return !is_managed(shop) || press(shop, "kept0");
}

bool floor_row(Shop& shop) {
  return devices(shop, true) && place(shop, "Floor", "None");
}
}  // namespace

std::vector<Screen> sync_screens() {
  return {
      {"sending-no-hub", false, [](Shop& shop) { return sending(shop, {}); }},
      {"sending-good", false, [](Shop& shop) { return sending(shop, good(shop)); }},
      {"sending-waits", false, [](Shop& shop) { return sending(shop, device_waits(shop)); }},
      {"sending-trouble", false, sending_trouble},
      {"sending-joining", false,
       [](Shop& shop) { return sending_of(shop, Contact::Joining, "042 917"); }},
      {"sending-revoked", false, [](Shop& shop) { return sending_of(shop, Contact::Revoked, ""); }},
      {"sending-forked", false, [](Shop& shop) { return sending_of(shop, Contact::Forked, ""); }},
      {"sending-forked-asked", false,
       [](Shop& shop) { return sending_of(shop, Contact::Forked, "042 917"); }},
      {"join", false, [](Shop& shop) { return join(shop, {}, false); }},
      {"join-wrong", false, join_wrong},
      {"join-ask", false, [](Shop& shop) { return join(shop, {}, true); }},
      {"join-digits", false, [](Shop& shop) { return join_digits(shop, false); }},
      {"join-confirm", false, [](Shop& shop) { return join_digits(shop, true); }},
      {"join-away", false, join_away},
      {"devices", false, [](Shop& shop) { return devices(shop, false); }},
      {"devices-asked", false, [](Shop& shop) { return devices(shop, true); }},
      {"device", false, [](Shop& shop) { return device(shop, false); }},
      {"device-end", false, [](Shop& shop) { return device(shop, true); }},
      {"device-invite", false, invite},
      {"device-kept", false, kept},
      {"floor-devices", false, floor_row},
      {"floor-waiting", false, floor_waiting},
  };
}

}  // namespace jambline::walk
