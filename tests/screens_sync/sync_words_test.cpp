// The margin's words, state by state: the table of the design (IA.md, "Offline, sent, disputed,
// refused"), and that "all sent" is never said without a signed receipt.
#include "screens/sync_words.h"

#include <gtest/gtest.h>

namespace jambline::screens {
namespace {

using exchange::Contact;
using exchange::SyncState;

constexpr std::int64_t now_ms = 1'790'000'000'000;  // 2026-09-21 14:13 UTC

std::string margin(const SyncState& state) {
  return margin_words(state, now_ms, QStringLiteral("Etc/UTC")).toStdString();
}

SyncState of(Contact contact) {
  SyncState out;
  out.contact = contact;
  return out;
}

TEST(SyncWords, TheMarginSaysEachState) {
  EXPECT_EQ(margin(of(Contact::NoHub)), "this device only");

  SyncState waits = of(Contact::Trying);
  waits.entries_to_send = 12;
  EXPECT_EQ(margin(waits), "12 to send · no network");
  waits.trouble = Error{Code::WrongServer, "push", "hub", {}};
  EXPECT_EQ(margin(waits), "12 to send · wrong network");
  waits.trouble = Error{Code::Busy, "push", "hub", {}};
  EXPECT_EQ(margin(waits), "12 to send · hub is busy");
  waits.paused = true;
  EXPECT_EQ(margin(waits), "12 to send · paused");

  SyncState sends = of(Contact::Good);
  sends.entries_to_send = 8;
  EXPECT_EQ(margin(sends), "8 to send");
  sends.entries_sent_now = 4;
  EXPECT_EQ(margin(sends), "sending 4 of 12");

  SyncState sent = of(Contact::Good);
  sent.all_sent_ms = now_ms - 60'000;
  EXPECT_EQ(margin(sent), "all sent 14:12");
  sent.entries_refused = 2;
  EXPECT_EQ(margin(sent), "all sent 14:12 · 2 refused");

  SyncState pictures = of(Contact::Good);
  pictures.pictures_to_send = 3;
  pictures.pictures_when = exchange::PicturesWhen::NotMetered;
  EXPECT_EQ(margin(pictures), "3 pictures to send");
  pictures.metered = true;
  EXPECT_EQ(margin(pictures), "3 pictures to send · metered network");
  pictures.pictures_when = exchange::PicturesWhen::Always;
  EXPECT_EQ(margin(pictures), "3 pictures to send");
  pictures.pictures_when = exchange::PicturesWhen::Never;
  pictures.pictures_to_send = 1;
  EXPECT_EQ(margin(pictures), "1 picture to send · pictures stay here");

  SyncState joins = of(Contact::Joining);
  EXPECT_EQ(margin(joins), "asks the hub to be let in");
  joins.digits = "042 917";
  EXPECT_EQ(margin(joins), "to compare: 042 917");
  EXPECT_EQ(margin(of(Contact::TurnedAway)), "not let in by the hub");

  SyncState ended = of(Contact::Revoked);
  ended.entries_to_send = 5;
  EXPECT_EQ(margin(ended), "not a device of the shop any more · 5 stay here");
  SyncState copied = of(Contact::Forked);
  copied.entries_to_send = 5;
  EXPECT_EQ(margin(copied), "folder was copied · 5 stay here");
}

TEST(SyncWords, AllSentIsNeverSaidWithoutItsReceipt) {
  for (const auto contact : {Contact::NoHub, Contact::Joining, Contact::TurnedAway, Contact::Trying,
                             Contact::Good, Contact::Revoked, Contact::Forked})
    for (const std::uint64_t entries : {0, 3})
      for (const bool paused : {false, true}) {
        SyncState state = of(contact);
        state.entries_to_send = entries;
        state.paused = paused;
        const auto said = sync_words(state, now_ms, QStringLiteral("Etc/UTC"));
        EXPECT_EQ(margin(state).find("all sent"), std::string::npos) << margin(state);
        EXPECT_NE(said.shape, StateKind::Done) << said.head.toStdString();
        EXPECT_FALSE(said.head.isEmpty());
        EXPECT_FALSE(said.explain.isEmpty());
      }
}

TEST(SyncWords, WhatWaitsIsCounted) {
  SyncState state;
  EXPECT_EQ(waiting_words(state), "nothing");
  state.entries_to_send = 1;
  EXPECT_EQ(waiting_words(state), "1 entry");
  state.entries_to_send = 12;
  state.pictures_to_send = 3;
  state.bytes_to_send = 4'100'000;
  EXPECT_EQ(waiting_words(state), "12 entries, 3 pictures (4.1 MB)");
}

TEST(SyncWords, DigitsAreReadOneByOne) {
  EXPECT_EQ(spoken_digits("042 917"), "0 4 2, 9 1 7");
}

}  // namespace
}  // namespace jambline::screens
