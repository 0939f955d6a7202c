// Each rule reports the fault it is there for, and a good screen has none.
#include "rules.h"

#include <gtest/gtest.h>

#include "pseudo_words.h"
#include "stage.h"

namespace jambline::walk {
namespace {

int count(const std::vector<Finding>& found, const std::string& rule, const std::string& item) {
  int out = 0;
  for (const Finding& one : found)
    if (one.rule == rule && one.item.find(item) != std::string::npos) ++out;
  return out;
}

constexpr const char* good_rule =
    "PlainButton { focus: true; width: 120; height: 72; text: \"Pause\" }\n"
    "SlabButton { y: 100; width: 300; height: 76; text: \"Open a car\" }\n"
    "Words { y: 200; width: 300; text: \"Nothing is changed.\" }\n";

std::string all_of(const std::vector<Finding>& found) {
  std::string out;
  for (const Finding& one : found) out += one.rule + " " + one.item + " " + one.numbers + "\n";
  return out;
}

TEST(Rules, AGoodScreenHasNoFindings) {
  const auto stage = show(good_rule);
  EXPECT_EQ(all_of(laid_out(*stage->window)), "");
  EXPECT_EQ(all_of(tabbed(*stage->window)), "");
  EXPECT_EQ(all_of(contrasted(*stage->window, stage->window->grabWindow())), "");
}

TEST(Rules, ATargetThatIsTooSmallIsReported) {
  const auto stage = show(
      "PlainButton { width: 71; height: 72; text: \"a\" }\n"
      "SlabButton { y: 100; width: 300; height: 72; text: \"b\" }");
  const auto found = laid_out(*stage->window);
  EXPECT_EQ(count(found, "target", "PlainButton"), 1);
  EXPECT_EQ(count(found, "target", "SlabButton"), 1);
}

TEST(Rules, AnItemOutsideTheWindowIsReportedUnlessItScrolls) {
  const auto stage = show(
      "PlainButton { x: 350; width: 120; height: 72; text: \"out\" }\n"
      "Flickable { y: 100; width: 412; height: 100; contentHeight: 400; clip: true\n"
      "PlainButton { y: 300; width: 120; height: 72; text: \"scrolled\" } }\n"
      "Item { y: 220; width: 412; height: 80; clip: true\n"
      "PlainButton { y: 60; width: 120; height: 72; text: \"clipped\" } }");
  const auto found = laid_out(*stage->window);
  EXPECT_EQ(count(found, "inside", "\"out\""), 1);
  EXPECT_EQ(count(found, "inside", "\"clipped\""), 1);
  EXPECT_EQ(count(found, "inside", "\"scrolled\""), 0);
}

TEST(Rules, LettersThatAreCutAreReported) {
  const auto stage = show(
      "Words { width: 40; text: \"a long word\"; elide: Text.ElideRight; wrapMode: Text.NoWrap }\n"
      "Words { y: 40; width: 40; text: \"unbroken\"; wrapMode: Text.NoWrap }\n"
      "Words { y: 80; width: 40; height: 20; text: \"one two three four\" }\n"
      "PaperCard { y: 200; width: 60; height: 30\n"
      "Words { y: 40; width: 300; text: \"below\" } }");
  const auto found = laid_out(*stage->window);
  for (const char* cut : {"a long word", "unbroken", "one two", "below"})
    EXPECT_GE(count(found, "cut", cut), 1) << cut;
}

TEST(Rules, WordsOverWordsAndTargetsOverTargetsAreReported) {
  const auto stage = show(
      "Words { width: 200; text: \"under\" }\nWords { y: 6; width: 200; text: "
      "\"over\" }\n"
      "PlainButton { y: 100; width: 120; height: 72; text: \"a\" }\n"
      "PlainButton { y: 150; width: 120; height: 72; text: \"b\" }");
  EXPECT_EQ(count(laid_out(*stage->window), "overlap", "Words"), 1);
  EXPECT_EQ(count(laid_out(*stage->window), "overlap", "PlainButton"), 1);
}

TEST(Rules, AnItemWithoutNameOrRoleIsReported) {
  const auto stage = show(
      "Pressable { width: 80; height: 80 }\n"
      "Item { y: 100; width: 80; height: 80; activeFocusOnTab: true }");
  EXPECT_EQ(count(laid_out(*stage->window), "name", "Pressable"), 1);
  EXPECT_EQ(count(laid_out(*stage->window), "name", "QQuickItem"), 1);
}

TEST(Rules, AnItemThatTabDoesNotMeetIsReported) {
  const auto stage = show(
      "PlainButton { focus: true; width: 120; height: 72; text: \"met\" }\n"
      "PlainButton { y: 100; width: 120; height: 72; text: \"missed\"; activeFocusOnTab: false }");
  EXPECT_EQ(count(tabbed(*stage->window), "tab", "\"missed\""), 1);
  EXPECT_EQ(count(tabbed(*stage->window), "tab", "\"met\""), 0);
}

TEST(Rules, AFocusOutOfSightIsReported) {
  const auto stage = show(
      "Flickable { width: 412; height: 100; contentHeight: 400; clip: true\n"
      "PlainButton { focus: true; width: 120; height: 72; text: \"seen\"\n"
      "Component.onCompleted: forceActiveFocus() }\n"
      "PlainButton { y: 300; width: 120; height: 72; text: \"unseen\" } }");
  EXPECT_EQ(count(tabbed(*stage->window), "tab", "\"unseen\""), 1);
}

TEST(Rules, ASecondMainActIsReported) {
  const auto stage = show(
      "SlabButton { width: 300; height: 76; text: \"a\" }\n"
      "SlabButton { y: 100; width: 300; height: 76; text: \"b\" }");
  EXPECT_EQ(count(laid_out(*stage->window), "main act", "SlabButton"), 1);
}

TEST(Rules, PaleWordsAreReported) {
  const auto stage =
      show("Words { width: 300; text: \"pale words on paper\"; color: Theme.chalk }");
  const auto found = contrasted(*stage->window, stage->window->grabWindow());
  EXPECT_EQ(count(found, "contrast", "pale words"), 1);
}

TEST(Rules, AnOpenSheetIsTheScope) {
  const auto stage = show(
      "PlainButton { width: 20; height: 20; text: \"below\" }\n"
      "Sheet { anchors.fill: parent; opened: true; title: \"Sheet\"\n"
      "PlainButton { width: 30; height: 30; text: \"small\" } }");
  EXPECT_EQ(count(laid_out(*stage->window), "target", "\"below\""), 0);
  EXPECT_EQ(count(laid_out(*stage->window), "target", "\"small\""), 1);
}

TEST(PseudoWords, AreLongerByFourTenthsAndKeepThePlaceholders) {
  const QString out = lengthened(QStringLiteral("%1 marks open, %n of %L2 left on the fender"));
  for (const char* kept : {"%1", "%n", "%L2"}) EXPECT_TRUE(out.contains(QLatin1String(kept)));
  const double letters = static_cast<double>(lengthened(QStringLiteral("marks open on it")).size());
  EXPECT_NEAR(letters / 16.0, 1.35, 0.08);
  EXPECT_NE(lengthened(QStringLiteral("Close")), QStringLiteral("Close"));
}

}  // namespace
}  // namespace jambline::walk
