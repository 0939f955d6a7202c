#include <QCoreApplication>

#include "screens/words.h"

namespace jambline::screens {

namespace {
QString tr(const char* words) {
  return QCoreApplication::translate("errors", words);
}

QString text(std::string_view value) {
  return QString::fromUtf8(value.data(), static_cast<qsizetype>(value.size()));
}

struct Lines {
  const char* what;  // %1: the subject, %2: what was tried
  const char* kept;
  const char* todo;
};

Lines lines_of(Code code) {
  static constexpr const char* nothing = QT_TRANSLATE_NOOP("errors", "Nothing was changed.");
  static constexpr const char* kept =
      QT_TRANSLATE_NOOP("errors", "All that was written before is kept.");
  switch (code) {
    case Code::DiskFull:
      return {QT_TRANSLATE_NOOP("errors", "This was not saved: %1. The device is full."), kept,
              QT_TRANSLATE_NOOP("errors", "Make room on this device, then do it again.")};
    case Code::ReadOnly:
      return {QT_TRANSLATE_NOOP("errors", "Nothing can be written here: %1."), kept,
              QT_TRANSLATE_NOOP("errors", "Make the folder writable, then start again.")};
    case Code::NoSuchFile:
      return {QT_TRANSLATE_NOOP("errors", "This is not there: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Check the folder and its name.")};
    case Code::FileFailed:
      return {QT_TRANSLATE_NOOP("errors", "The device refused it: %1."), kept,
              QT_TRANSLATE_NOOP("errors", "Try it again.")};
    case Code::FolderInUse:
      return {QT_TRANSLATE_NOOP("errors", "This shop is already open in another window."), kept,
              QT_TRANSLATE_NOOP("errors", "Go on in that window, or close it first.")};
    case Code::DatabaseDamaged:
      return {
          QT_TRANSLATE_NOOP("errors", "The log file is damaged: %1."),
          QT_TRANSLATE_NOOP("errors", "The file was left as it is."),
          QT_TRANSLATE_NOOP("errors", "Keep a copy of the folder. Check it with jambline-record.")};
    case Code::NewerSchema:
      return {QT_TRANSLATE_NOOP("errors", "This has entries from a newer version: %1."),
              QT_TRANSLATE_NOOP("errors", "You can read it. Nothing is changed."),
              QT_TRANSLATE_NOOP("errors", "Update the program on this device.")};
    case Code::ChainBroken:
    case Code::BadSignature:
    case Code::BadHash:
    case Code::Fork:
      return {QT_TRANSLATE_NOOP("errors", "The log does not hold together: %1."),
              QT_TRANSLATE_NOOP("errors", "The entries were left as they are."),
              QT_TRANSLATE_NOOP("errors", "Keep a copy of the folder and tell the manager.")};
    case Code::NotAdmitted:
    case Code::Revoked:
    case Code::WrongShop:
    case Code::WrongKey:
      return {QT_TRANSLATE_NOOP("errors", "This device does not belong to this shop: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Ask the manager which device it should be.")};
    case Code::TooLarge:
      return {QT_TRANSLATE_NOOP("errors", "This is too long: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Make it shorter.")};
    case Code::NotErasable:
      return {QT_TRANSLATE_NOOP("errors", "This cannot be erased: %1."), nothing, ""};
    case Code::Stopped:
      return {QT_TRANSLATE_NOOP("errors", "It was stopped: %2."), nothing, ""};
    case Code::Malformed:
      return {QT_TRANSLATE_NOOP("errors", "This cannot be read: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Check what was typed.")};
    case Code::OutOfRange:
      return {QT_TRANSLATE_NOOP("errors", "This is out of range: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Type it again.")};
    case Code::Missing:
      return {QT_TRANSLATE_NOOP("errors", "Something is missing: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Fill it in.")};
    case Code::Unknown:
      return {QT_TRANSLATE_NOOP("errors", "This is not known here: %1."), nothing, ""};
    case Code::VinCheckFails:
      return {QT_TRANSLATE_NOOP("errors", "This VIN does not check: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Read it again, or use it as typed.")};
    case Code::NotRunning:
      return {QT_TRANSLATE_NOOP("errors", "No clock runs for %1."), nothing, ""};
    case Code::AlreadyRunning:
      return {QT_TRANSLATE_NOOP("errors", "The clock of %1 already runs on this."),
              QT_TRANSLATE_NOOP("errors", "It goes on."), ""};
    case Code::AlreadyDone:
      return {QT_TRANSLATE_NOOP("errors", "This is already done: %1."), nothing, ""};
    case Code::NotAllowed:
      return {QT_TRANSLATE_NOOP("errors", "Your role may not do this: %2."), nothing,
              QT_TRANSLATE_NOOP("errors", "Ask the manager.")};
    case Code::OutsidePanel:
      return {QT_TRANSLATE_NOOP("errors", "That place is not on the panel."), nothing,
              QT_TRANSLATE_NOOP("errors", "Tap on the panel.")};
    case Code::Disputed:
      return {QT_TRANSLATE_NOOP("errors", "Two answers stand: %1."),
              QT_TRANSLATE_NOOP("errors", "Both are kept."),
              QT_TRANSLATE_NOOP("errors", "Settle which one counts.")};
    case Code::NotYet:
      return {QT_TRANSLATE_NOOP("errors", "Something else comes first: %1."), nothing, ""};
  }
  return {QT_TRANSLATE_NOOP("errors", "It did not work: %2."), kept, ""};
}
}  // namespace

ErrorWords words_of(const Error& error) {
  QString subject = text(error.subject);
  if (subject.isEmpty()) subject = text(error.operation);
  const Lines lines = lines_of(error.code);
  QString what = tr(lines.what);
  what.replace(QStringLiteral("%1"), subject);
  what.replace(QStringLiteral("%2"), text(error.operation));
  QString todo = *lines.todo ? tr(lines.todo) : QString();
  if (error.code == Code::NotYet && !error.arg("what").empty())
    todo = sentence(text(error.arg("what"))) + QChar('.');
  return {what, tr(lines.kept), todo};
}

}  // namespace jambline::screens
