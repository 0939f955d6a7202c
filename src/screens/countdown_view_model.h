// screens/countdown_view_model.h: what counts down somewhere in the shop, for every screen: the
// margin line shows the most urgent, in its last minute a row, at its end knocks and a row that
// stays until it is logged.
//
// Sources: add() takes a function that gives what counts now; booths are counted from the start.
//          Each has its own key for its whole life, and its name in all its words: two booths are
//          never mixed up.
// Sound:   when left_s falls to knock_s, again one and three minutes later if it is still there.
//          Only what was seen to count before knocks: a start with a time long over is silent.
// Times:   by folds/booth_state.h and Session::now(): a restart, suspend or a changed clock never
//          shortens them.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <functional>
#include <map>
#include <qqmlregistration.h>
#include <vector>

#include "device/knocks.h"
#include "screens/session.h"
#include "screens/state_kind.h"

namespace jambline::screens {

struct Countdown {
  QString key;
  QString booth;      // the booth that it leads to; "" none
  QString margin;     // "Booth 2 clears 10:49"
  QString row;        // "Booth 2: 0:42. Stay out."
  double left_s{};    // 0: over
  double row_s = 60;  // from here on it has the row
  double knock_s = 0;
  StateKind shape = StateKind::Waits;
};

class CountdownViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QString marginWords READ marginWords NOTIFY changed)  // "" nothing counts
  Q_PROPERTY(bool urgent READ urgent NOTIFY changed)               // in its last minute, or over
  Q_PROPERTY(bool rowShown READ rowShown NOTIFY changed)
  Q_PROPERTY(bool rowOver READ rowOver NOTIFY changed)  // it stays; an undo may stand over it
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)
  Q_PROPERTY(QString rowBooth READ rowBooth NOTIFY changed)
  Q_PROPERTY(int rowShape READ rowShape NOTIFY changed)

 public:
  using Source = std::function<std::vector<Countdown>(const Session&)>;

  // The knocks outlive this.
  CountdownViewModel(Session& session, device::Knocks& knocks, QObject* parent = nullptr);

  void add(Source source);

  QString marginWords() const { return counts_.empty() ? QString() : counts_.front().margin; }
  bool urgent() const { return rowShown(); }
  bool rowShown() const { return row_ != nullptr; }
  bool rowOver() const { return row_ && row_->left_s <= 0; }
  QString rowWords() const { return row_ ? row_->row : QString(); }
  QString rowBooth() const { return row_ ? row_->booth : QString(); }
  int rowShape() const { return row_ ? shape_of(row_->shape) : 0; }

 signals:
  void changed();

 private:
  struct Heard {
    bool counted = false;          // it was seen to count
    std::uint64_t knocked_ms = 0;  // since boot
    int knocks = 0;
  };
  void refresh();
  bool knock_for(const Countdown& one);

  Session& session_;
  device::Knocks& knocks_;
  std::vector<Source> sources_;
  std::vector<Countdown> counts_;  // the most urgent first
  const Countdown* row_ = nullptr;
  std::map<QString, Heard> heard_;
};

}  // namespace jambline::screens
