#include <filesystem>
#include <iostream>

#include "app/hub/ask_hub.h"
#include "app/hub/commands.h"

namespace jambline::app {

int hub_backup(const BackupAsked& asked) {
  hub::Order order;
  order.command = hub::Command::Backup;
  // Whoever carries it out stands in another folder.
  order.text = std::filesystem::absolute(asked.to).string();
  const auto report = asked_or_said(asked.folder, {}, order);
  if (!report) return 2;
  std::size_t damaged = 0;
  for (const auto& shop : *report->backed_up) {
    std::cout << "shop " << shop.shop.hex() << ": " << shop.entries << " entries, " << shop.files
              << " files, " << shop.files_copied << " of them new\n";
    for (const auto& file : shop.damaged) std::cout << "  damaged here: " << file.hex() << '\n';
    damaged += shop.damaged.size();
  }
  if (damaged == 0) return 0;
  std::cout << "kept   all other files\nto do: jambline-hub scrub, which asks devices for them\n";
  return 1;
}

}  // namespace jambline::app
