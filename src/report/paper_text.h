// report/paper_text.h: words broken into lines of a width, and the looks that a report has.
//
// Shape:   lengths in dots of report/pdf_file.h. Threads: one owner; needs a QGuiApplication.
#pragma once

#include <QColor>
#include <QFont>
#include <QPainter>
#include <QString>
#include <QTextLayout>
#include <memory>

namespace jambline::report {

enum class Look : std::uint8_t {
  Body,
  Strong,
  Quiet,
  Small,
  SmallStrong,
  Heading,
  Title,
  Subtitle
};

class Paper {
 public:
  Paper(QString family, double width, const QPaintDevice& device)
      : family_(std::move(family)), width_(width), device_(&device) {}
  double width() const { return width_; }
  QFont font(Look look) const;
  static QColor ink(Look look);
  const QPaintDevice* device() const { return device_; }

 private:
  QString family_;
  double width_;
  const QPaintDevice* device_;
};

// Lines of one paragraph; breaks in the words are kept.
class SetText {
 public:
  SetText(const Paper& paper, const QString& words, Look look, double width, bool right = false);
  int lines() const { return layout_->lineCount(); }
  double height() const { return height_of(0, lines()); }
  double height_of(int from, int to) const;
  void draw(QPainter& painter, double left, double top) const {
    draw(painter, left, top, 0, lines());
  }
  void draw(QPainter& painter, double left, double top, int from, int to) const;

 private:
  std::shared_ptr<QTextLayout> layout_;
  QColor ink_;
};

}  // namespace jambline::report
