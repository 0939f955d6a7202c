// What cars teach the next plan, from what people did on them. Sums by hand.
#include "folds/learned.h"

#include "tests/acts/one_device.h"

namespace jambline::acts {
namespace {

using job::MarkEnd;
using job::Round;
using job::RoundHow;

class LearnedTest : public DecideTest {
 protected:
  MarkId placed(double x_mm) {
    did(nib(x_mm, 700));
    return panel(Panel::Hood).marks.back().mark;
  }
  void finished(Round round, const MarkId& mark, std::optional<double> work_min,
                RoundHow how = RoundHow::AsPlanned) {
    ready_to_cut();
    did(FinishRound{job, Panel::Hood, round, how, {mark}, 2, 45'000, work_min});
  }
  folds::Learned learned(std::optional<PersonId> by = {}) {
    folds::Learned out(by);
    for (const auto& [id, view] : views) out.add(folds::lesson_of(view));
    return out;
  }
};

TEST_F(LearnedTest, MinutesOfAnAreaAreThoseOfTheClockOverTheAreaWorkedOn) {
  finished(Round::Level, placed(500), 1);
  finished(Round::Level, placed(550), 3);
  finished(Round::Level, placed(600), {});
  finished(Round::Polish, placed(650), 9, RoundHow::Skipped);
  ASSERT_EQ(learned().times().size(), 1U);
  const auto time = learned().times().front();
  EXPECT_EQ(time.areas, 4);
  EXPECT_DOUBLE_EQ(time.min_per_area().value(), 4.0);  // 4 min on 90,000 mm2
  EXPECT_FALSE(time.shown());
  person = painter;
  for (double x_mm = 400; x_mm < 460; x_mm += 20) finished(Round::Level, placed(x_mm), 2);
  EXPECT_EQ(learned().times().front().areas, 10);
  EXPECT_TRUE(learned().times().front().shown());
  EXPECT_EQ(learned(painter).times().front().areas, 6);
}

TEST_F(LearnedTest, APanelThatWasWorkedOnWholeSaysNothingOfTheMinutesOfSpots) {
  did(SayDirtAllOver{job, Panel::Hood, job::DirtClass::From10To20});
  ready_to_cut();
  did(FinishRound{job, Panel::Hood, Round::Level, RoundHow::AsPlanned, {}, 16, 1'440'000, 24});
  EXPECT_TRUE(learned().times().empty());
}

TEST_F(LearnedTest, AMarkThatCameBackCountsOnceAndABurnThroughNotAtAll) {
  const MarkId first = placed(500);
  const MarkId second = placed(550);
  const MarkId third = placed(600);
  placed(650);
  did(EndMark{job, first, MarkEnd::Gone});
  did(EndMark{job, second, MarkEnd::Gone});
  did(EndMark{job, second, MarkEnd::CameBack});
  did(EndMark{job, second, MarkEnd::Gone});
  did(EndMark{job, third, MarkEnd::BurnThrough});
  ASSERT_EQ(learned().returns().size(), 1U);
  EXPECT_EQ(learned().returns().front().ended, 2);
  EXPECT_EQ(learned().returns().front().came_back, 1);
}

TEST_F(LearnedTest, SequencesTeachByTheirRoundsAndOnlyWithAReadingBefore) {
  const MarkId mark = placed(500);
  ReadFilm read{.job = job, .panel = Panel::Hood, .when = job::FilmWhen::BeforeCutting};
  read.typed = {120, 120, 120};
  did(read);
  finished(Round::Compound, mark, 2);
  read.when = job::FilmWhen::AfterSequence;
  read.typed = {117, 117, 117};
  did(read);
  read.spot = 2;
  did(read);
  const auto sequences = learned().sequences();
  ASSERT_EQ(sequences.size(), 1U);
  EXPECT_EQ(sequences[0].rounds, std::vector<Round>{Round::Compound});
  EXPECT_EQ(sequences[0].taken_um, std::vector<double>{3});
  EXPECT_FALSE(sequences[0].shown());
}

}  // namespace
}  // namespace jambline::acts
