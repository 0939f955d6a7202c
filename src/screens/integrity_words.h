// screens/integrity_words.h: what a check of the log found, in words.
//
// Threads: any, while no translation is being changed.
#pragma once

#include <QString>

#include "engine/integrity.h"

namespace jambline::screens {

QString title_of(engine::FindingKind kind);    // "The clock jumped"
QString meaning_of(engine::FindingKind kind);  // what it means, and what is to be done
// "Entries 12 to 14 of cart 1, made Tue Nov 24 10:12, received Fri Nov 27 08:00".
QString words_of(const engine::Finding& finding, const QString& device, const QString& from,
                 const QString& zone);

// "proven up to entry 61, received by the hub "office" Tue Nov 24 10:31".
QString words_of(const engine::Proven& proven, const QString& zone);

// Of the first bad entry: what that means, and what is to be done.
QString bad_means(const Error& bad);
QString bad_todo(const Error& bad);

}  // namespace jambline::screens
