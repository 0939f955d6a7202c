// app/jambline/options.h: what the command line says.
#pragma once

#include <QSize>
#include <filesystem>
#include <optional>

namespace jambline::app {

struct Options {
  std::filesystem::path folder;    // empty: the person's own data folder
  std::filesystem::path restore;   // an exported shop, taken into the empty folder first
  bool demo = false;               // a throw-away folder with the demo shop
  bool ends_with_input = false;    // leave when the standard input ends: with who started it
  std::filesystem::path pictures;  // draw the screens into this folder and leave
  bool self_test = false;          // show every screen once; any warning fails
  std::optional<QSize> size;
  bool dark = false;
  int text_percent = 0;  // 0: as kept
};

// Prints help or what is wrong; then `exit_code` is set and the program leaves.
Options read_options(int argc, char** argv, std::optional<int>& exit_code);

}  // namespace jambline::app
