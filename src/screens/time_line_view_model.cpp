#include "screens/time_line_view_model.h"

#include <QClipboard>
#include <QCoreApplication>
#include <QGuiApplication>
#include <QPointer>
#include <algorithm>

#include "screens/raw_entry_words.h"
#include "screens/span_words.h"
#include "screens/text.h"
#include "screens/units.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
// What stands in the entry is the trade's English; what is shown is its translation.
constexpr auto withdraw_reasons = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("TimeLine", "tapped by mistake"),
     QT_TRANSLATE_NOOP("TimeLine", "wrong panel"), QT_TRANSLATE_NOOP("TimeLine", "wrong car"),
     QT_TRANSLATE_NOOP("TimeLine", "wrong person"), QT_TRANSLATE_NOOP("TimeLine", "looked again")});

bool belongs(const entries::Entry& entry, TimeLineViewModel::Group group) {
  switch (group) {
    case TimeLineViewModel::All:
      return true;
    case TimeLineViewModel::Looks:
      return group_of(entry) == EntryGroup::Looks;
    case TimeLineViewModel::Hours:
      return group_of(entry) == EntryGroup::Hours;
    case TimeLineViewModel::HandOff:
      return group_of(entry) == EntryGroup::HandOff;
    case TimeLineViewModel::Air:
      return group_of(entry) == EntryGroup::Air;
    case TimeLineViewModel::Notes:
      return group_of(entry) == EntryGroup::Notes;
  }
  return true;
}

PictureId picture_of(const entries::Entry& entry) {
  if (const auto* filed = entry.payload.get_if<entries::PictureFiled>()) return filed->picture;
  if (const auto* noted = entry.payload.get_if<entries::PictureNoted>()) return noted->picture;
  if (const auto* edges = entry.payload.get_if<entries::EdgesLookedAt>()) return edges->picture;
  const auto* taken = entry.payload.get_if<entries::PictureTaken>();
  return taken ? taken->picture : PictureId{};
}

// One that was taken back is still shown by its own entry.
QString file_of(const entries::Entry& entry, const folds::CarView* car) {
  if (const auto* taken = entry.payload.get_if<entries::PictureTaken>())
    return hex(taken->facts.file);
  const PictureId picture = picture_of(entry);
  const auto* found = car && picture ? car->find(picture) : nullptr;
  return found ? hex(found->facts.file) : QString();
}
}  // namespace

TimeLineViewModel::TimeLineViewModel(Session& session, QObject* parent)
    : QAbstractListModel(parent), session_(session) {
  connect(&session_, &Session::snapshotChanged, this, &TimeLineViewModel::refresh);
  refresh();
}

void TimeLineViewModel::follow(SyncViewModel& sync) {
  sync_ = &sync;
  connect(&sync, &SyncViewModel::changed, this, [this] {
    if (open_) emit openChanged();
  });
}

void TimeLineViewModel::refresh() {
  const auto& snapshot = session_.snapshot();
  auto next = session_.car() ? snapshot.timeline : nullptr;
  if (next == timeline_ && snapshot.shop == shop_) return;
  const auto before = timeline_;  // what rows_ point into, until rebuild() has put new ones
  timeline_ = std::move(next);
  shop_ = snapshot.shop;
  history_ = timeline_ ? folds::History(*timeline_) : folds::History();
  rebuild();
}

void TimeLineViewModel::rebuild() {
  std::vector<const entries::Entry*> rows;
  if (timeline_)
    for (auto entry = timeline_->rbegin(); entry != timeline_->rend(); ++entry)
      if (belongs(*entry, group_)) rows.push_back(&*entry);
  show(std::move(rows));
  if (open_ && !open_entry()) open_.reset();
  emit changed();
  emit openChanged();
}

void TimeLineViewModel::show(std::vector<const entries::Entry*> rows) {
  std::vector<Hash> hashes;
  hashes.reserve(rows.size());
  for (const auto* entry : rows) hashes.push_back(entry->hash);
  const bool only_came_on = hashes.size() >= hashes_.size() && !hashes_.empty() &&
                            std::equal(hashes_.rbegin(), hashes_.rend(), hashes.rbegin());
  const auto came = static_cast<int>(hashes.size()) - static_cast<int>(hashes_.size());
  if (only_came_on && came > 0)
    beginInsertRows({}, 0, came - 1);
  else if (!only_came_on)
    beginResetModel();
  rows_ = std::move(rows);
  hashes_ = std::move(hashes);
  if (only_came_on && came > 0)
    endInsertRows();
  else if (!only_came_on)
    endResetModel();
  if (only_came_on) emit dataChanged(index(0), index(static_cast<int>(rows_.size()) - 1));
}

int TimeLineViewModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant TimeLineViewModel::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const entries::Entry& entry = *rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case EntryIdRole:
      return hex(entry.hash);
    case DayRole:
      return day_words(entry.wall_ms, session_.zone());
    case TimeRole:
      return clock_words(entry.wall_ms, session_.zone());
    case PersonRole:
      return entry.person ? name_of(entry.person, *shop_) : QString();
    case WordsRole:
      return told(entry);
    case TakenBackRole:
      return history_.taken_back(entry.hash) != nullptr;
    case TakenBackWordsRole:
      return taken_back_words(entry);
    case FileRole:
      return file_of(entry, session_.car());
    case RefusedRole:
      return refused_words(entry);
    case DoubtRole:
      return clock_doubt_words(entry.clock_flags);
    default:
      return {};
  }
}

QHash<int, QByteArray> TimeLineViewModel::roleNames() const {
  return {{EntryIdRole, "entryId"}, {DayRole, "day"},
          {TimeRole, "time"},       {PersonRole, "person"},
          {WordsRole, "words"},     {TakenBackRole, "takenBack"},
          {DoubtRole, "doubt"},     {TakenBackWordsRole, "takenBackWords"},
          {FileRole, "file"},       {RefusedRole, "refused"}};
}

int TimeLineViewModel::place_of(int row) const {
  if (row < 0 || row >= rowCount()) return -1;
  return static_cast<int>(rows_[static_cast<std::size_t>(row)] - timeline_->data());
}

void TimeLineViewModel::set_group(Group group) {
  if (group == group_) return;
  group_ = group;
  rebuild();
}

QString TimeLineViewModel::countWords() const {
  const int all = timeline_ ? static_cast<int>(timeline_->size()) : 0;
  const int shown = rowCount();
  if (group_ != All) return tr("%1 of %2 entries, newest first").arg(shown).arg(all);
  return all == 1 ? tr("1 entry") : tr("%1 entries, newest first").arg(all);
}

const entries::Entry* TimeLineViewModel::open_entry() const {
  return open_ ? history_.find(*open_) : nullptr;
}

Telling TimeLineViewModel::telling() const {
  return {*shop_, history_, session_.zone()};
}

QString TimeLineViewModel::taken_back_words(const entries::Entry& entry) const {
  const auto* withdrawal = history_.taken_back(entry.hash);
  if (!withdrawal) return {};
  const QString when = time_words(withdrawal->wall_ms, session_.now().wall_ms, session_.zone());
  const QString who = name_of(withdrawal->person, *shop_);
  const auto* said = withdrawal->payload.get_if<entries::Withdrawn>();
  if (!said || said->reason.empty()) return tr("taken back by %1, %2").arg(who, when);
  return tr("taken back by %1, %2: %3")
      .arg(who, when, QCoreApplication::translate("TimeLine", said->reason.c_str()));
}

void TimeLineViewModel::open(const QString& entryId) {
  const auto parsed = Hash::parse(entryId.toStdString());
  if (!parsed) return;
  open_ = Hash{*parsed};
  const auto* entry = open_entry();
  if (!entry) return close();
  const QString zone = session_.zone();
  const QString none = tr("none");
  const auto minutes = static_cast<int>(entry->offset_min);
  details_.set({
      {tr("Kind"), tr("%1, number %2, schema %3")
                       .arg(QString::fromStdString(entries::kind_name(entry->kind)))
                       .arg(entry->kind)
                       .arg(entry->schema)},
      {tr("Place in the action"), tr("%1 of %2").arg(entry->part).arg(entry->parts)},
      {tr("Number in its device's chain"), QString::number(entry->order.seq)},
      {tr("Device"), hex(entry->order.device)},
      {tr("Hash"), hex(entry->hash)},
      {tr("Wall clock"),
       tr("%1 %2, %3 ms since 1970, %4 min from UTC")
           .arg(day_words(entry->wall_ms, zone), clock_words(entry->wall_ms, zone))
           .arg(entry->wall_ms)
           .arg(minutes < 0 ? QChar(0x2212) + QString::number(-minutes)
                            : QString::number(minutes))},
      {tr("Timer since the start"),
       tr("%1, %2 ms")
           .arg(running_words(static_cast<std::int64_t>(entry->boottime_ms)))
           .arg(entry->boottime_ms)},
      {tr("Start"), hex(entry->boot)},
      {tr("Clock flags"), entry->clock_flags == 0 ? none : clock_doubt_words(entry->clock_flags)},
      {tr("Person"), entry->person ? hex(entry->person) : none},
      {tr("Action"), hex(entry->action)},
  });
  read_raw();
  emit openChanged();
}

void TimeLineViewModel::read_raw() {
  raw_.reset();
  emit rawChanged();
  if (!raw_reader_ || !open_) return;
  session_.calculate(this, [this, hash = *open_, reader = raw_reader_]() -> std::function<void()> {
    auto read = std::make_shared<Result<engine::RawEntry>>(reader(hash));
    return [this, hash, read] {
      if (open_ != hash) return;
      if (!*read) {
        emit session_.failed(read->error());
        return;
      }
      raw_ = std::move(**read);
      emit rawChanged();
    };
  });
}

QString TimeLineViewModel::rawSignature() const {
  return raw_ ? signature_words(*raw_) : QString();
}

QStringList TimeLineViewModel::rawReceipts() const {
  return raw_ ? receipt_words(*raw_, session_.zone()) : QStringList();
}

QString TimeLineViewModel::rawText() const {
  if (!raw_) return {};
  const QString all = raw_text(*raw_);
  if (all.size() <= most_raw_shown) return all;
  return all.left(most_raw_shown) +
         tr("… and %1 more signs; a copy has them all").arg(all.size() - most_raw_shown);
}

void TimeLineViewModel::copyRaw() {
  if (raw_) QGuiApplication::clipboard()->setText(raw_text(*raw_));
}

void TimeLineViewModel::close() {
  open_.reset();
  raw_.reset();
  emit rawChanged();
  details_.set({});
  emit openChanged();
}

QString TimeLineViewModel::openWords() const {
  const auto* entry = open_entry();
  return entry ? told(*entry) : QString();
}

const folds::ClockActView* TimeLineViewModel::act_of(const Hash& entry) const {
  const auto* car = session_.car();
  if (!car) return nullptr;
  for (const auto& act : car->visit.clock_acts)
    if (act.entry == entry) return &act;
  return nullptr;
}

// A clock act that was amended says both times.
QString TimeLineViewModel::told(const entries::Entry& entry) const {
  const QString words = words_of(entry, telling());
  const auto* act = act_of(entry.hash);
  if (!act || !act->amended_by) return words;
  return tr("%1, counts %2")
      .arg(words, amended_words(act->at_ms, act->clock_ms, act->reason, act->amended_by, session_));
}

void TimeLineViewModel::amendOpen() {
  const auto* act = open_act();
  const auto* car = session_.car();
  if (!act || !openMayBeAmended()) return;
  AmendClockViewModel::End end{car->job, act->entry, tr("When it was"), act->at_ms};
  if (act->at_ms != act->clock_ms) end.clock_ms = act->clock_ms;
  bool passed = false;
  for (const auto& other : car->visit.clock_acts) {
    if (other.worker != act->worker) continue;
    if (other.entry == act->entry) {
      passed = true;
    } else if (!passed) {
      end.least_ms = other.at_ms;
    } else if (!end.most_ms) {
      end.most_ms = other.at_ms;
    }
  }
  const QString title = words_of(*open_entry(), telling());
  const PersonId worker = act->worker;
  close();
  amend_.open(title, worker, {std::move(end)});
}

QString TimeLineViewModel::openLine() const {
  const auto* entry = open_entry();
  if (!entry) return {};
  const QString zone = session_.zone();
  const QString when =
      tr("%1 %2").arg(day_words(entry->wall_ms, zone), clock_words(entry->wall_ms, zone));
  return entry->person ? tr("%1, %2").arg(name_of(entry->person, *shop_), when) : when;
}

QString TimeLineViewModel::openDoubt() const {
  const auto* entry = open_entry();
  return entry ? clock_doubt_words(entry->clock_flags) : QString();
}

QString TimeLineViewModel::openPlace() const {
  const auto* entry = open_entry();
  return entry && sync_ ? sentence(sync_->place_of(*entry)) : QString();
}

QString TimeLineViewModel::openRefused() const {
  const auto* entry = open_entry();
  return entry ? sentence(refused_words(*entry)) : QString();
}

QString TimeLineViewModel::openFile() const {
  const auto* entry = open_entry();
  return entry ? file_of(*entry, session_.car()) : QString();
}

QString TimeLineViewModel::openPicture() const {
  const auto* entry = open_entry();
  const PictureId picture = entry ? picture_of(*entry) : PictureId{};
  return picture && session_.car() && session_.car()->find(picture) ? hex(picture) : QString();
}

QString TimeLineViewModel::openTakenBack() const {
  const auto* entry = open_entry();
  return entry ? sentence(taken_back_words(*entry)) : QString();
}

bool TimeLineViewModel::openMayBeTakenBack() const {
  const auto* entry = open_entry();
  return entry && entry->refused == entries::Refused::No && may_be_taken_back(*entry) &&
         !history_.taken_back(entry->hash) && !session_.readOnly() && session_.car() &&
         session_.car()->unknown_entries == 0;
}

QStringList TimeLineViewModel::reasons() const {
  QStringList out;
  for (const char* words : withdraw_reasons)
    out << sentence(QCoreApplication::translate("TimeLine", words));
  return out;
}

void TimeLineViewModel::takeBack(int reason) {
  const auto* entry = open_entry();
  if (!entry || !openMayBeTakenBack() || reason < 0 ||
      reason >= static_cast<int>(withdraw_reasons.size()))
    return;
  session_.post(acts::Withdraw{entry->subject, entry->hash,
                               withdraw_reasons[static_cast<std::size_t>(reason)]},
                [self = QPointer(this)](const Result<engine::Wrote>& wrote) {
                  if (wrote && self) emit self->takenBack();
                });
}

}  // namespace jambline::screens
