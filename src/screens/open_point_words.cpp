#include "screens/open_point_words.h"

#include <QCoreApplication>

#include "screens/words.h"

namespace jambline::screens {

namespace {
using folds::OpenPointKind;

QString point_tr(const char* words) {
  return QCoreApplication::translate("open points", words);
}

QString panel_name(const folds::OpenPoint& point, job::BodyShape body) {
  return point.panel ? sentence(words_of(*point.panel, body)) : QString();
}
QString stage_name(const folds::OpenPoint& point) {
  return point.stage ? sentence(words_of(*point.stage)) : QString();
}
QString name_of(const folds::OpenPoint& point) {
  const QString name = QString::fromStdString(point.name);
  return name.isEmpty() ? stage_name(point) : name;
}
}  // namespace

QString words_of(const folds::OpenPoint& point, job::BodyShape body) {
  switch (point.kind) {
    case OpenPointKind::PanelNotClean: {
      const QString panel = panel_name(point, body);
      if (point.count == 0)
        return point_tr(QT_TRANSLATE_NOOP("open points", "%1: not clean")).arg(panel);
      if (point.count == 1)
        return point_tr(QT_TRANSLATE_NOOP("open points", "%1: 1 mark open")).arg(panel);
      return point_tr(QT_TRANSLATE_NOOP("open points", "%1: %2 marks open"))
          .arg(panel)
          .arg(point.count);
    }
    case OpenPointKind::StageOpen:
      return point_tr(QT_TRANSLATE_NOOP("open points", "%1: not done")).arg(stage_name(point));
    case OpenPointKind::PartNotHere:
      return point_tr(QT_TRANSLATE_NOOP("open points", "%1: part not here")).arg(name_of(point));
    case OpenPointKind::SubletNotBack:
      return point_tr(QT_TRANSLATE_NOOP("open points", "%1: work outside not back"))
          .arg(name_of(point));
    case OpenPointKind::ApprovalOpen:
      return point_tr(QT_TRANSLATE_NOOP("open points", "%1: waits for approval"))
          .arg(name_of(point));
    case OpenPointKind::LatchNotChecked:
      return point_tr(QT_TRANSLATE_NOOP("open points", "Latch and secondary catch: not checked"));
    case OpenPointKind::ShotsMissing:
      return point.count == 1
                 ? point_tr(QT_TRANSLATE_NOOP("open points", "%1: 1 picture missing"))
                       .arg(stage_name(point))
                 : point_tr(QT_TRANSLATE_NOOP("open points", "%1: %2 pictures missing"))
                       .arg(stage_name(point))
                       .arg(point.count);
  }
  return {};
}

QString customer_words(const folds::OpenPoint& point, job::BodyShape body) {
  switch (point.kind) {
    case OpenPointKind::PanelNotClean:
      return point_tr(QT_TRANSLATE_NOOP("open points", "%1: its finish is not final yet"))
          .arg(panel_name(point, body));
    case OpenPointKind::StageOpen:
      return point_tr(QT_TRANSLATE_NOOP("open points", "%1: still to be done"))
          .arg(stage_name(point));
    case OpenPointKind::PartNotHere:
      return point_tr(QT_TRANSLATE_NOOP("open points", "%1: the part is still to come"))
          .arg(name_of(point));
    case OpenPointKind::SubletNotBack:
      return point_tr(QT_TRANSLATE_NOOP("open points", "%1: still to be done outside"))
          .arg(name_of(point));
    case OpenPointKind::ApprovalOpen:
    case OpenPointKind::LatchNotChecked:
    case OpenPointKind::ShotsMissing:
      return {};
  }
  return {};
}

QString open_points_words(int count) {
  if (count == 0) return point_tr(QT_TRANSLATE_NOOP("open points", "no open points"));
  if (count == 1) return point_tr(QT_TRANSLATE_NOOP("open points", "1 open point"));
  return point_tr(QT_TRANSLATE_NOOP("open points", "%1 open points")).arg(count);
}

}  // namespace jambline::screens
