// refused() of app/calc/calculation.h.
#include <cctype>
#include <charconv>
#include <cmath>

#include "app/calc/calculation.h"

namespace jambline::app {

namespace {
// NaN, Infinity and 1e999 are no JSON, so the reader cannot name their field; a look at the text
// can.
struct NoNumber {
  std::string field;
  std::string said;
};

bool finite(const std::string& word) {
  double value = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
  return error == std::errc{} && end == word.data() + word.size() && std::isfinite(value);
}

std::size_t end_of_text(std::string_view in, std::size_t at) {
  for (++at; at < in.size() && in[at] != '"'; ++at)
    if (in[at] == '\\') ++at;
  return at;
}

bool in_word(char sign) {
  return std::isalnum(static_cast<unsigned char>(sign)) || sign == '+' || sign == '-' ||
         sign == '.';
}

NoNumber no_number(std::string_view in) {
  std::string field;
  for (std::size_t at = 0; at < in.size(); ++at) {
    if (in[at] == '"') {
      const std::size_t end = end_of_text(in, at);
      const std::size_t next = in.find_first_not_of(" \t\r\n", end + 1);
      if (next != std::string_view::npos && in[next] == ':')
        field = in.substr(at + 1, end - at - 1);
      at = end;
    } else if (in_word(in[at])) {
      std::size_t end = at;
      while (end < in.size() && in_word(in[end])) ++end;
      const std::string word(in.substr(at, end - at));
      if (word != "true" && word != "false" && word != "null" && !finite(word) && !field.empty())
        return {field, word};
      at = end - 1;
    }
  }
  return {};
}

std::string out_of_range(const Error& error) {
  const std::string value(error.arg("value"));
  const std::string low(error.arg("min"));
  const std::string high(error.arg("max"));
  if (low == "-inf") return value + " is over " + high;
  if (high == "inf") return value + " is under " + low;
  return value + " is not from " + low + " to " + high;
}
}  // namespace

std::string refused(const Error& error, std::string_view input) {
  std::string field(error.arg("field"));
  std::string why(error.arg("cause"));
  if (error.operation == "read JSON" && error.code == Code::Malformed && field.empty()) {
    const NoNumber found = no_number(input);
    field = found.field;
    if (!field.empty()) why = found.said + " is no finite number";
  }
  if (!error.arg("value").empty()) why = out_of_range(error);
  if (!error.arg("limit").empty()) why = "it is over " + std::string(error.arg("limit"));
  if (error.code == Code::Missing && why.empty()) why = "it is not there";
  if (field.empty()) return "The input is refused: " + why + ".\n";
  return "The field '" + field + "' is refused: " + why + ".\n";
}

}  // namespace jambline::app
