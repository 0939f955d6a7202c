#include "entries/entry.h"

#include <cstdlib>

#include "base/json.h"
#include "base/one_of_acts.h"

namespace jambline::entries {

namespace {

template <class T>
concept Kind = requires {
  T::kind;
};

constexpr std::uint16_t schema_now = 1;
constexpr std::uint16_t last_membership_kind = 5;

// Calls `use.template operator()<T>()` for each kind until one answers true.
template <class Use>
bool any_kind(Use&& use) {
  bool said = false;
  PayloadKinds::each([&]<class T>() {
    if constexpr (Kind<T>) said = said || use.template operator()<T>();
  });
  return said;
}

}  // namespace

Written write(const Payload& payload) {
  return payload.visit([](const auto& value) -> Written {
    using T = std::decay_t<decltype(value)>;
    if constexpr (Kind<T>)
      return {T::kind, schema_now, to_json(value)};
    else
      std::abort();  // nobody writes an entry that this version cannot read
  });
}

Payload read(std::uint16_t kind, std::uint16_t schema, std::string_view payload, bool erased) {
  if (erased) return ErasedPayload{};
  if (kind <= last_membership_kind) return MembershipAct{};
  Payload out;
  const bool known = any_kind([&]<class T>() {
    if (T::kind != kind) return false;
    if (schema != schema_now) {
      out =
          UnknownEntry{"unknown schema " + std::to_string(schema) + " of " + std::string(T::name)};
      return true;
    }
    const auto good = read_json(payload, out.emplace<T>());
    if (!good)
      out = UnknownEntry{std::string(code_name(good.error().code)) + " at " + good.error().subject};
    return true;
  });
  if (!known) out = UnknownEntry{"unknown kind " + std::to_string(kind)};
  return out;
}

std::string kind_name(std::uint16_t kind) {
  switch (kind) {
    case 1:
      return "ShopFounded";
    case 2:
      return "DeviceAdmitted";
    case 3:
      return "DeviceRevoked";
    case 4:
      return "HubAdmitted";
    case 5:
      return "PayloadErased";
    default:
      break;
  }
  std::string out = "kind " + std::to_string(kind);
  any_kind([&]<class T>() {
    if (T::kind != kind) return false;
    out = T::name;
    return true;
  });
  return out;
}

std::vector<std::uint16_t> erasable_kinds() {
  std::vector<std::uint16_t> out;
  any_kind([&]<class T>() {
    if (T::erasable) out.push_back(T::kind);
    return false;
  });
  return out;
}

std::string catalogue() {
  std::string out =
      "# Catalogue of entry kinds\n\n"
      "Written by `jambline-record catalogue` from the descriptions in src/entries; a test "
      "compares.\n"
      "Kinds 1 to 5 belong to membership and stand in seal/FORMAT.md.\n";
  any_kind([&]<class T>() {
    out += "\n## " + std::to_string(T::kind) + " " + std::string(T::name) + "\n";
    if (T::erasable) out += "\nThe payload may be erased.\n";
    out += "\n```json\n" + json_schema<T>() + "\n```\n";
    return false;
  });
  return out;
}

}  // namespace jambline::entries

namespace jambline {
template const KindActs<entries::PayloadKinds> OneOf<entries::PayloadKinds>::acts;
}
