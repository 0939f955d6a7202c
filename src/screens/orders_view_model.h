// screens/orders_view_model.h: what the car on the tape waits for from outside: parts on order and
// work that somebody else does.
//
// Rows:    what is still to come first, then what is here. A day that has passed, and a part that
//          is wrong, say so with a Must.
// Form:    start() with a row's key, or "" for a new one; days are chips from today on, or typed.
//          A part is expected at noon of its day, work outside at the end of the shop's open hours
//          (common practice, no source).
// Threads: GUI thread. What was typed stays where it was when it cannot be kept.
#pragma once

#include <QStringList>

#include "screens/form.h"
#include "screens/row_list.h"

namespace jambline::screens {

class OrdersViewModel final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, title, words, shape, state (of job::PartState).
  Q_PROPERTY(QAbstractItemModel* parts READ parts CONSTANT)
  Q_PROPERTY(int partCount READ partCount NOTIFY changed)
  // Roles: key, title, words, shape, state (of job::SubletState).
  Q_PROPERTY(QAbstractItemModel* outside READ outside CONSTANT)
  Q_PROPERTY(int outsideCount READ outsideCount NOTIFY changed)
  Q_PROPERTY(bool writable READ writable NOTIFY changed)
  // The way to them, in the car.
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)
  Q_PROPERTY(int rowShape READ rowShape NOTIFY changed)
  Q_PROPERTY(bool alarm READ alarm NOTIFY changed)  // something is late or wrong
  // What is typed.
  Q_PROPERTY(bool isNew READ isNew NOTIFY formChanged)
  Q_PROPERTY(QString name READ name NOTIFY formChanged)            // of the part, of who does it
  Q_PROPERTY(int kind READ kind WRITE setKind NOTIFY formChanged)  // of kinds
  Q_PROPERTY(int state READ state WRITE setState NOTIFY formChanged)
  Q_PROPERTY(QString day READ day NOTIFY formChanged)  // as it can be typed; "" nobody said
  Q_PROPERTY(QStringList kinds READ kinds CONSTANT)
  Q_PROPERTY(QStringList partStates READ partStates CONSTANT)
  Q_PROPERTY(QStringList outsideStates READ outsideStates CONSTANT)
  Q_PROPERTY(QAbstractItemModel* days READ days CONSTANT)  // key (the day), title

 public:
  explicit OrdersViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* parts() { return &parts_; }
  int partCount() const { return parts_.rowCount(); }
  QAbstractItemModel* outside() { return &outside_; }
  int outsideCount() const { return outside_.rowCount(); }
  bool writable() const;
  QString rowWords() const { return row_words_; }
  int rowShape() const { return row_shape_; }
  bool alarm() const { return alarm_; }
  bool isNew() const { return key_.isEmpty(); }
  QString name() const { return name_; }
  int kind() const { return kind_; }
  void setKind(int kind);
  int state() const { return state_; }
  void setState(int state);
  QString day() const { return day_; }
  QStringList kinds() const;
  QStringList partStates() const;
  QStringList outsideStates() const;
  QAbstractItemModel* days() { return &days_; }

  Q_INVOKABLE void startPart(const QString& key);
  Q_INVOKABLE void startOutside(const QString& key);
  Q_INVOKABLE QString dayWords(const QString& text) const;  // "Thu Nov 26"; "" no day
  Q_INVOKABLE void keepPart(const QString& name, const QString& day);
  Q_INVOKABLE void keepOutside(const QString& who, const QString& day);
  // One tap on a row.
  Q_INVOKABLE void arrived(const QString& part);
  Q_INVOKABLE void wentOut(const QString& outside);
  Q_INVOKABLE void cameBack(const QString& outside);

 signals:
  void changed();
  void formChanged();

 private:
  void refresh();
  void show_days();
  void start(const QString& key, const QString& name, int kind, int state,
             std::optional<std::int64_t> expected_ms);
  std::optional<std::int64_t> expected(const QString& day, bool of_part);
  const folds::PartView* part(const QString& key) const;
  const folds::SubletView* sublet(const QString& key) const;
  QString when(std::int64_t expected_ms) const;
  bool late(const std::optional<std::int64_t>& expected_ms) const;

  RowList parts_;
  RowList outside_;
  RowList days_;
  QString row_words_;
  int row_shape_ = 0;
  bool alarm_ = false;
  QString key_;
  QString name_;
  QString day_;
  int kind_ = 0;
  int state_ = 0;
};

}  // namespace jambline::screens
