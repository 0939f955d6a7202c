#include "engine/erase.h"

#include "acts/decide.h"
#include "engine/read_entry.h"

namespace jambline::engine {

Status erase_said_of(log::EntryLog& log, const seal::SigningKey& key, const PersonId& person,
                     const PersonId& by, const Moment& now, Random& random) {
  std::vector<Hash> names;
  JAMBLINE_TRY(log.said_of({}, [&](const log::Said& said) {
    const entries::Entry entry = read_entry(said);
    if (acts::goes_with_name(entry, person)) names.push_back(entry.hash);
    return true;
  }));
  const auto kinds = entries::erasable_kinds();
  for (const Hash& name : names)
    JAMBLINE_TRY(log.erase_payload(key, by, name, "left the shop", kinds, now, random));
  return {};
}

}  // namespace jambline::engine
