// screens/inspect_view_model.h: looking over a car: its panels, one of them large, its marks and
// verdict, and what a finger on it does.
//
// Units:   xMm and yMm are millimetres on the panel as it is drawn upright (front at the top for
//          hood and roof, else as one stands before it), y up; origin at the lower left of its box.
// Acts:    each posts one command of acts/commands.h; nothing is shown as done before the snapshot
//          has it. What is not possible gives `refusal` (words, gone by itself) and refused(), and
//          writes nothing. wentOn(panel) follows when the entries are on disk; "" is the map.
// Threads: GUI thread.
#pragma once

#include <QList>
#include <QObject>
#include <QRectF>
#include <QStringList>
#include <QTimer>
#include <QtQml/qqmlregistration.h>
#include <map>
#include <optional>
#include <set>

#include "job/body_shape.h"
#include "screens/film_words.h"
#include "screens/mark_rows.h"
#include "screens/panel_films.h"
#include "screens/panel_rows.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class InspectViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program with the session")
  // the car
  Q_PROPERTY(bool hasCar READ hasCar NOTIFY changed)
  Q_PROPERTY(bool readOnly READ readOnly NOTIFY changed)
  Q_PROPERTY(QString carColor READ carColor NOTIFY changed)    // "#RRGGBB"
  Q_PROPERTY(QAbstractItemModel* panels READ panels CONSTANT)  // panel_rows.h
  Q_PROPERTY(int panelCount READ panelCount NOTIFY changed)
  Q_PROPERTY(int cleanCount READ cleanCount NOTIFY changed)
  Q_PROPERTY(int markCount READ markCount NOTIFY changed)
  Q_PROPERTY(int notYetCount READ notYetCount NOTIFY changed)
  Q_PROPERTY(int otherCount READ otherCount NOTIFY changed)  // redo, back to body, ask, disputed
  Q_PROPERTY(int noCutCount READ noCutCount NOTIFY changed)  // panels that nobody cuts
  Q_PROPERTY(QString cleanWords READ cleanWords NOTIFY changed)
  Q_PROPERTY(QString markWords READ markWords NOTIFY changed)
  Q_PROPERTY(QString lookedAtWords READ lookedAtWords NOTIFY changed)
  Q_PROPERTY(QString nextPanel READ nextPanel NOTIFY changed)  // from the front on; "" all done
  Q_PROPERTY(QString nextWords READ nextWords NOTIFY changed)
  // All marks of the car in walking order: mark (hex), panel, title, note, place, spoken.
  Q_PROPERTY(QAbstractItemModel* carMarks READ carMarks CONSTANT)
  // the panel
  Q_PROPERTY(QString panel READ panel NOTIFY panelChanged)  // the entry's word; "" none
  Q_PROPERTY(QString panelTitle READ panelTitle NOTIFY changed)
  Q_PROPERTY(QString panelFacts READ panelFacts NOTIFY changed)
  Q_PROPERTY(QString panelMarkWords READ panelMarkWords NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* marks READ marks CONSTANT)  // mark_rows.h
  Q_PROPERTY(int panelMarkCount READ panelMarkCount NOTIFY changed)
  Q_PROPERTY(int look READ look NOTIFY changed)
  Q_PROPERTY(int dirt READ dirt NOTIFY changed)
  Q_PROPERTY(QString dirtWords READ dirtWords NOTIFY changed)
  Q_PROPERTY(QString doNotCutWords READ doNotCutWords NOTIFY changed)  // "" may be cut
  Q_PROPERTY(int filmShape READ filmShape NOTIFY changed)              // ShapeKind of its word
  Q_PROPERTY(QString filmWords READ filmWords NOTIFY changed)          // "One light pass"
  Q_PROPERTY(bool disputed READ disputed NOTIFY changed)
  Q_PROPERTY(bool loose READ loose NOTIFY changed)
  Q_PROPERTY(QString rackWords READ rackWords NOTIFY changed)
  Q_PROPERTY(int rackCount READ rackCount NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(double pxPerMm READ pxPerMm WRITE setPxPerMm NOTIFY scaleChanged)
  Q_PROPERTY(double barMm READ barMm NOTIFY scaleChanged)
  Q_PROPERTY(QString barWords READ barWords NOTIFY scaleChanged)
  // the hand
  Q_PROPERTY(int kind READ kind WRITE setKind NOTIFY kindChanged)  // sticky
  Q_PROPERTY(QList<int> kinds READ kinds CONSTANT)                 // drawn ones, usual first
  Q_PROPERTY(QList<int> allKinds READ allKinds CONSTANT)
  Q_PROPERTY(QString chosenMark READ chosenMark NOTIFY chosenChanged)  // "" none
  Q_PROPERTY(int chosenRow READ chosenRow NOTIFY chosenChanged)        // in marks; -1 none
  Q_PROPERTY(QString chosenTitle READ chosenTitle NOTIFY chosenChanged)
  Q_PROPERTY(QString chosenNote READ chosenNote NOTIFY chosenChanged)
  Q_PROPERTY(int chosenKind READ chosenKind NOTIFY chosenChanged)
  Q_PROPERTY(int chosenSize READ chosenSize NOTIFY chosenChanged)
  Q_PROPERTY(int chosenLayer READ chosenLayer NOTIFY chosenChanged)
  Q_PROPERTY(int chosenLook READ chosenLook NOTIFY chosenChanged)  // -1: not said
  // What the particle looks like is asked on the first marks of a car: one tap repeats the last
  // answer (lookAgain), and "" has none yet. Not asked: lookAsked is false.
  Q_PROPERTY(bool lookAsked READ lookAsked NOTIFY chosenChanged)
  Q_PROPERTY(QString lookAgain READ lookAgain NOTIFY chosenChanged)
  Q_PROPERTY(QString refusal READ refusal NOTIFY refusalChanged)

 public:
  explicit InspectViewModel(Session& session, QObject* parent = nullptr);

  const folds::CarView* car() const { return session_.car(); }
  const job::CarPattern* pattern() const;
  const job::PatternPanel* drawing() const;  // of the shown panel; null when none
  std::optional<job::Panel> shown_panel() const { return panel_; }

  bool hasCar() const { return car() != nullptr; }
  bool readOnly() const;
  QString carColor() const;
  RowModel<PanelRow>* panels() { return &panels_; }
  int panelCount() const { return panels_.count(); }
  int cleanCount() const;
  int markCount() const;
  int notYetCount() const;
  int otherCount() const;
  int noCutCount() const;
  QString cleanWords() const;
  QString markWords() const;
  QString lookedAtWords() const;
  QString nextPanel() const;
  QString nextWords() const;
  QAbstractItemModel* carMarks() { return &car_marks_; }

  QString panel() const;
  QString panelTitle() const;
  QString panelFacts() const;
  QString panelMarkWords() const;
  RowModel<MarkRow>* marks() { return &marks_; }
  int panelMarkCount() const { return marks_.count(); }
  int look() const;
  int dirt() const;
  QString dirtWords() const;
  QString doNotCutWords() const;
  int filmShape() const;
  QString filmWords() const;
  bool disputed() const;
  bool loose() const;
  QString rackWords() const;
  int rackCount() const;
  QString mainText() const;
  QString mainSecond() const;
  double pxPerMm() const { return px_per_mm_; }
  void setPxPerMm(double px_per_mm);
  double barMm() const;
  QString barWords() const;

  int kind() const { return static_cast<int>(kind_); }
  void setKind(int kind);
  QList<int> kinds() const;
  QList<int> allKinds() const;
  QString chosenMark() const;
  int chosenRow() const { return marks_.row_of(chosenMark()); }
  QString chosenTitle() const;
  QString chosenNote() const;
  int chosenKind() const;
  int chosenSize() const;
  int chosenLayer() const;
  int chosenLook() const;
  bool lookAsked() const;
  QString lookAgain() const;
  QString refusal() const { return refusal_; }

  Q_INVOKABLE void openPanel(const QString& panel);   // "": none
  Q_INVOKABLE QString panelAt(int row) const;         // of panels; "" when there is no such row
  Q_INVOKABLE int rowOf(const QString& panel) const;  // in panels; -1 none
  Q_INVOKABLE QString besidePanel(int steps) const;   // in walking order, round the car
  Q_INVOKABLE QString kindWords(int kind) const;
  Q_INVOKABLE QString layerWords(int layer) const;
  Q_INVOKABLE QString lookWords(int look) const;  // six of them; "" past the last
  Q_INVOKABLE QString dirtClassWords(int dirt) const;
  Q_INVOKABLE QString placeWords(double xMm, double yMm) const;  // "upper rear"
  Q_INVOKABLE QString markNear(double xMm, double yMm) const;    // within 36 dp, or ""
  Q_INVOKABLE bool ringHoldsMany(const QString& mark) const;
  Q_INVOKABLE QRectF ringBox(const QString& mark) const;  // mm, y up; what a merged ring holds
  Q_INVOKABLE QStringList disputeWords() const;           // "Clean · Mara, 10:31"
  Q_INVOKABLE QStringList rackNames() const;

  Q_INVOKABLE void choose(const QString& mark);
  Q_INVOKABLE void placeMark(double xMm, double yMm);
  Q_INVOKABLE void moveMark(const QString& mark, double xMm, double yMm);
  Q_INVOKABLE void describeMark(int kind, int size, int layer);  // the chosen one
  Q_INVOKABLE void sayLook(int look);                            // of the chosen one
  Q_INVOKABLE void sayLookAgain();
  Q_INVOKABLE void withdrawMark();  // the chosen one
  Q_INVOKABLE void sayDirt(int dirt);
  Q_INVOKABLE void mainAct();
  Q_INVOKABLE void sayClean();
  Q_INVOKABLE void sayToCorrect();
  Q_INVOKABLE void sayRedo();
  Q_INVOKABLE void sayBackToBody();
  Q_INVOKABLE void sayAsk();
  Q_INVOKABLE void settle(int which);  // a row of disputeWords()
  Q_INVOKABLE void chooseRack(int which);

 signals:
  void changed();
  void panelChanged();
  void scaleChanged();
  void kindChanged();
  void chosenChanged();
  void refusalChanged();
  void refused();
  void marked(const QString& title);  // the snapshot shows a mark that was placed here
  void wentOn(const QString& panel);

 private:
  const folds::PanelView* view() const;
  trade::Placement upright_place() const;
  std::optional<job::Panel> next_after(std::optional<job::Panel> panel) const;
  std::optional<RackId> rack() const;
  std::optional<MarkId> mark_id(const QString& hex) const;
  bool may_write();
  bool on_panel(trade::Point_mm shown);
  void refuse(const QString& words);
  void give(job::Verdict verdict, bool go_on);
  void refresh();
  void take_lessons();
  bool take_car();  // whether any of its panels is not as it was
  FilmSaid film_of(const folds::PanelView& panel) const;
  bool no_cut(const folds::PanelView& panel) const;
  void show_panels();
  void show_marks();
  void show_car_marks();
  MarkRow mark_row(const folds::MarkView& mark, const job::PatternPanel& drawn) const;
  const MarkRow* chosen_row() const;

  Session& session_;
  RowModel<PanelRow> panels_;
  RowModel<MarkRow> marks_;
  RowList car_marks_;
  mutable PanelFilms films_;  // what was worked out is kept
  std::map<job::Panel, std::vector<QVariantList>> car_mark_rows_;
  const void* lessons_seen_ = nullptr;
  std::optional<job::Panel> panel_;
  std::optional<JobId> job_;
  job::DefectKind kind_ = job::DefectKind::Nib;
  std::optional<job::ParticleLook> last_look_;
  std::optional<MarkId> chosen_;
  std::set<MarkId> known_;  // marks that were shown before
  int placing_ = 0;         // posted, not yet seen in a snapshot
  std::optional<RackId> rack_;
  double px_per_mm_ = 0;
  QString refusal_;
  QTimer refusal_over_;
};

}  // namespace jambline::screens
