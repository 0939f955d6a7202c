// What is known of a booth, typed in fields, and its readings, typed on the keys.
#include "screens/booth_facts_view_model.h"
#include "screens/booth_reading_view_model.h"
#include "screens/booth_view_model.h"
#include "tests/screens/booth_desk.h"

namespace jambline::screens {
namespace {

using job::BoothReading;

class BoothForms : public BoothDesk {
 protected:
  static QString at(QAbstractItemModel* rows, const char* key, const char* role) {
    for (int row = 0; row < rows->rowCount(); ++row)
      if (rows->index(row, 0).data(Qt::UserRole).toString() == QLatin1String(key))
        return rows->index(row, 0).data(rows->roleNames().key(role)).toString();
    return QStringLiteral("no such row");
  }
  const folds::BoothAirView& air() { return *session_->shop().air.find(booth_); }
};

TEST_F(BoothForms, FactsAreTypedInTheDevicesUnitsAndKeptInTheLogs) {
  BoothFactsViewModel form(*session_);
  form.open(key(booth_));
  EXPECT_EQ(at(form.fields(), "volume_m3", "unit"), "ft\u00b3");
  form.type("volume_m3", "3500");
  form.type("wanted_m_s", "100");
  form.type("wanted_from", "the booth's maker");
  form.type("most_pressure_pa", "0.6");
  form.type("rated_exhaust_m3_h", "11000");
  int kept = 0;
  QObject::connect(&form, &BoothFactsViewModel::kept, &form, [&] { ++kept; });
  form.keep();
  settle();
  EXPECT_EQ(kept, 1);
  EXPECT_NEAR(*air().facts.volume_m3, 99.11, 0.01);
  EXPECT_NEAR(*air().facts.wanted_m_s, 0.508, 1e-9);
  EXPECT_NEAR(*air().facts.most_pressure_pa, 149.45, 0.01);
  EXPECT_EQ(air().facts.mixing_factor, 3);
  const auto before = air().facts;
  form.open(key(booth_));
  EXPECT_TRUE(form.knownWords().contains("formula, the weaker basis"));
  form.keep();
  settle();
  EXPECT_EQ(kept, 2);
  EXPECT_EQ(air().facts, before) << "what was not touched is not rounded";
  session_->set_units(Units::Metric);
  form.open(key(booth_));
  EXPECT_EQ(at(form.fields(), "wanted_m_s", "typed"), "0.51");
  form.type("volume_m3", "");
  form.keep();
  settle();
  EXPECT_FALSE(air().facts.volume_m3) << "empty: not known";
  EXPECT_EQ(air().facts.wanted_m_s, before.wanted_m_s);
}

TEST_F(BoothForms, WhatIsWrongIsSaidAtItsField) {
  BoothFactsViewModel form(*session_);
  form.open(key(booth_));
  form.type("volume_m3", "0");
  form.type("rated_exhaust_m3_h", "much");
  form.type("wanted_m_s", "100");
  form.type("extra_factor", "1.5");
  form.type("mixing_factor", "0.5");
  form.keep();
  settle();
  EXPECT_EQ(session_->shop().air.find(booth_), nullptr) << "nothing is kept";
  EXPECT_TRUE(at(form.fields(), "volume_m3", "wrong").startsWith("It lies between"));
  EXPECT_EQ(at(form.fields(), "rated_exhaust_m3_h", "wrong"), "This is no number.");
  EXPECT_EQ(at(form.fields(), "wanted_from", "wrong"),
            "Say who requires it: a number of nobody is no requirement.");
  EXPECT_EQ(at(form.fields(), "extra_factor_name", "wrong"), "Give the factor a name.");
  EXPECT_EQ(at(form.fields(), "mixing_factor", "wrong"), "It lies between 1 and 10.");
  EXPECT_EQ(at(form.fields(), "volume_m3", "typed"), "0") << "what was typed stays";
}

TEST_F(BoothForms, OnlyWhatBearsOnTheKindIsAsked) {
  BoothFactsViewModel form(*session_);
  form.open(key(add_booth("Deck", job::BoothKind::PrepDeck)));
  EXPECT_EQ(at(form.fields(), "volume_m3", "typed"), "no such row");
  EXPECT_EQ(at(form.fields(), "fixed_clear_min", "unit"), "min");
  const BoothId mixing = add_booth("Mixing", job::BoothKind::MixingRoom);
  form.open(key(mixing));
  EXPECT_EQ(at(form.fields(), "smoke_valid_days", "typed"), "no such row");
  BoothReadingViewModel pad(*session_);
  pad.open(key(mixing), static_cast<int>(BoothReading::SmokeTest));
  EXPECT_NE(pad.what(), static_cast<int>(BoothReading::SmokeTest));
}

TEST_F(BoothForms, ReadingsAreTypedInSeveralPointsAndOnTheClock) {
  BoothReadingViewModel pad(*session_);
  pad.open(key(booth_), static_cast<int>(BoothReading::Velocity));
  EXPECT_EQ(pad.unit(), "ft/min");
  for (const int value : {104, 98, 110}) pad.type(value);
  EXPECT_EQ(pad.valueWords(), "mean of 3: 104 ft/min");
  pad.drop(1);
  pad.keep(96);
  settle();
  const auto* read = folds::last_reading(&air(), BoothReading::Velocity);
  ASSERT_TRUE(read);
  ASSERT_EQ(read->values.size(), 3U);
  EXPECT_NEAR(read->values[2], 96 * 0.00508, 1e-9);

  pad.open(key(booth_), static_cast<int>(BoothReading::SmokeTest));
  pad.keep(470);
  EXPECT_TRUE(pad.wrong().startsWith("A minute has 60 seconds")) << pad.wrong().toStdString();
  pad.keep(435);
  settle();
  read = folds::last_reading(&air(), BoothReading::SmokeTest);
  ASSERT_TRUE(read);
  EXPECT_NEAR(read->values[0], 4 + 35.0 / 60, 1e-9);

  pad.open(key(booth_), static_cast<int>(BoothReading::FilterPressure));
  pad.shift(1);
  EXPECT_TRUE(pad.wrong().startsWith("That day is still to come"));
  pad.shift(-30);
  pad.keep(50);
  settle();
  read = folds::last_reading(&air(), BoothReading::FilterPressure);
  ASSERT_TRUE(read);
  EXPECT_NEAR(read->values[0], 0.5 * 249.0889, 1e-6);
  EXPECT_EQ(read->happened_ms, clock_.moment.wall_ms - 30 * 86'400'000LL);
  EXPECT_FALSE(failed_);
}

TEST_F(BoothForms, AnAirflowOfNothingIsNoReading) {
  BoothReadingViewModel pad(*session_);
  pad.open(key(booth_), static_cast<int>(BoothReading::Velocity));
  pad.keep(0);
  settle();
  EXPECT_TRUE(pad.wrong().contains("do not spray")) << pad.wrong().toStdString();
  EXPECT_EQ(session_->shop().air.find(booth_), nullptr);
}

// The words stand on the booth: over, too near to call, under, with who requires it.
TEST_F(BoothForms, TheAirIsHeldAgainstWhatIsRequired) {
  BoothViewModel screen(*session_);
  const auto role = [&](const char* name) {
    return at(screen.booths(), key(booth_).toLatin1(), name);
  };
  EXPECT_EQ(role("air"), "not read yet");
  act(acts::SetBoothFacts{booth_, {.wanted_m_s = 0.508, .wanted_from = "the maker"}});
  const std::pair<double, const char*> readings[] = {
      {0.60, "over 100 ft/min, required by the maker"},
      {0.51, "too near to call: 100 ft/min, required by the maker"},
      {0.40, "under 100 ft/min, required by the maker"}};
  for (const auto& [velocity_m_s, words] : readings) {
    clock_.advance_ms(1000);
    act(acts::ReadBooth{booth_, BoothReading::Velocity, {velocity_m_s}, 5});
    EXPECT_EQ(role("airNote"), words);
    EXPECT_EQ(role("airOut"), velocity_m_s < 0.45 ? "true" : "false");
  }
}

TEST_F(BoothForms, TheFilterSaysWhenItIsDueAndTheMainActWhatIsDueMost) {
  BoothViewModel screen(*session_);
  const auto role = [&](const char* name) {
    return at(screen.booths(), key(booth_).toLatin1(), name);
  };
  EXPECT_EQ(screen.due(), BoothViewModel::Due::SmokeTest);
  smoke_test(booth_, 5);
  EXPECT_EQ(screen.due(), BoothViewModel::Due::None);
  act(acts::SetBoothFacts{booth_, {.most_pressure_pa = 150}});
  EXPECT_EQ(screen.due(), BoothViewModel::Due::ReadPressure);
  EXPECT_EQ(screen.dueSecond(), "Booth 1: not read today");
  // 100, 110, 120 Pa ten days apart: a straight line is at 150 Pa thirty days later.
  const std::int64_t day_ms = 86'400'000;
  for (int i = 0; i < 3; ++i)
    act(acts::ReadBooth{booth_,
                        BoothReading::FilterPressure,
                        {100.0 + 10 * i},
                        5,
                        clock_.moment.wall_ms - (20 - 10 * i) * day_ms});
  EXPECT_TRUE(role("filterNote").startsWith("most 0.60 in. w.c., due about Oct 21"))
      << role("filterNote").toStdString();
  EXPECT_EQ(screen.due(), BoothViewModel::Due::None);
  int sums = 0;
  QObject::connect(&screen, &BoothViewModel::sumOpened, &screen, [&] { ++sums; });
  screen.openSum(key(booth_), BoothViewModel::Figure::Filter);
  EXPECT_EQ(sums, 1);
  QStringList values;
  for (int row = 0; row < screen.sum()->rows()->rowCount(); ++row)
    values << screen.sum()->rows()->index(row, 0).data(Qt::UserRole + 2).toString();
  // 1 Pa a day is 0.004015 in. w.c.; 150 Pa are 0.6022.
  EXPECT_TRUE(values.contains("0.004015 in. w.c. a day")) << values.join("; ").toStdString();
  EXPECT_TRUE(values.contains("0.6022 in. w.c.")) << values.join("; ").toStdString();
  EXPECT_TRUE(values.contains("Sep 11")) << "the middle of the three readings";
  clock_.advance_ms(1000);
  act(acts::ReadBooth{booth_, BoothReading::FilterPressure, {155}, 5});
  EXPECT_EQ(screen.due(), BoothViewModel::Due::ChangeFilters);
  EXPECT_EQ(role("filterOut"), "true");
}

TEST_F(BoothForms, ABoothSaysWhatStandsInIt) {
  BoothViewModel screen(*session_);
  const auto role = [&](const char* name) {
    return at(screen.booths(), key(booth_).toLatin1(), name);
  };
  smoke_test(booth_, 5, 430);
  EXPECT_TRUE(role("smokeNote").contains("overdue since")) << role("smokeNote").toStdString();
  smoke_test(booth_, 5);
  EXPECT_EQ(role("live"), "false");
  spray(booth_);
  EXPECT_EQ(role("stateWords"), "Spraying, stay out");
  EXPECT_EQ(role("stateLine"), "Ivo, K 41-206");
  act(acts::GunDown{booth_, {}});
  EXPECT_EQ(role("countdown"), "5:00");
  later(2);
  EXPECT_EQ(role("countdown"), "3:00");
  later(4);
  EXPECT_EQ(role("stateWords"), "The time is over");
  EXPECT_EQ(screen.due(), BoothViewModel::Due::LogOver);
  EXPECT_EQ(screen.dueBooth(), key(booth_));
}

}  // namespace
}  // namespace jambline::screens
