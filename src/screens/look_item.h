// screens/look_item.h: one picture large: zoomed and moved, with what was drawn on it, and the note
// that a finger is drawing.
//
// Shape:   zoom 1 shows all of it. Points of the item are dp, points of the picture parts of its
//          width and height. Zoomed in, the part that is looked at is asked for anew in the
//          resolution of the screen, never more than the file has.
// Threads: GUI.
#pragma once

#include "screens/look_view_model.h"
#include "screens/picture_item.h"

namespace jambline::screens {

class LookItem : public jambline::screens::PictureItem {  // in full, for the linter of QML
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::screens::LookViewModel* look READ look WRITE set_look NOTIFY lookSet)
  Q_PROPERTY(double zoom READ zoom NOTIFY viewChanged)
  Q_PROPERTY(bool sharp READ sharp NOTIFY viewChanged)  // drawn in the resolution of the screen
  Q_PROPERTY(bool notesShown MEMBER notes_shown_ NOTIFY lookChanged)
  Q_PROPERTY(QColor line MEMBER line_ NOTIFY lookChanged)
  Q_PROPERTY(QColor halo MEMBER halo_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
  Q_PROPERTY(QString family MEMBER family_ NOTIFY lookChanged)
  Q_PROPERTY(int textPx MEMBER text_px_ NOTIFY lookChanged)

 public:
  static constexpr double most_zoom = 16;

  explicit LookItem(QQuickItem* parent = nullptr);
  ~LookItem() override;

  LookViewModel* look() const { return look_; }
  void set_look(LookViewModel* look);
  double zoom() const { return zoom_; }
  bool sharp() const;

  Q_INVOKABLE void fit();
  Q_INVOKABLE void zoomBy(double factor, double x, double y);  // about a point of the item
  Q_INVOKABLE void panBy(double dx, double dy);
  Q_INVOKABLE QPointF toPicture(double x, double y) const;  // held within the picture
  Q_INVOKABLE QPointF toItem(double x, double y) const;

  // A note in the making: from where the finger came down to where it is.
  Q_INVOKABLE void startNote(int shape, double x, double y);
  Q_INVOKABLE void moveNote(double x, double y);
  Q_INVOKABLE bool keepNote();  // false: too short to be meant
  Q_INVOKABLE void dropNote();

 signals:
  void lookSet();
  void viewChanged();

 protected:
  QRectF place() const override;
  void paint_over(QPainter* painter) override;
  void came_in() override;
  void geometryChange(const QRectF& now, const QRectF& before) override;

 private:
  void view(double zoom, QPointF middle);
  void ask_for_detail();
  void paint_note(QPainter& painter, const job::PictureNote& note) const;
  void paint_text(QPainter& painter, const job::PictureNote& note) const;

  QPointer<LookViewModel> look_;
  QString shown_;
  double zoom_ = 1;
  QPointF middle_{0.5, 0.5};
  std::optional<PictureAsk> wanted_;
  QRectF part_;  // of detail_
  QImage detail_;
  char detail_asker_ = 0;
  bool notes_shown_ = true;
  QColor line_;
  QColor halo_;
  QColor ink_;
  QString family_;
  int text_px_ = 16;
  std::optional<job::PictureNote> note_;
};

}  // namespace jambline::screens
