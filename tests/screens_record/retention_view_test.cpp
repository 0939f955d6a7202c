// Keep and forget on a small shop. Dates by GNU date from the small shop's clock, November 25,
// 2026.
#include <QAbstractItemModelTester>
#include <gtest/gtest.h>

#include "screens/retention_view_model.h"
#include "screens/state_kind.h"
#include "tests/screens_record/shown.h"

namespace jambline::screens {
namespace {

class KeepAndForget : public testing::Test {
 protected:
  KeepAndForget() {
    shown_.shop.act(acts::AddPerson{"Rosa", job::Role::Manager}, {});
    until([this] { return shown_.session->shop().people.size() == 3U; });
    rosa_ = shown_.session->shop().people.back().person;
    shown_.session->choosePerson(QString::fromStdString(rosa_.hex()));
    keep_.wake();
  }
  bool act(acts::Command command) {
    shown_.shop.act(std::move(command), rosa_);
    return until([this] { return keep_.loaded(); });
  }
  void leave(const PersonId& person) {
    act(acts::LetPersonGo{person});
    ASSERT_TRUE(until([this] { return keep_.loaded() && keep_.leaverCount() > 0; }));
  }
  static std::string cell(QAbstractItemModel* model, int row, const char* role) {
    return text(*model, row, model->roleNames().key(role));
  }
  QString key(const PersonId& person) { return QString::fromStdString(person.hex()); }
  Shown shown_;
  PersonId rosa_;
  RetentionViewModel keep_{*shown_.session};
};

TEST_F(KeepAndForget, EveryClassSaysItsUsualTimeAndItsSource) {
  const QAbstractItemModelTester tester(keep_.classes());
  ASSERT_EQ(keep_.classes()->rowCount(), 6);
  EXPECT_EQ(cell(keep_.classes(), 1, "title"), "Time cards");
  EXPECT_EQ(cell(keep_.classes(), 1, "usual"), "2 years");
  EXPECT_EQ(cell(keep_.classes(), 1, "source"),
            "U.S. Department of Labor, 29 CFR 516.6(a)(1), text of 1987");
  EXPECT_EQ(cell(keep_.classes(), 2, "usual"), "5 years, the most recent 2 in the shop");
  EXPECT_EQ(cell(keep_.classes(), 3, "usual"), "until the next one");
  EXPECT_EQ(cell(keep_.classes(), 5, "source"), "common practice, no source");
  for (int row = 0; row < 6; ++row) EXPECT_EQ(cell(keep_.classes(), row, "own"), "");
}

TEST_F(KeepAndForget, AManagerSetsYearsAndFewerAreSaidToBeFewer) {
  EXPECT_TRUE(keep_.mayKeep());
  keep_.open(QStringLiteral("1"));
  EXPECT_EQ(keep_.title(), "Time cards");
  EXPECT_EQ(keep_.years(), "");
  EXPECT_EQ(keep_.fewerWords(QStringLiteral("2")), "");
  EXPECT_NE(keep_.fewerWords(QStringLiteral("1")), "");
  for (const char* wrong : {"", "0", "101", "1.5", "x"}) {
    keep_.keep(QString::fromLatin1(wrong));
    EXPECT_EQ(keep_.wrongField(), "years") << wrong;
  }
  keep_.keep(QStringLiteral("1"));
  ASSERT_TRUE(until([this] { return keep_.years() == QStringLiteral("1"); }));
  EXPECT_EQ(keep_.wrongField(), "");
  EXPECT_EQ(cell(keep_.classes(), 1, "own"), "1 year");
  EXPECT_EQ(cell(keep_.classes(), 1, "fewer"), "true");
  EXPECT_NE(cell(keep_.classes(), 1, "spoken").find("a rule may ask for longer"),
            std::string::npos);
  keep_.keep(QStringLiteral("4"));
  ASSERT_TRUE(until([this] { return keep_.years() == QStringLiteral("4"); }));
  EXPECT_EQ(cell(keep_.classes(), 1, "fewer"), "false");
  keep_.keepAsUsual();
  ASSERT_TRUE(until([this] { return keep_.years().isEmpty(); }));
  shown_.session->choosePerson(key(shown_.shop.ivo));
  EXPECT_FALSE(keep_.mayKeep());
}

TEST_F(KeepAndForget, NobodyStandsThereUntilSomebodyLeft) {
  ASSERT_TRUE(until([this] { return keep_.loaded(); }));
  EXPECT_EQ(keep_.leaverCount(), 0);
  EXPECT_EQ(keep_.notOverWords(key(shown_.shop.ivo)), "");
}

TEST_F(KeepAndForget, WhoWorkedIsKeptForThePayrollAndThenMayBeForgotten) {
  leave(shown_.shop.ivo);
  ASSERT_EQ(keep_.leaverCount(), 1);
  EXPECT_EQ(cell(keep_.leavers(), 0, "title"), "Ivo");
  EXPECT_EQ(cell(keep_.leavers(), 0, "last"), "Last worked Nov 25, 2026");
  EXPECT_EQ(cell(keep_.leavers(), 0, "state"), "Kept until Nov 25, 2029");
  EXPECT_EQ(cell(keep_.leavers(), 0, "until"),
            "Usually kept until Nov 25, 2029, because of payroll");
  EXPECT_EQ(cell(keep_.leavers(), 0, "shape"), std::to_string(shape_of(StateKind::Waits)));
  EXPECT_EQ(keep_.notOverWords(key(shown_.shop.ivo)),
            "Not over yet, usually kept: payroll until Nov 25, 2029, time cards until Nov 25, "
            "2028.");
  shown_.shop.clock.advance_ms(std::int64_t{1097} * 86'400'000);  // November 26, 2029
  act(acts::SetRetention{job::RecordClass::TimeCards, 2});
  ASSERT_TRUE(
      until([this] { return cell(keep_.leavers(), 0, "state") == "May be forgotten now"; }));
  EXPECT_EQ(cell(keep_.leavers(), 0, "shape"), std::to_string(shape_of(StateKind::NotYet)));
  EXPECT_EQ(keep_.notOverWords(key(shown_.shop.ivo)), "");
}

TEST_F(KeepAndForget, TheShopsOwnYearsOfTheCarsBindALeaverToo) {
  act(acts::SetRetention{job::RecordClass::CarJobs, 7});
  leave(shown_.shop.ivo);
  EXPECT_EQ(cell(keep_.leavers(), 0, "state"), "Kept until Nov 25, 2033");
  EXPECT_NE(cell(keep_.leavers(), 0, "until").find("because of cars"), std::string::npos);
}

TEST_F(KeepAndForget, WhoNeverDidAnythingMayBeForgottenAndIsSaidToBe) {
  leave(shown_.shop.mara);
  EXPECT_EQ(cell(keep_.leavers(), 0, "state"), "May be forgotten now");
  EXPECT_EQ(cell(keep_.leavers(), 0, "mayForget"), "true");
  shown_.shop.engine->erase_name(shown_.shop.mara, rosa_,
                                 [](const Status& erased) { EXPECT_TRUE(erased); });
  shown_.shop.engine->drain();
  ASSERT_TRUE(until([this] { return cell(keep_.leavers(), 0, "state") == "Forgotten"; }));
  EXPECT_EQ(cell(keep_.leavers(), 0, "mayForget"), "false");
  EXPECT_EQ(cell(keep_.leavers(), 0, "shape"), std::to_string(shape_of(StateKind::Done)));
}

}  // namespace
}  // namespace jambline::screens
