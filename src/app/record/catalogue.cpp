#include <iostream>

#include "app/record/commands.h"
#include "entries/entry.h"

namespace jambline::app {

void add_catalogue(CLI::App& program, int& exit_code) {
  CLI::App* command =
      program.add_subcommand("catalogue", "every kind of entry with its fields, as CATALOGUE.md");
  command->callback([&exit_code] {
    std::cout << entries::catalogue();
    exit_code = 0;
  });
}

}  // namespace jambline::app
