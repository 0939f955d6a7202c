// Who answers is not the hub, or says half of it. Source: FAULTS.md 18 and 19.
#include "base/json.h"
#include "sync/limits.h"
#include "tests/fault/fault_world.h"
#include "tests/fault/wrong_servers.h"

namespace jambline::simulator {
namespace {

using F18WrongAnswers = SimFault;
TEST_F(F18WrongAnswers, ForeignReceiptsMarkNothingAsSent) {
  const auto& state = tablet(1).end->state();
  for (int i = 0; i < 30; ++i) {
    ASSERT_TRUE(note(1, "note " + std::to_string(i)));
    wait();
    for (int turn = 0; turn < 3; ++turn) {
      const bool in_session = tablet(1).end->token(world.time.forward_ms()).has_value();
      (void)world.request(1, push, in_session ? Mishap::OtherReceipt : Mishap::None);
    }
    EXPECT_EQ(state.receipted_seq, 0U);
    world.look();
    ASSERT_TRUE(world.complaints().empty()) << world.complaints().front();
  }
  EXPECT_EQ(count_at_hub(tablet(1).key.device()), 30U);
  settle();
}

TEST_F(F18WrongAnswers, APortalAndAGatewayAreNamedAndTheNextTryWorks) {
  ASSERT_TRUE(note(1, "one") && world.take_picture(1));
  for (const auto mishap : {Mishap::Portal, Mishap::BadGateway})
    for (std::size_t lane = 0; lane < lanes_of_device; ++lane)
      for (int i = 0; i < 4; ++i) {
        wait();
        (void)world.request(1, lane, mishap);
        ASSERT_TRUE(tablet(1).end->state().trouble);
        EXPECT_EQ(tablet(1).end->state().trouble->code, Code::WrongServer);
        EXPECT_EQ(tablet(1).end->state().receipted_seq, 0U);
      }
  settle();
}

// A device as a program, before each of the servers that may answer in the hub's place.
using F18WrongServer = fault::WrongServers;
TEST_F(F18WrongServer, APortalWithoutTlsIsNamed) {
  fault::PlainServer portal(fault::portal_page);
  expect_nothing_goes_to(portal.port());
}
TEST_F(F18WrongServer, APortalWithAKeyOfItsOwnIsNamed) {
  fault::TlsServer portal(sim_key(98), {200, {{"Content-Type", "text/html"}}, "<html>Log in"});
  expect_nothing_goes_to(portal.port());
  EXPECT_EQ(portal.requests(), 0U) << "something was said to it";
}
TEST_F(F18WrongServer, ACertificateOfAnotherThatIsOverIsNamed) {
  fault::TlsServer old(fault::certificate_that_is_over(sim_key(98)), {204, {}, {}});
  expect_nothing_goes_to(old.port());
  EXPECT_EQ(old.requests(), 0U) << "something was said to it";
}
// Tablets wake up in 1970, and the key is what is trusted (PROTOCOL.md, section 1).
TEST_F(F18WrongServer, ACertificateOfTheHubThatIsOverIsStillTheHubs) {
  fault::TlsServer old(fault::certificate_that_is_over(sim_hub_key()), {503, {}, {}});
  fault::DeviceProcess one(device_at(old.port()));
  EXPECT_EQ(one.act("note one"), 1U);
  EXPECT_TRUE(fault::comes_true([&] { return old.requests() > 0; })) << one.state();
}
TEST_F(F18WrongServer, AnotherHubIsNamed) {
  const auto other = folder.path() / "other";
  ASSERT_EQ(fault::run_hub("init --folder '" + other.string() + "' --name other").code, 0);
  ASSERT_EQ(fault::run_hub("found --folder '" + other.string() + "'").code, 0);
  fault::HubProcess hub(other);
  expect_nothing_goes_to(hub.port());
}
TEST_F(F18WrongServer, AGatewaysPageUnderTheHubsKeyIsNamed) {
  fault::TlsServer gateway(sim_hub_key(), {502, {{"Content-Type", "text/html"}}, "<html>502"});
  expect_nothing_goes_to(gateway.port());
  EXPECT_GT(gateway.requests(), 0U);
}
TEST_F(F18WrongServer, APortalsPageUnderTheHubsKeyIsNamed) {
  fault::TlsServer portal(sim_hub_key(), {200, {{"Content-Type", "text/html"}}, "<html>Log in"});
  expect_nothing_goes_to(portal.port());
  EXPECT_GT(portal.requests(), 0U);
}

// The real hub behind TLS on loopback, each of its answers cut at every byte, as if it were whole.
TEST_F(F18WrongServer, EveryAnswerCutAtEveryByteMarksNothingAsSent) {
  cut_every_answer();
}

TEST_F(F18WrongServer, ALineThatGoesDeadAfterAnyNumberOfBytesLosesNothing) {
  cut_the_line();
}

using F19SecondHub = fault::RealShop;
TEST_F(F19SecondHub, OnOneFolderIsRefusedAndTheFirstGoesOn) {
  fault::HubProcess hub(hub_folder);
  const auto second = fault::run_hub("serve --folder '" + hub_folder.string() + "' --port 0");
  EXPECT_EQ(second.code, 2);
  EXPECT_NE(second.said.find("another copy of the program works in this folder"), std::string::npos)
      << second.said;
  const auto device = make_device(1, hub.port());
  fault::DeviceProcess one(device);
  const auto said = one.act("note to the first");
  sync_all({&one});
  EXPECT_EQ(one.close() + hub.end(SIGTERM), 0);
  expect_equal({device}, said);
}

}  // namespace
}  // namespace jambline::simulator
