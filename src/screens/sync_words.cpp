#include "screens/sync_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "screens/picture_rows.h"
#include "screens/text.h"

namespace jambline::screens {

namespace {
using exchange::Contact;
using exchange::PicturesWhen;
using exchange::SyncState;

class Tr {
  Q_DECLARE_TR_FUNCTIONS(SyncWords)
};

QString dotted(const QStringList& parts) {
  QStringList said;
  for (const QString& one : parts)
    if (!one.isEmpty()) said << one;
  return said.join(QStringLiteral(" \u00b7 "));
}

// Why nothing goes out, in two words; empty: it goes.
QString stop_words(const SyncState& sync) {
  if (sync.paused) return Tr::tr("paused");
  if (sync.trouble) {
    switch (sync.trouble->code) {
      case Code::NoContact:
        return Tr::tr("no network");
      case Code::WrongServer:
        return Tr::tr("wrong network");
      case Code::Busy:
        return Tr::tr("hub is busy");
      case Code::DiskFull:
        return Tr::tr("device is full");
      default:
        return Tr::tr("stopped");
    }
  }
  return sync.contact == Contact::Trying ? Tr::tr("no network") : QString();
}

bool pictures_wait(const SyncState& sync) {
  return sync.pictures_when == PicturesWhen::Never ||
         (sync.pictures_when == PicturesWhen::NotMetered && sync.metered);
}

QString to_send_words(const SyncState& sync) {
  if (sync.entries_to_send > 0) return Tr::tr("%1 to send").arg(sync.entries_to_send);
  if (sync.pictures_to_send == 0) return {};
  return sync.pictures_to_send == 1 ? Tr::tr("1 picture to send")
                                    : Tr::tr("%1 pictures to send").arg(sync.pictures_to_send);
}

QString stays_words(const SyncState& sync) {
  const auto waits = sync.entries_to_send;
  return waits == 0 ? QString() : Tr::tr("%1 stay here").arg(waits);
}

QString all_sent_words(const SyncState& sync, std::int64_t now_ms, const QString& zone) {
  return sync.all_sent_ms ? Tr::tr("all sent %1").arg(time_words(*sync.all_sent_ms, now_ms, zone))
                          : QString();
}

QString going_words(const SyncState& sync, std::int64_t now_ms, const QString& zone) {
  const QString stop = stop_words(sync);
  const QString waits = to_send_words(sync);
  if (!stop.isEmpty())
    return dotted({waits.isEmpty() ? all_sent_words(sync, now_ms, zone) : waits, stop});
  if (sync.entries_to_send > 0) {
    const auto sent = sync.entries_sent_now;
    return sent > 0 ? Tr::tr("sending %1 of %2").arg(sent).arg(sent + sync.entries_to_send) : waits;
  }
  if (!waits.isEmpty())
    return dotted({waits, sync.pictures_when == PicturesWhen::Never ? Tr::tr("pictures stay here")
                          : pictures_wait(sync)                     ? Tr::tr("metered network")
                                                                    : QString()});
  const QString all = all_sent_words(sync, now_ms, zone);
  return all.isEmpty() ? Tr::tr("asking the hub") : all;
}

SyncWords good_words(const SyncState& sync, std::int64_t now_ms, const QString& zone) {
  if (sync.paused)
    return {Tr::tr("Paused. Nothing is sent or fetched."),
            Tr::tr("All work is kept here and goes out when you go on."), StateKind::Paused};
  if (sync.contact == Contact::Trying || sync.trouble)
    return {Tr::tr("The hub does not answer now."),
            Tr::tr("All work is kept here and goes out later. It is tried again by itself."),
            StateKind::Waits};
  if (sync.entries_to_send > 0)
    return {Tr::tr("Sending."), Tr::tr("Work goes on meanwhile."), StateKind::Running};
  if (sync.pictures_to_send > 0 && pictures_wait(sync))
    return {Tr::tr("All entries are on the hub. Pictures wait."),
            sync.pictures_when == PicturesWhen::Never
                ? Tr::tr("They stay here until you let them go out.")
                : Tr::tr("They go out when the network is not metered."),
            StateKind::Waits};
  if (sync.pictures_to_send > 0)
    return {Tr::tr("All entries are on the hub. Pictures are sent."),
            Tr::tr("Work goes on meanwhile."), StateKind::Running};
  if (sync.all_sent_ms)
    return {Tr::tr("All is on the hub, sent %1.").arg(time_words(*sync.all_sent_ms, now_ms, zone)),
            Tr::tr("The hub has signed for every entry of this device."), StateKind::Done};
  return {Tr::tr("Asking the hub what it has."), Tr::tr("Work goes on meanwhile."),
          StateKind::Running};
}
}  // namespace

QString margin_words(const SyncState& sync, std::int64_t now_ms, const QString& zone) {
  const QString refused =
      sync.entries_refused > 0 ? Tr::tr("%1 refused").arg(sync.entries_refused) : QString();
  switch (sync.contact) {
    case Contact::NoHub:
      return Tr::tr("this device only");
    case Contact::Joining:
      return sync.digits.empty() ? Tr::tr("asks the hub to be let in")
                                 : Tr::tr("to compare: %1").arg(text(sync.digits));
    case Contact::TurnedAway:
      return Tr::tr("not let in by the hub");
    case Contact::Revoked:
      return dotted({Tr::tr("not a device of the shop any more"), stays_words(sync), refused});
    case Contact::Forked:
      return dotted({sync.digits.empty() ? Tr::tr("folder was copied")
                                         : Tr::tr("to compare: %1").arg(text(sync.digits)),
                     stays_words(sync)});
    case Contact::Trying:
    case Contact::Good:
      break;
  }
  return dotted({going_words(sync, now_ms, zone), refused});
}

SyncWords sync_words(const SyncState& sync, std::int64_t now_ms, const QString& zone) {
  switch (sync.contact) {
    case Contact::NoHub:
      return {Tr::tr("No hub yet."),
              Tr::tr("All work is on this device only. It needs no hub; a copy in a folder is the "
                     "backup until there is one."),
              StateKind::NotYet};
    case Contact::Joining:
      return {Tr::tr("This device asks to be let in."),
              sync.brings_shop ? Tr::tr("Compare the six digits with the hub's own screen.")
                               : Tr::tr("A manager compares the six digits on his device."),
              StateKind::Waits};
    case Contact::TurnedAway:
      return {Tr::tr("This device was not let in."),
              Tr::tr("The code was used or is over, or a manager turned it away. Nothing was "
                     "changed here. Ask for a new code."),
              StateKind::Must};
    case Contact::Revoked:
      return {
          Tr::tr("A manager ended this device's membership."),
          Tr::tr("What was sent before stays in the shop's record. What is newer stays here and "
                 "is kept apart on the hub until a manager looks at it. Nothing is erased."),
          StateKind::Must};
    case Contact::Forked:
      return {
          Tr::tr("The folder of this device was copied, and the copy went on."),
          Tr::tr("Both wrote under one name. All work is kept here; none of it can go out until "
                 "this device has a name of its own again."),
          StateKind::Disputed};
    case Contact::Trying:
    case Contact::Good:
      break;
  }
  return good_words(sync, now_ms, zone);
}

QString entries_words(std::uint64_t count) {
  return count == 1 ? Tr::tr("1 entry")
                    : Tr::tr("%1 entries").arg(QLocale().toString(static_cast<qulonglong>(count)));
}

QString pictures_words(std::uint64_t count) {
  return count == 1 ? Tr::tr("1 picture") : Tr::tr("%1 pictures").arg(count);
}

QString waiting_words(const SyncState& sync) {
  QStringList out;
  if (sync.entries_to_send > 0) out << entries_words(sync.entries_to_send);
  if (sync.pictures_to_send > 0)
    out << (sync.bytes_to_send > 0
                ? Tr::tr("%1 (%2)").arg(pictures_words(sync.pictures_to_send),
                                        bytes_words(static_cast<std::int64_t>(sync.bytes_to_send)))
                : pictures_words(sync.pictures_to_send));
  return out.isEmpty() ? Tr::tr("nothing") : out.join(Tr::tr(", "));
}

QString place_words(exchange::Place place) {
  switch (place) {
    case exchange::Place::Here:
      return Tr::tr("here, not sent yet");
    case exchange::Place::OnHub:
      return Tr::tr("on the hub, signed for");
    case exchange::Place::Refused:
      return Tr::tr("refused by the hub: this device was ended before it. A manager looks at it.");
  }
  return {};
}

QString spoken_digits(const QString& digits) {
  QStringList groups;
  for (const QString& group : digits.split(QChar(' '), Qt::SkipEmptyParts)) {
    QStringList one;
    for (const QChar sign : group) one << QString(sign);
    groups << one.join(QChar(' '));
  }
  return groups.join(QStringLiteral(", "));
}

}  // namespace jambline::screens
