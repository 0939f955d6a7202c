#include "app/record/typed_date.h"

#include <cstdio>

namespace jambline::app {

Result<LocalDate> typed_date(const std::string& text, const char* field) {
  LocalDate date;
  char rest = 0;
  if (std::sscanf(text.c_str(), "%4d-%2d-%2d%c", &date.year, &date.month, &date.day, &rest) != 3)
    return fail(Code::Malformed, "read the day", field);
  JAMBLINE_TRY(local_day("UTC", date));
  return date;
}

}  // namespace jambline::app
