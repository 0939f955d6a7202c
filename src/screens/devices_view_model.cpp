#include "screens/devices_view_model.h"

#include "screens/sync_hop.h"
#include "screens/text.h"
#include "screens/units.h"
#include "screens/words.h"
#include "seal/sign.h"

namespace jambline::screens {

namespace {
constexpr int look_each_s = 5;
constexpr int floor_each_s = 60;
}  // namespace

DevicesViewModel::DevicesViewModel(Session& session, SyncViewModel& sync, QObject* parent)
    : QObject(parent),
      session_(session),
      sync_(sync),
      devices_({"key", "name", "words", "seen", "shape"}, this),
      waiting_({"key", "name", "digits", "digitsSpoken", "asked"}, this),
      kept_({"key", "name", "words"}, this),
      looked_rows_({"key", "words", "line"}, this) {
  connect(&session_, &Session::snapshotChanged, this, &DevicesViewModel::refresh);
  connect(&session_, &Session::secondPassed, this, &DevicesViewModel::second_passed);
  connect(&sync_, &SyncViewModel::changed, this, &DevicesViewModel::refresh);
  refresh();
}

QString DevicesViewModel::whyNot() const {
  const auto* person = session_.shop().find(session_.person());
  if (!person || person->left || person->role != job::Role::Manager)
    return tr("A manager lets devices in and ends them.");
  const auto& all = session_.snapshot().devices;
  for (const auto& one : all)
    if (one.own && (!one.manager || one.cut_seq))
      return tr("This is done on a manager's device. This one is not.");
  if (session_.readOnly()) return tr("Nothing can be written on this device now.");
  return {};
}

// Only who may act needs to hear of it.
bool DevicesViewModel::may_ask() const {
  return sync_.exchange() && sync_.contact() == SyncViewModel::Good && mayManage();
}

void DevicesViewModel::setFront(bool front) {
  if (front == front_) return;
  front_ = front;
  seconds_ = 0;
  if (front) look();
}

void DevicesViewModel::second_passed() {
  if (!invitation_.isEmpty()) emit inviteChanged();
  if (seconds_++ % (front_ ? look_each_s : floor_each_s) == 0) look();
}

void DevicesViewModel::heard(const Error* error) {
  trouble_ = error ? words_of(*error).what : QString();
  refresh();
}

void DevicesViewModel::look() {
  if (!may_ask()) return;
  auto& exchange = *sync_.exchange();
  const QPointer<DevicesViewModel> self(this);
  exchange.pending([self, this](Result<std::vector<sync::Pending>> got) {
    hop_to_gui(self, [this, got = std::move(got)] {
      if (got) pending_ = *got;
      heard(got ? nullptr : &got.error());
    });
  });
  exchange.quarantine([self, this](Result<std::vector<sync::Quarantined>> got) {
    hop_to_gui(self, [this, got = std::move(got)] {
      if (got) quarantine_ = *got;
      heard(got ? nullptr : &got.error());
    });
  });
  exchange.seen([self, this](Result<sync::SeenAnswer> got) {
    hop_to_gui(self, [this, got = std::move(got)] {
      if (got) {
        seen_ = *got;
        seen_at_ms_ = session_.now().wall_ms;
      }
      heard(got ? nullptr : &got.error());
    });
  });
}

const engine::ShopDevice* DevicesViewModel::find(const QString& device) const {
  for (const auto& one : session_.snapshot().devices)
    if (hex(one.device) == device) return &one;
  return nullptr;
}

const sync::SeenDevice* DevicesViewModel::seen_of(const DeviceId& device) const {
  for (const auto& one : seen_.seen)
    if (one.device == device) return &one;
  return nullptr;
}

const sync::Quarantined* DevicesViewModel::kept_of(const QString& device) const {
  for (const auto& one : quarantine_)
    if (hex(one.device) == device) return &one;
  return nullptr;
}

QString DevicesViewModel::name_of(const DeviceId& device) const {
  const auto* known = find(hex(device));
  return known && !known->name.empty() ? text(known->name)
                                       : tr("device %1").arg(hex(device).left(8));
}

QString DevicesViewModel::standing_words(const engine::ShopDevice& device) const {
  QStringList out;
  if (device.own) out << tr("this device");
  if (device.cut_seq)
    out << tr("ended, counts up to number %1").arg(*device.cut_seq);
  else if (device.manager)
    out << tr("a manager's device");
  out << tr("%1 here").arg(entries_words(device.entries));
  return sentence(out.join(tr(", ")));
}

// By the hub's clock, told by this device's.
QString DevicesViewModel::seen_words(const engine::ShopDevice& device) const {
  if (device.own) return {};
  const auto* seen = seen_of(device.device);
  if (!seen) return {};
  const std::int64_t at_ms = seen_at_ms_ - (seen_.hub_ms - seen->seen_ms);
  return tr("last seen %1").arg(time_words(at_ms, session_.now().wall_ms, session_.zone()));
}

QString DevicesViewModel::fork_words(const DeviceId& device) const {
  const auto* seen = seen_of(device);
  if (!seen || !seen->fork_seq) return {};
  return tr("Its folder was copied: there are two entries with number %1. All before it is whole. "
            "That device asks for a new name, and its work goes on under it.")
      .arg(*seen->fork_seq);
}

bool DevicesViewModel::fork_is_news() const {
  for (const auto& one : seen_.seen)
    if (one.fork_ms && seen_.hub_ms - *one.fork_ms < fork_is_news_ms) return true;
  return false;
}

void DevicesViewModel::refresh() {
  show_lists();
  if (const QString name = deviceName(); name != name_shown_) {
    name_shown_ = name;
    emit nameChanged();
  }
  emit changed();
}

void DevicesViewModel::show_lists() {
  std::vector<QVariantList> rows;
  for (const auto& one : session_.snapshot().devices) {
    const auto* seen = seen_of(one.device);
    const StateKind shape = one.cut_seq                    ? StateKind::Respray
                            : seen && seen->fork_seq       ? StateKind::Disputed
                            : one.own || (seen != nullptr) ? StateKind::Running
                                                           : StateKind::None;
    rows.push_back({hex(one.device), name_of(one.device), standing_words(one), seen_words(one),
                    shape_of(shape)});
  }
  devices_.set(std::move(rows));

  // What the last answer said, while there is somebody who may act on it.
  std::vector<QVariantList> waiting;
  std::vector<QVariantList> kept;
  if (may_ask()) {
    for (const auto& one : pending_) {
      if (one.brings_shop) continue;  // that one is compared at the hub itself
      const QString digits = text(sync_.exchange()->digits_of(one));
      waiting.push_back(
          {hex(seal::device_of(one.device_key)), text(one.device_name), digits,
           spoken_digits(digits),
           tr("asked %1").arg(time_words(one.asked_ms, session_.now().wall_ms, session_.zone()))});
    }
    for (const auto& one : quarantine_) {
      if (one.settled_through >= one.last_seq) continue;
      const auto from = std::max(one.first_seq, one.settled_through + 1);
      kept.push_back(
          {hex(one.device), name_of(one.device),
           tr("%1 after its end, the last %2")
               .arg(entries_words(one.last_seq - from + 1),
                    time_words(one.received_ms, session_.now().wall_ms, session_.zone()))});
    }
  }
  const bool more = static_cast<int>(waiting.size()) > waiting_.rowCount();
  waiting_.set(std::move(waiting));
  if (more) emit someoneAsked();
  kept_.set(std::move(kept));
}

QString DevicesViewModel::countWords() const {
  int in = 0;
  int ended = 0;
  for (const auto& one : session_.snapshot().devices) ++(one.cut_seq ? ended : in);
  const QString devices = in == 1 ? tr("1 device") : tr("%1 devices").arg(in);
  return ended == 0 ? devices : tr("%1, %2 ended").arg(devices).arg(ended);
}

QString DevicesViewModel::deviceName() const {
  const auto* one = find(open_);
  return one ? name_of(one->device) : QString();
}

QString DevicesViewModel::deviceWords() const {
  const auto* one = find(open_);
  return one ? standing_words(*one) : QString();
}

QString DevicesViewModel::deviceSeen() const {
  const auto* one = find(open_);
  return one ? sentence(seen_words(*one)) : QString();
}

QString DevicesViewModel::deviceFork() const {
  const auto* one = find(open_);
  return one ? fork_words(one->device) : QString();
}

bool DevicesViewModel::deviceOwn() const {
  const auto* one = find(open_);
  return one && one->own;
}

bool DevicesViewModel::deviceEnded() const {
  const auto* one = find(open_);
  return one && one->cut_seq;
}

QString DevicesViewModel::floorWords() const {
  if (!may_ask()) return {};
  QStringList out;
  if (waitingCount() > 0)
    out << (waitingCount() == 1 ? tr("A device asks to be let in")
                                : tr("%1 devices ask to be let in").arg(waitingCount()));
  if (keptCount() > 0) out << tr("Work of an ended device waits to be looked through");
  if (fork_is_news()) out << tr("A device's folder was copied");
  return out.join(QStringLiteral(" \u00b7 "));
}

int DevicesViewModel::floorShape() const {
  return shape_of(waitingCount() > 0 ? StateKind::Waits : StateKind::Disputed);
}

}  // namespace jambline::screens
