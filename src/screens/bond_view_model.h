// screens/bond_view_model.h: what is bonded on the car: what, with which product, in which airbag
// and belt case, set how long ago; and the air where the car stands, which the maker's table is
// asked with.
//
// Form:    start() empties it. Glass urethanes and panel adhesives of the shop are offered; a
//          urethane without a table has no case and cannot be chosen. keep() writes and sends
//          kept(); `waits` says what is still to be said.
// Air:     temperature and humidity since the glass was set; the coldest and driest count. Of none
//          the longest time of the table counts.
// Threads: GUI thread. Errors go to Session::failed; the form stays.
#pragma once

#include <QObject>
#include <QStringList>
#include <optional>
#include <qqmlregistration.h>

#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class BondViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, title, kindWords, chosen.
  Q_PROPERTY(QAbstractItemModel* products READ products CONSTANT)
  Q_PROPERTY(int productCount READ productCount NOTIFY changed)
  // Of the chosen one. Roles: key, title, chosen.
  Q_PROPERTY(QAbstractItemModel* cases READ cases CONSTANT)
  Q_PROPERTY(int caseCount READ caseCount NOTIFY changed)
  Q_PROPERTY(bool ofGlass READ ofGlass NOTIFY changed)
  Q_PROPERTY(QStringList parts READ parts CONSTANT)  // what is often bonded
  Q_PROPERTY(QString part READ part NOTIFY changed)
  Q_PROPERTY(QStringList agos READ agos CONSTANT)  // "just now", "15 min ago"
  Q_PROPERTY(int ago READ ago NOTIFY changed)      // row of agos; -1: a time was typed
  Q_PROPERTY(QString timeRefusal READ timeRefusal NOTIFY changed)
  Q_PROPERTY(QString waits READ waits NOTIFY changed)  // "" it can be kept
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString caution READ caution CONSTANT)
  Q_PROPERTY(QString unit READ unit NOTIFY changed)
  Q_PROPERTY(QString airRefusal READ airRefusal NOTIFY changed)
  Q_PROPERTY(QString surfaceRefusal READ surfaceRefusal NOTIFY changed)
  Q_PROPERTY(QString humidityRefusal READ humidityRefusal NOTIFY changed)

 public:
  explicit BondViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* products() { return &products_; }
  int productCount() const { return products_.rowCount(); }
  QAbstractItemModel* cases() { return &cases_; }
  int caseCount() const { return cases_.rowCount(); }
  bool ofGlass() const;
  QStringList parts() const;
  QString part() const { return part_; }
  QStringList agos() const;
  int ago() const { return typed_ms_ ? -1 : ago_; }
  QString timeRefusal() const { return time_refusal_; }
  QString waits() const;
  QString mainText() const;
  QString caution() const;
  QString unit() const { return temperature_unit(session_.units()); }
  QString airRefusal() const { return air_refusal_; }
  QString surfaceRefusal() const { return surface_refusal_; }
  QString humidityRefusal() const { return humidity_refusal_; }

  Q_INVOKABLE void start();
  Q_INVOKABLE void sayPart(const QString& part);
  Q_INVOKABLE void chooseProduct(const QString& product);
  Q_INVOKABLE void chooseCase(const QString& case_name);
  Q_INVOKABLE void chooseAgo(int row);
  Q_INVOKABLE void sayTime(const QString& time);  // "10:05", of today; "" as chosen again
  Q_INVOKABLE void keep();
  Q_INVOKABLE void logAir(const QString& air, const QString& surface, const QString& humidity);

 signals:
  void changed();
  void started();
  void kept();
  void airKept();

 private:
  void refresh();
  const folds::ProductView* product() const;
  std::optional<double> temperature(const QString& typed, QString& refusal) const;

  Session& session_;
  RowList products_;
  RowList cases_;
  std::optional<ProductId> product_;
  QString part_;
  QString case_;
  int ago_ = 0;
  std::optional<std::int64_t> typed_ms_;
  QString time_refusal_;
  QString air_refusal_;
  QString surface_refusal_;
  QString humidity_refusal_;
  std::optional<JobId> job_;
};

}  // namespace jambline::screens
