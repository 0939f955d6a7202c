#include "app/jambline/options.h"

#include <CLI/CLI.hpp>
#include <string>

namespace jambline::app {

Options read_options(int argc, char** argv, std::optional<int>& exit_code) {
  Options out;
  std::string size;
  CLI::App program("The job log of a collision shop. It works without a network.", "jambline");
  program.set_version_flag("--version", "jambline " JAMBLINE_VERSION);
  auto* folder = program.add_option("--folder", out.folder, "The shop's folder; made when empty");
  auto* demo =
      program.add_flag("--demo", out.demo, "An invented shop in a folder thrown away after");
  demo->excludes(folder);
  program.add_flag("--ends-with-input", out.ends_with_input, "Leave when the standard input ends");
  program
      .add_option("--restore", out.restore, "An exported shop, taken into the empty folder first")
      ->needs(folder);
  program.add_option("--pictures", out.pictures, "Draw the screens into this folder, then leave");
  program.add_flag("--self-test", out.self_test, "Show every screen; fail on any warning");
  program.add_option("--size", size, "Window size, as 412x892")
      ->check(CLI::Validator(
          [](const std::string& text) {
            const auto cross = text.find('x');
            const bool good = cross != std::string::npos && cross > 0 && cross + 1 < text.size() &&
                              text.find_first_not_of("0123456789x") == std::string::npos &&
                              text.find('x', cross + 1) == std::string::npos && text.size() <= 11;
            return good ? std::string() : "not a size: " + text;
          },
          "WIDTHxHEIGHT"));
  program.add_flag("--dark", out.dark, "Dark, whatever is kept");
  program.add_option("--text", out.text_percent, "Text size in percent")
      ->check(CLI::IsMember({100, 150}));
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& refused) {
    exit_code = program.exit(refused) == 0 ? 0 : 2;
    return out;
  }
  if (!size.empty()) {
    const auto cross = size.find('x');
    out.size = QSize(std::stoi(size.substr(0, cross)), std::stoi(size.substr(cross + 1)));
  }
  return out;
}

}  // namespace jambline::app
