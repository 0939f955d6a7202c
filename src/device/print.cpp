#include "device/print.h"

#include <QProcess>

namespace jambline::device {

namespace {
constexpr int most_ms = 20'000;
}

Printed print(const std::filesystem::path& file) {
  QProcess lp;
  lp.start(QStringLiteral("lp"), {QStringLiteral("--"), QString::fromStdString(file.string())});
  if (!lp.waitForStarted(most_ms) && lp.error() == QProcess::FailedToStart)
    return {Printed::Answer::NoProgram, {}};
  if (!lp.waitForFinished(most_ms)) {
    lp.kill();
    lp.waitForFinished();
    return {Printed::Answer::Refused, QStringLiteral("lp gave no answer in 20 s")};
  }
  const bool taken = lp.exitStatus() == QProcess::NormalExit && lp.exitCode() == 0;
  const QByteArray said = taken ? lp.readAllStandardOutput() : lp.readAllStandardError();
  return {taken ? Printed::Answer::Accepted : Printed::Answer::Refused,
          QString::fromUtf8(said).simplified()};
}

}  // namespace jambline::device
