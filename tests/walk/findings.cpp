#include "findings.h"

#include <sstream>

namespace jambline::walk {

std::string words_of(const View& view) {
  std::ostringstream out;
  out << view.screen << ", " << view.state << ", " << view.size.width() << "x" << view.size.height()
      << ", " << (view.dark ? "dark" : "light") << ", " << view.text_percent << " %, "
      << view.words;
  return out.str();
}

void Findings::add(const View& view, const std::vector<Finding>& found) {
  for (const Finding& one : found) {
    auto& seen = folded_[one.rule + "|" + view.screen + "|" + one.item];
    if (seen.views++ > 0) continue;
    seen.first = one;
    seen.view = view;
  }
}

std::string Findings::report() const {
  std::ostringstream out;
  for (const auto& [key, seen] : folded_)
    out << seen.first.rule << " | " << words_of(seen.view) << " | " << seen.first.item << " | "
        << seen.first.numbers << " | " << seen.views << " views\n";
  return out.str();
}

}  // namespace jambline::walk
