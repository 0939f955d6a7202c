// The questions of months and years on a small shop: what a page says is what the folds say.
#include <QAbstractItemModelTester>
#include <QFile>
#include <QTemporaryDir>
#include <gtest/gtest.h>
#include <set>

#include "screens/question_view_model.h"
#include "tests/screens_record/shown.h"

namespace jambline::screens {
namespace {

using Ask = QuestionViewModel;

class Questions : public testing::Test {
 protected:
  Questions() { ask_.wake(); }
  // Asked and answered.
  bool answered() {
    return until([this] { return ask_.state() != Ask::Waiting && !shown_.session->calculating(); });
  }
  void choose(const char* question, int view = 0) {
    ask_.choose(QString::fromUtf8(question));
    ask_.showView(view);
    ASSERT_TRUE(answered());
    shown_.shop.engine->drain();
    answered();
  }
  // By the name of a role.
  std::string cell(QAbstractItemModel* model, int row, const char* role) {
    return text(*model, row, model->roleNames().key(role));
  }
  Shown shown_;
  QTemporaryDir folder_;
  Ask ask_{*shown_.session, folder_.path()};
};

TEST_F(Questions, AreRowsWithWordsOfTheirOwn) {
  const QAbstractItemModelTester tester(ask_.questions());
  ASSERT_EQ(ask_.questions()->rowCount(), 8);
  EXPECT_EQ(cell(ask_.questions(), 0, "key"), "hours");
  for (int row = 0; row < 8; ++row) {
    EXPECT_NE(cell(ask_.questions(), row, "title"), "");
    EXPECT_NE(cell(ask_.questions(), row, "says"), "");
  }
}

TEST_F(Questions, AnEmptyPageSaysWhatWouldFillIt) {
  for (const char* key : {"hours", "flow", "first-time", "dirt", "sprays", "late", "pictures"}) {
    choose(key);
    ask_.turn(-8);
    ASSERT_TRUE(until([this] { return ask_.state() == Ask::Nothing; })) << key;
    EXPECT_FALSE(ask_.emptyWords().isEmpty()) << key;
    EXPECT_EQ(ask_.rowCount(), 0) << key;
    ask_.toNow();
  }
}

TEST_F(Questions, APanelThatWasLookedAtCountsFromItsFirstLook) {
  choose("first-time");
  ASSERT_TRUE(until([this] { return ask_.state() == Ask::Shown; }));
  EXPECT_EQ(ask_.rowCount(), 1);
  EXPECT_EQ(cell(ask_.rows(), 0, "title"), "Nov 2026");
  EXPECT_EQ(cell(ask_.rows(), 0, "numbers"), "100 %");
  EXPECT_EQ(ask_.barCount(), 1);
  shown_.session->post(
      acts::GiveVerdict{shown_.shop.green, job::Panel::Hood, job::Verdict::Redo, false, {}});
  ASSERT_TRUE(until([this] { return ask_.page().rows.at(0).exact.value(3) == "1"; }))
      << "an act is heard of by itself";
  ask_.openRow(QStringLiteral("2026-11"));
  EXPECT_EQ(ask_.openTitle(), "Nov 2026");
  ASSERT_EQ(ask_.caseCount(), 1);
  EXPECT_EQ(cell(ask_.cases(), 0, "plate"), "K 41-206");
  EXPECT_EQ(cell(ask_.cases(), 0, "job"), shown_.shop.green.hex());
  EXPECT_EQ(cell(ask_.cases(), 0, "entry").size(), 64U) << "it opens to the look";
  ask_.closeRow();
  EXPECT_EQ(ask_.caseCount(), 0);
}

TEST_F(Questions, TimesAreMonthsQuartersAndYearsOfTheShop) {
  ask_.showSpan(Ask::Month);
  EXPECT_EQ(ask_.timeTitle(), "November 2026");
  EXPECT_TRUE(ask_.isNow());
  ask_.turn(-2);
  EXPECT_EQ(ask_.timeTitle(), "September 2026");
  EXPECT_FALSE(ask_.isNow());
  ask_.showSpan(Ask::Quarter);
  EXPECT_EQ(ask_.timeTitle(), "Jul to Sep 2026");
  ask_.turn(1);
  EXPECT_EQ(ask_.timeTitle(), "Oct to Dec 2026");
  ask_.showSpan(Ask::Year);
  ask_.turn(-1);
  EXPECT_EQ(ask_.timeTitle(), "2025");
  ask_.toNow();
  EXPECT_TRUE(ask_.isNow());
}

TEST_F(Questions, ByPainterIsForManagers) {
  ask_.choose(QStringLiteral("dirt"));
  EXPECT_EQ(ask_.views().size(), 2);
  shown_.shop.act(acts::AddPerson{"Rosa", job::Role::Manager}, {});
  ASSERT_TRUE(until([this] { return shown_.session->shop().people.size() == 3U; }));
  shown_.session->choosePerson(
      QString::fromStdString(shown_.session->shop().people.back().person.hex()));
  EXPECT_EQ(ask_.views().size(), 3);
  ask_.showView(2);
  EXPECT_EQ(ask_.view(), 2);
  shown_.session->choosePerson(QString::fromStdString(shown_.shop.ivo.hex()));
  EXPECT_EQ(ask_.view(), 0) << "nobody else is left on it";
}

TEST_F(Questions, TheTableIsWrittenWithExactNumbersAndNeverOverAFile) {
  choose("first-time");
  ASSERT_TRUE(until([this] { return ask_.state() == Ask::Shown; }));
  std::set<QString> files;
  for (int time = 0; time < 2; ++time) {
    ask_.writeTable(folder_.path());
    ASSERT_TRUE(until([this] { return ask_.written().startsWith("Written"); }));
    files.insert(ask_.written());
    ask_.showView(0);
  }
  EXPECT_EQ(files.size(), 2U);
  QFile file(folder_.filePath(QStringLiteral("Through the first time Oct to Dec 2026 Month.csv")));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QByteArray csv = file.readAll();
  EXPECT_TRUE(csv.startsWith("row,panels,through_first_time,clean_at_once,sent_back\r\n"))
      << csv.toStdString();
  EXPECT_TRUE(csv.contains("Nov 2026,3,3,2,0\r\n")) << csv.toStdString();
  ask_.writeTable(QStringLiteral("/proc/none"));
  ASSERT_TRUE(until([this] { return ask_.written().contains("not written"); }));
}

}  // namespace
}  // namespace jambline::screens
