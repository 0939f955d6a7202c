// seal/wire.h: big-endian fields into and out of bytes.
//
// Shape:  ByteWriter fills a buffer that is large enough (programmer's duty). ByteReader never
//         reads past its end: ok() turns false and zeros come out.
#pragma once

#include <cstdint>
#include <cstring>
#include <iterator>
#include <span>

#include "base/ids.h"

namespace jambline::seal {

class ByteWriter {
 public:
  explicit ByteWriter(std::uint8_t* at) : at_(at) {}
  template <class Whole>
  void number(Whole value) {
    auto bits = static_cast<std::make_unsigned_t<Whole>>(value);
    for (std::size_t i = 0; i < sizeof(Whole); ++i)
      at_[i] = static_cast<std::uint8_t>(bits >> (8 * (sizeof(Whole) - 1 - i)));
    at_ += sizeof(Whole);
  }
  template <std::size_t N, class Tag>
  void bytes(const Bytes<N, Tag>& value) {
    std::memcpy(at_, value.bytes.data(), N);
    at_ += N;
  }

 private:
  std::uint8_t* at_;
};

class ByteReader {
 public:
  explicit ByteReader(std::span<const std::uint8_t> bytes) : left_(bytes) {}
  bool ok() const { return ok_; }
  std::size_t left() const { return left_.size(); }
  std::span<const std::uint8_t> take(std::size_t count) {
    if (count > left_.size()) {
      ok_ = false;
      return {};
    }
    const auto taken = left_.first(count);
    left_ = left_.subspan(count);
    return taken;
  }
  template <class Whole>
  void number(Whole& value) {
    std::uint8_t raw[sizeof(Whole)] = {};
    fill(raw);
    std::make_unsigned_t<Whole> bits = 0;
    for (const std::uint8_t byte : raw)
      bits =
          static_cast<std::make_unsigned_t<Whole>>((static_cast<std::uint64_t>(bits) << 8U) | byte);
    value = static_cast<Whole>(bits);
  }
  template <std::size_t N, class Tag>
  void bytes(Bytes<N, Tag>& value) {
    fill(value.bytes);
  }

 private:
  // A size that is known beforehand is one or two moves of the machine.
  template <class Array>
  void fill(Array& out) {
    constexpr std::size_t count = sizeof(out);
    if (count > left_.size()) {
      ok_ = false;
      return;
    }
    std::memcpy(std::data(out), left_.data(), count);
    left_ = left_.subspan(count);
  }

  std::span<const std::uint8_t> left_;
  bool ok_ = true;
};

}  // namespace jambline::seal
