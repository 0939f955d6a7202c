// screens/row_list.h: rows for a view that are nothing but named values, told apart by the first
// one.
//
// Shape:   every row has one value a role, in the order of the role names; the first is its key, a
//          text or number unique in the list.
// Threads: GUI thread.
#pragma once

#include <QByteArrayList>
#include <QVariantList>

#include "screens/row_model.h"

namespace jambline::screens {

struct NamedValues {
  QString key;
  QVariantList values;
  friend bool operator==(const NamedValues&, const NamedValues&) = default;
};

class RowList final : public RowModel<NamedValues> {
 public:
  RowList(const QByteArrayList& roles, QObject* parent);

  void set(std::vector<QVariantList> rows);
  QVariant value(int row, const char* role) const;
};

}  // namespace jambline::screens
