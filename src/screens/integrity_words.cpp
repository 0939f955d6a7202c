#include "screens/integrity_words.h"

#include <QCoreApplication>

#include "screens/text.h"
#include "screens/units.h"

namespace jambline::screens {

using engine::FindingKind;

namespace {
QString check_tr(const char* text) {
  return QCoreApplication::translate("integrity", text);
}

QString moment(std::int64_t wall_ms, const QString& zone) {
  return check_tr("%1 %2").arg(day_words(wall_ms, zone), clock_words(wall_ms, zone));
}
}  // namespace

QString title_of(FindingKind kind) {
  switch (kind) {
    case FindingKind::ClockBefore2025:
      return check_tr("The clock stood before 2025");
    case FindingKind::ClockSteppedBack:
      return check_tr("The clock went back");
    case FindingKind::ClockJumped:
      return check_tr("The clock jumped");
    case FindingKind::Forked:
      return check_tr("A copied folder");
    case FindingKind::TakenOver:
      return check_tr("Work of a revoked device, said again");
    case FindingKind::Quarantined:
      return check_tr("Kept apart");
    case FindingKind::Late:
      return check_tr("Came late");
    case FindingKind::Erased:
      return check_tr("Erased");
    case FindingKind::Gap:
      return check_tr("Missing numbers");
  }
  return {};
}

QString meaning_of(FindingKind kind) {
  switch (kind) {
    case FindingKind::ClockBefore2025:
      return check_tr(
          "The times of these entries are wrong; their order on the device holds. Set "
          "the device's clock.");
    case FindingKind::ClockSteppedBack:
      return check_tr(
          "The entry before it bears a later time. The order on the device holds; its "
          "hours may be short.");
    case FindingKind::ClockJumped:
      return check_tr(
          "The clock was set by more than 2 minutes between two entries. The order on "
          "the device holds; a span across it may be wrong.");
    case FindingKind::Forked:
      return check_tr(
          "Two copies of a device's folder went on. The work of one was said again "
          "under a new key; nothing is lost. Use each folder on one device only.");
    case FindingKind::TakenOver:
      return check_tr("A manager's device said it again; who did it and when stays as it was.");
    case FindingKind::Quarantined:
      return check_tr(
          "Written after their device was revoked: they stay in the log and nothing "
          "goes by them. A manager can take them over under Devices.");
    case FindingKind::Late:
      return check_tr(
          "More than a day lies between writing and the hub. Until then only the "
          "device that wrote them could vouch for them.");
    case FindingKind::Erased:
      return check_tr(
          "The text is gone for good, as an entry says; that it was written, when and "
          "by whom stays proven.");
    case FindingKind::Gap:
      return check_tr(
          "Entries of the device lie before and after, these are not here. Bring them "
          "from the hub or from a copy of the folder.");
  }
  return {};
}

QString words_of(const engine::Finding& finding, const QString& device, const QString& from,
                 const QString& zone) {
  const QString which = finding.entries() == 1
                            ? check_tr("Entry %1 of %2").arg(finding.seq_first).arg(device)
                            : check_tr("Entries %1 to %2 of %3")
                                  .arg(finding.seq_first)
                                  .arg(finding.seq_last)
                                  .arg(device);
  if (finding.kind == FindingKind::Gap) return which;
  QString out = check_tr("%1, made %2").arg(which, moment(finding.wall_ms, zone));
  if (finding.kind == FindingKind::Late)
    out = check_tr("%1, received %2").arg(out, moment(finding.received_ms, zone));
  if (!from.isEmpty()) out = check_tr("%1, work of %2").arg(out, from);
  return out;
}

QString words_of(const engine::Proven& proven, const QString& zone) {
  if (!proven.hub)
    return check_tr("proven up to entry %1; no hub: proven by this device only").arg(proven.seq);
  const auto& hub = *proven.hub;
  const QString when = moment(hub.received_ms, zone);
  if (hub.seq >= proven.seq)
    return check_tr("proven up to entry %1, received by the hub %2 %3")
        .arg(proven.seq)
        .arg(text(hub.hub), when);
  return check_tr("proven up to entry %1; the hub %2 has it up to %3, received %4")
      .arg(proven.seq)
      .arg(text(hub.hub))
      .arg(hub.seq)
      .arg(when);
}

QString bad_means(const Error& bad) {
  switch (bad.code) {
    case Code::BadHash:
      return check_tr(
          "Its bytes are not those that were written: somebody or a disk changed them.");
    case Code::BadSignature:
      return check_tr("It was not signed by the device whose name it bears.");
    case Code::ChainBroken:
      return check_tr("It does not follow from the entry before it: one is gone, or was put in.");
    case Code::NotAdmitted:
      return check_tr("It is of a device that nobody let into the shop.");
    case Code::Fork:
      return check_tr("Another entry bears the same number: two copies of a folder went on.");
    case Code::WrongShop:
      return check_tr("It is of another shop.");
    default:
      return check_tr("The file of the log is damaged there.");
  }
}

QString bad_todo(const Error& bad) {
  if (bad.code == Code::NotAdmitted || bad.code == Code::WrongShop || bad.code == Code::Fork)
    return check_tr("Keep the folder as it is, and find out where this entry came from.");
  return check_tr(
      "Keep the folder as it is; it is evidence too. Work on from the hub's copy or an "
      "older one: everything up to here can be proven.");
}

}  // namespace jambline::screens
