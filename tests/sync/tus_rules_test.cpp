// The core rules of tus 1.0.0, one by one, against a hub's shop without sockets. Source: tus
// resumable upload protocol 1.0.0 (tus/tus-resumable-upload-protocol, protocol.md, commit
// 30698e17), sections Core Protocol, Creation and Termination; each test names its rule.
#include "seal/digest.h"
#include "tests/sync/small_hub.h"

namespace jambline::sync {
namespace {

class TusRules : public ::testing::Test {
 protected:
  Request request(Method method, const std::string& target, std::vector<HeaderField> headers = {},
                  std::string body = {}) {
    Request out{method, target, std::move(headers), std::move(body)};
    out.headers.push_back({"Tus-Resumable", "1.0.0"});
    out.headers.push_back({"Authorization", "Bearer " + token});
    return out;
  }
  std::string created(std::size_t size) {
    const auto answer = hub.ask(
        request(Method::Post, hub.path("files"),
                {{"Upload-Length", std::to_string(size)}, {"Upload-Metadata", named(bytes)}}));
    EXPECT_EQ(answer.status, 201);
    return std::string(answer.header("Location"));
  }
  static std::string named(const std::string& file) {
    return metadata_of("sha256", seal::sha256(seal::bytes_of(file)).hex());
  }
  Response patch(const std::string& place, std::size_t offset, std::string piece,
                 const std::string& type = "application/offset+octet-stream") {
    return hub.ask(request(Method::Patch, place,
                           {{"Content-Type", type}, {"Upload-Offset", std::to_string(offset)}},
                           std::move(piece)));
  }
  test::SmallHub hub;
  std::string token = hub.token(hub.tablet);
  std::string bytes = std::string(70, 'a') + std::string(30, 'b');
};

// The example of the section Core Protocol: 100 bytes, interrupted at 70.
TEST_F(TusRules, TheExampleOfAHundredBytesInterruptedAtSeventy) {
  const std::string place = created(100);
  EXPECT_EQ(patch(place, 0, bytes.substr(0, 70)).header("Upload-Offset"), "70");
  const auto head = hub.ask(request(Method::Head, place));
  EXPECT_EQ(head.status, 200);
  EXPECT_EQ(head.header("Upload-Offset"), "70");
  const auto rest = patch(place, 70, bytes.substr(70));
  EXPECT_EQ(rest.status, 204);
  EXPECT_EQ(rest.header("Upload-Offset"), "100");
  ASSERT_EQ(hub.disk->blobs.size(), 1U);
  EXPECT_EQ(*hub.disk->blobs.begin()->second, bytes);
}

// "The Server MUST always include the Upload-Offset header in the response for a HEAD request, even
// if the offset is 0, or the upload is already considered completed"; "MUST prevent the client
// and/or proxies from caching the response by adding Cache-Control: no-store".
TEST_F(TusRules, HeadSaysTheOffsetAtZeroAndAtTheEndAndIsNotCached) {
  const std::string place = created(100);
  auto head = hub.ask(request(Method::Head, place));
  EXPECT_EQ(head.header("Upload-Offset"), "0");
  EXPECT_EQ(head.header("Upload-Length"), "100");
  EXPECT_EQ(head.header("Cache-Control"), "no-store");
  EXPECT_EQ(patch(place, 0, bytes).status, 204);
  head = hub.ask(request(Method::Head, place));
  EXPECT_EQ(head.status, 200);
  EXPECT_EQ(head.header("Upload-Offset"), "100");
}

// "If the resource is not found, the Server SHOULD return either the 404 Not Found, 410 Gone or 403
// Forbidden status without the Upload-Offset header."
TEST_F(TusRules, HeadOfWhatIsNotThereHasNoOffset) {
  UploadId other;
  other.size_bytes = 5;
  other.blob.bytes[0] = 1;
  const auto head = hub.ask(request(Method::Head, hub.path("files/" + other.text())));
  EXPECT_EQ(head.status, 404);
  EXPECT_EQ(head.header("Upload-Offset"), "");
  EXPECT_EQ(patch(hub.path("files/" + other.text()), 0, "12345").status, 404);
}

// "All PATCH requests MUST use Content-Type: application/offset+octet-stream, otherwise the server
// SHOULD return a 415 Unsupported Media Type status."
TEST_F(TusRules, PatchOfAnotherMediaTypeIs415) {
  const std::string place = created(100);
  EXPECT_EQ(patch(place, 0, bytes, "application/octet-stream").status, 415);
  EXPECT_EQ(hub.ask(request(Method::Head, place)).header("Upload-Offset"), "0");
}

// "If the offsets do not match, the Server MUST respond with the 409 Conflict status without
// modifying the upload resource."
TEST_F(TusRules, PatchAtAnotherOffsetIs409AndChangesNothing) {
  const std::string place = created(100);
  EXPECT_EQ(patch(place, 0, bytes.substr(0, 70)).status, 204);
  for (const std::size_t offset : {std::size_t{0}, std::size_t{69}, std::size_t{71}}) {
    EXPECT_EQ(patch(place, offset, "xyz").status, 409) << offset;
    EXPECT_EQ(hub.ask(request(Method::Head, place)).header("Upload-Offset"), "70");
  }
}

// "The Tus-Resumable header MUST be included in every request and response, except for OPTIONS";
// "If the version specified by the Client is not supported by the Server, it MUST respond with the
// 412 Precondition Failed status and MUST include the Tus-Version header. In addition, the Server
// MUST NOT process the request."
TEST_F(TusRules, AnotherVersionIs412AndNothingIsDone) {
  const std::string place = created(100);
  for (auto [method, target] :
       {std::pair{Method::Head, place}, std::pair{Method::Patch, place},
        std::pair{Method::Delete, place}, std::pair{Method::Post, hub.path("files")}}) {
    for (const char* version : {"0.2.2", "1.0.1", ""}) {
      Request one = request(method, target, {{"Upload-Offset", "0"}, {"Upload-Length", "3"}});
      one.headers[2].value = version;
      const auto answer = hub.ask(one);
      EXPECT_EQ(answer.status, 412);
      EXPECT_EQ(answer.header("Tus-Version"), "1.0.0");
    }
  }
  EXPECT_EQ(hub.ask(request(Method::Head, place)).header("Upload-Offset"), "0");
}

TEST_F(TusRules, EveryAnswerNamesTheVersion) {
  const std::string place = created(100);
  EXPECT_EQ(hub.ask(request(Method::Head, place)).header("Tus-Resumable"), "1.0.0");
  EXPECT_EQ(patch(place, 3, "x").header("Tus-Resumable"), "1.0.0");
  EXPECT_EQ(patch(place, 0, "x").header("Tus-Resumable"), "1.0.0");
  EXPECT_EQ(hub.ask(request(Method::Delete, place)).header("Tus-Resumable"), "1.0.0");
}

// OPTIONS: "A successful response indicated by the 204 No Content or 200 OK status MUST contain the
// Tus-Version header. It MAY include the Tus-Extension and Tus-Max-Size headers." No session
// needed.
TEST_F(TusRules, OptionsSaysWhatIsSpoken) {
  const auto answer = hub.ask({Method::Options, hub.path("files"), {}, {}});
  EXPECT_EQ(answer.status, 204);
  EXPECT_EQ(answer.header("Tus-Version"), "1.0.0");
  EXPECT_EQ(answer.header("Tus-Extension"), "creation,termination");
  EXPECT_EQ(answer.header("Tus-Max-Size"), "67108864");
}

// Creation: Upload-Length is a number, 0 is allowed; "If the length of the upload exceeds the
// maximum, which MAY be specified using the Tus-Max-Size header, the Server MUST respond with the
// 413 Request Entity Too Large status."
TEST_F(TusRules, CreationWantsALengthWithinTheLimit) {
  const auto create = [&](const std::string& length, const std::string& file) {
    return hub
        .ask(request(Method::Post, hub.path("files"),
                     {{"Upload-Length", length}, {"Upload-Metadata", named(file)}}))
        .status;
  };
  EXPECT_EQ(create("100", bytes), 201);
  EXPECT_EQ(create("0", ""), 201);
  EXPECT_EQ(create("67108865", bytes), 413);
  EXPECT_EQ(create("10737418240", bytes), 413);
  for (const char* bad : {"", "-1", "1.5", "ten", "0x10"}) EXPECT_EQ(create(bad, bytes), 400);
  EXPECT_EQ(hub.disk->parts.size(), 1U);  // the empty file is whole already
  EXPECT_EQ(hub.disk->blobs.size(), 1U);
}

// Termination: "the Server SHOULD respond with the 204 No Content status ... For all future
// requests to this URL, the Server SHOULD respond with the 404 Not Found or 410 Gone status."
TEST_F(TusRules, WhatIsTerminatedIsGone) {
  const std::string place = created(100);
  EXPECT_EQ(patch(place, 0, "abc").status, 204);
  EXPECT_EQ(hub.ask(request(Method::Delete, place)).status, 204);
  EXPECT_EQ(hub.ask(request(Method::Head, place)).status, 404);
  EXPECT_EQ(patch(place, 3, "abc").status, 404);
  EXPECT_TRUE(hub.disk->parts.empty());
}

// Our own, beside tus: no more bytes than were said, and none other than the name says.
TEST_F(TusRules, MoreBytesAre413AndOtherBytes422) {
  std::string place = created(100);
  EXPECT_EQ(patch(place, 0, bytes + "x").status, 413);
  place = created(100);
  EXPECT_EQ(patch(place, 0, std::string(100, 'z')).status, 422);
  EXPECT_EQ(hub.ask(request(Method::Head, place)).status, 404);
  EXPECT_TRUE(hub.disk->blobs.empty());
}

}  // namespace
}  // namespace jambline::sync
