#include "hub/expected_shops.h"

#include "base/json.h"
#include "hub/small_file.h"

namespace jambline::hub {

template <class Self, class Visit>
void ExpectedShops::Code::describe(Self& self, Visit& visit) {
  visit(Field{.name = "code", .doc = "its hash"}, self.code);
  visit(Field{.name = "until_ms", .unit = "ms"}, self.until_ms);
}
template <class Self, class Visit>
void ExpectedShops::Codes::describe(Self& self, Visit& visit) {
  visit(Field{.name = "codes"}, self.codes);
}

Result<ExpectedShops> ExpectedShops::open(const std::filesystem::path& hub_folder) {
  constexpr std::size_t most_bytes = 1U << 20U;
  ExpectedShops out;
  out.file_ = hub_folder / "expected.json";
  const auto text = read_whole(out.file_, most_bytes);
  if (!text && text.error().code == jambline::Code::NoSuchFile) return out;
  if (!text) return fail(text.error());
  JAMBLINE_ASSIGN(auto codes, from_json<Codes>(*text));
  out.codes_ = std::move(codes.codes);
  return out;
}

Result<sync::InviteCode> ExpectedShops::invite(std::int64_t now_ms, std::int64_t lives_ms,
                                               Random& random) {
  const auto code = random.make<sync::InviteCode>();
  std::vector<Code> codes = codes_;
  std::erase_if(codes, [&](const Code& one) { return one.until_ms < now_ms; });
  codes.push_back({sync::code_words(code), now_ms + lives_ms});
  JAMBLINE_TRY(keep(std::move(codes)));
  return code;
}

std::optional<sync::Invited> ExpectedShops::find(const Hash& code, std::int64_t now_ms) const {
  for (const Code& one : codes_)
    if (one.code == code && one.until_ms >= now_ms)
      return sync::Invited{one.code, one.until_ms, true, {}, false};
  return std::nullopt;
}

// Used up from here on, even when the file cannot be written.
Status ExpectedShops::drop(const Hash& code) {
  if (std::erase_if(codes_, [&](const Code& one) { return one.code == code; }) == 0) return {};
  return keep(codes_);
}

Status ExpectedShops::keep(std::vector<Code> codes) {
  JAMBLINE_TRY(write_whole(file_, to_json(Codes{codes}) + "\n"));
  codes_ = std::move(codes);
  return {};
}

}  // namespace jambline::hub
