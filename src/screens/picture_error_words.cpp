#include "screens/picture_error_words.h"

#include <QCoreApplication>
#include <QLocale>

#include "screens/text.h"

namespace jambline::screens {

namespace {
QString tr(const char* words) {
  return QCoreApplication::translate("errors", words);
}

QString amount(const Error& error, const char* name) {
  const double value = text(error.arg(name)).toDouble();
  const QLocale locale;
  return error.arg("unit") == "px"
             ? tr("%1 megapixels").arg(locale.toString(value / 1e6, 'f', 0))
             : tr("%1 MB").arg(locale.toString(value / (1024.0 * 1024.0), 'f', 0));
}

ErrorWords too_large(const Error& error) {
  return {tr("This picture is too large: %1.").arg(amount(error, "is")),
          tr("The file is as it was."),
          tr("Up to %1 are taken in. Save it smaller.").arg(amount(error, "limit"))};
}

ErrorWords of_reading(const Error& error) {
  const QString as_it_was = tr("The file is as it was.");
  const std::string_view cause = error.arg("cause");
  if (error.code == Code::TooLarge) return too_large(error);
  if (error.code == Code::Missing)
    return {tr("This file is empty."), as_it_was, tr("Copy it from the camera again.")};
  if (cause == "format")
    return {tr("This is a %1 file.").arg(text(error.arg("format")).toUpper()), as_it_was,
            tr("Set the camera to JPEG, or save it as JPEG or PNG.")};
  if (cause == "animated") return {tr("This picture moves."), as_it_was, tr("Choose a still one.")};
  if (cause == "not a picture")
    return {tr("This is not a picture."), as_it_was, tr("Choose a JPEG or PNG file.")};
  return {tr("This picture is damaged or cut short."), as_it_was,
          tr("Copy it from the camera again.")};
}

ErrorWords of_file(const Error& error) {
  const QString as_it_was = tr("The file is as it was.");
  if (error.code == Code::TooLarge) return too_large(error);
  if (error.code == Code::NoSuchFile)
    return {tr("This file is gone."), tr("All pictures that were kept are here."),
            tr("Put the card back, or choose another file.")};
  if (error.code == Code::NotAllowed)
    return {tr("This is no file of this device."), as_it_was,
            tr("Save it here first, then choose it.")};
  return {tr("This file cannot be read."), as_it_was, tr("Choose pictures, not folders.")};
}

ErrorWords of_camera(const Error& error) {
  const QString saved = tr("All pictures that were kept are here.");
  const std::string_view cause = error.arg("cause");
  if (cause == "no camera")
    return {tr("There is no camera on this device."), saved, tr("Take pictures in from files.")};
  if (cause == "unplugged")
    return {tr("The camera is unplugged."), saved, tr("Plug it in, or take from files.")};
  if (cause == "stalled")
    return {tr("The camera gives no picture."), saved, tr("Start it again, or take from files.")};
  if (cause == "not ready" || cause == "stopped")
    return {tr("The camera was not ready."), saved, tr("Take it again.")};
  return {tr("The camera cannot be used: %1").arg(text(cause)), saved,
          tr("Close what else uses it, or take from files.")};
}
}  // namespace

std::optional<ErrorWords> picture_error_words(const Error& error) {
  if (error.subject == "camera" &&
      (error.operation == "take a picture" || error.operation == "start"))
    return of_camera(error);
  if (error.operation == "read a picture") return of_reading(error);
  if (error.operation == "take in a picture") return of_file(error);
  if (error.operation == "keep a picture" && error.code == Code::AlreadyDone)
    return ErrorWords{tr("This picture is already here."), tr("It is kept once."),
                      tr("Choose another one.")};
  return std::nullopt;
}

}  // namespace jambline::screens
