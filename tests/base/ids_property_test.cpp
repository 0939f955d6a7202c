#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "base/ids.h"

namespace jambline {
namespace {

RC_GTEST_PROP(IdsProperty, HexReadsBackAndKeepsTheOrder, ()) {
  Hash a;
  Hash b;
  for (auto& byte : a.bytes) byte = *rc::gen::arbitrary<std::uint8_t>();
  for (auto& byte : b.bytes) byte = *rc::gen::arbitrary<std::uint8_t>();
  RC_ASSERT(Hash::parse(a.hex()) == a);
  RC_ASSERT((a < b) == (a.hex() < b.hex()));
}

RC_GTEST_PROP(IdsProperty, AnyTextIsAnIdOnlyWhenItIsItsHex, (const std::string& text)) {
  const auto id = JobId::parse(text);
  const bool hex =
      text.size() == 32 && text.find_first_not_of("0123456789abcdefABCDEF") == std::string::npos;
  RC_ASSERT(id.has_value() == hex);
}

}  // namespace
}  // namespace jambline
