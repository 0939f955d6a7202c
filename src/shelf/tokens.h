// shelf/tokens.h: a text as the search takes it apart: by SQLite's own unicode61, small letters
// without their accents.
//
// Threads: one at a time. Errors: FileFailed when SQLite was built without FTS5.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "sqlite/sqlite.h"

namespace jambline::shelf {

struct Token {
  std::string text;
  std::size_t begin{};  // bytes of the text that it comes from
  std::size_t end{};
};

class Tokens {
 public:
  // `database` lives longer.
  static Result<Tokens> of(sqlite::Database& database);
  std::vector<Token> split(std::string_view text) const;

 private:
  std::shared_ptr<void> tokenizer_;
  int (*split_)(void* tokenizer, std::vector<Token>& out, std::string_view text) = nullptr;
};

// Whether the words stand there one after the other, of the last one at least its beginning; gives
// back where they begin, or the number of all tokens.
std::size_t place_of(const std::vector<Token>& words, const std::vector<Token>& text);

}  // namespace jambline::shelf
