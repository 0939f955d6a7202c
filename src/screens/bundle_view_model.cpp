#include "screens/bundle_view_model.h"

#include "screens/picture_rows.h"
#include "screens/sync_words.h"

namespace jambline::screens {

namespace {
constexpr std::int64_t entry_bytes = 600;  // with its header and what comes with every bundle
constexpr std::int64_t texts_bytes = 80'000;
}  // namespace

BundleViewModel::BundleViewModel(Session& session, QString place, Fingerprint fingerprint,
                                 WriteBundle write, QObject* parent)
    : QObject(parent),
      session_(session),
      place_(std::move(place)),
      read_fingerprint_(std::move(fingerprint)),
      write_(std::move(write)) {
  connect(&session, &Session::snapshotChanged, this, &BundleViewModel::changed);
}

QString BundleViewModel::insideWords() const {
  const PaperOf of = paper_of(session_);
  if (!of) return {};
  std::int64_t bytes = texts_bytes + static_cast<std::int64_t>(of.entries->size()) * entry_bytes;
  for (const auto& picture : of.car->pictures) bytes += picture.facts.size_bytes;
  return tr("%1 whole as their devices signed them, %2 as they came, a report to read, and a "
            "small program that checks it all: about %3, and a little for every other entry of the "
            "shop, of which only the seal goes in.")
      .arg(entries_words(of.entries->size()), pictures_words(of.car->pictures.size()),
           bytes_words(bytes));
}

QString BundleViewModel::spoken() const {
  QStringList out;
  for (const QChar sign : fingerprint_) out << (sign == QChar('-') ? QStringLiteral(",") : sign);
  return out.join(QChar(' '));
}

QString BundleViewModel::check() const {
  if (written_.isEmpty()) return {};
  return QStringLiteral("python3 verify_bundle.py --shop %1 \"%2\"")
      .arg(fingerprint_, QString::fromStdString(
                             std::filesystem::path(written_.toStdString()).filename().string()));
}

void BundleViewModel::ask() {
  if (!run_.busy()) {
    written_.clear();
    pictures_missing_ = false;
    run_.forget();
    emit changed();
  }
  if (fingerprint_.isEmpty())
    session_.calculate(this, [this, read = read_fingerprint_]() -> std::function<void()> {
      const QString found = read();
      return [this, found] {
        fingerprint_ = found;
        emit changed();
      };
    });
  emit asked();
}

void BundleViewModel::write(const QString& folder, bool withoutMissing) {
  const PaperOf of = paper_of(session_);
  if (!of || run_.busy()) return;
  const auto file = paper_folder(folder) /
                    paper_file_name(tr("Bundle"), of, QStringLiteral(".zip")).toStdString();
  pictures_missing_ = false;
  run_.start(tr("Writing the bundle, then checking it"),
             [this, of, file, withoutMissing, write = write_](
                 const std::stop_token& stop, const PaperProgress& went_on) -> PaperRun::Then {
               const auto made = write(of, file, withoutMissing, stop, went_on);
               return [this, made, file] { show(made, file); };
             });
  emit changed();
}

void BundleViewModel::show(const Result<PaperMade>& made, const std::filesystem::path& file) {
  if (!made) {
    pictures_missing_ = !made.error().arg("picture").empty();
    if (pictures_missing_)
      run_.say({tr("A picture of this car is not on this device, or damaged here."),
                tr("No bundle was written."),
                tr("Let the pictures come first, or write it without them: its check will say "
                   "which are missing.")},
               true);
    else
      run_.say(made.error(), {tr("Stopped. No bundle was written."), tr("The record is as it was."),
                              tr("Write it when there is time.")});
    emit changed();
    return;
  }
  written_ = QString::fromStdString(file.string());
  QStringList kept{bytes_words(static_cast<std::int64_t>(made->bytes))};
  if (made->missing > 0)
    kept << tr("%1 missing").arg(pictures_words(static_cast<std::uint64_t>(made->missing)));
  kept << (made->bad ? tr("its check finds something that is not in order: %1")
                           .arg(words_of(*made->bad).what)
                     : tr("checked, and all of it fits"));
  run_.say({tr("Saved as %1").arg(written_), kept.join(tr(", ")),
            tr("Give the fingerprint by another way than the file.")},
           made->bad.has_value());
  emit changed();
}

}  // namespace jambline::screens
