#include "seal/chain.h"

namespace jambline::seal {

namespace {
Error broken(const Header& header, std::string cause) {
  return Error{Code::ChainBroken, "check", "chain", {}}
      .with("device", header.device.hex())
      .with("seq", std::to_string(header.seq))
      .with("cause", std::move(cause));
}
}  // namespace

Status ChainWalk::next(const Header& header, const Hash& hash) {
  if (!shop_) shop_ = header.shop;
  if (header.shop != shop_)
    return fail(Error{Code::WrongShop, "check", "chain", {}}
                    .with("device", header.device.hex())
                    .with("seq", std::to_string(header.seq)));
  const auto found = heads_.find(header.device);
  if (found == heads_.end()) {
    if (header.seq != 1) return fail(broken(header, "entries before it are missing"));
    if (members_ && !members_->first_link(header.device, header.prev_hash))
      return fail(broken(header, "its first link is not its admission"));
    heads_.emplace(header.device, Link{1, hash});
    return {};
  }
  Link& last = found->second;
  if (header.seq != last.seq + 1)
    return fail(broken(header, header.seq <= last.seq ? "this number was there before"
                                                      : "entries before it are missing"));
  if (header.prev_hash != last.hash)
    return fail(broken(header, "it does not name the entry before it"));
  last = {header.seq, hash};
  return {};
}

}  // namespace jambline::seal
