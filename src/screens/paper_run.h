// screens/paper_run.h: one file that is being made beside the work: how far, stopped, what came of
// it.
//
// Promise: one at a time; what was begun is stopped and waited for when this goes.
// Threads: GUI; the work runs on a thread of its own.
#pragma once

#include <QObject>
#include <QString>
#include <functional>
#include <qqmlregistration.h>
#include <thread>

#include "screens/papers.h"
#include "screens/words.h"

namespace jambline::screens {

class PaperRun final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Part of a view model")
  Q_PROPERTY(bool busy READ busy NOTIFY changed)
  Q_PROPERTY(double progress READ progress NOTIFY wentOn)  // 0 to 1
  Q_PROPERTY(QString what READ what NOTIFY changed)        // what came of it; "" nothing yet
  Q_PROPERTY(QString kept READ kept NOTIFY changed)
  Q_PROPERTY(QString todo READ todo NOTIFY changed)
  Q_PROPERTY(bool failed READ failed NOTIFY changed)

 public:
  using Then = std::function<void()>;
  using Work = std::function<Then(const std::stop_token&, const PaperProgress&)>;

  explicit PaperRun(QObject* parent) : QObject(parent) {}
  ~PaperRun() override;

  bool busy() const { return busy_; }
  double progress() const { return progress_; }
  QString what() const { return said_.what; }
  QString kept() const { return said_.kept; }
  QString todo() const { return said_.todo; }
  bool failed() const { return failed_; }

  // What `work` gives back runs on the GUI thread afterwards and says what came of it.
  void start(const QString& what, Work work);
  void say(const ErrorWords& said, bool failed);
  void say(const Error& error, const ErrorWords& stopped);
  void forget();

  Q_INVOKABLE void stop();

 signals:
  void changed();
  void wentOn();

 private:
  bool busy_ = false;
  bool failed_ = false;
  double progress_ = 0;
  ErrorWords said_;
  std::jthread thread_;
};

}  // namespace jambline::screens
