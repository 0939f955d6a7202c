#include "app/jambline/hand_over_file.h"

#include <QStandardPaths>

#include "report/note.h"

namespace jambline::app {

Status write_hand_over(const screens::HandOverNote& note, const std::filesystem::path& file) {
  report::Note out;
  out.title = note.title;
  out.subtitle = note.subtitle;
  out.head = note.shop;
  for (const auto& part : note.parts) {
    auto& to = out.parts.emplace_back();
    to.title = part.title;
    for (const auto& line : part.lines) to.lines.push_back({line.label, line.words});
  }
  out.signed_words = note.signed_words;
  out.strokes = note.strokes;
  out.foot = note.foot;
  out.family = QStringLiteral("B612");
  out.page = note.letter_paper ? report::PageSize::Letter : report::PageSize::A4;
  const std::filesystem::path documents =
      QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation).toStdString();
  std::error_code ignored;  // what could not be made is said to be missing
  if (file.parent_path() == documents) std::filesystem::create_directories(documents, ignored);
  return report::write_note(out, file);
}

}  // namespace jambline::app
