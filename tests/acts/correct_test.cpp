// What decide() refuses and writes from the first film reading to the last mark that is gone.
#include <cmath>
#include <limits>

#include "folds/floor_view.h"
#include "tests/acts/one_device.h"

namespace jambline::acts {
namespace {

using job::CutAnswer;
using job::CutItem;
using job::DirtCause;
using job::FilmGauge;
using job::FilmUnit;
using job::FilmWhen;
using job::MarkEnd;
using job::Round;
using job::RoundHow;

class CorrectTest : public DecideTest {
 protected:
  MarkId placed(double x_mm = 500) {
    did(nib(x_mm, 700));
    return panel(Panel::Hood).marks.back().mark;
  }
  const folds::MarkView& mark(std::size_t number = 0) { return panel(Panel::Hood).marks[number]; }
  void undo(const std::vector<entries::Entry>& written) {
    UndoAction back;
    for (const auto& entry : written) back.entries.emplace_back(entry.subject, entry.hash);
    did(back);
  }
  // What another device wrote that knew of nothing here.
  void elsewhere(entries::Payload payload, const PersonId& by) {
    entries::Entry entry;
    entry.subject = job;
    ++count;
    entry.order = {count, DeviceId{{9}}, count};
    entry.hash.bytes[0] = static_cast<std::uint8_t>(count);
    entry.hash.bytes[1] = 9;
    entry.wall_ms = now_ms;
    entry.person = by;
    entry.payload = std::move(payload);
    apply(entry);
  }

  ReadFilm film(FilmWhen when, std::vector<double> typed) {
    return {.job = job, .panel = Panel::Hood, .when = when, .typed = std::move(typed)};
  }
  std::string why(const Command& command) {
    const auto drafts = decided(command);
    return drafts ? "taken" : drafts.error().subject;
  }
  const std::vector<folds::FilmView>& films() { return panel(Panel::Hood).film; }

  AnswerBeforeCut but(CutItem item, CutAnswer answer,
                      std::optional<job::OverrideReason> reason = {}) {
    AnswerBeforeCut out = all_yes();
    out.checks[static_cast<std::size_t>(item)] = {item, answer, reason};
    return out;
  }

  // Of a person who has answered before.
  FinishRound round(Round which, std::vector<MarkId> marks, RoundHow how = RoundHow::AsPlanned) {
    ready_to_cut();
    return {job, Panel::Hood, which, how, std::move(marks), 1, 700, 1.5};
  }
};

// Marks

TEST_F(CorrectTest, TheLookOfTheParticleStaysUntilTheKindChanges) {
  auto with_look = nib(500, 700);
  with_look.look = job::ParticleLook::WhiteFiber;
  did(with_look);
  EXPECT_EQ(mark().look, job::ParticleLook::WhiteFiber);
  did(DescribeMark{job, mark().mark, {}, 3, {}});
  EXPECT_EQ(mark().look, job::ParticleLook::WhiteFiber);
  did(DescribeMark{job, mark().mark, {}, 3, {}, job::ParticleLook::Insect});
  EXPECT_EQ(mark().look, job::ParticleLook::Insect);
  did(DescribeMark{job, mark().mark, job::DefectKind::RunOrSag, 3, {}});
  EXPECT_EQ(mark().look, std::nullopt);
}

TEST_F(CorrectTest, AMarkEndsAsGoneAndIsNoLongerOpen) {
  const MarkId id = placed();
  placed(600);
  EXPECT_EQ(folds::floor_row(car()).marks_open, 2);
  EXPECT_EQ(did(EndMark{job, id, MarkEnd::Gone}).size(), 1U);
  EXPECT_EQ(mark().end, MarkEnd::Gone);
  EXPECT_FALSE(mark().open());
  EXPECT_EQ(folds::floor_row(car()).marks_open, 1);
  refused(EndMark{job, id, MarkEnd::Gone}, Code::AlreadyDone);
  refused(EndMark{job, MarkId{}, MarkEnd::Gone}, Code::Unknown);
}

TEST_F(CorrectTest, AMarkThatCameBackIsOpenAndItsCleanPanelIsToCorrectAgain) {
  const MarkId id = placed();
  did(EndMark{job, id, MarkEnd::Gone});
  did(GiveVerdict{job, Panel::Hood, Verdict::Clean, false, {}});
  const auto written = did(EndMark{job, id, MarkEnd::CameBack});
  EXPECT_EQ(written.size(), 2U);
  EXPECT_EQ(panel(Panel::Hood).verdict, Verdict::ToCorrect);
  EXPECT_TRUE(mark().open());
  did(EndMark{job, id, MarkEnd::Gone});
  EXPECT_TRUE(mark().came_back);
  EXPECT_FALSE(mark().open());
  undo(written);
  EXPECT_FALSE(mark().came_back);
}

TEST_F(CorrectTest, ABurnThroughSendsThePanelToRedoInTheSameActionAndBackWithIt) {
  const MarkId id = placed();
  const auto written = did(EndMark{job, id, MarkEnd::BurnThrough});
  ASSERT_EQ(written.size(), 2U);
  EXPECT_EQ(panel(Panel::Hood).verdict, Verdict::Redo);
  EXPECT_FALSE(panel(Panel::Hood).disputed);
  EXPECT_EQ(mark().end, MarkEnd::BurnThrough);
  refused(EndMark{job, id, MarkEnd::Gone}, Code::AlreadyDone);
  undo(written);
  EXPECT_EQ(panel(Panel::Hood).verdict, Verdict::ToCorrect);
  EXPECT_EQ(mark().end, std::nullopt);
}

TEST_F(CorrectTest, ABurnThroughOnAPanelThatGoesToRedoAnywayIsOneEntry) {
  const MarkId first = placed();
  const MarkId second = placed(600);
  did(EndMark{job, first, MarkEnd::BurnThrough});
  EXPECT_EQ(did(EndMark{job, second, MarkEnd::BurnThrough}).size(), 1U);
}

TEST_F(CorrectTest, OfTwoEndsThatKnewNothingOfEachOtherABurnThroughIsShownUntilSettled) {
  const MarkId id = placed();
  did(EndMark{job, id, MarkEnd::BurnThrough});
  elsewhere(entries::MarkEnded{id, MarkEnd::Gone, {}}, painter);
  EXPECT_EQ(mark().end, MarkEnd::BurnThrough);
  EXPECT_EQ(mark().end_heads.size(), 2U);
  did(EndMark{job, id, MarkEnd::BurnThrough});
  EXPECT_EQ(mark().end_heads.size(), 1U);
}

// Film

TEST_F(CorrectTest, ReadingsAreKeptAsTypedAndComputedWithInMicrons) {
  auto mils = film(FilmWhen::BeforeCutting, {4.1, 4.2, 4.3});
  mils.unit = FilmUnit::Mil;
  mils.x_mm = 500;
  mils.y_mm = 700;
  did(mils);
  ASSERT_EQ(films().size(), 1U);
  EXPECT_EQ(films()[0].typed, mils.typed);
  EXPECT_EQ(films()[0].unit, FilmUnit::Mil);
  EXPECT_DOUBLE_EQ(films()[0].readings_um[0], 104.14);
  EXPECT_NEAR(films()[0].mean_um, 106.68, 1e-9);
  EXPECT_EQ(films()[0].x_mm, 500);
}

TEST_F(CorrectTest, WhatNoGaugeShowsIsRefusedByNumber) {
  const double none = std::numeric_limits<double>::quiet_NaN();
  const double endless = std::numeric_limits<double>::infinity();
  for (const double wrong : {0.0, 9999.0, -5.0, 0.5, 3001.0, none, endless}) {
    refused(film(FilmWhen::BeforeCutting, {112, wrong, 115}), Code::OutOfRange);
    const auto error = decided(film(FilmWhen::BeforeCutting, {112, wrong, 115})).error();
    EXPECT_EQ(error.subject, "reading");
    EXPECT_EQ(error.arg("at"), "2");
  }
  EXPECT_EQ(decided(film(FilmWhen::BeforeCutting, {112, 9999, 115})).error().arg("value"), "9999");
  auto mils = film(FilmWhen::BeforeCutting, {4.1, 394, 4.3});
  mils.unit = FilmUnit::Mil;
  EXPECT_EQ(why(mils), "reading");
  auto clear = film(FilmWhen::BeforeCutting, {47, 48, 501});
  clear.gauge = FilmGauge::Clear;
  EXPECT_EQ(why(clear), "reading");
  did(film(FilmWhen::BeforeCutting, {1, 3000, 115}));
}

TEST_F(CorrectTest, ASpotTakesThreeReadingsOrMore) {
  refused(film(FilmWhen::BeforeCutting, {}), Code::Missing);
  refused(film(FilmWhen::BeforeCutting, {112, 115}), Code::Missing);
  refused(film(FilmWhen::BeforeCutting, std::vector<double>(21, 112)), Code::TooLarge);
  did(film(FilmWhen::BeforeCutting, std::vector<double>(20, 112)));
}

TEST_F(CorrectTest, ASpotHasANumberAndItsPlaceLiesOnThePanel) {
  auto read = film(FilmWhen::BeforeCutting, {112, 115, 110});
  read.spot = 0;
  refused(read, Code::OutOfRange);
  read.spot = 100;
  refused(read, Code::OutOfRange);
  read.spot = 1;
  read.x_mm = 500;
  refused(read, Code::Missing);
  read.y_mm = 1e6;
  refused(read, Code::OutsidePanel);
  read.panel = Panel::Roof;
  refused(read, Code::Unknown);
}

TEST_F(CorrectTest, AGaugeThatReadsToMetalReadsNothingOnPlastic) {
  did(PlanPanel{job, {Panel::Hood, true, trade::Substrate::Plastic, {}, {}}});
  auto read = film(FilmWhen::BeforeCutting, {47, 48, 46});
  EXPECT_EQ(why(read), "gauge");
  read.gauge = FilmGauge::Clear;
  did(read);
  read.when = FilmWhen::BeforeBase;
  EXPECT_EQ(why(read), "no clear yet");
}

TEST_F(CorrectTest, FilmThinnerThanWhatWasRemovedIsRefused) {
  did(film(FilmWhen::BeforeBase, {60, 61, 62}));
  EXPECT_EQ(why(film(FilmWhen::BeforeCutting, {61, 61, 61})), "thinner than before base");
  did(film(FilmWhen::BeforeCutting, {120, 121, 122}));
  EXPECT_EQ(why(film(FilmWhen::AfterSequence, {60, 59, 58})), "thinner than before base");
  EXPECT_EQ(why(film(FilmWhen::AfterSequence, {150, 150, 150})), "thicker than before");
  did(film(FilmWhen::AfterSequence, {114, 115, 116}));
  ASSERT_EQ(films().size(), 3U);
  EXPECT_NEAR(films()[2].taken_um.value(), 6, 1e-9);
  auto other_spot = film(FilmWhen::BeforeCutting, {61, 61, 61});
  other_spot.spot = 2;
  did(other_spot);
}

TEST_F(CorrectTest, MoreTakenThanAnyWorkTakesIsRefused) {
  did(film(FilmWhen::BeforeCutting, {400, 400, 400}));
  EXPECT_EQ(why(film(FilmWhen::AfterSequence, {199, 199, 199})), "too much taken");
}

TEST_F(CorrectTest, AReadingAfterASequenceNamesTheOneBeforeItAndTheRoundsBetween) {
  const MarkId id = placed();
  did(round(Round::Level, {id}));
  did(film(FilmWhen::BeforeCutting, {120, 121, 122}));
  did(round(Round::Refine, {id}, RoundHow::Skipped));
  did(round(Round::Compound, {id}));
  did(round(Round::Polish, {id}));
  did(film(FilmWhen::AfterSequence, {118, 118, 118}));
  EXPECT_EQ(films()[1].before, films()[0].reading);
  EXPECT_EQ(films()[1].rounds, (std::vector<Round>{Round::Compound, Round::Polish}));
  EXPECT_NEAR(films()[1].taken_um.value(), 3, 1e-9);
  auto typed_wrong = film(FilmWhen::AfterSequence, {117, 117, 117});
  typed_wrong.corrects = films()[1].reading;
  did(typed_wrong);
  ASSERT_EQ(films().size(), 2U);
  EXPECT_NEAR(films()[1].taken_um.value(), 4, 1e-9);
  EXPECT_EQ(films()[1].rounds.size(), 2U);
  did(Withdraw{job, films()[0].heads.front(), "wrong spot"});
  ASSERT_EQ(films().size(), 1U);
  EXPECT_EQ(films()[0].taken_um, std::nullopt);
}

TEST_F(CorrectTest, AnEarlierReadingIsCorrectedOnlyToWhatHangsTogetherWithTheLater) {
  did(film(FilmWhen::BeforeBase, {60, 61, 62}));
  did(film(FilmWhen::BeforeCutting, {120, 121, 122}));
  auto base = film(FilmWhen::BeforeBase, {160, 161, 162});
  base.corrects = films()[0].reading;
  EXPECT_EQ(why(base), "thinner than before base");
  base.typed = {70, 71, 72};
  const auto written = did(base);
  EXPECT_NEAR(films()[0].mean_um, 71, 1e-9);
  undo(written);
  EXPECT_NEAR(films()[0].mean_um, 61, 1e-9);
  base.corrects = ReadingId{{7}};
  refused(base, Code::Unknown);
}

// Before cutting

TEST_F(CorrectTest, TheCheckIsEachPersonsOwnAndAnsweredOnce) {
  EXPECT_EQ(car().before_cut_of(person), nullptr);
  did(all_yes());
  ASSERT_NE(car().before_cut_of(person), nullptr);
  EXPECT_EQ(car().before_cut_of(painter), nullptr);
  refused(all_yes(), Code::AlreadyDone);
  const auto written = did(but(CutItem::Breaks, CutAnswer::No));
  EXPECT_EQ(car().before_cut.size(), 1U);
  EXPECT_EQ(car().before_cut_of(person)->heads.size(), 1U);
  undo(written);
  EXPECT_EQ(car().before_cut_of(person)->checks.back().answer, CutAnswer::Yes);
  person = {};
  refused(all_yes(), Code::Missing);
}

TEST_F(CorrectTest, AMustWantsAReasonAndAStopHasNoWayRound) {
  refused(but(CutItem::Gloves, CutAnswer::No), Code::Missing);
  EXPECT_EQ(why(but(CutItem::Gloves, CutAnswer::No)), "reason");
  for (const auto reason : {job::OverrideReason::NoneAtHand, job::OverrideReason::ManagerDecided})
    refused(but(CutItem::NotMatte, CutAnswer::No, reason), Code::NotAllowed);
  did(but(CutItem::Gloves, CutAnswer::No, job::OverrideReason::NoneAtHand));
  EXPECT_EQ(car().before_cut.front().checks[1].reason, job::OverrideReason::NoneAtHand);
  did(but(CutItem::Hearing, CutAnswer::No, job::OverrideReason::Broken));
  EXPECT_EQ(car().before_cut.front().checks[3].reason, std::nullopt) << "a should wants none";
}

TEST_F(CorrectTest, EveryMustAndStopIsAnsweredAndNoneTwice) {
  for (std::size_t i = 0; i < enum_words<CutItem>.size(); ++i) {
    AnswerBeforeCut short_of = all_yes();
    short_of.checks.erase(short_of.checks.begin() + static_cast<long>(i));
    const bool should = job::class_of(static_cast<CutItem>(i)) == job::CheckClass::Should;
    EXPECT_EQ(why(short_of), should ? "taken" : std::string(enum_words<CutItem>[i]));
  }
  AnswerBeforeCut twice = all_yes();
  twice.checks.push_back(twice.checks.front());
  refused(twice, Code::AlreadyDone);
  refused(but(CutItem::EyeProtection, CutAnswer::DoesNotApply), Code::OutOfRange);
  refused(but(CutItem::NotMatte, CutAnswer::DoesNotApply), Code::OutOfRange);
  did(but(CutItem::CordAndOutlet, CutAnswer::DoesNotApply));
}

TEST_F(CorrectTest, TwoChecksOfOnePersonThatDifferAreDisputedUntilAnsweredAgain) {
  did(all_yes());
  elsewhere(entries::BeforeCutAnswered{{{CutItem::Gloves, CutAnswer::No}}, {}}, person);
  EXPECT_TRUE(car().before_cut_of(person)->disputed);
  did(all_yes());
  EXPECT_FALSE(car().before_cut_of(person)->disputed);
}

TEST_F(CorrectTest, WhoeverCutsHasAnsweredBeforeAndWhoSkipsNeedNot) {
  const FinishRound cut{job, Panel::Hood, Round::Level, RoundHow::AsPlanned, {placed()}, 1, 700};
  refused(cut, Code::NotYet);
  FinishRound skip = cut;
  skip.how = RoundHow::Skipped;
  did(skip);
  did(all_yes());
  person = painter;
  refused(cut, Code::NotYet);
  did(all_yes());
  elsewhere(entries::BeforeCutAnswered{{{CutItem::Gloves, CutAnswer::No}}, {}}, painter);
  refused(cut, Code::NotYet);
  did(all_yes());
  did(cut);
}

// What threw it

TEST_F(CorrectTest, ACauseIsSetChangedLeftOpenAndTakenBack) {
  refused(SetCause{job, DirtCause::Hose}, Code::NotYet);
  placed();
  did(SetCause{job, DirtCause::Hose});
  EXPECT_EQ(car().cause->cause, DirtCause::Hose);
  refused(SetCause{job, DirtCause::Hose}, Code::AlreadyDone);
  did(SetCause{job, DirtCause::FellFromAbove});
  EXPECT_EQ(car().cause->cause, DirtCause::FellFromAbove);
  const auto open = did(SetCause{job, {}});
  ASSERT_TRUE(car().cause);
  EXPECT_EQ(car().cause->cause, std::nullopt);
  refused(SetCause{job, {}}, Code::AlreadyDone);
  EXPECT_FALSE(car().cause->disputed);
  undo(open);
  EXPECT_EQ(car().cause->cause, DirtCause::FellFromAbove);
}

TEST_F(CorrectTest, DirtAllOverHasACauseToo) {
  did(SayDirtAllOver{job, Panel::Hood, job::DirtClass::Over50});
  did(SetCause{job, DirtCause::Material});
}

TEST_F(CorrectTest, TwoCausesThatKnewNothingOfEachOtherAreDisputedUntilSettled) {
  placed();
  did(SetCause{job, DirtCause::Hose});
  elsewhere(entries::CauseSet{{}, DirtCause::Suit}, painter);
  EXPECT_TRUE(car().cause->disputed);
  did(SetCause{job, DirtCause::Suit});
  EXPECT_FALSE(car().cause->disputed);
  EXPECT_EQ(car().cause->heads.size(), 1U);
}

// Rounds

TEST_F(CorrectTest, ARoundIsKeptWithItsMarksAreasAndMinutes) {
  const MarkId id = placed();
  auto twice = round(Round::Level, {id, id});
  did(twice);
  const auto& rounds = panel(Panel::Hood).rounds;
  ASSERT_EQ(rounds.size(), 1U);
  EXPECT_EQ(rounds[0].marks, std::vector<MarkId>{id});
  EXPECT_EQ(rounds[0].work_min, 1.5);
  EXPECT_EQ(rounds[0].stage, job::Stage::Correct);
  EXPECT_EQ(rounds[0].by, person);
  did(Withdraw{job, rounds[0].finished, "other panel"});
  EXPECT_TRUE(panel(Panel::Hood).rounds.empty());
}

TEST_F(CorrectTest, ASkippedRoundTakesNoTime) {
  did(round(Round::Refine, {placed()}, RoundHow::Skipped));
  const auto& skipped = panel(Panel::Hood).rounds.front();
  EXPECT_EQ(skipped.areas, 0);
  EXPECT_EQ(skipped.area_mm2, 0);
  EXPECT_EQ(skipped.work_min, std::nullopt);
}

TEST_F(CorrectTest, ARoundIsDoneOnceUnlessItIsAddedOrAMarkCameBack) {
  const MarkId id = placed();
  did(round(Round::Level, {id}));
  refused(round(Round::Level, {id}), Code::AlreadyDone);
  did(round(Round::Polish, {id}));
  did(round(Round::Level, {id}, RoundHow::Added));
  did(round(Round::Level, {id, placed(600)}));
  did(EndMark{job, id, MarkEnd::CameBack});
  did(round(Round::Level, {id}));
}

TEST_F(CorrectTest, MatteTexturedAndFilmedPanelsAreNeverCut) {
  const MarkId id = placed();
  for (const auto finish : {job::Finish::Matte, job::Finish::Textured, job::Finish::Film}) {
    did(PlanPanel{job, {Panel::Hood, true, {}, finish, {}}});
    refused(round(Round::Finish, {id}), Code::NotAllowed);
  }
  did(round(Round::Finish, {id}, RoundHow::Skipped));
}

TEST_F(CorrectTest, NothingIsCutBeforeAVerdictNorOnAPanelThatGoesToRedo) {
  refused(FinishRound{job, Panel::FrontBumper, Round::Level, {}, {}}, Code::NotYet);
  const MarkId id = placed();
  did(GiveVerdict{job, Panel::Hood, Verdict::Redo, false, {}});
  refused(round(Round::Level, {id}), Code::NotAllowed);
  did(GiveVerdict{job, Panel::Hood, Verdict::BackToBody, false, {}});
  refused(round(Round::Level, {id}), Code::NotAllowed);
}

TEST_F(CorrectTest, ARoundIsAboutMarksOfItsPanelOrDirtAllOver) {
  did(GiveVerdict{job, Panel::Hood, Verdict::ToCorrect, false, {}});
  refused(round(Round::Level, {}), Code::Missing);
  refused(round(Round::Level, {MarkId{}}), Code::Unknown);
  const MarkId id = placed();
  did(GiveVerdict{job, Panel::FrontBumper, Verdict::ToCorrect, false, {}});
  refused(FinishRound{job, Panel::FrontBumper, Round::Level, {}, {id}}, Code::Unknown);
  did(SayDirtAllOver{job, Panel::FrontBumper, job::DirtClass::Over50});
  ready_to_cut();
  did(FinishRound{job, Panel::FrontBumper, Round::Level, {}, {}});
}

TEST_F(CorrectTest, NumbersOfARoundThatCannotBeAreRefused) {
  const MarkId id = placed();
  auto wrong = round(Round::Level, {id});
  wrong.areas = -1;
  EXPECT_EQ(why(wrong), "areas");
  wrong.areas = 1001;
  EXPECT_EQ(why(wrong), "areas");
  wrong = round(Round::Level, {id});
  for (const double area : {-1.0, 3e7, std::nan("")}) {
    wrong.area_mm2 = area;
    EXPECT_EQ(why(wrong), "area");
  }
  wrong = round(Round::Level, {id});
  for (const double minutes : {-0.1, 1441.0, std::nan("")}) {
    wrong.work_min = minutes;
    EXPECT_EQ(why(wrong), "minutes");
  }
}

TEST_F(CorrectTest, AfterAssemblyMarksAndRoundsAreOfTheLastPolish) {
  did(FinishStage{job, job::Stage::Assemble, true, job::WithoutShots::NotNeeded});
  did(round(Round::Polish, {placed()}));
  EXPECT_EQ(mark().stage, job::Stage::LastPolish);
  EXPECT_EQ(panel(Panel::Hood).rounds.front().stage, job::Stage::LastPolish);
}

// Booths

TEST_F(CorrectTest, BoothsAreAddedOnceChangedAndSaidOfACar) {
  did(AddBooth{"booth 1", job::BoothKind::Downdraft});
  refused(AddBooth{" booth 1 "}, Code::AlreadyDone);
  refused(AddBooth{" "}, Code::Missing);
  refused(AddBooth{std::string(81, 'b')}, Code::TooLarge);
  const BoothId booth = shop_view.booths.front().booth;
  refused(ChangeBooth{booth, "booth 1", job::BoothKind::Downdraft}, Code::AlreadyDone);
  refused(ChangeBooth{BoothId{}, "booth 3"}, Code::Unknown);
  did(ChangeBooth{booth, "booth 1", job::BoothKind::SideDraft});
  EXPECT_EQ(shop_view.booths.front().kind, job::BoothKind::SideDraft);
  did(AddBooth{"booth 2"});
  refused(ChangeBooth{booth, "booth 2"}, Code::AlreadyDone);

  refused(SayBooth{job, BoothId{}}, Code::Unknown);
  did(SayBooth{job, booth});
  refused(SayBooth{job, booth}, Code::AlreadyDone);
  did(SayBooth{job, shop_view.booths.back().booth});
  EXPECT_EQ(car().booth, shop_view.booths.back().booth);
  EXPECT_EQ(car().booth_heads.size(), 1U);
}

TEST_F(CorrectTest, ABoothEventIsLoggedCorrectedAndTakenBack) {
  did(AddBooth{"booth 1"});
  const BoothId booth = shop_view.booths.front().booth;
  refused(LogBoothEvent{BoothId{}, job::BoothEvent::NewHose}, Code::Unknown);
  refused(LogBoothEvent{booth, job::BoothEvent::NewHose, 5}, Code::OutOfRange);
  refused(LogBoothEvent{booth, job::BoothEvent::NewHose, {}, true}, Code::Malformed);
  refused(LogBoothEvent{booth, job::BoothEvent::NewHose, now_ms + 900'000}, Code::NotYet);
  did(LogBoothEvent{booth, job::BoothEvent::FiltersChanged, {}, false});
  ASSERT_EQ(shop_view.booth_events.size(), 1U);
  const auto logged = shop_view.booth_events.front();
  EXPECT_EQ(logged.happened_ms, now_ms);
  EXPECT_EQ(logged.old_filters_out, false);

  did(CorrectBoothEvent{logged.event, booth, job::BoothEvent::NewSuits});
  ASSERT_EQ(shop_view.booth_events.size(), 1U);
  EXPECT_EQ(shop_view.booth_events.front().what, job::BoothEvent::NewSuits);
  EXPECT_EQ(shop_view.booth_events.front().happened_ms, logged.happened_ms) << "its time stays";
  did(CorrectBoothEvent{logged.event, booth, job::BoothEvent::NewSuits, now_ms - 86'400'000});
  EXPECT_LT(shop_view.booth_events.front().happened_ms, logged.happened_ms);
  refused(CorrectBoothEvent{BoothEventId{}, booth, job::BoothEvent::NewHose}, Code::Unknown);

  refused(CorrectBoothEvent{logged.event, booth, job::BoothEvent::NewSuits, now_ms + 900'000},
          Code::NotYet);

  did(LogBoothEvent{booth, job::BoothEvent::NewHose, now_ms + 300'000});  // clocks differ
  ASSERT_EQ(shop_view.booth_events.size(), 2U);
  did(Withdraw{{}, shop_view.booth_events.back().heads.front(), "other booth"});
  ASSERT_EQ(shop_view.booth_events.size(), 1U);
  EXPECT_EQ(shop_view.booth_events.front().what, job::BoothEvent::NewSuits);
}

TEST_F(CorrectTest, ACarOfANewerVersionTakesNothing) {
  const MarkId id = placed();
  did(AddBooth{"booth 1"});
  const FinishRound cut = round(Round::Level, {id});
  elsewhere(entries::UnknownEntry{"unknown kind 4711"}, painter);
  refused(EndMark{job, id, MarkEnd::Gone}, Code::NewerSchema);
  refused(film(FilmWhen::BeforeCutting, {112, 115, 110}), Code::NewerSchema);
  refused(all_yes(), Code::NewerSchema);
  refused(SetCause{job, {}}, Code::NewerSchema);
  refused(cut, Code::NewerSchema);
  refused(SayBooth{job, shop_view.booths.front().booth}, Code::NewerSchema);
}

}  // namespace
}  // namespace jambline::acts
