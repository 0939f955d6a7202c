#include <functional>
#include <iostream>
#include <memory>
#include <system_error>

#include "app/command_line_words.h"
#include "app/record/commands.h"
#include "app/record/entry_lines.h"
#include "app/record/picture_lines.h"
#include "app/record/read_folder.h"
#include "app/record/verify_bundle.h"
#include "engine/integrity.h"
#include "engine/pictures.h"
#include "seal/fingerprint.h"

namespace jambline::app {

namespace {
std::string day_of(std::int64_t wall_ms) {
  return time_of(wall_ms, "UTC") + " UTC";
}

const char* word_of(engine::FindingKind kind) {
  switch (kind) {
    case engine::FindingKind::ClockBefore2025:
      return "clock before 2025";
    case engine::FindingKind::ClockSteppedBack:
      return "clock went back";
    case engine::FindingKind::ClockJumped:
      return "clock jumped";
    case engine::FindingKind::Forked:
      return "copied folder, said again";
    case engine::FindingKind::TakenOver:
      return "revoked device, said again";
    case engine::FindingKind::Quarantined:
      return "kept apart, after the revocation";
    case engine::FindingKind::Late:
      return "came late to the hub";
    case engine::FindingKind::Erased:
      return "erased";
    case engine::FindingKind::Gap:
      return "missing numbers";
  }
  return "";
}

void print_findings(const engine::Integrity& found) {
  for (const auto& one : found.findings) {
    std::cout << "know   " << word_of(one.kind) << ": device " << one.device.hex() << ", entry "
              << one.seq_first;
    if (one.seq_last != one.seq_first) std::cout << " to " << one.seq_last;
    if (one.kind != engine::FindingKind::Gap) std::cout << ", made " << day_of(one.wall_ms);
    if (one.received_ms > 0) std::cout << ", received " << day_of(one.received_ms);
    if (one.from) std::cout << ", work of device " << one.from->hex();
    std::cout << '\n';
  }
  std::uint64_t all = 0;
  for (const auto count : found.counts) all += count;
  if (all > found.findings.size())
    std::cout << "know   " << all - found.findings.size() << " more of these kinds\n";
  if (found.stopped_at) std::cout << "know   what stands after the damage was not looked through\n";
}

void print_proven(const engine::Integrity& integrity) {
  const log::Audit& found = integrity.audit;
  if (found.shop) std::cout << "shop   " << seal::fingerprint(found.shop) << '\n';
  for (const auto& one : integrity.proven) {
    std::cout << "device " << one.device.hex() << ": proven to entry " << one.seq
              << ", nothing can be said about later ones\n";
    if (one.hub)
      std::cout << "       hub " << one_line(one.hub->hub) << " has it to entry " << one.hub->seq
                << ", received " << day_of(one.hub->received_ms) << '\n';
    else
      std::cout << "       no hub: proven by this device only\n";
  }
  std::cout << found.entries << " entries, " << found.erased << " of them with erased payload, "
            << found.receipts << " receipts\n";
  if (found.after_cut > 0)
    std::cout << found.after_cut
              << " came before their device's revocation was known and do not count\n";
}

// Of a folder without a place for pictures: every one that a car has is not here.
engine::PictureCheck none_here(const ShopFolder& folder) {
  engine::PictureCheck out;
  for (const auto& car : folder.cars)
    for (const auto& picture : car.pictures) {
      ++out.files;
      out.not_here.push_back({car.job, picture.picture, picture.facts.file});
    }
  return out;
}

struct Named {
  const folds::PictureView* view;  // null: taken back since
  std::string words;
};

Named named(const ShopFolder& folder, const engine::NamedPicture& wanted) {
  for (const auto& car : folder.cars)
    if (car.job == wanted.job)
      if (const auto* view = car.find(wanted.picture))
        return {view, one_line(car.plate) + ", " + place_of(*view, folder.shop)};
  return {nullptr, "job " + wanted.job.hex() + ", a picture that was taken back"};
}

Result<engine::PictureCheck> look_at_pictures(const std::string& folder,
                                              const std::function<void(double)>& progress) {
  blobs::PosixFiles files;
  const auto kept = blobs::BlobStore::open_read_only(files, blobs_of(folder));
  if (kept) return engine::check_pictures(folder, kept->get(), {}, progress);
  if (kept.error().code != Code::NoSuchFile) return fail(kept.error());
  JAMBLINE_ASSIGN(const ShopFolder cars, read_folder(folder));
  return none_here(cars);
}

// How many are damaged, or missing though this folder's device took them itself.
Result<std::size_t> check_pictures(const std::string& folder,
                                   const std::function<void(double)>& progress) {
  JAMBLINE_ASSIGN(const auto found, look_at_pictures(folder, progress));
  if (found.files == 0) return 0U;
  std::size_t wrong = found.damaged.size();
  if (!found.damaged.empty() || !found.not_here.empty()) {
    JAMBLINE_ASSIGN(const ShopFolder cars, read_folder(folder));
    for (const auto& picture : found.damaged)
      std::cout << "damaged picture: " << named(cars, picture).words << ", " << picture.file.hex()
                << '\n';
    for (const auto& picture : found.not_here) {
      const Named one = named(cars, picture);
      if (!one.view || one.view->order.device != cars.log->device()) continue;
      std::cout << "missing picture: " << one.words << ", " << picture.file.hex() << '\n';
      ++wrong;
    }
  }
  std::cout << found.files << (found.files == 1 ? " picture" : " pictures") << " named, "
            << bytes_of(found.bytes) << " read again";
  if (const auto elsewhere = found.damaged.size() + found.not_here.size() - wrong; elsewhere > 0)
    std::cout << "; " << elsewhere << " taken by other devices, not here";
  std::cout << '\n';
  return wrong;
}

}  // namespace

int verify(const VerifyAsked& asked) {
  std::optional<ShopId> wanted;
  if (!asked.fingerprint.empty() && !(wanted = seal::parse_fingerprint(asked.fingerprint))) {
    std::cerr << "a fingerprint is eight groups of four signs of 0-9 and a-f\n";
    return 2;
  }
  const auto progress = [&asked](double part) {
    if (!asked.quiet)
      std::cerr << "\rchecking " << static_cast<int>(100 * part) << " %" << std::flush;
  };
  std::error_code ignored;
  if (std::filesystem::is_regular_file(asked.folder, ignored))
    return verify_bundle(asked.folder, wanted, asked.quiet);
  const auto integrity = engine::check_integrity(asked.folder, {}, progress);
  if (!asked.quiet) std::cerr << "\r              \r";
  if (!integrity) {
    const Error& why = integrity.error();
    std::cout << "BAD    " << said(why);
    return why.code == Code::NoSuchFile || why.code == Code::ReadOnly ? 2 : 1;
  }
  const log::Audit* found = &integrity->audit;
  print_proven(*integrity);
  print_findings(*integrity);
  if (found->first_bad) {
    std::cout << "BAD    first bad entry: " << said(*found->first_bad);
    return 1;
  }
  if (wanted && found->shop != *wanted) {
    std::cout << "BAD    " << said(Error{Code::WrongShop, "verify", asked.folder, {}});
    return 1;
  }
  const auto wrong = check_pictures(asked.folder, progress);
  if (!asked.quiet) std::cerr << "\r              \r";
  if (!wrong) {
    std::cout << "BAD    " << said(wrong.error());
    return 1;
  }
  if (*wrong > 0) {
    std::cout << "BAD    " << *wrong << (*wrong == 1 ? " picture is" : " pictures are")
              << " damaged or missing\n"
              << "kept   every entry, and the other pictures\n"
              << "to do: take these pictures from a copy of the folder, or from another device\n";
    return 1;
  }
  std::cout << "good\n";
  return 0;
}

}  // namespace jambline::app
