#include "screens/find_sentence.h"

#include <QCoreApplication>
#include <QDate>
#include <algorithm>

#include "base/zones.h"
#include "screens/correct_words.h"
#include "screens/words.h"

namespace jambline::screens {

using engine::OpenedIn;
using engine::SavedQuestion;

namespace {
constexpr int most_years = 12;  // of which each is a choice of its own
constexpr int days_of_week = 7;

QString find_tr(const char* text) {
  return QCoreApplication::translate("find", text);
}

// A part that is so or not so.
struct YesNo {
  FindPart part;
  std::optional<bool> shelf::FindAsked::*value;
  const char* name;
  const char* yes;
  const char* no;
};
constexpr auto yes_nos = std::to_array<YesNo>(
    {{FindPart::Where, &shelf::FindAsked::delivered, QT_TRANSLATE_NOOP("find", "where they are"),
      QT_TRANSLATE_NOOP("find", "Delivered cars"), QT_TRANSLATE_NOOP("find", "Cars in the shop")},
     {FindPart::Late, &shelf::FindAsked::late, QT_TRANSLATE_NOOP("find", "late or in time"),
      QT_TRANSLATE_NOOP("find", "late"), QT_TRANSLATE_NOOP("find", "in time")},
     {FindPart::Redo, &shelf::FindAsked::redo, QT_TRANSLATE_NOOP("find", "work done again"),
      QT_TRANSLATE_NOOP("find", "with work done again"),
      QT_TRANSLATE_NOOP("find", "without work done again")},
     {FindPart::CameBack, &shelf::FindAsked::came_back, QT_TRANSLATE_NOOP("find", "came back"),
      QT_TRANSLATE_NOOP("find", "that came back"),
      QT_TRANSLATE_NOOP("find", "that did not come back")},
     {FindPart::SprayOverride, &shelf::FindAsked::spray_override,
      QT_TRANSLATE_NOOP("find", "spray overrides"),
      QT_TRANSLATE_NOOP("find", "with a spray override"),
      QT_TRANSLATE_NOOP("find", "without a spray override")},
     {FindPart::OtherOverride, &shelf::FindAsked::other_override,
      QT_TRANSLATE_NOOP("find", "other overrides"),
      QT_TRANSLATE_NOOP("find", "with another override"),
      QT_TRANSLATE_NOOP("find", "without another override")},
     {FindPart::SprayedWithout, &shelf::FindAsked::sprayed_without,
      QT_TRANSLATE_NOOP("find", "sprayed without the questions"),
      QT_TRANSLATE_NOOP("find", "sprayed without the questions"),
      QT_TRANSLATE_NOOP("find", "never sprayed without the questions")},
     {FindPart::PicturesMissing, &shelf::FindAsked::pictures_missing,
      QT_TRANSLATE_NOOP("find", "pictures missing"),
      QT_TRANSLATE_NOOP("find", "with pictures missing"),
      QT_TRANSLATE_NOOP("find", "with all pictures")},
     {FindPart::Amended, &shelf::FindAsked::amended, QT_TRANSLATE_NOOP("find", "amended hours"),
      QT_TRANSLATE_NOOP("find", "with amended hours"),
      QT_TRANSLATE_NOOP("find", "without amended hours")},
     {FindPart::Disputed, &shelf::FindAsked::disputed, QT_TRANSLATE_NOOP("find", "disputed"),
      QT_TRANSLATE_NOOP("find", "disputed"), QT_TRANSLATE_NOOP("find", "not disputed")}});

const YesNo* yes_no(FindPart part) {
  const auto* found = std::find_if(yes_nos.begin(), yes_nos.end(),
                                   [&](const YesNo& one) { return one.part == part; });
  return found == yes_nos.end() ? nullptr : found;
}

constexpr auto keys = std::to_array<const char*>(
    {"where", "opened", "color", "late", "next", "person", "booth", "defect", "cause", "redo",
     "came back", "spray override", "other override", "sprayed without", "pictures missing",
     "amended", "disputed"});
static_assert(keys.size() == find_parts);

constexpr auto spans = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("find", "opened today"), QT_TRANSLATE_NOOP("find", "opened this week"),
     QT_TRANSLATE_NOOP("find", "opened this month"), QT_TRANSLATE_NOOP("find", "opened last month"),
     QT_TRANSLATE_NOOP("find", "opened this year"), QT_TRANSLATE_NOOP("find", "opened last year")});

std::string zone_of(const FindWorld& world) {
  return world.zone.isEmpty() ? "UTC" : world.zone.toStdString();
}

LocalDate date_at(std::int64_t wall_ms, const FindWorld& world) {
  return local_date_at(zone_of(world), wall_ms).value_or(LocalDate{1970, 1, 1});
}

std::optional<std::int64_t> start_of(const LocalDate& date, const FindWorld& world) {
  const auto day = local_day(zone_of(world), date);
  return day ? std::optional(day->start_ms) : std::nullopt;
}

LocalDate month_later(LocalDate date, int months) {
  const int at = date.year * 12 + date.month - 1 + months;
  return {at / 12, at % 12 + 1, 1};
}

// Monday of its week.
LocalDate monday_of(const LocalDate& date) {
  const QDate day(date.year, date.month, date.day);
  const QDate monday = day.addDays(1 - day.dayOfWeek());
  return {monday.year(), monday.month(), monday.day()};
}

LocalDate days_later(const LocalDate& date, int days) {
  const QDate day = QDate(date.year, date.month, date.day).addDays(days);
  return {day.year(), day.month(), day.day()};
}

struct Dates {
  LocalDate from;
  LocalDate before;
};

Dates dates_of(OpenedIn span, const LocalDate& today) {
  const LocalDate month{today.year, today.month, 1};
  switch (span) {
    case OpenedIn::Today:
      return {today, days_later(today, 1)};
    case OpenedIn::ThisWeek:
      return {monday_of(today), days_later(monday_of(today), days_of_week)};
    case OpenedIn::ThisMonth:
      return {month, month_later(month, 1)};
    case OpenedIn::LastMonth:
      return {month_later(month, -1), month};
    case OpenedIn::ThisYear:
      return {{today.year, 1, 1}, {today.year + 1, 1, 1}};
    case OpenedIn::LastYear:
      return {{today.year - 1, 1, 1}, {today.year, 1, 1}};
  }
  return {today, today};
}

// The years that have cars, newest first, below "last year".
std::vector<int> years_of(const FindWorld& world) {
  std::vector<int> out;
  const int last = date_at(world.now_ms, world).year - 2;
  const int first = world.oldest_ms ? date_at(*world.oldest_ms, world).year : last + 1;
  for (int year = last; year >= first && static_cast<int>(out.size()) < most_years; --year)
    out.push_back(year);
  return out;
}

std::optional<int> year_of(const SavedQuestion& question, const FindWorld& world) {
  if (!question.asked.opened_from_ms) return std::nullopt;
  return date_at(*question.asked.opened_from_ms, world).year;
}

// The words of each choice, and how to set and see it, of a part with many.
template <class Value, class Words>
struct Many {
  std::vector<Value> shelf::FindAsked::*chosen;
  std::vector<Value> all;
  Words words;
};

template <class E>
std::vector<E> every() {
  std::vector<E> out;
  for (std::size_t i = 0; i < enum_words<E>.size(); ++i) out.push_back(static_cast<E>(i));
  return out;
}

// Calls `use` with the Many of the part.
template <class Use>
void with_many(FindPart part, const FindWorld& world, Use use) {
  const auto by_word = [](auto value) { return words_of(value); };
  if (part == FindPart::Next)
    use(Many<job::Stage, decltype(by_word)>{&shelf::FindAsked::next_stages, every<job::Stage>(),
                                            by_word});
  if (part == FindPart::Defect)
    use(Many<job::DefectKind, decltype(by_word)>{&shelf::FindAsked::defects,
                                                 every<job::DefectKind>(), by_word});
  if (part == FindPart::Cause)
    use(Many<job::DirtCause, decltype(by_word)>{&shelf::FindAsked::causes, every<job::DirtCause>(),
                                                by_word});
  if (part == FindPart::Person) {
    std::vector<PersonId> all;
    for (const auto& one : world.shop->people) all.push_back(one.person);
    const auto words = [&](const PersonId& person) {
      const auto* found = world.shop->find(person);
      return found && !found->name.empty() ? QString::fromStdString(found->name)
                                           : find_tr("someone");
    };
    use(Many<PersonId, decltype(words)>{&shelf::FindAsked::people, std::move(all), words});
  }
  if (part == FindPart::Booth) {
    std::vector<BoothId> all;
    for (const auto& one : world.shop->booths) all.push_back(one.booth);
    const auto words = [&](const BoothId& booth) {
      for (const auto& one : world.shop->booths)
        if (one.booth == booth) return QString::fromStdString(one.name);
      return find_tr("a booth");
    };
    use(Many<BoothId, decltype(words)>{&shelf::FindAsked::booths, std::move(all), words});
  }
}

QString one_of(const QStringList& words) {
  QString out = words.value(0);
  for (qsizetype i = 1; i < words.size(); ++i)
    out = i + 1 == words.size() ? find_tr("%1 or %2").arg(out, words[i])
                                : find_tr("%1, %2").arg(out, words[i]);
  return out;
}

QString many_said(FindPart part, const QString& which) {
  switch (part) {
    case FindPart::Next:
      return find_tr("next: %1").arg(which);
    case FindPart::Person:
      return find_tr("with %1").arg(which);
    case FindPart::Booth:
      return find_tr("sprayed in %1").arg(which);
    case FindPart::Defect:
      return find_tr("with a %1").arg(which);
    default:
      return find_tr("with dirt from: %1").arg(which);
  }
}

QString opened_said(const SavedQuestion& question, const FindWorld& world) {
  if (question.opened) return find_tr(spans[static_cast<std::size_t>(*question.opened)]);
  if (const auto year = year_of(question, world)) return find_tr("opened in %1").arg(*year);
  return find_tr("opened at any time");
}
}  // namespace

QString key_of(FindPart part) {
  return QString::fromLatin1(keys[static_cast<std::size_t>(part)]);
}

std::optional<FindPart> part_of(const QString& key) {
  for (std::size_t i = 0; i < keys.size(); ++i)
    if (key == QLatin1String(keys[i])) return static_cast<FindPart>(i);
  return std::nullopt;
}

bool has_many(FindPart part) {
  return part == FindPart::Next || part == FindPart::Person || part == FindPart::Booth ||
         part == FindPart::Defect || part == FindPart::Cause;
}

bool is_set(FindPart part, const SavedQuestion& question) {
  if (const auto* one = yes_no(part)) return (question.asked.*one->value).has_value();
  switch (part) {
    case FindPart::Opened:
      return question.opened || question.asked.opened_from_ms || question.asked.opened_to_ms;
    case FindPart::Color:
      return !question.asked.color.empty();
    case FindPart::Next:
      return !question.asked.next_stages.empty();
    case FindPart::Person:
      return !question.asked.people.empty();
    case FindPart::Booth:
      return !question.asked.booths.empty();
    case FindPart::Defect:
      return !question.asked.defects.empty();
    case FindPart::Cause:
      return !question.asked.causes.empty();
    default:
      return false;
  }
}

bool is_set(const SavedQuestion& question) {
  for (std::size_t i = 0; i < find_parts; ++i)
    if (is_set(static_cast<FindPart>(i), question)) return true;
  return false;
}

QString name_of(FindPart part) {
  if (const auto* one = yes_no(part)) return sentence(find_tr(one->name));
  switch (part) {
    case FindPart::Opened:
      return find_tr("When they were opened");
    case FindPart::Color:
      return find_tr("Color");
    case FindPart::Next:
      return find_tr("What is next");
    case FindPart::Person:
      return find_tr("Who worked on them");
    case FindPart::Booth:
      return find_tr("Booth");
    case FindPart::Defect:
      return find_tr("Defect");
    default:
      return find_tr("Cause of dirt");
  }
}

QString said(FindPart part, const SavedQuestion& question, const FindWorld& world) {
  if (const auto* one = yes_no(part)) {
    const auto& value = question.asked.*one->value;
    if (!value && part == FindPart::Where) return find_tr("All cars");
    return value ? find_tr(*value ? one->yes : one->no) : QString();
  }
  if (part == FindPart::Opened) return opened_said(question, world);
  if (part == FindPart::Color)
    return question.asked.color.empty() ? find_tr("of any color")
                                        : find_tr("of a color like \"%1\"")
                                              .arg(QString::fromStdString(question.asked.color));
  QString out;
  with_many(part, world, [&](const auto& many) {
    QStringList words;
    for (const auto& value : question.asked.*many.chosen) words << many.words(value);
    if (!words.isEmpty()) out = many_said(part, one_of(words));
  });
  return out;
}

QStringList choices_of(FindPart part, const FindWorld& world) {
  if (const auto* one = yes_no(part)) return {find_tr(one->yes), find_tr(one->no)};
  QStringList out;
  if (part == FindPart::Opened) {
    for (const char* span : spans) out << find_tr(span);
    for (const int year : years_of(world)) out << find_tr("opened in %1").arg(year);
  }
  with_many(part, world, [&](const auto& many) {
    for (const auto& value : many.all) out << many.words(value);
  });
  for (QString& words : out) words = sentence(words);
  return out;
}

QList<int> chosen_of(FindPart part, const SavedQuestion& question, const FindWorld& world) {
  QList<int> out;
  if (const auto* one = yes_no(part)) {
    const auto& value = question.asked.*one->value;
    if (value) out << (*value ? 0 : 1);
  }
  if (part == FindPart::Opened) {
    const auto years = years_of(world);
    if (question.opened) {
      out << static_cast<int>(*question.opened);
    } else if (const auto year = year_of(question, world)) {
      const auto found = std::find(years.begin(), years.end(), *year);
      if (found != years.end())
        out << static_cast<int>(spans.size()) + static_cast<int>(found - years.begin());
    }
  }
  with_many(part, world, [&](const auto& many) {
    for (const auto& value : question.asked.*many.chosen) {
      const auto found = std::find(many.all.begin(), many.all.end(), value);
      if (found != many.all.end()) out << static_cast<int>(found - many.all.begin());
    }
  });
  return out;
}

void choose(FindPart part, int choice, SavedQuestion& question, const FindWorld& world) {
  if (choice < 0 || choice >= choices_of(part, world).size()) return;
  const auto at = static_cast<std::size_t>(choice);
  if (const auto* one = yes_no(part)) question.asked.*one->value = choice == 0;
  if (part == FindPart::Opened) {
    leave_out(part, question);
    if (at < spans.size()) {
      question.opened = static_cast<OpenedIn>(at);
    } else {
      const int year = years_of(world)[at - spans.size()];
      question.asked.opened_from_ms = start_of({year, 1, 1}, world);
      question.asked.opened_to_ms = start_of({year + 1, 1, 1}, world);
    }
  }
  with_many(part, world, [&](const auto& many) {
    auto& chosen = question.asked.*many.chosen;
    const auto& value = many.all[at];
    const auto found = std::find(chosen.begin(), chosen.end(), value);
    if (found == chosen.end())
      chosen.push_back(value);
    else
      chosen.erase(found);
  });
}

void leave_out(FindPart part, SavedQuestion& question) {
  auto& asked = question.asked;
  if (const auto* one = yes_no(part)) (asked.*one->value).reset();
  if (part == FindPart::Opened) {
    question.opened.reset();
    asked.opened_from_ms.reset();
    asked.opened_to_ms.reset();
  }
  if (part == FindPart::Color) asked.color.clear();
  if (part == FindPart::Next) asked.next_stages.clear();
  if (part == FindPart::Person) asked.people.clear();
  if (part == FindPart::Booth) asked.booths.clear();
  if (part == FindPart::Defect) asked.defects.clear();
  if (part == FindPart::Cause) asked.causes.clear();
}

shelf::FindAsked asked_now(const SavedQuestion& question, const FindWorld& world) {
  shelf::FindAsked out = question.asked;
  if (question.opened) {
    const Dates dates = dates_of(*question.opened, date_at(world.now_ms, world));
    out.opened_from_ms = start_of(dates.from, world);
    out.opened_to_ms = start_of(dates.before, world);
  }
  return out;
}

}  // namespace jambline::screens
