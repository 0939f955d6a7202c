#include "app/papers/report_telling.h"

#include <algorithm>

#include "screens/entry_words.h"
#include "screens/text.h"
#include "screens/typed_times.h"
#include "screens/words.h"

namespace jambline::app {

using screens::text;
using screens::words_of;

ReportTelling::ReportTelling(const ReportSource& source, const ReportChoice& chosen)
    : car(source.car),
      shop(source.shop),
      entries(source.entries),
      choice(chosen),
      zone(source.zone),
      now(source.now) {
  if (choice.names) return;
  // Numbers in the order in which people first had to do with the car; then all others of the shop.
  std::map<job::Role, int> last;
  const auto number = [&](const PersonId& person) {
    if (!person || numbered_.count(person) > 0) return;
    const auto* known = shop.find(person);
    if (!known) return;
    numbered_[person] =
        report_tr("%1 %2").arg(words_of(known->role)).arg(++last[known->role]).toLower();
  };
  for (const auto& entry : entries) number(entry.person);
  for (const auto& person : shop.people) number(person.person);
}

QString ReportTelling::who(const PersonId& person) const {
  if (choice.names) return screens::name_of(person, shop);
  const auto found = numbered_.find(person);
  return found == numbered_.end() ? report_tr("someone") : found->second;
}

QString ReportTelling::day(std::int64_t wall_ms) const {
  return screens::date_of_day(screens::today_of(wall_ms, zone));
}

QString ReportTelling::when(std::int64_t wall_ms) const {
  return day(wall_ms) + QChar(' ') + screens::clock_words(wall_ms, zone);
}

QString ReportTelling::who_when(const PersonId& person, std::int64_t wall_ms) const {
  return report_tr("%1, %2").arg(who(person), when(wall_ms));
}

QString ReportTelling::panel(job::Panel panel) const {
  return screens::sentence(words_of(panel, car.body));
}

QString ReportTelling::panels(const std::vector<job::Panel>& panels) const {
  QStringList out;
  for (const auto one : panels) out << words_of(one, car.body);
  return screens::sentence(out.join(QStringLiteral(", ")));
}

QString ReportTelling::booth(const BoothId& booth) const {
  const auto* known = shop.find(booth);
  return known ? text(known->name) : report_tr("a booth");
}

QString ReportTelling::product(const ProductId& product) const {
  const auto* known = shop.air.find(product);
  return known ? text(known->said.product_name) : report_tr("a product that is not here");
}

QString ReportTelling::own_words(const std::string& said) const {
  return choice.names ? text(said).trimmed() : QString();
}

void add(Section& to, report::ReportTable table) {
  if (!table.rows.empty()) to.blocks.emplace_back(std::move(table));
}

void add(Section& to, report::ReportFacts facts) {
  if (!facts.empty()) to.blocks.emplace_back(std::move(facts));
}

void say(Section& to, const QString& words, bool quiet) {
  if (!words.isEmpty()) to.blocks.emplace_back(report::ReportParagraph{words, quiet});
}

void fact(report::ReportFacts& to, const QString& label, const QString& words) {
  if (!words.isEmpty()) to.push_back({label, words});
}

}  // namespace jambline::app
