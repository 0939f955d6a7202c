// The protection register: who enters what, how it stands, and what is refused at which field.
#include "screens/register_view_model.h"

#include "base/spans.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class RegisterViewModelTest : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    rosa_ = add("Rosa", job::Role::Manager);
    ivo_ = add("Ivo", job::Role::Painter);
    be(rosa_);
    shown_ = std::make_unique<RegisterViewModel>(*session_);
  }
  void TearDown() override {
    shown_.reset();
    ShopDesk::TearDown();
  }
  static QVariant at(QAbstractItemModel* rows, int row, const char* role) {
    return rows->data(rows->index(row, 0), rows->roleNames().key(role));
  }
  static int row_of(QAbstractItemModel* rows, const char* role, const QString& words) {
    for (int row = 0; row < rows->rowCount(); ++row)
      if (at(rows, row, role).toString().contains(words)) return row;
    return -1;
  }
  QString hex(const PersonId& person) { return QString::fromStdString(person.hex()); }
  void add_respirator(const QString& model, job::RespiratorKind kind) {
    auto& form = *shown_->respirator();
    form.open({});
    const int of = static_cast<int>(kind);
    form.keep(model, of, 0, form.usualFactor(of, 0), form.usualAuthority(0), form.usualYear(0), {},
              false);
    settle();
  }
  void type_factors(std::initializer_list<int> factors) {
    shown_->openFitTest();
    for (const int factor : factors) shown_->fitTest()->typeFactor(factor);
  }
  QString date(int days_from_now) {
    const QDate today(2026, 9, 21);  // of the desk's clock, in the machine's UTC
    return today.addDays(days_from_now).toString(Qt::ISODate);
  }
  // The row of the person who is open.
  QString state_of(const QString& title) {
    const int row = row_of(shown_->rows(), "title", title);
    return row < 0 ? QStringLiteral("no row") : at(shown_->rows(), row, "stateWords").toString();
  }

  PersonId rosa_, ivo_;
  std::unique_ptr<RegisterViewModel> shown_;
};

// Factor 25 of a hood: 29 CFR 1910.134 table 1 and its footnote 4.
TEST_F(RegisterViewModelTest, ARespiratorStandsWithFactorSchemeAuthorityAndYear) {
  EXPECT_EQ(shown_->mainAct(), RegisterViewModel::Act::AddRespirator);
  EXPECT_FALSE(shown_->mainWaits());
  add_respirator("hood 7", job::RespiratorKind::SuppliedHood);
  ASSERT_EQ(shown_->respiratorCount(), 1);
  const QString factor = at(shown_->respirators(), 0, "factorWords").toString();
  for (const char* part : {"25", "US", "OSHA", "1910.134", "2006"})
    EXPECT_TRUE(factor.contains(part)) << factor.toStdString() << " lacks " << part;
  be(ivo_);
  EXPECT_FALSE(shown_->respirator()->mayKeep());
}

TEST_F(RegisterViewModelTest, AFieldThatCannotBeKeptSaysWhyAndNothingIsWritten) {
  auto& form = *shown_->respirator();
  form.open({});
  form.keep("hood", 6, 0, "0", "OSHA", "2006", {}, false);
  EXPECT_EQ(form.wrongField(), "factor");
  EXPECT_TRUE(form.wrongWords().contains("from 1 to 10")) << form.wrongWords().toStdString();
  form.keep("hood", 6, 0, "25", "", "2006", {}, false);
  EXPECT_EQ(form.wrongField(), "authority");
  form.keep("hood", 6, 0, "25", "OSHA", "06", {}, false);
  EXPECT_EQ(form.wrongField(), "year");
  form.keep("  ", 6, 0, "25", "OSHA", "2006", {}, false);
  EXPECT_EQ(form.wrongField(), "model");
  settle();
  EXPECT_EQ(shown_->respiratorCount(), 0);
  EXPECT_FALSE(failed_);
}

TEST_F(RegisterViewModelTest, AUkFactorIsNotFilledInAndMeetsNoUsLimit) {
  auto& form = *shown_->respirator();
  EXPECT_TRUE(form.usualFactor(6, 1).isEmpty());
  form.open({});
  form.keep("visor", 6, 1, "40", "HSE", "2013", {}, false);
  settle();
  ASSERT_EQ(shown_->respiratorCount(), 1);
  form.open(at(shown_->respirators(), 0, "key").toString());
  const int hdi = row_of(form.uses(), "title", "HDI, 8 hours");
  ASSERT_GE(hdi, 0);
  EXPECT_FALSE(at(form.uses(), hdi, "opens").toBool());
  EXPECT_EQ(at(form.uses(), hdi, "value").toString(),
            "Not computed: a UK factor does not go with a US limit.");
  const int nco = row_of(form.uses(), "from", "UK HSE");
  ASSERT_GE(nco, 0);
  EXPECT_TRUE(at(form.uses(), nco, "opens").toBool());
  EXPECT_EQ(at(form.uses(), nco, "value").toString(), "0.8 mg/m\u00b3");  // 40 x 0.02
  const int eu = row_of(form.uses(), "from", "EU directive");
  ASSERT_GE(eu, 0);
  EXPECT_FALSE(at(form.uses(), eu, "opens").toBool()) << "no scheme of factors goes with it";
}

// 132.28 of these factors: 29 CFR 1910.134 appendix A part I.C, the harmonic mean.
TEST_F(RegisterViewModelTest, TheFitFactorGrowsAsItIsTypedAndOpensToItsSum) {
  add_respirator("half mask 2", job::RespiratorKind::HalfAirPurifying);
  shown_->openPerson(hex(ivo_));
  type_factors({200, 150, 100, 120, 180, 90, 160});
  auto& form = *shown_->fitTest();
  EXPECT_EQ(form.overall(), "132.3");
  EXPECT_FALSE(form.under());
  form.openSum();
  EXPECT_EQ(form.sum()->figure(), "132.3");
  form.keep("M", date(-10), "365");
  settle();
  EXPECT_FALSE(failed_);
  const int row = row_of(shown_->rows(), "title", "half mask 2");
  ASSERT_GE(row, 0);
  EXPECT_EQ(at(shown_->rows(), row, "words").toString(), "fit factor 132.3, pass mark 100");
  EXPECT_TRUE(
      at(shown_->rows(), row, "stateWords").toString().startsWith("in date to Sep 11, 2027"));
  EXPECT_TRUE(shown_->openSum(at(shown_->rows(), row, "key").toString()));
  EXPECT_GT(shown_->sum()->rows()->rowCount(), 3);
}

TEST_F(RegisterViewModelTest, ATestUnderTheMarkIsKeptAndPresses) {
  add_respirator("full face 1", job::RespiratorKind::SuppliedFull);
  shown_->openPerson(hex(ivo_));
  type_factors({500, 500, 500, 500, 500, 500, 50});
  EXPECT_EQ(shown_->fitTest()->overall(), "218.8");
  EXPECT_TRUE(shown_->fitTest()->under());
  shown_->fitTest()->keep("L", date(0), "365");
  settle();
  EXPECT_EQ(state_of("full face 1"), "under the pass mark");
  EXPECT_EQ(shown_->mainAct(), RegisterViewModel::Act::OpenPerson);
  EXPECT_TRUE(shown_->mainText().contains("Ivo"));
}

TEST_F(RegisterViewModelTest, AnExpiredTestAndADueDayThatIsOverPressFirst) {
  add_respirator("full face 1", job::RespiratorKind::SuppliedFull);
  shown_->openPerson(hex(ivo_));
  type_factors({800, 800});
  shown_->fitTest()->keep("L", date(-400), "365");
  settle();
  EXPECT_EQ(state_of("full face 1"), "overdue since Aug 17, 2026");
  EXPECT_TRUE(shown_->pressing().contains("Ivo")) << shown_->pressing().toStdString();
  EXPECT_EQ(at(shown_->people(), 0, "title").toString(), "Ivo");
  shown_->keepDue(1, date(12));
  settle();
  EXPECT_EQ(state_of("Painter training"), "due Oct 3, 2026, in 12 days");
  shown_->keepDue(1, date(-1));
  settle();
  EXPECT_EQ(state_of("Painter training"), "overdue since Sep 20, 2026");
}

TEST_F(RegisterViewModelTest, WhatIsDueGoesWithTheDayThoughNobodyTouchesIt) {
  shown_->openPerson(hex(ivo_));
  shown_->keepDue(0, date(0));
  settle();
  EXPECT_EQ(state_of("Health surveillance"), "due Sep 21, 2026, today") << "the whole day counts";
  clock_.advance_ms(day_ms);
  emit session_->secondPassed();
  EXPECT_EQ(state_of("Health surveillance"), "overdue since Sep 21, 2026");
}

TEST_F(RegisterViewModelTest, DaysAreReadAndRefusedAtTheirField) {
  add_respirator("full face 1", job::RespiratorKind::SuppliedFull);
  shown_->openPerson(hex(ivo_));
  type_factors({800});
  auto& form = *shown_->fitTest();
  form.keep("L", "9/31/2026", "365");
  EXPECT_EQ(form.wrongField(), "day");
  form.keep("L", date(1), "365");
  EXPECT_EQ(form.wrongField(), "day");
  EXPECT_EQ(form.wrongWords(), "That day is still to come.");
  form.keep("L", "9/1/2026", "0");
  EXPECT_EQ(form.wrongField(), "validDays");
  form.keep("", "9/1/2026", "365");
  EXPECT_EQ(form.wrongField(), "size");
  settle();
  EXPECT_EQ(state_of("full face 1"), "no row");
  form.keep("L", "9/1/2026", "365");
  settle();
  EXPECT_EQ(state_of("full face 1"), "in date to Sep 1, 2027");
}

TEST_F(RegisterViewModelTest, ALooseHoodIsNotOfferedForAFitTest) {
  add_respirator("hood 7", job::RespiratorKind::SuppliedHood);
  shown_->openPerson(hex(ivo_));
  shown_->openFitTest();
  EXPECT_EQ(shown_->fitTest()->respiratorCount(), 0);
  shown_->fitTest()->keep("L", date(0), "365");
  EXPECT_EQ(shown_->fitTest()->wrongField(), "respirator");
}

TEST_F(RegisterViewModelTest, NoScheduleIsMadeUpAndItsHoursAreThoseOfTheGun) {
  add_respirator("full face 1", job::RespiratorKind::FullAirPurifying);
  const RespiratorId mask = session_->shop().air.respirators[0].respirator;
  ASSERT_EQ(shown_->cartridgeCount(), 1);
  EXPECT_EQ(at(shown_->cartridges(), 0, "schedule").toString(), "")
      << "nothing before somebody typed it";
  shown_->openPerson(hex(ivo_));
  const QString key = at(shown_->cartridges(), 0, "key").toString();
  shown_->keepCartridge(key, "", "maker's service life");
  EXPECT_EQ(shown_->wrongField(), "hours");
  shown_->keepCartridge(key, "4", " ");
  EXPECT_EQ(shown_->wrongField(), "basis");
  shown_->keepCartridge(key, "4", "maker's service life, 2024");
  settle();
  EXPECT_FALSE(failed_);
  EXPECT_EQ(state_of("Cartridge"), "within its schedule");
  // Ivo sprays for an hour and a half.
  open_car();
  act(acts::AddBooth{"booth 1", job::BoothKind::Downdraft});
  const BoothId booth = session_->shop().booths[0].booth;
  be(ivo_);
  acts::StartSpray spray{car().job, booth, mask, false, {}};
  for (std::size_t i = 0; i < enum_words<job::GunItem>.size(); ++i) {
    const auto item = static_cast<job::GunItem>(i);
    if (job::class_of(item) == job::CheckClass::Should || item == job::GunItem::MaySpray ||
        item == job::GunItem::RightRespirator || item == job::GunItem::CartridgeInTime)
      continue;
    const bool now = job::is_of_now(item);
    spray.checks.push_back({item,
                            now ? job::CutAnswer::Yes : job::CutAnswer::No,
                            now ? std::nullopt : std::optional(job::GunReason::ManagerDecided),
                            {}});
  }
  act(spray);
  ASSERT_FALSE(failed_) << code_name(failed_->code) << failed_->subject;
  clock_.advance_ms(90 * 60'000);
  act(acts::GunDown{booth, {}});
  const int row = row_of(shown_->rows(), "title", "Cartridge");
  ASSERT_GE(row, 0);
  EXPECT_EQ(at(shown_->rows(), row, "words").toString(), "2.5 h left");
  EXPECT_TRUE(at(shown_->rows(), row, "note").toString().contains("maker's service life, 2024"));
}

TEST_F(RegisterViewModelTest, AnybodyStopsHimselfAndOnlyAManagerTakesItBack) {
  be(ivo_);
  shown_->openPerson(hex(rosa_));
  EXPECT_FALSE(shown_->mayFlag()) << "he is no manager";
  shown_->openPerson(hex(ivo_));
  ASSERT_TRUE(shown_->mayFlag());
  shown_->sayDoNotSpray(true);
  settle();
  EXPECT_TRUE(shown_->flagged());
  EXPECT_FALSE(shown_->mayFlag()) << "he does not let himself out of it";
  shown_->sayDoNotSpray(false);
  settle();
  EXPECT_TRUE(shown_->flagged());
  EXPECT_EQ(at(shown_->people(), 0, "summary").toString(), "do not spray");
  be(rosa_);
  shown_->openPerson(hex(ivo_));
  ASSERT_TRUE(shown_->mayFlag());
  shown_->sayDoNotSpray(false);
  settle();
  EXPECT_FALSE(shown_->flagged());
}

TEST_F(RegisterViewModelTest, BreathingAirThatIsNotAsItMustBePresses) {
  shown_->keepAir(true, false, true, date(-3), "90");
  settle();
  EXPECT_EQ(shown_->airWords(), "CO alarm does not work");
  EXPECT_EQ(shown_->airShape(), shape_of(StateKind::Must));
  shown_->keepAir(true, true, true, date(-3), "90");
  settle();
  EXPECT_EQ(shown_->airState(), "in date to Dec 17, 2026");
  shown_->keepAir(true, true, true, date(-100), "90");
  settle();
  EXPECT_EQ(shown_->airState(), "overdue since Sep 11, 2026");
  clock_.advance_ms(-60 * day_ms);  // a clock that was set back
  act(acts::AddRack{"rack 2"});
  EXPECT_EQ(shown_->airShape(), shape_of(StateKind::Done)) << "in its ninety days then";
}

}  // namespace
}  // namespace jambline::screens
