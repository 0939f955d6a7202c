#include "screens/operations_view_model.h"

#include "screens/orders_view_model.h"
#include "screens/state_kind.h"
#include "screens/typed_times.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class OperationsScreen : public ShopDesk {
 protected:
  QVariant at(QAbstractItemModel* rows, int row, const char* role) {
    return rows->data(rows->index(row, 0), rows->roleNames().key(role));
  }
  int row_of(QAbstractItemModel* rows, const QString& title) {
    for (int row = 0; row < rows->rowCount(); ++row)
      if (at(rows, row, "title").toString() == title) return row;
    return -1;
  }
};

TEST_F(OperationsScreen, DoneSaysByWhomAndWhatItsStageStillMisses) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  OperationsViewModel screen(*session_);
  const int inspect = row_of(screen.rows(), "Inspect");
  const QString key = at(screen.rows(), inspect, "key").toString();
  EXPECT_EQ(at(screen.rows(), inspect, "missing").toString(), "") << "only of the open one";
  screen.open(key);
  EXPECT_TRUE(at(screen.rows(), inspect, "missing").toString().contains("2 panels not clean"));
  screen.finish(key);
  settle();
  EXPECT_EQ(at(screen.rows(), inspect, "stands").toString(), "done by Ivo");
  EXPECT_TRUE(screen.sumWords().startsWith("1 of 3 done"));
  screen.reopen(key);
  settle();
  EXPECT_EQ(at(screen.rows(), inspect, "stands").toString(), "not yet");
}

TEST_F(OperationsScreen, ASupplementSaysWhyAndAManagerAnswersIt) {
  const auto rosa = add("Rosa", job::Role::Manager);
  be(add("Ivo", job::Role::Painter));
  open_car();
  OperationsViewModel screen(*session_);
  screen.startAdding();
  screen.setKind(1);
  screen.keep();
  EXPECT_EQ(screen.wrongField(), "stage");
  screen.chooseStage("prep");
  screen.setTitle("Straighten the beam");
  screen.keep();
  EXPECT_EQ(screen.wrongField(), "why");
  screen.setWhy(screen.reasons().first());
  screen.setHours("1,5");
  screen.keep();
  settle();
  ASSERT_FALSE(failed_);
  const int row = row_of(screen.rows(), "Straighten the beam");
  ASSERT_GE(row, 0);
  EXPECT_EQ(at(screen.rows(), row, "heading").toString(), "Supplements");
  EXPECT_EQ(at(screen.rows(), row, "stands").toString(), "approval asked");
  const QString key = at(screen.rows(), row, "key").toString();
  screen.open(key);
  EXPECT_FALSE(at(screen.rows(), row, "canAnswer").toBool()) << "a painter asks";
  be(rosa);
  ASSERT_TRUE(at(screen.rows(), row, "canAnswer").toBool());
  screen.answer(key, true);
  settle();
  EXPECT_EQ(at(screen.rows(), row, "stands").toString(), "not yet, approval given");
  EXPECT_EQ(car().find(OperationId{*OperationId::parse(key.toStdString())})->estimate_min, 90);
}

TEST_F(OperationsScreen, HoursThatAreNoEstimateAreSaidAtTheirField) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  OperationsViewModel screen(*session_);
  screen.startAdding();
  screen.chooseStage("mask");
  for (const char* hours : {"0", "10000", "soon"}) {
    screen.setHours(hours);
    screen.keep();
    EXPECT_EQ(screen.wrongField(), "hours") << hours;
    EXPECT_EQ(screen.hours(), hours) << "it stays";
  }
  EXPECT_EQ(screen.count(), 3);
}

TEST_F(OperationsScreen, AUsualOperationIsOnePress) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  OperationsViewModel screen(*session_);
  const int before = screen.templateCount();
  ASSERT_GT(before, 0);
  screen.addTemplate(at(screen.templates(), 0, "key").toString());
  settle();
  EXPECT_EQ(screen.count(), 4);
  EXPECT_EQ(screen.templateCount(), before - 1);
}

TEST_F(OperationsScreen, APartOnOrderSaysItsDayAndThatItIsLate) {
  be(add("Jo", job::Role::BodyTechnician));
  open_car();
  OrdersViewModel screen(*session_);
  screen.startPart("");
  screen.keepPart(" ", "");
  EXPECT_EQ(screen.wrongField(), "name");
  screen.keepPart("left headlamp", "1/2/2020");
  EXPECT_EQ(screen.wrongField(), "day");
  const int today = today_of(clock_.moment.wall_ms, session_->zone());
  screen.keepPart("left headlamp", day_text(today + 1));
  settle();
  ASSERT_EQ(screen.partCount(), 1);
  EXPECT_EQ(at(screen.parts(), 0, "shape").toInt(), shape_of(StateKind::Waits));
  clock_.advance_ms(3 * 86'400'000LL);
  be(add("Ana", job::Role::Helper));
  EXPECT_EQ(at(screen.parts(), 0, "shape").toInt(), shape_of(StateKind::Must));
  EXPECT_TRUE(screen.alarm());
  screen.arrived(at(screen.parts(), 0, "key").toString());
  settle();
  EXPECT_FALSE(screen.alarm());
  EXPECT_EQ(screen.rowWords(), "all is here");
}

TEST_F(OperationsScreen, WorkOutsideGoesOutAndComesBack) {
  be(add("Jo", job::Role::BodyTechnician));
  open_car();
  OrdersViewModel screen(*session_);
  screen.startOutside("");
  screen.setKind(static_cast<int>(job::SubletKind::Alignment));
  screen.keepOutside("Wheel house", "");
  settle();
  const QString key = at(screen.outside(), 0, "key").toString();
  screen.wentOut(key);
  settle();
  EXPECT_EQ(car().visit.sublets.front().said.state, job::SubletState::Out);
  screen.cameBack(key);
  settle();
  EXPECT_EQ(car().visit.sublets.front().said.state, job::SubletState::Back);
  EXPECT_FALSE(failed_);
}

}  // namespace
}  // namespace jambline::screens
