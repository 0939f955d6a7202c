#include "screens/paper_run.h"

namespace jambline::screens {

PaperRun::~PaperRun() {
  stop();
  if (thread_.joinable()) thread_.join();
}

void PaperRun::start(const QString& what, Work work) {
  if (busy_) return;
  busy_ = true;
  failed_ = false;
  progress_ = 0;
  said_ = {what, {}, {}};
  emit changed();
  emit wentOn();
  thread_ = std::jthread([this, work = std::move(work)](const std::stop_token& stop) {
    const auto went_on = [this](double part_done) {
      QMetaObject::invokeMethod(
          this,
          [this, part_done] {
            progress_ = part_done;
            emit wentOn();
          },
          Qt::QueuedConnection);
    };
    Then then = work(stop, went_on);
    QMetaObject::invokeMethod(
        this,
        [this, then = std::move(then)] {
          busy_ = false;
          then();
        },
        Qt::QueuedConnection);
  });
}

void PaperRun::say(const ErrorWords& said, bool failed) {
  said_ = said;
  failed_ = failed;
  emit changed();
}

void PaperRun::say(const Error& error, const ErrorWords& stopped) {
  if (error.code == Code::Stopped) return say(stopped, false);
  say(words_of(error), true);
}

void PaperRun::forget() {
  if (!busy_) say(ErrorWords{}, false);
}

void PaperRun::stop() {
  thread_.request_stop();
}

}  // namespace jambline::screens
