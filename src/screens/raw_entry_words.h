// screens/raw_entry_words.h: an entry as it is kept, in words and as text to be copied.
//
// Text:    one field of FORMAT.md a line under its own name, bytes as hex; then the payload as it
// was
//          written. Words: what can be said of signature and receipts.
// Threads: any, while no translation is being changed.
#pragma once

#include <QString>
#include <QStringList>

#include "engine/raw_entry.h"

namespace jambline::screens {

QString raw_text(const engine::RawEntry& raw);
QString signature_words(const engine::RawEntry& raw);
// One line a hub and epoch; one that says so where there is none.
QStringList receipt_words(const engine::RawEntry& raw, const QString& zone);

}  // namespace jambline::screens
