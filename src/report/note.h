// report/note.h: a note of one or more pages as a PDF: headings, lines with or without a label, and
// a signature. The words come from who asks for it; nothing is looked up here.
//
// Shape:   US letter or A4, 25 mm free all round, in `family` with a fallback of the machine's;
// text that
//          can be searched and copied. A signature is strokes as in job/check_in.h.
// Durable, errors: report/pdf_file.h.
// Threads: any but one at a time a file; needs a QGuiApplication.
#pragma once

#include <QString>
#include <filesystem>
#include <vector>

#include "base/error.h"
#include "job/check_in.h"
#include "report/pdf_file.h"

namespace jambline::report {

struct NoteLine {
  QString label;  // "" none
  QString words;
};
struct NotePart {
  QString title;
  std::vector<NoteLine> lines;
};
struct Note {
  QString title;
  QString subtitle;
  QString head;  // over the title; "" none
  std::vector<NotePart> parts;
  QString signed_words;  // "" nobody signed
  std::vector<job::Stroke> strokes;
  QString foot;
  QString family;
  PageSize page{};
};

Status write_note(const Note& note, const std::filesystem::path& file);

}  // namespace jambline::report
