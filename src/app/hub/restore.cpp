#include <iostream>

#include "app/command_line_words.h"
#include "app/hub/commands.h"
#include "base/random.h"
#include "hub/backup.h"

namespace jambline::app {

int hub_restore(const RestoreAsked& asked) {
  SystemRandom random;
  const auto restored = hub::restore(asked.from, asked.to, random);
  if (!restored) {
    std::cerr << said(restored.error());
    return 2;
  }
  std::size_t missing = 0;
  for (const auto& shop : *restored) {
    std::cout << "shop " << shop.shop.hex() << ": " << shop.entries << " entries, " << shop.files
              << " files, new epoch " << shop.epoch.hex() << '\n';
    for (const auto& file : shop.not_there)
      std::cout << "  damaged or missing in the backup: " << file.hex() << '\n';
    missing += shop.not_there.size();
  }
  std::cout << "next:  serve this folder; devices send again what came after the backup.\n"
               "       Never serve the old folder again.\n";
  return missing == 0 ? 0 : 1;
}

}  // namespace jambline::app
