// screens/mark_list_model.h: the standing marks of one panel, merged where they would overlap.
//
// Roles:   mark (hex), number, kind (job::DefectKind), title ("Nib 4"), note ("size 1 · in clear"),
//          spoken ("Nib 4, open, size 1, upper rear of left quarter panel"), xMm, yMm (of its ring,
//          on the panel drawn upright), together (how many the ring holds), shown (false: the ring
//          of an earlier row holds it).
// Merging: by pxPerMm; rings closer than 24 dp become one. 0: nothing is merged.
// Threads: GUI thread. Rows are given by InspectViewModel.
#pragma once

#include <QAbstractListModel>
#include <QtQml/qqmlregistration.h>
#include <vector>

#include "base/ids.h"
#include "job/mark.h"
#include "trade/geometry.h"

namespace jambline::screens {

struct MarkRow {
  MarkId mark;
  int number = 0;
  job::DefectKind defect{};
  int size = 1;
  job::Layer layer{};
  trade::Point_mm at;  // on the panel drawn upright
  QString title;
  QString note;
  QString spoken;
  friend bool operator==(const MarkRow&, const MarkRow&) = default;
};

class MarkListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Part of InspectViewModel")
  Q_PROPERTY(int count READ count NOTIFY countChanged)
 public:
  enum Role {
    Mark = Qt::UserRole + 1,
    Number,
    Kind,
    Title,
    Note,
    Spoken,
    XMm,
    YMm,
    Together,
    Shown,
  };

  using QAbstractListModel::QAbstractListModel;

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

  int count() const { return static_cast<int>(rows_.size()); }
  const std::vector<MarkRow>& rows() const { return rows_; }
  const MarkRow* find(const MarkId& mark) const;
  void show(std::vector<MarkRow> rows);
  void merge_at(double px_per_mm);
  // Indices of the rows that share a ring with this one.
  const std::vector<std::size_t>& ring_of(std::size_t row) const;

 signals:
  void countChanged();

 private:
  // How the ring of one row looks.
  struct Ring {
    std::size_t together{};
    bool shown{};
    double x_mm{};
    double y_mm{};
    friend bool operator==(const Ring&, const Ring&) = default;
  };
  void merge();
  std::vector<Ring> ring_of_rows() const;

  std::vector<MarkRow> rows_;
  std::vector<std::vector<std::size_t>> rings_;
  std::vector<std::size_t> ring_of_row_;
  std::vector<trade::Point_mm> middles_;
  double px_per_mm_ = 0;
};

}  // namespace jambline::screens
