// tests/fuzz/promise.h: what the targets share: a promise that holds or ends the program, and what
// is written and read again the same.
#pragma once

#include <cstdlib>
#include <string_view>

#include "base/json.h"
#include "tests/fuzz/targets.h"

namespace jambline::fuzz {

inline void hold(bool promise) {
  if (!promise) std::abort();
}

inline std::string_view text_of(Input input) {
  if (input.empty()) return "";  // a null pointer is no text that the program ever has
  return {reinterpret_cast<const char*>(input.data()), input.size()};
}

template <class T>
void round_trip(std::string_view text) {
  for (const Strict strict : {Strict::No, Strict::Yes}) {
    const auto value = from_json<T>(text, strict);
    if (!value) {
      hold(!code_name(value.error().code).empty());
      continue;
    }
    const std::string written = to_json(*value);
    const auto again = from_json<T>(written, Strict::Yes);
    hold(again.has_value());
    hold(to_json(*again) == written);
  }
}

// The type of that number, of several.
template <class... All>
struct OneOf {
  static void run(std::size_t which, std::string_view text) {
    std::size_t number = 0;
    ((number++ == which % sizeof...(All) ? round_trip<All>(text) : void()), ...);
  }
};

}  // namespace jambline::fuzz
