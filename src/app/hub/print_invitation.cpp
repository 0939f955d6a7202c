#include "app/hub/print_invitation.h"

#include <iostream>
#include <unistd.h>

#include "app/command_line_words.h"
#include "app/hub/qr_blocks.h"

namespace jambline::app {

int print_invitation(const std::string& text, int minutes, bool text_only) {
  if (!text_only) {
    const auto code = qr_blocks(text, isatty(STDOUT_FILENO) == 1);
    if (!code) {
      std::cerr << said(code.error());
      return 2;
    }
    std::cout << *code << '\n';
  }
  std::cout << text << '\n';
  if (!text_only)
    std::cout << "\nRead the square with the device, or paste the line. It holds " << minutes
              << " minutes and lets one device ask.\n";
  return 0;
}

}  // namespace jambline::app
