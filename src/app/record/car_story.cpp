#include "app/record/car_story.h"

#include <iostream>
#include <ostream>
#include <sstream>

#include "app/command_line_words.h"
#include "app/record/entry_lines.h"
#include "app/record/picture_lines.h"
#include "folds/history.h"
#include "seal/fingerprint.h"

namespace jambline::app {

namespace {
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

void print_head(std::ostream& out, const folds::CarView& car, const folds::ShopView& shop) {
  const auto row = [&out](const char* label, const std::string& value) {
    if (!value.empty()) out << label << one_line(value) << '\n';
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
      out << "disputed   " << conflict.label << ": " << one_line(other) << " stands too\n";
  if (car.unknown_entries > 0)
    out << car.unknown_entries << " entries of a newer version are kept as they are\n";
  if (car.refused_entries > 0)
    out << car.refused_entries << (car.refused_entries == 1 ? " entry is" : " entries are")
        << " refused and not obeyed\n";
}

void print_panels(std::ostream& out, const folds::CarView& car) {
  out << "\npanels\n";
  for (const auto& panel : car.panels) {
    out << "  " << word_of(panel.plan.panel) << (panel.plan.on_car ? ": " : " (loose): ")
        << word_of(panel.verdict) << (panel.edges_and_back ? ", edges and back" : "")
        << (panel.disputed ? ", disputed" : "");
    if (panel.dirt != job::DirtClass::None) out << ", dirt all over " << word_of(panel.dirt);
    if (panel.release.state != folds::ReleaseState::None)
      out << ", " << word_of(panel.release.state);
    out << '\n';
    for (const auto& mark : panel.marks)
      out << "    " << mark.number << "  " << word_of(mark.defect) << ", size " << mark.size
          << ", at " << static_cast<int>(mark.x_mm + 0.5) << " x "
          << static_cast<int>(mark.y_mm + 0.5) << " mm\n";
  }
}

void print_hours(std::ostream& out, const folds::CarView& car, const folds::ShopView& shop) {
  out << "\nhours\n";
  for (const auto& operation : car.operations) {
    out << "  "
        << (operation.title.empty() ? std::string(word_of(operation.stage))
                                    : one_line(operation.title))
        << ": " << hours(operation.clocked_ms);
    if (operation.estimate_min > 0)
      out << " of " << hours(std::int64_t{operation.estimate_min} * 60'000);
    for (const auto& running : car.running)
      if (running.operation == operation.operation)
        out << ", " << name_of(running.person, shop) << (running.paused ? " paused" : " runs");
    out << '\n';
  }
}

void print_pictures(std::ostream& out, const folds::CarView& car, const folds::ShopView& shop,
                    const std::string& folder) {
  if (car.pictures.empty()) return;
  blobs::PosixFiles files;
  const auto kept = blobs::BlobStore::open_read_only(files, blobs_of(folder));
  out << "\npictures\n";
  for (const auto& picture : car.pictures) {
    const auto here = kept ? (*kept)->has(picture.facts.file) : Result<bool>(false);
    out << "  " << place_of(picture, shop) << ": " << word_of(picture.facts.word)
        << (picture.kept_though_poor ? ", kept by a person" : "") << ", "
        << bytes_of(static_cast<std::uint64_t>(picture.facts.size_bytes)) << ", "
        << picture.facts.file.hex() << (here && *here ? "" : ", not here") << '\n';
  }
}

// A refusal of find_car in words.
std::string said_of_car(const Error& refused, const std::string& wanted) {
  if (refused.code != Code::Disputed) return said(refused);
  return "several cars fit \"" + wanted + "\": " + std::string(refused.arg("cars")) +
         "\nto do: name one by the signs in brackets\n";
}
}  // namespace

std::optional<CarInFolder> car_in_folder(const std::string& folder, const std::string& wanted) {
  auto read = read_folder(folder);
  if (!read) {
    std::cerr << said(read.error());
    return std::nullopt;
  }
  const auto car = find_car(*read, wanted);
  if (!car) {
    std::cerr << said_of_car(car.error(), wanted);
    return std::nullopt;
  }
  return CarInFolder{std::move(*read), *car};
}

CarStory story_of(const std::vector<entries::Entry>& entries, const folds::ShopView& view,
                  const folds::CarView& car) {
  const folds::History history(entries);
  const Shop shop{view, history};
  CarStory story{car, {}};
  for (const auto& entry : entries)
    story.entries.push_back({entry.hash, entry.order.device, entry.order.seq, entry.wall_ms,
                             entry.clock_flags, name_of(entry.person, view), entry.kind,
                             entries::kind_name(entry.kind), line_of(entry, shop),
                             history.taken_back(entry.hash) != nullptr,
                             refused_words(entry.refused)});
  return story;
}

Result<CarStory> story_of(const ShopFolder& folder, const folds::CarView& car) {
  JAMBLINE_ASSIGN(const auto entries, time_line(folder, car.job));
  return story_of(entries, folder.shop, car);
}

void print_story(std::ostream& out, const CarStory& story, const folds::ShopView& shop,
                 const std::string& path) {
  print_head(out, story.car, shop);
  print_panels(out, story.car);
  print_hours(out, story.car, shop);
  print_pictures(out, story.car, shop, path);
  out << "\ntime line, " << story.entries.size() << " entries\n";
  for (const auto& row : story.entries)
    out << "  " << time_of(row.wall_ms, shop.zone)
        << (row.clock_flags ? " (clock in doubt)  " : "  ") << row.person << "  " << row.words
        << (row.taken_back ? "  [taken back]" : "")
        << (row.refused.empty() ? "" : "  [refused: " + row.refused + "]") << '\n';
}

std::string bundle_report(const ShopId& id, const CarStory& story, const folds::ShopView& shop,
                          const std::string& path) {
  std::ostringstream out;
  out << "shop       " << one_line(shop.name) << '\n'
      << "fingerprint " << seal::fingerprint(id) << "\n\n"
      << "This report is for people and proves nothing. What the shop's devices wrote lies beside\n"
         "it; BUNDLE.md says how it is checked, verify_bundle.py checks it.\n\n";
  print_story(out, story, shop, path);
  return out.str();
}

}  // namespace jambline::app
