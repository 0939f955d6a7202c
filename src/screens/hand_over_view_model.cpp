#include "screens/hand_over_view_model.h"

#include <QUrl>

#include "screens/signature_item.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
std::filesystem::path folder_of(const QString& typed) {
  const QString text = typed.trimmed();
  const QUrl url(text);
  return (url.isLocalFile() ? url.toLocalFile() : text).toStdString();
}
}  // namespace

HandOverViewModel::HandOverViewModel(Session& session, QString place, Write write, QObject* parent)
    : QObject(parent),
      session_(session),
      place_(std::move(place)),
      write_(std::move(write)),
      lines_({"key", "part", "label", "words"}, this) {
  connect(&session, &Session::snapshotChanged, this, &HandOverViewModel::follow);
}

void HandOverViewModel::follow() {
  if (!job_ || !session_.car() || session_.car()->job != *job_) return;
  if (session_.snapshot().car != car_) work_out();
}

void HandOverViewModel::ask() {
  if (!session_.car()) return;
  job_ = session_.car()->job;
  say({}, {}, {}, false);
  work_out();
  emit asked();
}

void HandOverViewModel::work_out() {
  const std::uint64_t number = ++asked_;
  car_ = session_.snapshot().car;
  session_.calculate(this,
                     [this, number, now = session_.now(), zone = session_.zone(), car = car_,
                      shop = session_.snapshot().shop]() -> std::function<void()> {
                       auto note = std::make_shared<HandOverNote>(hand_over_note(
                           *car, *shop, folds::open_points(*car, *shop, now), now, zone));
                       return [this, number, note] {
                         if (number != asked_) return;
                         note_ = *note;
                         show();
                       };
                     });
}

void HandOverViewModel::show() {
  std::vector<QVariantList> rows;
  for (const auto& part : note_.parts) {
    rows.push_back({QStringLiteral("%1").arg(rows.size()), part.title, QString(), QString()});
    for (const auto& line : part.lines)
      rows.push_back({QStringLiteral("%1").arg(rows.size()), QString(), line.label, line.words});
  }
  lines_.set(std::move(rows));
  emit changed();
}

QVariantList HandOverViewModel::strokes() const {
  return strokes_shown(note_.strokes);
}

void HandOverViewModel::say(const QString& what, const QString& kept, const QString& todo,
                            bool failed) {
  what_ = what;
  kept_ = kept;
  todo_ = todo;
  failed_ = failed;
  emit changed();
}

void HandOverViewModel::save(const QString& folder) {
  if (busy_ || note_.parts.empty()) return;
  const auto file = folder_of(folder) / note_.file_name.toStdString();
  busy_ = true;
  say(tr("Writing the note"), {}, {}, false);
  note_.letter_paper = session_.units() == Units::Us;
  session_.calculate(this, [this, file, note = note_, write = write_]() -> std::function<void()> {
    const Status written = write(note, file);
    return [this, file, written] {
      busy_ = false;
      if (written)
        return say(tr("Saved as %1").arg(QString::fromStdString(file.string())),
                   tr("Nothing of the shop's own is in it."), {}, false);
      const ErrorWords words = words_of(written.error());
      say(words.what, words.kept, words.todo, true);
    };
  });
}

}  // namespace jambline::screens
