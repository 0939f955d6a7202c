// screens/wall_view_model.h: all pictures of the car on the tape, by stage, as rows of a wall.
//
// Shape:   a row is a stage's heading, or up to `columns` pictures side by side. Roles: heading
//          ("" none), cells: for each picture picture (id), file, title, line, poor ("" good),
//          notes (how many), spoken (all of it in a sentence).
// Filter:  a sentence whose words open choices, as in dirt_over_time_view_model.h.
// Cost:    words are made when a row is shown; 5,000 pictures are fine. Threads: GUI.
#pragma once

#include <QAbstractListModel>
#include <QStringList>
#include <optional>
#include <qqmlregistration.h>

#include "screens/picture_store.h"
#include "screens/session.h"

namespace jambline::screens {

class WallViewModel final : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Wall")
  Q_PROPERTY(jambline::screens::PictureStore* store READ store CONSTANT)
  Q_PROPERTY(int columns READ columns WRITE set_columns NOTIFY changed)
  Q_PROPERTY(int pictures READ pictures NOTIFY changed)  // that the filter lets through
  Q_PROPERTY(bool empty READ empty NOTIFY changed)       // the car has none at all
  Q_PROPERTY(QString countWords READ countWords NOTIFY changed)
  Q_PROPERTY(QVariantList question READ question NOTIFY changed)  // parts of a SentenceFilter
  Q_PROPERTY(int place MEMBER place_)  // the row that was on top; kept while the car is the same

 public:
  enum Role { HeadingRole = Qt::UserRole + 1, CellsRole };

  WallViewModel(Session& session, PictureStore& store, QObject* parent = nullptr);

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

  PictureStore* store() const { return &store_; }
  int columns() const { return columns_; }
  void set_columns(int columns);
  int pictures() const { return static_cast<int>(shown_.size()); }
  bool empty() const;
  QString countWords() const;
  QVariantList question() const;

  Q_INVOKABLE QStringList choices(const QString& key) const;
  Q_INVOKABLE int choiceOf(const QString& key) const;
  Q_INVOKABLE void answerWith(const QString& key, int row);
  Q_INVOKABLE void askAll();
  Q_INVOKABLE QStringList keys() const;  // of the pictures that are shown, in their order

 signals:
  void changed();

 private:
  struct Row {
    std::optional<job::Stage> heading;
    std::size_t first = 0;  // of shown_
    std::size_t count = 0;
    friend bool operator==(const Row&, const Row&) = default;
  };
  void refresh();
  void lay_out();
  QVariantMap cell(const folds::PictureView& picture) const;
  std::vector<job::Stage> stages() const;
  std::vector<job::Panel> panels() const;

  Session& session_;
  PictureStore& store_;
  std::shared_ptr<const folds::CarView> car_;  // what shown_ points into
  std::vector<const folds::PictureView*> shown_;
  std::vector<Row> rows_;
  std::optional<job::Stage> stage_;
  std::optional<job::Panel> panel_;
  int columns_ = 3;
  int place_ = 0;
};

}  // namespace jambline::screens
