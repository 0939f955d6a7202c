#include <iostream>
#include <memory>

#include "app/command_line_words.h"
#include "app/record/commands.h"
#include "log/entry_log.h"
#include "seal/fingerprint.h"

namespace jambline::app {

namespace {
void print_proven(const log::Audit& found) {
  if (found.shop) std::cout << "shop   " << seal::fingerprint(found.shop) << '\n';
  for (const auto& head : found.heads)
    std::cout << "device " << head.device.hex() << ": proven to entry " << head.seq
              << ", nothing can be said about later ones\n";
  std::cout << found.entries << " entries, " << found.erased << " of them with erased payload, "
            << found.receipts << " receipts\n";
  if (found.after_cut > 0)
    std::cout << found.after_cut
              << " came before their device's revocation was known and do not count\n";
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
  const auto found = log::EntryLog::audit(asked.folder, {}, progress);
  if (!asked.quiet) std::cerr << "\r              \r";
  if (!found) {
    std::cout << "BAD    " << said(found.error());
    return found.error().code == Code::NoSuchFile || found.error().code == Code::ReadOnly ? 2 : 1;
  }
  print_proven(*found);
  if (found->first_bad) {
    std::cout << "BAD    first bad entry: " << said(*found->first_bad);
    return 1;
  }
  if (wanted && found->shop != *wanted) {
    std::cout << "BAD    " << said(Error{Code::WrongShop, "verify", asked.folder, {}});
    return 1;
  }
  std::cout << "good\n";
  return 0;
}

}  // namespace jambline::app
