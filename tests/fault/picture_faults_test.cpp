// Faults of pictures on their way and at rest. Source: FAULTS.md 5 to 8.
#include "tests/fault/fault_world.h"

namespace jambline::simulator {
namespace {

class PictureFault : public SimFault {
 protected:
  // The original that was taken last; its preview came before it.
  Hash last_file() { return tablet(1).named().back().blob; }
  void send_entries() {
    for (int i = 0; i < 6; ++i) (void)world.request(1, push);
  }
};

using F05UploadCut = PictureFault;
TEST_F(F05UploadCut, AgainAndAgainItComesFurtherEachTime) {
  ASSERT_TRUE(world.take_picture(1));
  send_entries();
  std::map<std::string, std::uint64_t> there;  // of each upload, as the hub says it
  int resumed = 0;
  for (int cut = 0; cut < 60 && world.hub.blobs().size() < 2; ++cut) {
    wait();
    send_entries();
    for (int i = 0; i < 4; ++i) {
      auto flight = world.network.ask(tablet(1), pictures);
      if (!flight) break;
      const bool patch = flight->request.method == sync::Method::Patch;
      if (patch) {
        const auto offset = std::stoull(std::string(flight->request.header("Upload-Offset")));
        auto& before = there[flight->request.target];
        EXPECT_GE(offset, before) << "what had come is gone";
        resumed += offset > before;
        before = offset;
      }
      world.network.to_hub(*flight, patch ? Mishap::CutUp : Mishap::None);
      world.network.deliver(*flight);
    }
  }
  EXPECT_GT(resumed, 0);
  settle();
}

TEST_F(F05UploadCut, AnUploadThatIsOverIsBegunAnewAndTheHubMayRestart) {
  ASSERT_TRUE(world.take_picture(1));
  for (int turn = 0; turn < 12; ++turn) {
    wait();
    send_entries();
    (void)world.request(1, pictures, turn % 2 ? Mishap::GhostUp : Mishap::None);
    if (turn % 3 == 0) (void)world.hub.forget_parts();
    if (turn % 4 == 0) world.restart_hub();
    world.move_flights();
  }
  settle();
}

using F06BytesCorrupted = PictureFault;
TEST_F(F06BytesCorrupted, AtRestAtTheHubAreFoundAndSentOnceMore) {
  ASSERT_TRUE(world.take_picture(1));
  settle();
  const Hash file = last_file();
  ASSERT_TRUE(world.hub.has_blob(file));
  world.hub.damage(file);
  world.hub.scrub();
  EXPECT_FALSE(world.hub.has_blob(file));
  settle();
}

TEST_F(F06BytesCorrupted, OnADevicesDiskAreNeverPublished) {
  ASSERT_TRUE(world.take_picture(1));
  const Hash file = last_file();
  tablet(1).disk().damage(tablet(1).blobs().path_of(file));
  for (int i = 0; i < 40; ++i) {
    wait();
    world.sync(1);
  }
  EXPECT_FALSE(world.hub.has_blob(file));
  const auto& damaged = tablet(1).pictures->state().damaged_here;
  ASSERT_EQ(damaged.size(), 1U) << "it does not say so";
  EXPECT_EQ(damaged.front(), file);
}

TEST_F(F06BytesCorrupted, OnTheirWayDownAreNotKept) {
  ASSERT_TRUE(world.take_picture(1));
  world.sync(1);
  world.hub.damage(last_file());  // nobody has scrubbed yet
  for (int i = 0; i < 8; ++i) {
    wait();
    world.sync(2);
  }
  EXPECT_FALSE(need(tablet(2).blobs().has(last_file()), "has"));
  settle();
  EXPECT_TRUE(tablet(2).blobs().check(last_file()));
}

using F07PictureDoesNotArrive = PictureFault;
TEST_F(F07PictureDoesNotArrive, EverybodyKnowsTheWorkGoesOnAndLateIsWell) {
  ASSERT_TRUE(world.take_picture(1));
  send_entries();
  world.sync(2);
  EXPECT_EQ(tablet(2).pictures->state().to_fetch, 2U);
  EXPECT_FALSE(need(tablet(2).blobs().has(last_file()), "has"));
  ASSERT_TRUE(note(2, "the job goes on"));
  for (int i = 0; i < 30; ++i) {
    world.pass_ms(86'400'000);
    world.sync(2);
    ASSERT_EQ(tablet(2).pictures->state().to_fetch, 2U) << "forgotten on day " << i;
  }
  settle();
}

using F08SamePictureTwice = PictureFault;
TEST_F(F08SamePictureTwice, IsOneFileAndBothEntriesStand) {
  ASSERT_TRUE(world.take_picture(1));
  const Hash file = last_file();
  for (const std::size_t other : {0, 2, 3}) ASSERT_TRUE(world.take_picture(other, true));
  // All four at once, lane by lane.
  for (int i = 0; i < 60; ++i)
    for (std::size_t who = 0; who < 4; ++who)
      world.send(who, static_cast<std::size_t>(i % 4), Mishap::None), world.move_flights();
  settle();
  EXPECT_TRUE(world.hub.has_blob(file));
  EXPECT_EQ(world.hub.blobs().size(), 5U) << "one file and four previews";
  EXPECT_EQ(shown(3, R"("file":")" + file.hex()), 4U);
}

}  // namespace
}  // namespace jambline::simulator
