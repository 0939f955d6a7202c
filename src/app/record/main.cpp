#include "app/record/commands.h"

int main(int argc, char** argv) {
  CLI::App program("Looks into a shop's record, and changes nothing.", "jambline-record");
  program.set_version_flag("--version", "jambline-record " JAMBLINE_VERSION);
  program.require_subcommand(1);
  int exit_code = 0;
  jambline::app::add_list(program, exit_code);
  jambline::app::add_show(program, exit_code);
  jambline::app::add_verify(program, exit_code);
  jambline::app::add_catalogue(program, exit_code);
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& refused) {
    const int code = program.exit(refused);
    return code == 0 ? 0 : 2;
  }
  return exit_code;
}
