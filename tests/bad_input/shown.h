// tests/bad_input/shown.h: the texts that stand in a window, read back from its items; pictures.
#pragma once

#include <QDir>
#include <QImage>
#include <QQuickItem>
#include <QQuickWindow>
#include <QtTest/QTest>
#include <gtest/gtest.h>

namespace jambline::bad_input {

struct ShownText {
  QString text;
  QRectF place;
  bool cut = false;
};

inline void gather(const QQuickItem* item, std::vector<ShownText>& out) {
  if (!item->isVisible() || item->opacity() == 0) return;
  if (item->inherits("QQuickText") && !item->property("text").toString().isEmpty())
    out.push_back({item->property("text").toString(),
                   item->mapRectToScene(QRectF(0, 0, item->width(), item->height())),
                   item->property("truncated").toBool()});
  for (const QQuickItem* child : item->childItems()) gather(child, out);
}

// Waits until the words stand in the window, whole and inside it.
inline void expect_shown(const QQuickWindow& window, const QString& words) {
  std::vector<ShownText> all;
  const auto there = [&]() -> const ShownText* {
    all.clear();
    gather(window.contentItem(), all);
    const QRectF inside(0, 0, window.width(), window.height());
    for (const auto& one : all)
      if (one.text.contains(words) && !one.cut && inside.contains(one.place)) return &one;
    return nullptr;
  };
  EXPECT_TRUE(QTest::qWaitFor([&] { return there() != nullptr; }, 10'000))
      << words.toStdString() << " in " << window.width() << " x " << window.height();
}

inline void draw(QQuickWindow& window, const char* name) {
  QTest::qWait(300);
  const QDir folder(QStringLiteral(JAMBLINE_PICTURES));
  ASSERT_TRUE(QDir().mkpath(folder.path()));
  EXPECT_TRUE(window.grabWindow().save(folder.filePath(QLatin1String(name) + ".png")));
}

}  // namespace jambline::bad_input
