#include "hub/hub.h"

#include <cerrno>
#include <sys/stat.h>
#include <unistd.h>

#include "hub/small_file.h"
#include "sync/limits.h"
#include "sync/target.h"

namespace jambline::hub {

namespace fs = std::filesystem;

namespace {
constexpr const char* shops_folder = "shops";
constexpr std::string_view unfinished_ending = ".new";

}  // namespace

Status Hub::make(const fs::path& folder, const std::string& name, Random& random) {
  if (name.empty() || name.size() > sync::most_name_bytes)
    return fail(Error{Code::OutOfRange, "make a hub", "name", {}}
                    .with("field", "name")
                    .with("min", "1")
                    .with("max", std::to_string(sync::most_name_bytes)));
  JAMBLINE_TRY(make_folder(folder));
  JAMBLINE_ASSIGN(const log::FolderLock lock, log::FolderLock::take(folder));
  if (fs::exists(folder / hub_key_file))
    return fail(Code::AlreadyDone, "make a hub", folder.string());
  JAMBLINE_TRY(make_folder(folder / shops_folder));
  JAMBLINE_TRY(write_config(folder, {name, {}, sync::usual_port}));
  return seal::SigningKey::make(random).save(folder / hub_key_file);  // last: now it is a hub
}

Hub::Hub(fs::path folder, const Parts& parts, log::FolderLock lock, seal::SigningKey key,
         HubConfig config)
    : folder_(std::move(folder)),
      parts_(parts),
      lock_(std::move(lock)),
      key_(key),
      random_(parts.random),
      config_(std::move(config)) {}

Result<std::unique_ptr<Hub>> Hub::open(fs::path folder, const Parts& parts) {
  struct stat about {};
  if (::stat((folder / hub_key_file).c_str(), &about) != 0)
    return fail(blobs::system_error("open a hub", folder / hub_key_file, errno));
  // What another user (root) writes here the hub's own user could not read any more.
  if (about.st_uid != geteuid())
    return fail(Error{Code::NotAllowed, "open a hub", folder.string(), {}}.with(
        "what", "its files belong to another user"));
  JAMBLINE_ASSIGN(log::FolderLock lock, log::FolderLock::take(folder));
  JAMBLINE_ASSIGN(auto key, seal::SigningKey::load(folder / hub_key_file));
  JAMBLINE_ASSIGN(auto config, read_config(folder));
  std::unique_ptr<Hub> out(
      new Hub(std::move(folder), parts, std::move(lock), key, std::move(config)));
  JAMBLINE_TRY(out->open_shops());
  JAMBLINE_TRY(out->open_lobby());
  return out;
}

ShopPlace::Parts Hub::shop_parts() {
  return {parts_.disk, key_, parts_.clock, random_, config().name, parts_.storage, parts_.note};
}

Status Hub::open_shops() {
  JAMBLINE_ASSIGN(const auto items, parts_.disk.list(folder_ / shops_folder));
  for (const auto& item : items) {
    if (item.kind != blobs::FolderItem::Kind::Folder) continue;
    if (item.name.ends_with(unfinished_ending)) {  // it was never welcomed
      std::error_code ignored;
      fs::remove_all(folder_ / shops_folder / item.name, ignored);
      continue;
    }
    const auto id = ShopId::parse(item.name);
    if (!id) continue;
    auto opened = ShopPlace::open(folder_ / shops_folder / item.name, shop_parts());
    if (opened) {
      shops_[*id] = std::move(*opened);
      continue;
    }
    shut_[*id] = opened.error();
    if (parts_.note)
      parts_.note({parts_.clock.now().wall_ms,
                   "shut",
                   id->hex(),
                   {},
                   0,
                   0,
                   0,
                   std::string(code_name(opened.error().code))});
  }
  return {};
}

Status Hub::open_lobby() {
  JAMBLINE_ASSIGN(auto expected, ExpectedShops::open(folder_));
  // A code that a shop has used already is used, even if the power went just then.
  for (const auto& [id, place] : shops_) {
    JAMBLINE_ASSIGN(const auto invited, place->shop().storage().invited());
    for (const auto& one : invited)
      if (one.for_a_shop) JAMBLINE_TRY(expected.drop(one.code));
  }
  lobby_ = std::make_shared<Lobby>(
      Lobby::Parts{key_, parts_.clock, config_.name,
                   [this](const ShopId& shop, const sync::Invited& invited) {
                     return make_shop(shop, invited);
                   },
                   [this](const std::shared_ptr<ShopPlace>& shop) { welcome(shop); },
                   [this](const ShopId& shop) {
                     const std::lock_guard lock(mutex_);
                     return shops_.contains(shop) || shut_.contains(shop);
                   },
                   parts_.note},
      std::move(expected));
  return {};
}

std::shared_ptr<net::Place> Hub::place_of(const sync::Request& head, sync::Response& refused) {
  const auto target = sync::parse_target(head.target);
  if (!target) {
    refused = sync::response_of(sync::problem(sync::Refusal::NotHere));
    return nullptr;
  }
  if (target->path == sync::Path::About) return lobby_;
  const std::lock_guard lock(mutex_);
  if (const auto found = shops_.find(target->shop); found != shops_.end()) return found->second;
  if (shut_.contains(target->shop)) {
    refused = sync::response_of(sync::problem(sync::Refusal::Failed, "shut"));
    return nullptr;
  }
  return lobby_;
}

HubConfig Hub::config() const {
  const std::lock_guard lock(mutex_);
  return config_;
}

Status Hub::set_config(const HubConfig& config) {
  JAMBLINE_TRY(addresses_of(config));
  JAMBLINE_TRY(write_config(folder_, config));
  const std::lock_guard lock(mutex_);
  config_ = config;
  return {};
}

std::vector<std::shared_ptr<ShopPlace>> Hub::shops() const {
  const std::lock_guard lock(mutex_);
  std::vector<std::shared_ptr<ShopPlace>> out;
  for (const auto& [id, place] : shops_) out.push_back(place);
  return out;
}

std::map<ShopId, Error> Hub::shut() const {
  const std::lock_guard lock(mutex_);
  return shut_;
}

void Hub::set_served(RunAt run) {
  const std::lock_guard lock(mutex_);
  run_ = std::move(run);
}

bool Hub::served() const {
  const std::lock_guard lock(mutex_);
  return static_cast<bool>(run_);
}

void Hub::at(const std::shared_ptr<net::Place>& place, const std::function<void()>& work) {
  RunAt run;
  {
    const std::lock_guard lock(mutex_);
    run = run_;
  }
  if (run) return run(place, work);
  const std::lock_guard lock(unserved_);
  work();
}

void Hub::at_lobby(const std::function<void(Lobby&)>& work) {
  at(lobby_, [&] { work(*lobby_); });
}

Result<std::shared_ptr<ShopPlace>> Hub::make_shop(const ShopId& shop,
                                                  const std::optional<sync::Invited>& invited) {
  const fs::path at = folder_ / shops_folder / shop.hex();
  const auto put_code = [&](const fs::path& in) -> Status {
    if (!invited) return {};
    JAMBLINE_ASSIGN(const auto storage, SqliteHubStorage::open(in, parts_.storage));
    return storage->put_invited(*invited);
  };
  if (fs::exists(at)) {  // made before, and then not opened: the disk was full
    JAMBLINE_TRY(put_code(at));
    return ShopPlace::open(at, shop_parts());
  }
  fs::path made = at;
  made += unfinished_ending;
  std::error_code ignored;
  fs::remove_all(made, ignored);
  JAMBLINE_TRY(make_folder(made));
  JAMBLINE_TRY(SqliteHubStorage::make(made, shop, random_.make<seal::Epoch>()));
  JAMBLINE_TRY(put_code(made));
  JAMBLINE_TRY(sync_folder(made));
  JAMBLINE_TRY(rename_durably(made, at));
  return ShopPlace::open(at, shop_parts());
}

void Hub::welcome(const std::shared_ptr<ShopPlace>& shop) {
  const std::lock_guard lock(mutex_);
  shops_[shop->id()] = shop;
}

}  // namespace jambline::hub
