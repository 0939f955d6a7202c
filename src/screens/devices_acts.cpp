#include <QClipboard>
#include <QGuiApplication>

#include "engine/read_entry.h"
#include "screens/devices_view_model.h"
#include "screens/entry_words.h"
#include "screens/sync_hop.h"
#include "screens/text.h"
#include "screens/units.h"
#include "screens/words.h"
#include "seal/sign.h"

namespace jambline::screens {

namespace {
constexpr std::int64_t a_minute_ms = 60'000;
}

void DevicesViewModel::open(const QString& device) {
  if (device == open_) return;
  open_ = device;
  refresh();
}

void DevicesViewModel::rename(const QString& name) {
  const auto* one = find(open_);
  if (one) session_.post(acts::NameDevice{one->device, name.toStdString()});
}

// A refusal comes as a banner; what was asked for shows in the lists.
void DevicesViewModel::tell(const Status& done) {
  if (!done) emit session_.failed(done.error());
  look();
  refresh();
}

void DevicesViewModel::endMembership() {
  const auto* one = find(open_);
  if (!one || one->own || one->cut_seq || !mayManage()) return;
  session_.engine().revoke_device(
      one->device, session_.person(),
      [self = QPointer(this), this](const Result<engine::Wrote>& wrote) {
        hop_to_gui(self,
                   [this, done = wrote ? Status() : Status(fail(wrote.error()))] { tell(done); });
      });
}

void DevicesViewModel::admit(const QString& device, bool manager) {
  if (!mayManage()) return;
  for (const auto& one : pending_) {
    if (hex(seal::device_of(one.device_key)) != device) continue;
    session_.engine().admit_device(
        {one.device_key, one.device_name, manager}, session_.person(),
        [self = QPointer(this), this, key = one.device_key](const Result<engine::Wrote>& wrote) {
          hop_to_gui(self, [this, key, done = wrote ? Status() : Status(fail(wrote.error()))] {
            if (done)
              pending_.erase(
                  std::remove_if(pending_.begin(), pending_.end(),
                                 [&](const auto& other) { return other.device_key == key; }),
                  pending_.end());
            tell(done);
          });
        });
    return;
  }
}

void DevicesViewModel::turnAway(const QString& device) {
  if (!may_ask()) return;
  for (const auto& one : pending_) {
    const DeviceId id = seal::device_of(one.device_key);
    if (hex(id) != device) continue;
    sync_.exchange()->refuse(id, [self = QPointer(this), this](const Status& done) {
      hop_to_gui(self, [this, done] { tell(done); });
    });
    return;
  }
}

void DevicesViewModel::invite() {
  if (!may_ask()) return;
  dropInvitation();
  sync_.exchange()->invite([self = QPointer(this), this](Result<sync::Invitation> got) {
    hop_to_gui(self, [this, got = std::move(got)] {
      if (got) {
        invitation_ = text(sync::encode(*got));
        invited_ms_ = session_.now().since_boot_ms;
      } else {
        const ErrorWords words = words_of(got.error());
        invite_trouble_ = tr("%1 %2").arg(words.what, words.todo);
      }
      emit inviteChanged();
    });
  });
}

void DevicesViewModel::dropInvitation() {
  invitation_.clear();
  invite_trouble_.clear();
  emit inviteChanged();
}

void DevicesViewModel::copyInvitation() {
  if (auto* clipboard = QGuiApplication::clipboard()) clipboard->setText(invitation_);
}

bool DevicesViewModel::inviteOver() const {
  return !invitation_.isEmpty() &&
         session_.now().since_boot_ms - invited_ms_ >= invitation_lives_ms;
}

QString DevicesViewModel::inviteWords() const {
  if (invitation_.isEmpty()) return {};
  if (inviteOver()) return tr("This code is over.");
  const auto left =
      invitation_lives_ms - static_cast<std::int64_t>(session_.now().since_boot_ms - invited_ms_);
  const auto minutes = (left + a_minute_ms - 1) / a_minute_ms;
  return minutes == 1 ? tr("Good for one device, for 1 minute.")
                      : tr("Good for one device, for %1 minutes.").arg(minutes);
}

void DevicesViewModel::lookThrough(const QString& device) {
  const auto* what = kept_of(device);
  if (!what || !may_ask()) return;
  looked_ = device;
  looked_here_ = false;
  looked_through_ = what->last_seq;
  looked_entries_.clear();
  looked_rows_.set({});
  emit lookedChanged();
  const auto settled = what->settled_through;
  sync_.exchange()->quarantined_entries(
      what->device,
      [self = QPointer(this), this, device, settled](Result<std::vector<seal::SealedEntry>> got) {
        hop_to_gui(self, [this, device, settled, got = std::move(got)] {
          if (device != looked_) return;
          if (!got) {
            emit session_.failed(got.error());
            return end_looked();
          }
          std::vector<entries::Entry> entries;
          for (const auto& one : *got) {
            if (one.header.seq <= settled) continue;
            looked_entries_.push_back(one);
            looked_through_ = std::max(looked_through_, one.header.seq);
            entries.push_back(engine::read_entry(one));
          }
          const folds::History history(entries);
          const Telling telling{session_.shop(), history, session_.zone()};
          std::vector<QVariantList> rows;
          for (const auto& entry : entries)
            rows.push_back(
                {hex(entry.hash), words_of(entry, telling),
                 tr("%1, %2").arg(
                     entry.person ? session_.name_of(entry.person) : tr("nobody"),
                     time_words(entry.wall_ms, session_.now().wall_ms, session_.zone()))});
          looked_rows_.set(std::move(rows));
          looked_here_ = true;
          emit lookedChanged();
        });
      });
}

QString DevicesViewModel::lookedName() const {
  const auto parsed = DeviceId::parse(looked_.toStdString());
  return parsed ? name_of(DeviceId{*parsed}) : QString();
}

QString DevicesViewModel::lookedWords() const {
  if (looked_.isEmpty()) return {};
  if (!looked_here_) return tr("They are fetched from the hub.");
  return tr("%1, written after this device was ended. They are in nobody's record.")
      .arg(entries_words(looked_entries_.size()));
}

void DevicesViewModel::end_looked() {
  looked_.clear();
  looked_here_ = false;
  looked_entries_.clear();
  looked_rows_.set({});
  emit lookedChanged();
}

// Said again by this device first; only then the hub may put them away.
void DevicesViewModel::takeOver() {
  if (!lookedHere() || !may_ask()) return;
  if (looked_entries_.empty()) return settle_looked();
  session_.engine().take_over(
      looked_entries_, entries::TakenOverWhy::AfterRevocation, session_.person(),
      [self = QPointer(this), this](const Result<engine::Wrote>& wrote) {
        const bool said = wrote || wrote.error().code == Code::AlreadyDone;
        hop_to_gui(self, [this, said, done = said ? Status() : Status(fail(wrote.error()))] {
          if (said)
            settle_looked();
          else
            tell(done);
        });
      });
}

void DevicesViewModel::leaveKept() {
  if (lookedHere() && may_ask()) settle_looked();
}

void DevicesViewModel::settle_looked() {
  const auto parsed = DeviceId::parse(looked_.toStdString());
  if (!parsed || !sync_.exchange()) return;
  sync_.exchange()->settle_quarantine(DeviceId{*parsed}, looked_through_,
                                      [self = QPointer(this), this, device = looked_,
                                       through = looked_through_](const Status& done) {
                                        hop_to_gui(self, [this, done, device, through] {
                                          if (done) {
                                            for (auto& one : quarantine_)
                                              if (hex(one.device) == device)
                                                one.settled_through = through;
                                            if (looked_ == device) end_looked();
                                            emit settled();
                                          }
                                          tell(done);
                                        });
                                      });
}

}  // namespace jambline::screens
