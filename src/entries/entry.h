// entries/entry.h: an entry as the folds see it: who, when, about what, and a typed payload.
//
// Shape:   the closed set of kinds is the list below. What this version does not know (kind,
//          schema, a payload that does not fit) is UnknownEntry: kept, passed on, and its job is
//          read-only. ErasedPayload: the text is gone for good, the fact that it was written stays.
//          MembershipAct: devices and hubs coming and going, decoded by seal.
// Order:   (hlc, device, seq) is the order in which things are shown. It decides nothing else.
// Threads: plain values. CATALOGUE.md is generated from these descriptions.
#pragma once

#include <compare>
#include <string>

#include "base/one_of.h"
#include "entries/air_kinds.h"
#include "entries/assembly_kinds.h"
#include "entries/car_kinds.h"
#include "entries/correct_kinds.h"
#include "entries/picture_kinds.h"
#include "entries/shop_kinds.h"
#include "entries/visit_kinds.h"
#include "entries/work_kinds.h"

namespace jambline::entries {

struct UnknownEntry {
  std::string why;
};
struct ErasedPayload {};
struct MembershipAct {};

struct PayloadKinds
    : Kinds<UnknownEntry, ErasedPayload, MembershipAct, ShopNamed, PersonAdded, PersonNamed,
            PersonLeft, DeviceNamed, WorkTakenOver, RackPlaceAdded, BoothSet, BoothEventLogged,
            Withdrawn, CarOpened, PlateSet, VinSet, ColorSet, PromiseSet, PanelPlanned, SprayedIn,
            OperationPlanned, StageDone, NoteWritten, CarDelivered, MarkPlaced, MarkMoved,
            MarkDescribed, DirtAllOver, MarkEnded, VerdictGiven, FilmRead, BeforeCutAnswered,
            CauseSet, RoundFinished, ClockActed, ReleaseOffered, ReleaseAnswered, PictureTaken,
            PictureFiled, PictureNoted, EdgesLookedAt, ShotListSet, BoothFactsSet, BoothRead,
            BoothSaid, RespiratorSet, FitTestDone, CartridgeChanged, BreathingAirChecked,
            DoNotSpraySaid, DueSet, LimitSet, ProductSet, ExposureSampled, FirstAidOpened,
            SprayStarted, SprayedWithout, Mixed, Coated, BakeLimitRead, BakeSaid,
            PanelTemperatureRead, ThumbnailChecked, Bonded, ClimateRead, CalendarSet, RuleSet,
            CheckedIn, OperationDone, PartSaid, SubletSaid, StepSaid, WaitSaid, ClockAmended,
            Signed, CameBack, FitMeasured, FastenersMoved, RetentionSet> {};

struct Payload : OneOf<PayloadKinds> {
  using OneOf::OneOf;
};

struct Order {
  std::uint64_t hlc{};
  DeviceId device;
  std::uint64_t seq{};
  friend auto operator<=>(const Order&, const Order&) = default;
};

// An entry that stays in the log and is not obeyed by any fold: it is shown with the reason.
enum class Refused : std::uint8_t {
  No,
  AfterCut,  // its device was revoked before it (seal/membership.h)
  NoRight,   // who said it may not say such a thing (entries/rights.h)
};

struct Entry {
  Hash hash;
  Order order;
  JobId subject;
  std::int64_t wall_ms{};
  std::int16_t offset_min{};
  std::uint8_t clock_flags{};
  BootId boot;
  std::uint64_t boottime_ms{};
  PersonId person;
  ActionId action;
  std::uint8_t part{};
  std::uint8_t parts{};
  std::uint16_t kind{};
  std::uint16_t schema{};
  Refused refused = Refused::No;
  Payload payload;
};

struct Written {
  std::uint16_t kind{};
  std::uint16_t schema{};
  std::string payload;
};

// The bytes to be hashed and signed. A payload that holds no kind of its own is a programmer error.
Written write(const Payload& payload);

// Never fails: what cannot be read becomes UnknownEntry with the reason.
Payload read(std::uint16_t kind, std::uint16_t schema, std::string_view payload, bool erased);

// The kind's own name ("MarkPlaced"), or "kind 4711".
std::string kind_name(std::uint16_t kind);

// Kinds whose payload may be erased.
std::vector<std::uint16_t> erasable_kinds();

// CATALOGUE.md: every kind, its number, its fields, units and words.
std::string catalogue();

}  // namespace jambline::entries

namespace jambline {
extern template const KindActs<entries::PayloadKinds> OneOf<entries::PayloadKinds>::acts;
}
