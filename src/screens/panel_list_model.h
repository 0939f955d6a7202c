// screens/panel_list_model.h: the planned panels of the car on the tape, in walking order.
//
// Roles:   panel (the entry's word), title ("Left fender"), shortTitle ("Fender"), look
//          (PanelLook), marks, onCar, aside ("rack 2", "not yet", "4 marks"), isNext, isHere,
//          spoken (for the reader), xMm, yMm, roomMm (where a word fits on the pattern), and
//          boxXMm, boxYMm, boxWidthMm, boxHeightMm (low corner; y up), all in pattern millimetres.
// Threads: GUI thread. Rows are given by InspectViewModel.
#pragma once

#include <QAbstractListModel>
#include <QtQml/qqmlregistration.h>
#include <vector>

#include "job/panel.h"
#include "trade/geometry.h"

namespace jambline::screens {

namespace PanelLook {
Q_NAMESPACE
QML_ELEMENT
enum class Value { NotYet, Clean, ToCorrect, Redo, BackToBody, Ask, Disputed };
Q_ENUM_NS(Value)
}  // namespace PanelLook

struct PanelRow {
  job::Panel panel{};
  QString title;
  QString short_title;
  PanelLook::Value look{};
  int marks = 0;
  bool on_car = true;
  QString aside;
  bool next = false;
  bool here = false;
  QString spoken;
  trade::Point_mm spot;
  double room_mm = 0;
  trade::Box_mm box;
  friend bool operator==(const PanelRow&, const PanelRow&) = default;
};

class PanelListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Part of InspectViewModel")
  Q_PROPERTY(int count READ count NOTIFY countChanged)
 public:
  enum Role {
    PanelWord = Qt::UserRole + 1,
    Title,
    ShortTitle,
    Look,
    Marks,
    OnCar,
    Aside,
    IsNext,
    IsHere,
    Spoken,
    XMm,
    YMm,
    RoomMm,
    BoxXMm,
    BoxYMm,
    BoxWidthMm,
    BoxHeightMm,
  };

  using QAbstractListModel::QAbstractListModel;

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

  int count() const { return static_cast<int>(rows_.size()); }
  const std::vector<PanelRow>& rows() const { return rows_; }
  const PanelRow* find(job::Panel panel) const;
  void show(std::vector<PanelRow> rows);

  Q_INVOKABLE QString panelAt(int row) const;  // "" when there is no such row
  Q_INVOKABLE int rowOf(const QString& panel) const;

 signals:
  void countChanged();

 private:
  std::vector<PanelRow> rows_;
};

QString word_of_panel(job::Panel panel);
std::optional<job::Panel> panel_of_word(const QString& word);
QString short_words(job::Panel panel);  // "Fender", without the side

}  // namespace jambline::screens
