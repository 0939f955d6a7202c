// The check sign by 49 CFR 565.15: ones alone sum to 89, 89 mod 11 = 1. The rest is this
// program's own.
#include "screens/open_car_view_model.h"

#include <fstream>

#include "screens/words.h"
#include "tests/screens/shop_desk.h"
#include "tests/screens/until.h"

namespace jambline::screens {
namespace {

class OpenCarScreen : public ShopDesk {};

TEST_F(OpenCarScreen, UsualCarTakesFourChoicesAndOpen) {
  OpenCarViewModel form(*session_);
  form.setPlate("K 41-206");
  form.next();
  EXPECT_EQ(form.page(), OpenCarViewModel::ColorPage);
  form.chooseColor("#1F4F3B");
  form.next();
  form.chooseBody("two-door hatchback", true);
  EXPECT_EQ(form.page(), OpenCarViewModel::WorkPage);
  form.chooseWork("bumper and fender", true);
  EXPECT_EQ(form.page(), OpenCarViewModel::PromisePage);
  form.choosePromise("tomorrow");
  QString opened;
  QObject::connect(&form, &OpenCarViewModel::opened, &form,
                   [&](const QString& job) { opened = job; });
  form.open();
  settle();
  ASSERT_FALSE(opened.isEmpty());
  session_->openCar(opened);
  settle();
  ASSERT_NE(session_->car(), nullptr);
  EXPECT_EQ(car().plate, "K 41-206");
  EXPECT_EQ(car().color.name, "deep green");
  EXPECT_EQ(car().panels.size(), 2U);
  EXPECT_FALSE(car().find(job::Panel::FrontBumper)->plan.on_car);
  EXPECT_EQ(car().find(job::Panel::FrontBumper)->plan.substrate, trade::Substrate::Plastic);
  EXPECT_FALSE(car().operations.empty());
  EXPECT_TRUE(car().promised_ms);
  EXPECT_EQ(form.page(), 0);
  EXPECT_TRUE(form.plate().isEmpty());
  EXPECT_EQ(engine_->draft("open car"), "");
}

TEST_F(OpenCarScreen, HalfTypedFormIsThereAfterARestart) {
  {
    OpenCarViewModel form(*session_);
    form.setPlate("K 41-206");
    form.setColorCode("G7");
    form.chooseBody("cargo van", false);
    form.flipPanel("hood");
    form.nextFinish("hood");
    form.addTenths(0, 3);
    form.goTo(OpenCarViewModel::PanelsPage);
    settle();
  }
  close();
  open();
  OpenCarViewModel form(*session_);
  EXPECT_EQ(form.plate(), "K 41-206");
  EXPECT_EQ(form.colorCode(), "G7");
  EXPECT_EQ(form.page(), OpenCarViewModel::PanelsPage);
  EXPECT_EQ(form.panelCount(), 1);
  EXPECT_EQ(form.body(), static_cast<int>(job::BodyShape::CargoVan));
  auto* panels = form.panels();
  EXPECT_GT(panels->rowCount(), 0);
  bool found = false;
  for (int i = 0; i < panels->rowCount(); ++i) {
    const auto at = panels->index(i, 0);
    if (!panels->data(at, panels->roleNames().key("painted")).toBool()) continue;
    found = true;
    EXPECT_EQ(panels->data(at, panels->roleNames().key("key")), "hood");
    EXPECT_EQ(panels->data(at, panels->roleNames().key("finish")), words_of(job::Finish::TriCoat));
  }
  EXPECT_TRUE(found);
}

TEST_F(OpenCarScreen, VinThatDoesNotCheckWaitsForThePersonsWord) {
  OpenCarViewModel form(*session_);
  form.setPlate("K");
  form.setVin("11111111111111111");  // all ones checks: common test number
  EXPECT_EQ(form.vinState(), OpenCarViewModel::VinState::Passes);
  form.setVin("11111111211111111");
  EXPECT_EQ(form.vinState(), OpenCarViewModel::VinState::Fails);
  EXPECT_FALSE(form.waitsFor().isEmpty());
  form.next();
  EXPECT_EQ(form.page(), 0);
  form.useVinAsTyped();
  EXPECT_TRUE(form.waitsFor().isEmpty());
  form.setVin("11111111311111111");
  EXPECT_EQ(form.vinState(), OpenCarViewModel::VinState::Fails);
}

TEST_F(OpenCarScreen, CsvIsShownBeforeItIsUsed) {
  const std::string path = folder_ + "/estimate.csv";
  std::ofstream(path) << "stage,title,hours\nprep,Fender,1.5\nnone,x,1\n";
  OpenCarViewModel form(*session_);
  form.readCsv(QString::fromStdString(path));
  ASSERT_TRUE(until([&] { return form.csvShown(); }));
  EXPECT_EQ(form.csvCount(), 1);
  EXPECT_EQ(form.csvRows()->rowCount(), 2);
  EXPECT_EQ(form.operations()->rowCount(), 0);
  form.useCsv();
  EXPECT_EQ(form.operations()->rowCount(), 1);
  EXPECT_FALSE(form.csvShown());
}

TEST_F(OpenCarScreen, PlateOfAnAttackIsTextAndNothingElse) {
  OpenCarViewModel form(*session_);
  form.setPlate("'; DROP \"<b>");
  form.chooseBody("cargo van", false);
  form.chooseWork("single panel", false);
  form.open();
  settle();
  ASSERT_FALSE(failed_);
  ASSERT_EQ(session_->snapshot().floor->size(), 1U);
  EXPECT_EQ(session_->snapshot().floor->front().plate, "'; DROP \"<b>");
}

}  // namespace
}  // namespace jambline::screens
