// What schedules of faults have found, each shown by itself. Source: FAULTS.md.
#include <gtest/gtest.h>

#include "tests/simulator/world.h"

namespace jambline::simulator {
namespace {

void expect_equal_end(World& world) {
  world.calm();
  if (world.complaints().empty()) judge(world);
  for (const auto& what : world.complaints()) ADD_FAILURE() << what;
}

constexpr std::int64_t token_over_ms = 3'700'000;

// The first answer to who speaks to a hub that was put back is that it has no session.
void sync_again(World& world, std::size_t number) {
  for (int i = 0; i < 3; ++i) {
    world.pass_ms(10'000);
    world.sync(number);
  }
}

// Fault 12. A device that goes through the hub's log by what it has itself was half through it, so
// its place in the hub's count says nothing any more.
TEST(Found, HubPutBackSilentlyWhileADeviceIsHalfThroughItsLog) {
  World world({7});
  world.hub.read_most(1);
  world.backup_hub();
  const std::size_t first_day = genesis().entries.size();
  for (const std::size_t number : {2, 3}) {
    ASSERT_TRUE(world.say_plate(number));
    world.sync(number);
  }
  for (int i = 0; i < 100 && world.device(1).log_size() <= first_day; ++i)
    (void)world.request(1, 1);
  ASSERT_EQ(world.device(1).log_size(), first_day + 1);
  ASSERT_TRUE(world.put_hub_back(/*declared=*/false));
  ASSERT_TRUE(world.say_plate(3));
  sync_again(world, 3);
  sync_again(world, 2);
  ASSERT_EQ(world.hub.entries().size(), first_day + 3);
  expect_equal_end(world);
}

// Fault 12 and 15. What a hub keeps apart of a revoked device is in no count and in no head.
TEST(Found, HubPutBackSilentlyLosesWhatItKeptApart) {
  World world({7});
  ASSERT_TRUE(world.revoke(0, 3));
  world.sync(0);
  world.backup_hub();
  ASSERT_TRUE(world.say_plate(3));
  sync_again(world, 3);
  ASSERT_EQ(world.hub.apart(sim_key(3).device()).size(), 1U);
  ASSERT_TRUE(world.put_hub_back(/*declared=*/false));
  ASSERT_TRUE(world.hub.apart(sim_key(3).device()).empty());
  expect_equal_end(world);
  EXPECT_EQ(world.hub.apart(sim_key(3).device()).size(), 1U);
}

// Fault 12 and 15. The hub that was put back hears of the cut before it hears again what was said
// after it; who has that from before keeps it, and does not obey it.
TEST(Found, HubPutBackHearsOfACutBeforeWhatSomebodyHasAfterIt) {
  World world({7});
  world.backup_hub();
  ASSERT_TRUE(world.say_plate(2));
  const auto plate = world.device(2).entries().back();
  sync_again(world, 2);
  sync_again(world, 1);
  ASSERT_TRUE(world.device(1).knows(plate.hash));
  const std::string as_all_show = fold_text(world.device(0).entries());
  ASSERT_NE(fold_text(world.device(1).entries()), as_all_show);
  ASSERT_TRUE(world.put_hub_back(/*declared=*/true));
  ASSERT_TRUE(world.revoke(0, 2));
  sync_again(world, 0);
  expect_equal_end(world);
  EXPECT_EQ(world.hub.apart(sim_key(2).device()).size(), 1U);
  EXPECT_FALSE(world.device(0).knows(plate.hash));
  ASSERT_TRUE(world.device(1).knows(plate.hash));
  const std::string value = plate.payload.substr(0, plate.payload.find(','));
  ASSERT_NE(value.find("K "), std::string::npos) << plate.payload;
  EXPECT_EQ(fold_text(world.device(1).entries()).find(value), std::string::npos);
}

// Fault 12 and 18. A receipt from before the hub was put back is the hub's own, of the same epoch
// and for the entry that is here.
TEST(Found, AnOldReceiptForMoreThanWasSentMarksNothingAsSent) {
  World world({7});
  SimDevice& device = world.device(2);
  world.backup_hub();
  for (int i = 0; i < 3; ++i) ASSERT_TRUE(world.say_plate(2));
  world.sync(2);
  ASSERT_EQ(device.end->state().receipted_seq, 3U);
  ASSERT_TRUE(world.put_hub_back(/*declared=*/false));
  world.pass_ms(token_over_ms);
  device.most_run_entries = 1;
  for (int i = 0; i < 20 && world.hub.held(device.key.device()) == 0; ++i) {
    world.pass_ms(10'000);
    const bool in_session = device.end->token(world.time.forward_ms()).has_value();
    (void)world.request(2, 0, in_session ? Mishap::OldReceipt : Mishap::None);
    world.look();
  }
  ASSERT_EQ(world.hub.held(device.key.device()), 1U);
  ASSERT_TRUE(world.network.met[static_cast<std::size_t>(Met::ForeignReceipt)]);
  EXPECT_LE(device.end->state().receipted_seq, 1U);
  expect_equal_end(world);
}

// Fault 12. Who brings a hub that was put back what it had of another device is told of more, for
// that device was there meanwhile: the hub is no wrong server.
TEST(Found, AReceiptForMoreOfAnotherDeviceIsNoWrongServer) {
  World world({7});
  world.backup_hub();
  ASSERT_TRUE(world.say_plate(3));
  world.sync(3);
  world.sync(1);
  ASSERT_TRUE(world.put_hub_back(/*declared=*/false));
  ASSERT_TRUE(world.say_plate(3));
  SimDevice& device = world.device(1);
  world.pass_ms(token_over_ms);
  for (int i = 0; i < 20 && device.end->state().sessions < 2; ++i) {
    world.pass_ms(10'000);
    (void)world.request(1, 0);
  }
  ASSERT_EQ(device.end->state().sessions, 2U);
  ASSERT_EQ(world.hub.held(world.device(3).key.device()), 0U);
  sync_again(world, 3);
  ASSERT_EQ(world.hub.held(world.device(3).key.device()), 2U);
  ASSERT_TRUE(world.request(1, 0));
  EXPECT_TRUE(device.end->state().in_contact);
  EXPECT_FALSE(device.end->state().trouble);
  expect_equal_end(world);
}

// Fault 4 and 18. What a portal's page left of itself on a disk that was full is longer than the
// preview, whose length no entry says.
TEST(Found, APartThatIsLongerThanItsFileIsThrownAway) {
  World world({7});
  ASSERT_TRUE(world.take_picture(2));
  std::optional<sync::FileItem> preview;
  for (const auto& item : world.device(2).named())
    if (item.preview) preview = item;
  ASSERT_TRUE(preview);
  ASSERT_TRUE(world.device(1).write_part({preview->blob, 0, preview->size_bytes}, 0,
                                         std::string(10'000, 'x')));
  world.sync(2);
  expect_equal_end(world);
  EXPECT_TRUE(world.device(1).blobs().check(preview->blob));
}

}  // namespace
}  // namespace jambline::simulator
