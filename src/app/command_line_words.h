// app/command_line_words.h: an error in words, for the command-line programs.
//
// Shape:   one table, one row a code: what happened, what is kept, what to do. said() puts the
//          subject and the named facts of the error in front.
// Threads: any.
#pragma once

#include <string>
#include <string_view>

#include "base/error.h"

namespace jambline::app {

struct ErrorWords {
  std::string_view what;  // what happened
  std::string_view kept;  // what is kept, or how much can be relied on
  std::string_view next;  // what to do
};

ErrorWords words_for(Code code);
// Three lines, each with its end.
std::string said(const Error& error);

}  // namespace jambline::app
