#include <QImageReader>
#include <QPen>
#include <algorithm>

#include "report/report_pieces.h"

namespace jambline::report {

namespace {
constexpr int a_row = 2;
constexpr double picture_dpi = 150;

enum class Here : std::uint8_t { Whole, Small, Not, Damaged };

struct Found {
  Here here = Here::Not;
  std::filesystem::path file;
};

// What stands behind a name is looked at as a whole: nothing is printed that is not what was kept.
Result<Found> found(const ReportPicture& picture, const blobs::BlobStore* blobs) {
  if (!blobs) return Found{};
  const Status whole = blobs->check(picture.file);
  if (whole) return Found{Here::Whole, blobs->path_of(picture.file)};
  if (whole.error().code == Code::BadHash) return Found{Here::Damaged, {}};
  if (whole.error().code != Code::NoSuchFile) return fail(whole.error());
  if (picture.preview && blobs->check(*picture.preview))
    return Found{Here::Small, blobs->path_of(*picture.preview)};
  return Found{};
}

// At most as large as it is printed.
QImage read(const std::filesystem::path& file, QSizeF box) {
  QImageReader reader(QString::fromStdString(file.string()));
  reader.setAutoTransform(true);
  const QSize size = reader.size();
  const bool lies = reader.transformation() & QImageIOHandler::TransformationRotate90;
  const double dots = picture_dpi / paper_dpi;
  QSize most((box * dots).toSize());
  if (lies) most.transpose();
  if (size.isValid() && (size.width() > most.width() || size.height() > most.height()))
    reader.setScaledSize(size.scaled(most, Qt::KeepAspectRatio));
  return reader.read();
}

struct Cell {
  const ReportPicture* picture = nullptr;
  SetText title;
  SetText words;
};

void draw_frame(QPainter& painter, const QRectF& box, const SetText& words) {
  painter.setPen(QPen(QColor(120, 120, 120), points(0.5), Qt::DashLine));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(box);
  words.draw(painter, box.left() + points(6), box.center().y() - words.height() / 2);
}
}  // namespace

void add_pictures(std::vector<Piece>& to, const Paper& paper, const ReportPictures& pictures,
                  const PictureRun& run) {
  const double gap = millimetres(5);
  const double width = (paper.width() - gap * (a_row - 1)) / a_row;
  const double height = width * 0.66;
  for (std::size_t at = 0; at < pictures.pictures.size(); at += a_row) {
    std::vector<Cell> cells;
    double words_height = 0;
    for (std::size_t i = at; i < std::min(at + a_row, pictures.pictures.size()); ++i) {
      const auto& one = pictures.pictures[i];
      cells.push_back({&one, SetText(paper, one.title, Look::Strong, width),
                       SetText(paper, one.words, Look::Small, width)});
      words_height =
          std::max(words_height, cells.back().title.height() + cells.back().words.height());
    }
    Piece piece;
    piece.height = height + points(3) + words_height;
    piece.above = points(9);
    piece.draw = [cells, width, height, gap, paper, &pictures, &run](QPainter& painter,
                                                                     double top) -> Status {
      double left = 0;
      for (const Cell& cell : cells) {
        if (run.stop->stop_requested()) return fail(Code::Stopped, "write a PDF", "pictures");
        const QRectF box(left, top, width, height);
        JAMBLINE_ASSIGN(Found here, found(*cell.picture, run.blobs));
        const QImage image = here.file.empty() ? QImage() : read(here.file, box.size());
        if (image.isNull()) {
          const bool damaged = here.here == Here::Damaged || !here.file.empty();
          draw_frame(painter, box,
                     SetText(paper, damaged ? pictures.damaged : pictures.not_here, Look::Quiet,
                             width - points(12)));
          ++run.written->not_printed;
        } else {
          const QSizeF shown = QSizeF(image.size()).scaled(box.size(), Qt::KeepAspectRatio);
          const QRectF where(QPointF(left, top + height - shown.height()), shown);
          painter.drawImage(where, image.convertToFormat(QImage::Format_RGB32));
          ++run.written->pictures;
          if (here.here == Here::Small) {
            ++run.written->small_copies;
            SetText(paper, pictures.small_copy, Look::Small, width, true)
                .draw(painter, left, top + height + points(3));
          }
        }
        cell.title.draw(painter, left, top + height + points(3));
        cell.words.draw(painter, left, top + height + points(3) + cell.title.height());
        left += width + gap;
        run.went_on();
      }
      return {};
    };
    to.push_back(std::move(piece));
  }
}

}  // namespace jambline::report
