// screens/comeback_view_model.h: a delivered car came back: what the customer says, on which panel,
// and who pays. The car is on the floor again, with its delivery as where it came from.
//
// Words:   a complaint is a choice, more words, or both; who pays is one of a few. Stored in the
//          shop's words. The choices are common practice, no source.
// Who:     anybody of the shop. Threads: GUI thread. Errors go to Session::failed; the draft stays.
#pragma once

#include <QObject>
#include <QStringList>
#include <qqmlregistration.h>

#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class ComebackViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QStringList complaints READ complaints CONSTANT)
  Q_PROPERTY(int complaint READ complaint NOTIFY changed)  // a row of complaints; -1 none
  Q_PROPERTY(QString more READ more WRITE setMore NOTIFY changed)
  // Roles: key, title, chosen.
  Q_PROPERTY(QAbstractItemModel* panels READ panels CONSTANT)
  Q_PROPERTY(QStringList payers READ payers CONSTANT)
  Q_PROPERTY(int payer READ payer NOTIFY changed)  // -1 not settled
  Q_PROPERTY(QString deliveredWords READ deliveredWords NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  Q_PROPERTY(bool possible READ possible NOTIFY changed)  // the car is delivered

 public:
  explicit ComebackViewModel(Session& session, QObject* parent = nullptr);

  QStringList complaints() const;
  int complaint() const { return complaint_; }
  QString more() const { return more_; }
  void setMore(const QString& words);
  QAbstractItemModel* panels() { return &panels_; }
  QStringList payers() const;
  int payer() const { return payer_; }
  QString deliveredWords() const;
  QString mainSecond() const;
  bool mainWaits() const;
  bool possible() const;

  Q_INVOKABLE void sayComplaint(int row);
  Q_INVOKABLE void sayPanel(const QString& key);
  Q_INVOKABLE void sayPayer(int row);
  Q_INVOKABLE void keep();

 signals:
  void changed();
  void cameBack();

 private:
  void refresh();
  void show_panels();
  QString words() const;
  static QStringList said_complaints();
  static QStringList said_payers();

  Session& session_;
  RowList panels_;
  std::optional<JobId> job_;
  int complaint_ = -1;
  QString more_;
  std::optional<job::Panel> panel_;
  int payer_ = -1;
};

}  // namespace jambline::screens
