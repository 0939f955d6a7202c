#include "look_paper.h"

#include <algorithm>

void LookPaper::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  const double side = std::min(width(), height());
  const bool plain = look_ == static_cast<int>(ChartLook::Value::Plain);
  jambline::theme::draw_look(*painter, {width() / 2, height() / 2}, look_,
                             plain ? side / 2 : side - 2, {plain_, more_, less_, ground_});
}
