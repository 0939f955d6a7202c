// The fit of a panel on the screen: taps, numbers, words and acts; and that its numbers are those
// of jambline-calc for the same input.
#include "screens/fit_view_model.h"

#include "tests/screens/calculator_desk.h"

namespace jambline::screens {
namespace {

using FitAct = FitViewModel::Act;
using Kind = FitViewModel::Kind;
using job::FitRound;
using job::Panel;

class Fit : public CalculatorDesk {
 protected:
  void SetUp() override {
    CalculatorDesk::SetUp();
    begin_shop();
    act(acts::PlanPanel{car().job, {.panel = Panel::LeftFrontDoor, .on_car = false}});
    ASSERT_FALSE(failed_);
    screen_ = std::make_unique<FitViewModel>(*session_);
  }
  void TearDown() override {
    screen_.reset();
    CalculatorDesk::TearDown();
  }
  // Nine points of the door, as far off as this move would bring it right: x and y, and a turn.
  void measure(double x_mm, double y_mm, double turn_mm, FitRound round = FitRound::TrialFit) {
    acts::MeasureFit said{car().job, Panel::LeftFrontDoor, round, {}};
    for (const auto& edge : job::fit_edges(car().body, Panel::LeftFrontDoor))
      for (const std::size_t i : {0U, 2U, 4U}) {
        const auto& place = edge.usual[i];
        const double angle = place.direction_deg * 3.14159265358979 / 180;
        const double ux = x_mm - turn_mm * place.at.y_mm / 1000;
        const double uy = y_mm + turn_mm * place.at.x_mm / 1000;
        const double gap_mm = 5 + ux * std::cos(angle) + uy * std::sin(angle);
        said.points.push_back({place.at.x_mm,
                               place.at.y_mm,
                               place.direction_deg,
                               std::round(gap_mm * 10) / 10,
                               5,
                               {},
                               0});
      }
    act(said);
    ASSERT_FALSE(failed_) << failed_->subject;
  }
  QString row(QAbstractItemModel* rows, int at_row, const char* role) {
    return at(rows, at_row, role).toString();
  }
  std::unique_ptr<FitViewModel> screen_;
};

TEST_F(Fit, FiveGapsAreTwelveTaps) {
  screen_->openPanel("left front door");
  EXPECT_EQ(screen_->title(), "Left front door to left rear door");
  ASSERT_EQ(screen_->mainAct(), FitAct::Measure);
  EXPECT_EQ(screen_->mainText(), "Measure, point 1");
  int taps = 1;
  screen_->begin(static_cast<int>(Kind::Gap));
  EXPECT_EQ(screen_->typedTitle(), "Point 1, to the left rear door");
  EXPECT_EQ(screen_->digits(), 2);
  for (const int tenths : {31, 34, 39, 46, 52}) {
    EXPECT_EQ(screen_->edge(), 0) << "the points of one edge come first";
    screen_->type(tenths);
    taps += 2;
  }
  EXPECT_EQ(screen_->typedTitle(), "Point 6, to the left fender") << "and goes on by itself";
  EXPECT_EQ(screen_->keepText(), "Keep 5 gaps");
  const auto kept = heard(screen_.get(), &FitViewModel::kept);
  screen_->keep();
  ++taps;
  settle();
  EXPECT_LE(taps, 12);
  EXPECT_EQ(*kept, 1);
  ASSERT_EQ(car().assembly.fits.size(), 1U);
  const auto& fit = car().assembly.fits.front();
  EXPECT_EQ(fit.round, FitRound::TrialFit);
  EXPECT_EQ(fit.datum, Panel::LeftRearDoor);
  ASSERT_EQ(fit.points.size(), 5U);
  EXPECT_NEAR(fit.points[4].gap_mm, 5.2, 1e-9);
  EXPECT_NEAR(fit.points[4].wanted_gap_mm, 4, 1e-9) << "nothing was wanted of it yet";
  EXPECT_EQ(screen_->typedCount(), 0);
}

TEST_F(Fit, WhatNoGapIsIsRefusedAndTheOthersStand) {
  screen_->openPanel("left front door");
  screen_->begin(static_cast<int>(Kind::Gap));
  screen_->type(41);
  EXPECT_TRUE(screen_->keepWaits()) << "one point says nothing of a turn";
  screen_->pressUnit();
  EXPECT_EQ(screen_->digits(), 3);
  screen_->type(512);
  EXPECT_TRUE(screen_->wrong().contains("51.2 mm")) << screen_->wrong().toStdString();
  EXPECT_EQ(screen_->typedCount(), 1);
  screen_->type(124);
  EXPECT_EQ(screen_->wrong(), "");
  EXPECT_EQ(screen_->typedCount(), 2);
  EXPECT_TRUE(screen_->typedSoFar().startsWith("4.1   12.4"))
      << screen_->typedSoFar().toStdString();
  screen_->setPending(4);
  EXPECT_EQ(screen_->keepText(), "Take 0.4 mm");
  screen_->keep();
  EXPECT_EQ(screen_->typedCount(), 3);
  EXPECT_TRUE(car().assembly.fits.empty());
  screen_->chooseSpot(1);
  screen_->leaveOut();
  EXPECT_EQ(screen_->typedCount(), 2);
}

TEST_F(Fit, ATapTakesTheNearestPointOrMakesOneOnTheEdge) {
  screen_->openPanel("left front door");
  const int before = screen_->spots()->rowCount();
  const double x_mm = at(screen_->spots(), 1, "xMm").toDouble();
  const double y_mm = at(screen_->spots(), 1, "yMm").toDouble();
  EXPECT_TRUE(screen_->tap(x_mm + 10, y_mm - 10, 60));
  EXPECT_EQ(screen_->typedTitle(), "Point 2, to the left rear door");
  EXPECT_FALSE(screen_->tap(500, 350, 60)) << "in the middle of the panel there is no gap";
  EXPECT_TRUE(screen_->tap(x_mm - 20, y_mm - 75, 60));
  EXPECT_EQ(screen_->spots()->rowCount(), before + 1);
  EXPECT_EQ(screen_->typedTitle(), "Point 3, to the left rear door");
  screen_->type(44);
  EXPECT_EQ(screen_->typedCount(), 1);
}

TEST_F(Fit, TheMoveIsSaidAtTheFastenersAndLoggedWithOneTap) {
  measure(1.4, -0.8, 0);
  screen_->openPanel("left front door");
  EXPECT_EQ(screen_->said().answer, FitAnswer::ToMove) << screen_->answerWord().toStdString();
  ASSERT_EQ(screen_->moveCount(), 3);
  EXPECT_EQ(row(screen_->moves(), 0, "title"), "Upper hinge to body");
  // By hand: it hangs 1.4 mm too far to the front and 0.8 mm too high.
  EXPECT_EQ(row(screen_->moves(), 0, "words"), "1.4 mm towards the rear, 0.8 mm down");
  EXPECT_EQ(screen_->predictedTitle(), "after the move");
  EXPECT_EQ(screen_->mainAct(), FitAct::MoveAsSaid);
  const auto moved = heard(screen_.get(), &FitViewModel::moved);
  screen_->moveAsSaid();
  settle();
  EXPECT_EQ(*moved, 1);
  ASSERT_EQ(car().assembly.moves.size(), 1U);
  ASSERT_EQ(car().assembly.moves[0].moves.size(), 3U);
  EXPECT_NEAR(car().assembly.moves[0].moves[0].x_mm, 1.4, 1e-9);
  EXPECT_EQ(screen_->said().answer, FitAnswer::MovedSince);
  EXPECT_EQ(screen_->mainText(), "Measure again");

  measure(0.1, 0, 0);
  EXPECT_EQ(screen_->said().answer, FitAnswer::Inside);
  EXPECT_EQ(screen_->beforeTitle(), "before");
  EXPECT_EQ(screen_->predictedTitle(), "predicted");
  EXPECT_EQ(screen_->measuredTitle(), "now");
  EXPECT_NEAR(at(screen_->bars(), 0, "before").toDouble(), 6.4, 0.11);
  EXPECT_NEAR(at(screen_->bars(), 0, "predicted").toDouble(), 5.0, 0.06);
  EXPECT_NEAR(at(screen_->bars(), 0, "measured").toDouble(), 5.1, 0.06);
}

TEST_F(Fit, AfterAHingeWasMovedLatchAndCatchAreAskedUntilTheyAreChecked) {
  EXPECT_FALSE(screen_->latchAsked());
  act(acts::MoveFasteners{car().job, Panel::LeftFrontDoor, {{"upper hinge to body", 0.5, 0, 0}}});
  EXPECT_TRUE(screen_->latchAsked());
  EXPECT_TRUE(screen_->ofInterest());
  EXPECT_EQ(screen_->rowShape(), shape_of(StateKind::Must));
  screen_->checkLatch();
  settle();
  EXPECT_FALSE(failed_);
  EXPECT_FALSE(screen_->latchAsked());
  act(acts::MoveFasteners{car().job, Panel::LeftFrontDoor, {{"striker", 0, 0.5, 0}}});
  EXPECT_TRUE(screen_->latchAsked()) << "and after the next move again";
}

TEST_F(Fit, AMoveThatIsTakenBackGivesTheAnswerOfBefore) {
  measure(1.4, -0.8, 0);
  screen_->openPanel("left front door");
  const QString answer = screen_->answerWord();
  screen_->moveAsSaid();
  settle();
  ASSERT_EQ(screen_->said().answer, FitAnswer::MovedSince);
  act(acts::Withdraw{car().job, car().assembly.moves.front().entry, {}});
  EXPECT_TRUE(car().assembly.moves.empty());
  EXPECT_EQ(screen_->answerWord(), answer);
  EXPECT_FALSE(screen_->latchAsked());
  act(acts::Withdraw{car().job, car().assembly.fits.front().heads.front(), {}});
  EXPECT_EQ(screen_->said().answer, FitAnswer::NotMeasured);
  EXPECT_EQ(screen_->barCount(), 5) << "the usual points stand again";
}

TEST_F(Fit, SlotsAtTheirEndAndADatumThatIsOutAreSaid) {
  measure(4, 0, 0);
  screen_->openPanel("left front door");
  EXPECT_EQ(screen_->said().answer, FitAnswer::SlotsEnd);
  EXPECT_TRUE(screen_->answerWord().startsWith("Cannot be reached with these slots: "))
      << screen_->answerWord().toStdString();
  EXPECT_TRUE(screen_->answerWord().contains("upper hinge to body"));
  acts::MeasureFit bent{car().job, Panel::LeftFrontDoor, FitRound::TrialFit, {}};
  const auto& edge = screen_->edges_of()[0];
  for (std::size_t i = 0; i < 5; ++i)
    bent.points.push_back({edge.usual[i].at.x_mm,
                           edge.usual[i].at.y_mm,
                           edge.usual[i].direction_deg,
                           i == 2 ? 6.4 : 4.0,
                           4,
                           {},
                           0});
  act(bent);
  EXPECT_EQ(screen_->answerWord(), "The datum itself is out: measure structure");
  EXPECT_TRUE(screen_->answerMore().contains("left rear door"));
  EXPECT_EQ(screen_->mainAct(), FitAct::Measure) << "that is measured again before it is moved";
}

TEST_F(Fit, AfterHangingTheTrialFitIsWanted) {
  measure(0.2, 0, 0);
  screen_->openPanel("left front door");
  screen_->begin(static_cast<int>(Kind::Gap));
  EXPECT_TRUE(screen_->typedNote().contains("5.0")) << "of a trial fit what was wanted of it";
  screen_->chooseRound(static_cast<int>(FitRound::AfterHanging));
  EXPECT_TRUE(screen_->typedNote().contains("5.2 mm, as the trial fit was set"))
      << screen_->typedNote().toStdString();
  screen_->begin(static_cast<int>(Kind::Wanted));
  screen_->type(35);
  EXPECT_EQ(screen_->kind(), Kind::Gap);
  EXPECT_EQ(screen_->wantedWords(), "wanted 3.5 mm");
}

TEST_F(Fit, MovesThatWereTypedAreKeptOrRefusedInWords) {
  measure(1.4, 0, 0);
  screen_->openPanel("left front door");
  screen_->sayMove("upper hinge to body/x", "abc");
  EXPECT_FALSE(screen_->keepMoves());
  EXPECT_TRUE(screen_->wrong().contains("abc"));
  screen_->sayMove("upper hinge to body/x", "-0,7");
  screen_->sayMove("lower hinge to body/x", "");
  screen_->sayMove("striker/x", "0");
  EXPECT_TRUE(screen_->keepMoves());
  settle();
  ASSERT_EQ(car().assembly.moves.size(), 1U);
  ASSERT_EQ(car().assembly.moves[0].moves.size(), 1U);
  EXPECT_NEAR(car().assembly.moves[0].moves[0].x_mm, -0.7, 1e-9);
}

TEST_F(Fit, FlushIsTypedOverOrUnderTheNeighborAndSetAtTheSameFasteners) {
  screen_->openPanel("left front door");
  screen_->begin(static_cast<int>(Kind::Flush));
  screen_->type(10);
  EXPECT_EQ(screen_->wrong(), "Type the gap of this point first.");
  screen_->begin(static_cast<int>(Kind::Gap));
  for (int i = 0; i < screen_->spots()->rowCount(); ++i) screen_->type(40);
  EXPECT_EQ(screen_->typedCount(), 15);
  screen_->chooseSpot(0);
  screen_->begin(static_cast<int>(Kind::Flush));
  EXPECT_EQ(screen_->unitKey(), "higher");
  for (int i = 0; i < 5; ++i) screen_->type(10);
  EXPECT_EQ(screen_->typedSoFar(), QStringLiteral("\u2013   \u2013   \u2013   \u2013   \u2013"));
  screen_->pressUnit();
  for (int i = 0; i < 5; ++i) screen_->type(10);
  screen_->keep();
  settle();
  ASSERT_EQ(car().assembly.fits.size(), 1U);
  // One millimetre out at the rear edge and one in at the front: by hand, the hinges go out and the
  // striker goes in, and nothing moves along the panel.
  ASSERT_EQ(screen_->said().answer, FitAnswer::ToMove) << screen_->answerWord().toStdString();
  EXPECT_EQ(row(screen_->moves(), 0, "words"), "0.9 mm out");
  EXPECT_EQ(row(screen_->moves(), 2, "words"), "0.9 mm in");
  EXPECT_TRUE(screen_->flushKnown());
  screen_->openSum(true);
  EXPECT_EQ(screen_->sum()->title(), "Flush of the left front door");
}

TEST_F(Fit, SameAsTheCalculator) {
  measure(2.2, -0.7, 1.5);
  screen_->openPanel("left front door");
  ASSERT_TRUE(screen_->known());
  const auto& of = *screen_->of_panel();
  const auto given = calculated<trade::PanelFitResult>("panel-fit", of.gaps_asked);
  EXPECT_EQ(to_json(**of.gaps), to_json(given));
  ASSERT_EQ(static_cast<std::size_t>(screen_->moveCount()), given.moves.size());
  for (std::size_t i = 0; i < given.moves.size(); ++i) {
    const auto& said = screen_->said().moves[i].move;
    EXPECT_NEAR(said.x_mm, given.moves[i].x_mm, 0.05 + 1e-9);
    EXPECT_NEAR(said.y_mm, given.moves[i].y_mm, 0.05 + 1e-9);
    EXPECT_TRUE(row(screen_->moves(), static_cast<int>(i), "words")
                    .contains(gap_words(std::abs(said.x_mm))));
  }
  for (int bar = 0; bar < screen_->barCount(); ++bar) {
    const int number = at(screen_->bars(), bar, "number").toInt();
    for (const auto& point : given.points) {
      if (point.point != std::to_string(number)) continue;
      EXPECT_EQ(row(screen_->bars(), bar, "predictedWords"), gap_number(point.after_mm));
    }
  }
  screen_->openSum(false);
  same_sum(*screen_->sum(), given.basis);
  EXPECT_EQ(at(screen_->sum()->rows(), screen_->sum()->rows()->rowCount() - 1, "value"), "5 mm");
}

}  // namespace
}  // namespace jambline::screens
