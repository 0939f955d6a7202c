#include <gtest/gtest.h>

#include "seal/pack.h"
#include "tests/seal/format_examples.h"

namespace jambline::seal {
namespace {

Code code_of(const std::string& bytes) {
  const auto entry = decode_entry(bytes_of(bytes));
  return entry ? Code::Unknown : entry.error().code;
}

TEST(Header, WhateverDecodesEncodesToTheSameBytes) {
  SeededRandom random(11);
  int decoded = 0;
  for (int round = 0; round < 20000; ++round) {
    HeaderBytes bytes;
    random.fill(bytes);
    bytes[0] = header_format;
    bytes[33] &= 0x7F;
    bytes[170] = bytes[171] = 0;
    const auto header = decode_header(bytes);
    if (!header) continue;
    ++decoded;
    ASSERT_EQ(encode(*header), bytes);
  }
  EXPECT_GT(decoded, 9000);
}

TEST(Header, WhatTheFormatForbidsIsRefused) {
  const HeaderBytes good = encode(note_example().header);
  const auto refused = [&good](std::size_t place, std::uint8_t value) {
    HeaderBytes bytes = good;
    bytes[place] = value;
    const auto header = decode_header(bytes);
    return header ? Code::Unknown : header.error().code;
  };
  EXPECT_TRUE(decode_header(good));
  EXPECT_EQ(refused(0, 2), Code::Malformed);      // format
  EXPECT_EQ(refused(33, 0x80), Code::Malformed);  // seq above 2^63 - 1
  EXPECT_EQ(refused(40, 0), Code::Malformed);     // seq 0
  EXPECT_EQ(refused(164, 0), Code::Malformed);    // part 0
  EXPECT_EQ(refused(164, 2), Code::Malformed);    // part above parts
  EXPECT_EQ(refused(170, 1), Code::TooLarge);     // payload over 64 KiB
  EXPECT_EQ(refused(166, 0xFF), Code::Unknown);   // a kind from the future is taken
  for (const std::size_t length : {std::size_t{0}, std::size_t{205}})
    EXPECT_FALSE(decode_header(std::span(good).first(length)));
}

TEST(Entry, CutAtAnyByteOrLongerByOneItIsRefused) {
  const std::string bytes = encode(note_example());
  for (std::size_t length = 0; length < bytes.size(); ++length)
    EXPECT_EQ(code_of(bytes.substr(0, length)), Code::Malformed) << length;
  EXPECT_EQ(code_of(bytes + "x"), Code::Malformed);
}

TEST(Entry, AnErasedOneHasNoSaltAndNoPayload) {
  std::string bytes = encode(erased_example());
  EXPECT_EQ(code_of(bytes + "x"), Code::Malformed);
  bytes[header_bytes + 65] = 1;
  EXPECT_EQ(code_of(bytes), Code::Malformed);
  bytes[header_bytes + 64] = 2;
  EXPECT_EQ(code_of(bytes), Code::Malformed);
}

TEST(Entry, AnyChangedByteIsSeenByHashSignatureOrPayload) {
  const std::string good = encode(note_example());
  for (std::size_t place = 0; place < good.size(); ++place) {
    std::string bytes = good;
    bytes[place] = static_cast<char>(bytes[place] ^ 0x10);
    const auto entry = decode_entry(bytes_of(bytes));
    if (!entry) continue;
    EXPECT_FALSE(check_payload(*entry) &&
                 verify(second().key(), entry->hash.bytes, entry->signature))
        << place;
  }
}

TEST(Pack, HoldsAtMost500EntriesAndOneMebibyte) {
  Packer small;
  while (small.add(note_example())) {
  }
  EXPECT_EQ(small.count(), 500U);
  const auto back = decode_pack(bytes_of(small.bytes()));
  ASSERT_TRUE(back);
  EXPECT_EQ(back->size(), 500U);
  EXPECT_EQ(encode(back->back()), encode(note_example()));

  Packer large;
  const SealedEntry big = seal_example(second(), note_example().header, std::string(65536, 'x'), 1);
  while (large.add(big)) {
  }
  EXPECT_EQ(large.count(), 15U);
  EXPECT_LE(large.bytes().size(), most_pack_bytes);

  const std::string more = small.bytes() + small.bytes();
  EXPECT_EQ(decode_pack(bytes_of(more)).error().code, Code::TooLarge);
  EXPECT_EQ(decode_pack(bytes_of(std::string(most_pack_bytes + 1, '\0'))).error().code,
            Code::TooLarge);
}

TEST(Pack, CutAtAnyByteItIsRefusedOrShorterByWholeEntries) {
  Packer pack;
  pack.add(note_example());
  const std::size_t one = pack.bytes().size();
  pack.add(erased_example());
  for (std::size_t length = 0; length < pack.bytes().size(); ++length)
    EXPECT_EQ(decode_pack(bytes_of(pack.bytes()).first(length)).has_value(),
              length == 0 || length == one)
        << length;
}

}  // namespace
}  // namespace jambline::seal
