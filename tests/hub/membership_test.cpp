// Who is let in is said by entries of the shop's own managers, and by nothing else: those of
// another shop, of a device without the right or of one that was cut off change nothing.
#include "tests/hub/hub_world.h"

namespace jambline::test {
namespace {

class Membership : public HubWorld {
 protected:
  bool is_let_in(const TestDevice& stranger) {
    const auto challenge =
        stranger.send(stranger.request(sync::Path::AskChallenge, sync::Method::Post,
                                       to_json(sync::ChallengeAsk{stranger.key().device()})));
    if (challenge.status != 200) return false;
    sync::SessionAsk ask{stranger.key().device(),
                         get(from_json<sync::ChallengeAnswer>(challenge.body)).challenge,
                         {}};
    ask.proof = stranger.key().sign(
        sync::session_words(shop_of(stranger), hub_key(), ask.device, ask.challenge));
    return stranger.send(stranger.request(sync::Path::Session, sync::Method::Post, to_json(ask)))
               .status == 200;
  }
  static ShopId shop_of(const TestDevice& device) {
    return sync::parse_target(device.request(sync::Path::Pull, sync::Method::Post).target)->shop;
  }
};

TEST_F(Membership, AnAdmissionOfAnotherShopLetsNobodyIn) {
  SealedRun theirs(1);
  brought(theirs);
  const ShopId ours = get(hub::found_shop(*hub));
  const auto member = admitted(3, ours, true);
  const auto stranger = device(9, ours);
  // As it stands in the other shop, and signed by that shop's founder.
  const auto entry = theirs.admitted(stranger.key(), "stranger", true);
  EXPECT_EQ(problem_type(member.push({entry})), "/problems/bad-entry");
  // The same words, in an entry of this shop that the other shop's founder signed.
  TestDevice founder(*hub, theirs.founder(), ours, hub_key());
  founder.token = member.token;
  DeviceChain chain(founder, ours);
  const auto answer = founder.push({chain.admitted(stranger.key().key(), "stranger", true)});
  EXPECT_NE(answer.status, 200) << "an entry of a device that this shop does not know";
  EXPECT_FALSE(is_let_in(stranger));
  EXPECT_TRUE(is_let_in(member));
}

TEST_F(Membership, AnAdmissionByATechniciansDeviceLetsNobodyIn) {
  const ShopId shop = get(hub::found_shop(*hub));
  const auto technician = admitted(3, shop);
  const auto manager = admitted(4, shop, true);
  DeviceChain of_technician(technician, shop);
  const auto stranger = device(9, shop);
  // It is history like all that is signed, and gives nothing.
  EXPECT_EQ(
      technician.push({of_technician.admitted(stranger.key().key(), "stranger", true)}).status,
      200);
  EXPECT_FALSE(is_let_in(stranger));
  // Nor does it make its writer a manager.
  EXPECT_EQ(
      technician.push({of_technician.admitted(technician.key().key(), "tablet", true)}).status,
      200);
  EXPECT_EQ(
      problem_type(technician.send(technician.request(sync::Path::Invite, sync::Method::Post))),
      "/problems/not-a-manager");
  EXPECT_FALSE(is_let_in(stranger));
  // A manager's does.
  DeviceChain of_manager(manager, shop);
  EXPECT_EQ(manager.push({of_manager.admitted(stranger.key().key(), "tablet 9", false)}).status,
            200);
  EXPECT_TRUE(is_let_in(stranger));
}

TEST_F(Membership, WhatARevokedDeviceAdmitsLetsNobodyIn) {
  const ShopId shop = get(hub::found_shop(*hub));
  const auto lost = admitted(3, shop, true);
  DeviceChain chain(lost, shop);
  EXPECT_EQ(lost.push({chain.said("before it was lost")}).status, 200);
  get(hub::revoke_device(*hub, shop, lost.key().device().hex()));
  const auto stranger = device(9, shop);
  const auto answer = lost.push({chain.admitted(stranger.key().key(), "stranger", true)});
  EXPECT_NE(answer.status, 200) << "with the token that it still has";
  EXPECT_FALSE(is_let_in(stranger));
  EXPECT_EQ(problem_type(lost.pull()), "/problems/revoked") << "it may ask why, and reads nothing";
}

}  // namespace
}  // namespace jambline::test
