// screens/sync_view_model.h: how far the work of this device has come to the shop's hub, and what a
// person may do about it.
//
// Shape:   follows exchange::SyncState. Without an exchange, or without a hub, all stays on this
//          device: hasHub is false. `rows` are the three places: here, on the hub, refused.
// Threads: GUI; publish() from any thread (the exchange's `changed`).
// Restart: an act of the exchange may want the folder opened anew: restartWanted().
// Errors:  of what goes on by itself in trouble...; of an act in `notice`.
#pragma once

#include <QAbstractItemModel>
#include <QObject>
#include <qqmlregistration.h>

#include "exchange/exchange.h"
#include "screens/detail_rows.h"
#include "screens/picture_store.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/sync_words.h"
#include "screens/words.h"

namespace jambline::screens {

class SyncViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(Contact contact READ contact NOTIFY changed)
  Q_PROPERTY(bool canJoin READ canJoin NOTIFY changed)  // there is an exchange, and no hub yet
  Q_PROPERTY(bool hasHub READ hasHub NOTIFY changed)
  Q_PROPERTY(QString hubName READ hubName NOTIFY changed)
  Q_PROPERTY(QString marginWords READ marginWords NOTIFY changed)
  Q_PROPERTY(QString head READ head NOTIFY changed)
  Q_PROPERTY(QString explain READ explain NOTIFY changed)
  Q_PROPERTY(int shape READ shape NOTIFY changed)  // StateKind
  // Roles: key ("here", "hub", "refused"), title, words, shape.
  Q_PROPERTY(QAbstractItemModel* rows READ rows CONSTANT)
  Q_PROPERTY(jambline::screens::DetailRows* facts READ facts CONSTANT)
  Q_PROPERTY(QString troubleWhat READ troubleWhat NOTIFY changed)  // "" none
  Q_PROPERTY(QString troubleKept READ troubleKept NOTIFY changed)
  Q_PROPERTY(QString troubleTodo READ troubleTodo NOTIFY changed)
  Q_PROPERTY(QString troubleDetails READ troubleDetails NOTIFY changed)
  Q_PROPERTY(bool paused READ paused NOTIFY changed)
  Q_PROPERTY(bool maySend READ maySend NOTIFY changed)  // there is somebody to send to
  Q_PROPERTY(bool metered READ metered NOTIFY changed)
  Q_PROPERTY(PicturesWhen picturesWhen READ picturesWhen NOTIFY changed)
  Q_PROPERTY(QString addresses READ addresses NOTIFY addressesChanged)  // "192.168.1.20:8740, ..."
  Q_PROPERTY(QString forkWords READ forkWords NOTIFY changed)           // "" not forked
  Q_PROPERTY(bool mayAskAnew READ mayAskAnew NOTIFY changed)            // forked, and not asked yet
  Q_PROPERTY(QString digits READ digits NOTIFY changed)  // "042 917" while they are compared
  Q_PROPERTY(QString digitsSpoken READ digitsSpoken NOTIFY changed)
  Q_PROPERTY(Act mainAct READ mainAct NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(QString notice READ notice NOTIFY changed)  // why the last act was not done

 public:
  enum Contact { NoHub, Joining, TurnedAway, Trying, Good, Revoked, Forked };
  Q_ENUM(Contact)
  enum PicturesWhen { Always, NotMetered, Never };
  Q_ENUM(PicturesWhen)
  enum Act { SendNow, GoOn, AskAnew, Join, Export };
  Q_ENUM(Act)

  explicit SyncViewModel(Session& session, QObject* parent = nullptr);

  // Null: this device only. It outlives this, or is taken back by use(nullptr).
  void use(exchange::Exchange* exchange);
  exchange::Exchange* exchange() const { return exchange_; }
  // Files that are looked at and are not here are fetched first; what came is shown.
  void serve(PictureStore& pictures);
  void publish(exchange::SyncState state);
  const exchange::SyncState& state() const { return state_; }

  Contact contact() const { return static_cast<Contact>(state_.contact); }
  bool canJoin() const { return exchange_ && contact() == NoHub; }
  bool hasHub() const { return maySend() || contact() == Revoked || contact() == Forked; }
  QString hubName() const;
  QString marginWords() const { return margin_; }
  QString head() const { return said_.head; }
  QString explain() const { return said_.explain; }
  int shape() const { return shape_of(said_.shape); }
  QAbstractItemModel* rows() { return &rows_; }
  DetailRows* facts() { return &facts_; }
  QString troubleWhat() const { return trouble().what; }
  QString troubleKept() const { return trouble().kept; }
  QString troubleTodo() const { return trouble().todo; }
  QString troubleDetails() const;
  bool paused() const { return state_.paused; }
  bool maySend() const { return contact() == Trying || contact() == Good; }
  bool metered() const { return state_.metered; }
  PicturesWhen picturesWhen() const { return static_cast<PicturesWhen>(state_.pictures_when); }
  QString addresses() const;
  QString forkWords() const;
  bool mayAskAnew() const { return contact() == Forked && digits().isEmpty(); }
  QString digits() const;
  QString digitsSpoken() const { return spoken_digits(digits()); }
  Act mainAct() const;
  QString mainText() const;
  QString mainSecond() const;
  QString notice() const { return notice_; }

  // Where an entry of this device is; "" of another device's, or without a hub.
  QString place_of(const entries::Entry& entry) const;
  // The same of a picture's file that was taken here.
  QString place_of(const Hash& file) const;

  Q_INVOKABLE void sendNow();
  Q_INVOKABLE void pause(bool pause);
  Q_INVOKABLE void choosePictures(int when);
  // What is wrong with them, or "": then they hold.
  Q_INVOKABLE QString keepAddresses(const QString& typed);
  Q_INVOKABLE void askForNewKey();
  Q_INVOKABLE void giveUp();

 signals:
  void changed();
  void addressesChanged();  // and only then: somebody may be typing
  void picturesCame();      // some file that was not here is here now
  void restartWanted();     // the folder has to be opened again

 private:
  void take(exchange::SyncState state);
  void refresh();
  void say(const Status& done);
  ErrorWords trouble() const;

  Session& session_;
  exchange::Exchange* exchange_ = nullptr;
  exchange::SyncState state_;
  QString margin_;
  SyncWords said_;
  RowList rows_;
  DetailRows facts_{this};
  QString facts_said_;
  QString notice_;
};

}  // namespace jambline::screens
