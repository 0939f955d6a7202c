// hub/expected_shops.h: codes for shops that are to come, kept until they are here.
//
// Shape:   expected.json in the hub's folder: of each code its hash and how long it holds. When a
//          shop comes with it, the code moves into the shop's own storage.
// Durable: a code that was given out holds after power loss.
// Threads: one owner at a time (the lobby's).
// Errors:  those of hub/small_file.h; Malformed.
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "base/random.h"
#include "sync/hub_storage.h"
#include "sync/invitation.h"

namespace jambline::hub {

class ExpectedShops {
 public:
  static Result<ExpectedShops> open(const std::filesystem::path& hub_folder);

  Result<sync::InviteCode> invite(std::int64_t now_ms, std::int64_t lives_ms, Random& random);
  std::optional<sync::Invited> find(const Hash& code, std::int64_t now_ms) const;
  Status drop(const Hash& code);  // also one that is not here
  std::size_t count() const { return codes_.size(); }

 private:
  struct Code {
    Hash code;
    std::int64_t until_ms{};
    template <class Self, class Visit>
    static void describe(Self& self, Visit& visit);
  };
  struct Codes {
    std::vector<Code> codes;
    template <class Self, class Visit>
    static void describe(Self& self, Visit& visit);
  };
  Status keep(std::vector<Code> codes);

  std::filesystem::path file_;
  std::vector<Code> codes_;
};

}  // namespace jambline::hub
