#include "screens/hours_table.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QUrl>
#include <array>

#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr auto steps_min = std::to_array<int>({0, 5, 6, 15});
constexpr int most_files = 200;

QString table_tr(const char* words) {
  return QCoreApplication::translate("HoursTable", words);
}

// A name is no path.
QString file_name(const HoursTable& table, int number) {
  QString who = table.who;
  for (QChar& sign : who)
    if (!sign.isLetterOrNumber()) sign = QChar('-');
  QString out = QStringLiteral("hours ") + table.from;
  if (table.to != table.from) out += QStringLiteral(" to ") + table.to;
  if (!who.isEmpty()) out += QChar(' ') + who;
  if (number > 1) out += QStringLiteral(" (%1)").arg(number);
  return out + QStringLiteral(".csv");
}

QString refused(const QString& cause) {
  return table_tr(
             QT_TRANSLATE_NOOP("HoursTable", "The table was not written: %1. Nothing is lost."))
      .arg(cause);
}
}  // namespace

QStringList rounding_words() {
  QStringList out;
  for (const int step : steps_min)
    out << (step == 0 ? table_tr(QT_TRANSLATE_NOOP("HoursTable", "Exact"))
                      : table_tr(QT_TRANSLATE_NOOP("HoursTable", "To %1 min")).arg(step));
  return out;
}

std::optional<int> rounding_of(int step) {
  if (step <= 0 || step >= static_cast<int>(steps_min.size())) return std::nullopt;
  return steps_min[static_cast<std::size_t>(step)];
}

QString write_table(const HoursTable& table, const std::vector<folds::HoursSheet>& sheets,
                    const folds::ShopView& shop) {
  const auto csv = folds::hours_csv(sheets, shop, table.round_min);
  if (!csv) return words_of(csv.error()).what;
  const QUrl url(table.place.trimmed());
  const QString folder = url.isLocalFile() ? url.toLocalFile() : table.place.trimmed();
  if (folder.isEmpty() || !QDir().mkpath(folder))
    return refused(table_tr(QT_TRANSLATE_NOOP("HoursTable", "the folder cannot be made")));
  for (int number = 1; number <= most_files; ++number) {
    QFile file(QDir(folder).filePath(file_name(table, number)));
    if (file.exists()) continue;
    if (!file.open(QIODevice::WriteOnly | QIODevice::NewOnly)) return refused(file.errorString());
    const auto size = static_cast<qint64>(csv->size());
    if (file.write(csv->data(), size) != size || !file.flush()) {
      const QString cause = file.errorString();
      file.remove();
      return refused(cause);
    }
    return table_tr(QT_TRANSLATE_NOOP("HoursTable", "Written: %1"))
        .arg(QDir::toNativeSeparators(file.fileName()));
  }
  return refused(table_tr(QT_TRANSLATE_NOOP("HoursTable", "the folder is full of such tables")));
}

}  // namespace jambline::screens
