#include "screens/demo_view_model.h"

#include <QCoreApplication>

namespace jambline::screens {

namespace {
constexpr int patience_ms = 3'000;
}

DemoViewModel::DemoViewModel(bool is_demo, QString program, QStringList arguments, QObject* parent)
    : QObject(parent),
      is_demo_(is_demo),
      program_(std::move(program)),
      arguments_(std::move(arguments)) {
  child_.setProcessChannelMode(QProcess::ForwardedChannels);
  connect(&child_, &QProcess::errorOccurred, this, [this](QProcess::ProcessError error) {
    if (error == QProcess::FailedToStart || error == QProcess::Crashed) failed();
  });
  connect(&child_, &QProcess::finished, this, [this](int code, QProcess::ExitStatus status) {
    if (status != QProcess::NormalExit || code != 0) return failed();
    note_.clear();
    emit changed();
  });
}

// The demo ends by itself when its input does, and throws its folder away.
DemoViewModel::~DemoViewModel() {
  child_.disconnect(this);
  if (!running()) return;
  child_.closeWriteChannel();
  if (!child_.waitForFinished(patience_ms)) child_.kill();
}

void DemoViewModel::failed() {
  note_ = tr("The demo shop did not open.\nYour own shop is as it was.\nTry it again.");
  emit changed();
}

void DemoViewModel::open() {
  if (running()) return;
  note_ = tr("The demo shop opens in a window of its own. Close that window to come back here.");
  child_.start(program_, arguments_);
  emit changed();
}

void DemoViewModel::leave() {
  if (is_demo_) QCoreApplication::quit();
}

}  // namespace jambline::screens
