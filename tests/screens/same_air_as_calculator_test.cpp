// What the screens of air and protection show is what the program jambline-calc gives for the same
// input. A sum that opens is held against the program's own, row by row.
#include "screens/exposure_view_model.h"
#include "screens/exposure_words.h"
#include "screens/register_view_model.h"
#include "tests/screens/calculator_desk.h"

namespace jambline::screens {
namespace {

class SameAirAsTheCalculator : public CalculatorDesk {
 protected:
  static int row_of(QAbstractItemModel* rows, const char* role, const QString& words) {
    for (int row = 0; row < rows->rowCount(); ++row)
      if (at(rows, row, role).toString().contains(words)) return row;
    return -1;
  }
  void begin_as_manager() {
    rosa_ = add("Rosa", job::Role::Manager);
    be(rosa_);
  }
  RespiratorId respirator(const char* model, job::RespiratorKind kind) {
    act(acts::SetRespirator{{},
                            {model, kind, trade::FactorScheme::Us, job::usual_us_factor(kind),
                             "OSHA", 2006, "", false}});
    return session_->shop().air.respirators.back().respirator;
  }
  int today() const { return static_cast<int>(clock_.moment.wall_ms / 86'400'000); }

  PersonId rosa_;
};

TEST_F(SameAirAsTheCalculator, AFitTest) {
  begin_as_manager();
  respirator("full face 1", job::RespiratorKind::SuppliedFull);
  RegisterViewModel shown(*session_);
  shown.openPerson(QString::fromStdString(rosa_.hex()));
  shown.openFitTest();
  trade::FitTest asked{{812, 640, 705, 590, 733, 668, 701}, trade::Facepiece::Full, 0, 365};
  for (const double factor : asked.exercise_factors)
    shown.fitTest()->typeFactor(static_cast<int>(factor));
  auto given = calculated<trade::FitTestResult>("fit-test", asked);
  EXPECT_EQ(shown.fitTest()->overall(),
            concentration_number(given.overall_factor, given.pass_mark));
  shown.fitTest()->openSum();
  same_sum(*shown.fitTest()->sum(), given.basis);
  const QDate tested = QDate(1970, 1, 1).addDays(today() - 210);
  shown.fitTest()->keep("L", tested.toString(Qt::ISODate), "365");
  settle();
  const int row = row_of(shown.rows(), "title", "full face 1");
  ASSERT_GE(row, 0);
  asked.age_days = 210;
  given = calculated<trade::FitTestResult>("fit-test", asked);
  EXPECT_TRUE(at(shown.rows(), row, "words")
                  .toString()
                  .contains(concentration_number(given.overall_factor, given.pass_mark)));
  ASSERT_TRUE(shown.openSum(at(shown.rows(), row, "key").toString()));
  same_sum(*shown.sum(), given.basis);
}

TEST_F(SameAirAsTheCalculator, ACartridge) {
  begin_as_manager();
  const auto mask = respirator("full face 2", job::RespiratorKind::FullAirPurifying);
  act(acts::ChangeCartridge{rosa_, mask, 16, "maker's service life, 2024"});
  RegisterViewModel shown(*session_);
  shown.openPerson(QString::fromStdString(rosa_.hex()));
  const int row = row_of(shown.rows(), "title", "Cartridge");
  ASSERT_GE(row, 0);
  const auto given = calculated<trade::CartridgeResult>(
      "cartridge", trade::Cartridge{16, "maker's service life, 2024", {}});
  EXPECT_EQ(at(shown.rows(), row, "words").toString(),
            concentration_number(given.left_h) + " h left");
  ASSERT_TRUE(shown.openSum(at(shown.rows(), row, "key").toString()));
  same_sum(*shown.sum(), given.basis);
}

TEST_F(SameAirAsTheCalculator, WhatARespiratorMayBeWornUpTo) {
  begin_as_manager();
  respirator("hood 7", job::RespiratorKind::SuppliedHood);
  RegisterViewModel shown(*session_);
  auto& form = *shown.respirator();
  form.open(at(shown.respirators(), 0, "key").toString());
  int computed = 0;
  for (int row = 0; row < form.useCount(); ++row) {
    if (!at(form.uses(), row, "opens").toBool()) continue;
    const QString key = at(form.uses(), row, "key").toString();
    for (const auto& limit : session_->shop().air.limits) {
      if (QString::fromStdString(limit.limit.hex()) != key) continue;
      const auto& said = limit.said;
      const auto given = calculated<trade::MaximumUseResult>(
          "maximum-use", trade::MaximumUse{25,
                                           trade::FactorScheme::Us,
                                           said.value,
                                           said.unit,
                                           said.authority,
                                           said.year,
                                           trade::FactorScheme::Us,
                                           said.dangerous,
                                           {}});
      EXPECT_EQ(at(form.uses(), row, "value").toString(),
                concentration_words(given.most, said.unit));
      form.openUse(key);
      same_sum(*form.sum(), given.basis);
      ++computed;
    }
  }
  EXPECT_GT(computed, 5);
}

TEST_F(SameAirAsTheCalculator, Exposure) {
  begin_as_manager();
  constexpr std::int64_t hour_ms = 3'600'000;
  const std::int64_t begin_ms = clock_.moment.wall_ms - 9 * hour_ms;
  const auto sample = [&](const char* substance, double value, double from_h, double to_h) {
    act(acts::LogSample{.person = rosa_,
                        .substance = substance,
                        .value = value,
                        .unit = "ppm",
                        .from_ms = begin_ms + static_cast<std::int64_t>(from_h * hour_ms),
                        .to_ms = begin_ms + static_cast<std::int64_t>(to_h * hour_ms)});
  };
  sample("HDI", 0.0031, 0, 3.5);
  sample("HDI", 0.024, 3.5, 3.75);
  sample("MDI", 0.0018, 0, 7);
  sample("IPDI", 0.012, 4, 4.5);
  ExposureViewModel shown(*session_);
  worked_out();
  ASSERT_NE(shown.asked(), nullptr);
  const auto given = calculated<trade::ExposureResult>("exposure", *shown.asked());
  ASSERT_NE(shown.result(), nullptr);
  ASSERT_TRUE(*shown.result());
  EXPECT_EQ(to_json(**shown.result()), to_json(given));
  ASSERT_EQ(shown.resultCount(), static_cast<int>(given.against.size()));
  for (int row = 0; row < shown.resultCount(); ++row) {
    const auto& against = given.against[static_cast<std::size_t>(row)];
    EXPECT_EQ(at(shown.results(), row, "value").toString(),
              concentration_number(against.value, against.limit));
    EXPECT_EQ(at(shown.results(), row, "over").toBool(), against.over);
    shown.openResult(at(shown.results(), row, "key").toString());
    same_sum(*shown.sum(), given.basis);
  }
  ASSERT_TRUE(given.mixture);
  EXPECT_TRUE(shown.mixtureWords().contains(concentration_number(*given.mixture, 1)));
}

}  // namespace
}  // namespace jambline::screens
