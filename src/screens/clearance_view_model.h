// screens/clearance_view_model.h: one booth while it is sprayed in and while its air is left to
// clear.
//
// Shows:   who sprays and for how long; from gun down on the time that is left, what it rests on,
//          why nothing counts. Folds decide (folds/booth_state.h): the screen follows them, over a
//          restart, a suspend and a changed clock.
// Acts:    gun down, by whoever holds the gun, on the device that started it; for another, or on
//          another device, only by a second act. Fan stopped, bake
//          and an opened door start the whole time again, fresh air with shut doors goes on;
//          clearance over is logged only when the time is over.
// Never:   a percentage of a smoke test, or a word that the booth is without danger.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <optional>
#include <qqmlregistration.h>
#include <set>

#include "device/knocks.h"
#include "screens/booth_air_words.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class ClearanceViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QString booth READ booth NOTIFY changed)  // its key; "" none is open
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(QString note READ note NOTIFY changed)  // "crossdraft · 3,460 ft³"
  Q_PROPERTY(State state READ state NOTIFY changed)
  // While it is sprayed in. Roles: key (the spray), person, words ("Ivo, K 41-206"), digits,
  // mine.
  Q_PROPERTY(QAbstractItemModel* sprayers READ sprayers CONSTANT)
  Q_PROPERTY(bool mine READ mine NOTIFY changed)  // the chosen person holds a gun in it, here
  Q_PROPERTY(QString digits READ digits NOTIFY changed)
  Q_PROPERTY(QString digitsUnit READ digitsUnit NOTIFY changed)      // "min" from 100 minutes on
  Q_PROPERTY(QString spokenDigits READ spokenDigits NOTIFY changed)  // changes by the minute
  Q_PROPERTY(bool lastSeconds READ lastSeconds NOTIFY changed)       // the last ten
  Q_PROPERTY(bool turned READ turned NOTIFY changed)                 // of them every other one
  // While it clears.
  Q_PROPERTY(int shape READ shape NOTIFY changed)  // StateKind
  Q_PROPERTY(QString headWords READ headWords NOTIFY changed)
  Q_PROPERTY(QString whyWords READ whyWords NOTIFY changed)
  Q_PROPERTY(QString clearsAt READ clearsAt NOTIFY changed)  // "10:49"; "" nothing counts
  Q_PROPERTY(double gone READ gone NOTIFY changed)           // 0 to 1 of the time
  Q_PROPERTY(QString restsWords READ restsWords NOTIFY changed)
  Q_PROPERTY(bool hasSum READ hasSum NOTIFY changed)
  Q_PROPERTY(QString restartWords READ restartWords NOTIFY changed)  // "" it ran in one piece
  Q_PROPERTY(QString soundWords READ soundWords NOTIFY changed)
  Q_PROPERTY(bool wasteShown READ wasteShown NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mayAct READ mayAct NOTIFY changed)  // somebody is chosen
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)

 public:
  enum class State { Nothing, Spraying, Counting, NotCounting, NoTime, TimeOver };
  Q_ENUM(State)

  // The knocks outlive this.
  ClearanceViewModel(Session& session, const device::Knocks& knocks, QObject* parent = nullptr);

  QString booth() const;
  QString title() const;
  QString note() const;
  State state() const { return static_cast<State>(said_.state.word); }
  QAbstractItemModel* sprayers() { return &sprayers_; }
  bool mine() const { return mine_; }
  QString digits() const;
  QString digitsUnit() const;
  QString spokenDigits() const;
  bool lastSeconds() const { return state() == State::Counting && said_.state.left_s <= 10; }
  bool turned() const;
  int shape() const { return shape_of(said_.shape); }
  QString headWords() const { return said_.word; }
  QString whyWords() const;
  QString clearsAt() const;
  double gone() const;
  QString restsWords() const { return rests_; }
  bool hasSum() const { return said_.state.needed.has_value(); }
  QString restartWords() const;
  QString soundWords() const { return sound_; }
  bool wasteShown() const;
  QString mainSecond() const;
  bool mayAct() const { return session_.hasPerson(); }
  SumRows* sum() { return &sum_; }

  Q_INVOKABLE void open(const QString& booth);
  Q_INVOKABLE void gunDown();
  Q_INVOKABLE void gunDownOf(const QString& spray);
  Q_INVOKABLE void freshAir() { say(job::BoothWord::FreshAirDoorsShut); }
  Q_INVOKABLE void fanStopped() { say(job::BoothWord::FanStopped); }
  Q_INVOKABLE void switchedToBake() { say(job::BoothWord::Bake); }
  Q_INVOKABLE void doorOpened() { say(job::BoothWord::DoorOpened); }
  Q_INVOKABLE void logOver();
  Q_INVOKABLE void wasteSeen();
  Q_INVOKABLE void openSum();

 signals:
  void changed();
  void sumOpened();
  void logged();  // as over; nothing stands in it any more

 private:
  void refresh();
  void say(job::BoothWord what);
  const folds::BoothView* view() const;

  Session& session_;
  const device::Knocks& knocks_;
  RowList sprayers_;
  SumRows sum_;
  BoothId booth_;
  BoothSaid said_;
  bool mine_ = false;
  QString rests_;
  QString sound_;
  std::set<Hash> waste_seen_;  // by the gun down that it belongs to
};

}  // namespace jambline::screens
