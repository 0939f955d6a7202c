// tests/hub/files_conformance.h: what every implementation of sync::HubFiles has to do.
//
// Held against: the contract in src/sync/hub_files.h.
#pragma once

#include <functional>
#include <gtest/gtest.h>
#include <memory>

#include "seal/digest.h"
#include "sync/hub_files.h"
#include "tests/hub/hub_folder.h"

namespace jambline::test {

class HubFilesHome {
 public:
  virtual ~HubFilesHome() = default;
  virtual std::unique_ptr<sync::HubFiles> open() = 0;  // again and again
};
using MakeFilesHome = std::function<std::unique_ptr<HubFilesHome>()>;

class HubFilesTest : public ::testing::TestWithParam<MakeFilesHome> {
 protected:
  HubFilesTest() : home(GetParam()()), files(home->open()) {}
  static sync::UploadId upload_of(std::string_view bytes, std::uint8_t turn = 1) {
    sync::UploadId out;
    out.blob = seal::sha256(seal::bytes_of(bytes));
    out.size_bytes = bytes.size();
    out.random.bytes[0] = turn;
    return out;
  }
  Status write(const sync::UploadId& upload, std::uint64_t offset, std::string_view bytes) {
    JAMBLINE_ASSIGN(const auto sink, files->append(upload, offset));
    JAMBLINE_TRY(sink->write(seal::bytes_of(bytes)));
    EXPECT_EQ(sink->size_bytes(), offset + bytes.size());
    return {};
  }
  std::string read(const Hash& blob, std::uint64_t offset = 0) {
    const auto source = get(files->read(blob, offset));
    std::string out;
    std::array<std::uint8_t, 7> piece{};
    while (const std::size_t count = get(source->read(piece)))
      out.append(reinterpret_cast<const char*>(piece.data()), count);
    return out;
  }

  std::unique_ptr<HubFilesHome> home;
  std::unique_ptr<sync::HubFiles> files;
};

TEST_P(HubFilesTest, AFileIsThereWhenItIsWholeAndNotBefore) {
  const std::string bytes = "the bytes of a photograph";
  const auto upload = upload_of(bytes);
  good(files->begin(upload));
  EXPECT_EQ(get(files->offset(upload)), 0U);
  good(write(upload, 0, bytes.substr(0, 10)));
  EXPECT_FALSE(get(files->has(upload.blob)));
  EXPECT_EQ(code_of(files->size_bytes(upload.blob)), Code::NoSuchFile);
  EXPECT_EQ(code_of(files->read(upload.blob, 0)), Code::NoSuchFile);
  EXPECT_EQ(get(files->offset(upload)), 10U);
  files.reset();
  files = home->open();  // the hub starts again
  EXPECT_EQ(get(files->offset(upload)), 10U) << "what had come is kept";
  good(write(upload, 10, bytes.substr(10)));
  good(files->finish(upload));
  EXPECT_TRUE(get(files->has(upload.blob)));
  EXPECT_EQ(get(files->size_bytes(upload.blob)), bytes.size());
  EXPECT_EQ(read(upload.blob), bytes);
  EXPECT_EQ(read(upload.blob, 20), bytes.substr(20));
  EXPECT_EQ(read(upload.blob, bytes.size()), "");
  EXPECT_EQ(code_of(files->offset(upload)), Code::NoSuchFile);
}

TEST_P(HubFilesTest, OtherBytesThanTheNameSaysAreNeverPublished) {
  const auto upload = upload_of("the right bytes");
  good(files->begin(upload));
  good(write(upload, 0, "the wrong bytes"));
  EXPECT_EQ(code_of(files->finish(upload)), Code::BadHash);
  EXPECT_FALSE(get(files->has(upload.blob)));
  EXPECT_EQ(code_of(files->offset(upload)), Code::NoSuchFile) << "the part is gone";
}

TEST_P(HubFilesTest, AnotherOffsetIsRefusedAndSaysWhereItIs) {
  const auto upload = upload_of("0123456789");
  good(files->begin(upload));
  good(write(upload, 0, "0123"));
  for (const std::uint64_t offset : {0U, 3U, 5U, 10U}) {
    const auto refused = files->append(upload, offset);
    ASSERT_EQ(code_of(refused), Code::OutOfRange);
    EXPECT_EQ(refused.error().arg("value"), "4");
  }
}

TEST_P(HubFilesTest, OneWriterAtATime) {
  const auto upload = upload_of("0123456789");
  good(files->begin(upload));
  {
    const auto sink = get(files->append(upload, 0));
    EXPECT_EQ(code_of(files->append(upload, 0)), Code::Busy);
  }
  EXPECT_TRUE(files->append(upload, 0));
}

TEST_P(HubFilesTest, TwoUploadsOfOneFileMayRunAndBothEnd) {
  const std::string bytes = "one picture, two tablets";
  const auto one = upload_of(bytes, 1);
  const auto two = upload_of(bytes, 2);
  good(files->begin(one));
  good(files->begin(two));
  good(write(one, 0, bytes));
  good(write(two, 0, bytes));
  good(files->finish(one));
  good(files->finish(two));
  EXPECT_EQ(read(one.blob), bytes);
}

TEST_P(HubFilesTest, ADroppedUploadIsGone) {
  const auto upload = upload_of("0123456789");
  good(files->begin(upload));
  good(write(upload, 0, "0123"));
  good(files->drop(upload));
  EXPECT_EQ(code_of(files->offset(upload)), Code::NoSuchFile);
  EXPECT_EQ(code_of(files->append(upload, 4)), Code::NoSuchFile);
  EXPECT_EQ(code_of(files->finish(upload)), Code::NoSuchFile);
  EXPECT_EQ(code_of(files->drop(upload)), Code::NoSuchFile);
}

TEST_P(HubFilesTest, AnEmptyFileIsAFileToo) {
  const auto upload = upload_of("");
  good(files->begin(upload));
  good(files->finish(upload));
  EXPECT_TRUE(get(files->has(upload.blob)));
  EXPECT_EQ(get(files->size_bytes(upload.blob)), 0U);
}

}  // namespace jambline::test
