#include "app/command_line_words.h"

namespace jambline::app {

// No default: a new code without words is a compiler warning.
ErrorWords words_for(Code code) {
  switch (code) {
    case Code::DiskFull:
      return {"the disk is full", "all that was saved before; nothing is half written",
              "make room on the disk and do it again"};
    case Code::ReadOnly:
      return {"this may not be written", "everything, as it was",
              "give yourself the right to write there, or copy the folder to another place"};
    case Code::NoSuchFile:
      return {"there is no such file or folder", "everything", "look at the name"};
    case Code::FileFailed:
      return {"the system refused the file", "all that was saved before",
              "look at the disk and at the cause given above"};
    case Code::FolderInUse:
      return {"another copy of the program works in this folder", "everything",
              "close the other copy, or use that one"};
    case Code::DatabaseDamaged:
      return {"the log's file is damaged or is no log", "the file is left exactly as it is",
              "copy the folder away first, then import the shop from its last export"};
    case Code::NewerSchema:
      return {"a newer version of the program wrote this log", "everything; it can be read",
              "use the newer version to write"};
    case Code::ChainBroken:
      return {"an entry does not follow from the one before it", "the entries before it are proven",
              "keep the folder as it is and compare it with an export or another device"};
    case Code::BadSignature:
      return {"a signature does not verify", "the entries before it are proven",
              "keep the folder as it is and compare it with an export or another device"};
    case Code::BadHash:
      return {"bytes are not those that were written", "the entries before it are proven",
              "keep the folder as it is and compare it with an export or another device"};
    case Code::Fork:
      return {"one device has two entries with one number", "the first of them",
              "find out whether the device's folder was copied and used twice"};
    case Code::NotAdmitted:
      return {"the device is no member of the shop", "everything that members wrote",
              "let a manager admit the device"};
    case Code::Revoked:
      return {"the device was revoked before this entry", "its entries up to the cut",
              "ask a manager what to do with the later work"};
    case Code::WrongShop:
      return {"this is of another shop", "everything of this shop",
              "compare the fingerprint with the one you know"};
    case Code::WrongKey:
      return {"the key file is another device's", "everything, as it was",
              "put this device's own device.key back"};
    case Code::TooLarge:
      return {"this is larger than the limit", "everything else", "make it smaller"};
    case Code::NotErasable:
      return {"payloads of this kind are never erased", "the entry, as it was",
              "withdraw it by a new entry instead"};
    case Code::Stopped:
      return {"it was stopped before the end", "what was finished until then", "start it again"};
    case Code::Malformed:
      return {"the bytes or words do not fit the format", "everything else",
              "look at the place given above"};
    case Code::OutOfRange:
      return {"a number is outside its range", "everything, as it was",
              "give a number within the range"};
    case Code::Missing:
      return {"something that is needed is not there", "everything, as it was", "fill it in"};
    case Code::Unknown:
      return {"this names something that does not exist", "everything, as it was",
              "look at the name"};
    case Code::VinCheckFails:
      return {"the VIN's check digit does not fit", "everything, as it was",
              "compare it sign by sign with the plate"};
    case Code::NotRunning:
      return {"no clock runs", "everything, as it was", "start one first"};
    case Code::AlreadyRunning:
      return {"this clock runs already", "the running clock", "stop or switch it"};
    case Code::AlreadyDone:
      return {"this was done before", "what is there already",
              "nothing, or use another name or folder"};
    case Code::NoContact:
      return {"nobody answers there", "everything, as it was",
              "look at the address, the network and whether the hub runs"};
    case Code::WrongServer:
      return {"somebody answers who is not this shop's hub", "everything; nothing was sent",
              "look at the address and at the network"};
    case Code::Busy:
      return {"the other side is busy", "everything, as it was", "try again in a while"};
    case Code::NotAllowed:
      return {"this role may not do that", "everything, as it was", "ask a manager"};
    case Code::OutsidePanel:
      return {"the mark lies outside its panel", "everything, as it was", "put it on the panel"};
    case Code::Disputed:
      return {"two answers stand against each other", "both answers",
              "let a person settle which one holds"};
    case Code::NotYet:
      return {"something else has to come first", "everything, as it was", "do that first"};
  }
  return {"something unknown happened", "all that was saved before", "try again"};
}

std::string said(const Error& error) {
  const ErrorWords words = words_for(error.code);
  std::string out = error.subject;
  for (const auto& [name, value] : error.args) {
    if (!out.empty()) out += ", ";
    out.append(name).append(" ").append(value);
  }
  if (!out.empty()) out += ": ";
  out.append(words.what).append("\n");
  out.append("kept:  ").append(words.kept).append("\n");
  out.append("to do: ").append(words.next).append("\n");
  return out;
}

}  // namespace jambline::app
