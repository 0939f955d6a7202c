// screens/limits_view_model.h: the limits that samples are held against: value, unit, authority,
// year and source of each; those that the program came with and the shop's own.
//
// Rule:    no limit stands without an authority, a year and a source, and all of them are to be
//          checked against today's local rule: the page says so. A limit that does not hold here is
//          retired, not deleted; a manager does that, and adds and corrects them.
// Order:   by substance, then by authority; retired ones at the end.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QStringList>

#include "screens/form.h"
#include "screens/row_list.h"

namespace jambline::screens {

class LimitsViewModel final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, substance, kindWords, value, unit, from ("NIOSH 2019"), source, own, retired,
  // spoken.
  Q_PROPERTY(QAbstractItemModel* limits READ limits CONSTANT)
  Q_PROPERTY(QString countWords READ countWords NOTIFY changed)
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)
  Q_PROPERTY(QStringList kinds READ kinds CONSTANT)
  Q_PROPERTY(QStringList units READ unitNames CONSTANT)
  Q_PROPERTY(QStringList schemes READ schemes CONSTANT)  // the last one: none
  // The one that is open in the form.
  Q_PROPERTY(bool fresh READ fresh NOTIFY openChanged)
  Q_PROPERTY(QString substance READ substance NOTIFY openChanged)
  Q_PROPERTY(int kind READ kind NOTIFY openChanged)
  Q_PROPERTY(QString value READ value NOTIFY openChanged)
  Q_PROPERTY(int unit READ unit NOTIFY openChanged)
  Q_PROPERTY(QString authority READ authority NOTIFY openChanged)
  Q_PROPERTY(QString year READ year NOTIFY openChanged)
  Q_PROPERTY(QString source READ source NOTIFY openChanged)
  Q_PROPERTY(int scheme READ scheme NOTIFY openChanged)
  Q_PROPERTY(QString dangerous READ dangerous NOTIFY openChanged)
  Q_PROPERTY(bool retired READ retired NOTIFY openChanged)

 public:
  explicit LimitsViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* limits() { return &limits_; }
  QString countWords() const;
  bool mayKeep() const { return is_manager() && !session().readOnly(); }
  QStringList kinds() const;
  QStringList unitNames() const;
  QStringList schemes() const;
  bool fresh() const { return !open_.has_value(); }
  QString substance() const { return QString::fromStdString(shown_.substance); }
  int kind() const { return static_cast<int>(shown_.kind); }
  QString value() const;
  int unit() const;
  QString authority() const { return QString::fromStdString(shown_.authority); }
  QString year() const;
  QString source() const { return QString::fromStdString(shown_.source); }
  int scheme() const;
  QString dangerous() const;
  bool retired() const { return shown_.retired; }

  Q_INVOKABLE void open(const QString& limit);  // "": a new one
  // Fields: substance, value, authority, year, source, dangerous.
  Q_INVOKABLE void keep(const QString& substance, int kind, const QString& value, int unit,
                        const QString& authority, const QString& year, const QString& source,
                        int scheme, const QString& dangerous);
  Q_INVOKABLE void retire(bool retired);  // the one that is open

 signals:
  void changed();
  void openChanged();

 private:
  void refresh();
  const folds::LimitView* find(const LimitId& limit) const;

  std::optional<LimitId> open_;
  job::ExposureLimit shown_;
  RowList limits_;
};

}  // namespace jambline::screens
