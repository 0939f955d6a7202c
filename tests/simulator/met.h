// tests/simulator/met.h: what of FAULTS.md a schedule met, so that a fault that none meets is seen.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace jambline::simulator {

enum class Met : std::uint8_t {
  AnswerLost,
  KilledInAct,
  PowerLost,
  HubPowerLost,
  DeviceFull,
  HubFull,
  UploadCut,
  UploadForgotten,
  FlippedOnTheWay,
  DamagedAtHub,
  PictureLate,
  PictureNever,
  SamePicture,
  WrongClock,
  BothEdited,
  DeletedWhileAway,
  HubPutBackDeclared,
  HubPutBackSilently,
  DevicePutBack,
  TailPulledBack,
  Forked,
  NewKey,
  SaidAgain,
  Revoked,
  KeptApart,
  TakenOver,
  TokenOver,
  UnknownKind,
  Poison,
  WrongAnswer,
  ForeignReceipt,
  Enrolled,
  CodeTwice,
  EnrolAnswerLost,
};

struct MetRow {
  int fault;  // its number in FAULTS.md
  std::string_view words;
};
inline constexpr MetRow met_rows[] = {
    {1, "the answer to committed entries is lost"},
    {2, "a device is killed while it writes an action"},
    {3, "a device loses power"},
    {3, "the hub loses power"},
    {4, "an act is refused, the device's disk is full"},
    {4, "the hub answers that its disk is full"},
    {5, "an upload is cut off"},
    {5, "the hub has forgotten a part of an upload"},
    {6, "bytes of a file are flipped on the way"},
    {6, "a file is damaged at the hub"},
    {7, "an entry is there before its picture"},
    {7, "a picture never comes"},
    {8, "the same picture on two devices"},
    {9, "something is done under a wrong clock"},
    {10, "two write one label without knowing of each other"},
    {11, "others delete while a device is away for half a year"},
    {12, "the hub is put back, declared"},
    {12, "the hub is put back and says nothing"},
    {13, "a device's folder is put back"},
    {13, "nothing may be written before the own tail has come"},
    {14, "a folder is used twice"},
    {14, "a forked folder goes on under a new key"},
    {14, "its work is said again"},
    {15, "a device is revoked"},
    {15, "its later work is kept apart"},
    {15, "a manager takes later work over"},
    {15, "a token is over in the middle of a push"},
    {16, "a kind or schema of a later release"},
    {17, "poison"},
    {18, "a wrong answer"},
    {18, "a receipt that is not for this entry"},
    {20, "a device is let in"},
    {20, "a code is used by two"},
    {20, "the answer to an enrolment is lost"},
};
inline constexpr std::size_t met_kinds = std::size(met_rows);
static_assert(met_kinds == static_cast<std::size_t>(Met::EnrolAnswerLost) + 1);
using MetFaults = std::array<bool, met_kinds>;

}  // namespace jambline::simulator
