#include <gtest/gtest.h>

#include "tests/seal/format_examples.h"

namespace jambline::seal {
namespace {

ReceiptWanted wanted() {
  const Receipt receipt = receipt_example();
  return {receipt.shop, receipt.hub, receipt.epoch, receipt.device};
}

Code refusal(const Receipt& receipt, const ReceiptWanted& want) {
  const Status status = check(receipt, want);
  return status ? Code::Missing : status.error().code;
}

TEST(Receipt, AGenuineOneIsTaken) {
  EXPECT_TRUE(check(receipt_example(), wanted()));
}

TEST(Receipt, OneOfAnotherShopHubEpochOrDeviceIsRefused) {
  for (int which = 0; which < 4; ++which) {
    ReceiptWanted want = wanted();
    if (which == 0) want.shop.bytes[0] ^= 1U;
    if (which == 1) want.hub = second().key();
    if (which == 2) want.epoch.bytes[3] ^= 1U;
    if (which == 3) want.device.bytes[15] ^= 1U;
    EXPECT_EQ(refusal(receipt_example(), want), which == 0 ? Code::WrongShop : Code::Unknown);
  }
}

TEST(Receipt, AForgedOneIsRefused) {
  Receipt forged = receipt_example();
  sign(forged, second());  // a device signs in the hub's place
  EXPECT_EQ(refusal(forged, wanted()), Code::Unknown);
  forged.hub = hub().key();
  EXPECT_EQ(refusal(forged, wanted()), Code::BadSignature);
  Receipt later = receipt_example();
  later.seq = 2;
  EXPECT_EQ(refusal(later, wanted()), Code::BadSignature);
}

TEST(Receipt, AnEntrysSignatureIsNoReceipts) {
  Receipt receipt = receipt_example();
  receipt.signature = hub().sign(receipt.hash);
  EXPECT_FALSE(verify(receipt));
}

TEST(Receipt, EveryChangedByteIsRefused) {
  const std::string good = encode(receipt_example());
  for (std::size_t place = 0; place < good.size(); ++place) {
    std::string bytes = good;
    bytes[place] = static_cast<char>(bytes[place] ^ 0x01);
    const auto receipt = decode_receipt(bytes_of(bytes));
    EXPECT_FALSE(receipt && check(*receipt, wanted())) << place;
  }
  for (std::size_t length = 0; length < good.size(); ++length)
    EXPECT_FALSE(decode_receipt(bytes_of(good).first(length)));
  EXPECT_FALSE(decode_receipt(bytes_of(good + "x")));
}

}  // namespace
}  // namespace jambline::seal
