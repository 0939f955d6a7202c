#include "hub/shop_place.h"

#include "sync/target.h"

namespace jambline::hub {

namespace {
// A path that is none never comes here; if it did, it is answered as one that is not there.
class NotHere final : public sync::Handling {
 public:
  std::uint64_t most_body_bytes() const override { return 0; }
  std::optional<sync::Response> take(std::span<const std::uint8_t>) override { return response(); }
  sync::Outcome finish() override { return response(); }

 private:
  static sync::Response response() {
    return sync::response_of(sync::problem(sync::Refusal::NotHere));
  }
};
}  // namespace

Result<std::shared_ptr<ShopPlace>> ShopPlace::open(std::filesystem::path folder,
                                                   const Parts& parts) {
  std::shared_ptr<ShopPlace> out(new ShopPlace);
  out->folder_ = std::move(folder);
  JAMBLINE_ASSIGN(out->storage_, SqliteHubStorage::open(out->folder_, parts.storage));
  out->id_ = out->storage_->shop();
  if (out->folder_.filename().string() != out->id_.hex())
    return fail(Error{Code::WrongShop, "open", "shop.db", {}}.with("shop", out->id_.hex()));
  JAMBLINE_ASSIGN(out->files_,
                  ShopFiles::open(parts.disk, out->folder_, parts.clock.now().wall_ms));
  JAMBLINE_ASSIGN(out->shop_,
                  sync::HubShop::open({*out->storage_, *out->files_, parts.key, parts.clock,
                                       parts.random, parts.hub_name, parts.note}));
  return out;
}

std::unique_ptr<sync::Handling> ShopPlace::begin(const sync::Request& head,
                                                 std::optional<std::uint64_t> body_bytes,
                                                 const std::string& peer) {
  const auto target = sync::parse_target(head.target);
  if (!target || target->shop != id_) return std::make_unique<NotHere>();
  return shop_->begin(head, *target, body_bytes, peer);
}

}  // namespace jambline::hub
