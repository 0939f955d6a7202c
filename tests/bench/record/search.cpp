// search_p95_ms   300 questions at the engine, first page of 50, from the call to the answer.
// search_vs_sql   shelf::Find against one plain SQL statement that gives the same rows, read and
//                 decoded alike, over the questions of `compared()`.
#include <algorithm>
#include <future>
#include <sqlite3.h>

#include "base/json.h"
#include "base/random.h"
#include "tests/bench/figures.h"
#include "tests/bench/log_rows.h"
#include "tests/bench/record/record_parts.h"

namespace jambline::bench {

namespace {

constexpr std::size_t questions = 300;
constexpr int rounds = 3;

std::shared_ptr<const shelf::Names> plain_kinds() {
  return std::make_shared<const shelf::Names>(
      folds::named_kinds([](auto kind) { return std::string(word_of(kind)); }));
}

// One plain word: the rows of a question with the same documents behind them.
struct Compared {
  const char* name;
  std::string typed;
  std::string match;
};

std::string match_of(const std::string& word, const std::string& code) {
  return "({plate vin color notes work reasons customer} : \"" + word + "\" * OR parts : \"" +
         word + "\" *" + (code.empty() ? ")" : " OR codes : \"" + code + "\")");
}

std::vector<Compared> compared(const OpenShop& shop) {
  const auto all = shop.find({});
  const auto& row = all.cars.at(20).row;
  std::string plate = folds::squeezed(row.plate);
  for (char& sign : plate)
    if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
  return {{"plate", plate, match_of(plate, "")},
          {"color", "lake blue", match_of("lake", "") + " AND " + match_of("blue", "")},
          {"first", "", ""}};
}

std::vector<folds::FloorRow> plain_rows(sqlite3* raw, const std::string& match) {
  sqlite3_stmt* ask = nullptr;
  must_be(sqlite3_prepare_v2(
              raw,
              match.empty()
                  ? "SELECT find_fact.place, car.row FROM find_fact CROSS JOIN car"
                    " ON car.job = find_fact.job ORDER BY find_fact.place DESC LIMIT 50"
                  : "SELECT find_fact.place, car.row, plate, vin, color, notes, work, reasons,"
                    " customer, codes, parts FROM find_words CROSS JOIN find_fact"
                    " ON find_fact.place = find_words.rowid CROSS JOIN car"
                    " ON car.job = find_fact.job WHERE find_words MATCH ?1"
                    " ORDER BY find_words.rowid DESC LIMIT 50",
              -1, &ask, nullptr) == SQLITE_OK,
          sqlite3_errmsg(raw));
  if (!match.empty())
    sqlite3_bind_text(ask, 1, match.c_str(), static_cast<int>(match.size()), SQLITE_STATIC);
  std::vector<folds::FloorRow> out;
  std::vector<std::string> texts;
  while (sqlite3_step(ask) == SQLITE_ROW) {
    const auto text = [&](int column) {
      return std::string(reinterpret_cast<const char*>(sqlite3_column_text(ask, column)),
                         static_cast<std::size_t>(sqlite3_column_bytes(ask, column)));
    };
    auto row = from_json<folds::FloorRow>(text(1));
    must_be(row.has_value(), "a row does not read");
    out.push_back(std::move(*row));
    for (int column = 2; column < sqlite3_column_count(ask); ++column)
      texts.push_back(text(column));
  }
  sqlite3_finalize(ask);
  return out;
}

void compare_with_sql(const OpenShop& shop, const std::filesystem::path& folder) {
  auto find = shelf::Find::open({folder / "shelf.db", {}});
  must_be(find.has_value(), "no shelf");
  find->know(shop.kinds, nullptr);
  sqlite3* raw = nullptr;
  must_be(sqlite3_open_v2((folder / "shelf.db").c_str(), &raw, SQLITE_OPEN_READONLY, nullptr) ==
              SQLITE_OK,
          "open");
  std::vector<double> ratios;
  for (const auto& one : compared(shop)) {
    shelf::FindAsked asked;
    asked.words = one.typed;
    std::size_t ours_rows = 0;
    std::size_t plain = 0;
    const double ratio = rate_ratio(
        [&] {
          for (int i = 0; i < 20; ++i) {
            const auto found = find->find(asked);
            must_be(found.has_value(), "no answer");
            ours_rows = found->cars.size();
          }
        },
        [&] {
          for (int i = 0; i < 20; ++i) plain = plain_rows(raw, one.match).size();
        });
    must_be(ours_rows == plain, "other rows");
    ratios.push_back(1 / ratio);
    std::printf("search against SQL, %s: %.2f, %zu rows\n", one.name, 1 / ratio, plain);
  }
  sqlite3_close(raw);
  figure("search_vs_sql", *std::max_element(ratios.begin(), ratios.end()), "ratio");
}

}  // namespace

OpenShop::OpenShop(const std::filesystem::path& folder) : kinds(plain_kinds()) {
  auto opened =
      engine::Engine::open({folder, clock, std::make_unique<SeededRandom>(7), "bench", {}, {}});
  must_be(opened.has_value(), "the shop does not open");
  engine = std::move(*opened);
}

shelf::Found OpenShop::find(const shelf::FindAsked& asked) const {
  std::promise<Result<shelf::Found>> answer;
  engine->find(asked, kinds, {}, [&](auto found) { answer.set_value(std::move(found)); });
  auto found = answer.get_future().get();
  must_be(found.has_value(), "no answer");
  return std::move(*found);
}

std::vector<shelf::FindAsked> realistic_questions(const OpenShop& shop, std::size_t count) {
  SeededRandom random(17);
  std::vector<folds::FloorRow> rows;
  shelf::FindAsked page;
  page.most = 400;
  for (int i = 0; i < 40; ++i) {
    const auto found = shop.find(page);
    for (const auto& car : found.cars) rows.push_back(car.row);
    if (!found.next) break;
    page.after = found.next;
  }
  const auto& people = shop.engine->snapshot()->shop->people;
  const char* const words[] = {"crater",     "run hood",  "burn",     "hose",       "suit",
                               "deep green", "lake blue", "tape let", "left door",  "redo",
                               "nib roof",   "stock",     "fit test", "not needed", "rowan"};
  std::vector<shelf::FindAsked> out;
  while (out.size() < count) {
    const auto& row = rows[random.below(rows.size())];
    const auto& person = people[random.below(people.size())];
    const std::string word = words[random.below(std::size(words))];
    shelf::FindAsked asked;
    switch (random.below(8)) {
      case 0:
        asked.words = row.plate;
        break;
      case 1:
        asked.words = row.plate.substr(row.plate.size() / 2);
        break;
      case 2:
        if (row.vin.size() >= 6) asked.words = row.vin.substr(row.vin.size() - 6);
        break;
      case 3:
        asked.words = row.color.name + " " + person.name;
        break;
      case 4:
        asked.words = word;
        break;
      case 5:
        asked.words = word + " " + person.name;
        asked.late = true;
        break;
      case 6:
        asked.words = row.color.name;
        asked.opened_from_ms = row.opened_ms - 365 * 86'400'000LL;
        asked.opened_to_ms = row.opened_ms;
        asked.sprayed_without = random.below(2) == 0;
        break;
      default:
        asked.people = {person.person};
        asked.redo = random.below(2) == 0;
        asked.defects = {static_cast<job::DefectKind>(random.below(6))};
        break;
    }
    // One of two is still being typed.
    if (random.below(2) == 0 && !asked.words.empty())
      asked.words.resize(1 + random.below(asked.words.size()));
    out.push_back(std::move(asked));
  }
  return out;
}

void bench_search(const std::filesystem::path& folder) {
  const OpenShop shop(folder);
  const auto asked = realistic_questions(shop, questions);
  std::vector<double> p95, p50, worst;
  std::size_t rows = 0;
  for (int round = 0; round < rounds; ++round) {
    std::vector<double> ms;
    for (const auto& one : asked)
      ms.push_back(1000 * seconds([&] { rows += shop.find(one).cars.size(); }));
    std::sort(ms.begin(), ms.end());
    p95.push_back(ms[ms.size() * 95 / 100]);
    p50.push_back(ms[ms.size() / 2]);
    worst.push_back(ms.back());
  }
  std::printf("search: %zu questions, %.1f rows each\n", asked.size(),
              static_cast<double>(rows) / rounds / static_cast<double>(asked.size()));
  figure("search_p95_ms", median(p95), "ms");
  figure("search_p50_ms", median(p50), "ms");
  figure("search_worst_ms", median(worst), "ms");
  std::vector<double> counted;
  for (auto one : asked) {
    one.count = true;
    counted.push_back(1000 * seconds([&] { (void)shop.find(one); }));
  }
  std::sort(counted.begin(), counted.end());
  figure("search_counted_p95_ms", counted[counted.size() * 95 / 100], "ms");
  compare_with_sql(shop, folder);
}

}  // namespace jambline::bench
