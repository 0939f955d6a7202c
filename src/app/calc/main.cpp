#include <CLI/CLI.hpp>
#include <fstream>
#include <iostream>
#include <iterator>

#include "app/calc/calculation.h"
#include "app/command_line_words.h"

namespace {
using jambline::app::Calculation;
using jambline::app::calculations;

constexpr std::size_t most_input_bytes = 16U << 20U;

int list() {
  std::size_t widest = 0;
  for (const Calculation& one : calculations()) widest = std::max(widest, one.name.size());
  for (const Calculation& one : calculations())
    std::cout << one.name << std::string(widest + 2 - one.name.size(), ' ') << one.what << '\n';
  return 0;
}

std::string all_of(std::istream& in) {
  std::string text;
  std::vector<char> piece(1U << 20U);
  while (in && text.size() <= most_input_bytes) {
    in.read(piece.data(), static_cast<std::streamsize>(piece.size()));
    text.append(piece.data(), static_cast<std::size_t>(in.gcount()));
  }
  return text;
}

int run(const Calculation& one, const std::string& file) {
  std::string text;
  if (file.empty() || file == "-") {
    text = all_of(std::cin);
  } else {
    std::ifstream in(file, std::ios::binary);
    if (!in) {
      std::cerr << jambline::app::said({jambline::Code::NoSuchFile, "read", file, {}});
      return 2;
    }
    text = all_of(in);
  }
  if (text.size() > most_input_bytes) {
    std::cerr << "The input is refused: it is over 16 MiB.\n";
    return 2;
  }
  const auto output = one.run(text);
  if (!output) {
    std::cerr << jambline::app::refused(output.error(), text) << "jambline-calc " << one.name
              << " --example shows an input that runs, --schema all of its fields.\n";
    return 2;
  }
  std::cout << *output << '\n';
  return 0;
}
}  // namespace

int main(int argc, char** argv) {
  CLI::App program(
      "Computes any number that a screen shows: JSON in, JSON out.\n"
      "No computed number means that a place or an act is without danger: the safety data sheet, "
      "the product sheet, local rules and a trained person decide.",
      "jambline-calc");
  program.set_version_flag("--version", "jambline-calc " JAMBLINE_VERSION);
  std::string name, file;
  bool list_them = false, schema = false, example = false;
  program.add_flag("--list", list_them, "The calculations by name");
  program.add_option("name", name, "Which calculation");
  program.add_option("input", file, "A JSON file; standard input without one or with -");
  program.add_flag("--schema", schema, "The JSON Schema of its input");
  program.add_flag("--example", example, "An input that can be run");
  program.footer(
      "Ends with 0, or with 2 and a sentence that names the field when an input is refused.");
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& refused) {
    return program.exit(refused) == 0 ? 0 : 2;
  }
  if (list_them) return list();
  for (const Calculation& one : calculations()) {
    if (one.name != name) continue;
    if (schema || example) {
      std::cout << (schema ? one.schema() : one.example()) << '\n';
      return 0;
    }
    return run(one, file);
  }
  std::cerr << (name.empty() ? "Name a calculation.\n"
                             : "There is no calculation '" + name + "'.\n")
            << "jambline-calc --list names them.\n";
  return 2;
}
