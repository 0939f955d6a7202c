// screens/join_view_model.h: how this device comes to a shop's hub: a code is read or typed, the
// hub is asked, six digits are compared, a manager lets it in. A shop that comes to a hub itself
// takes the hub in after the digits were compared.
//
// Shape:   step() says what is shown; from Ask on it follows the exchange. Of a code nothing is
// done
//          before ask().
// Threads: GUI. Restart: restartWanted() when the folder has to be opened again.
#pragma once

#include <QObject>
#include <optional>
#include <qqmlregistration.h>

#include "screens/join_scan_view_model.h"
#include "screens/sync_view_model.h"

namespace jambline::screens {

class JoinViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(jambline::screens::JoinScanViewModel* scan READ scan CONSTANT)
  Q_PROPERTY(Step step READ step NOTIFY changed)
  Q_PROPERTY(bool possible READ possible NOTIFY changed)  // there is something to ask with
  Q_PROPERTY(bool joining READ joining NOTIFY changed)    // asked, and not yet in
  Q_PROPERTY(QString typed READ typed WRITE set_typed NOTIFY changed)
  Q_PROPERTY(QString wrong READ wrong NOTIFY changed)        // of what was typed
  Q_PROPERTY(QString hubWords READ hubWords NOTIFY changed)  // which hub the code names
  Q_PROPERTY(QString whatHappens READ whatHappens NOTIFY changed)
  Q_PROPERTY(QString digits READ digits NOTIFY changed)
  Q_PROPERTY(QString digitsSpoken READ digitsSpoken NOTIFY changed)
  Q_PROPERTY(QString compareWords READ compareWords NOTIFY changed)
  Q_PROPERTY(bool bringsShop READ bringsShop NOTIFY changed)
  Q_PROPERTY(bool mayConfirm READ mayConfirm NOTIFY changed)  // a manager is chosen
  Q_PROPERTY(QString troubleWhat READ troubleWhat NOTIFY changed)
  Q_PROPERTY(QString troubleKept READ troubleKept NOTIFY changed)
  Q_PROPERTY(QString troubleTodo READ troubleTodo NOTIFY changed)

 public:
  enum Step { Read, Ask, Asking, Compare, In, TurnedAway };
  Q_ENUM(Step)

  // The camera, sync and session outlive this.
  JoinViewModel(Session& session, SyncViewModel& sync, device::Camera& camera,
                QObject* parent = nullptr);

  JoinScanViewModel* scan() { return &scan_; }
  Step step() const;
  bool possible() const { return sync_.exchange() != nullptr; }
  bool joining() const { return sync_.contact() == SyncViewModel::Joining; }
  QString typed() const { return typed_; }
  void set_typed(const QString& typed);
  QString wrong() const { return wrong_; }
  QString hubWords() const;
  QString whatHappens() const;
  QString digits() const { return sync_.digits(); }
  QString digitsSpoken() const { return sync_.digitsSpoken(); }
  QString compareWords() const;
  bool bringsShop() const { return sync_.state().brings_shop; }
  bool mayConfirm() const;
  QString troubleWhat() const { return trouble_.what; }
  QString troubleKept() const { return trouble_.kept; }
  QString troubleTodo() const { return trouble_.todo; }

  Q_INVOKABLE void open();     // a fresh start, unless something is under way
  Q_INVOKABLE void take();     // the code that was typed
  Q_INVOKABLE void ask();      // the hub, whether this device may come in
  Q_INVOKABLE void confirm();  // same digits: takes the hub in
  Q_INVOKABLE void giveUp();   // other digits, or not now
  Q_INVOKABLE void another();  // code

 signals:
  void changed();
  void restartWanted();

 private:
  void take_code(const QString& text);
  void follow();
  void say(const Status& done);

  Session& session_;
  SyncViewModel& sync_;
  JoinScanViewModel scan_;
  QString typed_;
  QString wrong_;
  std::optional<sync::Invitation> code_;
  bool asked_ = false;   // no answer yet
  bool joined_ = false;  // was joining since it was opened
  bool given_up_ = false;
  ErrorWords trouble_;
};

}  // namespace jambline::screens
