// screens/devices_view_model.h: the devices of the shop: who is in, who asks to be, what came after
// a device was ended; a manager lets in, turns away, ends and looks through.
//
// Who:     acts are a manager's, on a manager's device (mayManage); everybody sees the list. The
//          rules are the engine's and the hub's; a refusal comes as a banner.
// Asks:    the hub is asked when the screen opens, every five seconds while it is shown, and every
//          minute for the row on the floor; only on a manager's device that has contact.
// Threads: GUI thread; answers come on other threads and are handed over.
#pragma once

#include <QAbstractItemModel>
#include <QObject>
#include <map>
#include <optional>
#include <qqmlregistration.h>
#include <vector>

#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/sync_view_model.h"

namespace jambline::screens {

class DevicesViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key (device id), name, words ("manager's device, 123 entries here"), seen, shape.
  Q_PROPERTY(QAbstractItemModel* devices READ devices CONSTANT)
  Q_PROPERTY(QString countWords READ countWords NOTIFY changed)
  Q_PROPERTY(bool mayManage READ mayManage NOTIFY changed)
  Q_PROPERTY(QString whyNot READ whyNot NOTIFY changed)  // "" a manager may act here
  Q_PROPERTY(bool hasHub READ hasHub NOTIFY changed)
  Q_PROPERTY(bool mayInvite READ mayInvite NOTIFY changed)
  // Who asks to be let in. Roles: key (device id), name, digits, digitsSpoken, asked.
  Q_PROPERTY(QAbstractItemModel* waiting READ waiting CONSTANT)
  Q_PROPERTY(int waitingCount READ waitingCount NOTIFY changed)
  // What came after an end. Roles: key (device id), name, words.
  Q_PROPERTY(QAbstractItemModel* kept READ kept CONSTANT)
  Q_PROPERTY(int keptCount READ keptCount NOTIFY changed)
  // The device whose page is open; "" none.
  Q_PROPERTY(QString device READ device NOTIFY changed)
  Q_PROPERTY(QString deviceName READ deviceName NOTIFY nameChanged)
  Q_PROPERTY(QString deviceWords READ deviceWords NOTIFY changed)
  Q_PROPERTY(QString deviceSeen READ deviceSeen NOTIFY changed)
  Q_PROPERTY(QString deviceFork READ deviceFork NOTIFY changed)  // "" its chain is one
  Q_PROPERTY(bool deviceOwn READ deviceOwn NOTIFY changed)
  Q_PROPERTY(bool deviceEnded READ deviceEnded NOTIFY changed)
  // The entries that are looked through. Roles: key (hash), words, line (who and when).
  Q_PROPERTY(QString looked READ looked NOTIFY lookedChanged)  // device id; "" none
  Q_PROPERTY(QString lookedName READ lookedName NOTIFY lookedChanged)
  Q_PROPERTY(QString lookedWords READ lookedWords NOTIFY lookedChanged)
  Q_PROPERTY(bool lookedHere READ lookedHere NOTIFY lookedChanged)  // they have come
  Q_PROPERTY(QAbstractItemModel* lookedEntries READ lookedEntries CONSTANT)
  // The invitation that is shown; "" none.
  Q_PROPERTY(QString invitation READ invitation NOTIFY inviteChanged)
  Q_PROPERTY(QString inviteWords READ inviteWords NOTIFY inviteChanged)      // "9 minutes left"
  Q_PROPERTY(QString inviteTrouble READ inviteTrouble NOTIFY inviteChanged)  // why there is none
  Q_PROPERTY(bool inviteOver READ inviteOver NOTIFY inviteChanged)
  Q_PROPERTY(QString troubleWords READ troubleWords NOTIFY changed)  // why nothing new was heard
  // The row on the floor; "" nothing is asked of this person.
  Q_PROPERTY(QString floorWords READ floorWords NOTIFY changed)
  Q_PROPERTY(int floorShape READ floorShape NOTIFY changed)

 public:
  static constexpr std::int64_t invitation_lives_ms = 600'000;
  static constexpr std::int64_t fork_is_news_ms = 7 * 86'400'000LL;

  DevicesViewModel(Session& session, SyncViewModel& sync, QObject* parent = nullptr);

  QAbstractItemModel* devices() { return &devices_; }
  QString countWords() const;
  bool mayManage() const { return whyNot().isEmpty(); }
  QString whyNot() const;
  bool hasHub() const { return sync_.hasHub(); }
  bool mayInvite() const { return may_ask(); }
  QAbstractItemModel* waiting() { return &waiting_; }
  int waitingCount() const { return waiting_.rowCount(); }
  QAbstractItemModel* kept() { return &kept_; }
  int keptCount() const { return kept_.rowCount(); }
  QString device() const { return open_; }
  QString deviceName() const;
  QString deviceWords() const;
  QString deviceSeen() const;
  QString deviceFork() const;
  bool deviceOwn() const;
  bool deviceEnded() const;
  QString looked() const { return looked_; }
  QString lookedName() const;
  QString lookedWords() const;
  bool lookedHere() const { return looked_here_; }
  QAbstractItemModel* lookedEntries() { return &looked_rows_; }
  QString invitation() const { return invitation_; }
  QString inviteWords() const;
  QString inviteTrouble() const { return invite_trouble_; }
  bool inviteOver() const;
  QString troubleWords() const { return trouble_; }
  QString floorWords() const;
  int floorShape() const;

  Q_INVOKABLE void setFront(bool front);  // the screen is shown
  Q_INVOKABLE void look();                // asks the hub now
  Q_INVOKABLE void open(const QString& device);
  Q_INVOKABLE void rename(const QString& name);
  Q_INVOKABLE void endMembership();  // of the open device; for good
  Q_INVOKABLE void admit(const QString& device, bool manager);
  Q_INVOKABLE void turnAway(const QString& device);
  Q_INVOKABLE void invite();
  Q_INVOKABLE void dropInvitation();
  Q_INVOKABLE void copyInvitation();
  Q_INVOKABLE void lookThrough(const QString& device);
  Q_INVOKABLE void takeOver();   // what is looked through, into the shop's record
  Q_INVOKABLE void leaveKept();  // as it is: apart, on the hub

 signals:
  void changed();
  void someoneAsked();  // to be let in, for the first time
  void nameChanged();   // of the open device, and only then: somebody may be typing
  void inviteChanged();
  void lookedChanged();
  void settled();  // what was looked through is dealt with

 private:
  void refresh();
  void second_passed();
  void show_lists();
  void heard(const Error* error);
  void tell(const Status& done);
  bool may_ask() const;
  const engine::ShopDevice* find(const QString& device) const;
  const sync::SeenDevice* seen_of(const DeviceId& device) const;
  QString name_of(const DeviceId& device) const;
  QString standing_words(const engine::ShopDevice& device) const;
  QString seen_words(const engine::ShopDevice& device) const;
  QString fork_words(const DeviceId& device) const;
  bool fork_is_news() const;
  const sync::Quarantined* kept_of(const QString& device) const;
  void settle_looked();
  void end_looked();

  Session& session_;
  SyncViewModel& sync_;
  RowList devices_;
  RowList waiting_;
  RowList kept_;
  RowList looked_rows_;
  bool front_ = false;
  int seconds_ = 0;
  QString open_;
  std::vector<sync::Pending> pending_;
  std::vector<sync::Quarantined> quarantine_;
  sync::SeenAnswer seen_;
  std::int64_t seen_at_ms_ = 0;  // this device's clock, when it was heard
  QString trouble_;
  QString invitation_;
  QString invite_trouble_;
  QString name_shown_;
  std::uint64_t invited_ms_ = 0;  // since boot
  QString looked_;
  bool looked_here_ = false;
  std::uint64_t looked_through_ = 0;
  std::vector<seal::SealedEntry> looked_entries_;
};

}  // namespace jambline::screens
