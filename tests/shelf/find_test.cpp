// The search of the shelf: the same answers as a plain scan of all cars, whatever is typed.
#include <gtest/gtest.h>
#include <iterator>
#include <map>
#include <rapidcheck.h>
#include <set>

#include "shelf/shelf.h"
#include "tests/log/log_folder.h"
#include "tests/whole_file.h"

namespace jambline::shelf {
namespace {

using log::TempFolder;

template <class T>
T must(Result<T> result) {
  if (!result) {
    ADD_FAILURE() << code_name(result.error().code) << " " << result.error().arg("cause");
    std::abort();
  }
  return std::move(*result);
}

const ShopId a_shop{{1}};
const PersonId person_ivo{{11}};
const PersonId person_mara{{12}};

std::shared_ptr<const Names> plain_kinds() {
  return std::make_shared<const Names>(
      folds::named_kinds([](auto kind) { return std::string(word_of(kind)); }));
}
std::shared_ptr<const Names> names_of_two() {
  return std::make_shared<const Names>(
      Names{{folds::find_code(person_ivo), "Ivo"}, {folds::find_code(person_mara), "Mara Lind"}});
}

folds::CarView car_number(std::uint8_t number, std::int64_t opened_ms) {
  folds::CarView car;
  car.job.bytes[15] = number;
  car.opened = true;
  car.opened_ms = opened_ms;
  return car;
}

void add_mark(folds::CarView& car, job::Panel panel, job::DefectKind defect) {
  folds::PanelView view;
  view.plan.panel = panel;
  folds::MarkView mark;
  mark.defect = defect;
  view.marks.push_back(mark);
  car.panels.push_back(view);
}

void add_note(folds::CarView& car, std::string text) {
  car.visit.notes.push_back({std::move(text), {}, 0, {}});
}

class Searched {
 public:
  Searched() : shelf_(must(Shelf::open(folder_.path(), a_shop))) {}
  void put(const std::vector<folds::CarView>& cars) {
    std::vector<Car> rows;
    for (const auto& car : cars) rows.push_back(car_of(car));
    const auto put = shelf_.put(rows, 1);
    ASSERT_TRUE(put) << put.error().arg("cause");
  }
  Found ask(FindAsked asked) {
    if (!find_) {
      find_ = must(Find::open(shelf_.where()));
      find_->know(plain_kinds(), names_of_two());
    }
    return must(find_->find(asked));
  }
  // The last byte of each job that was found.
  std::vector<int> found(const FindAsked& asked) {
    std::vector<int> out;
    for (const auto& car : ask(asked).cars) out.push_back(car.row.job.bytes[15]);
    return out;
  }
  std::vector<int> found(const std::string& words) {
    FindAsked asked;
    asked.words = words;
    return found(asked);
  }
  Shelf& shelf() { return shelf_; }
  const std::filesystem::path& folder() const { return folder_.path(); }

 private:
  TempFolder folder_;
  Shelf shelf_;
  std::optional<Find> find_;
};

// A plain scan, with a way of its own to take texts apart: ASCII and a few letters with accents.
std::vector<std::string> plain_words(const std::string& text) {
  static const std::map<std::string, char> accents{
      {"ä", 'a'}, {"Ä", 'a'}, {"é", 'e'}, {"ü", 'u'}, {"ñ", 'n'}};
  std::vector<std::string> out(1);
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto found = accents.find(text.substr(i, 2));
    if (found != accents.end()) {
      out.back().push_back(found->second);
      ++i;
    } else if (std::isalnum(static_cast<unsigned char>(text[i]))) {
      out.back().push_back(static_cast<char>(std::tolower(text[i])));
    } else if (!out.back().empty()) {
      out.emplace_back();
    }
  }
  if (out.back().empty()) out.pop_back();
  return out;
}

bool begins(const std::string& text, const std::string& with) {
  return text.compare(0, with.size(), with) == 0;
}

bool stands_in(const std::vector<std::string>& words, const std::string& text) {
  const auto there = plain_words(text);
  for (std::size_t from = 0; from + words.size() <= there.size(); ++from) {
    bool fits = true;
    for (std::size_t i = 0; i < words.size(); ++i)
      fits = fits && (i + 1 < words.size() ? there[from + i] == words[i]
                                           : begins(there[from + i], words[i]));
    if (fits) return true;
  }
  return false;
}

std::string together(const std::vector<std::string>& words) {
  std::string out;
  for (const auto& word : words) out += word;
  return out;
}

bool ends_with_it(const std::string& label, const std::string& word, std::size_t least) {
  const std::string whole = together(plain_words(label));
  for (std::size_t from = 0; from < whole.size(); ++from)
    if ((from == 0 || whole.size() - from >= least) && begins(whole.substr(from), word))
      return true;
  return false;
}

bool scan_finds(const folds::CarView& car, const std::string& typed) {
  std::vector<std::string> texts{car.plate, car.vin, car.color.name + "\n" + car.color.code};
  std::string notes;
  for (const auto& note : car.visit.notes) notes += "\n" + note.text;
  texts.push_back(notes);
  std::string work;
  for (const auto& operation : car.operations)
    work += "\n" + operation.title + "\n" + operation.why;
  texts.push_back(work);
  std::vector<std::string> kinds{std::string(word_of(car.body))};
  for (const auto& panel : car.panels) {
    kinds.emplace_back(word_of(panel.plan.panel));
    for (const auto& mark : panel.marks) kinds.emplace_back(word_of(mark.defect));
  }
  for (const auto& seen : car.seen)
    kinds.emplace_back(seen.person == person_ivo ? "Ivo" : "Mara Lind");
  std::size_t at = 0;
  while (at < typed.size()) {
    const std::size_t end = std::min(typed.find(' ', at), typed.size());
    const auto words = plain_words(typed.substr(at, end - at));
    at = end + 1;
    if (words.empty()) continue;
    bool found = ends_with_it(car.plate, together(words), 2) ||
                 ends_with_it(car.vin, together(words), 4) ||
                 begins(together(plain_words(car.color.code)), together(words));
    for (const auto& text : texts) found = found || stands_in(words, text);
    for (const auto& kind : kinds) found = found || stands_in(words, kind);
    if (!found) return false;
  }
  return true;
}

const std::vector<std::string> some_words{
    "hose",  "Läufer", "42",      "K",      "7b",  "crater", "left", "door", "ivo",
    "mara",  "señal",  "red",     "deep",   "run", "TY",     "hood", "lind", "burn",
    "0TYA9", "123456", "defect3", "person", "AND", "not",    "NEAR", "4711"};

rc::Gen<std::string> some_text(int most) {
  return rc::gen::map(
      rc::gen::container<std::vector<std::pair<int, int>>>(rc::gen::pair(
          rc::gen::inRange(0, static_cast<int>(some_words.size())), rc::gen::inRange(0, 6))),
      [most](std::vector<std::pair<int, int>> picked) {
        static const char* const between[] = {" ", "-", ", ", "\n", " ", ""};
        std::string out;
        picked.resize(std::min<std::size_t>(picked.size(), static_cast<std::size_t>(most)));
        for (const auto& [word, sign] : picked) {
          if (!out.empty()) out += between[sign];
          out += some_words[static_cast<std::size_t>(word)];
        }
        return out;
      });
}

folds::CarView any_car(std::uint8_t number) {
  folds::CarView car = car_number(number, 1'790'000'000'000 + *rc::gen::inRange(0, 4));
  car.plate = *some_text(3);
  car.vin = together(plain_words(*some_text(2)));
  car.color.name = *some_text(2);
  car.color.code = *some_text(2);
  if (*rc::gen::arbitrary<bool>()) add_note(car, *some_text(6));
  if (*rc::gen::arbitrary<bool>()) {
    folds::OperationView operation;
    operation.title = *some_text(3);
    car.operations.push_back(operation);
  }
  if (*rc::gen::arbitrary<bool>())
    add_mark(car, *rc::gen::element(job::Panel::Hood, job::Panel::LeftFrontDoor),
             *rc::gen::element(job::DefectKind::Crater, job::DefectKind::RunOrSag,
                               job::DefectKind::BurnThrough));
  if (*rc::gen::arbitrary<bool>())
    car.seen.push_back({*rc::gen::element(person_ivo, person_mara), 0, 0, {}});
  return car;
}

// A word or the beginning of one, with signs that mean something to others around it.
std::string any_question() {
  static const char* const signs[] = {"", "", "", "\"", "*", "(", "-", ":", "^", "'", "{", "+"};
  std::string out;
  const int words = *rc::gen::inRange(0, 4);
  for (int i = 0; i < words; ++i) {
    const std::string word =
        *rc::gen::elementOf(some_words) +
        (*rc::gen::arbitrary<bool>() ? "" : "-" + *rc::gen::elementOf(some_words));
    const auto some = plain_words(word).size() > 1
                          ? word.size()
                          : 1 + *rc::gen::inRange<std::size_t>(0, word.size());
    std::string part = word.substr(0, some);
    while (!part.empty() && (static_cast<unsigned char>(part.back()) & 0xC0U) == 0xC0U)
      part.pop_back();
    out += std::string(i > 0 ? " " : "") + signs[*rc::gen::inRange(0, 12)] + part +
           signs[*rc::gen::inRange(0, 12)];
  }
  return out;
}

void equals_a_scan() {
  const int count = *rc::gen::inRange(0, 14);
  std::vector<folds::CarView> cars;
  for (int number = 0; number < count; ++number)
    cars.push_back(any_car(static_cast<std::uint8_t>(number + 1)));
  Searched searched;
  searched.put(cars);
  // Some are written again as they are, some as others.
  for (auto& car : cars)
    if (*rc::gen::inRange(0, 3) == 0) {
      car = any_car(car.job.bytes[15]);
      searched.put({car});
    }
  for (int question = 0; question < 4; ++question) {
    const std::string typed = any_question();
    std::map<int, std::int64_t> wanted;
    for (const auto& car : cars)
      if (scan_finds(car, typed)) wanted[car.job.bytes[15]] = car.opened_ms;
    FindAsked asked;
    asked.words = typed;
    asked.most = *rc::gen::inRange(1, 5);
    asked.count = true;
    std::set<int> got;
    std::int64_t last_ms = INT64_MAX;
    while (true) {
      const Found page = searched.ask(asked);
      RC_ASSERT(page.all == static_cast<std::int64_t>(wanted.size()));
      for (const auto& car : page.cars) {
        RC_ASSERT(car.row.opened_ms <= last_ms);
        last_ms = car.row.opened_ms;
        RC_ASSERT(got.insert(car.row.job.bytes[15]).second);
        for (const auto& hit : car.hits) RC_ASSERT(!hit.text.empty());
      }
      if (!page.next) break;
      RC_ASSERT(page.cars.size() == static_cast<std::size_t>(asked.most));
      asked.after = page.next;
    }
    std::set<int> all;
    for (const auto& [number, opened] : wanted) all.insert(number);
    RC_ASSERT(got == all);
  }
}

TEST(ShelfFind, EqualsAScanOfAllCarsPageByPage) {
  EXPECT_TRUE(rc::check(equals_a_scan));
}

void any_bytes_are_no_error() {
  static Searched* const searched = [] {
    auto* out = new Searched;
    auto car = car_number(1, 1'790'000'000'000);
    car.plate = "K 41-206";
    out->put({car});
    return out;
  }();
  const auto bytes = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
  (void)searched->found(bytes);
  FindAsked asked;
  asked.color = bytes;
  (void)searched->found(asked);
}

TEST(ShelfFind, AnyBytesAreNoError) {
  EXPECT_TRUE(rc::check(any_bytes_are_no_error));
}

TEST(ShelfFind, SignsOfTheQueryLanguageMeanNothing) {
  Searched searched;
  auto car = car_number(1, 1'790'000'000'000);
  car.plate = "K 41-206";
  car.color = {"TY 305", "deep green", ""};
  add_note(car, "near the column: AND or NOT, \"quoted\" * ^ 100 %");
  searched.put({car});
  const std::vector<int> one{1};
  for (const char* words : {"",
                            " ",
                            "\"",
                            "\"\"",
                            "*",
                            "***",
                            "-",
                            "--",
                            ":",
                            "()",
                            "NEAR",
                            "near(",
                            "AND",
                            "OR or",
                            "NOT",
                            "column:",
                            "plate:K",
                            "\"quoted",
                            "quoted*",
                            "^near",
                            "{near}",
                            "+near",
                            "100%",
                            "k41206",
                            "K-41-206",
                            "41 206",
                            "206",
                            "\x01\x02near\x7F",
                            "near\tNOT\nand",
                            "{",
                            "'near'",
                            "ty305",
                            "TY 305",
                            "green deep"})
    EXPECT_EQ(searched.found(words), words == std::string("plate:K") ? std::vector<int>{} : one)
        << words;
  EXPECT_TRUE(searched.found("nearby").empty());
  EXPECT_TRUE(searched.found("codes:person").empty());
  EXPECT_TRUE(searched.found("person body1").empty()) << "nobody types a code";
}

TEST(ShelfFind, TenThousandSignsAreSearchedByTheFirstWords) {
  Searched searched;
  auto car = car_number(1, 1'790'000'000'000);
  add_note(car, "wet");
  searched.put({car});
  EXPECT_TRUE(searched.found(std::string(10'000, 'w')).empty());
  EXPECT_EQ(searched.found("wet" + std::string(10'000, '*')), std::vector<int>{1});
  std::string many;
  while (many.size() < 10'000) many += "wet ";
  FindAsked asked;
  asked.words = many;
  const Found found = searched.ask(asked);
  EXPECT_EQ(found.cars.size(), 1U);
  EXPECT_TRUE(found.words_left_out);
  EXPECT_TRUE(searched.found(std::string(10'000, '"')).size() == 1) << "no word, so every car";
}

TEST(ShelfFind, FindsHalfAPlateTheEndOfAVinNamesAndKinds) {
  Searched searched;
  auto first = car_number(1, 1'790'000'000'000);
  first.plate = "K 41-206";
  first.vin = "0TYA9B3X0HA123456";
  first.seen.push_back({person_mara, 0, 0, {}});
  add_mark(first, job::Panel::Hood, job::DefectKind::RunOrSag);
  auto second = car_number(2, 1'790'000'000'001);
  second.plate = "S 88-014";
  second.cause = folds::CauseView{job::DirtCause::Hose, false, {}, 0, {}};
  second.seen.push_back({person_ivo, 0, 0, {}});
  searched.put({first, second});
  EXPECT_EQ(searched.found("1-20"), std::vector<int>{1});
  EXPECT_EQ(searched.found("120"), std::vector<int>{1});
  EXPECT_EQ(searched.found("123456"), std::vector<int>{1});
  EXPECT_EQ(searched.found("HA123456"), std::vector<int>{1});
  EXPECT_EQ(searched.found("sag mara"), std::vector<int>{1});
  EXPECT_EQ(searched.found("hose"), std::vector<int>{2});
  EXPECT_EQ(searched.found("lind"), std::vector<int>{1});
  EXPECT_TRUE(searched.found("hose mara").empty());
  EXPECT_EQ(searched.found(""), (std::vector<int>{2, 1})) << "the newest stands first";
  FindAsked asked;
  asked.people = {person_ivo};
  EXPECT_EQ(searched.found(asked), std::vector<int>{2});
  asked = {};
  asked.defects = {job::DefectKind::RunOrSag, job::DefectKind::Nib};
  EXPECT_EQ(searched.found(asked), std::vector<int>{1});
  asked = {};
  asked.causes = {job::DirtCause::Hose};
  EXPECT_EQ(searched.found(asked), std::vector<int>{2});
}

TEST(ShelfFind, SaysWhereEachWordWasFound) {
  Searched searched;
  auto car = car_number(1, 1'790'000'000'000);
  car.plate = "K 41-206";
  add_note(car, "first line\nThe Fähre came wet out of the yard");
  car.seen.push_back({person_ivo, 0, 0, {}});
  searched.put({car});
  FindAsked asked;
  asked.words = "FAHR 41206 iv";
  const Found found = searched.ask(asked);
  ASSERT_EQ(found.cars.size(), 1U);
  const auto& hits = found.cars.front().hits;
  ASSERT_EQ(hits.size(), 3U);
  EXPECT_EQ(hits[0].field, folds::FindField::Notes);
  EXPECT_EQ(hits[0].text, "The Fähre came wet out of the yard");
  EXPECT_EQ(hits[0].text.substr(static_cast<std::size_t>(hits[0].begin),
                                static_cast<std::size_t>(hits[0].end - hits[0].begin)),
            "Fähre");
  EXPECT_EQ(hits[1].field, folds::FindField::Plate);
  EXPECT_EQ(hits[1].text, "K 41-206");
  EXPECT_EQ(hits[2].field, folds::FindField::Person);
  EXPECT_EQ(hits[2].text, "Ivo");
  EXPECT_EQ(hits[2].code, folds::find_code(person_ivo));
}

TEST(ShelfFind, FactsChooseAloneAndWithWords) {
  Searched searched;
  constexpr std::int64_t hour = 3'600'000;
  constexpr std::int64_t start = 1'790'000'000'000;
  auto late = car_number(1, start);
  late.promised_ms = start + hour;
  late.delivered_ms = start + 2 * hour;
  auto in_time = car_number(2, start + 1);
  in_time.promised_ms = start + 3 * hour;
  in_time.delivered_ms = start + 2 * hour;
  auto due = car_number(3, start + 2);
  due.promised_ms = start + 4 * hour;
  due.stages = {{job::Stage::Spray, true, {}, {}, 2}, {job::Stage::Inspect, false, {}, {}, {}}};
  folds::OperationView redo;
  redo.work = job::WorkKind::Redo;
  due.operations = {redo};
  auto sprayed = car_number(4, start + 3);
  folds::SprayView spray;
  spray.booth = BoothId{{7}};
  spray.checks = {{job::GunItem::FitTested, job::CutAnswer::No, job::GunReason::RecordNotHere,
                   "paper is in the office"}};
  sprayed.air.sprays = {spray};
  sprayed.air.without = {{BoothId{{8}}, {job::GunItem::SealOrFlow}, {}, {}, {}}};
  searched.put({late, in_time, due, sprayed});
  const auto by = [&](auto set) {
    FindAsked asked;
    asked.now_ms = start + 2 * hour;
    set(asked);
    return searched.found(asked);
  };
  using List = std::vector<int>;
  EXPECT_EQ(by([](auto& a) { a.late = true; }), (List{1}));
  EXPECT_EQ(by([](auto& a) { a.late = false; }), (List{4, 3, 2}));
  EXPECT_EQ(by([](auto& a) {
              a.late = true;
              a.now_ms = start + 5 * hour;
            }),
            (List{3, 1}))
      << "a car in work becomes late by itself";
  EXPECT_EQ(by([](auto& a) { a.delivered = true; }), (List{2, 1}));
  EXPECT_EQ(by([](auto& a) { a.delivered = false; }), (List{4, 3}));
  EXPECT_EQ(by([](auto& a) { a.redo = true; }), (List{3}));
  EXPECT_EQ(by([](auto& a) { a.pictures_missing = true; }), (List{3}));
  EXPECT_EQ(by([](auto& a) { a.next_stages = {job::Stage::Inspect}; }), (List{3}));
  EXPECT_EQ(by([](auto& a) { a.spray_override = true; }), (List{4}));
  EXPECT_EQ(by([](auto& a) { a.sprayed_without = true; }), (List{4}));
  EXPECT_EQ(by([](auto& a) { a.spray_override = false; }), (List{3, 2, 1}));
  EXPECT_EQ(by([](auto& a) { a.booths = {BoothId{{7}}}; }), (List{4}));
  EXPECT_EQ(by([](auto& a) { a.opened_from_ms = start + 1; }), (List{4, 3, 2}));
  EXPECT_EQ(by([](auto& a) { a.opened_to_ms = start + 1; }), (List{1}));
  EXPECT_EQ(by([](auto& a) {
              a.words = "office";
              a.spray_override = true;
            }),
            (List{4}));
  EXPECT_EQ(by([](auto& a) {
              a.words = "office";
              a.late = true;
            }),
            (List{}));
}

std::string shelf_bytes(const std::filesystem::path& folder) {
  return test::whole_file(folder / "shelf.db") + test::whole_file(folder / "shelf.db-wal");
}

TEST(ShelfFind, AnErasedTextLeavesTheFileAndNamesAreNeverInIt) {
  Searched searched;
  auto car = car_number(1, 1'790'000'000'000);
  add_note(car, "Zanzibarius signed");
  car.seen.push_back({person_ivo, 0, 0, {}});
  std::vector<folds::CarView> others;
  for (std::uint8_t number = 2; number < 60; ++number) {
    others.push_back(car_number(number, 1'790'000'000'000 + number));
    add_note(others.back(), "note number " + std::to_string(number));
  }
  searched.put({car});
  searched.put(others);
  EXPECT_EQ(searched.found("zanzibarius"), std::vector<int>{1});
  EXPECT_EQ(searched.found("ivo"), std::vector<int>{1});
  EXPECT_NE(shelf_bytes(searched.folder()).find("zanzibarius"), std::string::npos);
  car.visit.notes.clear();
  searched.put({car});
  ASSERT_TRUE(searched.shelf().forget_erased());
  EXPECT_TRUE(searched.found("zanzibarius").empty());
  const std::string bytes = shelf_bytes(searched.folder());
  for (const char* gone : {"Zanzibarius", "zanzibarius", "anzibariu", "Ivo", "ivo", "Mara"})
    EXPECT_EQ(bytes.find(gone), std::string::npos) << gone;
  EXPECT_NE(bytes.find("note number 17"), std::string::npos);
}

TEST(ShelfFind, ACarThatMovesOrGoesIsFoundOnceOrNotAtAll) {
  Searched searched;
  auto car = car_number(1, 1'790'000'000'000);
  auto other = car_number(2, 1'790'000'000'500);
  add_note(car, "wet");
  add_note(other, "wet");
  searched.put({car, other});
  EXPECT_EQ(searched.found("wet"), (std::vector<int>{2, 1}));
  car.opened_ms += 1000;
  searched.put({car});
  EXPECT_EQ(searched.found("wet"), (std::vector<int>{1, 2}));
  ASSERT_TRUE(searched.shelf().drop(other.job, 2));
  EXPECT_EQ(searched.found("wet"), std::vector<int>{1});
  ASSERT_TRUE(searched.shelf().clear());
  EXPECT_TRUE(searched.found("wet").empty());
  searched.put({other});
  EXPECT_EQ(searched.found("wet"), std::vector<int>{2});
}

TEST(ShelfFind, TimesThatNoClockHasStayInOrder) {
  Searched searched;
  searched.put({car_number(1, INT64_MIN), car_number(2, -5), car_number(3, 0),
                car_number(4, 1'790'000'000'000), car_number(5, INT64_MAX)});
  const auto found = searched.found("");
  ASSERT_EQ(found.size(), 5U);
  EXPECT_EQ(found[0], 5);
  EXPECT_EQ(found[1], 4);
}

TEST(ShelfFind, AStoppedQuestionSaysSo) {
  Searched searched;
  auto find = must(Find::open(searched.shelf().where()));
  std::stop_source stop;
  stop.request_stop();
  const auto found = find.find({}, stop.get_token());
  ASSERT_FALSE(found);
  EXPECT_EQ(found.error().code, Code::Stopped);
}

TEST(ShelfFind, AShelfInMemoryAnswersTheSame) {
  auto shelf = must(Shelf::in_memory(a_shop));
  auto car = car_number(1, 1'790'000'000'000);
  add_note(car, "wet");
  ASSERT_TRUE(shelf.put({car_of(car)}, 1));
  auto find = must(Find::open(shelf.where()));
  FindAsked asked;
  asked.words = "we";
  EXPECT_EQ(must(find.find(asked)).cars.size(), 1U);
  add_note(car, "dry");
  ASSERT_TRUE(shelf.put({car_of(car)}, 2)) << "beside a reader";
  asked.words = "dry";
  EXPECT_EQ(must(find.find(asked)).cars.size(), 1U);
  auto another = must(Shelf::in_memory(a_shop));
  EXPECT_TRUE(must(must(Find::open(another.where())).find({})).cars.empty());
}

TEST(ShelfFind, AFolderThatMayNotBeWrittenIsRead) {
  TempFolder folder;
  {
    auto shelf = must(Shelf::open(folder.path(), a_shop));
    auto car = car_number(1, 1'790'000'000'000);
    ASSERT_TRUE(shelf.put({car_of(car)}, 1));
  }
  auto find = must(Find::open({folder.path() / "shelf.db", {}}));
  EXPECT_EQ(must(find.find({})).cars.size(), 1U);
  const auto stamp = must(find.stamp());
  EXPECT_EQ(stamp.shop, a_shop.hex());
  EXPECT_EQ(stamp.version, fold_version);
  EXPECT_EQ(stamp.arrival, 1);
  EXPECT_FALSE(Find::open({folder.path() / "none.db", {}}));
}

}  // namespace
}  // namespace jambline::shelf
