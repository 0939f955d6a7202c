// Who may not get in, and with what: codes, challenges, tokens, other shops. Our own design,
// PROTOCOL.md sections 3 and 4. Each refusal is noted, with its cause and nothing of what was said.
#include "sync/limits.h"
#include "tests/sync/small_hub.h"

namespace jambline::test {
namespace {

std::string refusal(const sync::Response& response) {
  const auto why = sync::problem_of(response);
  return why ? why->type : std::to_string(response.status);
}

sync::EnrolAsk enrolment(const SmallHub& hub, const seal::SigningKey& key,
                         const sync::InviteCode& code, const std::string& name = "a tablet") {
  sync::EnrolAsk ask{code, key.key(), name, false, {}};
  ask.proof = key.sign(sync::enrol_words(hub.run.shop(), hub.key.key(), ask));
  return ask;
}

TEST(SecurityCodes, APhotographedCodeIsGoodForOneKey) {
  SmallHub hub;
  const auto code = hub.shop->invite(false, sync::code_lives_ms);
  ASSERT_TRUE(code);
  const auto first = hub_test_key(50);
  const auto thief = hub_test_key(51);
  const auto ask = [&](const seal::SigningKey& key) {
    return hub.ask(hub.post("enrol", to_json(enrolment(hub, key, *code))));
  };
  const auto good = from_json<sync::EnrolAnswer>(ask(first).body);
  ASSERT_TRUE(good);
  EXPECT_EQ(good->state, sync::EnrolState::Waiting);
  EXPECT_EQ(refusal(ask(thief)), "/problems/bad-code");
  const auto again = from_json<sync::EnrolAnswer>(ask(first).body);
  ASSERT_TRUE(again);
  EXPECT_EQ(again->nonce, good->nonce);  // the same digits, not others
  EXPECT_NE(sync::six_digits(hub.run.shop(), thief.key(), hub.key.key(), good->nonce),
            sync::six_digits(hub.run.shop(), first.key(), hub.key.key(), good->nonce));
  ASSERT_TRUE(hub.shop->pending());
  EXPECT_EQ(hub.shop->pending()->size(), 1U);
  EXPECT_TRUE(hub.token(thief).empty());
  EXPECT_TRUE(hub.token(first).empty());  // nobody has compared anything yet
}

TEST(SecurityCodes, AnOldGuessedOrForeignCodeIsRefusedAndNoted) {
  SmallHub hub;
  const auto code = hub.shop->invite(false, sync::code_lives_ms);
  ASSERT_TRUE(code);
  const auto key = hub_test_key(50);
  const auto ask = [&](const sync::EnrolAsk& one) {
    return refusal(hub.ask(hub.post("enrol", to_json(one))));
  };
  sync::InviteCode guessed = *code;
  guessed.bytes[15] ^= 1;
  EXPECT_EQ(ask(enrolment(hub, key, guessed)), "/problems/bad-code");
  EXPECT_EQ(ask(enrolment(hub, key, {})), "/problems/bad-code");
  SmallHub other_hub;
  other_hub.key = hub_test_key(201);
  EXPECT_EQ(ask(enrolment(other_hub, key, *code)), "/problems/bad-request");  // proof for another
  auto stolen = enrolment(hub, key, *code);
  stolen.device_key = hub_test_key(51).key();
  EXPECT_EQ(ask(stolen), "/problems/bad-request");
  hub.clock.advance_ms(sync::code_lives_ms + 1);
  EXPECT_EQ(ask(enrolment(hub, key, *code)), "/problems/bad-code");
  EXPECT_NE(hub.said_events().find("/problems/bad-code"), std::string::npos);
}

TEST(SecuritySessions, AChallengeIsGoodForOneAnswer) {
  SmallHub hub;
  const auto challenge = hub.challenge(hub.tablet);
  const auto proof = to_json(hub.proof(hub.tablet, challenge));
  EXPECT_EQ(hub.ask(hub.post("session", proof)).status, 200);
  EXPECT_EQ(refusal(hub.ask(hub.post("session", proof))), "/problems/no-session");
}

TEST(SecuritySessions, AWrongAnswerUsesTheChallengeUp) {
  SmallHub hub;
  const auto challenge = hub.challenge(hub.tablet);
  auto wrong = hub.proof(hub.desk, challenge);
  EXPECT_EQ(refusal(hub.ask(hub.post("session", to_json(wrong)))), "/problems/no-session");
  EXPECT_EQ(refusal(hub.ask(hub.post("session", to_json(hub.proof(hub.tablet, challenge))))),
            "/problems/no-session");
}

TEST(SecuritySessions, AnOldChallengeAndAnotherHubsProofAreRefused) {
  SmallHub hub;
  auto challenge = hub.challenge(hub.tablet);
  hub.clock.advance_ms(sync::challenge_lives_ms + 1);
  EXPECT_EQ(refusal(hub.ask(hub.post("session", to_json(hub.proof(hub.tablet, challenge))))),
            "/problems/no-session");
  challenge = hub.challenge(hub.tablet);
  SmallHub other;
  other.key = hub_test_key(201);
  EXPECT_EQ(refusal(hub.ask(hub.post("session", to_json(other.proof(hub.tablet, challenge))))),
            "/problems/no-session");
}

TEST(SecuritySessions, ATokenEndsWithItsTime) {
  SmallHub hub;
  const std::string token = hub.token(hub.tablet);
  EXPECT_EQ(hub.ask(hub.post("pull", to_json(sync::PullAsk{}), token)).status, 200);
  hub.clock.advance_ms(sync::token_lives_ms + 1);
  EXPECT_EQ(refusal(hub.ask(hub.post("pull", to_json(sync::PullAsk{}), token))),
            "/problems/no-session");
}

TEST(SecuritySessions, ATokenOfAnotherShopOrAMadeUpOneOpensNothing) {
  SmallHub hub;
  SmallHub other;
  const std::string foreign = [&] {
    for (int i = 0; i < 3; ++i) other.random.make<Hash>();  // other draws than the first hub's
    return other.token(other.tablet);
  }();
  const std::string rest[] = {"pull", "have", "files",
                              "log/" + hub.tablet.device().hex() + "?from=1", "invite"};
  for (const std::string& token : {foreign, std::string(64, '0'), std::string(63, 'a'),
                                   std::string("../") + std::string(61, 'a'), std::string()})
    for (const std::string& path : rest)
      EXPECT_EQ(refusal(hub.ask(hub.post(path, "", token))), "/problems/no-session") << path;
}

TEST(SecuritySessions, ATechniciansDeviceDoesNothingOfAManagers) {
  SmallHub hub;
  const std::string token = hub.token(hub.tablet);
  for (const std::string& path : {std::string("invite"), "refuse/" + hub.desk.device().hex(),
                                  "quarantine/" + hub.desk.device().hex() + "/settled?through=1"})
    EXPECT_EQ(refusal(hub.ask(hub.post(path, "", token))), "/problems/not-a-manager") << path;
  EXPECT_EQ(hub.ask(hub.post("invite", "", hub.token(hub.desk))).status, 200);
}

TEST(SecuritySessions, ARevokedDeviceReadsNothingWithTheTokenItHas) {
  SmallHub hub;
  const std::string token = hub.token(hub.tablet);
  const std::vector<seal::SealedEntry> cut{hub.run.revoked(hub.tablet.device(), 0, Hash{})};
  ASSERT_TRUE(hub.shop->append_own(cut));
  for (const std::string& path : {std::string("pull"), std::string("have"), std::string("files"),
                                  "log/" + hub.desk.device().hex() + "?from=1"})
    EXPECT_EQ(refusal(hub.ask(hub.post(path, "", token))), "/problems/revoked") << path;
}

TEST(SecurityRates, AStrangerMayAskSoOftenAndAMemberIsNotHeldUp) {
  SmallHub hub;
  const std::string token = hub.token(hub.tablet);
  int refused = 0;
  for (int i = 0; i < 1000; ++i)
    if (refusal(hub.ask(hub.post("session", "{}"), "10.6.6.6")) == "/problems/too-many") ++refused;
  EXPECT_GE(refused, 1000 - static_cast<int>(sync::strangers_saved_up));
  EXPECT_EQ(hub.ask(hub.post("pull", to_json(sync::PullAsk{}), token), "10.6.6.6").status, 200);
}

TEST(SecurityRates, ChallengesAreBounded) {
  SmallHub hub;
  const std::string ask = to_json(sync::ChallengeAsk{hub.tablet.device()});
  std::size_t made = 0;
  for (std::size_t i = 0; i < 3 * sync::most_challenges; ++i)
    if (hub.ask(hub.post("challenge", ask), std::to_string(i)).status == 200) ++made;
  EXPECT_LE(made, sync::most_challenges);
}

}  // namespace
}  // namespace jambline::test
