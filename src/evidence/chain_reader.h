// evidence/chain_reader.h: the records of one device's chain out of a bundle, one after the other.
//
// Errors:  Malformed (args: cause), BadHash (the ZIP's checksum; args: member), FileFailed. After
// an
//          error there is no next record.
// Threads: one owner.
#pragma once

#include <optional>
#include <vector>

#include "evidence/layout.h"
#include "evidence/zip_reader.h"

namespace jambline::evidence {

class ChainReader {
 public:
  explicit ChainReader(MemberReader member) : member_(std::move(member)) {}
  Result<std::optional<Record>> next();  // nothing = the end

 private:
  Result<bool> have(std::size_t count);  // false: the member ends before

  MemberReader member_;
  std::vector<std::uint8_t> bytes_;
  std::size_t at_ = 0;
};

}  // namespace jambline::evidence
