// A product's sheet, typed: what contradicts itself is said at the field and nothing is kept.
#include "screens/product_view_model.h"

#include "screens/typed_words.h"
#include "tests/screens/cure_desk.h"

namespace jambline::screens {
namespace {

class ProductScreen : public CureDesk {
 protected:
  void SetUp() override {
    CureDesk::SetUp();
    products_ = std::make_unique<ProductViewModel>(*session_);
  }
  void TearDown() override {
    products_.reset();
    CureDesk::TearDown();
  }
  void type_point(const char* key, const char* temperature, const char* minutes) {
    products_->sayRow(key, 0, temperature);
    products_->sayRow(key, 2, minutes);
  }
  QString field(const char* key, const char* role) {
    for (int i = 0; i < products_->fields()->rowCount(); ++i)
      if (at(products_->fields(), i, "key").toString() == QLatin1String(key))
        return at(products_->fields(), i, role).toString();
    return {};
  }
  const job::Product& kept() { return session_->shop().air.products.back().said; }
  std::unique_ptr<ProductViewModel> products_;
};

TEST_F(ProductScreen, IsTypedOnceFromItsSheet) {
  products_->open("");
  products_->sayField("0", "clear A");
  products_->chooseKind(static_cast<int>(job::ProductKind::Clear));
  products_->sayActivated(true);
  products_->sayField("1", "12");
  products_->openMilestone("sand from");
  type_point("0", "20", "16 h");
  products_->addRow();
  type_point("1", "60", "45");
  products_->back();
  EXPECT_EQ(products_->page(), ProductViewModel::Page::Product);
  products_->keep();
  worked_out();
  ASSERT_EQ(session_->shop().air.products.size(), 1U);
  EXPECT_EQ(kept().product_name, "clear A");
  EXPECT_TRUE(kept().activated);
  EXPECT_EQ(kept().minimum_c, 12);
  EXPECT_EQ(kept().surface_max_c, 30) << "the usual one, as it stood in the field";
  ASSERT_EQ(kept().steps.size(), 1U);
  EXPECT_EQ(kept().steps[0].points, (std::vector<trade::CurePoint>{{20, 960}, {60, 45}}));
  EXPECT_EQ(products_->page(), ProductViewModel::Page::List);

  session_->set_units(Units::Us);
  settle();
  products_->open(at(products_->products(), 0, "key").toString());
  EXPECT_EQ(field("1", "typed"), "53.6");
  products_->keep();
  worked_out();
  EXPECT_EQ(products_->page(), ProductViewModel::Page::List) << "nothing was changed";
  EXPECT_EQ(kept().steps[0].points, (std::vector<trade::CurePoint>{{20, 960}, {60, 45}}));
}

TEST_F(ProductScreen, PointsThatContradictEachOtherStayOpenAndSaySo) {
  products_->open("");
  products_->sayField("0", "clear A");
  products_->openMilestone("sand from");
  type_point("0", "20", "30 min");
  products_->addRow();
  type_point("1", "60", "16 h");
  products_->back();
  EXPECT_EQ(products_->page(), ProductViewModel::Page::Milestone);
  EXPECT_EQ(products_->rowsWrong(),
            "The points contradict each other: slower at 60 °C than at 20 °C.");
  type_point("1", "20", "16 h");
  products_->back();
  EXPECT_EQ(products_->rowsWrong(), "Two times at one temperature: 20 °C.");
  type_point("1", "600", "16 h");
  products_->back();
  EXPECT_EQ(at(products_->rows(), 1, "wrong").toString(),
            "600 °C cannot be: it takes \u221220 °C to 200 °C.");
  type_point("1", "60", "later");
  products_->back();
  EXPECT_EQ(at(products_->rows(), 1, "wrong").toString(),
            "That is no time: later. Type it as 45 min or 16 h.");
  products_->dropRow("1");
  products_->back();
  EXPECT_EQ(products_->page(), ProductViewModel::Page::Product);
}

TEST_F(ProductScreen, WhatCannotBeIsSaidAtItsField) {
  products_->open("");
  products_->chooseKind(static_cast<int>(job::ProductKind::Clear));
  products_->sayField("2", "95");
  products_->sayField("5", "30");
  products_->sayField("6", "10");
  products_->keep();
  worked_out();
  EXPECT_TRUE(session_->shop().air.products.empty());
  EXPECT_EQ(field("0", "wrong"), "The name is missing.");
  EXPECT_EQ(field("2", "wrong"), "95 °C cannot be: it takes 10 °C to 60 °C.");
  EXPECT_EQ(field("6", "wrong"), "This is under the least.");
  EXPECT_EQ(products_->refusal(), "Not kept: look at what is marked.");
}

TEST_F(ProductScreen, AGlassUrethaneHasATableForEachCase) {
  products_->open("");
  products_->sayField("0", "urethane A");
  products_->chooseKind(static_cast<int>(job::ProductKind::GlassUrethane));
  EXPECT_EQ(products_->cure(), static_cast<int>(trade::CureKind::MoistureCure));
  EXPECT_EQ(field("2", "title"), "") << "nothing of touching a film";
  products_->openTable("");
  products_->back();
  EXPECT_EQ(products_->rowsWrong(), "The airbag and belt case is missing.");
  products_->sayCase("two bags");
  products_->back();
  EXPECT_EQ(products_->rowsWrong(), "The table has no row yet.");
  products_->sayRow("0", 0, "5");
  products_->sayRow("0", 1, "130");
  products_->sayRow("0", 2, "8 h");
  products_->back();
  EXPECT_EQ(at(products_->rows(), 0, "wrong").toString(), "Humidity: It takes 0 to 100.");
  products_->sayRow("0", 1, "30");
  products_->back();
  products_->keep();
  worked_out();
  ASSERT_EQ(session_->shop().air.products.size(), 1U);
  EXPECT_EQ(kept().drive_away, (std::vector<job::DriveAwayCase>{{"two bags", {{5, 30, 480}}}}));
}

TEST_F(ProductScreen, OnlyAManagerTypesAndWhatIsRetiredIsNoLongerOffered) {
  product(urethane());
  BondViewModel bond(*session_);
  settle();
  EXPECT_EQ(bond.productCount(), 1);
  products_->open(at(products_->products(), 0, "key").toString());
  products_->retire(true);
  worked_out();
  EXPECT_TRUE(kept().retired);
  EXPECT_EQ(bond.productCount(), 0);
  be(add("Ivo", job::Role::Painter));
  EXPECT_FALSE(products_->manager());
  products_->open(at(products_->products(), 0, "key").toString());
  products_->retire(false);
  products_->keep();
  worked_out();
  EXPECT_TRUE(kept().retired);
}

TEST(TypedWords, TimesAndDurations) {
  EXPECT_EQ(typed_minutes("45"), 45);
  EXPECT_EQ(typed_minutes("45 min"), 45);
  EXPECT_EQ(typed_minutes("16 h"), 960);
  EXPECT_EQ(typed_minutes("1 h 30 min"), 90);
  EXPECT_EQ(typed_minutes("1:30"), 90);
  EXPECT_EQ(typed_minutes("1,5 h"), 90);
  EXPECT_EQ(typed_minutes("7 d"), 10080);
  EXPECT_EQ(typed_minutes("soon"), std::nullopt);
  EXPECT_EQ(typed_minutes("5 parsecs"), std::nullopt);
  EXPECT_EQ(typed_minutes(""), std::nullopt);
  EXPECT_EQ(typed_time("2:30 pm"), QTime(14, 30));
  EXPECT_EQ(typed_time("1430"), QTime(14, 30));
  EXPECT_EQ(typed_time("25:00"), std::nullopt);
}

}  // namespace
}  // namespace jambline::screens
