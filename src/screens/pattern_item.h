// screens/pattern_item.h: the car as an unfolded paper pattern, or one panel large, drawn to scale.
//
// panel: "" the whole car, else the entry's word of one panel, drawn upright. All colors come from
// the outside. past: planned panels and what was looked at are those of `then` (the entry's word of
// each panel: looked at), not of now. chosen: the panel with the outline of "here". small: a few
// thick lines, no hatch. View:  originX, originY (dp of the map's 0, 0) and pxPerMm: x = originX +
// xMm * pxPerMm,
//        y = originY - yMm * pxPerMm, exact at any zoom. viewChanged follows every move.
// Paint: once into an image, again only when the car's looks, a color or the view changes; marks
//        and words lie on top as items of their own.
#pragma once

#include <QColor>
#include <QPainter>
#include <QPointer>
#include <QQuickPaintedItem>
#include <QVariantMap>
#include <QtQml/qqmlregistration.h>

#include "screens/inspect_view_model.h"
#include "screens/map_geometry.h"

namespace jambline::screens {

class PatternItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::screens::InspectViewModel* inspect READ inspect WRITE setInspect NOTIFY
                 inspectChanged REQUIRED)
  Q_PROPERTY(QString panel READ panel WRITE setPanel NOTIFY panelChanged)
  Q_PROPERTY(QString chosen MEMBER chosen_ NOTIFY lookChanged)
  Q_PROPERTY(bool small MEMBER small_ NOTIFY lookChanged)
  Q_PROPERTY(bool past READ past WRITE setPast NOTIFY pastChanged)
  Q_PROPERTY(QVariantMap then READ then WRITE setThen NOTIFY pastChanged)
  Q_PROPERTY(double inset READ inset WRITE setInset NOTIFY insetChanged)
  Q_PROPERTY(QColor tint MEMBER tint_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ground MEMBER ground_ NOTIFY lookChanged)
  Q_PROPERTY(QColor outline MEMBER outline_ NOTIFY lookChanged)
  Q_PROPERTY(QColor crease MEMBER crease_ NOTIFY lookChanged)
  Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY lookChanged)
  Q_PROPERTY(QColor quiet MEMBER quiet_ NOTIFY lookChanged)
  Q_PROPERTY(QColor masked MEMBER masked_ NOTIFY lookChanged)
  Q_PROPERTY(QColor here MEMBER here_ NOTIFY lookChanged)
  Q_PROPERTY(double pxPerMm READ pxPerMm NOTIFY viewChanged)
  Q_PROPERTY(double zoom READ zoom NOTIFY viewChanged)
  Q_PROPERTY(double originX READ originX NOTIFY viewChanged)
  Q_PROPERTY(double originY READ originY NOTIFY viewChanged)
  Q_PROPERTY(QRectF contentPx READ contentPx NOTIFY viewChanged)   // what is drawn, in dp
  Q_PROPERTY(double aspect READ aspect NOTIFY contentChanged)      // width by height; 1 when empty
  Q_PROPERTY(QPointF glassSpot READ glassSpot NOTIFY viewChanged)  // dp; (0, 0): no glass
 public:
  explicit PatternItem(QQuickItem* parent = nullptr);

  void paint(QPainter* painter) override;

  InspectViewModel* inspect() const { return inspect_; }
  void setInspect(InspectViewModel* inspect);
  QString panel() const { return panel_; }
  void setPanel(const QString& panel);
  bool past() const { return past_; }
  void setPast(bool past);
  QVariantMap then() const { return then_; }
  void setThen(const QVariantMap& then);
  double inset() const { return inset_px_; }
  void setInset(double inset_px);
  double pxPerMm() const { return frame_.px_per_mm(); }
  double zoom() const { return frame_.zoom(); }
  double originX() const { return frame_.to_px({0, 0}).x_px; }
  double originY() const { return frame_.to_px({0, 0}).y_px; }
  QRectF contentPx() const;
  double aspect() const;
  QPointF glassSpot() const;

  Q_INVOKABLE QPointF toMm(double xPx, double yPx) const;
  Q_INVOKABLE void zoomBy(double factor, double xPx, double yPx);
  Q_INVOKABLE void moveBy(double dxPx, double dyPx);
  Q_INVOKABLE void fit();
  Q_INVOKABLE void showPart(double xMm, double yMm, double widthMm, double heightMm);
  // The planned panel under a touch; "" none. Where two compete it zooms to both and says "".
  Q_INVOKABLE QString pick(double xPx, double yPx);

 signals:
  void inspectChanged();
  void panelChanged();
  void pastChanged();
  void insetChanged();
  void lookChanged();
  void viewChanged();
  void contentChanged();

 protected:
  void geometryChange(const QRectF& now, const QRectF& before) override;

 private:
  // What a panel is drawn by, besides its form.
  struct Look {
    job::Panel panel{};
    bool planned = false;
    bool seen = false;
    friend bool operator==(const Look&, const Look&) = default;
  };
  struct Drawn {
    job::Panel panel{};
    bool planned = false;
    bool seen = true;
    trade::Polygon outline;  // map mm
    std::vector<trade::Polyline> masked;
    std::vector<trade::Polyline> body_lines;
    std::vector<trade::Polygon> glass;
  };

  void gather();
  void draw_anew();
  void frame_anew();
  void set_frame(const MapFrame& frame);
  void paint_panel(QPainter* painter, const Drawn& drawn) const;
  QPolygonF on_screen(const std::vector<trade::Point_mm>& points) const;

  QPointer<InspectViewModel> inspect_;
  QString panel_;
  QString chosen_;
  bool past_ = false;
  QVariantMap then_;
  bool small_ = false;
  double inset_px_ = 8;
  QColor tint_, ground_, outline_, crease_, edge_, quiet_, masked_, here_;
  MapFrame frame_;
  const job::CarPattern* pattern_ = nullptr;  // null: no car
  bool alone_ = false;                        // one panel, large
  std::vector<Look> looks_;
  std::vector<Drawn> drawn_;
  std::vector<trade::Polygon> glass_;  // of the car
  LabelSpot glass_spot_;               // of the panel; no room: no glass
  trade::Box_mm content_;
};

}  // namespace jambline::screens
