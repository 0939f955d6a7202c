#include "app/record/verify_bundle.h"

#include <iostream>

#include "app/command_line_words.h"
#include "evidence/check_bundle.h"

namespace jambline::app {

int verify_bundle(const std::filesystem::path& file, const std::optional<ShopId>& wanted,
                  bool quiet) {
  const auto progress = [quiet](double part) {
    if (!quiet) std::cerr << "\rchecking " << static_cast<int>(100 * part) << " %" << std::flush;
  };
  const auto found = evidence::check_bundle(file, wanted, {}, progress);
  if (!quiet) std::cerr << "\r              \r";
  if (!found) {
    std::cerr << said(found.error());
    return 2;
  }
  std::cout << evidence::lines_of(*found);
  if (found->first_bad) {
    std::cout << "BAD    first bad: " << said(*found->first_bad);
    return 1;
  }
  std::cout << "good\n";
  return 0;
}

}  // namespace jambline::app
