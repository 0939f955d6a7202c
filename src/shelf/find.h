// shelf/find.h: the cars that fit, newest first.
//
// Words:   as people type them. Each one has to be found, in whatever order and whatever field: at
//          the beginning of a word of the car, or in the name of one of its codes
//          (folds/find_words.h), or anywhere in plate and VIN. No sign means anything: what holds
//          no letter and no digit is passed over. Of more than `most_words` the rest is not looked
//          for, and `words_left_out` says so.
// Order:   by opening, newest first, the same on every device and from every rebuilt shelf. A place
//          names a car's row in it: `after` a place goes on where a page ended.
// Reads:   what was committed last, with a connection of its own; writers never wait for it but in
//          the shelf in memory, where they wait for the one query.
// Threads: one at a time.
// Errors:  NoSuchFile, DatabaseDamaged, Stopped, FileFailed.
#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "base/describe.h"
#include "base/error.h"
#include "folds/find_words.h"
#include "folds/floor_view.h"
#include "shelf/tokens.h"
#include "sqlite/sqlite.h"

namespace jambline::shelf {

// Where a shelf can be read while it is written.
struct Whereabouts {
  std::filesystem::path file;
  std::string vfs;  // empty: the usual one
};

// All that is set has to hold. Of several people, defects or causes one is enough.
struct FindAsked {
  std::string words;
  std::string color;  // words that have to stand in the color
  std::optional<std::int64_t> opened_from_ms = {};
  std::optional<std::int64_t> opened_to_ms = {};  // before it
  std::optional<bool> delivered = {};
  std::optional<bool> late = {};  // delivered after the promise, or past it now
  std::vector<job::Stage> next_stages = {};
  std::vector<BoothId> booths = {};
  std::vector<PersonId> people = {};
  std::vector<job::DefectKind> defects = {};
  std::vector<job::DirtCause> causes = {};
  std::optional<bool> redo = {};
  std::optional<bool> came_back = {};
  std::optional<bool> spray_override = {};
  std::optional<bool> other_override = {};
  std::optional<bool> sprayed_without = {};
  std::optional<bool> pictures_missing = {};
  std::optional<bool> amended = {};
  std::optional<bool> disputed = {};
  // Not described: not part of the question.
  std::int64_t now_ms = 0;  // for `late`
  int most = 50;
  std::optional<std::int64_t> after = {};
  bool count = false;  // how many there are in all; costs as much as reading them
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "words"}, self.words);
    visit(Field{.name = "color"}, self.color);
    visit(Field{.name = "opened_from_ms", .unit = "ms"}, self.opened_from_ms);
    visit(Field{.name = "opened_to_ms", .unit = "ms"}, self.opened_to_ms);
    visit(Field{.name = "delivered"}, self.delivered);
    visit(Field{.name = "late"}, self.late);
    visit(Field{.name = "next_stages"}, self.next_stages);
    visit(Field{.name = "booths"}, self.booths);
    visit(Field{.name = "people"}, self.people);
    visit(Field{.name = "defects"}, self.defects);
    visit(Field{.name = "causes"}, self.causes);
    visit(Field{.name = "redo"}, self.redo);
    visit(Field{.name = "came_back"}, self.came_back);
    visit(Field{.name = "spray_override"}, self.spray_override);
    visit(Field{.name = "other_override"}, self.other_override);
    visit(Field{.name = "sprayed_without"}, self.sprayed_without);
    visit(Field{.name = "pictures_missing"}, self.pictures_missing);
    visit(Field{.name = "amended"}, self.amended);
    visit(Field{.name = "disputed"}, self.disputed);
  }
  friend bool operator==(const FindAsked&, const FindAsked&) = default;
};

// Where one typed word was found; of several places the first field. `text` is the line around it.
struct FindHit {
  std::string typed;
  folds::FindField field{};
  std::string text;
  int begin = 0;  // bytes of `text` that fit the word; of a code: none
  int end = 0;
  std::string code;  // `text` is the name it was asked by
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "typed"}, self.typed);
    visit(Field{.name = "field"}, self.field);
    visit(Field{.name = "text"}, self.text);
    visit(Field{.name = "begin", .doc = "bytes of the text"}, self.begin);
    visit(Field{.name = "end"}, self.end);
    visit(Field{.name = "code"}, self.code);
  }
  friend bool operator==(const FindHit&, const FindHit&) = default;
};

struct FoundCar {
  folds::FloorRow row;
  std::int64_t place{};
  std::vector<FindHit> hits;  // one a typed word, in the order in which they were typed
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "row"}, self.row);
    visit(Field{.name = "place"}, self.place);
    visit(Field{.name = "hits"}, self.hits);
  }
  friend bool operator==(const FoundCar&, const FoundCar&) = default;
};

struct Found {
  std::vector<FoundCar> cars;
  std::optional<std::int64_t> next;  // there are more: ask `after` this
  std::optional<std::int64_t> all;   // when it was asked for
  bool words_left_out = false;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "cars"}, self.cars);
    visit(Field{.name = "next"}, self.next);
    visit(Field{.name = "all"}, self.all);
    visit(Field{.name = "words_left_out"}, self.words_left_out);
  }
  friend bool operator==(const Found&, const Found&) = default;
};

using Names = std::vector<folds::NamedCode>;

class Find {
 public:
  static constexpr std::size_t most_words = 16;
  static constexpr std::size_t most_word_bytes = 64;

  static Result<Find> open(const Whereabouts& where);

  // By whom the codes are called what; the same list as before costs nothing.
  void know(std::shared_ptr<const Names> kinds, std::shared_ptr<const Names> of_shop);
  Result<Found> find(const FindAsked& asked, const std::stop_token& stop = {});

  // What the shelf knows, read now.
  struct Stamp {
    std::string shop;
    std::int64_t version{};
    std::int64_t arrival{};
    std::string rights;
  };
  Result<Stamp> stamp();

 private:
  struct Name {
    const folds::NamedCode* named;
    std::vector<Token> tokens;
  };
  struct Word {
    std::string typed;
    std::vector<Token> tokens;
    std::vector<Token> squeezed;
    std::vector<const folds::NamedCode*> codes;
  };
  std::vector<Word> words_of(const std::string& typed, bool& left_out) const;
  std::vector<FindHit> hits_of(const std::vector<Word>& words, const sqlite::Statement& row) const;
  bool hit_in_text(const Word& word, std::size_t column, std::string_view text, FindHit& out) const;

  std::unique_ptr<sqlite::Database> database_;
  std::optional<Tokens> tokens_;
  std::shared_ptr<const Names> kinds_;
  std::shared_ptr<const Names> of_shop_;
  std::vector<Name> names_of_kinds_;
  std::vector<Name> names_of_shop_;
};

}  // namespace jambline::shelf
