// screens/sync_words.h: how far the work of this device has come to the shop's hub, in words.
//
// Promise: "all sent" only where SyncState says when it was (a signed receipt); what waits is
// always
//          counted. Times in the zone given. Threads: any.
#pragma once

#include <QString>

#include "exchange/exchange.h"
#include "screens/state_kind.h"
#include "screens/units.h"

namespace jambline::screens {

// "12 to send · no network", "sending 4 of 12", "all sent 10:31".
QString margin_words(const exchange::SyncState& sync, std::int64_t now_ms, const QString& zone);

struct SyncWords {
  QString head;     // the same in a sentence
  QString explain;  // what is safe, and what happens next
  StateKind shape = StateKind::None;
};
SyncWords sync_words(const exchange::SyncState& sync, std::int64_t now_ms, const QString& zone);

QString entries_words(std::uint64_t count);   // "1 entry", "12 entries"
QString pictures_words(std::uint64_t count);  // "1 picture", "3 pictures"
// What waits: "12 entries, 3 pictures (4.1 MB)"; "nothing".
QString waiting_words(const exchange::SyncState& sync);
QString place_words(exchange::Place place);  // of an entry or a picture

// Digits as they are read aloud: "0 4 2, 9 1 7".
QString spoken_digits(const QString& digits);

}  // namespace jambline::screens
