// hub/hub.h: a hub: one folder with its identity, and a folder a shop.
//
// Shape:   hub.key (0600, the identity; who has it is the hub), hub.json (hub/hub_config.h), lock,
//          expected.json, shops/<32 hex>/ (hub/shop_file.h, hub/shop_files.h). A shop that cannot
//          be opened is shut: it answers nothing, is named by shut() and in the status, and stands
//          in nobody's way.
// Errors:  FolderInUse, NoSuchFile (no hub there), NotAllowed (another user's), those of its files.
// Threads: place_of() and shops() any. What belongs to one shop is done by at(): where its requests
//          run while it is served, else right here.
#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <mutex>

#include "hub/hub_config.h"
#include "hub/lobby.h"
#include "hub/shop_place.h"
#include "log/folder_lock.h"

namespace jambline::hub {

// Several shops draw at once.
class SharedRandom final : public Random {
 public:
  explicit SharedRandom(Random& from) : from_(from) {}
  void fill(std::span<std::uint8_t> bytes) override {
    const std::lock_guard lock(mutex_);
    from_.fill(bytes);
  }

 private:
  std::mutex mutex_;
  Random& from_;
};

inline constexpr const char* hub_key_file = "hub.key";

class Hub final : public net::Site {
 public:
  struct Parts {
    const Clock& clock;
    Random& random;
    blobs::Files& disk;
    ShopFileOptions storage;
    sync::NoteEvent note;  // any thread
  };
  using RunAt =
      std::function<void(const std::shared_ptr<net::Place>&, const std::function<void()>&)>;

  // A new hub: the folder is made when it is not there. AlreadyDone when it is a hub's.
  static Status make(const std::filesystem::path& folder, const std::string& name, Random& random);
  static Result<std::unique_ptr<Hub>> open(std::filesystem::path folder, const Parts& parts);

  // net::Site
  std::shared_ptr<net::Place> place_of(const sync::Request& head, sync::Response& refused) override;

  const std::filesystem::path& folder() const { return folder_; }
  const seal::SigningKey& key() const { return key_; }
  HubConfig config() const;
  Status set_config(const HubConfig& config);
  const Clock& clock() const { return parts_.clock; }
  Random& random() { return random_; }
  std::vector<std::shared_ptr<ShopPlace>> shops() const;
  std::map<ShopId, Error> shut() const;
  Lobby& lobby() { return *lobby_; }

  // Set while it is served, and taken back before the server goes.
  void set_served(RunAt run);
  bool served() const;
  void at(const std::shared_ptr<net::Place>& place, const std::function<void()>& work);
  void at_lobby(const std::function<void(Lobby&)>& work);
  template <class Work>
  auto at_shop(const std::shared_ptr<ShopPlace>& place, Work work) {
    std::optional<decltype(work(place->shop()))> out;
    at(place, [&] { out.emplace(work(place->shop())); });
    return std::move(*out);
  }

  // A new shop whose storage is empty.
  Result<std::shared_ptr<ShopPlace>> make_shop(const ShopId& shop,
                                               const std::optional<sync::Invited>& invited);
  void welcome(const std::shared_ptr<ShopPlace>& shop);

 private:
  Hub(std::filesystem::path folder, const Parts& parts, log::FolderLock lock, seal::SigningKey key,
      HubConfig config);
  Status open_shops();
  Status open_lobby();
  ShopPlace::Parts shop_parts();

  std::filesystem::path folder_;
  Parts parts_;
  log::FolderLock lock_;
  seal::SigningKey key_;
  SharedRandom random_;
  mutable std::mutex mutex_;  // guards the five below
  HubConfig config_;
  std::map<ShopId, std::shared_ptr<ShopPlace>> shops_;
  std::map<ShopId, Error> shut_;
  RunAt run_;
  std::shared_ptr<Lobby> lobby_;
  std::recursive_mutex unserved_;  // while nobody serves, one thing at a time
};

}  // namespace jambline::hub
