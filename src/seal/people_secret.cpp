#include "seal/people_secret.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <sodium.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/json.h"

namespace jambline::seal {

template <class Self, class Visit>
void PeopleSecret::Person::describe(Self& self, Visit& visit) {
  visit(Field{.name = "person"}, self.person);
  visit(Field{.name = "verifier"}, self.verifier);
  visit(Field{.name = "wrong", .min = 0, .max = 1e6}, self.wrong);
  visit(Field{.name = "last_ms", .unit = "ms"}, self.last_ms);
}

namespace {
constexpr const char* file_name = "people.secret";
constexpr std::size_t most_file_bytes = 1 << 20;
constexpr int free_tries = 3;
constexpr std::int64_t first_wait_ms = 5'000;
constexpr std::int64_t most_wait_ms = 300'000;

Error refused(const char* operation, int reason) {
  const Code code = reason == ENOSPC || reason == EDQUOT                     ? Code::DiskFull
                    : reason == EROFS || reason == EACCES || reason == EPERM ? Code::ReadOnly
                                                                             : Code::FileFailed;
  return Error{code, operation, file_name, {}}.with("cause", strerror(reason));
}

Status check_pin(std::string_view pin) {
  const bool good =
      pin.size() >= 4 && pin.size() <= 8 &&
      std::all_of(pin.begin(), pin.end(), [](char one) { return one >= '0' && one <= '9'; });
  if (good) return {};
  return fail(Error{Code::Malformed, "set", "PIN", {{"field", "PIN"}, {"cause", "4 to 8 digits"}}});
}

std::int64_t wait_after(int wrong) {
  std::int64_t wait = wrong < free_tries ? 0 : first_wait_ms;
  for (int i = free_tries; i < wrong && wait < most_wait_ms; ++i) wait *= 2;
  return std::min(wait, most_wait_ms);
}

Result<std::string> read_all(const std::filesystem::path& file) {
  const int fd = open(file.c_str(), O_RDONLY | O_CLOEXEC);
  if (fd < 0) {
    if (errno == ENOENT) return std::string("[]");
    return fail(refused("read", errno));
  }
  std::string text(most_file_bytes + 1, '\0');
  std::size_t size = 0;
  ssize_t got = 0;
  while (size < text.size() && (got = read(fd, text.data() + size, text.size() - size)) > 0)
    size += static_cast<std::size_t>(got);
  const int reason = errno;
  close(fd);
  if (got < 0) return fail(refused("read", reason));
  if (size > most_file_bytes) return fail(Error{Code::TooLarge, "read", file_name, {}});
  text.resize(size);
  return text;
}

int write_whole(int fd, std::string_view text) {
  while (!text.empty()) {
    const ssize_t put = write(fd, text.data(), text.size());
    if (put < 0) return errno;
    text.remove_prefix(static_cast<std::size_t>(put));
  }
  return fsync(fd) == 0 ? 0 : errno;
}

int sync_of(const std::filesystem::path& folder) {
  const int fd = open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0) return errno;
  const int reason = fsync(fd) == 0 ? 0 : errno;
  close(fd);
  return reason;
}
}  // namespace

Result<PeopleSecret> PeopleSecret::open(const std::filesystem::path& folder) {
  if (sodium_init() < 0) std::abort();
  PeopleSecret out(folder / file_name);
  JAMBLINE_ASSIGN(const std::string text, read_all(out.file_));
  JAMBLINE_ASSIGN(out.people_, from_json<std::vector<Person>>(text));
  return out;
}

bool PeopleSecret::has(const PersonId& person) const {
  return std::any_of(people_.begin(), people_.end(),
                     [&](const Person& one) { return one.person == person; });
}

std::vector<PersonId> PeopleSecret::people() const {
  std::vector<PersonId> out;
  for (const Person& one : people_) out.push_back(one.person);
  return out;
}

PeopleSecret::Person* PeopleSecret::find(const PersonId& person) {
  const auto found = std::find_if(people_.begin(), people_.end(),
                                  [&](const Person& one) { return one.person == person; });
  return found == people_.end() ? nullptr : &*found;
}

Status PeopleSecret::set(const PersonId& person, std::string_view pin) {
  JAMBLINE_TRY(check_pin(pin));
  std::array<char, crypto_pwhash_STRBYTES> verifier{};
  if (crypto_pwhash_str(verifier.data(), pin.data(), pin.size(), crypto_pwhash_OPSLIMIT_INTERACTIVE,
                        crypto_pwhash_MEMLIMIT_INTERACTIVE) != 0)
    return fail(refused("set", ENOMEM));
  const auto before = people_;
  Person* known = find(person);
  if (!known) known = &people_.emplace_back(Person{person, {}, 0, 0});
  known->verifier = verifier.data();
  known->wrong = 0;
  Status kept = keep();
  if (!kept) people_ = before;
  return kept;
}

Status PeopleSecret::remove(const PersonId& person) {
  if (!has(person)) return {};
  const auto before = people_;
  std::erase_if(people_, [&](const Person& one) { return one.person == person; });
  Status kept = keep();
  if (!kept) people_ = before;
  return kept;
}

Result<PinTry> PeopleSecret::attempt(const PersonId& person, std::string_view pin,
                                     std::int64_t wall_ms) {
  Person* known = find(person);
  if (!known) return PinTry{PinAnswer::NoPin, 0};
  const std::int64_t wait = wait_after(known->wrong);
  const std::int64_t gone = wall_ms - known->last_ms;
  if (wait > 0 && gone < wait) {
    // Turned back: the wait begins anew from the time that the clock shows now.
    if (gone < 0) {
      known->last_ms = wall_ms;
      JAMBLINE_TRY(keep());
      return PinTry{PinAnswer::Wait, wait};
    }
    return PinTry{PinAnswer::Wait, wait - gone};
  }
  const bool right = crypto_pwhash_str_verify(known->verifier.c_str(), pin.data(), pin.size()) == 0;
  if (right && known->wrong == 0) return PinTry{PinAnswer::Right, 0};
  known->wrong = right ? 0 : known->wrong + 1;
  known->last_ms = wall_ms;
  JAMBLINE_TRY(keep());
  return right ? PinTry{PinAnswer::Right, 0} : PinTry{PinAnswer::Wrong, wait_after(known->wrong)};
}

Status PeopleSecret::keep() const {
  const std::filesystem::path fresh = file_.string() + ".new";
  const int fd = ::open(fresh.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
  if (fd < 0) return fail(refused("write", errno));
  int reason = fchmod(fd, 0600) == 0 ? 0 : errno;
  if (reason == 0) reason = write_whole(fd, to_json(people_));
  if (close(fd) != 0 && reason == 0) reason = errno;
  if (reason == 0 && rename(fresh.c_str(), file_.c_str()) != 0) reason = errno;
  if (reason == 0) reason = sync_of(file_.parent_path());
  if (reason == 0) return {};
  unlink(fresh.c_str());
  return fail(refused("write", reason));
}

}  // namespace jambline::seal
