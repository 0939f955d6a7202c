#include "base/error.h"

#include <array>

namespace jambline {

std::string_view code_name(Code code) {
  static constexpr std::array<std::string_view, 33> names{
      "DiskFull",       "ReadOnly",      "NoSuchFile",
      "FileFailed",     "FolderInUse",   "DatabaseDamaged",
      "NewerSchema",    "ChainBroken",   "BadSignature",
      "BadHash",        "Fork",          "NotAdmitted",
      "Revoked",        "WrongShop",     "WrongKey",
      "TooLarge",       "NotErasable",   "Stopped",
      "Malformed",      "OutOfRange",    "Missing",
      "Unknown",        "VinCheckFails", "NotRunning",
      "AlreadyRunning", "AlreadyDone",   "NotAllowed",
      "OutsidePanel",   "Disputed",      "NotYet",
      "NoContact",      "WrongServer",   "Busy"};
  static_assert(static_cast<std::size_t>(Code::Busy) == 32);
  return names.at(static_cast<std::size_t>(code));
}

std::string_view Error::arg(std::string_view name) const {
  for (const auto& [key, value] : args)
    if (key == name) return value;
  return {};
}

}  // namespace jambline
