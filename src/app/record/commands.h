// app/record/commands.h: the commands of jambline-record, one file each.
//
// Each add_x() puts its command into the program; when the command was given, its result is the
// program's exit code: 0 all in order, 1 something is wrong with what was looked at, 2 the command
// could not be carried out.
#pragma once

#include <CLI/CLI.hpp>

namespace jambline::app {

void add_list(CLI::App& program, int& exit_code);
void add_show(CLI::App& program, int& exit_code);
void add_verify(CLI::App& program, int& exit_code);
void add_catalogue(CLI::App& program, int& exit_code);

}  // namespace jambline::app
