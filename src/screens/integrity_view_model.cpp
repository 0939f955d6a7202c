#include "screens/integrity_view_model.h"

#include <QCoreApplication>
#include <QPointer>

#include "screens/picture_rows.h"
#include "screens/words.h"
#include "seal/fingerprint.h"

namespace jambline::screens {

namespace {
// The engine's calls come on the calc lane and may outlive the screen.
template <class Use>
void on_gui_thread(const QPointer<IntegrityViewModel>& screen, Use use) {
  QMetaObject::invokeMethod(
      QCoreApplication::instance(),
      [screen, use = std::move(use)] {
        if (screen) use();
      },
      Qt::QueuedConnection);
}
}  // namespace

IntegrityViewModel::IntegrityViewModel(Session& session, QObject* parent)
    : QObject(parent), session_(session) {}

IntegrityViewModel::~IntegrityViewModel() {
  if (state_ == Running) session_.engine().stop_audit();
}

void IntegrityViewModel::start() {
  if (state_ == Running) return;
  progress_ = 0;
  proven_.set({});
  pictures_.set({});
  pictures_what_.clear();
  pictures_todo_.clear();
  pictures_bad_ = false;
  say(Running, tr("Checking every entry"), {}, {});
  emit progressChanged();
  const QPointer<IntegrityViewModel> self(this);
  session_.engine().audit(
      [self, this](double part_done) {
        on_gui_thread(self, [this, part_done] { went_on(part_done / 2); });
      },
      [self, this](Result<log::Audit> found) {
        on_gui_thread(self, [this, found = std::move(found)] { show(found); });
      });
}

void IntegrityViewModel::went_on(double part_done) {
  progress_ = part_done;
  emit progressChanged();
}

// The entries are told at once; the check as a whole goes on with the files.
void IntegrityViewModel::then_pictures(State state, const QString& what, const QString& kept,
                                       const QString& todo) {
  say(Running, tr("Checking every picture"), kept, {});
  const QPointer<IntegrityViewModel> self(this);
  session_.engine().check_pictures(
      [self, this](double part_done) {
        on_gui_thread(self, [this, part_done] { went_on(0.5 + part_done / 2); });
      },
      [self, this, state, what, kept, todo](Result<engine::PictureCheck> found) {
        on_gui_thread(self, [this, state, what, kept, todo, found = std::move(found)] {
          show_pictures(found);
          say(state, what, kept, todo);
        });
      });
}

QString IntegrityViewModel::name_of(const engine::NamedPicture& picture) const {
  const auto& snapshot = session_.snapshot();
  const auto& rows = snapshot.record ? *snapshot.record : *snapshot.floor;
  const folds::FloorRow* car = nullptr;
  for (const auto& row : rows)
    if (row.job == picture.job) car = &row;
  const QString shows =
      title_of(picture.place, car ? car->body : job::BodyShape{}, session_.shop());
  const QString plate = car ? QString::fromStdString(car->plate) : tr("a car");
  const QString stage = sentence(words_of(picture.place.stage));
  return shows == stage ? tr("%1, %2").arg(plate, stage)
                        : tr("%1, %2: %3").arg(plate, stage, shows);
}

void IntegrityViewModel::show_pictures(const Result<engine::PictureCheck>& found) {
  if (!found) {
    const ErrorWords words = words_of(found.error());
    pictures_what_ = words.what;
    pictures_todo_ = words.todo;
    pictures_bad_ = true;
    return;
  }
  std::vector<DetailRows::Row> rows;
  for (const auto& one : found->damaged)
    rows.push_back({name_of(one), tr("damaged: not the bytes that were kept")});
  for (const auto& one : found->not_here)
    rows.push_back({name_of(one), tr("its file is not in this folder")});
  pictures_.set(std::move(rows));
  pictures_bad_ = !found->damaged.empty();
  const auto files = found->files;
  const QString counts = files == 1 ? tr("1 picture") : tr("%1 pictures").arg(files);
  if (found->stopped) {
    pictures_what_ = tr("Stopped after %1.").arg(counts);
  } else if (!found->damaged.empty()) {
    pictures_what_ = tr("%1 looked at, %2 damaged.").arg(counts).arg(found->damaged.size());
    pictures_todo_ = tr("Bring the files back from another device or a copy of the folder.");
  } else if (!found->not_here.empty()) {
    pictures_what_ = tr("%1 looked at, %2 not here.").arg(counts).arg(found->not_here.size());
    pictures_todo_ = tr("They may be on another device.");
  } else if (files > 0) {
    pictures_what_ = tr("%1, %2: each is as it was kept.")
                         .arg(counts, bytes_words(static_cast<std::int64_t>(found->bytes)));
  }
}

void IntegrityViewModel::stop() {
  if (state_ == Running) session_.engine().stop_audit();
}

void IntegrityViewModel::say(State state, const QString& what, const QString& kept,
                             const QString& todo) {
  state_ = state;
  what_ = what;
  kept_ = kept;
  todo_ = todo;
  emit changed();
}

void IntegrityViewModel::show(const Result<log::Audit>& found) {
  if (!found && found.error().code == Code::Stopped)
    return say(Stopped, tr("The check was stopped before its end."),
               tr("Nothing is said about the entries."), {});
  if (!found) {
    const ErrorWords words = words_of(found.error());
    return say(Failed, words.what, words.kept, words.todo);
  }
  if (found->shop) fingerprint_ = QString::fromStdString(seal::fingerprint(found->shop));
  std::vector<DetailRows::Row> rows;
  for (const auto& head : found->heads)
    rows.push_back({tr("Device %1").arg(QString::fromStdString(head.device.hex()).left(8)),
                    tr("proven up to entry %1").arg(head.seq)});
  proven_.set(std::move(rows));
  QString counts =
      found->entries == 1 ? tr("1 entry checked") : tr("%1 entries checked").arg(found->entries);
  if (found->erased > 0) counts = tr("%1, text erased in %2").arg(counts).arg(found->erased);
  if (found->after_cut > 0)
    counts = tr("%1, %2 of a revoked device do not count").arg(counts).arg(found->after_cut);
  if (found->first_bad) {
    const auto& bad = *found->first_bad;
    const QString device = QString::fromUtf8(bad.arg("device").data(),
                                             static_cast<qsizetype>(bad.arg("device").size()));
    const QString seq =
        QString::fromUtf8(bad.arg("seq").data(), static_cast<qsizetype>(bad.arg("seq").size()));
    const ErrorWords words = words_of(bad);
    const QString where = seq.isEmpty() ? words.what
                                        : tr("First bad entry: number %1 of device %2. %3")
                                              .arg(seq, device.left(8), words.what);
    return then_pictures(
        Bad, where,
        tr("%1. What is proven stands below; nothing is said about later entries.").arg(counts),
        words.todo);
  }
  then_pictures(Sound, tr("Every entry fits: chain, signatures, members."), tr("%1.").arg(counts),
                tr("Nothing can be said about entries that never came here."));
}

}  // namespace jambline::screens
