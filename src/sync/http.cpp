#include "sync/http.h"

#include <algorithm>
#include <array>

namespace jambline::sync {

namespace {
constexpr std::array<std::string_view, 6> methods{"GET",   "HEAD",   "POST",
                                                  "PATCH", "DELETE", "OPTIONS"};

char lower(char sign) {
  return sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign;
}
}  // namespace

std::string_view name_of(Method method) {
  return methods.at(static_cast<std::size_t>(method));
}

std::optional<Method> method_of(std::string_view name) {
  const auto found = std::find(methods.begin(), methods.end(), name);
  if (found == methods.end()) return std::nullopt;
  return static_cast<Method>(found - methods.begin());
}

bool same_name(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return lower(x) == lower(y); });
}

std::string_view find_header(const std::vector<HeaderField>& headers, std::string_view name) {
  for (const auto& field : headers)
    if (same_name(field.name, name)) return field.value;
  return {};
}

}  // namespace jambline::sync
