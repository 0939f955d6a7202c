#include "screens/orders_view_model.h"

#include <algorithm>

#include "screens/spans.h"
#include "screens/state_kind.h"
#include "screens/text.h"
#include "screens/typed_times.h"
#include "screens/units.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::PartState;
using job::SubletState;

constexpr int days_offered = 8;

template <class E>
QStringList all_words() {
  QStringList out;
  for (std::size_t i = 0; i < enum_words<E>.size(); ++i)
    out << sentence(words_of(static_cast<E>(i)));
  return out;
}

bool to_come(PartState state) {
  return state == PartState::Ordered || state == PartState::Wrong;
}
}  // namespace

OrdersViewModel::OrdersViewModel(Session& session, QObject* parent)
    : Form(session, parent),
      parts_({"key", "title", "words", "shape", "state"}, this),
      outside_({"key", "title", "words", "shape", "state"}, this),
      days_({"key", "title"}, this) {
  connect(&session, &Session::snapshotChanged, this, &OrdersViewModel::refresh);
  refresh();
}

bool OrdersViewModel::writable() const {
  const auto* car = session().car();
  return car && !session().readOnly() && car->unknown_entries == 0 && !car->delivered_ms;
}

QStringList OrdersViewModel::kinds() const {
  return all_words<job::SubletKind>();
}
QStringList OrdersViewModel::partStates() const {
  return all_words<PartState>();
}
QStringList OrdersViewModel::outsideStates() const {
  return all_words<SubletState>();
}

QString OrdersViewModel::when(std::int64_t expected_ms) const {
  return day_words(expected_ms, session().zone());
}

bool OrdersViewModel::late(const std::optional<std::int64_t>& expected_ms) const {
  return expected_ms && today_of(*expected_ms, session().zone()) < today();
}

void OrdersViewModel::refresh() {
  std::vector<QVariantList> parts;
  std::vector<QVariantList> outside;
  QStringList waits;
  alarm_ = false;
  const auto* car = session().car();
  if (car) {
    auto bought = car->visit.parts;
    std::stable_sort(bought.begin(), bought.end(), [](const auto& a, const auto& b) {
      return to_come(a.said.state) > to_come(b.said.state);
    });
    for (const auto& one : bought) {
      const auto& said = one.said;
      const bool ordered = said.state == PartState::Ordered;
      const bool bad = said.state == PartState::Wrong || (ordered && late(said.expected_ms));
      QString words = words_of(said.state);
      if (ordered && said.expected_ms)
        words = late(said.expected_ms) ? tr("was to come %1").arg(when(*said.expected_ms))
                                       : tr("ordered, comes %1").arg(when(*said.expected_ms));
      else if (ordered)
        words = tr("ordered, nobody said for when");
      parts.push_back({text(one.part.hex()), text(said.part_name),
                       tr("%1 \u00b7 %2").arg(words, session().name_of(one.by)),
                       shape_of(bad                                ? StateKind::Must
                                : ordered                          ? StateKind::Waits
                                : said.state == PartState::Arrived ? StateKind::Done
                                                                   : StateKind::NotYet),
                       static_cast<int>(said.state)});
      if (to_come(said.state)) waits << tr("%1: %2").arg(text(said.part_name), words);
      alarm_ = alarm_ || bad;
    }
    auto given = car->visit.sublets;
    std::stable_sort(given.begin(), given.end(), [](const auto& a, const auto& b) {
      return (a.said.state != SubletState::Back) > (b.said.state != SubletState::Back);
    });
    for (const auto& one : given) {
      const auto& said = one.said;
      const bool open = said.state != SubletState::Back;
      const bool bad = open && late(said.expected_ms);
      QString words = words_of(said.state);
      if (open && said.expected_ms)
        words = bad ? tr("%1, was to be back %2").arg(words, when(*said.expected_ms))
                    : tr("%1, back %2").arg(words, when(*said.expected_ms));
      const QString title = tr("%1, %2").arg(sentence(words_of(said.kind)), text(said.who));
      outside.push_back({text(one.sublet.hex()), title,
                         tr("%1 \u00b7 %2").arg(words, session().name_of(one.by)),
                         shape_of(bad                               ? StateKind::Must
                                  : said.state == SubletState::Out  ? StateKind::Running
                                  : said.state == SubletState::Back ? StateKind::Done
                                                                    : StateKind::Waits),
                         static_cast<int>(said.state)});
      if (open) waits << tr("%1: %2").arg(words_of(said.kind), words);
      alarm_ = alarm_ || bad;
    }
  }
  const bool any = !parts.empty() || !outside.empty();
  row_words_ = !waits.isEmpty() ? waits.join(QStringLiteral(" \u00b7 "))
               : any            ? tr("all is here")
                                : tr("nothing is ordered, nothing is out");
  row_shape_ = shape_of(alarm_             ? StateKind::Must
                        : !waits.isEmpty() ? StateKind::Waits
                        : any              ? StateKind::Done
                                           : StateKind::NotYet);
  parts_.set(std::move(parts));
  outside_.set(std::move(outside));
  show_days();
  emit changed();
}

void OrdersViewModel::show_days() {
  std::vector<QVariantList> rows{{QString(), tr("Nobody said")}};
  const QString zone = session().zone();
  for (int day = today(); day < today() + days_offered; ++day)
    if (const auto ms = wall_of(day, noon_min, zone))
      rows.push_back({day_text(day), day == today() ? tr("Today") : day_words(*ms, zone)});
  days_.set(std::move(rows));
}

const folds::PartView* OrdersViewModel::part(const QString& key) const {
  if (const auto* car = session().car())
    for (const auto& one : car->visit.parts)
      if (text(one.part.hex()) == key) return &one;
  return nullptr;
}

const folds::SubletView* OrdersViewModel::sublet(const QString& key) const {
  if (const auto* car = session().car())
    for (const auto& one : car->visit.sublets)
      if (text(one.sublet.hex()) == key) return &one;
  return nullptr;
}

void OrdersViewModel::start(const QString& key, const QString& name, int kind, int state,
                            std::optional<std::int64_t> expected_ms) {
  nothingWrong();
  key_ = key;
  name_ = name;
  kind_ = kind;
  state_ = state;
  day_ = expected_ms ? day_text(today_of(*expected_ms, session().zone())) : QString();
  emit formChanged();
}

void OrdersViewModel::startPart(const QString& key) {
  if (const auto* one = part(key))
    return start(key, text(one->said.part_name), 0, static_cast<int>(one->said.state),
                 one->said.expected_ms);
  start({}, {}, 0, static_cast<int>(PartState::Ordered), {});
}

void OrdersViewModel::startOutside(const QString& key) {
  if (const auto* one = sublet(key))
    return start(key, text(one->said.who), static_cast<int>(one->said.kind),
                 static_cast<int>(one->said.state), one->said.expected_ms);
  start({}, {}, 0, static_cast<int>(SubletState::Planned), {});
}

void OrdersViewModel::setKind(int kind) {
  kind_ = kind;
  emit formChanged();
}

void OrdersViewModel::setState(int state) {
  state_ = state;
  emit formChanged();
}

QString OrdersViewModel::dayWords(const QString& text) const {
  const auto typed = typed_day(text);
  return typed ? date_of_day(*typed) : QString();
}

std::optional<std::int64_t> OrdersViewModel::expected(const QString& day_typed, bool of_part) {
  if (day_typed.trimmed().isEmpty()) return std::nullopt;
  const auto at = Form::day(QStringLiteral("day"), day_typed);
  if (!at) return std::nullopt;
  if (*at < today() && !(of_part && state_ != static_cast<int>(PartState::Ordered))) {
    refuse(QStringLiteral("day"), tr("This day has passed."));
    return std::nullopt;
  }
  constexpr int weekdays = 7;
  constexpr int of_first_day = 3;  // 1970-01-01 was a Thursday
  const auto& week = session().shop().calendar.week;
  const auto weekday = static_cast<std::size_t>((*at + of_first_day) % weekdays);
  const int closes_min = weekday < week.size() ? week[weekday].to_min : 0;
  const int minute = of_part || closes_min == 0 ? noon_min : std::min(closes_min, 24 * 60 - 1);
  return wall_of(*at, minute, session().zone());
}

void OrdersViewModel::keepPart(const QString& name, const QString& day) {
  const auto* car = session().car();
  if (!car) return;
  nothingWrong();
  const auto named = words(QStringLiteral("name"), name);
  const auto state = static_cast<PartState>(state_);
  const auto expected_ms = state == PartState::Ordered ? expected(day, true) : std::nullopt;
  if (refused() || !named) return;
  const auto* known = part(key_);
  keep_as(acts::SayPart{
      car->job, known ? std::optional(known->part) : std::nullopt, {*named, state, expected_ms}});
}

void OrdersViewModel::keepOutside(const QString& who, const QString& day) {
  const auto* car = session().car();
  if (!car) return;
  nothingWrong();
  const auto named = words(QStringLiteral("name"), who);
  const auto state = static_cast<SubletState>(state_);
  const auto expected_ms = state == SubletState::Back ? std::nullopt : expected(day, false);
  if (refused() || !named) return;
  const auto* known = sublet(key_);
  keep_as(acts::SaySublet{car->job,
                          known ? std::optional(known->sublet) : std::nullopt,
                          {static_cast<job::SubletKind>(kind_), *named, state, expected_ms}});
}

void OrdersViewModel::arrived(const QString& key) {
  const auto* one = part(key);
  if (!one) return;
  job::OrderedPart said = one->said;
  said.state = PartState::Arrived;
  session().post(acts::SayPart{session().car()->job, one->part, said});
}

void OrdersViewModel::wentOut(const QString& key) {
  const auto* one = sublet(key);
  if (!one) return;
  job::Sublet said = one->said;
  said.state = SubletState::Out;
  if (late(said.expected_ms)) said.expected_ms.reset();
  session().post(acts::SaySublet{session().car()->job, one->sublet, said});
}

void OrdersViewModel::cameBack(const QString& key) {
  const auto* one = sublet(key);
  if (!one) return;
  job::Sublet said = one->said;
  said.state = SubletState::Back;
  session().post(acts::SaySublet{session().car()->job, one->sublet, said});
}

}  // namespace jambline::screens
