// screens/join_code_item.h: a text drawn as a square code (picture/qr_code.h), as large as whole
// pixels a module allow, black on white in every light: a camera reads it. GUI thread.
#pragma once

#include <QImage>
#include <QQuickPaintedItem>
#include <qqmlregistration.h>

namespace jambline::screens {

class JoinCodeItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QString text READ text WRITE set_text NOTIFY textChanged)
  Q_PROPERTY(bool drawn READ drawn NOTIFY textChanged)  // false: the text has no code

 public:
  explicit JoinCodeItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;
  QString text() const { return text_; }
  void set_text(const QString& text);
  bool drawn() const { return !code_.isNull(); }

 signals:
  void textChanged();

 private:
  QString text_;
  QImage code_;
};

}  // namespace jambline::screens
