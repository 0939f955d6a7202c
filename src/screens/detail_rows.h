// screens/detail_rows.h: a short list of label and value, both already in words.
//
// Roles: label, value. Threads: GUI.
#pragma once

#include <QAbstractListModel>
#include <QString>
#include <qqmlregistration.h>
#include <utility>
#include <vector>

namespace jambline::screens {

class DetailRows final : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Part of a view model")

 public:
  struct Row {
    QString label;
    QString value;
  };
  enum Role { LabelRole = Qt::UserRole + 1, ValueRole };

  explicit DetailRows(QObject* parent) : QAbstractListModel(parent) {}
  void set(std::vector<Row> rows);

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<Row> rows_;
};

}  // namespace jambline::screens
