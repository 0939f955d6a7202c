#include <iostream>
#include <memory>

#include "app/command_line_words.h"
#include "app/record/commands.h"
#include "app/record/entry_lines.h"
#include "app/record/picture_lines.h"
#include "app/record/read_folder.h"
#include "base/json.h"

namespace jambline::app {

namespace {
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

struct Shown {
  folds::CarView car;
  std::vector<EntryRow> entries;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "car"}, self.car);
    visit(Field{.name = "entries"}, self.entries);
  }
};

std::string refused_words(entries::Refused refused) {
  switch (refused) {
    case entries::Refused::No:
      return "";
    case entries::Refused::AfterCut:
      return "after its device was revoked";
    case entries::Refused::NoRight:
      return "no right to say this";
  }
  return "";
}

std::string hours(std::int64_t ms) {
  const std::int64_t tenths = (ms + 180'000) / 360'000;
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " h";
}

void print_head(const folds::CarView& car, const folds::ShopView& shop) {
  const auto row = [](const char* label, const std::string& value) {
    if (!value.empty()) std::cout << label << one_line(value) << '\n';
  };
  row("car        ", car.plate);
  row("job        ", car.job.hex());
  row("VIN        ", car.vin.empty() || car.vin_passes ? car.vin : car.vin + ", does not check");
  row("color      ",
      car.color.code.empty() ? car.color.name : car.color.name + ", " + car.color.code);
  row("body       ", std::string(word_of(car.body)) + ", " + std::string(word_of(car.drive)));
  row("opened     ", time_of(car.opened_ms, shop.zone));
  row("promised   ", car.promised_ms ? time_of(*car.promised_ms, shop.zone) : "");
  row("delivered  ", car.delivered_ms ? time_of(*car.delivered_ms, shop.zone) : "");
  for (const auto& conflict : car.conflicts)
    for (const auto& other : conflict.others)
      std::cout << "disputed   " << conflict.label << ": " << one_line(other) << " stands too\n";
  if (car.unknown_entries > 0)
    std::cout << car.unknown_entries << " entries of a newer version are kept as they are\n";
  if (car.refused_entries > 0)
    std::cout << car.refused_entries << (car.refused_entries == 1 ? " entry is" : " entries are")
              << " refused and not obeyed\n";
}

void print_panels(const folds::CarView& car) {
  std::cout << "\npanels\n";
  for (const auto& panel : car.panels) {
    std::cout << "  " << word_of(panel.plan.panel) << (panel.plan.on_car ? ": " : " (loose): ")
              << word_of(panel.verdict) << (panel.edges_and_back ? ", edges and back" : "")
              << (panel.disputed ? ", disputed" : "");
    if (panel.dirt != job::DirtClass::None) std::cout << ", dirt all over " << word_of(panel.dirt);
    if (panel.release.state != folds::ReleaseState::None)
      std::cout << ", " << word_of(panel.release.state);
    std::cout << '\n';
    for (const auto& mark : panel.marks)
      std::cout << "    " << mark.number << "  " << word_of(mark.defect) << ", size " << mark.size
                << ", at " << static_cast<int>(mark.x_mm + 0.5) << " x "
                << static_cast<int>(mark.y_mm + 0.5) << " mm\n";
  }
}

void print_hours(const folds::CarView& car, const folds::ShopView& shop) {
  std::cout << "\nhours\n";
  for (const auto& operation : car.operations) {
    std::cout << "  "
              << (operation.title.empty() ? std::string(word_of(operation.stage))
                                          : one_line(operation.title))
              << ": " << hours(operation.clocked_ms);
    if (operation.estimate_min > 0)
      std::cout << " of " << hours(std::int64_t{operation.estimate_min} * 60'000);
    for (const auto& running : car.running)
      if (running.operation == operation.operation)
        std::cout << ", " << name_of(running.person, shop)
                  << (running.paused ? " paused" : " runs");
    std::cout << '\n';
  }
}

void print_pictures(const folds::CarView& car, const folds::ShopView& shop,
                    const std::string& folder) {
  if (car.pictures.empty()) return;
  blobs::PosixFiles files;
  const auto kept = blobs::BlobStore::open_read_only(files, blobs_of(folder));
  std::cout << "\npictures\n";
  for (const auto& picture : car.pictures) {
    const auto here = kept ? (*kept)->has(picture.facts.file) : Result<bool>(false);
    std::cout << "  " << place_of(picture, shop) << ": " << word_of(picture.facts.word)
              << (picture.kept_though_poor ? ", kept by a person" : "") << ", "
              << bytes_of(static_cast<std::uint64_t>(picture.facts.size_bytes)) << ", "
              << picture.facts.file.hex() << (here && *here ? "" : ", not here") << '\n';
  }
}

}  // namespace

int show(const ShowAsked& asked) {
  const auto folder = read_folder(asked.folder);
  if (!folder) {
    std::cerr << said(folder.error());
    return 2;
  }
  const auto car = find_car(*folder, asked.car);
  if (!car) {
    if (car.error().code == Code::Disputed)
      std::cerr << "several cars fit \"" << asked.car << "\": " << car.error().arg("cars")
                << "\nto do: name one by the signs in brackets\n";
    else
      std::cerr << said(car.error());
    return 2;
  }
  const auto entries = time_line(*folder, (*car)->job);
  if (!entries) {
    std::cerr << said(entries.error());
    return 2;
  }
  const folds::History history(*entries);
  const Shop shop{folder->shop, history};
  Shown shown{**car, {}};
  for (const auto& entry : *entries)
    shown.entries.push_back({entry.hash, entry.order.device, entry.order.seq, entry.wall_ms,
                             entry.clock_flags, name_of(entry.person, folder->shop), entry.kind,
                             entries::kind_name(entry.kind), line_of(entry, shop),
                             history.taken_back(entry.hash) != nullptr,
                             refused_words(entry.refused)});
  if (asked.json) {
    std::cout << to_json(shown) << '\n';
    return 0;
  }
  print_head(**car, folder->shop);
  print_panels(**car);
  print_hours(**car, folder->shop);
  print_pictures(**car, folder->shop, asked.folder);
  std::cout << "\ntime line, " << shown.entries.size() << " entries\n";
  for (const auto& row : shown.entries)
    std::cout << "  " << time_of(row.wall_ms, folder->shop.zone)
              << (row.clock_flags ? " (clock in doubt)  " : "  ") << row.person << "  " << row.words
              << (row.taken_back ? "  [taken back]" : "")
              << (row.refused.empty() ? "" : "  [refused: " + row.refused + "]") << '\n';
  return 0;
}

}  // namespace jambline::app
