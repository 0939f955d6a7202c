#include "screens/look_item.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

namespace jambline::screens {

namespace {
using job::PictureNoteShape;

constexpr int preview_px = 1280;
constexpr int detail_sides_px[] = {1600, 2400, 3600, 5000, 7000, 10000, 14000};
constexpr double grid = 32;  // parts are cut on this, so that a small move asks for nothing
constexpr double line_dp = 3;
constexpr double halo_dp = 6;
constexpr double head_dp = 16;
constexpr double least_note_dp = 12;

QRectF cut_of(QRectF part) {
  const double more_x = part.width() / 4;
  const double more_y = part.height() / 4;
  part = part.adjusted(-more_x, -more_y, more_x, more_y) & QRectF(0, 0, 1, 1);
  const QPointF low(std::floor(part.left() * grid) / grid, std::floor(part.top() * grid) / grid);
  const QPointF high(std::ceil(part.right() * grid) / grid, std::ceil(part.bottom() * grid) / grid);
  return {low, high};
}
}  // namespace

LookItem::LookItem(QQuickItem* parent) : PictureItem(parent) {
  setAntialiasing(true);
}

LookItem::~LookItem() {
  if (store()) store()->drop(&detail_asker_);
}

void LookItem::set_look(LookViewModel* look) {
  if (look == look_) return;
  if (look_) disconnect(look_, nullptr, this, nullptr);
  look_ = look;
  const auto follow = [this] {
    set_store(look_->store());
    set_file(look_->file());
    if (look_->picture() != shown_) {
      shown_ = look_->picture();
      note_.reset();
      fit();
    }
    update();
  };
  if (look_) {
    connect(look_, &LookViewModel::changed, this, follow);
    connect(look_, &LookViewModel::noteEnded, this, &LookItem::dropNote);
    follow();
  }
  emit lookSet();
}

bool LookItem::sharp() const {
  return zoom_ <= 1 || !wanted_ || !detail_.isNull();
}

// All of it in the item, times the zoom, so that no edge comes further in than it has to.
QRectF LookItem::place() const {
  const QSizeF room(width(), height());
  QSizeF size = look_ && look_->widthPx() > 0
                    ? QSizeF(look_->widthPx(), look_->heightPx())
                    : (image().isNull() ? QSizeF(4, 3) : QSizeF(image().size()));
  size = size.scaled(room, Qt::KeepAspectRatio) * zoom_;
  const auto from = [](double room_dp, double size_dp, double middle) {
    if (size_dp <= room_dp) return (room_dp - size_dp) / 2;
    return std::clamp(room_dp / 2 - middle * size_dp, room_dp - size_dp, 0.0);
  };
  return {QPointF(from(room.width(), size.width(), middle_.x()),
                  from(room.height(), size.height(), middle_.y())),
          size};
}

void LookItem::view(double zoom, QPointF middle) {
  zoom_ = std::clamp(zoom, 1.0, most_zoom);
  middle_ = middle;
  const QRectF now = place();  // the middle that it came to
  if (!now.isEmpty())
    middle_ = {(width() / 2 - now.x()) / now.width(), (height() / 2 - now.y()) / now.height()};
  ask_for_detail();
  update();
  emit viewChanged();
}

void LookItem::fit() {
  view(1, {0.5, 0.5});
}

void LookItem::zoomBy(double factor, double x, double y) {
  const QRectF now = place();
  if (now.isEmpty() || !(factor > 0)) return;
  const QPointF held((x - now.x()) / now.width(), (y - now.y()) / now.height());
  const double zoom = std::clamp(zoom_ * factor, 1.0, most_zoom);
  const QSizeF size = now.size() * (zoom / zoom_);
  view(zoom, {held.x() + (width() / 2 - x) / size.width(),
              held.y() + (height() / 2 - y) / size.height()});
}

void LookItem::panBy(double dx, double dy) {
  const QRectF now = place();
  if (!now.isEmpty()) view(zoom_, middle_ - QPointF(dx / now.width(), dy / now.height()));
}

QPointF LookItem::toPicture(double x, double y) const {
  const QRectF now = place();
  if (now.isEmpty()) return {};
  return {std::clamp((x - now.x()) / now.width(), 0.0, 1.0),
          std::clamp((y - now.y()) / now.height(), 0.0, 1.0)};
}

QPointF LookItem::toItem(double x, double y) const {
  const QRectF now = place();
  return {now.x() + x * now.width(), now.y() + y * now.height()};
}

void LookItem::ask_for_detail() {
  const QRectF now = place();
  const QRectF seen = now & QRectF(0, 0, width(), height());
  const int most_px = look_ ? std::max(look_->widthPx(), look_->heightPx()) : 0;
  const double needed_px = std::max(now.width(), now.height()) * px_per_dp();
  if (!store() || !hash() || seen.isEmpty() || zoom_ <= 1 || needed_px <= preview_px ||
      most_px <= preview_px) {
    if (store()) store()->drop(&detail_asker_);
    wanted_.reset();
    detail_ = {};
    return;
  }
  int side_px = most_px;
  for (const int side : detail_sides_px)
    if (side >= needed_px) {
      side_px = std::min(side, most_px);
      break;
    }
  const QRectF part((seen.x() - now.x()) / now.width(), (seen.y() - now.y()) / now.height(),
                    seen.width() / now.width(), seen.height() / now.height());
  if (wanted_ && wanted_->file == hash() && wanted_->side_px == side_px &&
      wanted_->part.contains(part)) {
    came_in();
    return;
  }
  wanted_ = PictureAsk{hash(), side_px, cut_of(part), false};
  came_in();
}

// What came before stays until the better one is there.
void LookItem::came_in() {
  if (!wanted_ || !store()) return;
  auto got = store()->get(*wanted_, &detail_asker_);
  if (got.state != PictureStore::State::Here) return;
  const bool other = detail_.cacheKey() != got.image.cacheKey();
  detail_ = std::move(got.image);
  part_ = wanted_->part;
  if (!other) return;
  update();
  emit viewChanged();
}

void LookItem::geometryChange(const QRectF& now, const QRectF& before) {
  PictureItem::geometryChange(now, before);
  if (now.size() != before.size()) view(zoom_, middle_);
}

void LookItem::startNote(int shape, double x, double y) {
  if (!look_ || !look_->writable() || shape < 0 ||
      shape >= static_cast<int>(PictureNoteShape::Text))
    return;
  const QPointF at = toPicture(x, y);
  note_ =
      job::PictureNote{static_cast<PictureNoteShape>(shape), at.x(), at.y(), at.x(), at.y(), {}};
  update();
}

// A circle grows from its middle; an arrow is drawn from its tail to its tip.
void LookItem::moveNote(double x, double y) {
  if (!note_) return;
  const QPointF at = toPicture(x, y);
  if (note_->shape == PictureNoteShape::Arrow) {
    note_->x = at.x();
    note_->y = at.y();
  } else {
    note_->to_x = at.x();
    note_->to_y = at.y();
  }
  update();
}

bool LookItem::keepNote() {
  if (!note_ || !look_) return false;
  const job::PictureNote note = *note_;
  const QPointF apart = toItem(note.x, note.y) - toItem(note.to_x, note.to_y);
  if (std::hypot(apart.x(), apart.y()) < least_note_dp) {
    dropNote();
    return false;
  }
  look_->draw(static_cast<int>(note.shape), note.x, note.y, note.to_x, note.to_y);
  return true;
}

void LookItem::dropNote() {
  note_.reset();
  update();
}

void LookItem::paint_text(QPainter& painter, const job::PictureNote& note) const {
  QFont font(family_);
  font.setPixelSize(text_px_);
  font.setBold(true);
  painter.setFont(font);
  const QString words = QString::fromStdString(note.text);
  const QPointF at = toItem(note.x, note.y);
  const double most = std::max(120.0, width() / 2);
  const QRectF box =
      QFontMetricsF(font).boundingRect(QRectF(0, 0, most, height()), Qt::TextWordWrap, words);
  QRectF label(at, box.size() + QSizeF(12, 8));
  label.moveLeft(std::clamp(label.left(), 0.0, std::max(0.0, width() - label.width())));
  label.moveTop(std::clamp(label.top(), 0.0, std::max(0.0, height() - label.height())));
  painter.setPen(QPen(line_, 1.5));
  painter.setBrush(halo_);
  painter.drawRoundedRect(label, 4, 4);
  painter.setPen(ink_);
  painter.drawText(label.adjusted(6, 4, -6, -4), Qt::TextWordWrap, words);
}

void LookItem::paint_note(QPainter& painter, const job::PictureNote& note) const {
  if (note.shape == PictureNoteShape::Text) return paint_text(painter, note);
  const QPointF at = toItem(note.x, note.y);
  const QPointF to = toItem(note.to_x, note.to_y);
  const QPointF way = at - to;
  const double length = std::hypot(way.x(), way.y());
  if (length < 1) return;
  QPainterPath path;
  if (note.shape == PictureNoteShape::Circle) {
    path.addEllipse(at, length, length);
  } else {
    const QPointF along = way / length;
    const QPointF across(-along.y(), along.x());
    const double head = std::min(head_dp, length / 2);
    path.moveTo(to);
    path.lineTo(at);
    path.moveTo(at - along * head + across * head * 0.6);
    path.lineTo(at);
    path.lineTo(at - along * head - across * head * 0.6);
  }
  painter.setBrush(Qt::NoBrush);
  for (const auto& [color, width_dp] : {std::pair(halo_, halo_dp), std::pair(line_, line_dp)}) {
    painter.setPen(QPen(color, width_dp, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
  }
}

void LookItem::paint_over(QPainter* painter) {
  const QRectF now = place();
  if (zoom_ > 1 && !detail_.isNull() && here()) {
    const QRectF where(now.x() + part_.x() * now.width(), now.y() + part_.y() * now.height(),
                       part_.width() * now.width(), part_.height() * now.height());
    painter->setClipRect(QRectF(0, 0, width(), height()));
    painter->drawImage(where, detail_);
  }
  if (!look_) return;
  painter->setRenderHint(QPainter::Antialiasing);
  if (const auto* picture = look_->shown(); picture && notes_shown_)
    for (const auto& note : picture->notes) paint_note(*painter, note.drawn);
  if (note_) paint_note(*painter, *note_);
}

}  // namespace jambline::screens
