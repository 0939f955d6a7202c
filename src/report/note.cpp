#include "report/note.h"

#include <QFont>
#include <QImage>
#include <QPdfWriter>
#include <QTextBlockFormat>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextTable>
#include <QUrl>
#include <algorithm>

#include "report/strokes.h"

namespace jambline::report {

namespace {
constexpr int margin_mm = 5;  // and 20 more that the document keeps free
constexpr double body_pt = 10.5;
constexpr double title_pt = 20;
constexpr double heading_pt = 12.5;
constexpr double note_pt = 9;
constexpr double label_percent = 22;
constexpr double signature_width_pt = 220;

QTextCharFormat letters(double points, bool bold, bool quiet = false) {
  QTextCharFormat out;
  out.setFontPointSize(points);
  out.setFontWeight(bold ? QFont::Bold : QFont::Normal);
  if (quiet) out.setForeground(Qt::darkGray);
  return out;
}

QTextBlockFormat spaced(double above_pt, double below_pt) {
  QTextBlockFormat out;
  out.setTopMargin(above_pt);
  out.setBottomMargin(below_pt);
  return out;
}

void paragraph(QTextCursor& at, const QString& words, const QTextCharFormat& look, double above_pt,
               double below_pt) {
  if (words.isEmpty()) return;
  if (at.position() > 0) at.insertBlock();
  at.setBlockFormat(spaced(above_pt, below_pt));
  at.insertText(words, look);
}

void table(QTextCursor& at, const NotePart& part) {
  QTextTableFormat format;
  format.setBorder(0);
  format.setCellPadding(2);
  format.setCellSpacing(0);
  format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
  format.setColumnWidthConstraints(
      {QTextLength(QTextLength::PercentageLength, label_percent),
       QTextLength(QTextLength::PercentageLength, 100 - label_percent)});
  auto* rows = at.insertTable(static_cast<int>(part.lines.size()), 2, format);
  for (int i = 0; i < rows->rows(); ++i) {
    const NoteLine& line = part.lines[static_cast<std::size_t>(i)];
    rows->cellAt(i, 0).firstCursorPosition().insertText(line.label, letters(body_pt, false, true));
    rows->cellAt(i, 1).firstCursorPosition().insertText(line.words, letters(body_pt, false));
  }
  at.movePosition(QTextCursor::End);
}

void write_part(QTextCursor& at, const NotePart& part) {
  if (part.lines.empty()) return;
  paragraph(at, part.title, letters(heading_pt, true), 14, 4);
  const bool labels = std::any_of(part.lines.begin(), part.lines.end(),
                                  [](const NoteLine& line) { return !line.label.isEmpty(); });
  if (labels) return table(at, part);
  for (const NoteLine& line : part.lines) paragraph(at, line.words, letters(body_pt, false), 0, 4);
}

void write_signature(QTextDocument& document, QTextCursor& at, const Note& note) {
  if (note.signed_words.isEmpty()) return;
  const QImage image = drawn(note.strokes);
  const QString name = QStringLiteral("signature");
  document.addResource(QTextDocument::ImageResource, QUrl(name), image);
  at.insertBlock();
  at.setBlockFormat(spaced(18, 0));
  QTextImageFormat format;
  format.setName(name);
  format.setWidth(signature_width_pt);
  format.setHeight(signature_width_pt * image.height() / image.width());
  at.insertImage(format);
  paragraph(at, note.signed_words, letters(note_pt, false), 2, 0);
}

void write(const Note& note, QPdfWriter& paper) {
  QTextDocument document;
  QFont font(note.family);
  font.setPointSizeF(body_pt);
  document.setDefaultFont(font);
  QTextCursor at(&document);
  paragraph(at, note.head, letters(body_pt, false, true), 0, 6);
  paragraph(at, note.title, letters(title_pt, true), 0, 2);
  paragraph(at, note.subtitle, letters(heading_pt, false), 0, 6);
  for (const NotePart& part : note.parts) write_part(at, part);
  write_signature(document, at, note);
  paragraph(at, note.foot, letters(note_pt, false, true), 18, 0);
  document.print(&paper);
}
}  // namespace

Status write_note(const Note& note, const std::filesystem::path& file) {
  blobs::PosixFiles files;
  JAMBLINE_ASSIGN(auto out, PdfFile::create(files, file));
  write(note, *out->paper(note.page, margin_mm, note.title));
  JAMBLINE_TRY(out->finish());
  return {};
}

}  // namespace jambline::report
