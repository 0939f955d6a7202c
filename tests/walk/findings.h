// What was found in all views, folded: one line for each thing, with the first view and how many.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "rules.h"

namespace jambline::walk {

struct View {
  std::string screen;
  std::string state;
  QSize size;
  bool dark = false;
  int text_percent = 100;
  std::string words;  // "source" or "pseudo"
};
std::string words_of(const View& view);

// What Qt has warned of since the last call.
std::string warnings();

class Findings {
 public:
  void add(const View& view, const std::vector<Finding>& found);
  bool none() const { return folded_.empty(); }
  std::string report() const;

 private:
  struct Seen {
    Finding first;
    View view;
    int views = 0;
  };
  std::map<std::string, Seen> folded_;
};

}  // namespace jambline::walk
