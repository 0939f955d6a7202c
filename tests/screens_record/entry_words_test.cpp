#include "screens/entry_words.h"

#include <gtest/gtest.h>
#include <regex>

#include "app/record/entry_lines.h"
#include "seal/header.h"

namespace jambline::screens {
namespace {

using namespace entries;

constexpr std::int64_t morning_ms = 1'795'617'000'000;  // 2026-11-25 14:30 UTC, 9:30 in New York

class EntryWords : public testing::Test {
 protected:
  EntryWords() {
    shop_.zone = "America/New_York";
    shop_.people = {{ivo_, "Ivo", job::Role::Painter}, {mara_, "Mara", job::Role::Detailer}};
    shop_.racks = {{rack_, "rack 2"}};
    add(CarOpened{job::BodyShape::TwoDoorHatchback});
  }
  Entry& add(Payload payload) {
    Entry& entry = all_.emplace_back();
    entry.hash.bytes[0] = static_cast<std::uint8_t>(all_.size());
    entry.order.seq = all_.size();
    entry.wall_ms = morning_ms;
    entry.person = ivo_;
    entry.payload = std::move(payload);
    entry.payload.visit([&](const auto& said) {
      using T = std::decay_t<decltype(said)>;
      if constexpr (requires { T::kind; }) entry.kind = T::kind;
    });
    return entry;
  }
  // The words of what was added last, on the screen.
  std::string last() {
    const folds::History history(all_);
    return words_of(all_.back(), {shop_, history, "America/New_York"}).toStdString();
  }
  std::string say(Payload payload) {
    add(std::move(payload));
    return last();
  }

  folds::ShopView shop_;
  std::vector<Entry> all_;
  PersonId ivo_{{1}};
  PersonId mara_{{2}};
  RackId rack_{{3}};
};

TEST_F(EntryWords, MarksAreNumberedInTheOrderOfBeingFound) {
  MarkPlaced placed;
  placed.panel = job::Panel::LeftFender;
  for (std::uint8_t i = 1; i < 6; ++i) {
    placed.mark.bytes[0] = i;
    add(placed);
  }
  placed.mark.bytes[0] = 6;
  EXPECT_EQ(say(placed), "Nib 6 placed on the left fender");
  EXPECT_EQ(say(MarkMoved{placed.mark}), "Nib 6 moved");
  EXPECT_EQ(say(MarkDescribed{placed.mark, job::DefectKind::Crater, 2, job::Layer::InClear}),
            "Mark 6 is crater, size 2, in clear");
  EXPECT_EQ(say(MarkMoved{MarkId{{99}}}), "Mark moved");
}

TEST_F(EntryWords, VerdictsSayThePanelFirst) {
  EXPECT_EQ(say(VerdictGiven{job::Panel::LeftFender, job::Verdict::Clean, true}),
            "Left fender: clean, edges and back looked at");
  EXPECT_EQ(say(VerdictGiven{job::Panel::Hood, job::Verdict::ToCorrect}), "Hood: to correct");
}

TEST_F(EntryWords, TheClockNamesTheOperationAndWhoseItIsWhenAnotherTapped) {
  const OperationId correct{{7}};
  EXPECT_EQ(say(OperationPlanned{correct, job::Stage::Correct, "", 90}),
            "Correct planned, 1 h 30 min");
  EXPECT_EQ(say(ClockActed{ivo_, ClockActKind::Start, correct}), "Correct started");
  EXPECT_EQ(say(ClockActed{mara_, ClockActKind::Pause, correct}), "Correct paused for Mara");
  EXPECT_EQ(say(ClockActed{ivo_, ClockActKind::Switch, correct}), "Switched to correct");
  EXPECT_EQ(say(ClockActed{PersonId{{9}}, ClockActKind::Stop, OperationId{{9}}}),
            "Operation stopped for someone");
  EXPECT_EQ(say(ClockActed{ivo_, ClockActKind::Stop, correct, morning_ms - 3'600'000}),
            "Correct stopped, as of 08:30");
  EXPECT_EQ(say(ClockActed{ivo_, ClockActKind::Stop, correct, morning_ms - 17 * 3'600'000}),
            "Correct stopped, as of Tue Nov 24 16:30");
}

TEST_F(EntryWords, APromiseForTheSameDayHasNoDay) {
  const std::int64_t seven_hours = 7 * 3'600'000;
  EXPECT_EQ(say(PromiseSet{morning_ms + seven_hours}), "Promised 16:30");
  EXPECT_EQ(say(PromiseSet{morning_ms + seven_hours + 24 * 3'600'000}),
            "Promised Thu Nov 26 16:30");
}

TEST_F(EntryWords, WithdrawalsNameWhatTheyTakeBackAndTakenBackTwiceIsPutBack) {
  const Hash verdict = add(VerdictGiven{job::Panel::Hood, job::Verdict::Clean}).hash;
  const Hash first = add(Withdrawn{verdict, ""}).hash;
  EXPECT_EQ(last(), "Taken back: Hood: clean");
  EXPECT_EQ(say(Withdrawn{first, "looked again"}), "Put back: Hood: clean, because: looked again");
  EXPECT_EQ(say(Withdrawn{Hash{{200}}, ""}), "Taken back: an entry that is not here");
}

TEST_F(EntryWords, WhatIsErasedOrNewerIsNotGuessed) {
  add(ErasedPayload{}).kind = NoteWritten::kind;
  EXPECT_EQ(last(), "Note erased");
  add(ErasedPayload{}).kind = PersonNamed::kind;
  EXPECT_EQ(last(), "Name erased");
  add(UnknownEntry{"unknown kind 4711"}).kind = 4711;
  EXPECT_EQ(last(), "Entry of a newer version, kept as it is");
}

TEST_F(EntryWords, PartsAreOfferedHungTakenAndReturned) {
  const ReleaseId release{{5}};
  EXPECT_EQ(say(ReleaseOffered{release, job::Panel::Hood, job::Role::BodyTechnician, rack_}),
            "Hood offered to body technician, on rack 2");
  EXPECT_EQ(say(ReleaseAnswered{release, true}), "Hood taken");
  EXPECT_EQ(say(ReleaseAnswered{release, false, "nib on the edge"}),
            "Hood returned: nib on the edge");
  EXPECT_EQ(say(ReleaseOffered{ReleaseId{{6}}}), "Car offered");
}

TEST_F(EntryWords, FilmRoundsEndsAndTheCauseAreToldInWords) {
  MarkPlaced placed;
  placed.mark.bytes[0] = 1;
  placed.look = job::ParticleLook::WhiteFiber;
  EXPECT_EQ(say(placed), "Nib 1 placed on the hood, white fiber");
  EXPECT_EQ(say(MarkEnded{placed.mark, job::MarkEnd::CameBack}), "Nib 1: came back");
  FilmRead film;
  film.spot = 2;
  film.when = job::FilmWhen::BeforeCutting;
  film.typed = {112, 115, 110.5};
  EXPECT_EQ(say(film), "Hood, spot 2: film before cutting, 112, 115, 110.5 µm");
  RoundFinished round;
  round.round = job::Round::Compound;
  round.marks = {placed.mark};
  round.work_min = 4;
  EXPECT_EQ(say(round), "Hood: compound done, 1 mark, 4 min");
  EXPECT_EQ(say(BeforeCutAnswered{{{job::CutItem::Hearing, job::CutAnswer::No}}}),
            "Checked before cutting, without: hearing");
  EXPECT_EQ(say(CauseSet{{}, job::DirtCause::Hose}), "What threw it: hose");
  EXPECT_EQ(say(CauseSet{}), "What threw it: left open");
  EXPECT_EQ(say(BoothEventLogged{{}, {}, job::BoothEvent::NewHose}), "A booth: new hose");
}

TEST_F(EntryWords, TextFromAnEntryStaysOnOneLine) {
  EXPECT_EQ(say(NoteWritten{"door\nopen"}), "Note: door open");
}

// No kind is forgotten: every alternative has words that hold no place marks, on the screen as on
// the command line, and belongs to a group.
TEST_F(EntryWords, EveryKindHasWordsOnTheScreenAndOnTheCommandLine) {
  PayloadKinds::each([&]<class T>() {
    const std::string words = say(T{});
    EXPECT_FALSE(words.empty());
    EXPECT_FALSE(std::regex_search(words, std::regex("%[1-9L]"))) << words;
    const folds::History history(all_);
    const std::string line = app::line_of(all_.back(), {shop_, history});
    EXPECT_FALSE(line.empty());
    group_of(all_.back());
  });
}

TEST(ClockDoubt, EachFlagHasItsWordsAndNoneHasNone) {
  EXPECT_TRUE(clock_doubt_words(0).isEmpty());
  EXPECT_EQ(clock_doubt_words(seal::clock_flag::stepped_back).toStdString(),
            "the device's clock was behind its last entry");
  EXPECT_EQ(clock_doubt_words(7).count(QChar(';')), 2);
}

}  // namespace
}  // namespace jambline::screens
