// screens/open_car_view_model.h: the form of a new car: plate and VIN, color, body, work, panels
// and operations, promise.
//
// Draft:   every change goes to the engine's drafts under "open car" and is read back when this is
//          made; open() forgets it once the car is in the log, drop() keeps it.
// Pages:   Car, Color, Body, Work, Panels, Promise. next() goes on when the page is answered; a
//          choice that answers its whole page goes on by itself (on the phone).
// CSV:     readCsv() reads the file on a thread of its own; the preview is on screen until
//          useCsv() or dropCsv().
// Threads: GUI thread. Errors of open() go to Session::failed; the form stays as it was.
#pragma once

#include <QObject>
#include <QStringList>
#include <qqmlregistration.h>

#include "acts/estimate_csv.h"
#include "screens/open_car_draft.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/vin_scan_view_model.h"

namespace jambline::screens {

class OpenCarViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(int page READ page NOTIFY changed)
  Q_PROPERTY(QString waitsFor READ waitsFor NOTIFY changed)  // why this page cannot go on; or empty
  Q_PROPERTY(QString openWaitsFor READ openWaitsFor NOTIFY changed)  // why the car cannot be opened
  Q_PROPERTY(bool opening READ opening NOTIFY changed)
  Q_PROPERTY(QString plate READ plate WRITE setPlate NOTIFY changed)
  Q_PROPERTY(QString vin READ vin WRITE setVin NOTIFY changed)
  Q_PROPERTY(VinState vinState READ vinState NOTIFY changed)
  Q_PROPERTY(QString vinWords READ vinWords NOTIFY changed)
  // Null where nothing reads barcodes.
  Q_PROPERTY(jambline::screens::VinScanViewModel* scan READ scan CONSTANT)
  Q_PROPERTY(QString colorCode READ colorCode WRITE setColorCode NOTIFY changed)
  Q_PROPERTY(QString colorName READ colorName WRITE setColorName NOTIFY changed)
  Q_PROPERTY(QString summary READ summary NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* colors READ colors CONSTANT)  // key, title, paint, chosen
  Q_PROPERTY(QAbstractItemModel* bodies READ bodies CONSTANT)  // key, title, shape, chosen
  Q_PROPERTY(QAbstractItemModel* drives READ drives CONSTANT)  // key, title, chosen
  Q_PROPERTY(QAbstractItemModel* works READ works CONSTANT)    // key, title, second, chosen
  // Roles: key, title, painted, onCar, place, finish, treatment, substrate, doNotCut.
  Q_PROPERTY(QAbstractItemModel* panels READ panels CONSTANT)
  Q_PROPERTY(QAbstractItemModel* operations READ operations CONSTANT)  // key, title, stage, hours
  Q_PROPERTY(QAbstractItemModel* promises READ promises CONSTANT)      // key, title, chosen
  Q_PROPERTY(QAbstractItemModel* days READ days CONSTANT)              // key, title, chosen
  Q_PROPERTY(QAbstractItemModel* times READ times CONSTANT)            // key, title, chosen
  Q_PROPERTY(int body READ body NOTIFY changed)                        // -1: not chosen
  Q_PROPERTY(QStringList painted READ painted NOTIFY changed)          // keys of the chosen panels
  Q_PROPERTY(int panelCount READ panelCount NOTIFY changed)
  Q_PROPERTY(QString hoursSum READ hoursSum NOTIFY changed)
  Q_PROPERTY(QString promised READ promised NOTIFY changed)
  Q_PROPERTY(bool csvShown READ csvShown NOTIFY csvChanged)
  Q_PROPERTY(QString csvWords READ csvWords NOTIFY csvChanged)
  Q_PROPERTY(int csvCount READ csvCount NOTIFY csvChanged)
  Q_PROPERTY(QAbstractItemModel* csvRows READ csvRows CONSTANT)  // key, text, why, good

 public:
  enum Page { CarPage, ColorPage, BodyPage, WorkPage, PanelsPage, PromisePage };
  Q_ENUM(Page)
  enum class VinState { Empty, Short, Fails, AsTyped, Passes };
  Q_ENUM(VinState)

  explicit OpenCarViewModel(Session& session, QObject* parent = nullptr);

  int page() const { return draft_.page; }
  QString waitsFor() const { return missing(draft_.page); }
  QString openWaitsFor() const;
  bool opening() const { return opening_; }
  QString plate() const { return QString::fromStdString(draft_.plate); }
  void setPlate(const QString& plate);
  QString vin() const { return QString::fromStdString(draft_.vin); }
  void setVin(const QString& vin);
  VinState vinState() const;
  QString vinWords() const;
  VinScanViewModel* scan() const { return scan_; }
  void scan_with(VinScanViewModel& scan);  // before it is shown
  QString colorCode() const { return QString::fromStdString(draft_.color.code); }
  void setColorCode(const QString& code);
  QString colorName() const { return QString::fromStdString(draft_.color.name); }
  void setColorName(const QString& name);
  QString summary() const;
  QAbstractItemModel* colors() { return &colors_; }
  QAbstractItemModel* bodies() { return &bodies_; }
  QAbstractItemModel* drives() { return &drives_; }
  QAbstractItemModel* works() { return &works_; }
  QAbstractItemModel* panels() { return &panels_; }
  QAbstractItemModel* operations() { return &operations_; }
  QAbstractItemModel* promises() { return &promises_; }
  QAbstractItemModel* days() { return &days_; }
  QAbstractItemModel* times() { return &times_; }
  int body() const { return draft_.body ? static_cast<int>(*draft_.body) : -1; }
  QStringList painted() const;
  int panelCount() const { return static_cast<int>(draft_.panels.size()); }
  QString hoursSum() const;
  QString promised() const;
  bool csvShown() const { return csv_shown_; }
  QString csvWords() const { return csv_words_; }
  int csvCount() const { return static_cast<int>(csv_operations_.size()); }
  QAbstractItemModel* csvRows() { return &csv_rows_; }

  Q_INVOKABLE void next();
  Q_INVOKABLE void back();
  Q_INVOKABLE void goTo(int page);
  Q_INVOKABLE void useVinAsTyped();
  Q_INVOKABLE void chooseColor(const QString& key);
  Q_INVOKABLE void chooseBody(const QString& key, bool goOn);
  Q_INVOKABLE void chooseDrive(const QString& key);
  Q_INVOKABLE void chooseWork(const QString& key, bool goOn);
  Q_INVOKABLE void flipPanel(const QString& key);   // painted or not
  Q_INVOKABLE void flipOnCar(const QString& key);   // on the car or loose
  Q_INVOKABLE void nextFinish(const QString& key);  // one further in the list
  Q_INVOKABLE void nextTreatment(const QString& key);
  Q_INVOKABLE void nextSubstrate(const QString& key);
  Q_INVOKABLE void addTenths(int operation, int tenths);  // of an hour
  Q_INVOKABLE void removeOperation(int operation);
  Q_INVOKABLE void usualOperations();  // those of the panels again
  Q_INVOKABLE void choosePromise(const QString& key);
  Q_INVOKABLE void chooseDay(const QString& key);
  Q_INVOKABLE void chooseTime(const QString& key);
  Q_INVOKABLE void readCsv(const QString& path_or_text);
  Q_INVOKABLE void useCsv();
  Q_INVOKABLE void dropCsv();
  Q_INVOKABLE void open();
  Q_INVOKABLE void clear();

 signals:
  void changed();
  void csvChanged();
  void opened(const QString& jobId);

 private:
  QString missing(int page) const;
  job::PanelPlan* planned(const QString& key);
  void keep();  // after a change: the draft to disk, the lists to the screen
  void refresh();
  void refresh_panels();
  void refresh_promise();
  void work_out_operations();
  std::optional<std::int64_t> at(int day, int minute_of_day) const;
  void show_csv(const Result<acts::EstimateRows>& rows);

  Session& session_;
  VinScanViewModel* scan_ = nullptr;
  OpenCarDraft draft_;
  bool opening_ = false;
  RowList colors_, bodies_, drives_, works_, panels_, operations_, promises_, days_, times_,
      csv_rows_;
  bool csv_shown_ = false;
  QString csv_words_;
  std::vector<acts::PlannedOperation> csv_operations_;
};

}  // namespace jambline::screens
