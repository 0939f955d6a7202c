#include "screens/integrity_view_model.h"

#include <QCoreApplication>
#include <QPointer>

#include "screens/integrity_words.h"
#include "screens/picture_rows.h"
#include "screens/text.h"
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
    : QObject(parent),
      session_(session),
      findings_({"key", "kind", "meaning", "words", "first"}, this) {}

IntegrityViewModel::~IntegrityViewModel() {
  stop();
}

void IntegrityViewModel::start() {
  if (state_ == Running || !check_) return;
  progress_ = 0;
  stop_ = {};
  means_.clear();
  left_out_.clear();
  found_.clear();
  findings_.set({});
  proven_.set({});
  pictures_.set({});
  pictures_what_.clear();
  pictures_todo_.clear();
  pictures_bad_ = false;
  say(Running, tr("Checking every entry"), {}, {});
  emit progressChanged();
  const QPointer<IntegrityViewModel> self(this);
  session_.calculate(
      this, [self, this, check = check_, stop = stop_.get_token()]() -> std::function<void()> {
        auto found = std::make_shared<Result<engine::Integrity>>(check(stop, [&](double part_done) {
          on_gui_thread(self, [this, part_done] { went_on(part_done / 2); });
        }));
        return [this, found] { show(*found); };
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
  if (state_ != Running) return;
  stop_.request_stop();
  session_.engine().stop_audit();
}

void IntegrityViewModel::open(const QString& key) {
  bool known = false;
  const auto at = key.toUInt(&known);
  if (!known || at >= found_.size()) return;
  const auto& finding = found_[at];
  if (finding.job)
    emit entryAsked(hex(finding.job), hex(finding.entry));
  else
    emit devicesAsked();
}

QString IntegrityViewModel::device_of(const DeviceId& device) const {
  for (const auto& one : session_.snapshot().devices)
    if (one.device == device && !one.name.empty()) return text(one.name);
  return tr("device %1").arg(hex(device).left(8));
}

void IntegrityViewModel::show_findings(const engine::Integrity& found) {
  found_ = found.findings;
  std::vector<QVariantList> rows;
  for (std::size_t at = 0; at < found_.size(); ++at) {
    const auto& one = found_[at];
    const auto count = found.count(one.kind);
    rows.push_back(
        {QString::number(at),
         count == 1 ? title_of(one.kind) : tr("%1: %2 times").arg(title_of(one.kind)).arg(count),
         meaning_of(one.kind),
         words_of(one, device_of(one.device), one.from ? device_of(*one.from) : QString(),
                  session_.zone()),
         at == 0 || found_[at - 1].kind != one.kind});
  }
  findings_.set(std::move(rows));
  std::uint64_t all = 0;
  for (const auto count : found.counts) all += count;
  if (all > found_.size())
    left_out_ = tr("%1 more of the same kinds are not listed.").arg(all - found_.size());
  if (found.stopped_at)
    left_out_ = tr("What stands after the damaged place was not looked through.");
}

void IntegrityViewModel::say(State state, const QString& what, const QString& kept,
                             const QString& todo) {
  state_ = state;
  what_ = what;
  kept_ = kept;
  todo_ = todo;
  emit changed();
}

void IntegrityViewModel::show(const Result<engine::Integrity>& result) {
  if (!result && result.error().code == Code::Stopped)
    return say(Stopped, tr("The check was stopped before its end."),
               tr("Nothing is said about the entries."), {});
  if (!result) {
    const ErrorWords words = words_of(result.error());
    return say(Failed, words.what, words.kept, words.todo);
  }
  const log::Audit& found = result->audit;
  if (found.shop) fingerprint_ = QString::fromStdString(seal::fingerprint(found.shop));
  std::vector<DetailRows::Row> rows;
  for (const auto& one : result->proven)
    rows.push_back({sentence(device_of(one.device)), words_of(one, session_.zone())});
  proven_.set(std::move(rows));
  show_findings(*result);
  QString counts =
      found.entries == 1 ? tr("1 entry checked") : tr("%1 entries checked").arg(found.entries);
  if (found.receipts > 0) counts = tr("%1, receipts: %2").arg(counts).arg(found.receipts);
  if (found.erased > 0) counts = tr("%1, text erased in %2").arg(counts).arg(found.erased);
  if (found.after_cut > 0)
    counts = tr("%1, %2 of a revoked device do not count").arg(counts).arg(found.after_cut);
  if (!found.first_bad)
    return then_pictures(Sound, tr("Every entry fits: chain, signatures, members, receipts."),
                         tr("%1.").arg(counts),
                         tr("Nothing can be said about entries that never came here."));
  const auto& bad = *found.first_bad;
  const QString device = text(bad.arg("device"));
  const QString seq = text(bad.arg("seq"));
  const auto id = parsed<DeviceId>(device);
  const QString where =
      seq.isEmpty()
          ? words_of(bad).what
          : tr("First bad entry: number %1 of %2.").arg(seq, id ? device_of(*id) : device.left(8));
  means_ = bad_means(bad);
  then_pictures(
      Bad, where,
      tr("%1. What is proven stands below; nothing is said about later entries.").arg(counts),
      bad_todo(bad));
}

}  // namespace jambline::screens
