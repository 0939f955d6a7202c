#include "screens/first_aid_view_model.h"

#include "screens/air_words.h"
#include "screens/units.h"

namespace jambline::screens {

FirstAidViewModel::FirstAidViewModel(Session& session, QObject* parent)
    : QObject(parent), session_(session) {
  connect(&session, &Session::snapshotChanged, this, &FirstAidViewModel::changed);
}

bool FirstAidViewModel::mayFlag() const {
  if (!session_.hasPerson() || session_.readOnly()) return false;
  const auto* known = session_.shop().air.find(session_.person());
  return !(known && known->do_not_spray);
}

QString FirstAidViewModel::flagWords() const {
  if (!session_.hasPerson()) return {};
  return tr("%1: do not spray").arg(session_.name_of(session_.person()));
}

QString FirstAidViewModel::writtenWords() const {
  return written_;
}

void FirstAidViewModel::pageOpened() {
  opened_.clear();
  written_.clear();
  emit changed();
}

void FirstAidViewModel::open(int choice) {
  if (choice < 0 || choice >= static_cast<int>(enum_words<job::FirstAid>.size())) return;
  if (!opened_.insert(choice).second || session_.readOnly()) return;
  const auto what = static_cast<job::FirstAid>(choice);
  const QString when = clock_words(session_.now().wall_ms, session_.zone());
  session_.post(acts::OpenFirstAid{what}, [this, what, when](const Result<engine::Wrote>& wrote) {
    if (!wrote) return;
    written_ = tr("In the log: first aid for “%1”, %2. Who was hurt is not in it.")
                   .arg(words_of(what), when);
    emit changed();
  });
}

bool FirstAidViewModel::asksFlag(int choice) const {
  return choice == static_cast<int>(job::FirstAid::Breathing);
}

void FirstAidViewModel::flag() {
  if (mayFlag()) session_.post(acts::SayDoNotSpray{session_.person(), true});
}

}  // namespace jambline::screens
