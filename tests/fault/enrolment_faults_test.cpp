// How a device comes in, when it does not go smoothly. Source: FAULTS.md 20.
#include "base/json.h"
#include "engine/shop_devices.h"
#include "sync/limits.h"
#include "tests/fault/fault_world.h"

namespace jambline::simulator {
namespace {

class F20Enrolment : public SimFault {
 protected:
  sync::Response enrol(const seal::SigningKey& key, const sync::InviteCode& code,
                       Mishap mishap = Mishap::None) {
    sync::EnrolAsk ask{code, key.key(), "tablet", false, {}};
    ask.proof = key.sign(sync::enrol_words(genesis().shop, world.hub.key.key(), ask));
    sync::Target target;
    target.path = sync::Path::Enrol;
    target.shop = genesis().shop;
    sync::Request request{sync::Method::Post, sync::target_of(target), {}, to_json(ask)};
    world.pass_ms(1000);
    return world.network.once(request, "peer", mishap).value_or(sync::Response{});
  }
  sync::EnrolAnswer answer(const sync::Response& response) {
    return need(from_json<sync::EnrolAnswer>(response.body), "enrol answer");
  }
};

TEST_F(F20Enrolment, AnAnswerThatWasLostIsGivenAgainToTheSameKey) {
  const auto code = need(world.hub.shop->invite(false, sync::code_lives_ms), "invite");
  EXPECT_EQ(enrol(sim_key(50), code, Mishap::LostAfter).status, 0);
  ASSERT_EQ(need(world.hub.shop->pending(), "pending").size(), 1U);
  const auto first = enrol(sim_key(50), code);
  ASSERT_EQ(first.status, 200);
  world.restart_hub();
  const auto again = enrol(sim_key(50), code);
  ASSERT_EQ(again.status, 200);
  EXPECT_EQ(answer(first).nonce, answer(again).nonce) << "other digits";
  EXPECT_EQ(need(world.hub.shop->pending(), "pending").size(), 1U);
}

TEST_F(F20Enrolment, TwoRaceForOneCodeAndOneIsRefused) {
  const auto code = need(world.hub.shop->invite(false, sync::code_lives_ms), "invite");
  EXPECT_EQ(enrol(sim_key(50), code).status, 200);
  EXPECT_EQ(enrol(sim_key(51), code).status, 403);
  ASSERT_EQ(need(world.hub.shop->pending(), "pending").size(), 1U);
  EXPECT_EQ(need(world.hub.shop->pending(), "pending").front().device_key, sim_key(50).key());
}

TEST_F(F20Enrolment, ACodeIsOverAfterItsTime) {
  const auto code = need(world.hub.shop->invite(false, sync::code_lives_ms), "invite");
  world.pass_ms(sync::code_lives_ms);
  EXPECT_EQ(enrol(sim_key(50), code).status, 403);
}

TEST_F(F20Enrolment, WithEveryAnswerLostOnceItStillComesIn) {
  for (int i = 0; i < 4; ++i) {
    world.move_enrolment(Mishap::LostAfter);
    world.move_enrolment(Mishap::LostBefore);
  }
  settle();
  EXPECT_TRUE(tablet(late_device).member);
  ASSERT_TRUE(note(late_device, "mine"));
  settle();
}

TEST_F(F20Enrolment, WhoLostItsKeyComesInUnderAnotherAndTheOldOneEndsWithItsLastEntry) {
  settle();  // the late device comes in
  ASSERT_TRUE(note(late_device, "by the old key"));
  settle();
  const auto old = tablet(late_device).key.device();
  const auto last = tablet(late_device).own_seq();
  ASSERT_TRUE(world.revoke(0, late_device));
  EXPECT_EQ(tablet(late_device).cut_seq, last);
  const auto code = need(world.hub.shop->invite(false, sync::code_lives_ms), "invite");
  ASSERT_EQ(enrol(sim_key(52), code).status, 200);
  ASSERT_TRUE(world.say_raw(0, engine::draft_of(engine::Admission{sim_key(52).key(), "again"})));
  settle();
  EXPECT_EQ(count_at_hub(old), last);
  EXPECT_TRUE(tablet(1).log().members().find(sim_key(52).device()));
  bool still_there = false;
  for (const auto& entry : tablet(1).entries())
    still_there = still_there || entry.payload.find("by the old key") != std::string::npos;
  EXPECT_TRUE(still_there);
}

}  // namespace
}  // namespace jambline::simulator
