// evidence/bundled_texts.h: what lies in every bundle so that it can be checked without this
// program: FORMAT.md, BUNDLE.md and verify_bundle.py, as they are in the source tree.
//
// Shape:  the .cpp is made by CMake from those files. None of them is evidence.
#pragma once

#include <string_view>
#include <vector>

namespace jambline::evidence {

struct BundledText {
  std::string_view name;
  std::string_view words;
};

const std::vector<BundledText>& bundled_texts();

}  // namespace jambline::evidence
