#include "engine/erase.h"

#include <set>

#include "acts/decide.h"
#include "engine/read_entry.h"

namespace jambline::engine {

namespace {
constexpr std::size_t slice_entries = 2000;

struct OfLeaver {
  std::vector<Hash> entries;    // that go with the name
  std::set<std::string> names;  // that he had
};

Result<OfLeaver> of_leaver(log::EntryLog& log, const PersonId& person) {
  OfLeaver out;
  JAMBLINE_TRY(log.said_of({}, [&](const log::Said& said) {
    const entries::Entry entry = read_entry(said);
    if (!acts::goes_with_name(entry, person)) return true;
    out.entries.push_back(entry.hash);
    if (const auto* name = entry.payload.get_if<entries::PersonNamed>())
      out.names.insert(name->person_name);
    return true;
  }));
  return out;
}

bool is_of(const log::Said& said, const PersonId& person, const std::set<std::string>& names) {
  if (said.erased || !said.header.subject) return false;
  switch (said.header.kind) {
    case entries::NoteWritten::kind:
    case entries::PictureNoted::kind:
      return said.header.person == person;
    case entries::Signed::kind: {
      const entries::Entry entry = read_entry(said);
      const auto* one = entry.payload.get_if<entries::Signed>();
      return one && names.count(one->signer) > 0;
    }
    default:
      return false;
  }
}
}  // namespace

Result<std::vector<Hash>> said_of_leaver(log::EntryLog& log, const PersonId& person,
                                         const std::function<void()>& between) {
  JAMBLINE_ASSIGN(const OfLeaver known, of_leaver(log, person));
  std::vector<Hash> out;
  log::Arrival read = 0;
  for (std::size_t left = 0; left == 0;) {
    left = slice_entries;
    JAMBLINE_TRY(log.said_after(read, [&](const log::Said& said) {
      read = said.arrival;
      if (is_of(said, person, known.names)) out.push_back(said.hash);
      return --left > 0;
    }));
    between();
  }
  out.insert(out.end(), known.entries.begin(), known.entries.end());
  return out;
}

}  // namespace jambline::engine
