// Every kind, with any content: what is written reads back equal; what is damaged never throws.
#include <gtest/gtest.h>
#include <limits>
#include <rapidcheck/gtest.h>

#include "base/json.h"
#include "entries/entry.h"

namespace jambline::entries {
namespace {

std::string any_text() {
  static constexpr std::string_view pieces[] = {
      "a",  "K 41-206",         "\"", "\\", "\n", "\x01", "é",
      "µm", "\xF0\x9D\x84\x9E", "/",  "{",  " ",  "\x7F"};
  std::string out;
  for (int i = *rc::gen::inRange(0, 12); i > 0; --i)
    out += pieces[*rc::gen::inRange<std::size_t>(0, std::size(pieces))];
  return out;
}

// Fills every described field with something that the field allows.
struct Fill {
  template <class T>
  void operator()(const Field& field, T& value) {
    if constexpr (is_optional<T>) {
      if (*rc::gen::arbitrary<bool>()) (*this)(field, value.emplace());
    } else if constexpr (is_vector<T>) {
      for (int i = *rc::gen::inRange(0, 4); i > 0; --i) (*this)(field, value.emplace_back());
    } else if constexpr (std::is_same_v<T, bool>) {
      value = *rc::gen::arbitrary<bool>();
    } else if constexpr (WordedEnum<T>) {
      value = static_cast<T>(*rc::gen::inRange<std::size_t>(0, enum_words<T>.size()));
    } else if constexpr (is_bytes<T>) {
      for (auto& byte : value.bytes) byte = *rc::gen::arbitrary<std::uint8_t>();
    } else if constexpr (std::is_same_v<T, int>) {
      value = *rc::gen::inRange(static_cast<int>(field.min), static_cast<int>(field.max) + 1);
    } else if constexpr (std::integral<T>) {
      value = field.max < std::numeric_limits<double>::infinity()
                  ? *rc::gen::inRange(static_cast<T>(field.min), static_cast<T>(field.max))
                  : *rc::gen::arbitrary<T>();
    } else if constexpr (std::floating_point<T>) {
      value = field.min + (field.max - field.min) * (*rc::gen::inRange(0, 1'000'001) / 1e6);
    } else if constexpr (Described<T>) {
      T::describe(value, *this);
    } else {
      value = any_text();
    }
  }
};

template <class T>
concept Kind = requires {
  T::kind;
};

template <class Use>
void every_kind(const Use& use) {
  PayloadKinds::each([&]<class T>() {
    if constexpr (Kind<T>) use.template operator()<T>();
  });
}

template <class T>
T any() {
  T value;
  Fill fill;
  T::describe(value, fill);
  return value;
}

RC_GTEST_PROP(EntryProperty, EveryKindReadsBackAsItWasWritten, ()) {
  every_kind([]<class T>() {
    const T value = any<T>();
    const Written written = write(value);
    RC_ASSERT(written.kind == T::kind);
    const Payload back = read(written.kind, written.schema, written.payload, false);
    RC_ASSERT(back.template is<T>());
    RC_ASSERT(to_json(back.template get<T>()) == written.payload);
    const Written again = write(back);
    RC_ASSERT(again.payload == written.payload);
    RC_ASSERT(again.schema == written.schema);
  });
}

// Each field counts: a payload without one of its required members is not read.
RC_GTEST_PROP(EntryProperty, APayloadWithoutARequiredFieldIsUnknown, ()) {
  every_kind([]<class T>() {
    const std::string payload = write(any<T>()).payload;
    const auto comma = payload.find(',');
    // The first member is required in every kind but those whose first field is their only one.
    if (comma == std::string::npos) return;
    const auto colon = payload.find(':');
    std::string renamed = payload;
    renamed.insert(colon - 1, "_");
    RC_ASSERT(read(T::kind, 1, renamed, false).template is<UnknownEntry>());
  });
}

RC_GTEST_PROP(EntryProperty, DamagedPayloadsAreReadOrUnknownAndNeverThrow, ()) {
  every_kind([]<class T>() {
    std::string payload = write(any<T>()).payload;
    for (int i = *rc::gen::inRange(1, 4); i > 0 && !payload.empty(); --i) {
      const auto at = *rc::gen::inRange<std::size_t>(0, payload.size());
      if (*rc::gen::arbitrary<bool>())
        payload[at] = *rc::gen::arbitrary<char>();
      else
        payload.erase(at, *rc::gen::inRange<std::size_t>(1, 9));
    }
    const Payload back = read(T::kind, 1, payload, false);
    RC_ASSERT(back.template is<UnknownEntry>() || back.template is<T>());
    if (back.template is<T>()) {
      const Written written = write(back);
      RC_ASSERT(read(T::kind, 1, written.payload, false).template is<T>());
    }
  });
}

RC_GTEST_PROP(EntryProperty, AnyBytesOfAnyKindAreReadOrUnknown, ()) {
  const auto kind = *rc::gen::oneOf(rc::gen::inRange<std::uint16_t>(6, 200),
                                    rc::gen::inRange<std::uint16_t>(200, 65'535));
  const auto schema = *rc::gen::inRange<std::uint16_t>(0, 3);
  const auto bytes = *rc::gen::arbitrary<std::string>();
  RC_ASSERT(read(kind, schema, bytes, false).is<UnknownEntry>());
}

}  // namespace
}  // namespace jambline::entries
