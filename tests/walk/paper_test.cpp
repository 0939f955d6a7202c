// What the theme paints is painted when it is seen: every card and button has a dashed outline that
// is mostly hidden, and the images of the hidden ones were a third of a screen's time.
#include <QQuickItem>
#include <gtest/gtest.h>

#include "stage.h"

namespace jambline::walk {
namespace {

constexpr const char* in_hidden =
    "Item { objectName: \"cover\"; visible: false; width: 200; height: 100\n"
    "DashFrame { objectName: \"frame\"; width: 200; height: 100; color: \"#0000ff\"; "
    "thickness: 20; dash: 300; gap: 1 } }";

class PaperTest : public testing::Test {
 protected:
  QQuickItem& named(const char* name) {
    auto* out = stage_->window->findChild<QQuickItem*>(QString::fromLatin1(name));
    if (!out) throw std::runtime_error(name);
    return *out;
  }
  bool has_image() { return named("frame").flags().testFlag(QQuickItem::ItemHasContents); }
  QColor seen() {
    settle(*stage_->window);
    return stage_->window->grabWindow().pixelColor(100, 10);
  }

  std::unique_ptr<Stage> stage_ = show(in_hidden);
};

TEST_F(PaperTest, HasNoImageBeforeItIsSeen) {
  EXPECT_FALSE(has_image());
  named("frame").setWidth(210);
  settle(*stage_->window);
  EXPECT_FALSE(has_image());
  named("cover").setVisible(true);
  EXPECT_EQ(seen(), QColor(Qt::blue));
  EXPECT_TRUE(has_image());
}

TEST_F(PaperTest, ShowsWhatWasChangedWhileItWasHidden) {
  named("cover").setVisible(true);
  EXPECT_EQ(seen(), QColor(Qt::blue));
  named("cover").setVisible(false);
  EXPECT_NE(seen(), QColor(Qt::blue));
  named("frame").setProperty("color", QColor(Qt::red));
  named("cover").setVisible(true);
  EXPECT_EQ(seen(), QColor(Qt::red));
}

TEST_F(PaperTest, WithoutASizeHasNoImage) {
  named("cover").setVisible(true);
  named("frame").setHeight(0);
  settle(*stage_->window);
  EXPECT_FALSE(has_image());
  named("frame").setHeight(100);
  EXPECT_EQ(seen(), QColor(Qt::blue));
}

}  // namespace
}  // namespace jambline::walk
