#include "screens/join_code_item.h"

#include <QPainter>
#include <algorithm>

#include "picture/qr_code.h"

namespace jambline::screens {

JoinCodeItem::JoinCodeItem(QQuickItem* parent) : QQuickPaintedItem(parent) {}

void JoinCodeItem::set_text(const QString& text) {
  if (text == text_) return;
  text_ = text;
  const auto code = picture::qr_code(text.toStdString());
  code_ = code ? *code : QImage();
  update();
  emit textChanged();
}

void JoinCodeItem::paint(QPainter* painter) {
  if (code_.isNull()) return;
  const double room = std::min(width(), height());
  const double module = std::max(1.0, static_cast<double>(static_cast<int>(room / code_.width())));
  const double side = module * code_.width();
  painter->fillRect(QRectF(0, 0, width(), height()), Qt::white);
  painter->drawImage(QRectF((width() - side) / 2, (height() - side) / 2, side, side), code_);
}

}  // namespace jambline::screens
