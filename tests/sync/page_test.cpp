// A page of a pull, at every length and with every byte changed. Held against PROTOCOL.md
// section 6.
#include "sync/page.h"

#include <gtest/gtest.h>

#include "seal/digest.h"
#include "tests/seal/format_examples.h"

namespace jambline::sync {
namespace {

std::string example_page() {
  seal::Packer packer;
  packer.add(seal::founded_example());
  packer.add(seal::admitted_example());
  return encode_page(seal::filled<seal::Epoch>(0xe0), 2, 7, {seal::receipt_example()},
                     packer.bytes());
}

TEST(PullPage, ReadsBack) {
  const std::string bytes = example_page();
  const auto page = decode_page(seal::bytes_of(bytes));
  ASSERT_TRUE(page);
  EXPECT_EQ(page->epoch, seal::filled<seal::Epoch>(0xe0));
  EXPECT_EQ(page->next, 2U);
  EXPECT_EQ(page->head, 7U);
  EXPECT_TRUE(page->more());
  ASSERT_EQ(page->receipts.size(), 1U);
  EXPECT_EQ(page->receipts[0], seal::receipt_example());
  ASSERT_EQ(page->entries.size(), 2U);
  EXPECT_EQ(page->entries[1].hash, seal::admitted_example().hash);
}

TEST(PullPage, CutAnywhereItIsRefusedOrHasFewerEntriesAndNeverMore) {
  const std::string bytes = example_page();
  const std::size_t before_entries = 35 + 209;
  for (std::size_t length = 0; length < bytes.size(); ++length) {
    const auto page = decode_page(seal::bytes_of(std::string_view(bytes).substr(0, length)));
    if (!page) continue;
    EXPECT_GE(length, before_entries);
    EXPECT_LT(page->entries.size(), 2U);
  }
}

TEST(PullPage, AChangedByteIsNeverTakenForTheSame) {
  const std::string bytes = example_page();
  const auto whole = decode_page(seal::bytes_of(bytes));
  for (std::size_t at = 0; at < bytes.size(); ++at) {
    std::string other = bytes;
    other[at] = static_cast<char>(other[at] ^ 0x20);
    const auto page = decode_page(seal::bytes_of(other));
    if (!page) continue;
    seal::Packer packer;
    for (const auto& entry : page->entries) EXPECT_TRUE(packer.add(entry));
    EXPECT_EQ(encode_page(page->epoch, page->next, page->head, page->receipts, packer.bytes()),
              other)
        << at;
  }
}

TEST(PullPage, AHeadBehindItsOwnPageIsRefused) {
  const std::string bytes = encode_page({}, 8, 7, {}, {});
  EXPECT_FALSE(decode_page(seal::bytes_of(bytes)));
}

}  // namespace
}  // namespace jambline::sync
