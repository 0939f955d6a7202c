// base/ids.h: names of things as fixed bytes, one type a thing.
//
// Shape:  Id<Tag> is 16 bytes, Hash 32, all-zero means "none". Text form is lower-case hex.
// Order:  bytewise; the order means nothing but is the same on every device.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <cstring>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace jambline {

// Lower-case hex of bytes, and back; nullopt for an odd length, a wrong length or a non-hex sign.
std::string to_hex(std::span<const std::uint8_t> bytes);
bool from_hex(std::string_view hex, std::span<std::uint8_t> bytes);

template <std::size_t N, class Tag>
struct Bytes {
  static constexpr std::size_t size = N;
  std::array<std::uint8_t, N> bytes{};

  bool none() const { return *this == Bytes{}; }
  explicit operator bool() const { return !none(); }
  std::string hex() const { return to_hex(bytes); }
  static std::optional<Bytes> parse(std::string_view hex) {
    Bytes out;
    if (!from_hex(hex, out.bytes)) return std::nullopt;
    return out;
  }
  friend auto operator<=>(const Bytes&, const Bytes&) = default;
  friend bool operator==(const Bytes&, const Bytes&) = default;
};

template <class Tag>
using Id = Bytes<16, Tag>;

using Hash = Bytes<32, struct HashTag>;
using ShopId = Id<struct ShopTag>;
using DeviceId = Id<struct DeviceTag>;
using BootId = Id<struct BootTag>;
using PersonId = Id<struct PersonTag>;
using ActionId = Id<struct ActionTag>;
using JobId = Id<struct JobTag>;  // one car's visit; zero = the shop's own stream
using MarkId = Id<struct MarkTag>;
using OperationId = Id<struct OperationTag>;
using ReleaseId = Id<struct ReleaseTag>;
using RackId = Id<struct RackTag>;
using BoothId = Id<struct BoothTag>;
using BoothEventId = Id<struct BoothEventTag>;
using ReadingId = Id<struct ReadingTag>;
using RoundId = Id<struct RoundTag>;
using PictureId = Id<struct PictureTag>;
using PictureNoteId = Id<struct PictureNoteTag>;
using ShotId = Id<struct ShotTag>;
using SprayId = Id<struct SprayTag>;
using MixId = Id<struct MixTag>;
using BondId = Id<struct BondTag>;
using RespiratorId = Id<struct RespiratorTag>;
using FitTestId = Id<struct FitTestTag>;
using ProductId = Id<struct ProductTag>;
using LimitId = Id<struct LimitTag>;
using SampleId = Id<struct SampleTag>;
using PartId = Id<struct PartTag>;
using SubletId = Id<struct SubletTag>;
using RuleId = Id<struct RuleTag>;
using FitId = Id<struct FitTag>;
using ComebackId = Id<struct ComebackTag>;

}  // namespace jambline

template <std::size_t N, class Tag>
struct std::hash<jambline::Bytes<N, Tag>> {
  std::size_t operator()(const jambline::Bytes<N, Tag>& id) const noexcept {
    std::size_t value;  // ids are random or hashes: the first bytes are as good as any
    std::memcpy(&value, id.bytes.data(), sizeof value);
    return value;
  }
};
