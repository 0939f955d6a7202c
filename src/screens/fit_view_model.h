// screens/fit_view_model.h: the gaps of one panel, point by point, and how it is moved at its
// fasteners.
//
// Panels:  those of the car that hang at slots, and any that was measured. None chosen: the list of
//          them, in the order in which they are set, from what is welded to the bumper covers.
// Typing:  type(value) takes the digits of the pad, tenths of a millimetre, and goes on to the next
//          point by itself. A number that no gap has is refused in words; the others stand. What
//          was typed and not kept stays while the program runs. keep() writes all of the panel.
// Wanted:  after hanging, what the trial fit was set to; else what was typed for the edge,
// else 4.0. Said:    worked out from folds/fit_of_panel.h, words from screens/fit_words.h;
// openSum() opens it. Places:  xMm, yMm on the panel as it is drawn upright, y up. Points are
// numbered as they are kept. Threads: GUI thread. Errors go to Session::failed, those of a number
// to `wrong`.
#pragma once

#include <QObject>
#include <QPointF>
#include <QStringList>
#include <map>
#include <optional>
#include <qqmlregistration.h>

#include "folds/shots_of_car.h"
#include "screens/fit_words.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class FitViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // the panels; Roles: key (the entry's word), title, words, shape.
  Q_PROPERTY(QAbstractItemModel* panels READ panels CONSTANT)
  Q_PROPERTY(int panelCount READ panelCount NOTIFY changed)
  Q_PROPERTY(QString panel READ panel NOTIFY changed)  // "" the list
  Q_PROPERTY(QString panelTitle READ panelTitle NOTIFY changed)
  Q_PROPERTY(QString title READ title NOTIFY changed)  // "Hood to left fender"
  Q_PROPERTY(QString datumWords READ datumWords NOTIFY changed)
  Q_PROPERTY(QStringList rounds READ rounds CONSTANT)
  Q_PROPERTY(int round READ round NOTIFY changed)
  // the chosen panel's edges; Roles: key (number), title, words, chosen.
  Q_PROPERTY(QAbstractItemModel* edges READ edges CONSTANT)
  Q_PROPERTY(QString edgeFrom READ edgeFrom NOTIFY changed)
  Q_PROPERTY(QString edgeTo READ edgeTo NOTIFY changed)
  // Roles: key (place in the list), number, xMm, yMm, words, spoken, chosen, ofEdge, off, known.
  Q_PROPERTY(QAbstractItemModel* spots READ spots CONSTANT)
  // of the chosen edge; Roles: key, number, before, predicted, measured (mm; -1 none), the words of
  // each, low, high (mm wanted), off (what stands last is outside of that).
  Q_PROPERTY(QAbstractItemModel* bars READ bars CONSTANT)
  Q_PROPERTY(int barCount READ barCount NOTIFY changed)
  Q_PROPERTY(double barsTop READ barsTop NOTIFY changed)  // mm
  // What each of the three is called; "" there is none.
  Q_PROPERTY(QString beforeTitle READ beforeTitle NOTIFY changed)
  Q_PROPERTY(QString predictedTitle READ predictedTitle NOTIFY changed)
  Q_PROPERTY(QString measuredTitle READ measuredTitle NOTIFY changed)
  Q_PROPERTY(QString barsWanted READ barsWanted NOTIFY changed)    // of what is shown
  Q_PROPERTY(QString wantedWords READ wantedWords NOTIFY changed)  // of what is measured next
  // the answer
  Q_PROPERTY(int answerShape READ answerShape NOTIFY changed)
  Q_PROPERTY(QString answerWord READ answerWord NOTIFY changed)
  Q_PROPERTY(QString answerMore READ answerMore NOTIFY changed)
  Q_PROPERTY(QString answerNote READ answerNote NOTIFY changed)
  // Roles: key (letter), title, words, atEnd, xMm, yMm, dxMm, dyMm (of the drawing).
  Q_PROPERTY(QAbstractItemModel* moves READ moves CONSTANT)
  Q_PROPERTY(int moveCount READ moveCount NOTIFY changed)
  // A move lifts or carries the panel: said before it.
  Q_PROPERTY(bool isHeavy READ isHeavy NOTIFY changed)
  Q_PROPERTY(bool known READ known NOTIFY changed)  // there is a sum to open
  Q_PROPERTY(bool flushKnown READ flushKnown NOTIFY changed)
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)
  // moves typed by hand; Roles: key ("fastener/axis"), title, label, text.
  Q_PROPERTY(QAbstractItemModel* moveFields READ moveFields CONSTANT)
  // beside it
  Q_PROPERTY(bool latchAsked READ latchAsked NOTIFY changed)
  Q_PROPERTY(QString marksWords READ marksWords NOTIFY changed)  // of the witness marks; "" none
  Q_PROPERTY(int marksShape READ marksShape NOTIFY changed)
  Q_PROPERTY(QString marksStage READ marksStage CONSTANT)
  Q_PROPERTY(QString marksKey READ marksKey NOTIFY changed)
  Q_PROPERTY(QString shutWords READ shutWords NOTIFY changed)  // why nothing can be written; or ""
  // typing
  Q_PROPERTY(Kind kind READ kind NOTIFY changed)
  Q_PROPERTY(QString typedTitle READ typedTitle NOTIFY changed)
  Q_PROPERTY(QString typedNote READ typedNote NOTIFY changed)
  Q_PROPERTY(QString typedSoFar READ typedSoFar NOTIFY changed)
  Q_PROPERTY(int typedCount READ typedCount NOTIFY changed)  // gaps that are typed and not kept
  Q_PROPERTY(bool typedHere READ typedHere NOTIFY changed)
  Q_PROPERTY(int digits READ digits NOTIFY changed)
  Q_PROPERTY(QString unitKey READ unitKey NOTIFY changed)
  Q_PROPERTY(QString wrong READ wrong NOTIFY changed)
  // Digits on the pad that did not go on by themselves; -1 none. The main act takes them first.
  Q_PROPERTY(int pending READ pending WRITE setPending NOTIFY changed)
  // the main act
  Q_PROPERTY(Act mainAct READ mainAct NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  Q_PROPERTY(bool asksWho READ asksWho NOTIFY changed)  // nobody is chosen
  Q_PROPERTY(QString keepText READ keepText NOTIFY changed)
  Q_PROPERTY(bool keepWaits READ keepWaits NOTIFY changed)
  // the row of the car
  Q_PROPERTY(bool ofInterest READ ofInterest NOTIFY changed)
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)
  Q_PROPERTY(int rowShape READ rowShape NOTIFY changed)

 public:
  enum class Kind { Gap, Flush, Wanted };
  Q_ENUM(Kind)
  enum class Act { None, OpenPanel, Measure, MoveAsSaid, CheckLatch, NextPanel };
  Q_ENUM(Act)

  explicit FitViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* panels() { return &panels_; }
  int panelCount() const { return panels_.rowCount(); }
  QString panel() const;
  QString panelTitle() const;
  QString title() const;
  QString datumWords() const;
  QStringList rounds() const;
  int round() const { return static_cast<int>(round_); }
  QAbstractItemModel* edges() { return &edges_; }
  QString edgeFrom() const;
  QString edgeTo() const;
  QAbstractItemModel* spots() { return &spots_; }
  QAbstractItemModel* bars() { return &bars_; }
  int barCount() const { return bars_.rowCount(); }
  double barsTop() const { return bars_top_mm_; }
  QString beforeTitle() const { return before_title_; }
  QString predictedTitle() const { return predicted_title_; }
  QString measuredTitle() const { return measured_title_; }
  QString barsWanted() const { return bars_wanted_; }
  QString wantedWords() const;
  int answerShape() const { return shape_of(said_.state); }
  QString answerWord() const { return said_.word; }
  QString answerMore() const { return said_.more; }
  QString answerNote() const;
  QAbstractItemModel* moves() { return &moves_; }
  int moveCount() const { return moves_.rowCount(); }
  bool isHeavy() const;
  bool known() const { return of_ && of_->gaps && *of_->gaps; }
  bool flushKnown() const { return of_ && of_->flush && *of_->flush; }
  SumRows* sum() { return &sum_; }
  QAbstractItemModel* moveFields() { return &move_fields_; }
  bool latchAsked() const;
  QString marksWords() const;
  int marksShape() const;
  QString marksStage() const;
  QString marksKey() const;
  QString shutWords() const;
  Kind kind() const { return kind_; }
  QString typedTitle() const;
  QString typedNote() const;
  QString typedSoFar() const;
  int typedCount() const;
  bool typedHere() const;
  int digits() const { return kind_ != Kind::Flush && thick_ ? 3 : 2; }
  QString unitKey() const;
  QString wrong() const { return wrong_; }
  int pending() const { return pending_; }
  void setPending(int pending);
  Act mainAct() const;
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  bool asksWho() const { return !session_.hasPerson(); }
  QString keepText() const;
  bool keepWaits() const;
  bool ofInterest() const;
  QString rowWords() const;
  int rowShape() const;

  const FitSaid& said() const { return said_; }
  const std::optional<folds::FitOfPanel>& of_panel() const { return of_; }
  const std::vector<job::FitEdge>& edges_of() const;
  int edge() const { return edge_; }
  // As drawn: upright, in mm.
  std::vector<trade::Polyline> drawn_edges() const;
  Q_INVOKABLE QPointF insideOf(double xMm, double yMm, double marginMm) const;  // the panel's box
  struct Arrow {
    trade::Point_mm at;
    double dx_mm = 0;
    double dy_mm = 0;
  };
  const std::vector<Arrow>& arrows() const { return arrows_; }

  Q_INVOKABLE void openPanel(const QString& panel);  // "" the list of them
  Q_INVOKABLE void chooseRound(int round);
  Q_INVOKABLE void chooseEdge(int edge);
  Q_INVOKABLE void chooseSpot(int spot);
  // The nearest point within reach, else a new one on the edge; false: neither is near.
  Q_INVOKABLE bool tap(double xMm, double yMm, double reachMm);
  Q_INVOKABLE void begin(int kind);
  Q_INVOKABLE void type(int value);
  Q_INVOKABLE void pressUnit();
  Q_INVOKABLE void leaveOut();
  Q_INVOKABLE void keep();  // takes what is pending first
  Q_INVOKABLE void moveAsSaid();
  Q_INVOKABLE void sayMove(const QString& key, const QString& text);
  Q_INVOKABLE bool keepMoves();
  Q_INVOKABLE void checkLatch();
  Q_INVOKABLE void openSum(bool flush);
  Q_INVOKABLE QString nextPanel() const;  // that is to be measured or moved; "" none

 signals:
  void changed();
  void taken();      // a number of the pad stands at its point
  void kept();       // the gaps are on disk
  void moved();      // the fasteners are on disk: it is measured again
  void movesKept();  // those that were typed
  void sumOpened();

 private:
  struct Spot {
    int edge = 0;
    job::FitPlace place;
    double along_mm = 0;
    std::optional<std::size_t> measured;  // point of the last measuring
    std::optional<double> gap_mm;         // typed
    std::optional<double> flush_mm;
  };
  struct Draft {
    std::optional<FitId> of;
    std::vector<Spot> spots;
  };
  struct Known {  // worked out once for a panel as long as nothing of it changes
    std::optional<FitId> fit;
    std::vector<Hash> moves;
    std::optional<folds::FitOfPanel> of;
    FitSaid said;
  };

  const folds::CarView* car() const { return session_.car(); }
  bool writable() const { return shutWords().isEmpty(); }
  const folds::FitView* last() const;
  const folds::FitView* before_move() const;  // measured before the move that the last one is after
  std::vector<job::Panel> panels_to_set() const;
  const Known& known_of(job::Panel panel) const;
  job::FitRound guessed_round() const;
  bool is_set(job::Panel panel) const;
  Draft& draft();
  std::vector<Spot> laid_out(const folds::FitView* fit) const;
  void carry_over(const Draft& from, std::vector<Spot>& to) const;
  Spot* chosen();  // null: no point is
  const Spot* chosen() const;
  int number_of(int spot) const { return spot + 1; }
  void go_on();
  double wanted_mm(const Spot& spot) const;
  double wanted_flush_mm(const Spot& spot) const;
  QString spot_words(int spot) const;
  void tell_wrong(const QString& words);
  void forget();
  void refresh();
  void show_panels();
  void show_edges();
  void show_bars();
  void show_moves();
  void show_move_fields();
  trade::Point_mm drawn(trade::Point_mm flat) const;
  std::optional<folds::WantedShot> marks_shot() const;
  void post_moves(std::vector<job::FastenerMove> moves, bool typed);

  Session& session_;
  SumRows sum_;
  RowList panels_;
  RowList edges_;
  RowList spots_;
  RowList bars_;
  RowList moves_;
  RowList move_fields_;
  std::optional<JobId> job_;
  std::optional<job::Panel> panel_;
  std::map<job::Panel, Draft> drafts_;
  mutable std::map<job::Panel, Known> known_;
  std::map<std::pair<job::Panel, int>, double> wanted_;  // typed for an edge
  std::map<QString, QString> typed_moves_;
  job::FitRound round_{};
  int edge_ = 0;
  int spot_ = -1;
  Kind kind_ = Kind::Gap;
  bool thick_ = false;
  bool low_ = false;
  int pending_ = -1;
  QString wrong_;
  double bars_top_mm_ = 6;
  QString bars_wanted_;
  QString before_title_;
  QString predicted_title_;
  QString measured_title_;
  std::vector<Arrow> arrows_;
  std::optional<folds::FitOfPanel> of_;
  FitSaid said_;
};

}  // namespace jambline::screens
