#include "screens/film_view_model.h"

#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class FilmScreen : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    be(add("Ivo", job::Role::Painter));
    open_car();
    session_->set_units(Units::Metric);
  }
  QVariant value(QAbstractItemModel* rows, int row, const char* role) {
    return rows->data(rows->index(row, 0), rows->roleNames().key(role));
  }
  void mark(double x_mm, double y_mm, int size) {
    act(acts::PlaceMark{.job = car().job,
                        .panel = job::Panel::Hood,
                        .x_mm = x_mm,
                        .y_mm = y_mm,
                        .defect = job::DefectKind::Nib,
                        .size = size,
                        .layer = job::Layer::NotSaid});
  }
  void read(FilmViewModel& screen, job::FilmWhen when, std::initializer_list<int> values) {
    screen.chooseWhen(static_cast<int>(when));
    for (const int one : values) screen.type(one);
    screen.keep();
    settle();
  }
  void make_plastic(trade::Substrate substrate) {
    acts::PlanPanel plan{car().job, car().find(job::Panel::Hood)->plan};
    plan.plan.substrate = substrate;
    act(plan);
  }
};

TEST_F(FilmScreen, ThreeReadingsAndOneTapKeepASpotAndGoOnToTheNext) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  EXPECT_EQ(screen.when(), static_cast<int>(job::FilmWhen::BeforeBase));
  EXPECT_TRUE(screen.mainWaits());
  for (const int one : {60, 61, 62}) screen.type(one);
  EXPECT_EQ(screen.meanWords(), "mean of 3: 61 µm");
  EXPECT_FALSE(screen.mainWaits());
  screen.mainAct();
  settle();
  ASSERT_EQ(car().find(job::Panel::Hood)->film.size(), 1u);
  EXPECT_EQ(screen.spot(), 2);
  EXPECT_EQ(screen.readingCount(), 0);
  EXPECT_EQ(value(screen.kept(), 0, "words"), "60, 61, 62 µm");
  EXPECT_FALSE(failed_);
}

TEST_F(FilmScreen, AReadingThatNoGaugeShowsIsRefusedAndTheOthersStand) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  screen.type(112);
  screen.type(115);
  screen.type(9999);
  EXPECT_EQ(screen.wrong(),
            "9999 µm is past the gauge. The other 2 readings stand. Type it again.");
  EXPECT_EQ(screen.readingCount(), 2);
  screen.type(0);
  EXPECT_EQ(screen.wrong(), "0 µm is no film. The other 2 readings stand. Type it again.");
  EXPECT_EQ(screen.readingCount(), 2);
  EXPECT_TRUE(screen.mainWaits());
  screen.keep();  // too few
  settle();
  EXPECT_TRUE(car().find(job::Panel::Hood)->film.empty());
  screen.type(118);
  EXPECT_EQ(screen.wrong(), "");
  EXPECT_EQ(screen.readingCount(), 3);
}

TEST_F(FilmScreen, LettersInARowAreNoNumberAndNothingIsKept) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  screen.type(112);
  for (const char* row : {"112 abc 118", "112 115", "112 9999 118", "", "1e3 nan inf"}) {
    screen.typeRow(QString::fromLatin1(row));
    settle();
    EXPECT_NE(screen.wrong(), "") << row;
    EXPECT_EQ(screen.readingCount(), 1) << row;
  }
  screen.typeRow("112, 115,118");
  settle();
  EXPECT_EQ(screen.wrong(), "");
  EXPECT_EQ(value(screen.kept(), 0, "words"), "112, 115, 118 µm");
}

TEST_F(FilmScreen, MilsAreTypedInTenthsAndTheUnitStaysWithTheReadings) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  EXPECT_EQ(screen.digits(), 3);
  screen.switchUnit();
  EXPECT_EQ(screen.digits(), 2);
  screen.type(44);
  EXPECT_EQ(value(screen.readings(), 0, "words"), "4.4 mil");
  screen.switchUnit();
  EXPECT_EQ(screen.unitWords(), "mil");
  EXPECT_NE(screen.wrong(), "");
  screen.switchThick();
  EXPECT_EQ(screen.digits(), 3);
  screen.type(104);
  screen.type(45);
  screen.keep();
  settle();
  const auto& film = car().find(job::Panel::Hood)->film.at(0);
  EXPECT_EQ(film.unit, job::FilmUnit::Mil);
  EXPECT_NEAR(film.readings_um[1], 264.16, 1e-9);  // 25.4 um a mil, exactly
}

TEST_F(FilmScreen, ATotalGaugeReadsNothingOnPlasticAndCarbon) {
  for (const auto substrate : {trade::Substrate::Plastic, trade::Substrate::Carbon}) {
    make_plastic(substrate);
    FilmViewModel screen(*session_);
    screen.openPanel("hood");
    screen.chooseWhen(static_cast<int>(job::FilmWhen::BeforeCutting));
    EXPECT_EQ(screen.gauge(), static_cast<int>(job::FilmGauge::Clear));
    screen.chooseGauge(static_cast<int>(job::FilmGauge::Total));
    EXPECT_NE(screen.gaugeWords(), "");
    screen.type(112);
    EXPECT_EQ(screen.readingCount(), 0);
    EXPECT_TRUE(screen.mainWaits());
  }
}

TEST_F(FilmScreen, AReadingIsTypedAgainInItsPlaceOrTakenOut) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  for (const int one : {112, 151, 118}) screen.type(one);
  screen.chooseReading(1);
  screen.type(115);
  EXPECT_EQ(value(screen.readings(), 1, "words"), "115 µm");
  EXPECT_EQ(screen.readingCount(), 3);
  screen.dropReading();
  EXPECT_EQ(screen.readingCount(), 2);
}

TEST_F(FilmScreen, AKeptReadingIsCorrectedOrTakenBack) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  read(screen, job::FilmWhen::BeforeBase, {60, 61, 26});
  const QString key = value(screen.kept(), 0, "key").toString();
  screen.correct(key);
  EXPECT_EQ(screen.readingCount(), 3);
  screen.chooseReading(2);
  screen.type(62);
  screen.keep();
  settle();
  ASSERT_EQ(screen.keptCount(), 1);
  EXPECT_EQ(value(screen.kept(), 0, "words"), "60, 61, 62 µm");
  EXPECT_EQ(screen.correcting(), "");
  screen.correct(key);
  screen.takeBack();
  settle();
  EXPECT_EQ(value(screen.kept(), 0, "words"), "60, 61, 26 µm");
  EXPECT_EQ(screen.correcting(), "");
  screen.correct(key);
  screen.takeBack();
  settle();
  EXPECT_EQ(screen.keptCount(), 0);
  EXPECT_FALSE(failed_);
}

TEST_F(FilmScreen, FilmThinnerThanBeforeThePaintIsRefusedInWordsAndNothingIsLost) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  read(screen, job::FilmWhen::BeforeBase, {160, 161, 162});
  read(screen, job::FilmWhen::BeforeCutting, {112, 115, 118});
  EXPECT_TRUE(screen.wrong().startsWith("This is thinner than before the paint was on."))
      << screen.wrong().toStdString();
  EXPECT_EQ(screen.readingCount(), 3);
  EXPECT_EQ(screen.spot(), 1);
  EXPECT_EQ(screen.keptCount(), 1);
}

TEST_F(FilmScreen, TotalsThatLeaveNoClearAreSaidAndNotComputedWith) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  read(screen, job::FilmWhen::BeforeBase, {160, 161, 162});
  read(screen, job::FilmWhen::BeforeCutting, {165, 166, 167});  // 5 um on top is not even base
  EXPECT_FALSE(screen.known());
  EXPECT_EQ(screen.wordText(), "Readings do not fit");
}

TEST_F(FilmScreen, TheScreensNumbersAreThoseOfTheCalculation) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  read(screen, job::FilmWhen::BeforeBase, {60, 61, 62});
  read(screen, job::FilmWhen::BeforeCutting, {140, 141, 142});
  const auto result = trade::film_budget(screen.film().budget);
  ASSERT_TRUE(result);
  EXPECT_EQ(screen.film().budget.total_after_um, (std::vector<double>{140, 141, 142}));
  EXPECT_EQ(screen.clearUm(), result->clear.mean_um);
  EXPECT_EQ(screen.afterUm(), result->after.back().left.mean_um);
  EXPECT_EQ(screen.wordText().toLower().toStdString(), word_of(result->word));
  EXPECT_EQ(screen.rangeWords(), QString("about %1 µm, could be %2 to %3 µm")
                                     .arg(std::lround(result->clear.mean_um))
                                     .arg(std::lround(result->likely_low_um))
                                     .arg(std::lround(result->likely_high_um)));
  screen.openSum();
  EXPECT_EQ(screen.sum()->rows()->rowCount(), static_cast<int>(result->basis.terms.size()));
}

TEST_F(FilmScreen, AReadingIsAskedForOnlyWhereTheCoatsSayOneLightPass) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  EXPECT_EQ(screen.wordText(), "One light pass");
  EXPECT_EQ(screen.askedWords(), "");  // nothing to work on yet
  mark(300, 400, 1);
  mark(500, 700, 3);
  EXPECT_NE(screen.askedWords(), "");
  // the spot stands at the worst mark: the larger one
  const folds::MarkView& worst = car().find(job::Panel::Hood)->marks.at(1);
  screen.chooseWhen(static_cast<int>(job::FilmWhen::BeforeCutting));
  screen.chooseGauge(static_cast<int>(job::FilmGauge::Clear));
  for (const int one : {70, 71, 72}) screen.type(one);
  screen.keep();
  settle();
  EXPECT_EQ(car().find(job::Panel::Hood)->film.at(0).x_mm, worst.x_mm);
  EXPECT_EQ(screen.wordText(), "Room");
  EXPECT_EQ(screen.askedWords(), "");
}

TEST_F(FilmScreen, AReadingThatIsMoreThanTheOneBeforeTheWorkIsSaid) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  read(screen, job::FilmWhen::BeforeBase, {60, 61, 62});
  EXPECT_FALSE(screen.hintWords().contains("says nothing"));
  screen.chooseWhen(static_cast<int>(job::FilmWhen::BeforeCutting));
  EXPECT_FALSE(screen.hintWords().contains("says nothing"));  // the same spot
  screen.chooseSpot(2);
  EXPECT_TRUE(screen.hintWords().contains("says nothing"));
  read(screen, job::FilmWhen::BeforeCutting, {140, 141, 142});
  read(screen, job::FilmWhen::AfterSequence, {143, 144, 145});
  EXPECT_EQ(value(screen.kept(), 2, "note"),
            "3 µm more than before the work: spot or gauge differ");
  EXPECT_FALSE(failed_);
}

TEST_F(FilmScreen, WhatWasTypedStaysWhenThePanelIsLeft) {
  FilmViewModel screen(*session_);
  screen.openPanel("hood");
  screen.type(112);
  screen.openPanel("front bumper cover");
  EXPECT_EQ(screen.readingCount(), 0);
  screen.openPanel("hood");
  EXPECT_EQ(screen.readingCount(), 1);
}

TEST(ChanceWords, AreCountsAndNeverZero) {
  EXPECT_EQ(chance_words(0), "under 1 in 1,000");
  EXPECT_EQ(chance_words(0.33), "1 in 300");
  EXPECT_EQ(chance_words(2.5), "1 in 40");
  EXPECT_EQ(chance_words(38), "4 in 10");
  EXPECT_EQ(chance_words(99), "nearly certain");
}

}  // namespace
}  // namespace jambline::screens
