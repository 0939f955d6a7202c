// The face of all words: "B612", then what other scripts need. Debian's monospaced files carry the
// same family name and the toolkit cannot tell them apart, so they are hidden from this process
// while the application object is being made (Linux with fontconfig; elsewhere nothing is done).
// Once, on the GUI thread; a failure leaves the system's own choice.
#pragma once

#include <QStringList>

namespace jambline::theme {

QStringList faceFamilies(const QString& first);

}  // namespace jambline::theme
