#include "report/job_report.h"

#include <QPen>

#include "report/report_pieces.h"

namespace jambline::report {

namespace {
constexpr double page_margin_mm = 17;
constexpr double head_mm = 9;  // of the pages after the first
constexpr double foot_mm = 9;

class Blocks {
 public:
  Blocks(std::vector<Piece>& to, const Paper& paper, const PictureRun& run)
      : to_(to), paper_(paper), run_(run) {}
  void operator()(const ReportFacts& facts) const { add_facts(to_, paper_, facts); }
  void operator()(const ReportTable& table) const { add_table(to_, paper_, table); }
  void operator()(const ReportParagraph& said) const {
    add_paragraph(to_, paper_, said.words, said.quiet ? Look::Quiet : Look::Body, points(5));
  }
  void operator()(const ReportMap& map) const { add_map(to_, paper_, map); }
  void operator()(const ReportPictures& pictures) const {
    add_pictures(to_, paper_, pictures, run_);
  }
  void operator()(const ReportSignature& one) const { add_signature(to_, paper_, one); }

 private:
  std::vector<Piece>& to_;
  const Paper& paper_;
  const PictureRun& run_;
};

void add_rule(std::vector<Piece>& to, const Paper& paper) {
  Piece piece;
  piece.height = points(1);
  piece.above = points(7);
  piece.draw = [width = paper.width()](QPainter& painter, double top) -> Status {
    painter.setPen(QPen(Qt::black, points(1.4)));
    painter.drawLine(QPointF(0, top), QPointF(width, top));
    return {};
  };
  to.push_back(std::move(piece));
}

void add_title_block(std::vector<Piece>& to, const Paper& paper, const JobReport& report) {
  add_paragraph(to, paper, report.shop, Look::Quiet, 0);
  add_paragraph(to, paper, report.title, Look::Title, points(2));
  add_paragraph(to, paper, report.subtitle, Look::Subtitle, points(1));
  add_rule(to, paper);
  add_facts(to, paper, report.facts);
  for (const QString& line : report.left_out)
    add_paragraph(to, paper, line, Look::Strong, points(5));
  add_rule(to, paper);
}

std::vector<Piece> pieces_of(const JobReport& report, const Paper& paper, const PictureRun& run) {
  std::vector<Piece> out;
  add_title_block(out, paper, report);
  for (const auto& section : report.sections) {
    if (section.blocks.empty()) continue;
    add_heading(out, paper, section.title);
    for (const auto& block : section.blocks) std::visit(Blocks(out, paper, run), block);
  }
  return out;
}

std::size_t pictures_of(const JobReport& report) {
  std::size_t out = 0;
  for (const auto& section : report.sections)
    for (const auto& block : section.blocks)
      if (const auto* said = std::get_if<ReportPictures>(&block)) out += said->pictures.size();
  return out;
}

void draw_frame(QPainter& painter, const JobReport& report, const Paper& paper, int page, int pages,
                double height) {
  painter.setPen(QPen(QColor(120, 120, 120), points(0.5)));
  if (page > 1) {
    const SetText head(paper, report.running_head, Look::Small, paper.width());
    head.draw(painter, 0, 0);
    painter.setPen(QPen(QColor(120, 120, 120), points(0.5)));
    const double y = head.height() + points(2);
    painter.drawLine(QPointF(0, y), QPointF(paper.width(), y));
  }
  const SetText foot(paper, report.foot, Look::Small, paper.width() * 0.85);
  const SetText number(paper, report.page_words.arg(page).arg(pages), Look::Small,
                       paper.width() * 0.15, true);
  const double top = height - number.height();
  painter.setPen(QPen(QColor(120, 120, 120), points(0.5)));
  painter.drawLine(QPointF(0, top - points(2)), QPointF(paper.width(), top - points(2)));
  foot.draw(painter, 0, top);
  number.draw(painter, paper.width() * 0.85, top);
}

Status draw(const JobReport& report, QPdfWriter& device, PdfFile& file, PictureRun& run,
            const std::stop_token& stop) {
  const double height = device.height();
  const Paper paper(report.family, device.width(), device);
  const double head = millimetres(head_mm);
  const std::vector<Piece> pieces = pieces_of(report, paper, run);
  const double room = height - head - millimetres(foot_mm);
  // The first page has no running head, and that room besides.
  const std::vector<Page> pages = onto_pages(pieces, room, -head);
  run.written->pages = static_cast<int>(pages.size());
  QPainter painter(&device);
  painter.setRenderHint(QPainter::Antialiasing);
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (stop.stop_requested()) return fail(Code::Stopped, "write a PDF", "pages");
    if (i > 0) device.newPage();
    draw_frame(painter, report, paper, static_cast<int>(i) + 1, run.written->pages, height);
    for (const Placed& placed : pages[i])
      JAMBLINE_TRY(placed.piece->draw(painter, head + placed.top));
    if (!file.written()) return fail(file.written().error());
  }
  return {};
}
}  // namespace

Result<ReportWritten> write_job_report(const JobReport& report, const blobs::BlobStore* pictures,
                                       blobs::Files& files, const std::filesystem::path& file,
                                       const std::stop_token& stop,
                                       const std::function<void(double part_done)>& progress) {
  JAMBLINE_ASSIGN(auto out, PdfFile::create(files, file));
  ReportWritten written;
  const double all = static_cast<double>(std::max<std::size_t>(1, pictures_of(report)));
  double done = 0;
  PictureRun run{pictures, &stop,
                 [&] {
                   done += 1;
                   if (progress) progress(done / all);
                 },
                 &written};
  {
    const auto paper = out->paper(report.page, page_margin_mm, report.title);
    JAMBLINE_TRY(draw(report, *paper, *out, run, stop));
  }
  JAMBLINE_ASSIGN(written.bytes, out->finish());
  return written;
}

}  // namespace jambline::report
