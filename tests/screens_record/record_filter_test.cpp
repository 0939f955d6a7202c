#include <gtest/gtest.h>

#include "screens/record_view_model.h"
#include "tests/screens_record/shown.h"

namespace jambline::screens {
namespace {

using Filter = RecordFilterViewModel;

class RecordFilter : public testing::Test {
 protected:
  RecordFilter() : view_(std::make_unique<RecordViewModel>(*shown_.session)) {
    view_->wake();
    until([this] { return view_->loaded(); });
  }
  Filter& filter() { return *view_->filter(); }
  std::string plates() {
    until([this] { return !view_->searching(); });
    std::string out;
    for (int row = 0; row < view_->rowCount(); ++row)
      out += (row ? ", " : "") + text(*view_, row, RecordViewModel::PlateRole);
    return out;
  }
  std::string sentence() {
    QStringList out;
    for (const auto& part : filter().sentence())
      out << part.toMap().value(QStringLiteral("text")).toString();
    return out.join(QStringLiteral(" | ")).toStdString();
  }
  int choice(const char* key, const char* words) {
    const QVariantList rows = filter().choices(QString::fromLatin1(key));
    for (int row = 0; row < rows.size(); ++row)
      if (rows[row].toMap().value(QStringLiteral("text")) == QString::fromUtf8(words)) return row;
    ADD_FAILURE() << words << " is no choice of " << key;
    return -1;
  }
  void choose(const char* key, const char* words) {
    filter().choose(QString::fromLatin1(key), choice(key, words));
  }
  std::string kept(int row, int role) {
    return filter()
        .kept()
        ->data(filter().kept()->index(row, 0), Qt::UserRole + role)
        .toString()
        .toStdString();
  }

  Shown shown_;
  std::unique_ptr<RecordViewModel> view_;
};

TEST_F(RecordFilter, TheSentenceChoosesCarsAndPartsAreAddedAndLeftOut) {
  EXPECT_EQ(sentence(), "All cars | opened at any time | and …");
  EXPECT_FALSE(filter().asks());
  choose("where", "Delivered cars");
  EXPECT_EQ(sentence(), "Delivered cars | opened at any time | and …");
  EXPECT_EQ(plates(), "");
  EXPECT_EQ(view_->emptyWords().toStdString(),
            "No car fits these choices. Leave one out, or choose another.");
  choose("where", "Cars in the shop");
  EXPECT_EQ(plates(), "K 41-206, S 88-014");
  choose("defect", "Nib");
  EXPECT_EQ(sentence(), "Cars in the shop | opened at any time | with a nib | and …");
  EXPECT_EQ(plates(), "K 41-206");
  EXPECT_EQ(view_->countWords().toStdString(), "1 of 2 cars");
  choose("defect", "Run or sag");
  EXPECT_EQ(sentence(), "Cars in the shop | opened at any time | with a nib or run or sag | and …");
  EXPECT_EQ(plates(), "K 41-206");
  choose("defect", "Nib");
  EXPECT_EQ(plates(), "");
  filter().leaveOut(QStringLiteral("defect"));
  EXPECT_EQ(plates(), "K 41-206, S 88-014");
  for (const auto& part : filter().choices(QStringLiteral("add")))
    EXPECT_FALSE(part.toMap().value(QStringLiteral("text")).toString().isEmpty());
  filter().clear();
  EXPECT_EQ(sentence(), "All cars | opened at any time | and …");
}

TEST_F(RecordFilter, ColorAndDaysAndPeopleOfTheShop) {
  filter().sayColor(QStringLiteral("  deep   gre "));
  EXPECT_EQ(sentence(), "All cars | opened at any time | of a color like \"deep gre\" | and …");
  EXPECT_EQ(plates(), "K 41-206");
  filter().sayColor(QStringLiteral("\"* OR ("));
  EXPECT_NO_THROW(plates());
  filter().sayColor({});
  choose("person", "Mara");
  EXPECT_EQ(plates(), "K 41-206");
  filter().clear();
  choose("opened", "Opened today");
  EXPECT_EQ(plates(), "K 41-206, S 88-014");
  choose("opened", "Opened last month");
  EXPECT_EQ(plates(), "");
  choose("opened", "Opened this year");
  EXPECT_EQ(sentence(), "All cars | opened this year | and …");
  EXPECT_EQ(plates(), "K 41-206, S 88-014");
}

TEST_F(RecordFilter, WordsAndPartsHoldTogether) {
  view_->set_search(QStringLiteral("sedan"));
  choose("defect", "Nib");
  EXPECT_EQ(plates(), "K 41-206");
  view_->set_search(QStringLiteral("red"));
  EXPECT_EQ(plates(), "");
  EXPECT_EQ(view_->emptyWords().toStdString(), "No car that fits these choices has \"red\".");
  view_->set_search(QString(10'000, QChar('x')));
  EXPECT_EQ(plates(), "");
  EXPECT_LT(view_->emptyWords().size(), 200);
}

TEST_F(RecordFilter, AQuestionIsKeptUnderANameAndThereAfterARestart) {
  EXPECT_FALSE(filter().mayKeep());
  view_->set_search(QStringLiteral("green"));
  choose("opened", "Opened this year");
  ASSERT_TRUE(filter().mayKeep());
  EXPECT_EQ(filter().suggestedName().toStdString(), "\"green\", opened this year");
  EXPECT_FALSE(filter().keep(QStringLiteral("  ")));
  EXPECT_EQ(filter().wrongName().toStdString(), "A kept question needs a name.");
  ASSERT_TRUE(filter().keep(QStringLiteral(" Green  ones ")));
  EXPECT_EQ(filter().chosen().toStdString(), "Green ones");
  EXPECT_FALSE(filter().mayKeep());
  view_->set_search({});
  EXPECT_EQ(filter().chosen(), QString());
  EXPECT_FALSE(filter().keep(QStringLiteral("green ONES"))) << "each name once";
  ASSERT_TRUE(filter().keep(QStringLiteral("This year")));

  shown_.session->engine().drain();
  view_ = std::make_unique<RecordViewModel>(*shown_.session);
  EXPECT_EQ(filter().keptCount(), 2);
  view_->wake();
  until([this] { return view_->loaded(); });
  filter().open(QStringLiteral("Green ones"));
  EXPECT_EQ(view_->search().toStdString(), "green");
  EXPECT_EQ(plates(), "K 41-206");
  EXPECT_EQ(kept(0, 0), "Green ones");
  EXPECT_EQ(kept(0, 2), "true");
  EXPECT_EQ(kept(1, 2), "false");
  filter().open(QStringLiteral("Green ones"));
  EXPECT_EQ(view_->search(), QString()) << "pressed again it lets go";
  EXPECT_EQ(plates(), "K 41-206, S 88-014");
}

TEST_F(RecordFilter, AKeptQuestionIsRenamedRemovedAndPutBack) {
  choose("where", "Cars in the shop");
  filter().keep(QStringLiteral("A"));
  choose("where", "Delivered cars");
  filter().keep(QStringLiteral("B"));
  filter().open(QStringLiteral("A"));
  EXPECT_FALSE(filter().rename(QStringLiteral("b")));
  ASSERT_TRUE(filter().rename(QStringLiteral("In the shop")));
  EXPECT_EQ(kept(0, 0), "In the shop");
  filter().remove();
  EXPECT_EQ(filter().keptCount(), 1);
  EXPECT_EQ(filter().removed().toStdString(), "In the shop");
  EXPECT_EQ(plates(), "K 41-206, S 88-014") << "it stays asked";
  filter().putBack();
  EXPECT_EQ(kept(0, 0), "In the shop") << "in its old place";
  EXPECT_EQ(filter().removed(), QString());
}

}  // namespace
}  // namespace jambline::screens
