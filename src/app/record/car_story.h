// app/record/car_story.h: one car in plain lines: what `show` prints and what a bundle's report
// says.
//
// Shape:   as JSON it is the car's view and its entries, described by EntryRow.
// Errors:  those of reading the log.
// Threads: one owner.
#pragma once

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "app/record/read_folder.h"
#include "base/describe.h"

namespace jambline::app {

struct EntryRow {
  Hash hash;
  DeviceId device;
  std::uint64_t seq{};
  std::int64_t wall_ms{};
  int clock_flags{};
  std::string person;
  int kind{};
  std::string kind_name;
  std::string words;
  bool taken_back = false;
  std::string refused;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "hash"}, self.hash);
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "seq"}, self.seq);
    visit(Field{.name = "wall_ms", .unit = "ms", .doc = "UTC since 1970"}, self.wall_ms);
    visit(Field{.name = "clock_flags"}, self.clock_flags);
    visit(Field{.name = "person", .doc = "name, or \"someone\""}, self.person);
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "kind_name"}, self.kind_name);
    visit(Field{.name = "words"}, self.words);
    visit(Field{.name = "taken_back"}, self.taken_back);
    visit(Field{.name = "refused", .doc = "why it is not obeyed; empty: it is"}, self.refused);
  }
};

struct CarStory {
  folds::CarView car;
  std::vector<EntryRow> entries;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "car"}, self.car);
    visit(Field{.name = "entries"}, self.entries);
  }
};

struct CarInFolder {
  ShopFolder folder;
  const folds::CarView* car;  // one of folder.cars
};
// Without it the error stream says why.
std::optional<CarInFolder> car_in_folder(const std::string& folder, const std::string& wanted);

Result<CarStory> story_of(const ShopFolder& folder, const folds::CarView& car);
// `entries` are all of the car.
CarStory story_of(const std::vector<entries::Entry>& entries, const folds::ShopView& shop,
                  const folds::CarView& car);
// `path` is the folder's, for its pictures.
void print_story(std::ostream& out, const CarStory& story, const folds::ShopView& shop,
                 const std::string& path);
// The same with what the report of a bundle says before it; the same log gives the same words.
std::string bundle_report(const ShopId& id, const CarStory& story, const folds::ShopView& shop,
                          const std::string& path);

}  // namespace jambline::app
