// screens/shop_view_model.h: the shop's own page: name and zone, people, places on the racks.
//
// Who:     anybody names the shop, adds racks and corrects a name; roles, leaving and erasing are a
//          manager's (`manager`). The rules are those of acts/; a refusal comes as a banner.
// Erasing: of somebody who has left. It cannot be taken back; what the person did stays.
// Threads: GUI thread.
#pragma once

#include <QAbstractItemModel>
#include <QObject>
#include <QStringList>
#include <qqmlregistration.h>

#include "screens/row_model.h"
#include "screens/session.h"

namespace jambline::screens {

struct ShopPersonRow {
  QString key;  // person id
  QString name;
  QString standing;  // "Painter", "has left", "has left, name erased"
  int role = 0;      // in the order of job::Role
  bool left = false;
  bool erased = false;
  friend bool operator==(const ShopPersonRow&, const ShopPersonRow&) = default;
};

class ShopViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QString name READ name NOTIFY changed)
  Q_PROPERTY(QString zone READ zone NOTIFY changed)
  Q_PROPERTY(bool manager READ manager NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* people READ people CONSTANT)
  Q_PROPERTY(QStringList racks READ racks NOTIFY changed)
  Q_PROPERTY(QStringList roles READ roles CONSTANT)
  // The person whose page is open: empty for none.
  Q_PROPERTY(QString person READ person NOTIFY personChanged)
  Q_PROPERTY(QString personName READ personName NOTIFY changed)
  Q_PROPERTY(QString personStanding READ personStanding NOTIFY changed)
  Q_PROPERTY(int personRole READ personRole NOTIFY changed)
  Q_PROPERTY(bool personLeft READ personLeft NOTIFY changed)
  Q_PROPERTY(bool personErased READ personErased NOTIFY changed)

 public:
  explicit ShopViewModel(Session& session, QObject* parent = nullptr);

  QString name() const;
  QString zone() const { return session_.zone(); }
  bool manager() const;
  QAbstractItemModel* people() const { return people_; }
  QStringList racks() const;
  QStringList roles() const;
  QString person() const { return open_; }
  QString personName() const { return shown().name; }
  QString personStanding() const { return shown().standing; }
  int personRole() const { return shown().role; }
  bool personLeft() const { return shown().left; }
  bool personErased() const { return shown().erased; }

  Q_INVOKABLE void nameShop(const QString& name, const QString& zone);
  Q_INVOKABLE void addRack(const QString& name);
  Q_INVOKABLE void open(const QString& personId);  // "" closes the page
  // Of the person whose page is open:
  Q_INVOKABLE void rename(const QString& name);
  Q_INVOKABLE void changeRole(int role);
  Q_INVOKABLE void letGo();
  Q_INVOKABLE void eraseName();

 signals:
  void changed();
  void personChanged();
  void rackAdded();

 private:
  void refresh();
  ShopPersonRow shown() const;
  PersonId of_page() const;

  Session& session_;
  RowModel<ShopPersonRow>* people_;
  QString open_;
};

}  // namespace jambline::screens
