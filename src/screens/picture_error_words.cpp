#include "screens/picture_error_words.h"

#include <QCoreApplication>
#include <QLocale>

#include "screens/text.h"

namespace jambline::screens {

namespace {
QString picture_error_tr(const char* words) {
  return QCoreApplication::translate("errors", words);
}

QString amount(const Error& error, const char* name) {
  const double value = text(error.arg(name)).toDouble();
  const QLocale locale;
  return error.arg("unit") == "px"
             ? picture_error_tr("%1 megapixels").arg(locale.toString(value / 1e6, 'f', 0))
             : picture_error_tr("%1 MB").arg(locale.toString(value / (1024.0 * 1024.0), 'f', 0));
}

ErrorWords too_large(const Error& error) {
  return {picture_error_tr("This picture is too large: %1.").arg(amount(error, "is")),
          picture_error_tr("The file is as it was."),
          picture_error_tr("Up to %1 are taken in. Save it smaller.").arg(amount(error, "limit"))};
}

ErrorWords of_reading(const Error& error) {
  const QString as_it_was = picture_error_tr("The file is as it was.");
  const std::string_view cause = error.arg("cause");
  if (error.code == Code::TooLarge) return too_large(error);
  if (error.code == Code::Missing)
    return {picture_error_tr("This file is empty."), as_it_was,
            picture_error_tr("Copy it from the camera again.")};
  if (cause == "format")
    return {picture_error_tr("This is a %1 file.").arg(text(error.arg("format")).toUpper()),
            as_it_was, picture_error_tr("Set the camera to JPEG, or save it as JPEG or PNG.")};
  if (cause == "animated")
    return {picture_error_tr("This picture moves."), as_it_was,
            picture_error_tr("Choose a still one.")};
  if (cause == "not a picture")
    return {picture_error_tr("This is not a picture."), as_it_was,
            picture_error_tr("Choose a JPEG or PNG file.")};
  return {picture_error_tr("This picture is damaged or cut short."), as_it_was,
          picture_error_tr("Copy it from the camera again.")};
}

ErrorWords of_file(const Error& error) {
  const QString as_it_was = picture_error_tr("The file is as it was.");
  if (error.code == Code::TooLarge) return too_large(error);
  if (error.code == Code::NoSuchFile)
    return {picture_error_tr("This file is gone."),
            picture_error_tr("All pictures that were kept are here."),
            picture_error_tr("Put the card back, or choose another file.")};
  if (error.code == Code::NotAllowed)
    return {picture_error_tr("This is no file of this device."), as_it_was,
            picture_error_tr("Save it here first, then choose it.")};
  return {picture_error_tr("This file cannot be read."), as_it_was,
          picture_error_tr("Choose pictures, not folders.")};
}

ErrorWords of_camera(const Error& error) {
  const QString saved = picture_error_tr("All pictures that were kept are here.");
  const std::string_view cause = error.arg("cause");
  if (cause == "no camera")
    return {picture_error_tr("There is no camera on this device."), saved,
            picture_error_tr("Take pictures in from files.")};
  if (cause == "unplugged")
    return {picture_error_tr("The camera is unplugged."), saved,
            picture_error_tr("Plug it in, or take from files.")};
  if (cause == "stalled")
    return {picture_error_tr("The camera gives no picture."), saved,
            picture_error_tr("Start it again, or take from files.")};
  if (cause == "not ready" || cause == "stopped")
    return {picture_error_tr("The camera was not ready."), saved,
            picture_error_tr("Take it again.")};
  return {picture_error_tr("The camera cannot be used: %1").arg(text(cause)), saved,
          picture_error_tr("Close what else uses it, or take from files.")};
}
}  // namespace

std::optional<ErrorWords> picture_error_words(const Error& error) {
  if (error.subject == "camera" &&
      (error.operation == "take a picture" || error.operation == "start"))
    return of_camera(error);
  if (error.operation == "read a picture") return of_reading(error);
  if (error.operation == "take in a picture") return of_file(error);
  if (error.operation == "keep a picture" && error.code == Code::AlreadyDone)
    return ErrorWords{picture_error_tr("This picture is already here."),
                      picture_error_tr("It is kept once."),
                      picture_error_tr("Choose another one.")};
  return std::nullopt;
}

}  // namespace jambline::screens
