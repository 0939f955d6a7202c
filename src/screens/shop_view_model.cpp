#include "screens/shop_view_model.h"

#include <QPointer>

#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
std::vector<RowModel<ShopPersonRow>::Column> shop_person_columns() {
  return {{"personId", [](const ShopPersonRow& row) { return row.key; }},
          {"personName", [](const ShopPersonRow& row) { return row.name; }},
          {"standing", [](const ShopPersonRow& row) { return row.standing; }}};
}
}  // namespace

ShopViewModel::ShopViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      people_(new RowModel<ShopPersonRow>(shop_person_columns(), this)) {
  connect(&session, &Session::shopChanged, this, &ShopViewModel::refresh);
  refresh();
}

void ShopViewModel::refresh() {
  std::vector<ShopPersonRow> rows;
  for (const auto& person : session_.shop().people) {
    ShopPersonRow row;
    row.key = text(person.person.hex());
    row.name = session_.name_of(person.person);
    row.role = static_cast<int>(person.role);
    row.left = person.left;
    row.erased = person.name.empty();
    row.standing = !row.left    ? sentence(words_of(person.role))
                   : row.erased ? tr("has left, name erased")
                                : tr("has left");
    rows.push_back(std::move(row));
  }
  people_->set_rows(std::move(rows));
  emit changed();
}

QString ShopViewModel::name() const {
  return text(session_.shop().name);
}

bool ShopViewModel::manager() const {
  const auto* one = session_.shop().find(session_.person());
  return one && one->role == job::Role::Manager;
}

QStringList ShopViewModel::racks() const {
  QStringList out;
  for (const auto& rack : session_.shop().racks) out << text(rack.name);
  return out;
}

QStringList ShopViewModel::roles() const {
  QStringList out;
  for (std::size_t at = 0; at < enum_words<job::Role>.size(); ++at)
    out << sentence(words_of(static_cast<job::Role>(at)));
  return out;
}

ShopPersonRow ShopViewModel::shown() const {
  const auto* row = people_->row(open_);
  return row ? *row : ShopPersonRow{};
}

PersonId ShopViewModel::of_page() const {
  const auto parsed = PersonId::parse(open_.toStdString());
  return parsed ? PersonId{*parsed} : PersonId{};
}

void ShopViewModel::nameShop(const QString& name, const QString& zone) {
  session_.post(acts::NameShop{name.toStdString(), zone.trimmed().toStdString()});
}

void ShopViewModel::addRack(const QString& name) {
  session_.post(acts::AddRack{name.toStdString()},
                [self = QPointer(this)](const Result<engine::Wrote>& wrote) {
                  if (wrote && self) emit self->rackAdded();
                });
}

void ShopViewModel::open(const QString& personId) {
  if (open_ == personId) return;
  open_ = personId;
  emit personChanged();
  emit changed();
}

void ShopViewModel::rename(const QString& name) {
  session_.post(acts::RenamePerson{of_page(), name.toStdString()});
}

void ShopViewModel::changeRole(int role) {
  if (role < 0 || role >= static_cast<int>(enum_words<job::Role>.size())) return;
  session_.post(acts::ChangeRole{of_page(), static_cast<job::Role>(role)});
}

void ShopViewModel::letGo() {
  session_.post(acts::LetPersonGo{of_page()});
}

void ShopViewModel::eraseName() {
  session_.engine().erase_name(
      of_page(), session_.person(), [session = &session_](const Status& erased) {
        if (erased) return;
        QMetaObject::invokeMethod(
            session, [session, error = erased.error()] { emit session->failed(error); },
            Qt::QueuedConnection);
      });
}

}  // namespace jambline::screens
