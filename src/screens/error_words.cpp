#include <QCoreApplication>

#include "screens/correct_words.h"
#include "screens/picture_error_words.h"
#include "screens/text.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
QString error_tr(const char* words) {
  return QCoreApplication::translate("errors", words);
}

struct Lines {
  const char* what;  // %1: the subject, %2: what was tried, %3 and %4: from the arguments
  const char* kept;
  const char* todo;
};

constexpr const char* nothing = QT_TRANSLATE_NOOP("errors", "Nothing was changed.");
constexpr const char* kept = QT_TRANSLATE_NOOP("errors", "All that was saved before is kept.");
constexpr const char* kept_on_screen =
    QT_TRANSLATE_NOOP("errors", "All entries are shown. Nothing is written.");
constexpr const char* form = QT_TRANSLATE_NOOP("errors", "The form is as it was.");
constexpr const char* choose_again =
    QT_TRANSLATE_NOOP("errors", "Choose another file, or type the hours.");

// What the parts of the program call a thing, and what a person calls it.
QString subject_of(const Error& error) {
  struct Name {
    std::string_view code;
    const char* words;
  };
  static constexpr Name names[] = {
      {"log.db", QT_TRANSLATE_NOOP("errors", "the log of this device")},
      {"device.key", QT_TRANSLATE_NOOP("errors", "the key of this device")},
      {"device.toml", QT_TRANSLATE_NOOP("errors", "the settings of this device")},
      {"drafts.db", QT_TRANSLATE_NOOP("errors", "half-typed forms")},
      {"shelf.db", QT_TRANSLATE_NOOP("errors", "the list of cars")},
      {"people.secret", QT_TRANSLATE_NOOP("errors", "the PINs of the people")},
      {"car", QT_TRANSLATE_NOOP("errors", "this car")},
      {"person", QT_TRANSLATE_NOOP("errors", "this person")},
      {"operation", QT_TRANSLATE_NOOP("errors", "this operation")},
      {"mark", QT_TRANSLATE_NOOP("errors", "this mark")},
      {"release", QT_TRANSLATE_NOOP("errors", "this release")},
      {"panels", QT_TRANSLATE_NOOP("errors", "the panels")},
      {"booth", QT_TRANSLATE_NOOP("errors", "this booth")},
      {"booth event", QT_TRANSLATE_NOOP("errors", "what was logged of the booth")},
      {"film reading", QT_TRANSLATE_NOOP("errors", "this reading")},
      {"marks", QT_TRANSLATE_NOOP("errors", "a mark")},
      {"spot", QT_TRANSLATE_NOOP("errors", "the number of the spot")},
      {"place", QT_TRANSLATE_NOOP("errors", "the place of the spot")},
      {"areas", QT_TRANSLATE_NOOP("errors", "the number of areas")},
      {"area", QT_TRANSLATE_NOOP("errors", "the size of the areas")},
      {"minutes", QT_TRANSLATE_NOOP("errors", "the minutes")},
      {"time", QT_TRANSLATE_NOOP("errors", "the time")},
      {"plate", QT_TRANSLATE_NOOP("errors", "the plate")},
      {"title", QT_TRANSLATE_NOOP("errors", "the name of an operation")},
      {"name", QT_TRANSLATE_NOOP("errors", "the name")},
      {"zone", QT_TRANSLATE_NOOP("errors", "the time zone")},
      {"reason", QT_TRANSLATE_NOOP("errors", "the reason")},
      {"text", QT_TRANSLATE_NOOP("errors", "the note")},
      {"note", QT_TRANSLATE_NOOP("errors", "the note")},
      {"color", QT_TRANSLATE_NOOP("errors", "the color")},
      {"size", QT_TRANSLATE_NOOP("errors", "the size of the mark")},
      {"estimate", QT_TRANSLATE_NOOP("errors", "the hours")},
      {"promise", QT_TRANSLATE_NOOP("errors", "the promised time")},
      {"to", QT_TRANSLATE_NOOP("errors", "who takes it over")},
      {"entry", QT_TRANSLATE_NOOP("errors", "the entry")},
      {"act", QT_TRANSLATE_NOOP("errors", "an act to take back")},
      {"append", QT_TRANSLATE_NOOP("errors", "this act")},
      {"receipt", QT_TRANSLATE_NOOP("errors", "an entry from another device")},
  };
  const std::string_view called = error.subject.empty() ? error.operation : error.subject;
  for (const Name& name : names)
    if (called == name.code) return error_tr(name.words);
  if (const auto panel = from_word<job::Panel>(error.subject))
    return words_of(*panel, job::BodyShape::FourDoorSedan);
  if (const auto stage = from_word<job::Stage>(error.subject)) return words_of(*stage);
  if (const auto step = from_word<job::Step>(error.subject)) return words_of(*step);
  if (const auto item = from_word<job::CutItem>(error.subject)) return words_of(*item);
  if (const auto round = from_word<job::Round>(error.subject)) return words_of(*round);
  return text(called).section(QChar('/'), -1);  // of a path its last name
}

bool of_clock(const Error& error) {
  return error.code == Code::OutOfRange && error.subject == "clock";
}

Lines lines_of_clock(const Error& error) {
  static constexpr const char* counted = QT_TRANSLATE_NOOP(
      "errors", "Entries keep their order and carry a mark. Hours go by the timer of the device.");
  static constexpr const char* set =
      QT_TRANSLATE_NOOP("errors", "Set date and time of this device.");
  if (error.arg("flag") == "before_2025")
    return {QT_TRANSLATE_NOOP("errors", "The clock of this device stands before 2025."), counted,
            set};
  if (error.arg("flag") == "stepped_back")
    return {QT_TRANSLATE_NOOP("errors", "The clock of this device went back."), counted, set};
  return {QT_TRANSLATE_NOOP("errors", "The clock of this device jumped."), counted, set};
}

Lines lines_of_key(const Error& error) {
  static constexpr const char* put_back = QT_TRANSLATE_NOOP(
      "errors", "Put the key of this device back into its folder, then start again.");
  if (error.code == Code::WrongKey)
    return {QT_TRANSLATE_NOOP("errors", "The key in this folder belongs to another device."),
            kept_on_screen, put_back};
  if (error.code == Code::NoSuchFile)
    return {QT_TRANSLATE_NOOP("errors", "The key of this device is gone."), kept_on_screen,
            put_back};
  return {QT_TRANSLATE_NOOP("errors", "The key of this device cannot be read."), kept_on_screen,
          put_back};
}

Lines lines_of_drafts(const Error& error) {
  static constexpr const char* entries =
      QT_TRANSLATE_NOOP("errors", "All entries are kept, and what is on the screen.");
  if (error.code == Code::DiskFull)
    return {QT_TRANSLATE_NOOP("errors", "Half-typed forms are not kept. The device is full."),
            entries, QT_TRANSLATE_NOOP("errors", "Make room on this device.")};
  return {QT_TRANSLATE_NOOP("errors", "Half-typed forms cannot be kept."), entries,
          QT_TRANSLATE_NOOP("errors", "Finish a form before you close the program.")};
}

Lines lines_of_list(const Error& error) {
  static constexpr const char* saved = QT_TRANSLATE_NOOP("errors", "All entries are saved.");
  if (error.code == Code::DiskFull)
    return {QT_TRANSLATE_NOOP("errors", "The list of cars could not be kept. The device is full."),
            saved, QT_TRANSLATE_NOOP("errors", "Make room on this device.")};
  return {QT_TRANSLATE_NOOP("errors", "The list of cars could not be kept."), saved,
          QT_TRANSLATE_NOOP("errors", "Start the program again. It makes a new list.")};
}

Lines lines_of_settings(const Error& error) {
  if (error.operation == "keep the settings")
    return {QT_TRANSLATE_NOOP("errors", "The settings could not be kept."),
            QT_TRANSLATE_NOOP("errors", "They hold until the program is closed."),
            QT_TRANSLATE_NOOP("errors", "Make room, or make the folder writable.")};
  return {QT_TRANSLATE_NOOP("errors", "The settings of this device cannot be read."),
          QT_TRANSLATE_NOOP("errors", "The usual settings hold. All entries are kept."),
          QT_TRANSLATE_NOOP("errors", "Choose them again.")};
}

Lines lines_of_estimate(const Error& error) {
  switch (error.code) {
    case Code::NoSuchFile:
      return {QT_TRANSLATE_NOOP("errors", "There is no such file: %1."), form,
              QT_TRANSLATE_NOOP("errors", "Check the name and try again.")};
    case Code::Missing:
      if (error.arg("cause") == "semicolons")
        return {QT_TRANSLATE_NOOP("errors", "The columns of this file are split by semicolons."),
                form,
                QT_TRANSLATE_NOOP("errors",
                                  "Save it with commas between the columns, then try again.")};
      return {
          QT_TRANSLATE_NOOP("errors", "This file has no column named %3."), form,
          QT_TRANSLATE_NOOP("errors", "Its first row must name the columns: stage, title, hours.")};
    case Code::TooLarge:
      if (error.subject == "rows")
        return {QT_TRANSLATE_NOOP("errors", "This file has more than %4 rows."), form,
                choose_again};
      return {QT_TRANSLATE_NOOP("errors", "This file is too large for an estimate."), form,
              choose_again};
    case Code::Malformed:
      return {
          QT_TRANSLATE_NOOP("errors", "This file is not plain text."), form,
          QT_TRANSLATE_NOOP(
              "errors", "Save it as plain text with commas between the columns, then try again.")};
    default:
      return {QT_TRANSLATE_NOOP("errors", "This file cannot be read."), form, choose_again};
  }
}

Lines lines_of_vin(const Error& error) {
  static constexpr const char* again =
      QT_TRANSLATE_NOOP("errors", "Read it again, or use it as typed.");
  if (!error.arg("length").empty())
    return {QT_TRANSLATE_NOOP("errors", "This VIN has %4 signs. It should have 17."), nothing,
            again};
  return {QT_TRANSLATE_NOOP("errors", "This VIN does not check. Look at place %4."), nothing,
          again};
}

// The wrong reading stays on the keypad: nothing is thrown away by a refusal.
Lines lines_of_film(const Error& error) {
  static constexpr const char* typed =
      QT_TRANSLATE_NOOP("errors", "What was typed is still there.");
  static constexpr const char* again =
      QT_TRANSLATE_NOOP("errors", "Read that spot again, or correct the number.");
  if (error.subject == "reading")
    return {QT_TRANSLATE_NOOP("errors", "No gauge shows %4 here."), typed, again};
  if (error.subject == "readings" && error.code == Code::Missing)
    return {QT_TRANSLATE_NOOP("errors", "A spot takes three readings or more."), typed,
            QT_TRANSLATE_NOOP("errors", "Read the same spot again.")};
  if (error.subject == "readings")
    return {QT_TRANSLATE_NOOP("errors", "A spot takes at most %4 readings."), typed,
            QT_TRANSLATE_NOOP("errors", "Take another spot.")};
  if (error.subject == "gauge")
    return {QT_TRANSLATE_NOOP("errors", "This gauge reads nothing on plastic or carbon."), typed,
            QT_TRANSLATE_NOOP("errors", "Use an ultrasonic gauge, or the coats.")};
  if (error.subject == "no clear yet")
    return {QT_TRANSLATE_NOOP("errors", "Before base there is no clear to read."), typed,
            QT_TRANSLATE_NOOP("errors", "Read the total.")};
  if (error.subject == "thinner than before base")
    return {QT_TRANSLATE_NOOP("errors", "This is thinner than before the paint was on."), typed,
            again};
  if (error.subject == "thicker than before")
    return {QT_TRANSLATE_NOOP("errors", "This is thicker than before it was cut."), typed, again};
  return {QT_TRANSLATE_NOOP("errors", "More would have been taken than any work takes."), typed,
          again};
}

bool of_film(const Error& error) {
  if (error.operation != "read the film") return false;
  for (const std::string_view subject :
       {"reading", "readings", "gauge", "no clear yet", "thinner than before base",
        "thicker than before", "too much taken"})
    if (error.subject == subject) return true;
  return false;
}

bool of_correction(const Error& error) {
  return (error.operation == "finish a round" || error.operation == "say what threw it" ||
          error.operation == "check before cutting" || error.operation == "plan the correction") &&
         (error.code == Code::NotAllowed || error.code == Code::NotYet);
}

Lines lines_of_correction(const Error& error) {
  if (error.operation == "check before cutting")
    return {QT_TRANSLATE_NOOP("errors", "Do not cut."), nothing,
            QT_TRANSLATE_NOOP("errors", "Matte, textured or film is never cut. Tell the manager.")};
  if (error.operation == "plan the correction")
    return error.arg("what") == "marks"
               ? Lines{QT_TRANSLATE_NOOP("errors", "No mark is open on this car: %1."), nothing,
                       QT_TRANSLATE_NOOP("errors", "Marks are placed when it is looked over.")}
               : Lines{QT_TRANSLATE_NOOP("errors", "Nobody has looked over this car yet: %1."),
                       nothing, QT_TRANSLATE_NOOP("errors", "Look it over first.")};
  if (error.operation == "say what threw it")
    return {QT_TRANSLATE_NOOP("errors", "No mark was placed on this car yet: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Look over the car first.")};
  if (error.arg("what") == "before you cut")
    return {QT_TRANSLATE_NOOP("errors", "Before you cut is not answered on this car: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Answer before you cut first.")};
  if (error.code == Code::NotYet)
    return {QT_TRANSLATE_NOOP("errors", "Nobody looked at this panel yet: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Look it over first.")};
  if (!error.arg("finish").empty())
    return {QT_TRANSLATE_NOOP("errors", "Do not cut: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Matte, textured or film is never cut.")};
  return {QT_TRANSLATE_NOOP("errors", "This panel is painted again: %1."), nothing,
          QT_TRANSLATE_NOOP("errors", "Nothing more is cut on it.")};
}

bool of_pictures(const Error& error) {
  return (error.operation == "finish a stage" && error.arg("what") == "pictures") ||
         (error.operation == "keep a picture" && error.code == Code::NotYet) ||
         (error.operation == "keep a picture" && error.code == Code::NoSuchFile) ||
         (error.operation == "set a shot list" && error.code == Code::NotAllowed);
}

Lines lines_of_pictures(const Error& error) {
  if (error.operation == "finish a stage")
    return {QT_TRANSLATE_NOOP("errors", "Pictures are missing: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Take them, or say why it goes on without them.")};
  if (error.operation == "set a shot list")
    return {QT_TRANSLATE_NOOP("errors", "Only a manager changes the shots: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Ask a manager.")};
  if (error.code == Code::NoSuchFile)
    return {QT_TRANSLATE_NOOP("errors", "The file of this picture is gone."), nothing,
            QT_TRANSLATE_NOOP("errors", "Take it again.")};
  return {QT_TRANSLATE_NOOP("errors", "This picture proves little: %1."), nothing,
          QT_TRANSLATE_NOOP("errors", "Take it again, or keep it anyway.")};
}

// What stops a gun is said first; nothing here ever sounds like leave to go on.
Lines lines_of_air(const Error& error) {
  if (error.arg("class") == "stop")
    return {QT_TRANSLATE_NOOP("errors", "Do not spray: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Put it right first. There is no way round.")};
  if (error.operation == "start spraying" && error.arg("what") == "record")
    return {QT_TRANSLATE_NOOP("errors", "The shop's records do not show it: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Enter the record, or go on by name and reason.")};
  if (error.operation == "start spraying" && error.code == Code::Missing)
    return {QT_TRANSLATE_NOOP("errors", "This is not answered yet: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Answer it, or leave the gun where it is.")};
  if (error.operation == "start spraying" && error.code == Code::NotAllowed)
    return {QT_TRANSLATE_NOOP("errors", "Nothing is sprayed in a mixing room: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Choose the booth.")};
  if (error.operation == "start spraying")
    return {QT_TRANSLATE_NOOP("errors", "You already hold a gun in %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Put it down there first.")};
  if (error.operation == "put the gun down")
    return {QT_TRANSLATE_NOOP("errors", "No gun is up in %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Look at the booth again.")};
  if (error.code == Code::AlreadyRunning)
    return {QT_TRANSLATE_NOOP("errors", "The bake already runs: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "End it when its time is over.")};
  if (error.code == Code::NotRunning)
    return {QT_TRANSLATE_NOOP("errors", "No bake runs: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Look at the car again.")};
  if (error.arg("what") == "clearance")
    return {QT_TRANSLATE_NOOP("errors", "The time is not over: %1."),
            QT_TRANSLATE_NOOP("errors", "The count goes on."),
            QT_TRANSLATE_NOOP("errors", "Stay out until it is.")};
  if (error.arg("what") == "drive-away")
    return {QT_TRANSLATE_NOOP("errors", "Do not drive: the time of its glass is not over: %1."),
            nothing, QT_TRANSLATE_NOOP("errors", "The keys stay with the glass tech until then.")};
  return {QT_TRANSLATE_NOOP("errors", "The carmaker's bake limit is not read yet: %1."), nothing,
          QT_TRANSLATE_NOOP("errors", "Read it and enter it first.")};
}

bool of_air(const Error& error) {
  return error.arg("class") == "stop" || error.arg("what") == "clearance" ||
         error.arg("what") == "bake limit" || error.arg("what") == "drive-away" ||
         (error.operation == "start spraying" &&
          (error.arg("what") == "record" || error.code == Code::Missing ||
           error.code == Code::NotAllowed || error.code == Code::AlreadyRunning)) ||
         (error.code == Code::AlreadyRunning && error.operation == "start the bake") ||
         (error.code == Code::NotRunning &&
          (error.operation == "end the bake" || error.operation == "put the gun down"));
}

bool of_assembly(const Error& error) {
  const auto& what = error.arg("what");
  return ((error.operation == "log a step" || error.operation == "deliver") &&
          (error.code == Code::NotAllowed || what == "before")) ||
         what == "signature" || !error.arg("cycle").empty() ||
         (error.operation == "set a rule" && error.code == Code::NotAllowed);
}

Lines lines_of_assembly(const Error& error) {
  if (!error.arg("cycle").empty())
    return {QT_TRANSLATE_NOOP("errors", "These rules go in a circle: %4."), nothing,
            QT_TRANSLATE_NOOP("errors", "Turn one of them round, or retire it.")};
  if (error.operation == "set a rule")
    return {QT_TRANSLATE_NOOP("errors", "This rule cannot be weakened: %1."), nothing,
            QT_TRANSLATE_NOOP("errors",
                              "It protects who drives the car, and is a manager's to add "
                              "to.")};
  if (error.arg("what") == "signature")
    return {QT_TRANSLATE_NOOP("errors", "Points are open that nobody signed for: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "Close them, or have the customer sign for them.")};
  if (error.code == Code::NotAllowed)
    return {QT_TRANSLATE_NOOP("errors", "Not before: %1."), nothing,
            QT_TRANSLATE_NOOP("errors", "There is no way round this one.")};
  return {QT_TRANSLATE_NOOP("errors", "Something comes first: %1."), nothing,
          QT_TRANSLATE_NOOP("errors", "Do it first, or say why it goes on without.")};
}

Lines lines_of_log(Code code) {
  static constexpr const char* as_it_is = QT_TRANSLATE_NOOP("errors", "It was left as it is.");
  switch (code) {
    case Code::DatabaseDamaged:
      return {QT_TRANSLATE_NOOP("errors", "The log of this device is damaged."), as_it_is,
              QT_TRANSLATE_NOOP(
                  "errors",
                  "Copy the folder of this shop to another place. Then use its last good copy.")};
    case Code::NewerSchema:
      return {QT_TRANSLATE_NOOP("errors", "This shop was written by a newer version."),
              kept_on_screen, QT_TRANSLATE_NOOP("errors", "Update the program on this device.")};
    default:
      return {QT_TRANSLATE_NOOP("errors", "The log of this device does not hold together."),
              as_it_is,
              QT_TRANSLATE_NOOP(
                  "errors", "Copy the folder of this shop to another place and tell the manager.")};
  }
}

Lines lines_of(const Error& error) {
  if (of_clock(error)) return lines_of_clock(error);
  if (error.subject == "device.key") return lines_of_key(error);
  if (error.subject == "drafts.db") return lines_of_drafts(error);
  if (error.subject == "shelf.db") return lines_of_list(error);
  if (error.subject == "device.toml") return lines_of_settings(error);
  if (error.operation == "read the estimate") return lines_of_estimate(error);
  if (of_film(error)) return lines_of_film(error);
  if (of_correction(error)) return lines_of_correction(error);
  if (of_pictures(error)) return lines_of_pictures(error);
  if (of_air(error)) return lines_of_air(error);
  if (of_assembly(error)) return lines_of_assembly(error);
  switch (error.code) {
    case Code::DiskFull:
      if (error.operation == "make")
        return {QT_TRANSLATE_NOOP("errors", "There is no room for a shop. The device is full."),
                nothing,
                QT_TRANSLATE_NOOP("errors", "Make room on this device, then start again.")};
      if (error.operation == "open")
        return {QT_TRANSLATE_NOOP("errors", "Nothing can be saved. The device is full."),
                kept_on_screen,
                QT_TRANSLATE_NOOP("errors", "Make room on this device, then start again.")};
      return {QT_TRANSLATE_NOOP("errors", "This was not saved. The device is full."), kept,
              QT_TRANSLATE_NOOP("errors", "Make room on this device, then do it again.")};
    case Code::ReadOnly:
      if (error.operation == "make")
        return {QT_TRANSLATE_NOOP("errors", "No shop can be made in this folder."), nothing,
                QT_TRANSLATE_NOOP("errors", "Make the folder writable, then start again.")};
      if (error.operation == "read")
        return {QT_TRANSLATE_NOOP("errors", "The folder of this shop may not be read."),
                QT_TRANSLATE_NOOP("errors", "It was left as it is."),
                QT_TRANSLATE_NOOP("errors", "Ask who looks after this device, then start again.")};
      return {QT_TRANSLATE_NOOP("errors", "Nothing can be written in the folder of this shop."),
              kept_on_screen,
              QT_TRANSLATE_NOOP("errors", "Make the folder writable, then start again.")};
    case Code::NoSuchFile:
      return {QT_TRANSLATE_NOOP("errors", "This is not there: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Check the folder and its name.")};
    case Code::FileFailed:
      return {
          QT_TRANSLATE_NOOP("errors", "This device could not read or write: %1."), kept,
          QT_TRANSLATE_NOOP("errors", "Try it again. If it stays so, start the program again.")};
    case Code::FolderInUse:
      return {QT_TRANSLATE_NOOP("errors", "This shop is already open in another window."),
              QT_TRANSLATE_NOOP("errors", "That window has all entries."),
              QT_TRANSLATE_NOOP("errors", "Go on in that window, or close it first.")};
    case Code::DatabaseDamaged:
      return lines_of_log(error.code);
    case Code::NewerSchema:
      if (error.subject == "log.db") return lines_of_log(error.code);
      return {QT_TRANSLATE_NOOP("errors", "This car has entries from a newer version: %1."),
              QT_TRANSLATE_NOOP("errors", "You can read it. Nothing is changed."),
              QT_TRANSLATE_NOOP("errors", "Update the program on this device.")};
    case Code::ChainBroken:
    case Code::BadSignature:
    case Code::BadHash:
    case Code::Fork:
      return lines_of_log(error.code);
    case Code::NotAdmitted:
    case Code::Revoked:
      return {QT_TRANSLATE_NOOP("errors", "This device is not admitted to this shop."), nothing,
              QT_TRANSLATE_NOOP("errors", "Let the manager admit it.")};
    case Code::WrongShop:
    case Code::WrongKey:
      return {QT_TRANSLATE_NOOP("errors", "This belongs to another shop or device."), nothing,
              QT_TRANSLATE_NOOP("errors", "Ask the manager which one it should be.")};
    case Code::TooLarge:
      return {QT_TRANSLATE_NOOP("errors", "This is too long: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Make it shorter.")};
    case Code::NotErasable:
      return {QT_TRANSLATE_NOOP("errors", "This cannot be erased: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Take it back instead.")};
    case Code::Stopped:
      return {QT_TRANSLATE_NOOP("errors", "It was stopped before its end."), nothing,
              QT_TRANSLATE_NOOP("errors", "Start it again.")};
    case Code::Malformed:
      return {QT_TRANSLATE_NOOP("errors", "This cannot be read: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Check what was typed.")};
    case Code::OutOfRange:
      if (error.subject == "VIN")
        return {QT_TRANSLATE_NOOP("errors", "A VIN has 1 to 32 signs."), nothing,
                QT_TRANSLATE_NOOP("errors", "Read it again.")};
      if (error.subject == "time" && error.operation == "amend the clock")
        return {QT_TRANSLATE_NOOP("errors",
                                  "This lies before the clock's tap before it, or after the next."),
                nothing,
                QT_TRANSLATE_NOOP("errors", "Amend that one first, or type another time.")};
      if (error.subject == "time" && error.operation == "start the clock")
        return {QT_TRANSLATE_NOOP("errors", "The clock did something on this car after that time."),
                nothing,
                QT_TRANSLATE_NOOP("errors", "Say a later time, or amend what it did before.")};
      if (error.subject == "time" && error.operation == "stop the clock")
        return {QT_TRANSLATE_NOOP("errors", "It would end before it began."), nothing,
                QT_TRANSLATE_NOOP("errors", "Say a later time, or amend its start first.")};
      return {QT_TRANSLATE_NOOP("errors", "This is out of range: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Type it again.")};
    case Code::Missing:
      return {QT_TRANSLATE_NOOP("errors", "Something is missing: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Fill it in.")};
    case Code::Unknown:
      return {QT_TRANSLATE_NOOP("errors", "This is not known here: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Look at it again.")};
    case Code::VinCheckFails:
      return lines_of_vin(error);
    case Code::NotRunning:
      return {QT_TRANSLATE_NOOP("errors", "No clock runs for %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Start one first.")};
    case Code::AlreadyRunning:
      return {QT_TRANSLATE_NOOP("errors", "The clock of %1 already runs on this."),
              QT_TRANSLATE_NOOP("errors", "It goes on."),
              QT_TRANSLATE_NOOP("errors", "Stop it when the work is done.")};
    case Code::AlreadyDone:
      if (error.operation == "add a person" || error.operation == "add a rack" ||
          error.operation == "add a booth")
        return {QT_TRANSLATE_NOOP("errors", "This name is already there: %1."), nothing,
                QT_TRANSLATE_NOOP("errors", "Choose another name.")};
      return {QT_TRANSLATE_NOOP("errors", "This is already done: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Who did it stands in the time line.")};
    case Code::NotAllowed:
      if (!error.arg("device").empty())
        return {QT_TRANSLATE_NOOP("errors", "This device may not do this: %2."), nothing,
                QT_TRANSLATE_NOOP("errors", "Do it on a device of the manager.")};
      return {QT_TRANSLATE_NOOP("errors", "Your role may not do this: %2."), nothing,
              QT_TRANSLATE_NOOP("errors", "Ask the manager.")};
    case Code::OutsidePanel:
      return {QT_TRANSLATE_NOOP("errors", "That place is not on the panel."), nothing,
              QT_TRANSLATE_NOOP("errors", "Tap on the panel.")};
    case Code::Disputed:
      return {QT_TRANSLATE_NOOP("errors", "Two answers stand: %1."),
              QT_TRANSLATE_NOOP("errors", "Both are kept."),
              QT_TRANSLATE_NOOP("errors", "Settle which one counts.")};
    case Code::NoContact:
      return {QT_TRANSLATE_NOOP("errors", "The hub does not answer."),
              QT_TRANSLATE_NOOP("errors", "All work is kept here and goes out later."),
              QT_TRANSLATE_NOOP("errors", "Look at the network of this device and at the hub.")};
    case Code::WrongServer:
      return {QT_TRANSLATE_NOOP("errors", "The network answers, but it is not the shop hub."),
              QT_TRANSLATE_NOOP("errors", "All work waits here. Nothing was sent."),
              QT_TRANSLATE_NOOP("errors", "Look which network this device is in.")};
    case Code::Busy:
      return {QT_TRANSLATE_NOOP("errors", "The hub is busy."),
              QT_TRANSLATE_NOOP("errors", "All work is kept here and goes out later."),
              QT_TRANSLATE_NOOP("errors", "Nothing. It is tried again by itself.")};
    case Code::NotYet:
      if (error.subject == "admission")
        return {QT_TRANSLATE_NOOP("errors", "This device is not admitted yet."), nothing,
                QT_TRANSLATE_NOOP("errors", "Let a manager compare the six digits.")};
      if (error.subject == "tail")
        return {QT_TRANSLATE_NOOP("errors", "This folder is older than what the hub knows of it."),
                nothing,
                QT_TRANSLATE_NOOP("errors", "Connect to the hub. It goes on when all is back.")};
      if (error.subject == "time")
        return {QT_TRANSLATE_NOOP("errors", "This time is still to come."), nothing,
                QT_TRANSLATE_NOOP("errors", "Say when it was done, or now.")};
      return {QT_TRANSLATE_NOOP("errors", "Something else comes first: %1."), nothing,
              QT_TRANSLATE_NOOP("errors", "Say that it is clean, with edges and back looked at.")};
  }
  return {QT_TRANSLATE_NOOP("errors", "It did not work: %2."), kept,
          QT_TRANSLATE_NOOP("errors", "Try it again.")};
}

// "hood fitted, then fender fitted, then hood fitted", in the words of people.
QString circle_words(const QString& codes) {
  QStringList out;
  for (const QString& code : codes.split(QStringLiteral(", then "))) {
    const auto step = from_word<job::Step>(code.toStdString());
    out << (step ? words_of(*step) : code);
  }
  return out.join(error_tr(QT_TRANSLATE_NOOP("errors", ", then ")));
}

QString argument(const Error& error) {
  if (error.subject == "reading")
    return text(error.arg("value")) + QChar(' ') +
           (error.arg("unit") == "mil" ? error_tr(QT_TRANSLATE_NOOP("errors", "mil"))
                                       : error_tr(QT_TRANSLATE_NOOP("errors", "µm")));
  if (!error.arg("cycle").empty()) return circle_words(text(error.arg("cycle")));
  for (const char* name : {"length", "place", "limit"})
    if (!error.arg(name).empty()) return text(error.arg(name));
  return {};
}
}  // namespace

bool only_to_know(const Error& error) {
  return of_clock(error) || error.subject == "drafts.db" || error.subject == "shelf.db" ||
         error.subject == "device.toml";
}

ErrorWords words_of(const Error& error) {
  if (auto words = picture_error_words(error)) return *words;
  const Lines lines = lines_of(error);
  // One pass, so that a name with a percent sign in it stays as it is.
  QString what;
  const QString pattern = error_tr(lines.what);
  for (qsizetype at = 0; at < pattern.size(); ++at) {
    const int place =
        pattern[at] == QChar('%') && at + 1 < pattern.size() ? pattern[at + 1].digitValue() : -1;
    if (place < 1 || place > 4) {
      what += pattern[at];
      continue;
    }
    ++at;
    what += place == 1   ? subject_of(error)
            : place == 2 ? subject_of({error.code, error.operation, {}, {}})
            : place == 3 ? text(error.arg("field"))
                         : argument(error);
  }
  return {what, error_tr(lines.kept), error_tr(lines.todo)};
}

}  // namespace jambline::screens
