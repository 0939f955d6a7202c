// Limits and exposure: what is typed, what is compared with what, and the one word that is said.
#include "screens/exposure_view_model.h"

#include "screens/exposure_words.h"
#include "screens/first_aid_view_model.h"
#include "screens/limits_view_model.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class ExposureViewModelTest : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    rosa_ = add("Rosa", job::Role::Manager);
    ivo_ = add("Ivo", job::Role::Painter);
    be(rosa_);
    shown_ = std::make_unique<ExposureViewModel>(*session_);
    limits_ = std::make_unique<LimitsViewModel>(*session_);
  }
  void TearDown() override {
    shown_.reset();
    limits_.reset();
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
  RespiratorId respirator(const char* model, job::RespiratorKind kind, trade::FactorScheme scheme,
                          double factor) {
    act(acts::SetRespirator{{}, {model, kind, scheme, factor, "an authority", 2006, "", false}});
    return session_->shop().air.respirators.back().respirator;
  }
  // On the desk's day, which is over at 14:13.
  void sample(const char* substance, const char* value, const char* from, const char* to,
              const QString& worn = {}) {
    const int unit = shown_->unitOf(substance);
    shown_->keep(hex(ivo_), substance, value, unit < 0 ? 0 : unit, "9/21/2026", from, to, worn);
    settle();
    settle();
  }

  PersonId rosa_, ivo_;
  std::unique_ptr<ExposureViewModel> shown_;
  std::unique_ptr<LimitsViewModel> limits_;
};

// 29 CFR 1910.1000(d)(1)(i): the sum over 8 hours; limits of the NIOSH Pocket Guide, HDI.
TEST_F(ExposureViewModelTest, AverageCeilingAndWordAreOfTheLimitsThatHold) {
  sample("HDI", "0.004", "6:00", "10:00");
  sample("HDI", "0.03", "10:00", "10:15");
  ASSERT_EQ(shown_->shiftCount(), 1);
  EXPECT_FALSE(shown_->working());
  const int eight = row_of(shown_->results(), "title", "HDI, 8 hours");
  const int ceiling = row_of(shown_->results(), "title", "HDI, ceiling");
  ASSERT_GE(eight, 0);
  ASSERT_GE(ceiling, 0);
  // By hand: (0.004 x 4 + 0.03 x 0.25) / 8 = 0.0029375.
  EXPECT_EQ(at(shown_->results(), eight, "value").toString(), "0.002938");
  EXPECT_EQ(at(shown_->results(), eight, "limitWords").toString(), "below 0.005 ppm");
  EXPECT_EQ(at(shown_->results(), ceiling, "value").toString(), "0.03");
  EXPECT_EQ(at(shown_->results(), ceiling, "limitWords").toString(), "over 0.02 ppm");
  EXPECT_EQ(at(shown_->shifts(), 0, "words").toString(), "over 1 of 2 limits");
  shown_->openResult(at(shown_->results(), eight, "key").toString());
  EXPECT_TRUE(shown_->sum()->figure().contains("0.002938"));
  EXPECT_GT(shown_->sum()->rows()->rowCount(), 3);
}

TEST_F(ExposureViewModelTest, AValueThatRoundsOntoItsLimitGetsMorePlaces) {
  EXPECT_EQ(concentration_number(0.0200004, 0.02), "0.0200004");
  EXPECT_EQ(concentration_number(0.02, 0.02), "0.02");
  EXPECT_EQ(concentration_number(81.25), "81.25");
  EXPECT_EQ(concentration_number(0.00000512), "0.00000512");
}

// NIOSH Pocket Guide, HDI: factor 25 up to 0.125 ppm.
TEST_F(ExposureViewModelTest, WhatWasWornStandsBesideWithItsMostAndSchemesDoNotMix) {
  const auto us =
      respirator("hood 7", job::RespiratorKind::SuppliedHood, trade::FactorScheme::Us, 25);
  const auto uk =
      respirator("visor", job::RespiratorKind::SuppliedHood, trade::FactorScheme::Uk, 40);
  sample("HDI", "0.2", "8:00", "8:30", QString::fromStdString(us.hex()));
  sample("HDI", "0.01", "9:00", "9:30", QString::fromStdString(uk.hex()));
  ASSERT_EQ(shown_->wornCount(), 4);
  for (int row = 0; row < shown_->wornCount(); ++row) {
    const bool of_us = at(shown_->worn(), row, "title").toString().startsWith("hood 7");
    const bool eight = at(shown_->worn(), row, "from").toString().startsWith("HDI, 8 hours");
    EXPECT_EQ(at(shown_->worn(), row, "opens").toBool(), of_us);
    if (!of_us) {
      EXPECT_EQ(at(shown_->worn(), row, "value").toString(),
                "Not computed: a UK factor does not go with a US limit.");
      EXPECT_FALSE(shown_->openWorn(at(shown_->worn(), row, "key").toString()));
    } else if (eight) {
      EXPECT_EQ(at(shown_->worn(), row, "value").toString(), "0.125 ppm");
      EXPECT_TRUE(at(shown_->worn(), row, "over").toBool());
      EXPECT_TRUE(at(shown_->worn(), row, "word").toString().contains("is over it"));
      EXPECT_TRUE(shown_->openWorn(at(shown_->worn(), row, "key").toString()));
    }
  }
}

TEST_F(ExposureViewModelTest, SamplesThatOverlapAreNotPutTogetherUntilOneIsTakenBack) {
  sample("HDI", "0.004", "6:00", "10:00");
  sample("HDI", "0.03", "9:00", "9:15");
  EXPECT_EQ(shown_->resultCount(), 0);
  EXPECT_TRUE(shown_->refusedWords().contains("overlap")) << shown_->refusedWords().toStdString();
  EXPECT_EQ(at(shown_->shifts(), 0, "words").toString(), "nothing computed");
  const int wrong = row_of(shown_->samples(), "title", "0.03");
  ASSERT_GE(wrong, 0);
  shown_->takeBack(at(shown_->samples(), wrong, "key").toString(), shown_->reasons()[0]);
  settle();
  settle();
  EXPECT_EQ(shown_->samples()->rowCount(), 1);
  EXPECT_EQ(shown_->resultCount(), 2);
}

TEST_F(ExposureViewModelTest, WhatNoLimitSpeaksOfIsSaid) {
  sample("toluene", "60", "6:00", "10:00");
  EXPECT_EQ(shown_->resultCount(), 0);
  EXPECT_TRUE(shown_->refusedWords().contains("no limit fits"));
  EXPECT_TRUE(shown_->leftOutWords().contains("toluene in ppm"));
}

TEST_F(ExposureViewModelTest, FieldsSayWhatIsWrongWithThem) {
  const auto refused_at = [&](const QString& field) {
    EXPECT_EQ(shown_->wrongField(), field);
    EXPECT_FALSE(shown_->wrongWords().isEmpty());
  };
  shown_->keep("", "HDI", "0.1", 0, "9/21/2026", "6:00", "7:00", {});
  refused_at("person");
  shown_->keep(hex(ivo_), "HDI", "-1", 0, "9/21/2026", "6:00", "7:00", {});
  refused_at("value");
  shown_->keep(hex(ivo_), "HDI", "0.1", 0, "2/30/2026", "6:00", "7:00", {});
  refused_at("day");
  shown_->keep(hex(ivo_), "HDI", "0.1", 0, "9/21/2026", "25:00", "7:00", {});
  refused_at("from");
  shown_->keep(hex(ivo_), "HDI", "0.1", 0, "9/21/2026", "6:00", "23:00", {});
  refused_at("to");
  EXPECT_EQ(shown_->wrongWords(), "That time is still to come.");
  settle();
  EXPECT_EQ(shown_->shiftCount(), 0);
  EXPECT_EQ(shown_->lengthWords("22:00", "6:30"), "8 h 30 min, to the next day");
}

TEST_F(ExposureViewModelTest, ARetiredLimitIsHeldAgainstNothingAndStaysInTheList) {
  sample("HDI", "0.004", "6:00", "10:00");
  ASSERT_EQ(shown_->resultCount(), 2);
  const int count = limits_->limits()->rowCount();
  const int ceiling = row_of(limits_->limits(), "spoken", "HDI, ceiling");
  ASSERT_GE(ceiling, 0);
  limits_->open(at(limits_->limits(), ceiling, "key").toString());
  limits_->retire(true);
  settle();
  settle();
  EXPECT_EQ(limits_->limits()->rowCount(), count);
  EXPECT_TRUE(at(limits_->limits(), count - 1, "retired").toBool()) << "at the end";
  EXPECT_EQ(shown_->resultCount(), 1);
}

TEST_F(ExposureViewModelTest, ALimitOfTheShopNamesAuthorityYearAndSource) {
  limits_->open({});
  limits_->keep("toluene", 0, "200", 0, "OSHA", "1971", "", 0, "");
  EXPECT_EQ(limits_->wrongField(), "source");
  limits_->keep("toluene", 0, "200", 0, "", "1971", "table Z-2", 0, "");
  EXPECT_EQ(limits_->wrongField(), "authority");
  limits_->keep("toluene", 0, "200", 0, "OSHA", "71", "table Z-2", 0, "");
  EXPECT_EQ(limits_->wrongField(), "year");
  limits_->keep("toluene", 0, "200", 0, "OSHA", "1971", "29 CFR 1910.1000 table Z-2", 0, "500");
  settle();
  EXPECT_FALSE(failed_);
  const int row = row_of(limits_->limits(), "substance", "toluene");
  ASSERT_GE(row, 0);
  EXPECT_EQ(at(limits_->limits(), row, "value").toString(), "200");
  EXPECT_TRUE(at(limits_->limits(), row, "own").toBool());
  be(ivo_);
  EXPECT_FALSE(limits_->mayKeep());
}

TEST_F(ExposureViewModelTest, FirstAidIsWrittenOnceAnOpeningAndNeedsNobody) {
  session_->choose_unlocked({});
  settle();
  ASSERT_FALSE(session_->hasPerson());
  FirstAidViewModel aid(*session_);
  const auto written = [&] { return session_->snapshot().number; };
  aid.pageOpened();
  const auto before = written();
  aid.open(static_cast<int>(job::FirstAid::Injection));
  settle();
  EXPECT_FALSE(failed_);
  const auto once = written();
  EXPECT_GT(once, before);
  EXPECT_TRUE(aid.writtenWords().contains("injected by the gun"))
      << aid.writtenWords().toStdString();
  aid.open(static_cast<int>(job::FirstAid::Injection));
  settle();
  EXPECT_EQ(written(), once) << "the same page, the same choice";
  aid.open(static_cast<int>(job::FirstAid::FanStopped));
  settle();
  EXPECT_GT(written(), once);
  const auto twice = written();
  aid.pageOpened();
  aid.open(static_cast<int>(job::FirstAid::Injection));
  settle();
  EXPECT_GT(written(), twice) << "opened anew";
  EXPECT_FALSE(aid.mayFlag()) << "nobody is chosen";
  be(ivo_);
  ASSERT_TRUE(aid.mayFlag());
  aid.flag();
  settle();
  EXPECT_TRUE(session_->shop().air.find(ivo_)->do_not_spray);
  EXPECT_FALSE(aid.mayFlag());
}

}  // namespace
}  // namespace jambline::screens
