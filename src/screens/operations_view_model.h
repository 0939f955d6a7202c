// screens/operations_view_model.h: the operations of the car on the tape: what was planned and what
// came on top, who did it, what is still missing at its stage, and what was said to a supplement.
//
// Rows:     first-time work, then supplements, redo and comeback, each kind apart with its heading;
//           within a kind by stage. One row may be open; only then what its stage misses is worked
//           out.
// Approval: anybody asks, a manager answers.
// Form:     startAdding() and what is typed stay until it is kept or dropped, also while a picture
//           of it is taken: the first new picture of the car is then attached.
// Threads:  GUI thread. Errors go to Session::failed.
#pragma once

#include <QStringList>
#include <set>

#include "screens/form.h"
#include "screens/row_list.h"

namespace jambline::screens {

class OperationsViewModel final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, heading ("" none above it), title, stage, hours, stands, shape, why, file, isOpen,
  // missing, canFinish, canReopen, canAsk, canAnswer.
  Q_PROPERTY(QAbstractItemModel* rows READ rows CONSTANT)
  Q_PROPERTY(int count READ count NOTIFY changed)
  Q_PROPERTY(QString sumWords READ sumWords NOTIFY changed)  // "3 of 9 done, 4.2 h of 8.0 h"
  Q_PROPERTY(bool writable READ writable NOTIFY changed)
  // The way to them, in the car.
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)
  Q_PROPERTY(int rowShape READ rowShape NOTIFY changed)
  // What is added.
  Q_PROPERTY(bool adding READ adding NOTIFY formChanged)
  Q_PROPERTY(QStringList kinds READ kinds NOTIFY changed)
  Q_PROPERTY(int kind READ kind WRITE setKind NOTIFY formChanged)
  Q_PROPERTY(QAbstractItemModel* templates READ templates CONSTANT)  // key, title, words
  Q_PROPERTY(int templateCount READ templateCount NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* stages READ stages CONSTANT)  // key, title, chosen
  Q_PROPERTY(bool allStages READ allStages WRITE setAllStages NOTIFY formChanged)
  Q_PROPERTY(QString stage READ stage NOTIFY formChanged)  // "" not chosen
  Q_PROPERTY(QString title READ title WRITE setTitle NOTIFY formChanged)
  Q_PROPERTY(QString hours READ hours WRITE setHours NOTIFY formChanged)
  Q_PROPERTY(QString why READ why WRITE setWhy NOTIFY formChanged)
  Q_PROPERTY(QStringList reasons READ reasons NOTIFY formChanged)
  Q_PROPERTY(bool asksApproval READ asksApproval WRITE setAsksApproval NOTIFY formChanged)
  Q_PROPERTY(QString pictureFile READ pictureFile NOTIFY formChanged)  // "" none

 public:
  explicit OperationsViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* rows() { return &rows_; }
  int count() const { return rows_.rowCount(); }
  QString sumWords() const { return sum_words_; }
  bool writable() const;
  QString rowWords() const { return row_words_; }
  int rowShape() const { return row_shape_; }
  bool adding() const { return adding_; }
  QStringList kinds() const;
  int kind() const { return static_cast<int>(draft_.work); }
  void setKind(int kind);
  QAbstractItemModel* templates() { return &templates_; }
  int templateCount() const { return templates_.rowCount(); }
  QAbstractItemModel* stages() { return &stages_; }
  bool allStages() const { return all_stages_; }
  void setAllStages(bool all);
  QString stage() const;
  QString title() const { return QString::fromStdString(draft_.title); }
  void setTitle(const QString& title);
  QString hours() const { return hours_; }
  void setHours(const QString& hours);
  QString why() const { return QString::fromStdString(draft_.why); }
  void setWhy(const QString& why);
  QStringList reasons() const;
  bool asksApproval() const { return draft_.approval == job::Approval::Asked; }
  void setAsksApproval(bool asks);
  QString pictureFile() const;

  Q_INVOKABLE void open(const QString& operation);  // again: shut
  Q_INVOKABLE void finish(const QString& operation);
  Q_INVOKABLE void reopen(const QString& operation);
  Q_INVOKABLE void askApproval(const QString& operation);
  Q_INVOKABLE void answer(const QString& operation, bool given);
  Q_INVOKABLE void startAdding();
  Q_INVOKABLE void stopAdding();
  Q_INVOKABLE void chooseStage(const QString& stage);
  Q_INVOKABLE void addTemplate(const QString& key);
  Q_INVOKABLE void willTakePicture();
  Q_INVOKABLE void dropPicture();
  Q_INVOKABLE void keep();

 signals:
  void changed();
  void formChanged();

 private:
  void refresh();
  void show_templates();
  void show_stages();
  void take_new_picture();
  const folds::OperationView* operation(const QString& key) const;
  QString missing(const folds::OperationView& operation) const;
  QVariantList row_of(const folds::OperationView& operation, const QString& heading) const;
  void count_up(const folds::CarView& car);

  RowList rows_;
  RowList templates_;
  RowList stages_;
  QString sum_words_;
  QString row_words_;
  int row_shape_ = 0;
  QString open_;
  std::optional<JobId> job_;
  acts::PlannedOperation draft_;
  bool stage_chosen_ = false;
  bool all_stages_ = false;
  bool adding_ = false;
  QString hours_;
  std::optional<std::set<PictureId>> pictures_before_;
};

}  // namespace jambline::screens
