// Waiting for what comes by itself: an answer of the calc lane, a file that was read, a row.
//
// The thread sleeps between events, for the calc lane gets the processor after whoever is awake.
// The limit is no promise of the program: it says when a test stops believing, on a machine where
// other tests hold every processor.
#pragma once

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QEventLoop>
#include <QTimer>

namespace jambline {

template <class So>
bool until(So so, int most_ms = 60'000) {
  QElapsedTimer since;
  since.start();
  QTimer wakes;
  wakes.start(5);
  while (!so()) {
    if (since.elapsed() > most_ms) return false;
    QCoreApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents);
    // What deleteLater() was said of goes only in exec() by itself.
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  }
  return true;
}

}  // namespace jambline
