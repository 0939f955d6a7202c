// seal/people_secret.h: the PINs of the people of a shop, as verifiers that cannot be turned back.
//
// Shape:   people.secret (0600), JSON: person, verifier, wrong tries in a row, when the last was. A
// PIN
//          is 4 to 8 digits. It is no key: who holds the unlocked tablet can read the log; the PIN
//          keeps one person from tapping as another (SECURITY.md). Never in the log, never
//          exported.
// Verifier: Argon2id by libsodium, interactive limits (64 MiB, about a tenth of a second): call it
// off
//          the thread of the screens.
// Wait:    after three wrong tries in a row 5 s, doubled with each to 5 min. A clock that was
// turned
//          back does not shorten it.
// Errors:  Malformed (a PIN that is none; a file that does not read), NoSuchFile never (no file is
// no
//          PINs), DiskFull, ReadOnly, FileFailed. Durable: written beside, synced, renamed over.
// Threads: one at a time.
#pragma once

#include <filesystem>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "base/ids.h"

namespace jambline::seal {

enum class PinAnswer : std::uint8_t { Right, Wrong, Wait, NoPin };

struct PinTry {
  PinAnswer answer{};
  std::int64_t wait_ms = 0;  // until the next try is taken
};

class PeopleSecret {
 public:
  static Result<PeopleSecret> open(const std::filesystem::path& folder);

  bool has(const PersonId& person) const;
  std::vector<PersonId> people() const;
  Status set(const PersonId& person, std::string_view pin);
  Status remove(const PersonId& person);  // also one that has none
  // A wrong try is on disk before it is answered.
  Result<PinTry> attempt(const PersonId& person, std::string_view pin, std::int64_t wall_ms);

  struct Person {
    PersonId person;
    std::string verifier;
    int wrong = 0;
    std::int64_t last_ms = 0;

    template <class Self, class Visit>
    static void describe(Self& self, Visit& visit);
  };

 private:
  explicit PeopleSecret(std::filesystem::path file) : file_(std::move(file)) {}
  Status keep() const;
  Person* find(const PersonId& person);

  std::filesystem::path file_;
  std::vector<Person> people_;
};

}  // namespace jambline::seal
