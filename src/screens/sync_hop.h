// screens/sync_hop.h: from a thread of the exchange, or a lane of the engine, to the GUI thread.
// Who asked may be gone by then: then nothing is done.
#pragma once

#include <QCoreApplication>
#include <QPointer>
#include <utility>

namespace jambline::screens {

template <class Asker, class Use>
void hop_to_gui(const QPointer<Asker>& asker, Use use) {
  QMetaObject::invokeMethod(
      QCoreApplication::instance(),
      [asker, use = std::move(use)]() mutable {
        if (asker) use();
      },
      Qt::QueuedConnection);
}

}  // namespace jambline::screens
