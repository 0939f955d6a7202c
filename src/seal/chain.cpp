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

ChainWalk::Link* ChainWalk::head_of(const DeviceId& device) {
  if (!latest_head_ || latest_ != device) {
    const auto found = heads_.find(device);
    if (found == heads_.end()) return nullptr;
    latest_ = device;
    latest_head_ = &found->second;
  }
  return latest_head_;
}

Status ChainWalk::next(const Header& header, const Hash& hash) {
  if (!shop_) shop_ = header.shop;
  if (header.shop != shop_)
    return fail(Error{Code::WrongShop, "check", "chain", {}}
                    .with("device", header.device.hex())
                    .with("seq", std::to_string(header.seq)));
  Link* const head = head_of(header.device);
  if (!head) {
    if (stretch_)
      begins_.emplace(header.device, Link{header.seq - 1, header.prev_hash});
    else if (header.seq != 1)
      return fail(broken(header, "entries before it are missing"));
    else if (members_ && !members_->first_link(header.device, header.prev_hash))
      return fail(broken(header, "its first link is not its admission"));
    heads_.emplace(header.device, Link{header.seq, hash});
    return {};
  }
  Link& last = *head;
  if (header.seq != last.seq + 1)
    return fail(broken(header, header.seq <= last.seq ? "this number was there before"
                                                      : "entries before it are missing"));
  if (header.prev_hash != last.hash)
    return fail(broken(header, "it does not name the entry before it"));
  last = {header.seq, hash};
  return {};
}

}  // namespace jambline::seal
