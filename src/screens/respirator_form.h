// screens/respirator_form.h: a respirator of the shop as it is typed once: model, kind, protection
// factor with its scheme, authority and year; and what it may be worn up to by each limit.
//
// Factor: for the US scheme the table's own value of the kind is filled in and can be changed; for
//         the UK scheme nothing is filled in. Factors and limits of different schemes do not mix:
//         such a pair is shown with the reason why nothing is computed.
// Who:    a manager keeps it (`mayKeep`); everybody reads it.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QStringList>

#include "screens/form.h"
#include "screens/row_list.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class RespiratorForm final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Owned by the register")
  Q_PROPERTY(bool fresh READ fresh NOTIFY changed)  // a new one
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)
  Q_PROPERTY(QString model READ model NOTIFY changed)
  Q_PROPERTY(int kind READ kind NOTIFY changed)
  Q_PROPERTY(int scheme READ scheme NOTIFY changed)  // 0 US, 1 UK
  Q_PROPERTY(QString factor READ factor NOTIFY changed)
  Q_PROPERTY(QString authority READ authority NOTIFY changed)
  Q_PROPERTY(QString year READ year NOTIFY changed)
  Q_PROPERTY(QString allowed READ allowed NOTIFY changed)
  Q_PROPERTY(bool retired READ retired NOTIFY changed)
  Q_PROPERTY(QStringList kinds READ kinds CONSTANT)
  Q_PROPERTY(QStringList schemes READ schemes CONSTANT)
  // What it may be worn up to. Roles: key, title, from, value, note, opens.
  Q_PROPERTY(QAbstractItemModel* uses READ uses CONSTANT)
  Q_PROPERTY(int useCount READ useCount NOTIFY changed)
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)

 public:
  RespiratorForm(Session& session, QObject* parent);

  bool fresh() const { return !open_.has_value(); }
  bool mayKeep() const { return is_manager(); }
  QString model() const;
  int kind() const { return static_cast<int>(shown_.kind); }
  int scheme() const { return static_cast<int>(shown_.scheme); }
  QString factor() const;
  QString authority() const;
  QString year() const;
  QString allowed() const;
  bool retired() const { return shown_.retired; }
  QStringList kinds() const;
  QStringList schemes() const;
  QAbstractItemModel* uses() { return &uses_; }
  int useCount() const { return uses_.rowCount(); }
  SumRows* sum() { return &sum_; }

  Q_INVOKABLE void open(const QString& respirator);  // "": a new one
  Q_INVOKABLE QString usualFactor(int kind, int scheme) const;
  Q_INVOKABLE QString usualAuthority(int scheme) const;
  Q_INVOKABLE QString usualYear(int scheme) const;
  Q_INVOKABLE bool asksAllowed(int kind) const;  // it supplies no air
  Q_INVOKABLE void keep(const QString& model, int kind, int scheme, const QString& factor,
                        const QString& authority, const QString& year, const QString& allowed,
                        bool retired);
  Q_INVOKABLE void openUse(const QString& key);  // fills `sum`

 signals:
  void changed();

 private:
  void refresh();

  std::optional<RespiratorId> open_;
  job::Respirator shown_;
  RowList uses_;
  SumRows sum_;
};

}  // namespace jambline::screens
