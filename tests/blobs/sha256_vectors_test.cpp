// SHA-256 through the store's own code path.
// Source: NIST FIPS 180-4 example values ("SHA256.pdf" of the Cryptographic Standards and
// Guidelines examples): "abc", the 448 bit message, one million times "a"; the empty message from
// NIST's SHA256ShortMsg.rsp, Len = 0.
#include <gtest/gtest.h>
#include <string>

#include "blobs/blob_store.h"
#include "tests/blobs/faulty_files.h"

namespace jambline::test {
namespace {

std::string name_of(const std::string& text, std::size_t piece) {
  FaultyFiles files;
  auto store = blobs::BlobStore::open(files, "/blobs").value();
  auto writer = store->begin().value();
  const auto* bytes = reinterpret_cast<const std::uint8_t*>(text.data());
  for (std::size_t at = 0; at < text.size(); at += piece)
    EXPECT_TRUE(writer.write({bytes + at, std::min(piece, text.size() - at)}));
  const auto name = writer.finish().value();
  EXPECT_TRUE(store->check(name));
  return name.hex();
}

TEST(Sha256, TheNameOfABlobIsTheStandardsOwnValue) {
  EXPECT_EQ(name_of("", 1), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  EXPECT_EQ(name_of("abc", 1), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(name_of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", 7),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(name_of(std::string(1000000, 'a'), 4096),
            "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

}  // namespace
}  // namespace jambline::test
