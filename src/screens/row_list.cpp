#include "screens/row_list.h"

namespace jambline::screens {

namespace {
std::vector<RowList::Column> columns(const QByteArrayList& roles) {
  std::vector<RowList::Column> out;
  for (int at = 0; at < roles.size(); ++at)
    out.emplace_back(roles[at], [at](const NamedValues& row) { return row.values[at]; });
  return out;
}
}  // namespace

RowList::RowList(const QByteArrayList& roles, QObject* parent) : RowModel(columns(roles), parent) {}

void RowList::set(std::vector<QVariantList> rows) {
  std::vector<NamedValues> named;
  named.reserve(rows.size());
  for (QVariantList& values : rows) {
    QString key = values[0].toString();
    named.push_back({std::move(key), std::move(values)});
  }
  set_rows(std::move(named));
}

QVariant RowList::value(int row, const char* role) const {
  return data(index(row), roleNames().key(role, -1));
}

}  // namespace jambline::screens
