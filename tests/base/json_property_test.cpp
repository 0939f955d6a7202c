#include <cmath>
#include <cstring>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "base/json.h"
#include "tests/base/sample.h"

namespace jambline {
namespace {

using sample::Everything;
using sample::Spot;

// Any Unicode text, as UTF-8.
std::string any_text() {
  std::string out;
  for (const std::uint32_t drawn : *rc::gen::container<std::vector<std::uint32_t>>(
           rc::gen::oneOf(rc::gen::inRange<std::uint32_t>(0, 0x80),
                          rc::gen::inRange<std::uint32_t>(0, 0x110000)))) {
    const std::uint32_t code = drawn >= 0xD800 && drawn < 0xE000 ? 0xFFFD : drawn;
    const auto put = [&](std::uint32_t byte) { out.push_back(static_cast<char>(byte)); };
    if (code < 0x80) {
      put(code);
    } else if (code < 0x800) {
      put(0xC0 | code >> 6), put(0x80 | (code & 63));
    } else if (code < 0x10000) {
      put(0xE0 | code >> 12), put(0x80 | (code >> 6 & 63)), put(0x80 | (code & 63));
    } else {
      put(0xF0 | code >> 18), put(0x80 | (code >> 12 & 63));
      put(0x80 | (code >> 6 & 63)), put(0x80 | (code & 63));
    }
  }
  return out;
}

// Any finite double, the smallest and the largest ones too.
double any_number() {
  double number{};
  const auto bits = *rc::gen::arbitrary<std::uint64_t>();
  std::memcpy(&number, &bits, sizeof number);
  return std::isfinite(number) ? number : 0.1;
}

Spot any_spot() {
  return {*rc::gen::inRange(0, 4'000'001) / 1000.0, *rc::gen::inRange(1, 4)};
}

RC_GTEST_PROP(JsonProperty, WhatIsWrittenReadsBackEqual, ()) {
  Everything value;
  value.baked = *rc::gen::arbitrary<bool>();
  value.wall_ms = *rc::gen::arbitrary<std::int64_t>();
  value.since_boot_ms = *rc::gen::arbitrary<std::uint64_t>();
  value.small = *rc::gen::arbitrary<std::int8_t>();
  value.film_um = any_number();
  value.note = any_text();
  value.verdict = static_cast<sample::Verdict>(*rc::gen::inRange(0, 3));
  for (auto& byte : value.hash.bytes) byte = *rc::gen::arbitrary<std::uint8_t>();
  if (*rc::gen::arbitrary<bool>()) value.after_um = std::abs(any_number());
  if (*rc::gen::arbitrary<bool>()) value.word = any_text();
  for (int i = *rc::gen::inRange(0, 5); i > 0; --i) value.spots.push_back(any_spot());
  for (int i = *rc::gen::inRange(0, 5); i > 0; --i) value.words.push_back(any_text());
  value.first = any_spot();

  const std::string text = to_json(value);
  const auto back = from_json<Everything>(text, Strict::Yes);
  RC_ASSERT(back.has_value());
  RC_ASSERT(*back == value);
  RC_ASSERT(to_json(*back) == text);
}

// Damaged text is refused or read, and an error always names a known code; nothing else happens.
RC_GTEST_PROP(JsonProperty, DamagedTextIsAnErrorOrAValueThatWritesAgain, ()) {
  std::string text = to_json(sample::full());
  for (int i = *rc::gen::inRange(1, 4); i > 0; --i) {
    const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
    if (*rc::gen::arbitrary<bool>())
      text[at] = *rc::gen::arbitrary<char>();
    else
      text.erase(at, *rc::gen::inRange<std::size_t>(1, 9));
    RC_PRE(!text.empty());
  }
  const auto value = from_json<Everything>(text);
  if (value) {
    RC_ASSERT(*from_json<Everything>(to_json(*value)) == *value);
  } else {
    const Code code = value.error().code;
    RC_ASSERT(code == Code::Malformed || code == Code::Missing || code == Code::OutOfRange ||
              code == Code::Unknown);
  }
}

}  // namespace
}  // namespace jambline
