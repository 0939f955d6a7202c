// screens/check_in_view_model.h: how the car came: odometer, fuel, keys, warning lamps, old damage,
// the pack of a hybrid or electric car; and who signed for it.
//
// Draft:   what was said in this visit, or nothing: nothing is filled in before a tap. The odometer
//          is typed, or said that it cannot be read; without that and the keys it is not kept.
// Lamps:   several may be lit; none chosen means none.
// Main:    Keep, then the signature; after it nothing is left here. What is changed after the
//          signature says so.
// Threads: GUI thread. Errors go to Session::failed; the draft stays.
#pragma once

#include <QObject>
#include <QStringList>
#include <QVariantList>
#include <optional>
#include <qqmlregistration.h>

#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class CheckInViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QString odometer READ odometer WRITE setOdometer NOTIFY changed)  // digits
  Q_PROPERTY(QString odometerWords READ odometerWords NOTIFY changed)          // "48,210 mi"
  Q_PROPERTY(bool odometerSaid READ odometerSaid NOTIFY changed)
  Q_PROPERTY(QString unit READ unit NOTIFY changed)  // "mi"
  Q_PROPERTY(QString otherUnit READ otherUnit NOTIFY changed)
  Q_PROPERTY(bool unread READ unread NOTIFY changed)  // it cannot be read
  Q_PROPERTY(QString fuelTitle READ fuelTitle NOTIFY changed)
  Q_PROPERTY(QStringList fuels READ fuels CONSTANT)
  Q_PROPERTY(int fuel READ fuel NOTIFY changed)  // a row of fuels; -1 not said
  Q_PROPERTY(QStringList keyCounts READ keyCounts CONSTANT)
  Q_PROPERTY(int keys READ keys NOTIFY changed)  // -1 not said
  // Roles: key, title, chosen.
  Q_PROPERTY(QAbstractItemModel* lamps READ lamps CONSTANT)
  Q_PROPERTY(QString damage READ damage WRITE setDamage NOTIFY changed)
  Q_PROPERTY(QString picturesWords READ picturesWords NOTIFY changed)  // of the check-in
  Q_PROPERTY(bool picturesMissing READ picturesMissing NOTIFY changed)
  Q_PROPERTY(bool hasPack READ hasPack NOTIFY changed)
  Q_PROPERTY(QStringList packs READ packs CONSTANT)
  Q_PROPERTY(int pack READ pack NOTIFY changed)  // -1 not said
  Q_PROPERTY(QString packCaution READ packCaution CONSTANT)
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)  // all of it in a line; "" not said
  Q_PROPERTY(QString signedWords READ signedWords NOTIFY changed)  // "" not signed
  Q_PROPERTY(bool signedBefore READ signedBefore NOTIFY changed)   // it was changed since
  Q_PROPERTY(Act mainAct READ mainAct NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  Q_PROPERTY(bool writable READ writable NOTIFY changed)
  Q_PROPERTY(bool hasPerson READ hasPerson NOTIFY changed)

 public:
  enum class Act { None, Keep, Sign };
  Q_ENUM(Act)

  explicit CheckInViewModel(Session& session, QObject* parent = nullptr);

  QString odometer() const { return odometer_; }
  void setOdometer(const QString& digits);
  QString odometerWords() const;
  bool odometerSaid() const { return unread_ || !odometer_.isEmpty(); }
  QString unit() const;
  QString otherUnit() const;
  bool unread() const { return unread_; }
  QString fuelTitle() const;
  QStringList fuels() const;
  int fuel() const { return fuel_; }
  QStringList keyCounts() const;
  int keys() const { return keys_; }
  QAbstractItemModel* lamps() { return &lamps_; }
  QString damage() const { return damage_; }
  void setDamage(const QString& words);
  QString picturesWords() const;
  bool picturesMissing() const;
  bool hasPack() const;
  QStringList packs() const;
  int pack() const { return pack_; }
  QString packCaution() const;
  QString rowWords() const;
  QString signedWords() const;
  bool signedBefore() const;
  Act mainAct() const;
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const { return !mainSecond().isEmpty() && mainAct() == Act::Keep; }
  bool writable() const;
  bool hasPerson() const { return session_.hasPerson(); }

  Q_INVOKABLE void turnUnit();
  Q_INVOKABLE void sayUnread();
  Q_INVOKABLE void sayFuel(int row);  // the chosen one again: not said
  Q_INVOKABLE void sayKeys(int count);
  Q_INVOKABLE void turnLamp(const QString& key);
  Q_INVOKABLE void sayPack(int row);
  Q_INVOKABLE void keep();
  Q_INVOKABLE void sign(const QVariantList& strokes, const QString& signer);

 signals:
  void changed();
  void kept();
  void signatureKept();

 private:
  void refresh();
  void take_up();
  void show_lamps();
  static QStringList said_packs();
  job::CheckIn draft() const;
  const job::CheckIn* said() const;  // in this visit; null: not yet

  Session& session_;
  RowList lamps_;
  std::optional<JobId> job_;
  std::optional<job::CheckIn> taken_up_;
  QString odometer_;
  job::OdometerUnit unit_{};
  bool unread_ = false;
  int fuel_ = -1;
  int keys_ = -1;
  QStringList lit_;
  QString damage_;
  int pack_ = -1;
  QString pack_words_;  // of an earlier word that is none of the choices
};

// "48,210 mi", "3/4 fuel", "2 keys" and so on, each what was said.
QStringList check_in_words(const job::CheckIn& said, job::Drive drive);

}  // namespace jambline::screens
