// hub/shop_place.h: one shop of a hub: its folder, its storage and files, and its end of the
// protocol.
//
// Threads: begin(), changes() and shop() where the place's requests run; files() and folder() any.
// Errors:  of open(): those of hub/shop_file.h and hub/shop_files.h.
#pragma once

#include <filesystem>
#include <memory>

#include "hub/shop_file.h"
#include "hub/shop_files.h"
#include "net/server.h"

namespace jambline::hub {

class ShopPlace final : public net::Place {
 public:
  struct Parts {
    blobs::Files& disk;
    const seal::SigningKey& key;
    const Clock& clock;
    Random& random;  // any thread
    std::string hub_name;
    ShopFileOptions storage;
    sync::NoteEvent note;
  };
  static Result<std::shared_ptr<ShopPlace>> open(std::filesystem::path folder, const Parts& parts);

  std::unique_ptr<sync::Handling> begin(const sync::Request& head,
                                        std::optional<std::uint64_t> body_bytes,
                                        const std::string& peer) override;
  std::uint64_t changes() const override { return shop_->changes(); }

  sync::HubShop& shop() { return *shop_; }
  ShopFiles& files() { return *files_; }
  const std::filesystem::path& folder() const { return folder_; }
  const ShopId& id() const { return id_; }

 private:
  ShopPlace() = default;
  std::filesystem::path folder_;
  ShopId id_;
  std::unique_ptr<ShopFiles> files_;
  std::unique_ptr<SqliteHubStorage> storage_;
  std::unique_ptr<sync::HubShop> shop_;  // last: it works on those before
};

}  // namespace jambline::hub
