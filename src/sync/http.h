// sync/http.h: requests and answers as values; who carries them knows sockets, this folder does
// not.
//
// Shape:   header names are compared without regard to case. A body stands in `body`, or is a part
//          of a file that the carrier reads (`send`) or takes in (`receive`) by itself.
// Source:  RFC 9110 (names, methods, status codes).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/ids.h"

namespace jambline::sync {

enum class Method : std::uint8_t { Get, Head, Post, Patch, Delete, Options };
std::string_view name_of(Method method);
std::optional<Method> method_of(std::string_view name);

struct HeaderField {
  std::string name;
  std::string value;
};

bool same_name(std::string_view a, std::string_view b);
std::string_view find_header(const std::vector<HeaderField>& headers, std::string_view name);

// From `offset` to the end of a blob.
struct BlobPart {
  Hash blob;
  std::uint64_t offset{};
  std::uint64_t size_bytes{};  // of the whole blob
};

struct Request {
  Method method{};
  std::string target;  // path and query
  std::vector<HeaderField> headers;
  std::string body;
  std::optional<BlobPart> send = {};     // the body is this
  std::optional<BlobPart> receive = {};  // the answer's body is this, if it is 200 or 206
  std::string_view header(std::string_view name) const { return find_header(headers, name); }
};

struct Response {
  int status{};
  std::vector<HeaderField> headers;
  std::string body;
  std::string_view header(std::string_view name) const { return find_header(headers, name); }
};

}  // namespace jambline::sync
