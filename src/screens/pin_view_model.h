// screens/pin_view_model.h: asking for a PIN, setting one, taking one away.
//
// Asked:   when somebody with a PIN is chosen (Session::pinAsked); right chooses him or her. A
// wrong
//          one, and the wait after several, are said in words; nothing is written to the log.
// Set:     by the person who is chosen, for himself; a manager may take away anybody's.
// Threads: GUI thread; hashing is done by the engine elsewhere.
#pragma once

#include <QAbstractItemModel>
#include <QObject>
#include <qqmlregistration.h>

#include "screens/row_model.h"
#include "screens/session.h"

namespace jambline::screens {

struct PinRow {
  QString key;  // person id
  QString name;
  friend bool operator==(const PinRow&, const PinRow&) = default;
};

class PinViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool asking READ asking NOTIFY changed)
  Q_PROPERTY(QString who READ who NOTIFY changed)      // who is asked
  Q_PROPERTY(QString wrong READ wrong NOTIFY changed)  // why the last try was not taken
  Q_PROPERTY(bool hasPin READ hasPin NOTIFY changed)   // the chosen person
  Q_PROPERTY(bool maySet READ maySet NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* others READ others CONSTANT)  // personId, personName: a manager's

 public:
  explicit PinViewModel(Session& session, QObject* parent = nullptr);

  bool asking() const { return static_cast<bool>(asked_); }
  QString who() const;
  QString wrong() const { return wrong_; }
  bool hasPin() const;
  bool maySet() const;
  QAbstractItemModel* others() const { return others_; }

  Q_INVOKABLE void enter(const QString& pin);
  Q_INVOKABLE void giveUp();
  Q_INVOKABLE void set(const QString& pin);  // of the chosen person; "" takes it away
  Q_INVOKABLE void takeAway(const QString& personId);

 signals:
  void changed();
  void kept();

 private:
  void refresh();
  void refuse(const seal::PinTry& tried);
  void change(const PersonId& person, const QString& pin);

  Session& session_;
  PersonId asked_;
  QString wrong_;
  RowModel<PinRow>* others_;
};

}  // namespace jambline::screens
