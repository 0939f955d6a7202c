// base/error.h: what went wrong, as a value.
//
// Shape:   Error = {code, operation, subject, args}. `operation` is what was tried ("append"),
//          `subject` what it was tried on ("nib 7", a file), `args` named facts (cause, place,
//          limit). No sentence lives here: the words, and the hint a person can act on, are chosen
//          by code in screens/words and in app/command_line_words.
// Threads: a plain value.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

namespace jambline {

enum class Code : std::uint8_t {
  // the disk and the folder
  DiskFull,     // no space left; nothing half-written
  ReadOnly,     // the folder or file may not be written
  NoSuchFile,   // the file or folder is not there
  FileFailed,   // any other refusal by the operating system (args: cause)
  FolderInUse,  // a second copy of the program holds the folder's lock
  // the log
  DatabaseDamaged,  // SQLite says corrupt or not a database
  NewerSchema,      // written by a newer version: readable, not writable
  ChainBroken,      // an entry's prev_hash or seq does not follow (args: device, seq)
  BadSignature,     // the signature does not verify (args: device, seq)
  BadHash,          // bytes do not match the hash that names them
  Fork,             // same device and seq, another hash
  NotAdmitted,      // the device is not a member of the shop
  Revoked,          // the device's entries end before this one
  WrongShop,        // an entry of another shop
  WrongKey,         // the key file does not belong to this log
  TooLarge,         // over a stated limit (args: limit)
  NotErasable,      // the kind's payload may not be erased
  Stopped,          // long work was stopped by a person
  // input
  Malformed,      // bytes, JSON or CSV that do not fit (args: field, place, cause)
  OutOfRange,     // a number outside its range (args: field, value, min, max)
  Missing,        // a required field or answer is not there (args: field)
  Unknown,        // names something that does not exist (args: field)
  VinCheckFails,  // VIN check digit (args: place, expected)
  // the work
  NotRunning,      // stop or pause without a running clock
  AlreadyRunning,  // the person's clock already runs on this
  AlreadyDone,     // the act has been done before
  NotAllowed,      // the role may not do this
  OutsidePanel,    // a mark off its panel (args: panel, x_mm, y_mm)
  Disputed,        // two answers stand; a person has to settle first
  NotYet,          // something else must come first (args: what)
  // the network
  NoContact,    // nobody answers there (args: address, cause)
  WrongServer,  // somebody answers who is not the shop's hub (args: address, cause)
  Busy,         // the other side wants to be asked again later (args: retry_s)
};

// The code's own name ("DiskFull"), for logs, JSON and tests; not for people.
std::string_view code_name(Code code);

struct Error {
  Code code{};
  std::string operation;
  std::string subject;
  std::vector<std::pair<std::string, std::string>> args;

  Error with(std::string name, std::string value) && {
    args.emplace_back(std::move(name), std::move(value));
    return std::move(*this);
  }
  // The value of a named argument, or an empty view.
  std::string_view arg(std::string_view name) const;
  friend bool operator==(const Error&, const Error&) = default;
};

template <class T>
using Result = tl::expected<T, Error>;
using Status = tl::expected<void, Error>;

inline tl::unexpected<Error> fail(Code code, std::string operation, std::string subject) {
  return tl::unexpected<Error>(Error{code, std::move(operation), std::move(subject), {}});
}
inline tl::unexpected<Error> fail(Error error) {
  return tl::unexpected<Error>(std::move(error));
}

}  // namespace jambline

// Returns the error of an expression that gives a Result or Status.
#define JAMBLINE_CONCAT_(a, b) a##b
#define JAMBLINE_CONCAT(a, b) JAMBLINE_CONCAT_(a, b)
#define JAMBLINE_TRY(expression)                                              \
  do {                                                                        \
    if (auto status_ = (expression); !status_)                                \
      return ::tl::unexpected<::jambline::Error>(std::move(status_.error())); \
  } while (false)
#define JAMBLINE_ASSIGN(declaration, expression)                \
  auto JAMBLINE_CONCAT(result_, __LINE__) = (expression);       \
  if (!JAMBLINE_CONCAT(result_, __LINE__))                      \
    return ::tl::unexpected<::jambline::Error>(                 \
        std::move(JAMBLINE_CONCAT(result_, __LINE__).error())); \
  declaration = std::move(*JAMBLINE_CONCAT(result_, __LINE__))
