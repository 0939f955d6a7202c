#include "screens/papers.h"

#include <QDateTime>
#include <QTimeZone>
#include <QUrl>

#include "screens/session.h"
#include "screens/text.h"

namespace jambline::screens {

PaperOf paper_of(const Session& session) {
  const auto& snapshot = session.snapshot();
  if (!session.car() || !snapshot.timeline) return {};
  return {snapshot.car,     snapshot.shop, snapshot.timeline,
          session.person(), session.now(), session.zone()};
}

QString paper_file_name(const QString& what, const PaperOf& of, const QString& ending) {
  QString plate;
  for (const QChar sign : text(of.car->plate))
    plate += sign.isLetterOrNumber() || sign == QChar('-') ? sign : QChar(' ');
  const auto at = QDateTime::fromMSecsSinceEpoch(of.now.wall_ms, QTimeZone(of.zone.toLatin1()));
  return QStringLiteral("%1 %2 %3")
             .arg(what, plate.simplified(), at.toString(QStringLiteral("yyyy-MM-dd HHmmss")))
             .simplified() +
         ending;
}

std::filesystem::path paper_folder(const QString& typed) {
  const QString trimmed = typed.trimmed();
  const QUrl url(trimmed);
  return (url.isLocalFile() ? url.toLocalFile() : trimmed).toStdString();
}

QString fingerprint_lines(const QString& fingerprint) {
  const QStringList groups = fingerprint.split(QChar('-'));
  return groups.mid(0, 4).join(QStringLiteral("  ")) + QChar('\n') +
         groups.mid(4).join(QStringLiteral("  "));
}

}  // namespace jambline::screens
