#include "screens/integrity_view_model.h"

#include <QCoreApplication>
#include <QPointer>

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
  say(Running, tr("Checking every entry"), {}, {});
  emit progressChanged();
  const QPointer<IntegrityViewModel> self(this);
  session_.engine().audit(
      [self, this](double part_done) {
        on_gui_thread(self, [this, part_done] {
          progress_ = part_done;
          emit progressChanged();
        });
      },
      [self, this](Result<log::Audit> found) {
        on_gui_thread(self, [this, found = std::move(found)] { show(found); });
      });
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
    return say(
        Bad, where,
        tr("%1. What is proven stands below; nothing is said about later entries.").arg(counts),
        words.todo);
  }
  say(Sound, tr("Every entry fits: chain, signatures, members."), tr("%1.").arg(counts),
      tr("Nothing can be said about entries that never came here."));
}

}  // namespace jambline::screens
