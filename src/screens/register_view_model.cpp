#include "screens/register_view_model.h"

#include <algorithm>

#include "screens/air_words.h"
#include "screens/exposure_words.h"
#include "screens/text.h"
#include "screens/typed_times.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {

// Who may not spray comes first.
int order_of(bool flagged, StateKind state) {
  if (flagged) return 0;
  return state == StateKind::Must ? 1 : state == StateKind::Waits ? 2 : 3;
}

bool presses(const RegisterRow& row) {
  return row.state == StateKind::Must || row.state == StateKind::Waits;
}
}  // namespace

RegisterViewModel::RegisterViewModel(Session& session, QObject* parent)
    : Form(session, parent),
      people_({"key", "title", "summary", "shape", "isOpen", "spoken"}, this),
      respirators_({"key", "title", "kindWords", "factorWords", "retired"}, this),
      rows_({"key", "title", "words", "note", "shape", "stateWords", "alarm", "opens", "spoken"},
            this),
      cartridges_({"key", "title", "schedule", "basis"}, this),
      respirator_(session, this),
      fit_test_(session, this),
      sum_(this) {
  connect(&session, &Session::shopChanged, this, &RegisterViewModel::refresh);
  connect(&session, &Session::secondPassed, this, [this] {
    if (today() != day_) refresh();  // what is due goes with the day
  });
  connect(&fit_test_, &Form::kept, this, &Form::kept);
  connect(&respirator_, &Form::kept, this, &Form::kept);
  refresh();
}

RegisterDay RegisterViewModel::now() const {
  return {session().now().wall_ms, session().zone()};
}

std::vector<RegisterViewModel::Standing> RegisterViewModel::standings() const {
  std::vector<Standing> out;
  const auto& shop = session().shop();
  for (const auto& person : shop.people) {
    if (person.left) continue;
    const auto* known = shop.air.find(person.person);
    out.push_back({person.person, known && known->do_not_spray,
                   worst_of(register_rows(shop.air, person.person, now()))});
  }
  std::stable_sort(out.begin(), out.end(), [](const Standing& a, const Standing& b) {
    return order_of(a.flagged, a.worst.state) < order_of(b.flagged, b.worst.state);
  });
  return out;
}

void RegisterViewModel::refresh() {
  const auto& shop = session().shop();
  day_ = today();
  standing_ = standings();
  if (open_ && std::none_of(standing_.begin(), standing_.end(),
                            [&](const auto& one) { return one.person == open_; }))
    open_ = {};
  if (!open_ && !standing_.empty()) open_ = standing_.front().person;
  std::vector<QVariantList> people, respirators, rows, cartridges;
  for (const auto& one : standing_) {
    const QString name = session().name_of(one.person);
    const QString words = one.flagged ? tr("do not spray")
                          : presses(one.worst)
                              ? tr("%1: %2").arg(one.worst.kind, one.worst.state_words)
                          : one.worst.state == StateKind::Done ? tr("all in date")
                                                               : tr("not all is kept");
    const auto state = one.flagged ? StateKind::Must : one.worst.state;
    people.push_back({hex(one.person), name, words, shape_of(state), one.person == open_,
                      tr("%1, %2. Opens the register.").arg(name, words)});
  }
  for (const auto& one : shop.air.respirators)
    respirators.push_back(
        {QString::fromStdString(one.respirator.hex()), QString::fromStdString(one.said.model),
         sentence(words_of(one.said.kind)), factor_words(one.said), one.said.retired});
  kept_ = open_ ? register_rows(shop.air, open_, now()) : std::vector<RegisterRow>{};
  for (const auto& row : kept_) {
    QString spoken = tr("%1, %2").arg(row.title, row.state_words);
    if (!row.words.isEmpty()) spoken = tr("%1, %2").arg(spoken, row.words);
    rows.push_back({row.key, row.title, row.words, row.note, shape_of(row.state), row.state_words,
                    row.state == StateKind::Must, row.basis.has_value(), spoken});
  }
  const auto* known = open_ ? shop.air.find(open_) : nullptr;
  for (const auto& one : shop.air.respirators) {
    if (one.said.retired || !job::has_cartridge(one.said.kind)) continue;
    QString schedule, basis;
    if (known)
      for (const auto& last : known->cartridges)
        if (last.respirator == one.respirator) {
          schedule = concentration_number(last.schedule_h);
          basis = QString::fromStdString(last.schedule_basis);
        }
    cartridges.push_back({QString::fromStdString(one.respirator.hex()),
                          QString::fromStdString(one.said.model), schedule, basis});
  }
  air_ = breathing_air_row(shop.air, now());
  people_.set(std::move(people));
  respirators_.set(std::move(respirators));
  rows_.set(std::move(rows));
  cartridges_.set(std::move(cartridges));
  emit changed();
}

const RegisterViewModel::Standing* RegisterViewModel::pressed() const {
  if (standing_.empty()) return nullptr;
  const Standing& first = standing_.front();
  return first.flagged || presses(first.worst) ? &first : nullptr;
}

QString RegisterViewModel::pressing() const {
  const auto* one = pressed();
  return one ? tr("%1 · %2").arg(session().name_of(one->person),
                                 people_.value(0, "summary").toString())
             : QString();
}

int RegisterViewModel::pressingShape() const {
  const auto* one = pressed();
  return shape_of(!one ? StateKind::None : one->flagged ? StateKind::Must : one->worst.state);
}

bool RegisterViewModel::mayKeep() const {
  return session().hasPerson() && !session().readOnly();
}

RegisterViewModel::Act RegisterViewModel::mainAct() const {
  if (session().readOnly()) return Act::None;
  if (respiratorCount() == 0) return Act::AddRespirator;
  if (pressed()) return Act::OpenPerson;
  if (air_.state != StateKind::Done) return Act::LogAir;
  return standing_.empty() ? Act::None : Act::OpenPerson;
}

QString RegisterViewModel::mainText() const {
  switch (mainAct()) {
    case Act::AddRespirator:
      return tr("Add a respirator");
    case Act::OpenPerson:
      return tr("Open %1").arg(session().name_of(standing_.front().person));
    case Act::LogAir:
      return tr("Log the breathing air");
    case Act::None:
      break;
  }
  return {};
}

QString RegisterViewModel::mainSecond() const {
  switch (mainAct()) {
    case Act::AddRespirator:
      return manager() ? tr("its kind and protection factor") : tr("a manager enters it");
    case Act::OpenPerson:
      return people_.value(0, "summary").toString();
    case Act::LogAir:
      return mayKeep() ? air_.state_words : tr("say who you are first");
    case Act::None:
      break;
  }
  return {};
}

bool RegisterViewModel::mainWaits() const {
  switch (mainAct()) {
    case Act::AddRespirator:
      return !manager();
    case Act::LogAir:
      return !mayKeep();
    default:
      return false;
  }
}

QString RegisterViewModel::person() const {
  return open_ ? hex(open_) : QString();
}

QString RegisterViewModel::personName() const {
  return open_ ? session().name_of(open_) : QString();
}

QString RegisterViewModel::personRole() const {
  const auto* one = session().shop().find(open_);
  return one ? words_of(one->role) : QString();
}

bool RegisterViewModel::flagged() const {
  const auto* known = open_ ? session().shop().air.find(open_) : nullptr;
  return known && known->do_not_spray;
}

bool RegisterViewModel::mayFlag() const {
  if (!open_ || !mayKeep()) return false;
  return manager() || (!flagged() && open_ == session().person());
}

QStringList RegisterViewModel::dues() const {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<job::DueKind>.size(); ++i)
    out << sentence(words_of(static_cast<job::DueKind>(i)));
  return out;
}

QString RegisterViewModel::todayText() const {
  return day_text(today());
}

void RegisterViewModel::openPerson(const QString& person) {
  const auto id = PersonId::parse(person.toStdString());
  if (!id || !session().shop().find(PersonId{*id})) return;
  open_ = PersonId{*id};
  refresh();
}

void RegisterViewModel::openFirst() {
  if (standing_.empty()) return;
  open_ = standing_.front().person;
  refresh();
}

void RegisterViewModel::openFitTest() {
  fit_test_.open(open_);
}

bool RegisterViewModel::openSum(const QString& row) {
  const auto found =
      std::find_if(kept_.begin(), kept_.end(), [&](const auto& one) { return one.key == row; });
  if (found == kept_.end() || !found->basis) return false;
  sum_.show(found->title, found->words, *found->basis, session().units(), found->note);
  return true;
}

void RegisterViewModel::sayDoNotSpray(bool do_not_spray) {
  if (mayFlag()) keep_as(acts::SayDoNotSpray{open_, do_not_spray});
}

QString RegisterViewModel::dayWords(const QString& day) const {
  const auto typed = typed_day(day);
  return typed ? date_of_day(*typed) : QString();
}

QString RegisterViewModel::dueDay(int what) const {
  const auto* known = open_ ? session().shop().air.find(open_) : nullptr;
  if (known)
    for (const auto& one : known->dues)
      if (static_cast<int>(one.what) == what) return day_text(one.due_day);
  return {};
}

void RegisterViewModel::keepCartridge(const QString& respirator, const QString& hours,
                                      const QString& basis) {
  nothingWrong();
  const auto id = RespiratorId::parse(respirator.toStdString());
  const auto* worn = id ? session().shop().air.find(RespiratorId{*id}) : nullptr;
  if (!worn) refuse(QStringLiteral("respirator"), tr("Say which respirator it is in."));
  const auto schedule = number(QStringLiteral("hours"), hours, 0.1, 10'000);
  const auto rests_on = words(QStringLiteral("basis"), basis);
  if (!refused()) keep_as(acts::ChangeCartridge{open_, worn->respirator, *schedule, *rests_on});
}

void RegisterViewModel::keepDue(int what, const QString& day) {
  nothingWrong();
  if (what < 0 || what >= static_cast<int>(enum_words<job::DueKind>.size())) return;
  const auto due = Form::day(QStringLiteral("day"), day);
  constexpr int year_2020 = 18'262;
  if (due && *due < year_2020) refuse(QStringLiteral("day"), tr("That day is long gone."));
  if (refused()) return;
  if (day_text(*due) == dueDay(what))
    emit kept();
  else
    keep_as(acts::SetDue{open_, static_cast<job::DueKind>(what), *due});
}

void RegisterViewModel::keepAir(bool grade_d, bool co_alarm, bool low_flow_alarm,
                                const QString& day, const QString& valid_days) {
  nothingWrong();
  const auto checked = Form::day(QStringLiteral("day"), day);
  if (checked && *checked > today())
    refuse(QStringLiteral("day"), tr("That day is still to come."));
  const auto valid = whole(QStringLiteral("validDays"), valid_days, 1, 36'500);
  if (!refused())
    keep_as(acts::CheckBreathingAir{{grade_d, co_alarm, low_flow_alarm, *checked, *valid}});
}

}  // namespace jambline::screens
