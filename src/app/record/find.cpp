#include <algorithm>
#include <iostream>
#include <memory>

#include "app/command_line_words.h"
#include "app/record/car_lines.h"
#include "app/record/commands.h"
#include "app/record/entry_lines.h"
#include "app/record/typed_date.h"
#include "base/clock.h"
#include "base/json.h"
#include "engine/finder.h"

namespace jambline::app {

namespace {

// Letters and digits, small; enough for what is typed to choose by.
std::string bare(std::string_view text) {
  std::string out = folds::squeezed(text);
  for (char& sign : out)
    if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
  return out;
}

bool names(std::string_view typed, std::string_view name) {
  return !bare(typed).empty() && bare(name).find(bare(typed)) != std::string::npos;
}

// Those whose words hold what was typed.
template <class E>
Result<std::vector<E>> kinds_of(const std::string& typed, const char* option) {
  std::vector<E> out;
  if (typed.empty()) return out;
  for (std::size_t i = 0; i < enum_words<E>.size(); ++i)
    if (names(typed, enum_words<E>[i])) out.push_back(static_cast<E>(i));
  if (out.empty()) return fail(Code::Unknown, "search", std::string(option) + " " + typed);
  return out;
}

template <class Id, class Views, class IdOf>
Result<std::vector<Id>> things_of(const std::string& typed, const char* option, const Views& views,
                                  const IdOf& id_of) {
  std::vector<Id> out;
  if (typed.empty()) return out;
  for (const auto& one : views)
    if (names(typed, one.name)) out.push_back(id_of(one));
  if (out.empty()) return fail(Code::Unknown, "search", std::string(option) + " " + typed);
  return out;
}

std::optional<bool> if_set(bool flag) {
  return flag ? std::optional(true) : std::nullopt;
}

Result<shelf::FindAsked> asked_of(const FindOptions& options, const folds::ShopView& shop) {
  shelf::FindAsked out;
  for (const auto& word : options.words) out.words += (out.words.empty() ? "" : " ") + word;
  out.color = options.color;
  const std::string zone = shop.zone.empty() ? "UTC" : shop.zone;
  if (!options.from.empty()) {
    JAMBLINE_ASSIGN(const LocalDate date, typed_date(options.from, "--from"));
    JAMBLINE_ASSIGN(const LocalDay day, local_day(zone, date));
    out.opened_from_ms = day.start_ms;
  }
  if (!options.to.empty()) {
    JAMBLINE_ASSIGN(const LocalDate date, typed_date(options.to, "--to"));
    JAMBLINE_ASSIGN(const LocalDay day, local_day(zone, date));
    out.opened_to_ms = day.end_ms;
  }
  if (options.in_shop) out.delivered = false;
  if (options.delivered) out.delivered = true;
  out.late = if_set(options.late);
  out.redo = if_set(options.redo);
  out.came_back = if_set(options.came_back);
  out.spray_override = if_set(options.spray_override);
  out.other_override = if_set(options.other_override);
  out.sprayed_without = if_set(options.sprayed_without);
  out.pictures_missing = if_set(options.pictures_missing);
  out.amended = if_set(options.amended);
  out.disputed = if_set(options.disputed);
  JAMBLINE_ASSIGN(out.defects, kinds_of<job::DefectKind>(options.defect, "--defect"));
  JAMBLINE_ASSIGN(out.causes, kinds_of<job::DirtCause>(options.cause, "--cause"));
  JAMBLINE_ASSIGN(out.next_stages, kinds_of<job::Stage>(options.next, "--next"));
  JAMBLINE_ASSIGN(out.people, things_of<PersonId>(options.person, "--person", shop.people,
                                                  [](const auto& one) { return one.person; }));
  JAMBLINE_ASSIGN(out.booths, things_of<BoothId>(options.booth, "--booth", shop.booths,
                                                 [](const auto& one) { return one.booth; }));
  out.now_ms = SystemClock().now().wall_ms;
  out.most = options.most;
  if (options.after > 0) out.after = options.after;
  out.count = true;
  return out;
}

void print(const shelf::Found& found, const std::string& zone) {
  for (const auto& car : found.cars) {
    std::cout << car_line(car.row, zone) << '\n';
    for (const auto& hit : car.hits)
      if (hit.field != folds::FindField::Plate && hit.field != folds::FindField::Color)
        std::cout << "    " << word_of(hit.field) << ": " << one_line(hit.text) << '\n';
  }
  if (found.words_left_out)
    std::cout << "only the first " << shelf::Find::most_words << " words were looked for\n";
  const auto all = found.all.value_or(0);
  if (found.next)
    std::cout << found.cars.size() << " of " << all << " cars; the next ones: --after "
              << *found.next << '\n';
  else
    std::cout << all << (all == 1 ? " car\n" : " cars\n");
}

}  // namespace

int find(const FindOptions& options) {
  auto folder = engine::folder_to_find(options.folder);
  if (!folder) {
    std::cerr << said(folder.error());
    return 2;
  }
  const auto asked = asked_of(options, *folder->shop);
  if (!asked) {
    std::cerr << said(asked.error());
    return 2;
  }
  const auto kinds = std::make_shared<const shelf::Names>(
      folds::named_kinds([](auto kind) { return std::string(word_of(kind)); }));
  const auto found = folder->finder.find(*asked, kinds, folder->shop, {});
  if (!found) {
    std::cerr << said(found.error());
    return 2;
  }
  if (options.json)
    std::cout << to_json(*found) << '\n';
  else
    print(*found, folder->shop->zone);
  return 0;
}

}  // namespace jambline::app
